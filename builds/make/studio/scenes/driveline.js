import * as THREE from 'three';
import { block, group, part, plate, round, rounded, turned } from '../geometry.js';
import { bolt, nut, thread, hexagon } from '../hardware.js';
import { inclinometer, protractor, rule, scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';

const quarter = Math.PI / 2;
const across = [0, 0, -quarter];
const slope = (degrees) => (degrees * Math.PI) / 180;

/** A flange with four bolts, its face towards +x at x = 0. */
const flange = (material = m.machined()) => [
  part(round(48, 10, { edge: 1 }), material, { at: [-5, 0, 0], turn: across }),
  [0, 1, 2, 3].map((k) => group([bolt(8, 24, { mark: '' })], { at: [-10, 34 * Math.cos(k * quarter + 0.78), 34 * Math.sin(k * quarter + 0.78)], turn: [0, 0, quarter] })),
];

/** A universal joint's yoke, the cross's centre at 0, its tube towards -x. */
const yoke = (turn = 0) => group([
  part(turned([[0.01, 0], [26, 0], [30, 8], [30, 14], [0.01, 14]]), m.castIron(), { at: [-56, 0, 0], turn: across }),
  [1, -1].map((s) => part(plate([[-50, 8], [-50, 30], [-16, 36], [10, 36], [14, 24], [4, 20], [-20, 20], [-40, 8]], 34, { bevel: 3 }), m.castIron(), { turn: [s === 1 ? 0 : Math.PI, 0, 0] })),
  [1, -1].map((s) => part(round(13.5, 14, { edge: 1.4 }), m.machined(), { at: [0, s * 30, 0] })),
  [1, -1].map((s) => part(round(11, 1, { edge: 0.3 }), m.castIron(), { at: [0, s * 37.2, 0] })),
], { turn: [turn, 0, 0] });
const cross = () => [part(block(14, 52, 14, 4), m.machined()), part(block(14, 14, 52, 4), m.machined()), part(block(22, 22, 22, 7), m.castIron())];

const shaftTube = (length, r = 35) => part(turned([[0.01, 0], [r - 5, 0], [r, 6], [r, length - 6], [r - 5, length], [0.01, length]], { segments: 90 }), m.chassisBlack(), { turn: across });

/** The gearbox's output flange with a straight edge and the inclinometer. */
const gearboxAngle = (renderer) => stage(renderer, [
  backdrop({ floor: -320, far: -800 }),
  group([
    part(turned([[0.01, -420], [118, -420], [112, -300], [104, -250]], { segments: 90 }), m.castAluminium(), { at: [-14, 0, 0], turn: across }),
    part(round(122, 16, { edge: 2 }), m.castAluminium(), { at: [-258, 0, 0], turn: across }), part(round(121, 1.2), m.blackPlastic(), { at: [-258, 0, 0], turn: across }),
    Array.from({ length: 10 }, (_, k) => group([bolt(8, 30, { mark: '' })], { at: [-249, 112 * Math.cos(k * 0.628 + 0.2), 112 * Math.sin(k * 0.628 + 0.2)], turn: [0, 0, -quarter] })),
    part(turned([[0.01, -250], [104, -250], [98, -190], [72, -66], [60, -22], [58, 0], [0.01, 0]], { segments: 90 }), m.castAluminium(), { at: [-14, 0, 0], turn: across }),
    [0, 1, 2, 3, 4, 5].map((k) => group([part(plate([[-236, 0], [-236, 106], [-30, 66], [-30, 0]], 7, { bevel: 2 }), m.castAluminium())], { turn: [k * Math.PI / 3 + 0.5, 0, 0] })),
    part(block(120, 60, 96, 10), m.castAluminium(), { at: [-150, 58, 0] }),
    part(block(112, 3, 88, 1), m.machined(), { at: [-150, 88, 0] }),
    part(round(34, 16), m.castIron(), { at: [-6, 0, 0], turn: across }), group(flange(), { at: [14, 0, 0] }),
    group([inclinometer('3.0')], { at: [-150, 89, 0] }),
    part(round(30, 3), m.rubber(), { at: [-15, 0, 0], turn: across }),
  ], { turn: [0, 0, -slope(3)] }),
  group([yoke(0.5)], { at: [86, -9, 0], turn: [0, Math.PI, slope(5.1)] }),
], { eye: [60, 190, 520], focus: [-110, 70, 20], lens: 27, blur: 4, span: 420, lighting: { key: [0.6, 0.9, 0.8] } });

/** The shaft's tube with the inclinometer on it. */
const shaftAngle = (renderer) => stage(renderer, [
  part(block(3000, 6, 1600, 1), m.underbody(), { at: [0, 260, -960] }),
  backdrop({ floor: -420, far: -900 }),
  group([
    shaftTube(900), group([inclinometer('5.1')], { at: [420, 34, 0] }),
    part(block(26, 3, 14, 0.5), m.zinc(), { at: [250, 35.6, 0] }),
    part(round(35.8, 9, { edge: 0.4 }), m.plain(0xd9d4c4, { roughness: 0.7 }), { at: [560, 0, 0], turn: across }),
  ], { at: [-420, 38, 0], turn: [0, 0, -slope(5.1)] }),
  part(turned([[0.01, -60], [26, -60], [27, -58], [27, 900], [0.01, 900]]), m.rust(), { at: [-500, -60, -150], turn: across }),
], { eye: [110, 150, 470], focus: [0, 46, 10], lens: 26, blur: 4, span: 440, lighting: { key: [0.5, 0.7, 0.9], keyStrength: 2.8 } });

/** The axle's nose: inclinometer on the machined top of the pinion housing. */
const pinionAngle = (renderer) => stage(renderer, [
  backdrop({ floor: -340, far: -800 }),
  group([
    part(turned([[0.01, -150], [60, -150], [120, -110], [135, -40], [135, 40], [120, 110], [60, 150], [0.01, 150]], { segments: 72 }), m.castIron(), { at: [190, 0, 0], turn: [quarter, 0, 0] }),
    part(turned([[0.01, 0], [110, 0], [84, 60], [62, 110], [58, 170], [0.01, 170]]), m.castIron(), { at: [150, 0, 0], turn: [0, 0, quarter] }),
    [0, 1, 2, 3].map((k) => part(block(150, 8, 130, 3), m.castIron(), { at: [70, 0, 0], turn: [k * Math.PI / 4, 0, 0] })),
    part(block(74, 30, 60, 5), m.castIron(), { at: [26, 60, 0] }), part(block(76, 4, 56, 0.8), m.machined(), { at: [26, 76, 0] }),
    part(turned([[0.01, -700], [40, -700], [40, 700], [0.01, 700]]), m.castIron(), { at: [215, 0, 0], turn: [quarter, 0, 0] }),
    group([inclinometer('2.9')], { at: [26, 78, 0] }),
    group(flange(), { at: [-28, 0, 0], turn: [0, Math.PI, 0] }),
    part(hexagon(34, 20), m.zinc(), { at: [-44, 0, 0], turn: across }),
  ], { turn: [0, 0, -slope(2.9)] }),
  group([yoke(0.2)], { at: [-100, 6, 0], turn: [0, 0, slope(5.1)] }),
], { eye: [-110, 210, 500], focus: [20, 70, 10], lens: 28, blur: 4, span: 420, lighting: { key: [-0.7, 0.9, 0.7] } });

/** The front joint with the angle gauge held beside it. */
const jointGauge = (renderer) => stage(renderer, [
  part(block(3000, 6, 1600, 1), m.underbody(), { at: [0, 240, -960] }),
  backdrop({ floor: -420, far: -900 }),
  group([yoke(0), part(turned([[0.01, 0], [36, 0], [40, 6], [40, 300], [0.01, 300]]), m.castAluminium(), { at: [-66, 0, 0], turn: [0, 0, quarter] })], { turn: [0, 0, 0] }),
  cross(),
  group([yoke(quarter)], { turn: [0, Math.PI, slope(2.1)] }),
  group([shaftTube(500)], { at: [66, -2.4, 0], turn: [0, 0, -slope(2.1)] }),
  group([protractor(-2.1, { radius: 46, arm: 190 })], { at: [0, -58, 44] }),
  part(block(150, 3, 12, 0.5), m.brightSteel(), { at: [-104, -64, 44] }),
  part(round(3, 8), m.brass(), { at: [0, 0, 30], turn: [quarter, 0, 0] }),
], { eye: [70, 130, 420], focus: [6, -14, 30], lens: 27, blur: 3, span: 380, lighting: { key: [0.6, 0.8, 0.9], keyStrength: 2.6 } });

/** An adjustable link's end: rod end, locknut, tube, with the rule along it. */
function rodEnd(d = 16) {
  const eye = new THREE.Shape().absarc(0, 0, d * 1.25, 0, 2 * Math.PI);
  return group([
    part(plate(eye, d * 0.95, { bevel: 1.5, holes: [[0, 0, d * 0.78]], curve: 60 }), m.zinc()),
    part(turned([[d * 0.5, -d * 0.62], [d * 0.62, -d * 0.62], [d * 0.86, -d * 0.3], [d * 0.9, 0], [d * 0.86, d * 0.3], [d * 0.62, d * 0.62], [d * 0.5, d * 0.62], [d * 0.5, -d * 0.62]], { segments: 64 }), m.machined(), { turn: [quarter + 0.08, 0, 0] }),
    part(round(d * 0.82, d * 0.3, { bore: d * 0.7 }), m.plain(0x3b2f28, { roughness: 0.7 }), { turn: [quarter, 0, 0] }),
    part(turned([[0.01, 0], [d * 0.75, 0], [d * 0.56, d * 0.7], [0.01, d * 0.7]], {}), m.zinc(), { at: [d * 1.05, 0, 0], turn: across }),
    part(thread(d, 1.5, d * 4), m.zinc(), { at: [d * 1.6, 0, 0], turn: across }),
  ]);
}

const link = (length, d = 16) => {
  const exposed = 17;
  const start = d * 1.6 + exposed + d * 0.75;
  const end = (flip) => [rodEnd(d), part(hexagon(24, d * 0.75, { bore: d * 0.45 }), m.zinc(), { at: [d * 1.6 + exposed + d * 0.375, 0, 0], turn: [0.3 + flip, 0, -quarter], order: 'XYZ' })];
  return group([
    group(end(0)), group(end(0.5), { at: [length, 0, 0], turn: [0, 0, Math.PI] }),
    part(turned([[d * 0.5, 0], [15, 0], [16, 1], [16, length - 2 * start - 1], [15, length - 2 * start], [d * 0.5, length - 2 * start]], { segments: 72 }), m.primer(), { at: [start, 0, 0], turn: across }),
    [0.02, 0.98].map((t) => part(hexagon(32, 22, { bore: 8 }), m.primer(), { at: [start + 12 + t * (length - 2 * start - 24), 0, 0], turn: across })),
  ]);
};

const linkLocknuts = (renderer) => stage(renderer, [
  ground(m.bench()), backdrop(),
  group([link(420)], { at: [-70, 20, -6], turn: [0, -0.06, 0] }),
  group([rule(150)], { at: [-70, 0, 46], turn: [0, -0.06, 0] }),
  group([part(plate([[0, -12], [150, -9], [150, 9], [0, 12], [-16, 26], [-34, 22], [-20, 8], [-20, -8], [-34, -22], [-16, -26]], 7, { bevel: 1 }), m.machined())], { at: [190, 4, -130], turn: [quarter, 0, 2.6] }),
  part(block(20, 1.2, 3, 0.2), m.plain(0xe8d14a, { roughness: 0.7 }), { at: [-8, 32, -6] }),
], { eye: [60, 170, 300], focus: [0, 16, 6], lens: 27, blur: 2.8, span: 300, lighting: { key: [-0.6, 0.9, 0.6] } });

/** The link in its two brackets, in double shear. */
const linkFitted = (renderer) => {
  const ear = plate((() => new THREE.Shape().moveTo(-42, 0).lineTo(42, 0).lineTo(26, -78).absarc(0, -78, 26, 0, Math.PI, true).closePath())(), 5, { bevel: 0.5, holes: [[0, -78, 8]] });
  const bracket = (x) => [[-15, 15].map((z) => part(ear, m.chassisBlack(), { at: [x, 0, z] })), part(block(96, 6, 46, 1), m.chassisBlack(), { at: [x, 1, 0] })];
  return stage(renderer, [
    part(block(1800, 6, 1200, 1), m.underbody(), { at: [0, 8, -200] }),
    part(plate(rounded(1600, 70, 6), 60, { bevel: 1 }), m.underbody(), { at: [0, -28, -90] }),
    bracket(-150),
    group([link(460)], { at: [-150, -78, 0], turn: [0, 0, -0.12] }),
    group([group([bolt(16, 56, { mark: '10.9' })], { turn: [quarter, 0, 0], at: [0, 0, 22] }), group([nut(16, m.zinc(), { nylon: true })], { at: [0, 0, -18], turn: [-quarter, 0, 0] }), part(round(15, 3, { bore: 8 }), m.zinc(), { at: [0, 0, 19], turn: [quarter, 0, 0] })], { at: [-150, -78, 0] }),
    part(turned([[0.01, -700], [40, -700], [40, 700], [0.01, 700]]), m.castIron(), { at: [320, -150, 0], turn: [quarter, 0, 0] }),
    group([[-15, 15].map((z) => part(ear, m.chassisBlack(), { at: [0, 0, z] }))], { at: [310, -210, 0], turn: [0, 0, Math.PI] }),
    part(turned([[0.01, -40], [16, -40], [20, -30], [20, 30], [16, 40], [0.01, 40]]), m.rubber(), { at: [60, -20, -60], turn: [0, 0, 0] }),
    ground(m.concrete(), 9000, -620), backdrop({ floor: -620, far: -2600, scale: 1.2 }),
    group([scaleBar(100)], { at: [-40, -34, -58], turn: [quarter, 0, 0] }),
  ], { eye: [-300, -40, 470], focus: [-60, -76, 0], lens: 34, blur: 4, span: 600, exposure: 1.7, lighting: { key: [-0.6, 0.12, 1], keyStrength: 3.6, roomStrength: 1.2 } });
};

export const sets = { 'gearbox-angle': gearboxAngle, 'shaft-angle': shaftAngle, 'pinion-angle': pinionAngle, 'joint-gauge': jointGauge, 'link-locknuts': linkLocknuts, 'link-fitted': linkFitted };
