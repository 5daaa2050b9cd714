import * as THREE from 'three';
import { canvasTexture, write } from '../drawn.js';
import { block, folded, group, label, part, pipe, plate, round, rounded, turned } from '../geometry.js';
import { bolt, nut, washer } from '../hardware.js';
import { caliper, filletGauge, rule, scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, ground, stage } from '../set.js';
import { fillet, tack } from '../weld.js';

/** A floor pan seen from below, at y = 0, with pressed beads. */
const floorPan = () => [
  part(block(1400, 4, 1000, 1), m.underbody(), { at: [0, -2, 0] }),
  ...[-260, -170, 190, 280].map((x) => part(turned([[0.01, -260], [9, -256], [14, -240], [14, 240], [9, 256], [0.01, 260]], { segments: 24 }), m.underbody(), { at: [x, -9, 40], turn: [Math.PI / 2, 0, 0] })),
];

const spotWelds = (xs, zs) => xs.flatMap((x) => zs.map((z) => part(turned([[0.01, 0.1], [4, 0.15], [5, 1.1], [6, 0.9], [6.6, -0.2]], { segments: 32 }), m.member(), { at: [x, 2.1, z] })));

const hatBefore = (renderer) => stage(renderer, [
  floorPan(),
  part(folded([[-50, 1], [-30, 1], [-30, 40], [30, 40], [30, 1], [50, 1]], 2, 1300, { radius: 5 }), m.member()),
  spotWelds([-42, 42], [-470, -420, -370, -320, -270, -220, -170, -120, -70, -20, 30, 80, 130, 180, 230, 280]),
  part(round(11, 4, { edge: 1.4 }), m.rubber(), { at: [4, 41.5, -110] }),
  part(pipe([[-200, 8, 300], [-130, 8, 120], [-110, 8, 0], [-116, 8, -150], [-150, 8, -400]], 2.4), m.zinc()),
  part(folded([[-14, 1], [-5, 1], [-4, 9], [4, 9], [5, 1], [14, 1]], 1.2, 13, { radius: 1.5 }), m.zinc(), { at: [-110, 1, -10], turn: [0, 0.04, 0] }),
  part(block(64, 0.4, 3, 0.1), m.plain(0xf2f0e8, { roughness: 0.9 }), { at: [0, 41.2, 66] }),
  part(block(64, 0.4, 3, 0.1), m.plain(0xf2f0e8, { roughness: 0.9 }), { at: [0, 41.2, -190] }),
  group([scaleBar(100)], { at: [58, 2.2, 92], turn: [0, Math.PI / 2, 0] }),
  group([scaleBar(50)], { at: [-25, 41, 30] }),
], { eye: [120, 300, 400], focus: [8, 20, -20], lens: 36, blur: 5, span: 620, lighting: { key: [-0.95, 0.55, 0.25], keySize: 0.3, keyStrength: 3.4, roomStrength: 0.7 } });

/** The new tube's cut end in the caliper. */
const tubeWall = (renderer) => {
  const end = rounded(49.8, 29.8, 4.9, [45.2, 25.2, 2.6]);
  return stage(renderer, [
    ground(m.bench()), backdrop(),
    part(plate(rounded(50, 30, 5, [45.04, 25.04, 2.5]), 260, { bevel: 0.12 }), m.millScale(), { at: [0, 15, -130] }),
    part(new THREE.ShapeGeometry(end, 24), m.brightSteel(), { at: [0, 15, 0.06] }),
    group([caliper(2.48, '2.48', { jaw: 40 })], { at: [-25, 42, -1.4] }),
    group([rule(150)], { at: [-62, 0, 66], turn: [0, 0.12, 0] }),
    part(turned([[0.01, 0], [6, 0], [6, 90], [5, 92], [1.2, 104], [0.01, 105]], { segments: 6 }), m.redPaint(), { at: [-120, 6, -60], turn: [Math.PI / 2, 0, 0.9] }),
  ], { eye: [75, 118, 235], focus: [8, 32, 0], lens: 27, blur: 3, span: 240 });
};

/** A rail of the body along z with its top at y = 0. */
const rail = (x) => part(plate(rounded(64, 80, 6), 900, { bevel: 0.4 }), m.underbody(), { at: [x, -40, 0] });
const bare = (x, w, d) => part(block(w, 0.5, d, 0.2), m.brightSteel(), { at: [x, 0.05, 0] });
const tube = (length) => part(plate(rounded(30, 50, 5, [25, 45, 2.5]), length, { bevel: 0.15 }), m.millScale(), { turn: [0, Math.PI / 2, 0] });

