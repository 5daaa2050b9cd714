import * as THREE from 'three';
import { canvasTexture, display, graduations, write } from './drawn.js';
import { block, group, label, part, plate, round, rounded, turned } from './geometry.js';
import * as m from './materials.js';

const satin = (map) => Object.assign(m.plain(0xffffff, { metalness: 0.55, roughness: 0.38 }), { map });
const printed = (map, roughness = 0.6) => Object.assign(m.plain(0xffffff, { roughness }), { map });

/** A steel rule from 0 along x, its graduated face upwards, the front edge at z = 0. */
export function rule(length = 150, width = 20) {
  const perMm = 14;
  const face = canvasTexture((length + 8) * perMm, width * perMm, (context, W, H) => {
    const sheen = context.createLinearGradient(0, 0, W, H);
    ['#a5a5a2', '#959592', '#aaaaa7', '#9a9a97'].forEach((colour, i) => sheen.addColorStop(i / 3, colour));
    context.fillStyle = sheen;
    context.fillRect(0, 0, W, H);
    for (let i = 0; i < 500; i++) {
      context.fillStyle = i % 2 ? 'rgba(255,255,255,.05)' : 'rgba(60,60,60,.05)';
      context.fillRect(0, (i * 7919) % H, W, 1);
    }
    context.translate(2 * perMm, 0);
    graduations(context, { length, perMm, edge: H, height: 9, far: true, size: 4, colour: '#050505' });
    graduations(context, { length, perMm, edge: 0, height: 5, numbers: false, colour: '#050505' });
    write(context, 'mm', perMm * 3.5, H * 0.4, perMm * 2.6);
  });
  return group([
    part(block(length + 8, 0.8, width, 0.3), m.machined(), { at: [length / 2 + 2, 0.4, -width / 2] }),
    part(label(length + 8, width), satin(face), { at: [length / 2 + 2, 0.83, -width / 2], turn: [-Math.PI / 2, 0, 0] }),
  ]);
}

/** A black and white scale of 10 mm fields lying on the ground from 0 along x. */
export function scaleBar(length = 100, width = 14) {
  const perMm = 10;
  const face = canvasTexture((length + 6) * perMm, width * perMm, (context, W, H) => {
    context.fillStyle = '#ecebe6';
    context.fillRect(0, 0, W, H);
    for (let k = 0; k < length / 10; k++) {
      context.fillStyle = '#151515';
      context.fillRect((3 + k * 10) * perMm, (k % 2 ? 0.32 : 0.62) * H, 10 * perMm, H * 0.3);
      context.fillRect((3 + k * 10 - 0.15) * perMm, H * 0.3, 0.3 * perMm, H * 0.62);
      if (k > 0) write(context, String(k), (3 + k * 10) * perMm, H * 0.16, H * 0.24, { weight: 700 });
    }
    context.fillRect((3 + length - 0.15) * perMm, H * 0.3, 0.3 * perMm, H * 0.62);
    write(context, 'cm', (length - 2) * perMm, H * 0.16, H * 0.22);
  });
  return group([
    part(block(length + 6, 1, width, 0.3), m.plain(0xe8e6e0, { roughness: 0.6 }), { at: [length / 2, 0.5, -width / 2] }),
    part(label(length + 6, width), printed(face), { at: [length / 2, 1.02, -width / 2], turn: [-Math.PI / 2, 0, 0] }),
  ]);
}

const lcd = (w, h, number, unit, small) => part(label(w, h), printed(display(w, h, number, unit, small), 0.18));

