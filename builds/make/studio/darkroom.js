import * as THREE from 'three';
import { halton } from './random.js';

/**
 * An exposure is the mean of many: in each the lens, the key light and one direction of the room's light are a little
 * elsewhere, which gives soft shadows, depth of field, smooth edges, and darkness where the room cannot look in.
 */

// The first directional light only asks whether the room sees a point from one direction; the room's light is weighed with it.
THREE.ShaderChunk.lights_fragment_end = /* glsl */`
#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0 && defined( RE_IndirectDiffuse )
  vec3 roomDirection = directionalLights[ 0 ].direction;
  float facing = smoothstep( -0.02, 0.25, dot( geometryNormal, roomDirection ) );
  float seen = getShadow( directionalShadowMap[ 0 ], directionalLightShadows[ 0 ].shadowMapSize, 1.0, directionalLightShadows[ 0 ].shadowBias, 1.0, vDirectionalShadowCoord[ 0 ] );
  float open = 0.16 + 1.3 * seen * facing;
  iblIrradiance *= open;
  #if defined( RE_IndirectSpecular )
    radiance *= open;
    clearcoatRadiance *= open;
  #endif
#endif
` + THREE.ShaderChunk.lights_fragment_end;

export function makeRenderer(canvas) {
  const renderer = new THREE.WebGLRenderer({ canvas, antialias: false, preserveDrawingBuffer: true });
  renderer.setPixelRatio(1);
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = THREE.BasicShadowMap;
  renderer.toneMapping = THREE.NoToneMapping;
  return renderer;
}

const quadVertex = 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }';

function quad(fragmentShader, uniforms) {
  const material = new THREE.ShaderMaterial({ vertexShader: quadVertex, fragmentShader, uniforms, depthTest: false, depthWrite: false });
  const scene = new THREE.Scene().add(new THREE.Mesh(new THREE.PlaneGeometry(2, 2), material));
  const camera = new THREE.OrthographicCamera();
  return { uniforms, draw: (renderer, target) => { renderer.setRenderTarget(target); renderer.render(scene, camera); } };
}

const adding = () => quad('uniform sampler2D sum, next; uniform float weight; varying vec2 at; void main() { gl_FragColor = texture2D(sum, at) + min(texture2D(next, at), vec4(24.0)) * weight; }',
  { sum: { value: null }, next: { value: null }, weight: { value: 1 } });

/** Film: a filmic curve, warmth, the fall-off towards the corners, grain. */
const developing = () => quad(/* glsl */`
  uniform sampler2D sum; uniform float exposure, seed, grain; uniform vec3 balance; varying vec2 at;
  float hash(vec2 p) { vec3 q = fract(vec3(p.xyx) * 0.1031 + seed); q += dot(q, q.yzx + 33.33); return fract((q.x + q.y) * q.z); }
  vec3 film(vec3 x) { return clamp((x * (2.51 * x + 0.03)) / (x * (2.43 * x + 0.59) + 0.14), 0.0, 1.0); }
  void main() {
    vec2 from = (at - 0.5) * vec2(1.0, 0.75);
    vec3 light = texture2D(sum, at).rgb * exposure * balance * (1.0 - 0.9 * dot(from, from));
    vec3 colour = film(light * 0.7);
    colour = pow(colour, vec3(1.0 / 2.2));
    float noise = hash(gl_FragCoord.xy) + hash(gl_FragCoord.xy + 71.7) - 1.0;
    gl_FragColor = vec4(colour + noise * grain * (0.4 + 0.6 * (1.0 - colour)), 1.0);
  }`, { sum: { value: null }, exposure: { value: 1 }, seed: { value: 0.37 }, grain: { value: 0.018 }, balance: { value: new THREE.Vector3(1, 1, 1) } });

/** Draws a set into the renderer's canvas. `samples` exposures; lengths in millimetres. */
export function expose(renderer, set, { width, height, samples }) {
  const { scene, camera, focus, aperture, room, key, exposure = 1.3, balance = [1, 1, 1], grain = 0.018 } = set;
  renderer.setSize(width, height, false);
  const [frame, a, b] = ['HalfFloatType', 'FloatType', 'FloatType'].map((type) => new THREE.WebGLRenderTarget(width, height, { type: THREE[type], minFilter: THREE.NearestFilter, magFilter: THREE.NearestFilter }));
  const [add, develop] = [adding(), developing()];
  let [sum, next] = [a, b];
  renderer.setRenderTarget(sum);
  renderer.clear();
  const eye = camera.position.clone();
  const [right, up] = axesOf(camera, focus);
  for (let i = 1; i <= samples; i++) {
    const [radius, turn] = [Math.sqrt(halton(i, 2)) * aperture, halton(i, 3) * 2 * Math.PI];
    camera.position.copy(eye).addScaledVector(right, radius * Math.cos(turn)).addScaledVector(up, radius * Math.sin(turn));
    camera.lookAt(focus);
    camera.setViewOffset(width, height, halton(i, 5) - 0.5, halton(i, 7) - 0.5, width, height);
    room.aim(halton(i, 3), halton(i, 2));
    key.move(halton(i, 7), halton(i, 5));
    renderer.setRenderTarget(frame);
    renderer.render(scene, camera);
    add.uniforms.sum.value = sum.texture;
    add.uniforms.next.value = frame.texture;
    add.uniforms.weight.value = 1 / samples;
    add.draw(renderer, next);
    [sum, next] = [next, sum];
  }
  Object.assign(develop.uniforms.exposure, { value: exposure });
  develop.uniforms.grain.value = grain;
  develop.uniforms.balance.value.set(...balance);
  develop.uniforms.sum.value = sum.texture;
  develop.draw(renderer, null);
  for (const target of [frame, a, b]) target.dispose();
}

function axesOf(camera, focus) {
  camera.lookAt(focus);
  camera.updateMatrixWorld();
  return [0, 1].map((column) => new THREE.Vector3().setFromMatrixColumn(camera.matrixWorld, column));
}
