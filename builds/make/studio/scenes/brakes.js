import * as THREE from 'three';
import { block, group, part, pipe, plate, round, rounded, turned } from '../geometry.js';
import { bolt, hexagon, nut, thread } from '../hardware.js';
import { scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, stage } from '../set.js';

const quarter = Math.PI / 2;

/** The front disc, 260 by 22, with its caliper. */
const brakeDisc = (renderer) => {
  const face = (z) => part(turned([[62, -3.5], [129, -3.5], [130, -2.5], [130, 2.5], [129, 3.5], [62, 3.5]], { segments: 180 }), m.machined(), { at: [0, 0, z], turn: [quarter, 0, 0] });
  const vanes = Array.from({ length: 36 }, (_, k) => part(block(52, 3.4, 8, 0.5), m.castIron(), { at: [100 * Math.cos(k / 36 * 2 * Math.PI), 100 * Math.sin(k / 36 * 2 * Math.PI), 0], turn: [0, 0, k / 36 * 2 * Math.PI] }));
  const caliperBody = new THREE.Shape();
  caliperBody.moveTo(-70, 52).bezierCurveTo(-86, 96, -66, 142, -34, 150).lineTo(34, 150).bezierCurveTo(66, 142, 86, 96, 70, 52).bezierCurveTo(40, 66, -40, 66, -70, 52);
  return stage(renderer, [
    backdrop({ floor: -420, far: -700 }),
    face(7.5), face(-7.5), vanes,
    part(turned([[30, -8], [60, -8], [70, -6], [72, 0], [70, 24], [66, 30], [36, 30], [34, 26]], { segments: 96 }), m.castIron(), { turn: [quarter, 0, 0] }),
    part(turned([[0.01, 62], [22, 61], [30, 56], [32, 30], [0.01, 30]]), m.zinc(), { turn: [quarter, 0, 0] }),
    [0, 1, 2, 3].map((k) => group([part(thread(12, 1.5, 30), m.zinc()), part(round(8, 4), m.zinc(), { at: [0, 1, 0] })], { at: [50 * Math.cos(k * quarter + 0.5), 50 * Math.sin(k * quarter + 0.5), 29], turn: [quarter, 0, 0] })),
    group([
      part(plate(caliperBody, 24, { bevel: 5 }), m.castIron(), { at: [0, 0, 26] }), part(plate(caliperBody, 44, { bevel: 6 }), m.castIron(), { at: [0, 0, -38] }),
      part(block(120, 30, 90, 8), m.castIron(), { at: [0, 146, -10] }), part(block(52, 36, 92, 4), m.plain(0x0c0c0c, { roughness: 1 }), { at: [0, 149, -6] }),
      part(block(104, 40, 9, 2), m.rust(), { at: [0, 106, 15.6] }), part(block(108, 42, 5, 1), m.chassisBlack(), { at: [0, 108, 21] }),
      [-40, 40].map((x) => group([part(round(4.5, 96), m.zinc(), { turn: [quarter, 0, 0] }), part(hexagon(14, 8), m.zinc(), { at: [0, 0, 50], turn: [quarter, x, 0] })], { at: [x, 138, -8] })),
      part(turned([[0.01, 0], [7, 0], [7, 12], [3.4, 14], [3.4, 26], [5, 28], [4, 34], [0.01, 34]]), m.rubber(), { at: [-52, 150, -32] }),
      part(pipe([[46, 150, -40], [60, 190, -46], [110, 210, -90], [180, 180, -160]], 5.5), m.rubber()),
      part(round(8, 12), m.zinc(), { at: [44, 152, -40] }), part(hexagon(17, 9), m.zinc(), { at: [44, 162, -40] }),
    ], { turn: [0, 0, -0.95] }),
    part(block(70, 330, 40, 16), m.castIron(), { at: [-20, 0, -70], turn: [0, 0, 0.15] }),
    part(turned([[20, 0], [26, 0], [40, 240], [36, 240]]), m.castIron(), { at: [-40, 120, -80] }),
    part(plate(new THREE.Shape().absarc(0, 0, 138, 0.2, 3.6).absarc(0, 0, 70, 3.6, 0.2, true).closePath(), 1.6, { bevel: 0.3 }), m.zinc(), { at: [0, 0, -24], turn: [0, 0, 1.4] }),
    group([scaleBar(100)], { at: [-50, -118, 11.2], turn: [quarter, 0, 0] }),
  ], { eye: [190, 110, 520], focus: [6, 8, 10], lens: 33, blur: 4, span: 420, lighting: { key: [-0.6, 0.8, 0.9] } });
};

