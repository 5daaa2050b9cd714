import { canvasTexture, write } from './drawn.js';
import { group, part, plate, round, turned } from './geometry.js';
import * as m from './materials.js';
import * as THREE from 'three';

const quarter = Math.PI / 2;

/** A round dial of radius `r` towards +z: from `least` to `most` over 270 degrees, numbers each `step`, the needle at `value`. */
export function dial(r, { least = 0, most, step, minor, value, unit, sweep = 270, body = m.machined() }) {
  const side = 1000;
  const start = -90 - sweep / 2;
  const at = (v) => ((start + ((v - least) / (most - least)) * sweep) * Math.PI) / 180;
  const face = canvasTexture(side, side, (context) => {
    context.fillStyle = '#c9c7be';
    context.fillRect(0, 0, side, side);
    context.translate(side / 2, side / 2);
    const count = Math.round((most - least) / minor);
    for (let k = 0; k <= count; k++) {
      const v = least + k * minor;
      const main = Math.abs(v / step - Math.round(v / step)) < 1e-6;
      const [c, s] = [Math.cos(at(v)), Math.sin(at(v))];
      Object.assign(context, { strokeStyle: '#101010', lineWidth: main ? 9 : 4 });
      context.beginPath();
      context.moveTo(c * 470, s * 470);
      context.lineTo(c * (main ? 400 : 432), s * (main ? 400 : 432));
      context.stroke();
      if (main && !(sweep === 360 && k === count)) write(context, String(Math.round(v * 1000) / 1000), c * 325, s * 325, 84, { colour: '#101010' });
    }
    write(context, unit, 0, 190, 80, { colour: '#101010' });
  });
  const disc = new THREE.CircleGeometry(r * 0.93, 96);
  disc.userData.uv = 'own';
  return group([
    part(turned([[0.01, -r * 0.35], [r * 0.96, -r * 0.35], [r, -r * 0.3], [r, r * 0.12], [r * 0.97, r * 0.16], [r * 0.92, r * 0.12], [r * 0.92, 0], [0.01, 0]], { segments: 96 }), body, { turn: [quarter, 0, 0] }),
    part(disc, Object.assign(m.plain(0xffffff, { roughness: 0.55 }), { map: face }), { at: [0, 0, 0.3] }),
    group([part(plate([[-r * 0.2, -r * 0.03], [r * 0.8, -r * 0.008], [r * 0.8, r * 0.008], [-r * 0.2, r * 0.03]], 0.8, { bevel: 0.1 }), m.plain(0x161616, { roughness: 0.5 }))], { at: [0, 0, 1.6], turn: [0, 0, -at(value)] }),
    part(round(r * 0.08, 2.4), m.brass(), { at: [0, 0, 1.8], turn: [quarter, 0, 0] }),
  ]);
}

/** A dial indicator of 1 mm a turn, its plunger pointing along -y, tip at y = -62. */
export const indicator = (value) => group([
  dial(28, { most: 1, step: 0.1, minor: 0.01, value: ((value % 1) + 1) % 1, unit: 'mm', sweep: 360 }),
  part(round(4, 34), m.machined(), { at: [0, -36, -4] }), part(round(2.2, 40), m.machined(), { at: [0, -48, -4] }),
  part(turned([[0.01, -62], [1.6, -60], [2, -57], [0.01, -57]]), m.brightSteel(), { at: [0, 0, -4] }),
  part(round(5, 12), m.machined(), { at: [0, 32, -4] }),
  part(plate([[-7, -7], [7, -7], [7, 7], [-7, 7]], 5, { bevel: 1 }), m.machined(), { at: [0, 0, -14] }),
]);
