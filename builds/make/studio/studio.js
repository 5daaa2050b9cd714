import { expose, makeRenderer } from './darkroom.js';
import * as before from './scenes/before.js';
import * as bench from './scenes/bench.js';
import * as brakes from './scenes/brakes.js';
import * as driveline from './scenes/driveline.js';
import * as engine from './scenes/engine.js';
import * as fuel from './scenes/fuel.js';
import * as structure from './scenes/structure.js';
import * as vehicle from './scenes/vehicle.js';

const sets = { ...structure.sets, ...engine.sets, ...driveline.sets, ...brakes.sets, ...fuel.sets, ...vehicle.sets, ...before.sets, ...bench.sets };

const canvas = document.createElement('canvas');
document.body.append(canvas);
const renderer = makeRenderer(canvas);

/** Draws the named set and returns the picture as a data URL, with what it is written at its edge. */
window.draw = async (name, options) => {
  await Promise.all(['400 20px "Noto Sans"', '700 20px "Noto Sans"', '400 20px "Noto Sans Mono"'].map((font) => document.fonts.load(font)));
  expose(renderer, sets[name](renderer), options);
  const print = Object.assign(document.createElement('canvas'), { width: options.width, height: options.height });
  const context = print.getContext('2d');
  context.drawImage(canvas, 0, 0);
  const size = Math.round(options.height / 62);
  Object.assign(context, { font: `400 ${size}px "Noto Sans"`, textAlign: 'right', textBaseline: 'bottom', shadowColor: 'rgba(0,0,0,.8)', shadowBlur: 4, fillStyle: 'rgba(255,255,255,.82)' });
  context.fillText('rendered illustration', options.width - size * 0.8, options.height - size * 0.5);
  return print.toDataURL('image/png');
};
window.names = Object.keys(sets);
