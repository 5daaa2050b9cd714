import * as THREE from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import { toCreasedNormals } from 'three/addons/utils/BufferGeometryUtils.js';

/** Solids in millimetres, y upwards. */

/** Texture coordinates in millimetres by the side that each triangle faces; a material's tile scales them later. */
function wrapped(geometry) {
  const flat = geometry.index ? geometry.toNonIndexed() : geometry;
  const { position, normal } = flat.attributes;
  const uv = new Float32Array(position.count * 2);
  for (let i = 0; i < position.count; i += 3) {
    const mean = [0, 1, 2].map((axis) => Math.abs([0, 1, 2].reduce((sum, k) => sum + normal.getComponent(i + k, axis), 0)));
    const away = mean.indexOf(Math.max(...mean));
    const [u, v] = [[2, 1], [0, 2], [0, 1]][away];
    for (let k = 0; k < 3; k++) uv.set([position.getComponent(i + k, u), position.getComponent(i + k, v)], (i + k) * 2);
  }
  flat.setAttribute('uv', new THREE.BufferAttribute(uv, 2));
  return flat;
}

/** A mesh that casts and receives shadow, its texture to the material's own scale. */
export function part(geometry, material, { at = [0, 0, 0], turn = [0, 0, 0], order = 'XYZ' } = {}) {
  const own = geometry.userData.uv === 'own' ? geometry.clone() : wrapped(geometry);
  if (material.userData.tile && geometry.userData.uv !== 'label') {
    const { uv } = own.attributes;
    // An offset of its own for each place, so that two parts of one material do not look alike.
    const [du, dv] = [0.37 * at[0] + 0.11 * at[2], 0.29 * at[1] + 0.17 * at[2]];
    for (let i = 0; i < uv.count; i++) uv.setXY(i, (uv.getX(i) + du) / material.userData.tile, (uv.getY(i) + dv) / material.userData.tile);
  }
  return placed(new THREE.Mesh(own, material), { at, turn, order });
}

function placed(object, { at = [0, 0, 0], turn = [0, 0, 0], order = 'XYZ' } = {}) {
  object.traverse((child) => {
    if (child.isMesh && !child.userData.still) child.castShadow = child.receiveShadow = true;
  });
  object.position.set(...at);
  object.rotation.set(...turn, order);
  return object;
}

export const group = (parts, place = {}) => placed(new THREE.Group().add(...parts.flat(Infinity)), place);

export const block = (w, h, d, r = 0.6) => new RoundedBoxGeometry(w, h, d, 3, Math.min(r, w / 2.01, h / 2.01, d / 2.01));

/** A flat outline in x and y given thickness in z, its edges broken. Points with a third member are arcs' radii. */
export function plate(outline, thickness, { holes = [], bevel = 0.5, curve = 24 } = {}) {
  const shape = outline instanceof THREE.Shape ? outline : new THREE.Shape(outline.map(([x, y]) => new THREE.Vector2(x, y)));
  for (const [x, y, r] of holes) shape.holes.push(new THREE.Path().absarc(x, y, r, 0, 2 * Math.PI, true));
  const depth = Math.max(0.01, thickness - 2 * bevel);
  const made = new THREE.ExtrudeGeometry(shape, { depth, bevelEnabled: bevel > 0, bevelThickness: bevel, bevelSize: bevel, bevelOffset: -bevel, bevelSegments: 3, curveSegments: curve });
  return toCreasedNormals(made.translate(0, 0, -depth / 2), 0.6);
}

/** A rectangle with round corners, or what is left of it when another is taken out. */
export function rounded(w, h, r, hole) {
  const trace = (path, w, h, r) => path
    .moveTo(-w / 2 + r, -h / 2).lineTo(w / 2 - r, -h / 2).absarc(w / 2 - r, -h / 2 + r, r, -Math.PI / 2, 0)
    .lineTo(w / 2, h / 2 - r).absarc(w / 2 - r, h / 2 - r, r, 0, Math.PI / 2)
    .lineTo(-w / 2 + r, h / 2).absarc(-w / 2 + r, h / 2 - r, r, Math.PI / 2, Math.PI)
    .lineTo(-w / 2, -h / 2 + r).absarc(-w / 2 + r, -h / 2 + r, r, Math.PI, 1.5 * Math.PI);
  const shape = trace(new THREE.Shape(), w, h, r);
  if (hole) shape.holes.push(trace(new THREE.Path(), ...hole));
  return shape;
}