const crossmemberTacked = (renderer) => {
  const corner = (x, z) => tack({ from: [x - 6, 0.3, z], to: [x + 6, 0.3, z], a: [0, 1, 0], b: [0, 0, Math.sign(z)], leg: 3.2, seed: x + z + 500 });
  return stage(renderer, [
    part(block(1800, 4, 1600, 1), m.member(), { at: [0, -82, 0] }),
    rail(-230), rail(230), bare(-230, 62, 92), bare(230, 62, 92),
    group([tube(524)], { at: [0, 25, 0] }),
    [[-250, 15], [-212, 15], [212, 15], [250, 15]].map(([x, z]) => corner(x, z)),
    part(plate([[0, 0], [110, 0], [110, 22], [22, 22], [22, 78], [0, 78]], 3, { bevel: 0.3 }), m.machined(), { at: [-198, 1.8, 17], turn: [Math.PI / 2, 0, 0] }),
    group([rule(150)], { at: [-205, 50, 8], turn: [0, 0, 0] }),
    group([scaleBar(100)], { at: [60, -79, 120], turn: [0, 0.2, 0] }),
    part(turned([[0.01, -80], [38, -76], [44, -60], [44, 60], [38, 76], [0.01, 80]]), m.castAluminium(), { at: [30, -60, -230], turn: [Math.PI / 2, 0, 0] }),
  ], { eye: [-250, 190, 330], focus: [-205, 16, 10], lens: 36, blur: 3.4, span: 620, lighting: { key: [0.8, 0.8, 0.7], keyStrength: 2.6 } });
};

const crossmemberWeld = (renderer) => stage(renderer, [
  rail(0), bare(0, 63, 190), part(block(1200, 4, 1200, 1), m.member(), { at: [0, -82, 0] }),
  group([tube(400)], { at: [170, 25, 0] }),
  fillet({ from: [-33, 0.3, 15], to: [31, 0.3, 15], a: [0, 1, 0], b: [0, 0, 1], leg: 3.2, seed: 3 }),
  part(plate(rounded(30, 50, 5), 3, { bevel: 0.3 }), m.millScale(), { at: [-31.5, 25, 0], turn: [0, Math.PI / 2, 0] }),
  fillet({ from: [-33, 0.3, 15], to: [-33, 0.3, -15], a: [0, 1, 0], b: [-1, 0, 0], leg: 3.2, seed: 9 }),
  group([filletGauge(3)], { at: [4, 0.8, 18.6], turn: [-Math.PI / 2, 0, -0.5 - Math.PI / 2], order: 'YXZ' }),
  group([rule(100, 14)], { at: [-70, 0.6, 78], turn: [0, 0.1, 0] }),
], { eye: [-95, 120, 190], focus: [-2, 10, 14], lens: 27, blur: 2.4, span: 240, lighting: { key: [-0.7, 0.8, 0.9], keyStrength: 2.2 } });

/** A ground and etched slice through the test fillet. */
const couponMacro = (renderer) => {
  const face = canvasTexture(1400, 1000, (context, W, H) => {
    context.fillStyle = '#a9a8a6';
    context.fillRect(0, 0, W, H);
    for (let i = 0; i < 2600; i++) {
      context.fillStyle = i % 2 ? 'rgba(255,255,255,.05)' : 'rgba(30,30,30,.05)';
      context.fillRect((i * 7919) % W, (i * 104729) % H, 60, 1);
    }
    const zone = (grow, colour) => {
      context.fillStyle = colour;
      context.beginPath();
      context.moveTo(700 - grow, 560 + grow * 0.8);
      context.bezierCurveTo(700 - grow * 1.2, 420 - grow, 740, 330 - grow * 1.1, 800, 330 - grow);
      context.bezierCurveTo(900 + grow * 0.3, 400, 960 + grow * 0.5, 460, 1000 + grow, 590);
      context.bezierCurveTo(930 + grow, 660 + grow, 800, 690 + grow, 700 - grow, 560 + grow * 0.8);
      context.fill();
    };
    context.filter = 'blur(3px)';
    zone(52, '#7e7b78');
    zone(30, '#6b6764');
    zone(0, '#8f8a83');
    context.filter = 'none';
    for (let k = 0; k < 46; k++) {
      context.strokeStyle = 'rgba(60,56,52,.24)';
      context.beginPath();
      context.moveTo(760 + (k % 9) * 22, 560 - Math.floor(k / 9) * 30);
      context.lineTo(790 + (k % 9) * 22 + (k % 3) * 6, 590 - Math.floor(k / 9) * 44);
      context.stroke();
    }
    context.strokeStyle = 'rgba(20,20,20,.9)';
    context.lineWidth = 3;
    context.beginPath();
    context.moveTo(40, 600);
    context.lineTo(700, 600);
    context.stroke();
  });
  const outline = new THREE.Shape([[-28, -12], [28, -12], [28, 0], [12, 0], [4, 10.6], [4, 20], [-28 + 4, 20], [-24, 0], [-28, 0]].map(([x, y]) => new THREE.Vector2(x, y)));
  const flat = new THREE.ShapeGeometry(outline, 16);
  const { position, uv } = flat.attributes;
  for (let i = 0; i < position.count; i++) uv.setXY(i, 0.5 + position.getX(i) * 25 / 1400, 0.4 + position.getY(i) * 25 / 1000);
  flat.userData.uv = 'own';
  const note = Object.assign(m.plain(0xffffff, { roughness: 0.9 }), { map: canvasTexture(600, 320, (context, W, H) => {
    context.fillStyle = '#b9b4a6';
    context.fillRect(0, 0, W, H);
    write(context, 'Coupon 1', W / 2, H * 0.32, 96);
    write(context, 'slice B, etched', W / 2, H * 0.7, 70);
  }) });
  const etched = Object.assign(m.plain(0xffffff, { metalness: 0.25, roughness: 0.55 }), { map: face });
  return stage(renderer, [
    ground(m.cloth()),
    group([part(plate(outline, 10, { bevel: 0.3 }), m.brightSteel()), part(flat, etched, { at: [0, 0, 5.06] })], { at: [0, 5, 0], turn: [-Math.PI / 2, 0, 0.06] }),
    group([rule(100, 14)], { at: [-44, 0, 40], turn: [0, 0.05, 0] }),
    group([part(block(30, 0.3, 16, 0.1), m.plain(0xb9b4a6, { roughness: 0.9 })), part(label(30, 16), note, { at: [0, 0.2, 0], turn: [-Math.PI / 2, 0, 0] })], { at: [46, 0.3, 2], turn: [0, -0.1, 0] }),
  ], { eye: [6, 130, 62], focus: [2, 6, 4], lens: 30, blur: 1, span: 130, exposure: 0.8, lighting: { key: [-0.9, 0.7, -0.2], keyStrength: 1.6 } });
};

