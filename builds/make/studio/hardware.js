import * as THREE from 'three';
import { toCreasedNormals } from 'three/addons/utils/BufferGeometryUtils.js';
import { group, part, round, swept, turned } from './geometry.js';
import * as m from './materials.js';

/** Bolts, nuts, threads, studs: along y, the head's seat at 0, the shank downwards. */

/** A hexagon across flats `af`, its corners chamfered top and (unless `flat`) bottom; centre at 0, hole of radius `bore`. */
export function hexagon(af, height, { bore = 0, below = true } = {}) {
  const reach = (turn) => af / 2 / Math.cos(((turn + Math.PI / 6) % (Math.PI / 3)) - Math.PI / 6);
  const flat = af / 2 * 0.96;
  const fall = (r) => Math.max(0, r - flat) * 0.58;
  const rows = [
    () => [bore || 0.001, height / 2 - 0.4], () => [bore + 0.5, height / 2], () => [flat, height / 2],
    (r) => [r, height / 2 - fall(r)], (r) => [r, -height / 2 + (below ? fall(r) : 0)], () => [below ? flat : flat, -height / 2], () => [bore || 0.001, -height / 2],
  ];
  const columns = 120;
  const made = swept(columns, rows.length - 1, (u, v) => {
    const turn = u * 2 * Math.PI;
    const [r, y] = rows[Math.round(v * (rows.length - 1))](reach(((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)));
    return [r * Math.cos(turn), y, r * Math.sin(turn)];
  }, { length: af * Math.PI, girth: height * 2 });
  const creased = toCreasedNormals(made, 0.4);
  creased.userData.uv = 'own';
  return creased;
}

/** An outside thread along y from 0 up to `length`. */
export function thread(d, pitch, length) {
  const turns = length / pitch;
  const deep = 0.6 * pitch;
  const profile = (phase) => Math.min(1, Math.max(0, (Math.abs(phase - 0.5) * 2 - 0.12) / 0.76));
  return swept(64, Math.round(turns * 10), (u, v) => {
    const [turn, y] = [-u * 2 * Math.PI, v * length];
    const phase = (((y / pitch + u) % 1) + 1) % 1;
    const run = Math.min(1, (length - y) / pitch / 0.8);
    const r = d / 2 - deep * (1 - profile(phase)) - (1 - run) * deep * 0.7;
    return [r * Math.cos(turn), y, r * Math.sin(turn)];
  }, { length: Math.PI * d, girth: length });
}

export const washer = (d, material = m.zinc(), thick = d * 0.2) => part(round(d * 1.08, thick, { bore: d * 0.54, edge: 0.25 }), material);

export function nut(d, material = m.zinc(), { nylon = false, height = d * 0.8 } = {}) {
  const body = part(hexagon(d * 1.6, height, { bore: d * 0.46 }), material, { at: [0, height / 2, 0] });
  if (!nylon) return group([body]);
  const collar = part(turned([[d * 0.55, 0], [d * 0.74, 0], [d * 0.74, d * 0.22], [d * 0.66, d * 0.3], [d * 0.55, d * 0.3]]), material, { at: [0, height * 0.94, 0] });
  const ring = part(round(d * 0.62, d * 0.1, { bore: d * 0.45 }), m.plain(0x2c50a0, { roughness: 0.5 }), { at: [0, height + d * 0.22, 0] });
  return group([body, collar, ring]);
}

/** Head upwards from the seat at 0, shank downwards. */
export function bolt(d, length, { pitch = d * 0.14, threaded = length * 0.6, material = m.zinc(), mark = '8.8' } = {}) {
  const head = d * 0.65;
  const parts = [
    part(hexagon(d * 1.6, head, { below: false }), material, { at: [0, head / 2, 0] }),
    part(round(d / 2, length - threaded, { edge: 0.05 }), material, { at: [0, -(length - threaded) / 2, 0] }),
    part(thread(d, pitch, threaded), material, { at: [0, -(length - threaded), 0], turn: [Math.PI, 0, 0] }),
    part(round(d / 2 - pitch * 0.5, 0.6, { edge: 0.2 }), material, { at: [0, -length + 0.3, 0] }),
  ];
  if (mark) parts.push(raised(mark, d, head));
  return group(parts);
}

/** The property class on a bolt's head, as raised figures. */
function raised(mark, d, head) {
  const canvas = Object.assign(document.createElement('canvas'), { width: 256, height: 256 });
  const context = canvas.getContext('2d');
  context.fillStyle = '#000';
  context.fillRect(0, 0, 256, 256);
  Object.assign(context, { fillStyle: '#fff', font: '700 96px "Noto Sans"', textAlign: 'center', textBaseline: 'middle', filter: 'blur(2px)' });
  context.fillText(mark, 128, 132);
  const material = m.zinc().clone();
  material.bumpMap = new THREE.CanvasTexture(canvas);
  material.bumpScale = 6;
  const geometry = new THREE.CircleGeometry(d * 0.74, 48);
  geometry.userData.uv = 'own';
  material.userData = {};
  return part(geometry, material, { at: [0, head + 0.02, 0], turn: [-Math.PI / 2, 0, 0] });
}
