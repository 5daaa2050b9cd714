import * as THREE from 'three';
import { canvasTexture, write } from '../drawn.js';
import { block, coil, group, part, pipe, plate, round, rounded, swept, turned } from '../geometry.js';
import { bolt } from '../hardware.js';
import { gapBar, meter, scaleBar, tapeBlade } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';
import { guard, wheel } from '../wheel.js';

const quarter = Math.PI / 2;

/** The inner side of the tyre against the strut, the gap gauge between. */
const tyreGap = (renderer) => stage(renderer, [
  ground(m.concrete(), 6000, -308), backdrop({ floor: -308, far: -2200, scale: 1.3 }),
  wheel({ turn: [0, 0, 0.3] }),
  part(turned([[0.01, -80], [30, -80], [32, -76], [32, 280], [0.01, 280]]), m.chassisBlack(), { at: [0, 120, -143], turn: [0.02, 0, 0] }),
  part(turned([[0.01, 280], [11, 280], [11, 420], [0.01, 420]]), m.machined(), { at: [0, 120, -143], turn: [0.02, 0, 0] }),
  part(turned([[32, 0], [84, 10], [84, 14], [32, 6]]), m.chassisBlack(), { at: [0, 330, -140] }),
  part(coil({ mean: 128, wire: 12.5, height: 210, turns: 6.5 }), m.redPaint(), { at: [0, 342, -140] }),
  part(block(90, 150, 60, 14), m.castIron(), { at: [0, -10, -140] }),
  part(pipe([[40, 60, -160], [110, 120, -210], [120, 260, -300], [60, 330, -380]], 5.5), m.rubber()),
  part(block(1600, 1200, 30, 10), m.underbody(), { at: [0, 460, -420] }), part(block(1600, 30, 760, 10), m.underbody(), { at: [0, 610, -60] }),
  group([gapBar(12, 120)], { at: [-8, 262, -104.6], turn: [0, -quarter, quarter], order: 'ZYX' }),
], { eye: [-640, 330, -190], focus: [-20, 214, -96], lens: 34, blur: 4, span: 800, lighting: { key: [-0.9, 0.5, 0.2], keyStrength: 3.4 } });

const old = { size: '185/70R14 88S', material: m.plain(0x6f7173, { metalness: 0.5, roughness: 0.5 }) };

/** Wheel and guard with the tape from the middle of the hub; `height` is where the guard's edge cuts it. */
const rideHeight = (height, tyre) => (renderer) => stage(renderer, [
  ground(m.concrete(), 6000, -305), backdrop({ floor: -305, far: -2200, scale: 1.6 }),
  wheel({ turn: [0, 0, 0.9] }, tyre),
  group([guard(352)], { at: [0, height - 352, 92] }),
  part(block(1500, 900, 20), m.plain(0x0b0b0b, { roughness: 1 }), { at: [0, 100, -150] }),
  group([tapeBlade(440, { width: 22 })], { at: [0, 0, 132], turn: [0, 0, 0] }),
  part(turned([[0.01, 0], [26, 0], [27, 4], [20, 40], [0.01, 40]]), m.blackPlastic(), { at: [0, 0, 60], turn: [quarter, 0, 0] }),
], { eye: [230, 400, 900], focus: [30, 240, 110], lens: 32, blur: 4, span: 900, lighting: { key: [0.6, 0.8, 0.9], keyStrength: 2.8 } });

/** A front wheel on its pad. */
const weighPads = (reading, tyre) => (renderer) => stage(renderer, [
  ground(m.concrete(), 6000, -333), backdrop({ floor: -333, far: -2400, scale: 1.7 }),
  wheel({ turn: [0, 0, 0.2] }, tyre), group([guard(352)], { at: [0, 6, 92] }), part(block(1500, 900, 20), m.plain(0x0b0b0b, { roughness: 1 }), { at: [0, 120, -150] }),
  part(block(400, 24, 380, 4), m.castAluminium(), { at: [0, -320, 0] }),
  part(block(360, 2, 340, 1), m.rubber(), { at: [0, -308, 0] }),
  [-1, 1].map((s) => part(plate([[0, 0], [90, 0], [0, 22]], 380, { bevel: 1 }), m.castAluminium(), { at: [s * 200, -332, 0], turn: [0, s === 1 ? 0 : Math.PI, 0] })),
  part(pipe([[200, -320, 150], [320, -328, 240], [420, -328, 250], [470, -300, 290]], 4), m.rubber()),
  group([meter(190, 130, 60, reading, 'kg', 'PAD 1', { body: m.orangePlastic() })], { at: [480, -262, 330], turn: [-0.25, -0.2, 0] }),
], { eye: [620, 190, 1250], focus: [200, -130, 140], lens: 33, blur: 5, span: 1100, lighting: { key: [0.6, 0.8, 0.9], keyStrength: 2.8 } });

