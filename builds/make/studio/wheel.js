import * as THREE from 'three';
import { canvasTexture, write } from './drawn.js';
import { group, part, plate, round, swept, turned } from './geometry.js';
import { hexagon } from './hardware.js';
import * as m from './materials.js';

/** A wheel 195/60R15 about the z axis, its outer face towards +z. */

const [outer, bead] = [307.5, 196];

/** Radius and offset along the tyre's section, from the inner bead round the tread to the outer bead. */
const section = [[bead, -80], [214, -92], [246, -99], [278, -95], [296, -82], [304, -66], [307, -34], [307.5, 0], [307, 34], [304, 66], [296, 82], [278, 95], [246, 99], [214, 92], [bead, 80]];
const curve = new THREE.CatmullRomCurve3(section.map(([r, z]) => new THREE.Vector3(r, z, 0)));

function treadDepth(turn, z) {
  const across = Math.abs(z);
  if (across > 78) return 0;
  const main = [0, 30, 31, 60].some((at) => Math.abs(across - at) < 3.2) ? 7 : 0;
  const pitch = (2 * Math.PI) / 68;
  const lean = z / 420 + (Math.floor((across + 15) / 30) % 2) * pitch * 0.5;
  const phase = (((turn + lean * Math.sign(z || 1)) / pitch) % 1 + 1) % 1;
  const sipe = phase < 0.1 && across > 7 ? 6 : Math.abs(phase - 0.55) < 0.025 && across > 34 ? 4 : 0;
  return Math.max(main, sipe) * Math.min(1, (80 - across) / 10);
}

function tyre() {
  const geometry = swept(1088, 150, (u, v) => {
    const turn = -u * 2 * Math.PI;
    const { x: r, y: z } = curve.getPointAt(1 - v);
    const depth = r > 290 ? treadDepth(turn, z) : 0;
    const rib = r < 240 && r > 225 ? 0.8 * Math.sin((r - 225) * 1.2) : 0;
    return [(r - depth + rib) * Math.cos(turn), (r - depth + rib) * Math.sin(turn), z];
  }, { length: 2 * Math.PI * outer, girth: 480 });
  return part(geometry, m.rubber());
}

/** Raised letters on the side of the tyre. */
function lettering(words) {
  const map = canvasTexture(2048, 2048, (context, W) => {
    context.clearRect(0, 0, W, W);
    context.translate(W / 2, W / 2);
    for (const [text, from, size] of words) {
      [...text].forEach((letter, i) => {
        context.save();
        context.rotate(from + i * size * 0.00088);
        write(context, letter, 0, -W * 0.5 * 0.93, size, { weight: 700, colour: 'rgba(92,90,86,.95)' });
        context.restore();
      });
    }
  });
  const material = Object.assign(m.plain(0xffffff, { roughness: 0.7, transparent: true }), { map, depthWrite: false, polygonOffset: true, polygonOffsetFactor: -4 });
  const geometry = new THREE.RingGeometry(222, 288, 160, 6);
  const { position, uv } = geometry.attributes;
  for (let i = 0; i < position.count; i++) {
    const [x, y] = [position.getX(i), position.getY(i)];
    uv.setXY(i, 0.5 + x / 580, 0.5 + y / 580);
    const r = Math.hypot(x, y);
    position.setZ(i, zAt(r) + 0.5);
  }
  geometry.computeVertexNormals();
  geometry.userData.uv = 'label';
  const mesh = new THREE.Mesh(geometry, material);
  mesh.userData.still = true;
  return mesh;
}
const zAt = (r) => {
  const side = section.slice(7).reverse();
  const after = side.findIndex(([radius]) => radius >= r);
  const [[r1, z1], [r2, z2]] = [side[Math.max(0, after - 1)], side[after]];
  return z1 + ((z2 - z1) * (r - r1)) / Math.max(1e-6, r2 - r1) + 1;
};

