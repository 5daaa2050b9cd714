import * as THREE from 'three';
import { clouds, field, mapped, mixed, side, stones } from './noise.js';
import { seeded } from './random.js';

/** Surfaces of the workshop. `tile` is how many millimetres one repeat of the texture covers. */

const memo = new Map();
const once = (name, make) => () => {
  if (!memo.has(name)) memo.set(name, make());
  return memo.get(name);
};

const hex = (code) => [code >> 16, (code >> 8) & 255, code & 255];

function texture(paint, colour = false) {
  const canvas = Object.assign(document.createElement('canvas'), { width: side, height: side });
  const context = canvas.getContext('2d');
  const image = context.createImageData(side, side);
  for (let index = 0; index < side * side; index++) {
    const pixel = paint(index);
    for (let channel = 0; channel < 3; channel++) image.data[index * 4 + channel] = Array.isArray(pixel) ? pixel[channel] : pixel * 255;
    image.data[index * 4 + 3] = 255;
  }
  context.putImageData(image, 0, 0);
  const made = new THREE.CanvasTexture(canvas);
  made.wrapS = made.wrapT = THREE.RepeatWrapping;
  if (colour) made.colorSpace = THREE.SRGBColorSpace;
  return made;
}

/** A surface from a colour, a roughness and a height at every point of its texture. */
function surface({ tile, colour, rough, height, bump, ...rest }) {
  const material = new THREE.MeshPhysicalMaterial({
    ...rest,
    ...(colour ? { map: texture(colour, true) } : {}),
    ...(rough ? { roughnessMap: texture(rough), roughness: 1 } : {}),
    ...(height ? { bumpMap: texture(height), bumpScale: bump } : {}),
  });
  material.userData.tile = tile;
  return material;
}

/** Fine lines, as a grinder or a file leaves them, with a few deep ones across. */
function scratches({ seed, count, along }) {
  const canvas = Object.assign(document.createElement('canvas'), { width: side, height: side });
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const random = seeded(seed);
  context.fillStyle = '#808080';
  context.fillRect(0, 0, side, side);
  for (let i = 0; i < count; i++) {
    const [x, y, length] = [random() * side, random() * side, (0.1 + random() * 0.5) * side];
    const angle = (random() - 0.5) * (random() < along ? 0.12 : 2.6);
    context.strokeStyle = random() < 0.5 ? `rgba(20,20,20,${0.1 + random() * 0.3})` : `rgba(240,240,240,${0.1 + random() * 0.3})`;
    context.lineWidth = 0.5 + random() * 1.2;
    context.beginPath();
    context.moveTo(x, y);
    context.lineTo(x + Math.cos(angle) * length, y + Math.sin(angle) * length);
    context.stroke();
  }
  const { data } = context.getImageData(0, 0, side, side);
  return field((_u, _v, index) => data[index * 4] / 255);
}

export const brightSteel = once('bright steel', () => {
  const grain = clouds({ across: 3, down: 180, octaves: 3, seed: 11 });
  const blotch = clouds({ across: 4, octaves: 5, seed: 12 });
  const lines = scratches({ seed: 13, count: 900, along: 0.85 });
  return surface({
    tile: 70, metalness: 0.95, bump: 0.5,
    colour: (i) => mixed(hex(0x9c9a96), hex(0xc4c2be), mapped(grain[i] * 0.6 + blotch[i] * 0.6, 0.3, 0.85)),
    rough: (i) => 0.3 + 0.25 * blotch[i] + 0.15 * grain[i],
    height: (i) => grain[i] * 0.4 + lines[i] * 0.6,
  });
});

export const machined = once('machined', () => {
  const grain = clouds({ across: 2, down: 260, octaves: 2, seed: 21 });
  const blotch = clouds({ across: 5, octaves: 4, seed: 22 });
  return surface({
    tile: 50, metalness: 1, bump: 0.1,
    colour: (i) => mixed(hex(0xbababa), hex(0xcfcecb), blotch[i]),
    rough: (i) => 0.3 + 0.05 * blotch[i] + 0.08 * grain[i],
    height: (i) => grain[i],
  });
});

export const millScale = once('mill scale', () => {
  const blotch = clouds({ across: 5, octaves: 6, seed: 31 });
  const fine = clouds({ across: 64, octaves: 3, seed: 32 });
  const lines = scratches({ seed: 33, count: 260, along: 0.6 });
  return surface({
    tile: 110, metalness: 0.55, bump: 0.5,
    colour: (i) => mixed(mixed(hex(0x3c4148), hex(0x6c7279), mapped(blotch[i], 0.3, 0.7)), hex(0x7d6a58), 0.35 * mapped(fine[i] * blotch[i], 0.3, 0.5)),
    rough: (i) => 0.42 + 0.3 * blotch[i] + 0.1 * fine[i],
    height: (i) => 0.5 * fine[i] + 0.3 * blotch[i] + 0.3 * lines[i],
  });
});