/** Master cylinder on the bulkhead with its reservoir and two pipes. */
const masterCylinder = (renderer) => {
  const plastic = m.plain(0xb9ab7e, { roughness: 0.36, clearcoat: 0.35 });
  const union = (x, to) => [part(hexagon(14, 12), m.brass(), { at: [x, -24, 0] }), part(round(5, 9), m.zinc(), { at: [x, -33, 0] }), part(pipe([[x, -36, 0], [x, -58, 4], ...to], 2.4), m.zinc())];
  return stage(renderer, [
    part(block(20, 620, 1400, 2), m.bodyGreen(), { at: [-112, 0, 0] }),
    part(block(40, 40, 900, 8), m.bodyGreen(), { at: [-100, 176, 0] }),
    part(plate(rounded(84, 96, 12), 12, { bevel: 2 }), m.castAluminium(), { at: [-94, 0, 0], turn: [0, quarter, 0] }),
    part(turned([[0.01, -88], [26, -88], [26, -80], [21, -74], [21, 96], [18, 102], [13, 104], [0.01, 104]]), m.castAluminium(), { turn: [0, 0, -quarter] }),
    [-30, 44].map((x) => part(turned([[0.01, 0], [12, 0], [12, 10], [9, 12], [0.01, 12]]), m.castAluminium(), { at: [x, 18, 0] })),
    [-30, 44].map((x) => part(turned([[0.01, 0], [13, 0], [14, 4], [10, 10], [0.01, 10]]), m.rubber(), { at: [x, 28, 0] })),
    part(block(138, 56, 66, 12), plastic, { at: [8, 64, 0] }), part(block(140, 3, 68, 1), plastic, { at: [8, 60, 0] }),
    part(block(138.6, 30, 66.6, 12), m.plain(0x9a8350, { roughness: 0.36, clearcoat: 0.35 }), { at: [8, 50.6, 0] }),
    part(turned([[0.01, 0], [27, 0], [27, 4], [24, 5], [24, 18], [22, 20], [0.01, 20]], { segments: 40 }), m.blackPlastic(), { at: [10, 92, 0] }),
    Array.from({ length: 28 }, (_, k) => part(block(2, 12, 2, 0.5), m.blackPlastic(), { at: [10 + 24.4 * Math.cos(k / 28 * 6.283), 104, 24.4 * Math.sin(k / 28 * 6.283)] })),
    [-34, 34].map((z) => group([part(thread(8, 1.25, 18), m.zinc(), {}), group([nut(8, m.zinc())], { at: [0, 3, 0] }), part(round(8, 1.6), m.zinc(), { at: [0, 0.8, 0] })], { at: [-88, 0, z], turn: [0, 0, -quarter] })),
    union(-4, [[-30, -110, 30], [-92, -150, 60], [-98, -260, 60]]), union(60, [[50, -120, 40], [-20, -150, 110], [-96, -170, 150], [-98, -260, 150]]),
    part(block(14, 5, 0.6, 0.2), m.plain(0xd9c63a, { roughness: 0.8 }), { at: [-88, 0, 41] }),
    part(pipe([[-100, 120, -170], [10, 150, -190], [200, 120, -240]], 12), m.rubber()),
    part(pipe([[-100, -40, -160], [60, -20, -200], [240, 40, -190]], 9), m.blackPlastic()),
    group([scaleBar(100)], { at: [-44, -26, 24], turn: [quarter - 0.1, 0, 0] }),
    part(block(600, 500, 20), m.bodyGreen(), { at: [200, -100, -320] }), part(block(160, 240, 100, 20), m.castAluminium(), { at: [170, -170, -190] }),
  ], { eye: [230, 150, 360], focus: [0, 24, 8], lens: 33, blur: 3.4, span: 420, lighting: { key: [0.6, 0.9, 0.5] } });
};

