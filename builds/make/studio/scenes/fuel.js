import * as THREE from 'three';
import { block, folded, group, part, pipe, plate, round, rounded, turned } from '../geometry.js';
import { bolt, hexagon, nut } from '../hardware.js';
import { rule, scaleBar, soundMeter, tapeBlade, tapeCase } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';
import { wheel } from '../wheel.js';

const quarter = Math.PI / 2;

/** The tank between the rails with its two straps, from behind and below. */
const fuelTank = (renderer) => stage(renderer, [
  part(block(1800, 6, 1500, 1), m.underbody(), { at: [0, 236, 0] }),
  [-420, 420].map((x) => part(plate(rounded(80, 100, 6), 1500, { bevel: 1 }), m.underbody(), { at: [x, 180, 0] })),
  part(block(680, 200, 420, 46), m.castAluminium(), { at: [0, 110, 0] }), part(block(712, 8, 452, 3), m.castAluminium(), { at: [0, 120, 0] }),
  [-210, 210].map((x) => [
    part(folded([[-214, 226], [-216, 10], [-170, 6], [170, 6], [216, 10], [214, 226]], 2.5, 40, { radius: 30 }), m.zinc(), { at: [x, 0, 0], turn: [0, quarter, 0] }),
    part(block(42, 3, 40, 1), m.rubber(), { at: [x, 9, 0] }),
    group([bolt(10, 60)], { at: [x, -2, 190], turn: [Math.PI, 0, 0] }), group([nut(10, m.zinc(), { nylon: true })], { at: [x, 2, 190], turn: [Math.PI, 0, 0] }),
  ]),
  part(turned([[0.01, 0], [16, 0], [16, -8], [0.01, -8]]), m.brass(), { at: [-60, 10, 90] }), part(hexagon(19, 9), m.brass(), { at: [-60, 0, 90] }),
  part(pipe([[300, 170, 120], [380, 186, 170], [470, 210, 240], [560, 330, 280]], 26), m.rubber()),
  [[322, 176, 136], [446, 204, 224]].map((at) => part(round(28.5, 12, { bore: 26 }), m.zinc(), { at, turn: [0.5, 0, -1.1] })),
  part(pipe([[-300, 190, -150], [-345, 196, -60], [-372, 160, 40], [-374, 150, 700]], 4), m.zinc()),
  part(pipe([[-270, 190, -150], [-335, 204, -60], [-360, 174, 40], [-362, 164, 700]], 3), m.zinc()),
  part(pipe([[700, 60, -600], [380, 40, -330], [-100, 46, -360], [-420, 60, -560]], 26), m.rust()),
  part(plate(rounded(760, 180, 8), 1.5, { bevel: 0.4 }), m.machined(), { at: [0, 110, -262] }),
  part(block(3000, 4, 3000, 1), m.concrete(), { at: [0, -900, -600] }), backdrop({ floor: -900, far: -2600 }),
  group([scaleBar(100, 20)], { at: [-50, 6, 214], turn: [quarter, 0, 0] }),
], { eye: [-480, -320, 980], focus: [0, 70, 130], lens: 38, blur: 6, span: 900, lighting: { key: [-0.5, -0.25, 1], keySize: 0.4, keyStrength: 2.6, roomStrength: 1.5 } });

/** Fuel pipes clipped along the rail, the rule between two clips. */
const fuelLineClips = (renderer) => {
  const clip = (x) => group([
    part(folded([[-22, 1], [-13, 1], [-11, 9], [-1, 9], [1, 4], [3, 9], [12, 9], [14, 1], [30, 1]], 1.4, 14, { radius: 2.4 }), m.zinc(), { turn: [0, quarter, 0] }),
    group([bolt(6, 12, { mark: '' })], { at: [0, 2, -22], turn: [0, x, 0] }),
    part(block(14, 1.2, 26, 0.4), m.rubber(), { at: [0, 0.8, 2] }),
  ], { at: [x, 0, 0] });
  return stage(renderer, [
    part(block(1500, 60, 110, 6), m.underbody(), { at: [0, -30, 0] }), part(block(1900, 6, 900, 1), m.underbody(), { at: [0, -62, -40] }),
    [-250, 0, 250].map(clip),
    part(pipe([[-700, 5, 6], [0, 5, 6], [700, 5, 6]], 4), m.zinc()), part(pipe([[-700, 4.4, -7], [0, 4.4, -7], [700, 4.4, -7]], 3.2), m.zinc()),
    part(pipe([[-700, -50, 120], [700, -52, 130]], 2.4), m.zinc()),
    group([rule(300, 25)], { at: [-252, 0.4, 52], turn: [0, 0, 0] }),
    part(block(1.2, 0.4, 20, 0.1), m.plain(0xe8e4d8), { at: [-250, 1.3, 34] }), part(block(1.2, 0.4, 20, 0.1), m.plain(0xe8e4d8), { at: [0, 1.3, 34] }),
  ], { eye: [-200, 240, 310], focus: [-110, 2, 16], lens: 40, blur: 3, span: 460, lighting: { key: [0.7, 0.8, 0.3], keyStrength: 3 } });
};

