import { canvasTexture, stamped, write } from '../drawn.js';
import { dial, indicator } from '../dials.js';
import { block, coil, group, label, part, pipe, plate, round, rounded, turned } from '../geometry.js';
import { bolt, hexagon, nut } from '../hardware.js';
import { meter, rule, scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';
import { fillet, tack } from '../weld.js';
import { wheel } from '../wheel.js';

const quarter = Math.PI / 2;

/** The engine's bracket: a short tube on its plate, tacked or welded. */
const bracket = (joined) => (renderer) => {
  const side = (z, y, seed) => joined({ from: [-25, 4.2, z], to: [25, 4.2, z], a: [0, 1, 0], b: [0, 0, y], leg: 4, seed });
  return stage(renderer, [
    ground(m.bench()), backdrop(),
    group([
      part(plate(rounded(130, 110, 8), 8, { bevel: 0.5, holes: [[-48, 36, 5.4], [48, 36, 5.4], [0, -42, 5.4]] }), m.brightSteel(), { turn: [quarter, 0, 0] }),
      part(plate(rounded(50, 30, 5, [44, 24, 2.4]), 95, { bevel: 0.2 }), m.millScale(), { at: [0, 51.5, 0], turn: [quarter, 0, 0] }),
      side(15, 1, 21), side(-15, -1, 22),
      joined({ from: [-25.2, 4.2, -13], to: [-25.2, 4.2, 13], a: [0, 1, 0], b: [-1, 0, 0], leg: 4, seed: 23 }), joined({ from: [25.2, 4.2, -13], to: [25.2, 4.2, 13], a: [0, 1, 0], b: [1, 0, 0], leg: 4, seed: 24 }),
    ], { at: [0, 4, 0], turn: [0, 0.5, 0] }),
    group([rule(150)], { at: [-76, 0, 96], turn: [0, 0.06, 0] }),
  ], { eye: [110, 190, 290], focus: [0, 24, 16], lens: 30, blur: 2.4, span: 260, lighting: { key: [-0.7, 0.9, 0.6], keyStrength: 2.6 } });
};
const tacks = (at) => [0.12, 0.82].map((t, i) => tack({ ...at, from: at.from.map((v, k) => v + (at.to[k] - v) * t), to: at.from.map((v, k) => v + (at.to[k] - v) * (t + 0.16)), seed: at.seed + i }));

/** A link's ears on the axle tube, with the weld along the tube on the outer side of each, or tacks at some of its places. */
const axleBracket = (bead, places) => (renderer) => {
  const along = (side) => Array.from({ length: 14 }, (_, k) => {
    const [from, middle, to] = [k, k + 0.5, k + 1].map((i) => ((-172 + i * 11.7) * Math.PI) / 180);
    const at = (t) => [40.4 * Math.cos(t), 34 + 40.4 * Math.sin(t), side * 22.6];
    return bead({ from: at(from), to: at(to), a: [0, 0, side], b: [Math.cos(middle), Math.sin(middle), 0], leg: 5, seed: 40 + k + side });
  }).filter((_, k) => !places || places.includes(k));
  const ear = plate([[-60, 40], [-60, 8], [-44, -12], [-30, -96], [0, -116], [30, -96], [44, -12], [60, 8], [60, 40]], 5, { bevel: 0.4, holes: [[0, -84, 8]] });
  return stage(renderer, [
    backdrop({ floor: -420, far: -1500 }),
    part(turned([[0.01, -700], [40, -700], [40, 700], [0.01, 700]], { segments: 96 }), m.castIron(), { at: [0, 34, 0], turn: [quarter, 0, 0] }),
    part(turned([[40.2, -44], [40.4, -44], [40.4, 44], [40.2, 44]], { segments: 96 }), m.brightSteel(), { at: [0, 34, 0], turn: [quarter, 0, 0] }),
    [-20, 20].map((z) => part(ear, m.brightSteel(), { at: [0, 0, z] })),
    along(-1), along(1),
    part(turned([[0.01, -260], [12, -260], [12, 260], [0.01, 260]]), m.machined(), { at: [0, -84, 0], turn: [quarter, 0, 0] }),
    group([scaleBar(100)], { at: [-50, -64, 23.6], turn: [quarter, 0, 0] }),
    part(turned([[0.01, 0], [60, 0], [66, 8], [60, 30], [0.01, 30]]), m.castIron(), { at: [0, 78, -150] }),
  ], { eye: [-270, -90, 330], focus: [-4, -20, 20], lens: 32, blur: 3, span: 420, lighting: { key: [-0.6, 0.5, 1], keyStrength: 3 } });
};

/** The dial on the crankshaft flange, its tip in the bore of the clutch housing. */
const housingDial = (renderer) => stage(renderer, [
  part(plate(rounded(460, 420, 60), 30, { bevel: 6 }), m.castAluminium(), { at: [0, 0, -60] }),
  part(turned([[70, -6], [104, -6], [110, 0], [110, 8], [70, 8]], { segments: 120 }), m.castAluminium(), { at: [0, 0, -40], turn: [quarter, 0, 0] }),
  part(turned([[62, -30], [70, -30], [70, 9], [62, 9]], { segments: 120 }), m.machined(), { at: [0, 0, -40], turn: [quarter, 0, 0] }),
  part(round(60, 4), m.plain(0x111111, { roughness: 1 }), { at: [0, 0, -70], turn: [quarter, 0, 0] }),
  part(round(38, 20), m.machined(), { at: [0, 0, -52], turn: [quarter, 0, 0] }), [0, 1, 2, 3, 4, 5].map((k) => group([bolt(10, 14, { mark: '' })], { at: [29 * Math.cos(k * 1.047), 29 * Math.sin(k * 1.047), -42], turn: [quarter, k, 0] })),
  part(block(30, 24, 34, 3), m.blockBlue(), { at: [0, 42, -38] }), part(round(5, 60), m.machined(), { at: [0, 34, -38] }),
  group([indicator(0.11)], { at: [0, -2, -28], turn: [0, 0, 0] }),
  [[-180, 150], [180, 150], [-180, -150], [180, -150], [0, 178], [0, -178]].map(([x, y]) => [part(round(18, 10, { edge: 2 }), m.castAluminium(), { at: [x, y, -42], turn: [quarter, 0, 0] }), part(round(6, 12), m.plain(0x0a0a0a, { roughness: 1 }), { at: [x, y, -41], turn: [quarter, 0, 0] })]),
], { eye: [90, 80, 380], focus: [0, -4, 0], lens: 30, blur: 3, span: 380, lighting: { key: [-0.7, 0.8, 0.9] } });

/** The tag under a bolt of the axle's cover. */
const axleTag = (renderer) => {
  const { map, bumpMap } = stamped(66, 24, '41-12', 9, { base: '#99968c', seed: 5 });
  const number = stamped(66, 14, 'TWA-7-44091', 5.4, { base: '#99968c', seed: 7 });
  const metal = (textures) => Object.assign(m.plain(0xffffff, { metalness: 0.6, roughness: 0.45, bumpScale: 5 }), textures);
  return stage(renderer, [
    part(turned([[0.01, 0], [150, 0], [150, 6], [120, 26], [60, 46], [0.01, 50]], { segments: 96 }), m.castIron(), { at: [0, 0, -40], turn: [quarter, 0, 0] }),
    Array.from({ length: 10 }, (_, k) => group([bolt(8, 16, { mark: '' })], { at: [138 * Math.cos(k * 0.628 + 0.05), 138 * Math.sin(k * 0.628 + 0.05), -32], turn: [quarter, k, 0] })),
    group([part(plate(rounded(96, 44, 6), 1.2, { bevel: 0.2, holes: [[-38, 0, 4.4]] }), m.zinc()), part(label(66, 24), metal({ map, bumpMap }), { at: [12, 8, 0.7] }), part(label(66, 14), metal(number), { at: [12, -12, 0.7] })], { at: [152, -2, -22], turn: [0, -0.06, -0.12] }),
    group([bolt(8, 16, { mark: '' })], { at: [114, 2, -21], turn: [quarter, 0.4, 0] }),
    group([scaleBar(100)], { at: [96, -58, -16], turn: [quarter, 0, 0] }), part(block(600, 600, 20, 6), m.underbody(), { at: [100, 0, -120] }),
  ], { eye: [70, 40, 300], focus: [138, -14, -24], lens: 28, blur: 2, span: 320, lighting: { key: [-0.6, 0.7, 0.8], keyStrength: 2.4 } });
};

/** Old and new front springs beside each other. */
const springsBeside = (renderer) => stage(renderer, [
  ground(m.bench()), backdrop(),
  part(coil({ mean: 115, wire: 12, height: 352, turns: 8 }), m.rust(), { at: [-90, 6, -20] }), part(coil({ mean: 115.4, wire: 12.6, height: 331, turns: 8 }), m.redPaint(), { at: [80, 6.3, -20] }),
  group([rule(300, 25)], { at: [166, 0, -6], turn: [0, 0, quarter] }), part(block(60, 26, 70, 4), m.chassisBlack(), { at: [186, 13, -30] }),
  group([part(block(34, 16, 0.6, 0.1), m.plain(0xb9b4a6, { roughness: 0.9 })), part(label(34, 16), Object.assign(m.plain(0xffffff, { roughness: 0.9 }), { map: canvasTexture(680, 320, (context, W, H) => { context.fillStyle = '#b9b4a6'; context.fillRect(0, 0, W, H); write(context, '114-F', W / 2, H / 2, 190, { weight: 700 }); }) }), { at: [0, 0, 0.4] })], { at: [88, 180, 46], turn: [0, 0.1, 0] }),
  group([rule(150)], { at: [-70, 0, 130], turn: [0, 0.05, 0] }),
], { eye: [60, 330, 900], focus: [20, 165, 0], lens: 30, blur: 4, span: 560, lighting: { key: [-0.6, 0.8, 0.8] } });

/** Toe plate on a front wheel with its display. */
const toePlate = (reading, size) => (renderer) => stage(renderer, [
  ground(m.concrete(), 6000, -308), backdrop({ floor: -308, far: -2200, scale: 1.4 }), wheel({ turn: [0, 0, 0.5] }, size ? { size } : {}),
  part(block(620, 46, 16, 3), m.machined(), { at: [0, 0, 112] }), [-180, 180].map((x) => [part(block(20, 60, 34, 3), m.blackPlastic(), { at: [x, 0, 100] }), part(round(7, 60), m.machined(), { at: [x, 0, 90], turn: [quarter, 0, 0] })]),
  group([meter(150, 96, 44, reading, '°', 'TOE IN', { body: m.orangePlastic() })], { at: [0, 66, 128], turn: [-0.15, 0, 0] }), part(round(9, 70), m.blackPlastic(), { at: [292, 0, 140], turn: [quarter, 0, 0] }),
  part(block(420, 20, 420, 3), m.zinc(), { at: [0, -318, 0] }),
], { eye: [300, 240, 900], focus: [10, 20, 100], lens: 34, blur: 4, span: 820, lighting: { key: [0.6, 0.8, 0.9], keyStrength: 2.8 } });

/** A pressure gauge on its hose, at the test. */
const pressureGauge = (value) => (renderer) => stage(renderer, [
  part(block(1200, 700, 40, 10), m.bodyGreen(), { at: [0, 60, -260] }), part(block(1400, 60, 500, 10), m.underbody(), { at: [0, -150, -100] }), backdrop({ floor: -500, far: -1500 }),
  group([dial(52, { most: 600, step: 100, minor: 20, value, unit: 'kPa', body: m.chassisBlack() }), part(round(11, 40), m.brass(), { at: [0, -70, -12] }), part(hexagon(24, 16), m.brass(), { at: [0, -64, -12] })], { turn: [-0.1, 0.06, 0] }),
  part(pipe([[0, -88, -12], [-10, -130, 4], [-90, -140, 60], [-220, -100, 20], [-330, -20, -90]], 9), m.rubber()),
  part(turned([[0.01, -60], [22, -60], [24, -50], [24, 60], [0.01, 60]]), m.redPaint(), { at: [170, -90, 20], turn: [0, 0, 1.2] }), part(round(9, 70), m.blackPlastic(), { at: [252, -58, 20], turn: [0, 0, 1.2] }),
], { eye: [30, 40, 360], focus: [6, -16, 0], lens: 31, blur: 3, span: 420, lighting: { key: [-0.5, 0.8, 0.9], keyStrength: 2.4 } });

/** A gauge under the sill while the body is twisted. */
const twistGauge = (value) => (renderer) => stage(renderer, [
  ground(m.concrete(), 5000, -170), backdrop({ floor: -170, far: -1800 }),
  part(block(1600, 120, 130, 16), m.bodyGreen(), { at: [0, 100, -60] }), part(plate(rounded(1600, 40, 6), 12, { bevel: 1 }), m.underbody(), { at: [0, 44, -60] }), part(block(60, 4, 50, 1), m.machined(), { at: [0, 22, -40] }),
  group([indicator(value)], { at: [0, -43, -36], turn: [0, 0, Math.PI] }), part(round(8, 300), m.machined(), { at: [64, -40, -70] }), part(round(6, 90), m.machined(), { at: [30, -46, -60], turn: [0, 0, quarter] }), part(block(120, 50, 90, 6), m.blockBlue(), { at: [64, -145, -70] }), part(block(30, 26, 26, 3), m.chassisBlack(), { at: [64, -46, -66] }),
  part(block(90, 240, 90, 6), m.chassisBlack(), { at: [420, -60, -60] }), part(block(140, 12, 140, 2), m.chassisBlack(), { at: [420, -164, -60] }), part(round(26, 30), m.machined(), { at: [420, 60, -60] }),
  group([scaleBar(100)], { at: [-140, 34, 8], turn: [quarter, 0, 0] }),
], { eye: [-120, 40, 430], focus: [16, -20, -40], lens: 34, blur: 3, span: 480, lighting: { key: [-0.5, 0.5, 1], keyStrength: 2.8 } });

/** The battery in its tray. */
const battery = (renderer) => stage(renderer, [
  part(block(1200, 700, 40, 10), m.bodyGreen(), { at: [0, 60, -300] }), part(block(500, 300, 700, 40), m.bodyGreen(), { at: [-420, -60, 0] }), part(block(330, 20, 250, 6), m.chassisBlack(), { at: [0, -96, 0] }),
  part(block(240, 165, 170, 8), m.blackPlastic(), { at: [0, 0, 0] }), part(block(244, 26, 174, 6), m.greyPlastic(), { at: [0, 78, 0] }),
  [[-84, 0xa02820], [84, 0x20262c]].map(([x, colour]) => [part(turned([[0.01, 0], [9.5, 0], [8.5, 18], [0.01, 18]]), m.machined(), { at: [x, 91, 48] }), part(block(34, 16, 26, 4), m.brass(), { at: [x, 98, 48] }), group([bolt(6, 20, { mark: '' })], { at: [x + 16, 106, 48] }), part(pipe([[x, 100, 62], [x + 8, 112, 100], [x * 1.5, 70, 150], [x * 2.2, -90, 190]], 8), m.plain(colour, { roughness: 0.6 }))]),
  part(block(270, 6, 22, 1), m.zinc(), { at: [0, 95, -10] }), [-132, 132].map((x) => [part(round(4, 190), m.zinc(), { at: [x, 0, -10] }), group([nut(8)], { at: [x, 98, -10] })]),
  part(label(150, 50), Object.assign(m.plain(0xffffff, { roughness: 0.7 }), { map: canvasTexture(1200, 400, (context, W, H) => { context.fillStyle = '#b8b6ae'; context.fillRect(0, 0, W, H); write(context, '12 V   60 Ah', W / 2, H / 2, 170, { weight: 700, colour: '#1c2a44' }); }) }), { at: [0, 10, 85.6] }),
  group([scaleBar(100)], { at: [-50, -84, 108], turn: [quarter - 0.2, 0, 0] }),
], { eye: [150, 260, 520], focus: [0, 14, 20], lens: 34, blur: 4, span: 480, lighting: { key: [0.6, 0.9, 0.6] } });

/** The loom in its sleeve through the bulkhead. */
const loom = (renderer) => stage(renderer, [
  part(block(1200, 800, 16, 4), m.bodyGreen(), { at: [0, 0, -60] }), part(block(1200, 50, 60, 14), m.bodyGreen(), { at: [0, 220, -40] }),
  part(turned([[12, -12], [24, -12], [27, -6], [20, 0], [27, 6], [24, 12], [12, 12]]), m.rubber(), { at: [0, 20, -52], turn: [quarter, 0, 0] }),
  part(pipe([[0, 20, -140], [0, 20, -20], [10, 14, 60], [90, -30, 110], [240, -60, 90], [420, -50, 30]], 12), m.blackPlastic()),
  Array.from({ length: 60 }, (_, k) => part(turned([[11.8, -1], [12.8, -0.4], [12.8, 0.4], [11.8, 1]], { segments: 24 }), m.blackPlastic(), { at: [100 + k * 5, -34 - 26 * Math.sin(k / 38), 110 - (k * k) / 62], turn: [0, 0.35, quarter] })),
  [[150, -46, 108], [300, -60, 74]].map(([x, y, z]) => [part(turned([[12.6, -5], [14.6, -5], [14.6, 5], [12.6, 5]]), m.zinc(), { at: [x, y, z], turn: [0, 0.3, quarter] }), group([bolt(6, 14, { mark: '' })], { at: [x, y + 22, z - 6], turn: [0.4, 0, 0] })]),
  part(block(70, 44, 34, 4), m.greyPlastic(), { at: [-110, -70, -30] }), [0, 1, 2, 3].map((k) => part(pipe([[-100 + k * 7, -50, -14], [-80 + k * 7, -10, 20], [-20, 16, 10]], 1.7), m.plain([0xa02820, 0x2c5aa0, 0x2e2e2e, 0xb08a20][k], { roughness: 0.5 }))),
  group([scaleBar(100)], { at: [-60, -120, -50], turn: [quarter, 0, 0] }),
], { eye: [30, 110, 420], focus: [60, -20, 20], lens: 34, blur: 3, span: 480, lighting: { key: [-0.6, 0.8, 0.8] } });

/** The head's unused outlet, plugged. */
const plug = (renderer) => stage(renderer, [
  part(block(460, 190, 120, 12), m.castAluminium(), { at: [0, 0, -60] }), part(block(460, 14, 130, 2), m.machined(), { at: [0, -100, -58] }), part(block(460, 160, 130, 10), m.blockBlue(), { at: [0, -190, -60] }),
  part(round(26, 14, { edge: 2 }), m.castAluminium(), { at: [0, 10, 4], turn: [quarter, 0, 0] }), part(round(16, 1.6, { bore: 9.4 }), m.plain(0xb4673e, { metalness: 1, roughness: 0.35 }), { at: [0, 10, 11.8], turn: [quarter, 0, 0] }), part(hexagon(24, 12), m.brass(), { at: [0, 10, 18.6], turn: [quarter, 0.2, 0] }), part(round(13.6, 2.4), m.brass(), { at: [0, 10, 13.4], turn: [quarter, 0, 0] }),
  [-120, 120].map((x) => group([bolt(10, 30, { mark: '' })], { at: [x, 40, 0], turn: [quarter, x, 0] })), part(block(2, 10, 1, 0.2), m.plain(0xe6d548, { roughness: 0.8 }), { at: [8, 16, 25] }),
  group([scaleBar(100)], { at: [-50, -46, 2], turn: [quarter, 0, 0] }),
], { eye: [-90, 70, 260], focus: [0, 0, 8], lens: 30, blur: 2.4, span: 280, lighting: { key: [-0.7, 0.8, 0.7] } });

/** The front with its dipped beams lit. */
const lamps = (renderer) => {
  const glow = m.plain(0xfff3d8, { emissive: 0xffe9b8, emissiveIntensity: 5, roughness: 0.3 });
  const lamp = (x) => [part(plate(rounded(250, 140, 16), 30, { bevel: 5 }), m.blackPlastic(), { at: [x, 0, 0] }), part(plate(rounded(224, 116, 12), 10, { bevel: 3 }), glow, { at: [x, 0, 14] })];
  return stage(renderer, [
    ground(m.concrete(), 8000, -665), backdrop({ floor: -665, far: -2600, scale: 1.6 }),
    part(block(1640, 190, 260, 40), m.bodyGreen(), { at: [0, 10, -140] }), part(block(1560, 40, 900, 30), m.bodyGreen(), { at: [0, 120, -560] }), lamp(-560), lamp(560), part(plate(rounded(840, 120, 10), 20, { bevel: 2 }), m.chassisBlack(), { at: [0, 0, -2] }),
    Array.from({ length: 7 }, (_, k) => part(block(820, 6, 10, 2), m.machined(), { at: [0, -48 + k * 16, 12] })), [-1, 1].map((s) => part(plate(rounded(190, 60, 10), 20, { bevel: 3 }), m.plain(0xd07a20, { roughness: 0.3, clearcoat: 1 }), { at: [s * 560, -130, 10] })),
    part(block(1700, 130, 120, 30), m.chassisBlack(), { at: [0, -230, 40] }), [-1, 1].map((s) => wheel({ at: [s * 700, -358, -360], turn: [0, quarter, 0] })), part(block(1300, 200, 60, 10), m.plain(0x0a0a0a, { roughness: 1 }), { at: [0, -390, -200] }),
  ], { eye: [520, 160, 2300], focus: [60, -130, 0], lens: 34, blur: 8, span: 1800, exposure: 1.05, lighting: { key: [0.5, 0.8, 0.7], keyStrength: 2 } });
};

export const sets = {
  'bracket-tacked': bracket(tacks), 'bracket-weld': bracket(fillet), 'axle-tacked': axleBracket(tack, [2, 6, 11]), 'axle-weld': axleBracket(fillet), 'housing-dial': housingDial, 'axle-tag': axleTag, 'springs-beside': springsBeside,
  'toe-before': toePlate('0.08', '185/70R14 88S'), 'toe-bump': toePlate('0.01'), 'toe-after': toePlate('0.05'), 'gauge-fuel': pressureGauge(60), 'gauge-cooling': pressureGauge(115),
  'twist-before': twistGauge(3.64), 'twist-after': twistGauge(3.43), battery, loom, plug, lamps,
};