/** A digital caliper: beam along x, jaws downwards, measuring faces at x = 0 and x = `open`, its face towards +z. */
export function caliper(open, reading, { jaw = 40, unit = 'mm' } = {}) {
  const steel = m.machined();
  const jawShape = (sign) => [[0, 0], [0, -jaw], [sign * 3, -jaw], [sign * 11, -jaw * 0.42], [sign * 15, 0]];
  const lip = (sign) => [[0, 16], [0, 33], [sign * 2, 34], [sign * 9, 16]];
  const perMm = 12;
  const beamFace = canvasTexture(170 * perMm, 9 * perMm, (context, W, H) => {
    context.fillStyle = '#23262a';
    context.fillRect(0, 0, W, H);
    graduations(context, { length: 168, perMm, edge: H, height: 6, far: true, colour: '#d8d8d4', size: 2.4 });
  });
  const fixed = [
    part(plate([[-16, 0], [-16, 16], [200, 16], [200, 0]], 3.4, { bevel: 0.3 }), steel),
    part(plate(jawShape(-1), 3.4, { bevel: 0.35 }), steel),
    part(plate(lip(-1), 2.2, { bevel: 0.3 }), steel),
    part(label(168, 9), printed(beamFace, 0.5), { at: [112, 8, 1.75] }),
  ];
  const housing = [
    part(plate(jawShape(1), 3.4, { bevel: 0.35 }), steel),
    part(plate(lip(1), 2.2, { bevel: 0.3 }), steel),
    part(block(74, 30, 13, 3), m.greyPlastic(), { at: [44, 10, 0.5] }),
    part(block(46, 17.5, 1.2, 1), m.blackPlastic(), { at: [36, 14, 7] }),
    group([lcd(42, 14, reading, unit, '')], { at: [36, 14, 7.7] }),
    ...[[20, 'ZERO', 0xb2412e], [36, 'ON', 0x2f3d4a], [52, 'HOLD', 0x2f3d4a]].map(([x, , colour]) => part(round(3, 1.6, { edge: 0.5 }), m.plain(colour, { roughness: 0.45 }), { at: [x, 1, 7.4], turn: [Math.PI / 2, 0, 0] })),
    part(round(4, 7, { edge: 0.8 }), steel, { at: [68, 27, 0] }),
    part(turned([[0.01, -3], [5, -3], [5.4, -2], [5.4, 2], [5, 3], [0.01, 3]]), steel, { at: [74, -3, -1], turn: [Math.PI / 2, 0, 0] }),
  ];
  return group([...fixed, group(housing, { at: [open, 0, 0] })]);
}

