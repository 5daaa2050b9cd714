import * as THREE from 'three';

/** The room: a ceiling with strip lights, an open roller door to one side, walls, for the reflections and the soft light. */
function surroundings({ door = 5, strips = 9, walls = 0.10, sky = false }) {
  const scene = new THREE.Scene();
  const glow = (colour, strength) => new THREE.MeshBasicMaterial({ color: new THREE.Color(colour).multiplyScalar(strength), side: THREE.DoubleSide });
  const wall = (w, h, colour, strength, position, target = [0, 0, 0]) => {
    const mesh = new THREE.Mesh(new THREE.PlaneGeometry(w, h), glow(colour, strength));
    mesh.position.set(...position);
    mesh.lookAt(...target);
    scene.add(mesh);
  };
  if (sky) {
    scene.add(new THREE.Mesh(new THREE.SphereGeometry(40, 32, 16), skyMaterial()));
    return scene;
  }
  const shell = new THREE.Mesh(new THREE.BoxGeometry(20, 9, 20), [0x8f8a80, 0x858a90, 0xb0aca4, 0x55504a, 0x8a867e, 0x7a7c80].map((c, i) => glow(c, [1, 1, 1.6, 4.5, 1.4, 1][i] * walls)));
  shell.material.forEach((m) => { m.side = THREE.BackSide; });
  scene.add(shell);
  for (const x of [-4.5, 0, 4.5]) wall(0.8, 12, 0xfff6e6, strips, [x, 4.3, 0], [x, 0, 0.001]);
  wall(8, 4.2, 0xdfeaff, door, [-9.7, 0.2, 2]);
  wall(9, 4.5, 0xf2ede4, door * 0.34, [2, 1.6, 9.7]);
  // Dark things about the room, without which polished metal has nothing to show.
  for (const [x, z, w, h] of [[8.5, -4, 3, 5], [6, 8.5, 2, 4], [-8.5, -6, 3, 3], [0, -9, 5, 3]]) wall(w, h, 0x2a2725, 0.12, [x, -1, z]);
  return scene;
}

const skyMaterial = () => new THREE.ShaderMaterial({
  side: THREE.BackSide,
  vertexShader: 'varying vec3 way; void main() { way = normalize(position); gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
  fragmentShader: 'varying vec3 way; void main() { float h = normalize(way).y; vec3 sky = mix(vec3(0.95, 1.0, 1.08), vec3(0.32, 0.5, 0.85), smoothstep(0.0, 0.7, h)); gl_FragColor = vec4(h > 0.0 ? sky * 1.25 : vec3(0.16, 0.155, 0.15), 1.0); }',
});

/** Lights a scene: the room's light with its moving shadow, and one key light that is a bright rectangle of `size` mm. */
export function light(renderer, scene, { span, centre = [0, 0, 0], key = [-0.6, 1, 0.5], keySize = 0.5, keyStrength = 2.8, keyColour = 0xfff1dc, roomStrength = 0.85, surround = {} }) {
  const generator = new THREE.PMREMGenerator(renderer);
  scene.environment = generator.fromScene(surroundings(surround), 0.02, 0.1, 100).texture;
  scene.environmentIntensity = roomStrength;
  const middle = new THREE.Vector3(...centre);
  const [asking, lamp] = [directional(scene, span, middle, 1024), directional(scene, span, middle, 2048)];
  asking.intensity = 1e-5;
  lamp.intensity = keyStrength;
  lamp.color.set(keyColour);
  const base = new THREE.Vector3(...key).normalize();
  const side = new THREE.Vector3().crossVectors(base, new THREE.Vector3(0, 1, 0.01)).normalize();
  const other = new THREE.Vector3().crossVectors(side, base);
  return {
    room: {
      aim: (u, v) => {
        const [height, turn] = [0.04 + 0.95 * v, u * 2 * Math.PI];
        const flat = Math.sqrt(1 - height * height);
        asking.position.copy(middle).add(new THREE.Vector3(flat * Math.cos(turn), height, flat * Math.sin(turn)).multiplyScalar(span * 2));
      },
    },
    key: {
      move: (u, v) => lamp.position.copy(base).addScaledVector(side, (u - 0.5) * keySize).addScaledVector(other, (v - 0.5) * keySize).multiplyScalar(span * 2).add(middle),
    },
  };
}

function directional(scene, span, middle, fine) {
  const lamp = new THREE.DirectionalLight();
  lamp.castShadow = true;
  lamp.target.position.copy(middle);
  lamp.shadow.mapSize.set(fine, fine);
  lamp.shadow.bias = -0.0004;
  lamp.shadow.normalBias = span / 700;
  Object.assign(lamp.shadow.camera, { left: -span, right: span, top: span, bottom: -span, near: span * 0.1, far: span * 5 });
  scene.add(lamp, lamp.target);
  return lamp;
}