/** The belt's upper anchorage as it was, trim off round it. */
const beltAnchor = (renderer) => {
  const webbing = swept(60, 1, (u, v) => [-24 + v * 48 + 10 * u * u, -6 - u * 300, 9 + 16 * Math.sin(u * 2) + 2], { length: 300, girth: 48 });
  const weave = m.cloth().clone();
  weave.side = THREE.DoubleSide;
  weave.color.set(0x3d3f45);
  return stage(renderer, [
    part(plate((() => new THREE.Shape().moveTo(-90, -420).lineTo(96, -420).lineTo(70, 420).lineTo(-64, 420).closePath())(), 30, { bevel: 8 }), m.bodyGreen(), { at: [0, 0, -22] }),
    part(plate(rounded(70, 90, 10), 3, { bevel: 0.6 }), m.bodyGreen(), { at: [0, 20, -5] }),
    [[-22, 52], [22, 52], [-22, -12], [22, -12]].map(([x, y]) => part(turned([[0.01, 0.2], [3.6, 0.2], [4.4, 0.9], [5.4, 0]]), m.bodyGreen(), { at: [x, y, -3.4], turn: [quarter, 0, 0] })),
    part(plate((() => new THREE.Shape().moveTo(-30, -16).lineTo(30, -16).lineTo(30, -4).bezierCurveTo(26, 24, 18, 42, 0, 42).bezierCurveTo(-18, 42, -26, 24, -30, -4).closePath())(), 4, { bevel: 1, holes: [[0, 22, 6]] }), m.zinc(), { at: [0, 0, 4] }),
    group([bolt(11.1, 20, { mark: '8.8' })], { at: [0, 22, 7], turn: [quarter, 0.2, 0] }), part(round(13, 2.4), m.zinc(), { at: [0, 22, 6.6], turn: [quarter, 0, 0] }),
    part(webbing, weave), part(block(56, 10, 12, 4), weave, { at: [0, -10, 8] }),
    part(block(400, 900, 20, 6), m.trim(), { at: [-300, 0, -30], turn: [0, 0.25, 0] }), part(block(500, 900, 20, 6), m.glass(), { at: [360, 60, -60] }),
    part(block(40, 900, 26, 8), m.rubber(), { at: [104, 0, -22], turn: [0, 0, 0.05] }),
    part(block(3000, 2600, 10), m.plain(0x9fb4c4, { roughness: 1, emissive: 0x5f7484, emissiveIntensity: 1 }), { at: [800, 300, -1500] }),
    group([scaleBar(100)], { at: [40, -48, -4], turn: [quarter, 0, 0.0] }),
  ], { eye: [-120, 70, 420], focus: [6, 2, 4], lens: 28, blur: 3.4, span: 420, lighting: { key: [-0.7, 0.6, 0.9] } });
};