/** A micrometer: anvil's face at x = 0, spindle's at x = `open`, its frame below, the thimble to the right. */
export function micrometer(open, { from = 50, reading }) {
  const frame = new THREE.Shape();
  const [r, deep] = [open / 2 + 16, open / 2 + 30];
  frame.moveTo(-10, 8).lineTo(-14, 4).lineTo(-14, -6);
  frame.bezierCurveTo(-14, -deep * 1.25, open + 14, -deep * 1.25, open + 14, -6);
  frame.lineTo(open + 14, 8).lineTo(open + 3, 8).lineTo(open + 3, -8);
  frame.bezierCurveTo(open + 3, -r * 1.18, -3, -r * 1.18, -3, -8);
  frame.lineTo(-3, 8).closePath();
  const steel = m.machined();
  const along = { turn: [0, 0, -Math.PI / 2] };
  const perMm = 20;
  const [whole, part100] = [Math.floor(reading * 2) / 2 - from, Math.round(((reading * 2) % 1) * 50)];
  const sleeve = canvasTexture(26 * perMm, 34 * perMm, (context, W, H) => {
    context.fillStyle = '#c9c9c6';
    context.fillRect(0, 0, W, H);
    context.fillStyle = '#151515';
    context.fillRect(0, H / 2 - 1.5, W, 3);
    for (let k = 0; k <= 50; k++) {
      const x = k * 0.5 * perMm + 4;
      const up = k % 2 === 0;
      context.fillRect(x - 1.4, up ? H / 2 - (k % 10 === 0 ? 3.2 : 2) * perMm : H / 2, 2.8, (up && k % 10 === 0 ? 3.2 : 2) * perMm);
      if (k % 10 === 0) write(context, String(k / 2), x, H / 2 - 4.6 * perMm, 2.4 * perMm);
    }
  });
  const around = canvasTexture(50 * perMm, 8 * perMm, (context, W, H) => {
    context.fillStyle = '#c4c4c2';
    context.fillRect(0, 0, W, H);
    for (let k = 0; k < 50; k++) {
      context.save();
      context.translate((k + 0.5) * perMm, H);
      context.fillStyle = '#151515';
      context.fillRect(-1.5, -(k % 5 === 0 ? 3.2 : 2) * perMm, 3, 4 * perMm);
      context.rotate(-Math.PI / 2);
      if (k % 5 === 0) write(context, String(k), 4.6 * perMm, 0, 2.2 * perMm);
      context.restore();
    }
  });
  const shown = whole + 3;
  const sleeveMesh = new THREE.CylinderGeometry(8, 8, 26, 64, 1, true);
  sleeveMesh.userData.uv = 'own';
  const coneMesh = new THREE.CylinderGeometry(9.2, 10.5, 8, 100, 1, true);
  coneMesh.userData.uv = 'own';
  sleeve.wrapS = around.wrapS = THREE.RepeatWrapping;
  sleeve.rotation = Math.PI / 2;
  sleeve.center.set(0.5, 0.5);
  around.offset.x = (part100 + 0.5) / 50 - 0.25;
  return group([
    part(plate(frame, 11, { bevel: 2, curve: 40 }), m.blockBlue()),
    part(block(40, 12, 12.6, 2), m.blackPlastic(), { at: [open / 2, -deep * 0.93 + 1, 0] }),
    part(round(3.2, 16), steel, { at: [-8, 0, 0], ...along }),
    part(round(3.2, 40), steel, { at: [open + 20, 0, 0], ...along }),
    part(sleeveMesh, satin(sleeve), { at: [open + 26, 0, 0], ...along }),
    part(coneMesh, satin(around), { at: [open + 13 + shown + 4, 0, 0], turn: [0, 0, Math.PI / 2] }),
    part(round(10.6, 24), steel, { at: [open + 13 + shown + 20, 0, 0], ...along }),
    part(turned([[0.01, -10], [6, -10], [6.6, -9], [6.6, 9], [6, 10], [0.01, 10]]), m.machined(), { at: [open + 13 + shown + 42, 0, 0], ...along }),
  ]);
}

/** A digital inclinometer: base at y = 0, its face towards +z. */
export function inclinometer(reading, { unit = '°', size = 60 } = {}) {
  return group([
    part(block(size, size - 4, 30, 4), m.blackPlastic(), { at: [0, size / 2 + 2, 0] }),
    part(plate([[-size / 2, 0], [size / 2, 0], [size / 2, 8], [-size / 2, 8]], 32, { bevel: 0.6 }), m.machined(), { at: [0, 0, 0] }),
    part(block(size - 9, 23, 1.5, 1), m.greyPlastic(), { at: [0, size * 0.6 + 4, 15.2] }),
    group([lcd(size - 13, 18, reading, unit, '')], { at: [0, size * 0.6 + 4, 16.1] }),
    ...[-16, 0, 16].map((x, i) => part(block(11, 6.5, 2.4, 1.2), m.plain([0xb5472f, 0x707478, 0x707478][i], { roughness: 0.5 }), { at: [x, 17, 15.4] })),
  ]);
}

/** A leaf of a fillet gauge: a stainless strip whose corner is cut back by the leg. */
export function filletGauge(leg, { length = 62, width = 18 } = {}) {
  const outline = [[leg * 1.15, 0], [length, 0], [length, width], [leg * 0.2, width], [0, width - 2], [0, leg * 1.15]];
  const face = canvasTexture(length * 16, width * 16, (context, W, H) => {
    context.fillStyle = '#c3c3c1';
    context.fillRect(0, 0, W, H);
    write(context, `${leg.toFixed(1)} mm`, W * 0.5, H * 0.5, H * 0.36);
  });
  return group([
    part(plate(outline, 1, { bevel: 0.1, holes: [[length - 7, width / 2, 2.6]] }), m.machined()),
    part(label(length * 0.5, width * 0.6), satin(face), { at: [length * 0.5, width * 0.5, 0.53] }),
  ]);
}

