import * as THREE from 'three';
import { part, swept } from './geometry.js';
import { seeded } from './random.js';
import { plain } from './materials.js';
import { canvasTexture } from './drawn.js';

/**
 * A fillet of leg `leg` along a straight line from `from` to `to`, in the corner of two surfaces that leave the line in the
 * directions `a` and `b`: overlapping crescents, as a torch leaves them, with the heat's colours on both plates.
 */
export function fillet({ from, to, a, b, leg, seed = 1, ripple = leg * 0.62, heat = leg * 3 }) {
  const [start, end] = [new THREE.Vector3(...from), new THREE.Vector3(...to)];
  const [legA, legB] = [new THREE.Vector3(...a), new THREE.Vector3(...b)];
  const out = legA.clone().add(legB).normalize();
  const length = start.distanceTo(end);
  const random = seeded(seed);
  const wander = Array.from({ length: Math.ceil(length / ripple) + 4 }, () => [random(), random()]);
  const shape = (s, t) => {
    const bow = 1.1 * ripple * (1 - (2 * t - 1) ** 2);
    const place = Math.max(0, s - bow) / ripple;
    const [step, phase] = [Math.floor(place), place % 1];
    const [width, height] = wander[Math.min(step, wander.length - 1)];
    const scale = Math.min(1, Math.sqrt(Math.max(0, s / (leg * 0.8))), Math.sqrt(Math.max(0, (length - s) / (leg * 0.8))));
    const size = leg * scale * (1 + 0.1 * (width - 0.5));
    const crest = 0.1 * leg * (Math.sin(phase * Math.PI) ** 0.7) * Math.sin(Math.PI * t) ** 0.6 + 0.03 * leg * height;
    const swell = (0.22 * Math.sin(Math.PI * t)) * size + crest * scale;
    return start.clone().lerp(end, s / length).addScaledVector(legA, size * (1 - t)).addScaledVector(legB, size * t).addScaledVector(out, swell).toArray();
  };
  // Which way round the surface is wound decides which side is seen.
  const along = end.clone().sub(start);
  const facing = new THREE.Vector3().crossVectors(along, legB.clone().sub(legA)).dot(out) > 0;
  const geometry = swept(Math.ceil(length / ripple * 10), 22, (u, v) => shape(u * length, facing ? v : 1 - v), { length, girth: leg * 1.6 });
  return [part(geometry, weldMetal()), heated(start, end, legA, leg, heat, out), heated(start, end, legB, leg, heat, out)];
}

let bead;
const weldMetal = () => (bead ??= new THREE.MeshPhysicalMaterial({
  metalness: 0.9, roughness: 0.36, bumpScale: 0.4,
  map: canvasTexture(512, 512, (context) => {
    const random = seeded(5);
    context.fillStyle = '#86817c';
    context.fillRect(0, 0, 512, 512);
    for (let i = 0; i < 900; i++) {
      context.fillStyle = ['rgba(70,80,110,.16)', 'rgba(120,95,65,.14)', 'rgba(190,190,190,.13)', 'rgba(40,36,34,.16)'][Math.floor(random() * 4)];
      context.beginPath();
      context.ellipse(random() * 512, random() * 512, 4 + random() * 26, 3 + random() * 12, 0, 0, 7);
      context.fill();
    }
  }),
}));

/** A band of heat tint on one plate beside a weld: grey at the toe, then blue, then straw. */
function heated(start, end, way, leg, width, out) {
  const map = canvasTexture(256, 256, (context, W, H) => {
    const band = context.createLinearGradient(0, H, 0, 0);
    [[0, 'rgba(52,48,48,.85)'], [0.25, 'rgba(66,62,72,.75)'], [0.42, 'rgba(58,76,124,.62)'], [0.6, 'rgba(118,84,112,.5)'], [0.74, 'rgba(172,128,62,.42)'], [1, 'rgba(190,150,80,0)']].forEach(([at, colour]) => band.addColorStop(at, colour));
    context.fillStyle = band;
    context.fillRect(0, 0, W, H);
    context.globalCompositeOperation = 'destination-in';
    const ends = context.createLinearGradient(0, 0, W, 0);
    [[0, 'rgba(0,0,0,0)'], [0.05, '#000'], [0.95, '#000'], [1, 'rgba(0,0,0,0)']].forEach(([at, colour]) => ends.addColorStop(at, colour));
    context.fillStyle = ends;
    context.fillRect(0, 0, W, H);
  });
  const lift = out.clone().multiplyScalar(0.06);
  const across = end.clone().sub(start);
  const corner = (u, v) => start.clone().addScaledVector(across, u).addScaledVector(way, leg * 0.6 + v * width).add(lift).toArray();
  const geometry = new THREE.BufferGeometry();
  geometry.setAttribute('position', new THREE.Float32BufferAttribute([corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)].flat(), 3));
  geometry.setAttribute('uv', new THREE.Float32BufferAttribute([0, 0, 1, 0, 1, 1, 0, 1], 2));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  geometry.computeVertexNormals();
  const mesh = new THREE.Mesh(geometry, Object.assign(plain(0xffffff, { metalness: 0.6, roughness: 0.4, transparent: true, side: THREE.DoubleSide }), { map, depthWrite: false, polygonOffset: true, polygonOffsetFactor: -2, polygonOffsetUnits: -2 }));
  mesh.userData.still = true;
  mesh.receiveShadow = false;
  return mesh;
}

/** A tack: a short fillet. */
export const tack = (options) => fillet({ ripple: options.leg * 0.5, heat: options.leg * 2.2, ...options });
