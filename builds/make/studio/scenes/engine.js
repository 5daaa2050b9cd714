import * as THREE from 'three';
import { canvasTexture, stamped, write } from '../drawn.js';
import { block, group, label, part, pipe, plate, round, rounded, swept, turned } from '../geometry.js';
import { bolt, hexagon, nut, washer } from '../hardware.js';
import { micrometer, scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';

const quarter = Math.PI / 2;

/** The number pad on the block's deck side. */
const engineNumber = (renderer) => {
  const { map, bumpMap } = stamped(104, 22, 'TW30-771920', 9, { seed: 3 });
  const pad = Object.assign(m.plain(0xffffff, { metalness: 0.7, roughness: 0.42, bumpScale: 6 }), { map, bumpMap });
  return stage(renderer, [
    part(block(420, 260, 60, 8), m.blockBlue(), { at: [0, -60, -32] }),
    part(block(420, 14, 70, 2), m.machined(), { at: [0, 64, -30] }),
    part(block(440, 3, 76, 0.5), m.brass(), { at: [0, 72, -32] }),
    part(block(440, 70, 90, 10), m.castAluminium(), { at: [0, 110, -36] }),
    part(block(118, 34, 16, 4), m.blockBlue(), { at: [0, 34, 4] }),
    part(label(104, 22), pad, { at: [0, 34, 12.06] }),
    part(block(106, 24, 0.5, 0.2), m.machined(), { at: [0, 34, 11.8] }),
    [-150, 150].map((x) => group([part(round(24, 10, { edge: 1 }), m.brass()), part(round(18, 2, { bore: 0, edge: 0.5 }), m.brass(), { at: [0, 5, 0] })], { at: [x * 0.66, 28, 0], turn: [quarter, 0, 0] })),
    part(turned([[0.01, 0], [16, 0], [20, 6], [20, 20], [16, 30], [0.01, 30]]), m.blockBlue(), { at: [-86, -60, -2], turn: [quarter, 0, 0] }),
    [-70, 0, 70].map((x) => group([bolt(10, 30)], { at: [x, -26, 0], turn: [quarter, x, 0] })),
    part(block(420, 22, 12, 4), m.blockBlue(), { at: [0, -26, -4] }),
    part(block(420, 12, 30, 4), m.blockBlue(), { at: [0, -84, 6] }),
    group([scaleBar(100)], { at: [-50, 12, 14], turn: [quarter - 0.05, 0, 0] }),
  ], { eye: [-60, 70, 260], focus: [0, 26, 10], lens: 31, blur: 3, span: 300, lighting: { key: [-0.9, 0.7, 0.5], keySize: 0.3, keyStrength: 2.4 } });
};

/** A rubber mount between the engine's bracket and the front crossmember. */
const engineMount = (renderer) => stage(renderer, [
  part(block(900, 120, 240, 16), m.chassisBlack(), { at: [0, -64, 20] }),
  part(block(900, 420, 120, 14), m.blockBlue(), { at: [40, 210, -190] }),
  [-60, 40, 140].map((x) => part(block(16, 300, 30, 6), m.blockBlue(), { at: [x + 60, 190, -124] })),
  group([
    part(plate(rounded(120, 90, 12), 6, { bevel: 0.8 }), m.zinc(), { turn: [quarter, 0, 0] }),
    part(turned([[0.01, 3], [36, 3], [38, 6], [33, 14], [32, 26], [38, 44], [36, 47], [0.01, 47]]), m.rubber()),
    part(plate(rounded(96, 76, 12), 6, { bevel: 0.8 }), m.zinc(), { at: [0, 50, 0], turn: [quarter, 0, 0] }),
    [-48, 48].map((x) => group([washer(10), group([bolt(10, 36)], { at: [0, 2, 0], turn: [0, x, 0] })], { at: [x, 3, 26] })),
    group([washer(12), group([nut(12, m.zinc(), { nylon: true })], { at: [0, 2, 0] }), part(round(5.6, 12), m.zinc(), { at: [0, 16, 0] })], { at: [0, 60, 0] }),
  ], { at: [0, 0, 20], turn: [0, 0, 0] }),
  part(plate([[-52, 0], [52, 0], [52, 8], [46, 130], [-46, 130], [-52, 8]], 8, { bevel: 1 }), m.chassisBlack(), { at: [0, 53, -40] }),
  part(block(104, 8, 100, 2), m.chassisBlack(), { at: [0, 57, 10] }),
  [-44, 44].map((x) => part(plate([[0, 0], [92, 0], [0, 110]], 6, { bevel: 0.6 }), m.chassisBlack(), { at: [x, 60, -38], turn: [0, -quarter, 0] })),
  [[-28, 150], [28, 150]].map(([x, y]) => group([bolt(10, 20)], { at: [x, y, -36], turn: [quarter, x, 0] })),
  part(block(90, 40, 110, 8), m.blockBlue(), { at: [0, 165, -100] }),
  part(pipe([[-200, 40, -40], [-120, 60, -20], [-90, 160, -60], [-120, 320, -90]], 9), m.rubber()),
  group([scaleBar(100)], { at: [70, -3.4, 118] }),
  part(block(4, 12, 1, 0.2), m.plain(0xe8d14a, { roughness: 0.8 }), { at: [7.2, 66, 27] }),
], { eye: [190, 190, 420], focus: [0, 40, 20], lens: 29, blur: 4, span: 440, lighting: { key: [0.9, 0.8, 0.7] } });

/** A bearing shell's half with the squeezed plastic strip and the maker's paper scale. */
const bearingGauge = (renderer) => {
  const paper = canvasTexture(1400, 360, (context, W, H) => {
    context.fillStyle = '#cfc9b8';
    context.fillRect(0, 0, W, H);
    [[0.025, 190], [0.038, 125], [0.051, 93], [0.076, 62], [0.102, 47]].forEach(([gap, width], i) => {
      context.fillStyle = '#23507c';
      context.fillRect(110 + i * 260, 130 - width / 2, 170, width);
      write(context, gap.toFixed(3), 195 + i * 260, 290, 66, { colour: '#16304a' });
    });
    write(context, 'mm', 50, 290, 52, { colour: '#16304a' });
  });
  const shell = swept(96, 6, (u, v) => {
    const turn = Math.PI * u;
    const ring = [[30.0, -11], [30.0, 11], [31.9, 11.6], [32, 11.6], [32, -11.6], [30.2, -11.6], [30.0, -11]];
    const [r, z] = ring[Math.round(v * 6)];
    return [r * Math.cos(turn), -r * Math.sin(turn), z];
  }, { length: 94, girth: 50, crease: 0.5 });
  const strip = swept(40, 12, (u, v) => {
    const [x, turn] = [(u - 0.5) * 20, (v - 0.5)];
    const wide = 1.72 + 0.12 * Math.sin(u * 21) + 0.05 * Math.sin(u * 57);
    return [turn * 2 * wide, -29.93 + 0.06 * Math.cos(turn * Math.PI) + (turn * 2 * wide) ** 2 / 60, x];
  }, { length: 20, girth: 3 });
  return stage(renderer, [
    ground(m.cloth()),
    group([
      part(shell, m.bearingMetal()),
      part(plate((() => {
        const cap = new THREE.Shape().moveTo(-56, 0).lineTo(-32.1, 0).absarc(0, 0, 32.1, Math.PI, 2 * Math.PI, false).lineTo(56, 0).lineTo(56, -26).bezierCurveTo(44, -30, 44, -48, 24, -52).lineTo(-24, -52).bezierCurveTo(-44, -48, -44, -30, -56, -26).closePath();
        return cap;
      })(), 25, { bevel: 0.8, curve: 60 }), m.castIron()),
      [[-45], [45]].map(([x]) => part(new THREE.CircleGeometry(5.6, 40), m.plain(0x0b0b0b, { roughness: 1 }), { at: [x, 0.14, 0], turn: [-quarter, 0, 0] })),
      part(block(22, 0.4, 24, 0.1), m.machined(), { at: [-45, -0.15, 0] }), part(block(22, 0.4, 24, 0.1), m.machined(), { at: [45, -0.15, 0] }),
      part(strip, m.plain(0x2f9a4c, { roughness: 0.6 })),
      part(label(46, 12), Object.assign(m.plain(0xffffff, { roughness: 0.9, side: THREE.DoubleSide }), { map: paper }), { at: [9.8, -24.6, -3.4], turn: [-quarter - 0.0, 0, quarter], order: 'YXZ' }),
    ], { at: [0, 53, 0], turn: [0, 0.25, 0] }),
    group([scaleBar(100, 10)], { at: [-46, 0.4, 62], turn: [0, 0.05, 0] }),
  ], { eye: [34, 190, 96], focus: [3, 26, 6], lens: 25, blur: 1.4, span: 170, lighting: { key: [-0.5, 1, 0.5], keyStrength: 2 } });
};

/** A main journal of the crankshaft in the micrometer. */
const crankMicrometer = (renderer) => {
  const web = (x, turn) => part(plate((() => {
    const shape = new THREE.Shape().moveTo(-46, -20).bezierCurveTo(-50, 40, -34, 74, 0, 76).bezierCurveTo(34, 74, 50, 40, 46, -20).bezierCurveTo(60, -60, 34, -74, 0, -74).bezierCurveTo(-34, -74, -60, -60, -46, -20);
    return shape;
  })(), 20, { bevel: 2.5, curve: 32 }), m.castIron(), { at: [x, 0, 0], turn: [turn, quarter, 0], order: 'XYZ' });
  const journal = (x, y, z, r, w) => part(turned([[0.01, -w / 2], [r + 3, -w / 2], [r + 1, -w / 2 + 1.2], [r, -w / 2 + 3], [r, w / 2 - 3], [r + 1, w / 2 - 1.2], [r + 3, w / 2], [0.01, w / 2]], { segments: 120 }), m.machined(), { at: [x, y, z], turn: [0, 0, quarter] });
  return stage(renderer, [
    ground(m.bench()), backdrop({ floor: 0 }),
    group([
      journal(0, 0, 0, 29.99, 34), web(-27, 0.4), web(27, 2.5), journal(-54, 33, 14, 25, 34), journal(54, -30, 22, 25, 34), web(-81, 0.4), web(81, 2.5), journal(-108, 0, 0, 30, 34), journal(108, 0, 0, 30, 34), web(-135, 4.5), web(135, 4.5),
      part(round(2.6, 2, { edge: 0.8 }), m.plain(0x0a0a0a), { at: [5, 24, 18], turn: [0.93, 0, 0] }),
    ], { at: [0, 96, 0] }),
    [-108, 108].map((x) => part(plate([[-70, 0], [70, 0], [34, 66], [30, 60], [0, 63], [-30, 60], [-34, 66]], 40, { bevel: 2 }), m.bench(), { at: [x, 0, 0], turn: [0, quarter, 0] })),
    group([group([micrometer(59.98, { from: 50, reading: 59.98 })], { at: [0, 0, -29.99], turn: [0, -quarter, 0] })], { at: [0, 96, 0], turn: [-0.62, 0, 0] }),
  ], { eye: [150, 250, 290], focus: [6, 112, 50], lens: 28, blur: 3.2, span: 320, lighting: { key: [0.7, 0.9, 0.7] } });
};

/** The damper's mark at the pointer's scale. */
const timingMark = (renderer) => {
  const pulley = turned([[20, -16], [96, -16], [100, -14], [100, -10], [88, -2], [88, 2], [100, 10], [101, 12], [101, 26], [99, 28], [90, 28], [86, 22], [52, 22], [46, 28], [20, 28]], { segments: 180, crease: 0.5 });
  const scale = canvasTexture(1300, 420, (context, W, H) => {
    context.fillStyle = '#bdbcb6';
    context.fillRect(0, 0, W, H);
    for (let k = -1; k <= 4; k++) {
      context.fillStyle = '#121212';
      const x = W * (0.16 + (k + 1) * 0.135);
      context.fillRect(x - 5, H * 0.5, 10, H * 0.5);
      write(context, k === 0 ? '0' : String(Math.abs(k) * 5), x, H * 0.3, 120, { weight: 700 });
      if (k < 4) for (let j = 1; j < 5; j++) context.fillRect(x + j * W * 0.027 - 2.5, H * 0.74, 5, H * 0.26);
    }
    write(context, 'BTDC', W * 0.92, H * 0.68, 74, { weight: 700 });
  });
  return stage(renderer, [
    part(block(420, 420, 80, 10), m.castAluminium(), { at: [0, 0, -70] }),
    [[-150, 110], [150, 110], [-150, -60], [150, -60], [-90, 160], [90, 160]].map(([x, y]) => group([part(turned([[0.01, 0], [17, 0], [15, 12], [0.01, 12]]), m.castAluminium()), group([bolt(8, 14, { mark: '' })], { at: [0, 12, 0], turn: [0, x, 0] })], { at: [x, y, -31], turn: [quarter, 0, 0] })),
    group([
      part(pulley, m.blockBlue(), { turn: [quarter, 0, 0] }),
      part(turned([[34, 0], [50, 0], [50, 3], [34, 3]]), m.rubber(), { at: [0, 0, 22], turn: [quarter, 0, 0] }),
      part(round(20, 10, { edge: 1 }), m.machined(), { at: [0, 0, 26], turn: [quarter, 0, 0] }),
      part(hexagon(27, 18), m.zinc(), { at: [0, 0, 38], turn: [quarter, 0.3, 0] }),
      part(block(1.6, 4.5, 15, 0.1), m.plain(0x080808, { roughness: 1 }), { at: [0, 99.4, 19] }),
      part(block(2, 0.3, 14, 0.05), m.plain(0xf2f0e4, { roughness: 0.8 }), { at: [0, 101.2, 19] }),
      [0, 1, 2].map((k) => part(round(9, 2, { edge: 0.5 }), m.plain(0x0d0d0d, { roughness: 1 }), { at: [68 * Math.cos(k * 2.094), 68 * Math.sin(k * 2.094), 22.4], turn: [quarter, 0, 0] })),
    ], { turn: [0, 0, 0] }),
    group([
      part(plate([[-20, 0], [78, 0], [78, 22], [-20, 22]], 2.4, { bevel: 0.4 }), m.machined()),
      part(label(96, 20), Object.assign(m.plain(0xffffff, { metalness: 0.3, roughness: 0.5 }), { map: scale }), { at: [29, 11, 1.25] }),
      part(block(14, 40, 3, 0.5), m.zinc(), { at: [70, 30, -6] }),
    ], { at: [-10.4, 103.5, 12], turn: [-0.5, 0, 0] }),
    part(pipe([[-82, -60, 0], [-92, 10, 0], [-200, 170, 0]], 5), m.rubber()),
    part(pipe([[70, -66, 0], [92, 0, 0], [170, 200, 0]], 5), m.rubber()),
  ], { eye: [16, 240, 235], focus: [14, 100, 14], lens: 28, blur: 2, span: 280, lighting: { key: [-0.6, 0.8, 0.9] } });
};

export const sets = { 'engine-number': engineNumber, 'engine-mount': engineMount, 'bearing-gauge': bearingGauge, 'crank-micrometer': crankMicrometer, 'timing-mark': timingMark };
