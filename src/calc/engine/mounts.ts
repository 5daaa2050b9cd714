import { sheet } from '../sheet.js';

/** What the engine mounts have to hold when first gear turns the engine against its mounts. */
export const mountReaction = sheet({
  id: 'mount-reaction',
  subject: 'engine',
  title: 'Engine mount reaction in first gear',
  purpose:
    'Torque about the engine and gearbox unit, and the pair of forces it puts on the left and right mounts, at the highest engine torque in the lowest gear.',
  inputs: {
    torque: { symbol: 'T_e', unit: 'N·m', says: 'highest engine torque' },
    ratio: { symbol: 'i_1', unit: '1', says: 'ratio of first gear; for a transaxle, first gear times final drive' },
    converter: { symbol: 'i_c', unit: '1', says: 'torque multiplication of a torque converter at stall', usual: '1' },
    spacing: {
      symbol: 'b',
      unit: 'mm',
      says: 'distance between left and right mount, square to the axis of the torque',
    },
    weight: { symbol: 'm_s', unit: 'kg', says: 'mass carried by one side mount at rest', usual: '0 kg' },
    factor: { symbol: 'k', unit: '1', says: 'load factor of the load case, for shock and sudden clutch', usual: '1' },
  },
  results: {
    reaction: {
      symbol: 'T_r',
      unit: 'N·m',
      says: 'torque reacted by the mounts',
      tex: '@torque \\cdot @converter \\cdot @ratio \\cdot @factor',
    },
    rest: {
      symbol: 'F_s',
      unit: 'N',
      says: 'weight on one side mount at rest',
      tex: '@weight \\cdot 9.80665 \\text{ m/s²}',
      step: true,
    },
    pair: {
      symbol: 'F_T',
      unit: 'N',
      says: 'force of the torque on each side mount, up on one side and down on the other',
      tex: '\\frac{@reaction}{@spacing}',
    },
    pressed: { symbol: 'F_d', unit: 'N', says: 'downward load of the mount that is pressed', tex: '@pair + @rest' },
    lifted: {
      symbol: 'F_u',
      unit: 'N',
      says: 'upward pull of the other mount (negative: it still carries)',
      tex: '@pair - @rest',
    },
  },
  method: 'Weight is mass times standard gravity, 9.80665 m/s².',
  assumptions: [
    'Engine and gearbox are one unit; a rear mount near the axis of the torque takes no part in it.',
    'Inertia of the engine’s own rotating parts is left out; the load factor stands for it.',
  ],
  sources: [{ document: 'Equilibrium of moments about the axis of the crankshaft', basis: 'derived' }],
  validity: [
    { says: 'torque must not be negative', holds: (x) => x.torque >= 0 },
    {
      says: 'ratio, torque multiplication and load factor must be greater than zero',
      holds: (x) => x.ratio > 0 && x.converter > 0 && x.factor > 0,
    },
    { says: 'the mounts must be apart', holds: (x) => x.spacing > 0 },
    { says: 'mass must not be negative', holds: (x) => x.weight >= 0 },
  ],
  calculate: ({ torque, ratio, converter, spacing, weight, factor }) => {
    const reaction = torque * converter * ratio * factor;
    const pair = reaction / spacing;
    const rest = weight * 9.80665;
    return { reaction, rest, pair, pressed: pair + rest, lifted: pair - rest };
  },
  remark:
    'Wheel grip bounds the torque that the drivetrain can hold for longer than a shock; where the grip limit is lower, agree with the certifier which of the two is the load case.',
  examples: [
    {
      given: { torque: '400 N·m', ratio: '3.00', converter: '1', spacing: '600 mm', weight: '80 kg', factor: '1' },
      gives: { reaction: '1200 N·m', pair: '2000 N', pressed: '2784.5 N', lifted: '1215.5 N' },
      source: { document: 'Equilibrium of moments, worked by hand', basis: 'derived' },
    },
  ],
});