const casting = (colours, seed, metalness) => {
  const grain = clouds({ across: 256, octaves: 2, seed });
  const blotch = clouds({ across: 3, octaves: 7, seed: seed + 7 });
  return surface({
    tile: 150, metalness, bump: 0.35,
    colour: (i) => mixed(hex(colours[0]), hex(colours[1]), mapped(blotch[i] * 0.7 + grain[i] * 0.3, 0.25, 0.75)),
    rough: (i) => 0.5 + 0.25 * blotch[i] + 0.12 * grain[i],
    height: (i) => grain[i],
  });
};
export const castIron = once('cast iron', () => casting([0x3a3a3b, 0x74726f], 41, 0.55));
export const castAluminium = once('cast aluminium', () => casting([0x83827e, 0xb3b2ae], 45, 0.75));

export const rust = once('rust', () => {
  const patch = clouds({ across: 9, octaves: 7, gain: 0.62, seed: 51 });
  const grain = clouds({ across: 80, octaves: 3, seed: 52 });
  return surface({
    tile: 120, metalness: 0.25, bump: 1.8,
    colour: (i) => mixed(mixed(hex(0x3b322d), hex(0x5f4030), mapped(patch[i], 0.35, 0.65)), hex(0x85563a), mapped(patch[i] * 0.5 + grain[i] * 0.5, 0.55, 0.8)),
    rough: (i) => 0.65 + 0.3 * grain[i],
    height: (i) => grain[i] * 0.7 + patch[i] * 0.5,
  });
});

/** Paint with a little dust, handled but whole. */
const painted = (code, { seed, gloss = 0.35, grime = 0.35, clearcoat = 0 }) => {
  const dust = clouds({ across: 3, octaves: 8, gain: 0.6, seed });
  const peel = clouds({ across: 60, octaves: 2, seed: seed + 9 });
  const lines = scratches({ seed: seed + 4, count: 90, along: 0.3 });
  const base = hex(code);
  return surface({
    tile: 260, metalness: 0, bump: 0.3, clearcoat, clearcoatRoughness: 0.12,
    colour: (i) => mixed(mixed(mixed(base, hex(0x9a9184), grime * mapped(dust[i], 0.5, 0.75)), hex(0x0c0b0a), grime * 1.3 * mapped(dust[i], 0.48, 0.28)), hex(0xc8c4bc), 0.5 * mapped(lines[i], 0.62, 0.9)),
    rough: (i) => gloss + 0.3 * dust[i],
    height: (i) => peel[i] * 0.5 + lines[i] * 0.25,
  });
};
export const bodyGreen = once('body green', () => painted(0x87968a, { seed: 61, gloss: 0.16, grime: 0.05, clearcoat: 0.6 }));
/** Paint of thirty years from below: dulled, stained by oil and road dirt, with rust in small places. */
const weathered = (code, seed) => {
  const dirt = clouds({ across: 3, octaves: 8, gain: 0.62, seed });
  const oil = clouds({ across: 2, octaves: 5, seed: seed + 1 });
  const grit = clouds({ across: 150, octaves: 2, seed: seed + 2 });
  const spots = clouds({ across: 40, octaves: 4, seed: seed + 3 });
  return surface({
    tile: 420, metalness: 0, bump: 1.1,
    colour: (i) => mixed(mixed(mixed(hex(code), hex(0x6f6455), 0.7 * mapped(dirt[i], 0.42, 0.66)), hex(0x1e1a17), 0.7 * mapped(oil[i], 0.55, 0.78)), hex(0x5b3a27), 0.85 * mapped(spots[i], 0.7, 0.84)),
    rough: (i) => 0.55 + 0.25 * dirt[i] - 0.25 * mapped(oil[i], 0.5, 0.75), height: (i) => grit[i] * 0.5 + dirt[i] * 0.5 + 0.4 * mapped(spots[i], 0.7, 0.84),
  });
};
export const underbody = once('underbody', () => weathered(0x77827a, 66));
export const member = once('member', () => weathered(0x8a8478, 68));
export const chassisBlack = once('chassis black', () => painted(0x202225, { seed: 71, gloss: 0.34, grime: 0.3 }));
export const primer = once('primer', () => painted(0x9a938a, { seed: 76, gloss: 0.65 }));
export const blockBlue = once('block paint', () => painted(0x3f5673, { seed: 81, gloss: 0.42, grime: 0.5 }));
export const redPaint = once('red', () => painted(0x8f2b22, { seed: 86, gloss: 0.3 }));
export const orangePlastic = once('orange', () => painted(0xd0541a, { seed: 87, gloss: 0.4, grime: 0.2 }));
export const greyPlastic = once('grey plastic', () => painted(0x54585c, { seed: 88, gloss: 0.5, grime: 0.2 }));
export const trim = once('trim', () => painted(0x6a5c50, { seed: 89, gloss: 0.7, grime: 0.2 }));