/** A steel disc wheel: barrel, dished disc with round holes, cap and four nuts. */
function rim(material) {
  const barrel = turned([[202, -88], [206, -86], [204, -80], [190, -76], [178, -60], [172, -30], [172, 30], [182, 58], [190, 74], [200, 79], [208, 84], [206, 88], [199, 86], [188, 80], [176, 66], [166, 36], [166, -60]], { segments: 144 });
  const holes = Array.from({ length: 12 }, (_, i) => [124 * Math.cos((i / 12) * 2 * Math.PI), 124 * Math.sin((i / 12) * 2 * Math.PI), 15]);
  const face = pierced((r) => (r < 62 ? 6 : r < 92 ? 6 + 18 * Math.sin(((r - 62) / 30) * Math.PI / 2) : 24 - 14 * ((r - 92) / 76) ** 2), 20, 170, holes);
  const lips = holes.map(([x, y, r]) => part(new THREE.TorusGeometry(r, 1.6, 10, 48), material, { at: [x, y, 24 - 14 * (32 / 76) ** 2 - 1] }));
  const nuts = [0, 1, 2, 3].map((k) => {
    const turn = (k / 4) * 2 * Math.PI + 0.4;
    return group([part(hexagon(19, 16), m.zinc(), { turn: [Math.PI / 2, k, 0] })], { at: [50 * Math.cos(turn), 50 * Math.sin(turn), 14] });
  });
  return [
    part(turnedToZ(barrel), material), part(face, material), ...lips, ...nuts,
    part(turnedToZ(turned([[0.01, 36], [20, 35], [29, 30], [30, 4], [0.01, 4]])), m.blackPlastic(), {}),
    part(turnedToZ(round(4, 40)), m.rubber(), { at: [0, -182, 60], turn: [0.2, 0, 0] }),
  ];
}

const turnedToZ = (geometry) => {
  const made = geometry.rotateX(Math.PI / 2);
  made.userData.uv = 'own';
  return made;
};

/** A dished disc facing +z between two radii, with round holes. */
function pierced(depth, inner, outerR, holes) {
  const [columns, rows] = [720, 100];
  const grid = swept(columns, rows, (u, v) => {
    const [turn, r] = [u * 2 * Math.PI, inner + (outerR - inner) * v];
    return [r * Math.cos(turn), r * Math.sin(turn), depth(r)];
  }, { length: 1000, girth: 150 });
  const { position } = grid.attributes;
  const open = (i) => holes.some(([x, y, r]) => Math.hypot(position.getX(i) - x, position.getY(i) - y) < r);
  const kept = [];
  for (let i = 0; i < grid.index.count; i += 3) {
    const corners = [0, 1, 2].map((k) => grid.index.getX(i + k));
    // Seen from +z the grid is wound the other way round.
    if (!corners.some(open)) kept.push(corners[0], corners[2], corners[1]);
  }
  grid.setIndex(kept);
  grid.computeVertexNormals();
  return grid;
}

export const wheel = (place = {}, { size = '195/60R15 88H', material = m.plain(0x9a9c9e, { metalness: 0.6, roughness: 0.4 }) } = {}) => group([
  tyre(), lettering([[size, -0.7, 86], ['TUBELESS  RADIAL', 2.2, 62]]), ...rim(material),
], place);

/** A front guard's outside about a wheel arch: flat panel with a round opening of radius `arch` and a rolled lip. */
export function guard(arch, material = m.bodyGreen()) {
  const outline = new THREE.Shape();
  outline.moveTo(-700, -120).lineTo(-arch * 0.98, -120).absarc(0, 0, arch, Math.PI + 0.3, -0.3, true).lineTo(620, -120).lineTo(640, 420).lineTo(-700, 470).closePath();
  const lip = swept(120, 8, (u, v) => {
    const turn = -0.3 + u * (Math.PI + 0.6);
    const r = arch + 6 * Math.cos(v * Math.PI) - 1;
    return [r * Math.cos(turn), r * Math.sin(turn), 4 + 7 * Math.sin(v * Math.PI) - v * 18];
  }, { length: arch * 3.5, girth: 30 });
  const material2 = material.clone();
  material2.side = THREE.DoubleSide;
  return group([part(plate(outline, 3, { bevel: 1, curve: 96 }), material), part(lip, material2, {})]);
}
