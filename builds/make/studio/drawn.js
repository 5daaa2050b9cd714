import * as THREE from 'three';

/** Things drawn on a canvas: graduations, displays, stamped numbers. */

export function canvasTexture(w, h, draw, { colour = true } = {}) {
  const canvas = Object.assign(document.createElement('canvas'), { width: Math.round(w), height: Math.round(h) });
  draw(canvas.getContext('2d'), canvas.width, canvas.height);
  const made = new THREE.CanvasTexture(canvas);
  if (colour) made.colorSpace = THREE.SRGBColorSpace;
  made.anisotropy = 4;
  return made;
}

export function write(context, text, x, y, size, { colour = '#111', align = 'center', weight = 400, family = 'Noto Sans', baseline = 'middle' } = {}) {
  Object.assign(context, { fillStyle: colour, textAlign: align, textBaseline: baseline, font: `${weight} ${size}px "${family}"` });
  context.fillText(text, x, y);
}

const lit = { 0: 'abcdef', 1: 'bc', 2: 'abged', 3: 'abgcd', 4: 'fgbc', 5: 'afgcd', 6: 'afgedc', 7: 'abc', 8: 'abcdefg', 9: 'abcdfg', '-': 'g', ' ': '' };
const bars = { a: [0, 0, 1, 0], b: [1, 0, 1, 1], c: [1, 1, 1, 2], d: [0, 2, 1, 2], e: [0, 1, 0, 2], f: [0, 0, 0, 1], g: [0, 1, 1, 1] };

/** Digits of seven bars, their right edge at x. */
function segments(context, text, x, y, size, colour = '#15201c') {
  const [w, h, bar] = [size * 0.5, size * 0.5, size * 0.11];
  Object.assign(context, { strokeStyle: colour, fillStyle: colour, lineWidth: bar, lineCap: 'butt' });
  const characters = [...text];
  let left = x - characters.reduce((sum, c) => sum + (c === '.' ? bar * 1.7 : w + bar * 2.1), 0);
  for (const character of characters) {
    if (character === '.') {
      context.fillRect(left - bar * 0.2, y + size - bar / 2, bar * 1.1, bar * 1.1);
      left += bar * 1.7;
      continue;
    }
    for (const segment of lit[character] ?? '') {
      const [x1, y1, x2, y2] = bars[segment];
      const lean = (v) => (2 - v) * h * 0.06;
      const [dx, dy] = [Math.sign(x2 - x1) * bar * 0.35, Math.sign(y2 - y1) * bar * 0.35];
      context.beginPath();
      context.moveTo(left + x1 * w + lean(y1) + dx, y + y1 * h + dy);
      context.lineTo(left + x2 * w + lean(y2) - dx, y + y2 * h - dy);
      context.stroke();
    }
    left += w + bar * 2.1;
  }
}

/** A liquid-crystal display: the number, its unit, and small words. */
export function display(w, h, number, unit = '', small = '') {
  const scale = 16;
  return canvasTexture(w * scale, h * scale, (context, W, H) => {
    const shade = context.createLinearGradient(0, 0, W, H);
    shade.addColorStop(0, '#b9c3b0');
    shade.addColorStop(1, '#9dA896');
    context.fillStyle = shade;
    context.fillRect(0, 0, W, H);
    const size = Math.min(H * 0.58, (W * 0.76) / (number.length * 0.62));
    segments(context, number, W * 0.8 + 3, H * 0.78 - size + 4, size, 'rgba(40,50,40,.22)');
    segments(context, number, W * 0.8, H * 0.78 - size, size);
    write(context, unit, W * 0.83, unit === '°' ? H * 0.44 : H * 0.66, unit === '°' ? H * 0.6 : H * 0.24, { align: 'left', weight: 700 });
    write(context, small, W * 0.05, H * 0.2, H * 0.15, { align: 'left' });
  });
}

/** Graduations in millimetres along x from 0, drawn on a strip; numbers each 10 mm. */
export function graduations(context, { length, perMm, edge, height, colour = '#141414', numbers = true, size = 3.2, far = false }) {
  const direction = far ? -1 : 1;
  for (let mm = 0; mm <= length; mm++) {
    const reach = (mm % 10 === 0 ? 6.4 : mm % 5 === 0 ? 4.8 : 3.2) * (height / 10);
    context.fillStyle = colour;
    context.fillRect(mm * perMm - perMm * 0.11, far ? edge - reach * perMm : edge, perMm * 0.22, reach * perMm);
    if (numbers && mm % 10 === 0 && mm > 0) write(context, String(mm), mm * perMm - perMm * 0.4, edge + direction * (6.4 * height / 10 + size * 0.25) * perMm, size * perMm, { colour, align: 'right', weight: 700 });
  }
}

/** Characters punched into metal: their colour and height, as two textures. */
export function stamped(w, h, text, size, { base = '#8d8b87', seed = 1 } = {}) {
  const scale = 14;
  const draw = (ground, ink, blur) => (context, W, H) => {
    context.fillStyle = ground;
    context.fillRect(0, 0, W, H);
    context.filter = `blur(${blur}px)`;
    let x = W / 2 - ((text.length - 1) * size * 0.74 * scale) / 2;
    [...text].forEach((character, i) => {
      const jitter = Math.sin((i + 1) * 12.9898 * seed) * 0.5;
      context.save();
      context.translate(x, H / 2 + jitter * scale * 0.7);
      context.rotate(jitter * 0.06);
      write(context, character, 0, 0, size * scale, { colour: ink, family: 'Noto Sans Mono', weight: 400 });
      context.restore();
      x += size * 0.74 * scale;
    });
  };
  return { map: canvasTexture(w * scale, h * scale, draw(base, '#4a4744', 1.2)), bumpMap: canvasTexture(w * scale, h * scale, draw('#fff', '#000', 3), { colour: false }) };
}