/** Speedometer at an indicated 60 beside the independent meter. */
const speedometer = (measured, distance) => (renderer) => {
  const dial = canvasTexture(1200, 1200, (context, W) => {
    context.fillStyle = '#101112';
    context.fillRect(0, 0, W, W);
    context.translate(W / 2, W / 2);
    for (let v = 0; v <= 200; v += 5) {
      const turn = (-225 + (v / 200) * 270) * Math.PI / 180;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      Object.assign(context, { strokeStyle: v % 20 ? '#b9b9b0' : '#f3f1e6', lineWidth: v % 20 ? 6 : 12 });
      context.beginPath();
      context.moveTo(c * 560, s * 560);
      context.lineTo(c * (v % 20 ? (v % 10 ? 525 : 505) : 480), s * (v % 20 ? (v % 10 ? 525 : 505) : 480));
      context.stroke();
      if (v % 20 === 0) write(context, String(v), c * 405, s * 405, 84, { colour: '#f3f1e6' });
    }
    write(context, 'km/h', 0, 190, 64, { colour: '#f3f1e6' });
    context.fillStyle = '#0a0a0a';
    context.fillRect(-170, 250, 340, 84);
    [...distance].forEach((d, i) => write(context, d, -140 + i * 56, 294, 62, { colour: i === 5 ? '#111' : '#eee', family: 'Noto Sans Mono' }));
  });
  const face = new THREE.CircleGeometry(58, 96);
  face.userData.uv = 'own';
  const turn = (225 - (60 / 200) * 270) * Math.PI / 180;
  const needle = group([part(plate([[-12, -2.2], [46, -0.7], [46, 0.7], [-12, 2.2]], 1.2, { bevel: 0.2 }), m.plain(0xe0561c, { roughness: 0.5, emissive: 0x40160a }))], { turn: [0, 0, turn], at: [0, 0, 4] });
  const clock = (x, r, extra) => group([
    part(turned([[r, 0], [r + 8, -2], [r + 9, 10], [r + 5, 14], [r + 1, 13], [r, 2]], { segments: 96 }), m.blackPlastic(), { turn: [quarter, 0, 0] }),
    part(turned([[r + 1, 12.5], [r + 3.4, 14.6], [r + 5, 14.2]], { segments: 96 }), m.machined(), { turn: [quarter, 0, 0] }), ...extra,
  ], { at: [x, 0, 0] });
  const plainDial = Object.assign(m.plain(0xffffff, { roughness: 0.6 }), { map: dial });
  const small = new THREE.CircleGeometry(38, 64);
  return stage(renderer, [
    part(block(700, 260, 20, 8), m.blackPlastic(), { at: [60, -10, -12] }), part(block(760, 50, 160, 20), m.blackPlastic(), { at: [60, 104, 50] }), part(block(900, 300, 60, 20), m.trim(), { at: [60, -190, 20], turn: [-0.5, 0, 0] }),
    clock(0, 58, [part(face, plainDial), needle, part(turned([[0.01, 0], [9, 0], [8, 5], [0.01, 6]]), m.blackPlastic(), { at: [0, 0, 3], turn: [quarter, 0, 0] })]),
    clock(-140, 38, [part(small, m.plain(0x101112, { roughness: 0.6 })), part(plate([[-8, -1.6], [30, -0.6], [30, 0.6], [-8, 1.6]], 1, { bevel: 0.2 }), m.plain(0xe0561c), { at: [0, 0, 4], turn: [0, 0, 2.2] }), part(round(6, 4), m.blackPlastic(), { at: [0, 0, 4], turn: [quarter, 0, 0] })]),
    group([meter(110, 72, 26, measured, 'km/h', 'SPEED')], { at: [142, 18, 36], turn: [0.05, -0.12, 0] }),
    part(block(40, 60, 20, 6), m.blackPlastic(), { at: [142, -40, 10] }),
    part(pipe([[196, 0, 20], [230, -40, 40], [240, -110, 60]], 2.2), m.rubber()),
  ], { eye: [60, 60, 430], focus: [52, 6, 14], lens: 31, blur: 2.4, span: 380, exposure: 1.45, lighting: { key: [0.5, 0.7, 1], keyStrength: 3, roomStrength: 1.2 } });
};