const hollow = (r, wall, length, at, turn, material) => part(turned([[r - wall, 0], [r, 0], [r, length], [r - wall, length], [r - wall, 0]], { segments: 72 }), material, { at, turn });

/** The rear of the car: bumper, and the outlet that ends under it. */
const tail = (outletHeight, radius = 25.4, material = m.brightSteel()) => {
  const bumper = new THREE.Shape().moveTo(0, -60).lineTo(20, -58).bezierCurveTo(42, -40, 46, 20, 36, 52).lineTo(0, 58).closePath();
  return [
    part(plate(bumper, 2200, { bevel: 2 }), m.chassisBlack(), { at: [0, 430, 0], turn: [0, -quarter, 0] }),
    part(block(2200, 380, 20, 4), m.bodyGreen(), { at: [0, 690, -30] }),
    part(block(2200, 90, 60, 12), m.underbody(), { at: [0, 340, -140] }),
    part(block(2200, 60, 600, 8), m.underbody(), { at: [0, 372, -420] }),
    hollow(radius, 1.6, 420, [0, outletHeight, 30], [-quarter, 0, 0], material),
    part(block(30, 60, 4, 1), m.zinc(), { at: [0, outletHeight + 52, -60] }), part(round(14, 30), m.rubber(), { at: [0, outletHeight + 70, -60] }),
    part(round(radius - 1.4, 2), m.plain(0x070707, { roughness: 1 }), { at: [0, outletHeight, -10], turn: [quarter, 0, 0] }),
  ];
};

const exhaustOutlet = (height, radius, material) => (renderer) => stage(renderer, [
  ground(m.concrete(), 6000), tail(height, radius, material?.()),
  group([tapeBlade(420, { width: 25 })], { at: [44, 0, 34] }),
  group([tapeCase()], { at: [84, 33, 30] }),
  group([scaleBar(100)], { at: [-110, 0.4, 70], turn: [0, 0.15, 0] }),
  wheel({ at: [-640, 307, -460], turn: [0, -quarter, 0] }),
], { eye: [240, 330, 560], focus: [22, 232, 30], lens: 36, blur: 4, span: 620, lighting: { key: [0.5, 0.75, 0.9], keyStrength: 3 } });

/** The sound meter behind the outlet, at its height and 45 degrees to its flow. */
const soundAtOutlet = (reading, radius, material) => (renderer) => stage(renderer, [
  ground(m.asphalt(), 8000), tail(268, radius, material?.()),
  group([soundMeter(reading), part(round(9, 900), m.machined(), { at: [200, -470, 0] })], { at: [350, 268, 385], turn: [0, -quarter / 2 + 0.06, 0] }),
  part(block(3, 0.6, 500, 0.2), m.plain(0xe9e6da, { roughness: 0.9 }), { at: [180, 0.6, 210], turn: [0, 0.78, 0] }),
], { eye: [210, 520, 1250], focus: [380, 280, 380], lens: 34, blur: 5, span: 1100, exposure: 1.35, balance: [1.05, 1, 0.93], lighting: { surround: { sky: true }, key: [0.3, 0.8, 0.9], keySize: 0.1, keyStrength: 3.6, roomStrength: 0.7, keyColour: 0xfff4e4 }, back: 0x9fb0bf });

