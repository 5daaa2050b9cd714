import { canvasTexture, write } from '../drawn.js';
import { block, group, label, part, pipe, plate, round, rounded, turned } from '../geometry.js';
import { nut } from '../hardware.js';
import { inclinometer, scaleBar } from '../instruments.js';
import * as m from '../materials.js';
import { backdrop, stage } from '../set.js';

const quarter = Math.PI / 2;
const across = [0, 0, -quarter];

/** The axle as it came, on its leaf springs, the inclinometer on the nose. */
const leafBefore = (renderer) => {
  const tilt = -(2.1 * Math.PI) / 180;
  const leaf = (length, y) => part(plate((() => {
    const rise = (x) => 0.00018 * x * x;
    const xs = Array.from({ length: 41 }, (_, i) => (i / 40 - 0.5) * length);
    return [...xs.map((x) => [x, y + rise(x)]), ...xs.reverse().map((x) => [x, y + 7 + rise(x)])];
  })(), 58, { bevel: 0.8 }), m.rust());
  return stage(renderer, [
    part(block(2600, 8, 1600, 1), m.underbody(), { at: [0, 360, -420] }), backdrop({ floor: -420, far: -1900 }),
    group([
      part(turned([[0.01, -900], [36, -900], [36, 900], [0.01, 900]]), m.rust(), { turn: [quarter, 0, 0] }),
      part(turned([[0.01, -70], [70, -70], [112, -40], [124, 0], [112, 40], [70, 70], [0.01, 70]]), m.castIron(), { at: [0, 0, -150], turn: [quarter, 0, 0] }),
      part(turned([[0.01, 0], [92, 0], [66, 60], [50, 120], [48, 170], [0.01, 170]]), m.castIron(), { at: [-40, 0, -150], turn: [0, 0, quarter] }),
      part(block(74, 26, 60, 5), m.castIron(), { at: [-168, 48, -150] }), part(block(72, 3, 56, 0.8), m.machined(), { at: [-168, 62, -150] }),
      group([inclinometer('2.1')], { at: [-168, 64, -150] }),
      part(round(44, 10), m.machined(), { at: [-216, 0, -150], turn: across }),
      part(turned([[0.01, 0], [30, 0], [34, 30], [34, 500], [0.01, 500]]), m.rust(), { at: [-226, 0, -150], turn: [0, 0, quarter] }),
    ], { turn: [0, 0, tilt] }),
    group([leaf(1250, -58), leaf(900, -66), leaf(620, -74)], { at: [0, -12, 120] }),
    [-26, 26].map((x) => [part(pipe([[x, -92, 92], [x, 30, 92], [x, 44, 104], [x, 44, 136], [x, 30, 148], [x, -92, 148]], 6), m.zinc()), group([nut(12)], { at: [x, -104, 92], turn: [Math.PI, 0, 0] }), group([nut(12)], { at: [x, -104, 148], turn: [Math.PI, 0, 0] })]),
    part(plate(rounded(110, 90, 10), 8, { bevel: 1 }), m.chassisBlack(), { at: [0, -92, 120], turn: [quarter, 0, 0] }),
    group([scaleBar(100)], { at: [40, -10, 152], turn: [quarter, 0, 0] }),
  ], { eye: [-480, 190, 620], focus: [-90, 10, 0], lens: 38, blur: 4, span: 760, exposure: 1.5, lighting: { key: [-0.7, 0.35, 0.9], keyStrength: 3.4, roomStrength: 1.1 } });
};