/** The decelerometer strapped to the tunnel, with the lever and the edge of the seat. */
const brakeMeter = (renderer) => stage(renderer, [
  part(block(900, 20, 700, 8), m.cloth(), { at: [0, -10, 0] }),
  part(block(240, 120, 700, 60), m.cloth(), { at: [0, 40, -60] }),
  group([meter(150, 96, 70, '7.2', '', 'G-556   m/s²', { body: m.greyPlastic() })], { at: [0, 150, 70], turn: [-0.5, 0, 0] }),
  [-46, 46].map((x) => part(block(22, 3, 190, 1), m.blackPlastic(), { at: [x, 112, 92], turn: [0.16, 0, 0] })),
  part(round(9, 150), m.machined(), { at: [20, 160, -170], turn: [-0.25, 0, 0.05] }), part(turned([[0.01, -24], [17, -18], [22, 0], [18, 16], [0.01, 22]]), m.blackPlastic(), { at: [14, 246, -192] }),
  part(turned([[10, 0], [58, 2], [52, 10], [30, 34], [12, 60], [10, 60]]), m.rubber(), { at: [20, 96, -150] }),
  part(block(300, 150, 620, 50), m.trim(), { at: [310, 80, 120] }), part(block(300, 150, 620, 50), m.trim(), { at: [-310, 80, 120] }),
  part(pipe([[76, 140, 60], [130, 110, 90], [150, 40, 160], [150, 6, 330]], 3), m.rubber()),
  part(block(900, 320, 30, 10), m.blackPlastic(), { at: [0, 150, -360] }),
], { eye: [110, 430, 560], focus: [0, 146, 40], lens: 33, blur: 3.6, span: 520, exposure: 1.3, lighting: { key: [0.6, 0.8, 0.7], keyStrength: 3, roomStrength: 1.1 } });

/** The cones of the lane change, seen from the driver's side of the first gate. */
const coneLane = (renderer) => {
  const cone = (x, z) => group([
    part(block(280, 26, 280, 10), m.blackPlastic(), { at: [0, 13, 0] }),
    part(turned([[118, 26], [112, 30], [92, 160]]), m.orangePlastic()), part(turned([[92, 160], [66, 330]]), m.plain(0xe4e2da, { roughness: 0.6 })), part(turned([[66, 330], [46, 455]]), m.orangePlastic()), part(turned([[46, 455], [30, 560], [22, 572], [14, 560]]), m.orangePlastic()),
  ], { at: [x, 0, z], turn: [0, x, 0] });
  const gates = [[-1000, 1000, 0, 9000], [2300, 4600, -12000, -20000], [-1100, 1500, -26000, -34000]];
  const cones = gates.flatMap(([left, right, from, to]) => { const [near, far] = [Math.max(from, to), Math.min(from, to)]; return [0, 1, 2, 3].flatMap((k) => [left, right].map((x) => cone(x, near + ((far - near) * k) / 3))); });
  return stage(renderer, [
    part(new THREE.PlaneGeometry(160000, 160000), m.asphalt(), { turn: [-quarter, 0, 0] }), cones,
    part(block(160000, 3800, 100), m.plain(0x36442f, { roughness: 1 }), { at: [0, 1500, -74000] }),
    ...Array.from({ length: 26 }, (_, k) => part(new THREE.SphereGeometry(3200 + 900 * Math.sin(k * 7.7), 18, 12), m.plain(0x2f3d29, { roughness: 1 }), { at: [-62000 + k * 5000, 2600 + 900 * Math.sin(k * 3.3), -75000 + 900 * Math.sin(k * 5.1)] })),
    part(block(60, 6, 60000, 1), m.plain(0xcfccc0, { roughness: 0.9 }), { at: [-3600, 2, -20000] }),
  ], { eye: [-500, 1500, 13500], focus: [250, 300, 1500], lens: 40, blur: 16, span: 26000, centre: [0, 0, -8000], fog: [0xb4c1cb, 40000, 150000], back: 0xb3c4d4, exposure: 1.35, balance: [1.07, 1, 0.9], lighting: { surround: { sky: true }, key: [-0.6, 0.5, 0.4], keySize: 0.03, keyStrength: 3.2, roomStrength: 0.75, keyColour: 0xfff2dd } });
};

export const sets = {
  'tyre-gap': tyreGap, 'ride-height': rideHeight(366), 'height-before': rideHeight(381, old), 'weigh-pads': weighPads('338.0'), 'pads-before': weighPads('299.0', old),
  'belt-anchor': beltAnchor, speedometer: speedometer('59.3', '148327'), 'speedometer-before': speedometer('57.8', '148204'), 'cone-lane': coneLane, 'brake-meter': brakeMeter,
};