/** The radiator's lower corner in its rubber, the core, and the hose. */
const radiatorMount = (renderer) => {
  const fins = [];
  for (let k = 0; k < 26; k++) fins.push(part(block(3, 420, 26, 0.5), m.machined(), { at: [-150 + k * 13, 210, 0] }));
  const rows = [];
  for (let k = 0; k < 70; k++) rows.push(part(block(342, 0.5, 24, 0.1), m.zinc(), { at: [10, 6 + k * 6, 0], turn: [0.08, 0, 0] }));
  return stage(renderer, [
    backdrop({ floor: -700, far: -1200 }),
    part(block(1400, 90, 130, 8), m.underbody(), { at: [0, -66, 0] }), part(plate(rounded(1400, 20, 3), 10, { bevel: 1 }), m.underbody(), { at: [0, -14, 60] }),
    fins, rows,
    part(block(360, 44, 52, 10), m.blackPlastic(), { at: [10, -2 + 20, 0] }), part(block(14, 420, 30, 2), m.castAluminium(), { at: [-168, 220, 0] }),
    part(turned([[0.01, -34], [9, -34], [10, 0], [0.01, 0]]), m.blackPlastic(), { at: [-120, -4, 0] }),
    part(turned([[10, -22], [19, -22], [21, -18], [21, -2], [18, 0], [10, 0]]), m.rubber(), { at: [-120, -4, 0] }),
    part(plate(rounded(80, 74, 8), 4, { bevel: 0.6, holes: [[0, 0, 18]] }), m.chassisBlack(), { at: [-120, -19, 0], turn: [quarter, 0, 0] }),
    [-28, 28].map((z) => group([bolt(8, 20)], { at: [-94, -17, z] })),
    part(turned([[14, 0], [19, 0], [19, 60], [14, 60]]), m.blackPlastic(), { at: [90, 30, 20], turn: [quarter, 0, 0] }),
    part(pipe([[90, 30, 60], [96, 34, 130], [40, 60, 190], [-60, 130, 230]], 23), m.rubber()),
    part(turned([[23.4, -6], [25, -6], [25, 6], [23.4, 6]]), m.zinc(), { at: [90.6, 30.4, 74], turn: [quarter, 0, 0] }), part(block(14, 10, 12, 2), m.zinc(), { at: [90, 56, 74] }),
    group([scaleBar(100)], { at: [-170, -12, 70], turn: [0, 0, 0] }),
  ], { eye: [-330, 190, 400], focus: [-84, 12, 20], lens: 30, blur: 3.4, span: 420, lighting: { key: [-0.8, 0.8, 0.7] } });
};

/** The pipe tacked over the axle tube, the axle jacked to its stop. */
const exhaustTacked = (renderer) => {
  const bend = [[-420, 40, 210], [-200, 44, 190], [-60, 120, 120], [40, 168, 20], [130, 150, -110], [240, 60, -230], [460, 40, -270]];
  const tackAt = (x, y, z) => [0, 1, 2].map((k) => part(turned([[0.01, -3], [3.6, -2.4], [4.4, 0], [3.6, 2.4], [0.01, 3]], { segments: 24 }), m.brightSteel(), { at: [x + 4 * k - 4, y + 24 * Math.cos(k * 2.1), z + 24 * Math.sin(k * 2.1)] }));
  return stage(renderer, [
    part(block(2400, 8, 1400, 1), m.underbody(), { at: [0, 270, -300] }), backdrop({ floor: -500, far: -1800 }),
    part(turned([[0.01, -900], [40, -900], [40, 900], [0.01, 900]]), m.castIron(), { at: [40, 60, 0], turn: [quarter, 0, 0.1] }),
    part(pipe(bend, 25.4, { segments: 260, around: 32 }), m.brightSteel()),
    [[-130, 80, 158], [86, 162, -44]].map(([x, y, z]) => [tackAt(x, y, z), part(round(26.4, 1.6, { bore: 25 }), m.rust(), { at: [x, y, z], turn: [0.6, 0, -1.1] })]),
    part(plate(rounded(60, 40, 6), 3, { bevel: 0.4 }), m.zinc(), { at: [-300, 78, 205] }), part(round(16, 30), m.rubber(), { at: [-300, 110, 205] }),
    group([tapeBlade(160, { width: 19 })], { at: [64, 102, 44], turn: [0, 0.3, 0] }),
    group([scaleBar(100)], { at: [-110, 102, 30], turn: [quarter, 0, 0] }),
  ], { eye: [-260, 210, 620], focus: [0, 112, 40], lens: 36, blur: 4, span: 640, lighting: { key: [-0.7, 0.5, 0.9], keyStrength: 3.2 } });
};

export const sets = {
  'fuel-tank': fuelTank, 'fuel-line-clips': fuelLineClips, 'radiator-mount': radiatorMount, 'exhaust-tacked': exhaustTacked,
  'exhaust-outlet': exhaustOutlet(268), 'exhaust-before': exhaustOutlet(283, 21, m.rust), 'sound-meter': soundAtOutlet('89.2'), 'noise-before': soundAtOutlet('84.4', 21, m.rust),
};
