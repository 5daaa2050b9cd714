import { sheet } from '../sheet.js';

/** Preload and torque by the torque coefficient. */
export const tighteningTorque = sheet({
  id: 'tightening-torque',
  subject: 'fasteners',
  title: 'Preload and tightening torque (torque coefficient)',
  purpose: 'Preload as a share of the proof load, and the torque that gives it with an assumed torque coefficient.',
  inputs: {
    proof: { symbol: 'F_p', unit: 'kN', says: 'proof load of the bolt' },
    share: {
      symbol: 's',
      unit: '1',
      says: 'share of the proof load: 0.75 where it is undone again, 0.90 where it is not',
      usual: '0.75',
    },
    coefficient: { symbol: 'K', unit: '1', says: 'torque coefficient: 0.20 plain and dry', usual: '0.20' },
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter' },
  },
  results: {
    preload: { symbol: 'F_i', unit: 'kN', says: 'preload', tex: '@share \\cdot @proof' },
    torque: {
      symbol: 'T',
      unit: 'N·m',
      says: 'tightening torque',
      tex: '@coefficient \\cdot @preload \\cdot @diameter',
    },
  },
  assumptions: [
    'The torque coefficient stands for all friction; with the same torque the preload scatters by a quarter and more.',
  ],
  sources: [
    {
      document: 'Shigley’s Mechanical Engineering Design',
      clause: 'ch. 8: torque coefficient and preload',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'proof load, coefficient and diameter must be greater than zero',
      holds: (x) => Math.min(x.proof, x.coefficient, x.diameter) > 0,
    },
    {
      says: 'the share must be above 0 and at most 1: beyond the proof load the bolt yields',
      holds: (x) => x.share > 0 && x.share <= 1,
    },
  ],
  calculate: ({ proof, share, coefficient, diameter }) => {
    const preload = share * proof;
    return { preload, torque: coefficient * preload * diameter };
  },
  remark:
    'Where the maker of the vehicle or of the part gives a torque, that torque holds. Oil or plating lowers the coefficient: a torque for dry threads then overloads the bolt.',
  examples: [
    {
      given: { proof: '25 kip', share: '1', coefficient: '0.20', diameter: '3/4 in' },
      gives: { preload: '25.0 kip', torque: '312.5 ft·lbf' },
      source: {
        document:
          'Shigley’s Mechanical Engineering Design, ch. 8, bolted joint of 3/4-16 UNF with 25 kip preload: 3750 lbf·in',
        basis: 'memory',
      },
    },
  ],
});

const secant = 1 / Math.cos(Math.PI / 6);

/** Torque by the friction of thread and head. */
export const tighteningTorqueFriction = sheet({
  id: 'tightening-torque-friction',
  subject: 'fasteners',
  title: 'Tightening torque from friction',
  purpose:
    'Torque for a preload from the friction in the thread and under the head, and the torque coefficient to which that comes.',
  inputs: {
    preload: { symbol: 'F_i', unit: 'kN', says: 'preload' },
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter' },
    pitch: { symbol: 'P', unit: 'mm', says: 'pitch' },
    threadFriction: { symbol: 'f', unit: '1', says: 'friction coefficient of the thread', usual: '0.15' },
    headFriction: { symbol: 'f_c', unit: '1', says: 'friction coefficient under the head or nut', usual: '0.15' },
    headDiameter: {
      symbol: 'd_h',
      unit: 'mm',
      says: 'mean diameter of the bearing face; 1.25 d where left out',
      optional: true,
    },
  },
  results: {
    mean: {
      symbol: 'd_m',
      unit: 'mm',
      says: 'mean diameter of the thread',
      tex: '@diameter - 0.649519 \\cdot @pitch',
      step: true,
    },
    lead: {
      symbol: '\\tan\\lambda',
      unit: '1',
      says: 'slope of the thread',
      tex: '\\frac{@pitch}{\\pi \\cdot @mean}',
      step: true,
    },
    bearing: { symbol: 'd_c', unit: 'mm', says: 'mean diameter of the bearing face', step: true },
    threadTorque: {
      symbol: 'T_t',
      unit: 'N·m',
      says: 'torque in the thread (flank angle 30°)',
      tex: '\\frac{@preload \\cdot @mean}{2} \\cdot \\frac{@lead + \\frac{@threadFriction}{\\cos(\\frac{\\pi}{6})}}{1 - \\frac{@threadFriction \\cdot @lead}{\\cos(\\frac{\\pi}{6})}}',
      step: true,
    },
    headTorque: {
      symbol: 'T_c',
      unit: 'N·m',
      says: 'torque under the head',
      tex: '\\frac{@preload \\cdot @headFriction \\cdot @bearing}{2}',
      step: true,
    },
    torque: { symbol: 'T', unit: 'N·m', says: 'tightening torque', tex: '@threadTorque + @headTorque' },
    coefficient: {
      symbol: 'K',
      unit: '1',
      says: 'torque coefficient to which it comes',
      tex: '\\frac{@torque}{@preload \\cdot @diameter}',
    },
  },
  assumptions: ['Single-start thread with flanks at 30° (metric, Unified).'],
  sources: [
    {
      document: 'Shigley’s Mechanical Engineering Design',
      clause: 'ch. 8: bolt torque from friction',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'preload, diameter, pitch and the diameter of the bearing face must be greater than zero',
      holds: (x) => Math.min(x.preload, x.diameter, x.pitch, x.headDiameter ?? 1) > 0,
    },
    {
      says: 'friction coefficients must be zero or more and below 1',
      holds: (x) => Math.min(x.threadFriction, x.headFriction) >= 0 && Math.max(x.threadFriction, x.headFriction) < 1,
    },
    {
      says: 'the pitch is too coarse for this diameter: look at the designation again',
      holds: (x) => x.pitch <= x.diameter / 3,
    },
  ],
  calculate: (x) => {
    const mean = x.diameter - 0.649519 * x.pitch;
    const lead = x.pitch / (Math.PI * mean);
    const bearing = x.headDiameter ?? 1.25 * x.diameter;
    const threadTorque =
      ((x.preload * mean) / 2) * ((lead + x.threadFriction * secant) / (1 - x.threadFriction * lead * secant));
    const headTorque = (x.preload * x.headFriction * bearing) / 2;
    const torque = threadTorque + headTorque;
    return { mean, lead, bearing, threadTorque, headTorque, torque, coefficient: torque / (x.preload * x.diameter) };
  },
  examples: [
    {
      given: { preload: '25 kip', diameter: '3/4 in', pitch: '1/16 in', threadFriction: '0.15', headFriction: '0.15' },
      gives: { torque: '295.9 ft·lbf' },
      source: {
        document:
          'Shigley’s Mechanical Engineering Design, ch. 8, bolted joint of 3/4-16 UNF with 25 kip preload: 3551 lbf·in',
        basis: 'memory',
      },
    },
  ],
});