const gearboxBracket = (renderer) => {
  const gusset = plate([[0, 0], [52, 0], [0, 40]], 3, { bevel: 0.3 });
  return stage(renderer, [
    part(block(1600, 4, 1400, 1), m.underbody(), { at: [0, -90, 0] }),
    group([part(plate(rounded(30, 50, 5, [25, 45, 2.5]), 700, { bevel: 0.15 }), m.chassisBlack(), { turn: [0, Math.PI / 2, 0] })], { at: [0, -25, 0] }),
    part(plate(rounded(150, 92, 8), 5, { bevel: 0.6, holes: [[-55, -28, 5.6], [55, -28, 5.6]] }), m.zinc(), { at: [0, 2.5, 6], turn: [Math.PI / 2, 0, 0] }),
    part(turned([[0.01, 0], [30, 0], [31, 2], [27, 9], [31, 24], [24, 30], [0.01, 30]]), m.rubber(), { at: [0, 5, 0] }),
    part(plate(rounded(100, 62, 10), 6, { bevel: 0.8 }), m.zinc(), { at: [0, 38, 0], turn: [Math.PI / 2, 0, 0] }),
    part(gusset, m.zinc(), { at: [74, 41, -22], turn: [0, Math.PI, 0] }), part(gusset, m.zinc(), { at: [-74, 41, -22] }),
    part(block(180, 90, 160, 22), m.castAluminium(), { at: [0, 90, -70] }),
    part(turned([[0.01, -120], [60, -120], [70, -100], [70, 120], [0.01, 120]]), m.castAluminium(), { at: [0, 150, -150], turn: [Math.PI / 2, 0, 0] }),
    [[-58, 34], [58, 34]].map(([x, z]) => group([washer(10), group([bolt(10, 40)], { at: [0, 2, 0], turn: [0, x, 0] })], { at: [x, 6, z] })),
    [[-32, 16], [32, 16]].map(([x, z]) => group([washer(10), group([nut(10, m.zinc(), { nylon: true })], { at: [0, 1, 0], turn: [0, x, 0] }), part(round(4.6, 8), m.zinc(), { at: [0, 12, 0] })], { at: [x, 42, z] })),
    group([scaleBar(100)], { at: [-50, 5.2, 68] , turn: [0, 0, 0] }),
    part(block(130, 1, 40, 0.3), m.zinc(), { at: [0, 4.6, 60] }),
  ], { eye: [170, 190, 330], focus: [0, 28, 10], lens: 30, blur: 4, span: 380, lighting: { key: [0.8, 0.9, 0.6] } });
};

export const sets = {
  'hat-before': hatBefore, 'tube-wall': tubeWall, 'crossmember-tacked': crossmemberTacked, 'crossmember-weld': crossmemberWeld,
  'coupon-macro': couponMacro, 'gearbox-bracket': gearboxBracket,
};