/** The engine bay with the four in it. */
const bayBefore = (renderer) => stage(renderer, [
  part(block(1500, 700, 30, 6), m.bodyGreen(), { at: [0, 100, -520] }), part(block(1500, 60, 200, 14), m.bodyGreen(), { at: [0, 400, -600] }),
  [-1, 1].map((s) => [part(block(260, 420, 1100, 30), m.bodyGreen(), { at: [s * 620, 20, 0] }), part(turned([[0.01, 0], [92, 0], [96, 8], [60, 26], [30, 30], [0.01, 30]]), m.bodyGreen(), { at: [s * 580, 230, -160] }), [0, 1, 2].map((k) => group([nut(10)], { at: [s * 580 + 60 * Math.cos(k * 2.1), 246, -160 + 60 * Math.sin(k * 2.1)] }))]),
  part(block(1100, 30, 1200, 4), m.plain(0x121212, { roughness: 1 }), { at: [0, -260, 0] }),
  group([
    part(block(190, 300, 470, 14), m.castIron(), { at: [0, -60, 0] }), part(block(210, 80, 480, 12), m.castAluminium(), { at: [0, 120, 0] }),
    part(block(150, 70, 450, 26), m.blockBlue(), { at: [0, 188, 0] }), part(turned([[0.01, 0], [28, 0], [30, 6], [26, 20], [0.01, 20]]), m.blackPlastic(), { at: [0, 222, 120] }),
    part(turned([[0.01, 0], [150, 0], [156, 8], [156, 74], [148, 84], [30, 92], [0.01, 92]]), m.chassisBlack(), { at: [-60, 236, -60] }), group([nut(8)], { at: [-60, 328, -60] }),
    part(pipe([[70, 60, 150], [130, 30, 120], [150, -60, 40], [140, -200, -60]], 22), m.rust()), part(block(44, 70, 400, 10), m.rust(), { at: [122, 90, 0] }),
    part(turned([[0.01, 0], [64, 0], [68, 8], [64, 100], [40, 116], [0.01, 116]]), m.castAluminium(), { at: [-160, 10, 160], turn: [quarter, 0, 0] }),
    [0, 1, 2, 3].map((k) => part(pipe([[60, 176, 150 - k * 90], [90, 230, 140 - k * 80], [40, 262, 60 - k * 30], [-170, 200, -160]], 4), m.rubber())),
  ]),
  part(block(560, 40, 60, 8), m.blackPlastic(), { at: [0, 190, 430] }), part(block(520, 360, 44, 4), m.chassisBlack(), { at: [0, 0, 430] }),
  part(turned([[0.01, 0], [30, 0], [31, 8], [26, 20], [0.01, 20]]), m.brass(), { at: [-150, 210, 430] }),
  part(pipe([[-60, 150, 240], [-90, 190, 330], [-120, 176, 420]], 20), m.rubber()),
  part(block(230, 170, 160, 8), m.blackPlastic(), { at: [-430, 130, 250] }), [-70, 70].map((x) => part(turned([[0.01, 0], [9, 0], [8, 16], [0.01, 16]]), m.machined(), { at: [-430 + x, 215, 250] })), part(block(180, 10, 26, 2), m.zinc(), { at: [-430, 222, 250] }),
  part(pipe([[-360, 225, 250], [-300, 250, 180], [-260, 120, 60]], 7), m.rubber()),
  group([part(turned([[0.01, 0], [96, 0], [100, 10], [96, 90], [60, 104], [0.01, 104]]), m.chassisBlack(), { at: [0, 0, 0], turn: [quarter, 0, 0] }), part(turned([[0.01, 0], [20, 0], [20, 120], [0.01, 120]]), m.castAluminium(), { at: [0, 0, 104], turn: [quarter, 0, 0] }), part(block(90, 46, 60, 10), m.plain(0xb9ab7e, { roughness: 0.4 }), { at: [0, 50, 160] })], { at: [330, 190, -490] }),
  part(turned([[0.01, 0], [13, 0], [13, 620], [0.01, 620]]), m.rust(), { at: [300, 60, -480], turn: [1.95, 0, 0.12] }),
  group([scaleBar(100, 20)], { at: [-60, 224, 60] }),
], { eye: [-80, 900, 1150], focus: [-10, 110, 60], lens: 42, blur: 6, span: 1200, exposure: 1.5, lighting: { key: [0.4, 1, 0.5], keyStrength: 3 } });

/** The tyre placard on the door. */
const placard = (renderer) => {
  const face = canvasTexture(1400, 900, (context, W, H) => {
    context.fillStyle = '#b4b2a8';
    context.fillRect(0, 0, W, H);
    context.strokeStyle = '#16243a';
    context.lineWidth = 8;
    context.strokeRect(30, 30, W - 60, H - 60);
    [['TYRES', 110, 84, 700], ['185/70R14 88S      5 J x 14, 5½ J x 14', 270, 62, 400], ['cold, up to 3 persons   front 200   rear 200 kPa', 390, 50, 400], ['cold, laden                    front 200   rear 230 kPa', 480, 50, 400], ['with the 2.6 l:  195/70R14 91H   5½ J x 14', 610, 56, 400], ['Load of a tyre not below index 88', 730, 50, 400]].forEach(([text, y, size, weight]) => write(context, text, W / 2, y, size, { colour: '#16243a', weight }));
  });
  return stage(renderer, [
    part(block(900, 700, 40, 20), m.bodyGreen(), { at: [60, 0, -22] }), part(block(40, 700, 30, 10), m.rubber(), { at: [-330, 0, -6] }),
    part(block(142, 92, 0.6, 0.2), m.machined(), { at: [0, 0, -1.6] }), part(label(140, 90), Object.assign(m.plain(0xffffff, { metalness: 0.4, roughness: 0.45 }), { map: face }), { at: [0, 0, -1.2] }),
    [[-64, 39], [64, 39], [-64, -39], [64, -39]].map(([x, y]) => part(round(2.6, 1.4, { edge: 0.5 }), m.machined(), { at: [x, y, -0.8], turn: [quarter, 0, 0] })),
    group([part(turned([[0.01, 0], [9, 0], [9, 20], [0.01, 20]]), m.machined(), { turn: [quarter, 0, 0] }), part(block(46, 14, 8, 3), m.zinc(), { at: [0, 0, 14] })], { at: [-230, -10, 0] }),
    group([scaleBar(100)], { at: [-50, -74, -1.4], turn: [quarter, 0, 0] }),
  ], { eye: [-70, 30, 330], focus: [-14, -10, 0], lens: 32, blur: 1.6, span: 380, lighting: { key: [-0.6, 0.7, 0.8], keyStrength: 2.2 } });
};

export const sets = { 'leaf-before': leafBefore, 'bay-before': bayBefore, placard };