export const zinc = once('zinc', () => {
  const blotch = clouds({ across: 6, octaves: 5, seed: 91 });
  const fine = clouds({ across: 70, octaves: 2, seed: 92 });
  return surface({
    tile: 45, metalness: 0.95, bump: 0.3,
    colour: (i) => mixed(mixed(hex(0xb9b7a6), hex(0xcfc9a8), mapped(blotch[i], 0.35, 0.7)), hex(0xb6a3b0), 0.4 * mapped(fine[i], 0.5, 0.8)),
    rough: (i) => 0.25 + 0.25 * blotch[i],
    height: (i) => fine[i],
  });
});
export const brass = once('brass', () => {
  const blotch = clouds({ across: 6, octaves: 5, seed: 96 });
  return surface({
    tile: 60, metalness: 1, bump: 0.2,
    colour: (i) => mixed(hex(0x8f6f3b), hex(0xc9a45c), blotch[i]), rough: (i) => 0.25 + 0.3 * blotch[i], height: (i) => blotch[i],
  });
});
export const bearingMetal = once('bearing metal', () => {
  const grain = clouds({ across: 3, down: 220, octaves: 2, seed: 97 });
  const blotch = clouds({ across: 4, octaves: 5, seed: 98 });
  return surface({
    tile: 45, metalness: 0.9, bump: 0.15,
    colour: (i) => mixed(hex(0x9d9a94), hex(0xb9b6ae), blotch[i]), rough: (i) => 0.32 + 0.2 * blotch[i], height: (i) => grain[i],
  });
});

const soft = (code, seed, bump, rough = 0.75) => {
  const grain = clouds({ across: 180, octaves: 2, seed });
  const dust = clouds({ across: 3, octaves: 8, gain: 0.65, seed: seed + 3 });
  return surface({
    tile: 200, metalness: 0, bump,
    colour: (i) => mixed(hex(code), hex(0x7b7469), 0.3 * mapped(dust[i], 0.4, 0.75)),
    rough: (i) => rough + 0.2 * dust[i], height: (i) => grain[i],
  });
};
export const rubber = once('rubber', () => soft(0x19191a, 101, 0.5));
export const blackPlastic = once('black plastic', () => soft(0x17181a, 105, 0.35, 0.42));
export const cloth = once('cloth', () => soft(0x6a5a4a, 108, 2.2, 0.9));

export const concrete = once('concrete', () => {
  const blotch = clouds({ across: 3, octaves: 7, seed: 111 });
  const grain = clouds({ across: 120, octaves: 2, seed: 112 });
  const stain = clouds({ across: 5, octaves: 5, seed: 113 });
  return surface({
    tile: 900, metalness: 0, bump: 2.5,
    colour: (i) => mixed(mixed(hex(0x77746e), hex(0x9c9890), mapped(blotch[i] * 0.7 + grain[i] * 0.3, 0.3, 0.7)), hex(0x3d3934), 0.75 * mapped(stain[i], 0.62, 0.8)),
    rough: (i) => 0.6 + 0.25 * grain[i] - 0.25 * mapped(stain[i], 0.6, 0.8), height: (i) => grain[i] * 0.5 + blotch[i] * 0.5,
  });
});
export const asphalt = once('asphalt', () => {
  const { height, shade } = stones({ across: 56, seed: 121 });
  const blotch = clouds({ across: 3, octaves: 5, seed: 122 });
  return surface({
    tile: 700, metalness: 0, bump: 5,
    colour: (i) => mixed(hex(0x1f1f20), mixed(hex(0x45464a), hex(0x87857f), shade[i]), mapped(height[i], 0.05, 0.4) * (0.6 + 0.5 * blotch[i])),
    rough: (i) => 0.75 + 0.2 * shade[i], height: (i) => height[i] * (0.5 + 0.5 * shade[i]),
  });
});
export const bench = once('bench', () => {
  const grain = clouds({ across: 3, down: 30, octaves: 4, seed: 131 });
  const fibre = clouds({ across: 14, down: 256, octaves: 3, gain: 0.7, seed: 132 });
  const stain = clouds({ across: 4, octaves: 6, seed: 133 });
  const lines = scratches({ seed: 134, count: 160, along: 0.4 });
  return surface({
    tile: 420, metalness: 0, bump: 1.4,
    colour: (i) => mixed(mixed(hex(0x554539), hex(0x857361), mapped(grain[i] * 0.35 + fibre[i] * 0.65, 0.28, 0.72)), hex(0x2a211b), 0.65 * mapped(stain[i], 0.52, 0.78)),
    rough: (i) => 0.55 + 0.3 * fibre[i], height: (i) => fibre[i] * 0.5 + lines[i] * 0.4,
  });
});

export const plain = (code, { metalness = 0, roughness = 0.5, ...rest } = {}) => new THREE.MeshPhysicalMaterial({ color: code, metalness, roughness, ...rest });
export const glass = () => plain(0xffffff, { roughness: 0.05, transparent: true, opacity: 0.12, clearcoat: 1 });