/** A sheet of one thickness folded along `line` (points in x and y, corners bent to `radius`), `length` in z. */
export function folded(line, thickness, length, { radius = 3, bevel = 0.15 } = {}) {
  const corners = line.map(([x, y]) => new THREE.Vector2(x, y));
  const path = [];
  corners.forEach((corner, i) => {
    const [before, after] = [corners[i - 1], corners[i + 1]];
    if (!before || !after) return path.push(corner);
    const [a, b] = [before.clone().sub(corner).normalize(), after.clone().sub(corner).normalize()];
    for (let k = 0; k <= 8; k++) {
      const t = k / 8;
      const [p, q] = [corner.clone().addScaledVector(a, radius * (1 - t)), corner.clone().addScaledVector(b, radius * t)];
      path.push(p.lerp(q, t));
    }
  });
  const sides = [1, -1].map((sign) => path.map((point, i) => {
    const along = path[Math.min(i + 1, path.length - 1)].clone().sub(path[Math.max(i - 1, 0)]).normalize();
    return [point.x - along.y * sign * thickness / 2, point.y + along.x * sign * thickness / 2];
  }));
  return plate([...sides[0], ...sides[1].reverse()], length, { bevel });
}

/** A profile of [radius, height] turned about y. */
export function turned(outline, { segments = 72, crease = 0.45 } = {}) {
  // Run up the outside, so that the surface faces outwards.
  const area = outline.reduce((sum, [r, y], i) => sum + r * outline[(i + 1) % outline.length][1] - outline[(i + 1) % outline.length][0] * y, 0);
  const profile = area < 0 ? [...outline].reverse() : outline;
  const made = new THREE.LatheGeometry(profile.map(([r, y]) => new THREE.Vector2(r, y)), segments);
  const { uv } = made.attributes;
  const widest = Math.max(...profile.map(([r]) => r));
  const lengths = profile.reduce((sums, [r, y], i) => [...sums, i === 0 ? 0 : sums[i - 1] + Math.hypot(r - profile[i - 1][0], y - profile[i - 1][1])], []);
  for (let i = 0; i < uv.count; i++) uv.setXY(i, uv.getX(i) * 2 * Math.PI * widest, lengths[i % profile.length]);
  const creased = toCreasedNormals(made, crease);
  creased.userData.uv = 'own';
  return creased;
}

/** A cylinder along y with broken edges, hollow if `bore` is given. */
export function round(r, h, { bore = 0, edge = 0.5, segments = 72 } = {}) {
  const [top, e] = [h / 2, edge];
  const outside = [[r - e, -top], [r, -top + e], [r, top - e], [r - e, top]];
  return turned(bore ? [[bore, top], [bore, -top], ...outside, [bore, top]].slice(0, -1).concat([[bore, top]]) : [[0.001, -top], ...outside, [0.001, top]], { segments });
}

/** A surface over a grid: `at(u, v)` gives a point; texture in millimetres along `length` and `girth`. */
export function swept(columns, rows, at, { length, girth, crease = 0 } = {}) {
  const positions = [];
  const uvs = [];
  const index = [];
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i <= columns; i++) {
      positions.push(...at(i / columns, j / rows));
      uvs.push((i / columns) * length, (j / rows) * girth);
      if (i < columns && j < rows) {
        const a = j * (columns + 1) + i;
        index.push(a, a + 1, a + columns + 1, a + 1, a + columns + 2, a + columns + 1);
      }
    }
  }
  const made = new THREE.BufferGeometry();
  made.setAttribute('position', new THREE.Float32BufferAttribute(positions, 3));
  made.setAttribute('uv', new THREE.Float32BufferAttribute(uvs, 2));
  made.setIndex(index);
  made.computeVertexNormals();
  const done = crease ? toCreasedNormals(made, crease) : made;
  done.userData.uv = 'own';
  return done;
}

/** A pipe through points. */
export function pipe(points, radius, { segments = 160, around = 20, closed = false, tension = 0.5 } = {}) {
  const curve = new THREE.CatmullRomCurve3(points.map((p) => new THREE.Vector3(...p)), closed, 'catmullrom', tension);
  const made = new THREE.TubeGeometry(curve, segments, radius, around, closed);
  const { uv } = made.attributes;
  const length = curve.getLength();
  for (let i = 0; i < uv.count; i++) uv.setXY(i, uv.getX(i) * length, uv.getY(i) * 2 * Math.PI * radius);
  made.userData.uv = 'own';
  return made;
}

/** A coil about y between two heights; the first and last `dead` turns lie closed. */
export function coil({ mean, wire, height, turns, dead = 0.75 }) {
  const pitch = (height - 2 * dead * wire * 1.05) / (turns - 2 * dead);
  const points = [];
  for (let k = 0; k <= turns * 28; k++) {
    const t = k / 28;
    const active = Math.min(Math.max(t - dead, 0), turns - 2 * dead);
    const closed = Math.min(t, dead) + Math.max(0, t - (turns - dead));
    points.push([mean / 2 * Math.cos(t * 2 * Math.PI), active * pitch + closed * wire * 1.05, mean / 2 * Math.sin(t * 2 * Math.PI)]);
  }
  return pipe(points, wire / 2, { segments: Math.round(turns * 60), around: 18 });
}

/** A flat label in x and y that a canvas is drawn on. */
export function label(w, h) {
  const made = new THREE.PlaneGeometry(w, h);
  made.userData.uv = 'own';
  return made;
}