/** The steering shaft's lower joint: clamp bolt in its groove, locked, with a paint line across. */
const steeringJoint = (renderer) => {
  const half = (turn) => group([
    part(turned([[11, 0], [19, 0], [21, 3], [21, 40], [19, 42], [11, 42]]), m.castIron(), { at: [-64, 0, 0], turn: [0, 0, -quarter] }),
    [1, -1].map((s) => part(plate([[-26, 6], [-26, 21], [-8, 25], [9, 24], [12, 15], [2, 11], [-14, 8]], 24, { bevel: 2.2 }), m.castIron(), { turn: [s === 1 ? 0 : Math.PI, 0, 0] })),
    [1, -1].map((s) => part(round(9, 8, { edge: 1 }), m.machined(), { at: [0, s * 21, 0] })),
    part(block(36, 20, 30, 4), m.castIron(), { at: [-44, 18, 0] }), part(block(37, 22, 2.2, 0.2), m.plain(0x0a0a0a), { at: [-44, 20, 0] }),
    group([group([bolt(8, 42)], { at: [0, 0, 16] , turn: [quarter, 0, 0] }), group([nut(8, m.zinc(), { nylon: true })], { at: [0, 0, -15.4], turn: [-quarter, 0, 0] })], { at: [-44, 21, 0] }),
    part(block(20, 0.6, 3, 0.1), m.plain(0xe6d548, { roughness: 0.8 }), { at: [-44, 28.6, 12] }),
    part(block(3, 5, 0.5, 0.1), m.plain(0xe6d548, { roughness: 0.8 }), { at: [-44, 21, 21.4] }),
  ], { turn: [turn, 0, 0] });
  return stage(renderer, [
    backdrop({ floor: -330, far: -600 }),
    group([half(0), part(turned([[0.01, 0], [10.6, 0], [10.6, 300], [0.01, 300]]), m.machined(), { at: [-50, 0, 0], turn: [0, 0, quarter] }), part(turned([[0.01, 0], [15, 0], [15, 240], [0.01, 240]]), m.chassisBlack(), { at: [-84, 0, 0], turn: [0, 0, quarter] })]),
    part(block(11, 36, 11, 3), m.machined()), part(block(11, 11, 36, 3), m.machined()),
    group([half(quarter), part(turned([[0.01, 0], [10.6, 0], [10.6, 200], [0.01, 200]]), m.machined(), { at: [-50, 0, 0], turn: [0, 0, quarter] })], { turn: [0, Math.PI, 0.42], order: 'ZYX' }),
    part(block(300, 300, 80, 20), m.castAluminium(), { at: [190, -150, -180] }), part(block(900, 500, 30, 8), m.chassisBlack(), { at: [-100, -40, -300] }),
    part(pipe([[-260, -80, -90], [-80, -96, -80], [60, -130, -60], [240, -190, -40]], 8), m.rubber()),
    group([scaleBar(100)], { at: [-128, -34, 24], turn: [quarter, 0, 0] }),
  ], { eye: [-90, 130, 290], focus: [-20, 2, 6], lens: 30, blur: 2.6, span: 300, lighting: { key: [-0.7, 0.9, 0.6] } });
};

export const sets = { 'brake-disc': brakeDisc, 'master-cylinder': masterCylinder, 'steering-joint': steeringJoint };
