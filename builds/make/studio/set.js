import * as THREE from 'three';
import { light } from './light.js';
import { part, block } from './geometry.js';
import * as m from './materials.js';

/**
 * A set ready to expose: `eye` looks at `focus` through a lens of `lens` degrees; `span` is how far from `centre` shadows
 * are cast, in millimetres; `blur` is the lens's opening.
 */
export function stage(renderer, parts, { eye, focus = [0, 0, 0], lens = 28, blur = 2, span = 200, centre = focus, back = 0x2a2826, fog, lighting = {}, ...film }) {
  const scene = new THREE.Scene();
  scene.background = new THREE.Color(back);
  if (fog) scene.fog = new THREE.Fog(...fog);
  scene.add(...parts.flat(Infinity));
  const camera = new THREE.PerspectiveCamera(lens, 4 / 3, 5, span > 5000 ? 200000 : 20000);
  camera.position.set(...eye);
  return { scene, camera, focus: new THREE.Vector3(...focus), aperture: blur, ...light(renderer, scene, { span, centre, ...lighting }), ...film };
}

/** A workshop behind the subject, out of focus: cabinets, a bench, shelves, a window. */
export function backdrop({ far = -1500, floor = 0, scale = 1 } = {}) {
  const flat = (colour) => m.plain(colour, { roughness: 0.75 });
  const box = (x, y, w, h, d, colour) => part(block(w * scale, h * scale, d * scale, 4), flat(colour), { at: [x * scale, floor + y * scale, far * scale] });
  const drawers = [0, 1, 2, 3, 4].map((k) => box(-640, 110 + k * 130, 430, 112, 290, 0x4b2a25));
  const shelves = [0, 1, 2].flatMap((row) => [0, 1, 2, 3].map((k) => box(700 + k * 190, 420 + row * 260, 120 + ((k * 37 + row * 53) % 50), 90 + ((k * 71 + row * 29) % 100), 120, [0x6d5f48, 0x3b4752, 0x4d5a4a, 0x7a5a3a][(k + row) % 4])));
  return [
    part(block(12000 * scale, 5200 * scale, 20), flat(0x6a675f), { at: [0, floor + 1500 * scale, far * scale - 320 * scale] }),
    ...drawers, box(-140, 300, 460, 600, 300, 0x3a4046), box(640, 330, 1500, 50, 340, 0x5c4a39), ...shelves,
    box(-1400, 700, 500, 1400, 260, 0x585c57), box(2100, 700, 620, 1400, 260, 0x4c5256),
    part(block(760 * scale, 420 * scale, 4), new THREE.MeshBasicMaterial({ color: new THREE.Color(0xcfdbe8).multiplyScalar(0.9) }), { at: [-300 * scale, floor + 1500 * scale, far * scale - 300 * scale] }),
  ];
}

/** A bench top or floor at y = 0. */
export const ground = (material, size = 3000, y = 0) => part(new THREE.PlaneGeometry(size, size), material, { at: [0, y, 0], turn: [-Math.PI / 2, 0, 0] });