/** A tape's blade standing up along y from 0, its printed face towards +z, slightly curved. */
export function tapeBlade(length, { width = 19, from = 0 } = {}) {
  const perMm = 7;
  const face = canvasTexture(width * perMm, length * perMm, (context, W, H) => {
    context.fillStyle = '#e4bd2c';
    context.fillRect(0, 0, W, H);
    for (let mm = 0; mm <= length; mm++) {
      const y = H - mm * perMm;
      const value = mm + from;
      context.fillStyle = '#161616';
      context.fillRect(0, y - 0.8, (value % 10 === 0 ? 0.55 : value % 5 === 0 ? 0.36 : 0.22) * W, value % 10 === 0 ? 2.4 : 1.6);
      if (value % 10 === 0 && value > 0) write(context, String(value / 10), W * 0.76, y - perMm * 3.4, perMm * 6, { weight: 700, colour: value % 100 === 0 ? '#a31d14' : '#161616' });
    }
  });
  const geometry = new THREE.CylinderGeometry(40, 40, length, 24, 1, true, -width / 80, width / 40);
  geometry.userData.uv = 'own';
  const material = Object.assign(printed(face, 0.35), { side: THREE.DoubleSide });
  return group([part(geometry, material, { at: [0, length / 2, -40] })]);
}

export function tapeCase() {
  return group([
    part(plate(rounded(62, 62, 14), 32, { bevel: 4 }), m.blackPlastic()),
    part(round(20, 34, { edge: 2 }), m.plain(0xd8a020, { roughness: 0.5 }), { turn: [Math.PI / 2, 0, 0] }),
    part(block(14, 5, 20, 1), m.machined(), { at: [34, -24, 0] }),
  ]);
}

/** A protractor with an arm: base along x at y = 0, the arm at `degrees` from it, its face towards +z. */
export function protractor(degrees, { radius = 60, arm = 130 } = {}) {
  const perMm = 10;
  const face = canvasTexture(radius * 2 * perMm, radius * perMm, (context, W, H) => {
    context.fillStyle = '#cfcfcb';
    context.fillRect(0, 0, W, H);
    context.translate(W / 2, H);
    for (let d = 0; d <= 180; d++) {
      const [c, s] = [Math.cos((d * Math.PI) / 180), -Math.sin((d * Math.PI) / 180)];
      const [outer, inner] = [radius * 0.97 * perMm, radius * (d % 10 === 0 ? 0.85 : d % 5 === 0 ? 0.89 : 0.92) * perMm];
      Object.assign(context, { strokeStyle: '#151515', lineWidth: d % 10 === 0 ? 5 : 3 });
      context.beginPath();
      context.moveTo(c * outer, s * outer);
      context.lineTo(c * inner, s * inner);
      context.stroke();
      if (d % 10 === 0 && d > 0 && d < 180) write(context, String(d > 90 ? 180 - d : d), c * radius * 0.77 * perMm, s * radius * 0.77 * perMm, perMm * 4);
    }
  });
  const half = new THREE.Shape().moveTo(radius, -9).lineTo(radius, 0).absarc(0, 0, radius, 0, Math.PI).lineTo(-radius, -9).closePath();
  const faceShape = new THREE.Shape().moveTo(radius, 0).absarc(0, 0, radius, 0, Math.PI).closePath();
  const geometry = new THREE.ShapeGeometry(faceShape, 48);
  const { position, uv } = geometry.attributes;
  for (let i = 0; i < position.count; i++) uv.setXY(i, position.getX(i) / radius / 2 + 0.5, position.getY(i) / radius);
  geometry.userData.uv = 'own';
  const angle = (degrees * Math.PI) / 180;
  return group([
    part(plate(half, 1.6, { bevel: 0.2, curve: 60 }), m.machined()),
    part(geometry, satin(face), { at: [0, 0, 0.83] }),
    group([part(plate([[-18, -4.5], [-18, 4.5], [arm - 8, 4.5], [arm, 0], [arm - 8, -4.5]], 1.6, { bevel: 0.2 }), m.brightSteel(), { at: [0, 0, 2] })], { turn: [0, 0, angle] }),
    part(turned([[0.01, -3], [7, -3], [7.6, -2.4], [7.6, 2.4], [7, 3], [0.01, 3]]), m.brass(), { at: [0, 0, 4.5], turn: [Math.PI / 2, 0, 0] }),
  ]);
}

/** A sound level meter: microphone along -x at 0, its face towards +z. */
export function soundMeter(reading) {
  const windscreen = m.plain(0x18181a, { roughness: 0.95 });
  return group([
    part(turned([[0.01, -34], [18, -30], [26, -18], [29, 0], [26, 18], [18, 29], [9, 33], [0.01, 34]], { segments: 48 }), windscreen, { turn: [0, 0, Math.PI / 2] }),
    part(turned([[6.4, 0], [6.4, 55], [9, 75], [22, 105], [22, 110], [0.01, 110]]), m.machined(), { at: [18, 0, 0], turn: [0, 0, -Math.PI / 2] }),
    part(plate(rounded(170, 68, 9), 30, { bevel: 4 }), m.greyPlastic(), { at: [205, 0, 0] }),
    part(block(72, 44, 1.6, 2), m.blackPlastic(), { at: [176, 4, 15] }),
    group([lcd(64, 34, reading, 'dB', 'A   F   LEVEL')], { at: [176, 4, 16] }),
    ...[[232, 14], [232, -8], [256, 14], [256, -8]].map(([x, y], i) => part(block(14, 10, 4, 2), m.plain(i ? 0x2b2e31 : 0xa83a28, { roughness: 0.5 }), { at: [x, y, 15] })),
  ]);
}

/** A box with a display on its face towards +z. */
export function meter(w, h, d, number, unit, small, { body = m.blackPlastic() } = {}) {
  return group([
    part(block(w, h, d, 6), body),
    part(block(w * 0.86, h * 0.58, 2, 2), m.greyPlastic(), { at: [0, h * 0.12, d / 2] }),
    group([lcd(w * 0.78, h * 0.47, number, unit, small)], { at: [0, h * 0.12, d / 2 + 1.2] }),
    ...[-0.26, 0, 0.26].map((x) => part(round(h * 0.055, 4, { edge: 1 }), m.plain(0x6b6f73, { roughness: 0.5 }), { at: [x * w, -h * 0.34, d / 2], turn: [Math.PI / 2, 0, 0] })),
  ]);
}

/** A gap gauge: a stepped bar; the step of `gap` mm is what fits. */
export function gapBar(d, length) {
  const face = canvasTexture(240, 90, (context, W, H) => {
    context.fillStyle = '#c9c9c6';
    context.fillRect(0, 0, W, H);
    write(context, `${d} mm`, W / 2, H / 2, 58);
  });
  return group([
    part(round(d / 2, length, { edge: 1 }), m.machined(), { turn: [0, 0, Math.PI / 2] }),
    part(turned([[0.01, -22], [d * 0.75, -22], [d * 0.8, -20], [d * 0.8, 20], [d * 0.75, 22], [0.01, 22]], { segments: 8 }), m.redPaint(), { at: [length / 2 + 20, 0, 0], turn: [0, 0, Math.PI / 2] }),
    part(label(20, 7.5), satin(face), { at: [length * 0.3, 0, d / 2 + 0.1] }),
  ]);
}

