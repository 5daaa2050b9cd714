import { sheet } from '../sheet.js';
import { metricStressArea, unifiedStressArea } from './stress-area.js';
import { threadLimits } from './thread-limits.js';

const choices = Object.fromEntries(
  [...threadLimits.keys()].map((t) => [t, t.startsWith('M') ? `${t}, 6g in 6H` : `${t}, class 2A in 2B`]),
);
const shearArea = (minor: string, reach: string) =>
  `\\frac{\\pi}{@pitch} \\cdot @equal \\cdot ${minor} \\cdot \\left(\\frac{@pitch}{2} + 0.57735 \\cdot ${reach}\\right)`;

/** Length of thread at which the bolt breaks before either thread strips. */
export const threadEngagement = sheet({
  id: 'thread-engagement',
  subject: 'fasteners',
  title: 'Thread engagement for the full strength of the bolt',
  purpose:
    'Length of full thread at which the bolt breaks before a thread strips, also in a tapped material that is weaker than the bolt.',
  inputs: {
    thread: { symbol: 'd \\times P', says: 'thread', choices },
    boltStrength: { symbol: '\\sigma_e', unit: 'MPa', says: 'tensile strength of the bolt or stud' },
    tappedStrength: { symbol: '\\sigma_i', unit: 'MPa', says: 'tensile strength of the nut or tapped material' },
  },
  results: {
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter', step: true },
    pitch: { symbol: 'P', unit: 'mm', says: 'pitch', step: true },
    area: { symbol: 'A_s', unit: 'mm²', says: 'stress area', step: true },
    nutMinor: { symbol: 'K_n', unit: 'mm', says: 'largest minor diameter of the tapped thread', step: true },
    boltPitch: { symbol: 'E_s', unit: 'mm', says: 'smallest pitch diameter of the bolt thread', step: true },
    boltMajor: { symbol: 'D_s', unit: 'mm', says: 'smallest major diameter of the bolt thread', step: true },
    nutPitch: { symbol: 'E_n', unit: 'mm', says: 'largest pitch diameter of the tapped thread', step: true },
    equal: {
      symbol: 'L_e',
      unit: 'mm',
      says: 'length at which the bolt thread holds as much as the bolt',
      tex: '\\frac{2 \\cdot @area}{\\pi \\cdot @nutMinor \\cdot \\left(\\frac{1}{2} + 0.57735 \\cdot \\frac{@boltPitch - @nutMinor}{@pitch}\\right)}',
      step: true,
    },
    boltShear: {
      symbol: 'A_{ss}',
      unit: 'mm²',
      says: 'shear area of the bolt thread over that length',
      tex: shearArea('@nutMinor', '(@boltPitch - @nutMinor)'),
      step: true,
    },
    nutShear: {
      symbol: 'A_{sn}',
      unit: 'mm²',
      says: 'shear area of the tapped thread over that length',
      tex: shearArea('@boltMajor', '(@boltMajor - @nutPitch)'),
      step: true,
    },
    strengthRatio: {
      symbol: 'J',
      unit: '1',
      says: 'strength of the bolt thread over that of the tapped thread',
      tex: '\\frac{@boltShear \\cdot @boltStrength}{@nutShear \\cdot @tappedStrength}',
    },
    required: {
      symbol: 'L_r',
      unit: 'mm',
      says: 'length of full thread needed',
      tex: '\\max(1, @strengthRatio) \\cdot @equal',
    },
    diameters: {
      symbol: 'L_r / d',
      unit: '1',
      says: 'the same in nominal diameters',
      tex: '\\frac{@required}{@diameter}',
    },
  },
  method:
    'Limits of size from ISO 965-1 (6g, 6H) or ASME B1.1 (2A, 2B), at the ends of their range where the threads overlap least.',
  assumptions: [
    'Full thread form over the whole length: leave out the chamfer, the run-out and the first damaged turn.',
    'The shear strength of either thread is half its tensile strength.',
    'Static load; no thread inserts, no plating that eats into the thread.',
  ],
  sources: [
    { document: 'FED-STD-H28/2B', clause: 'length of engagement', basis: 'quoted' },
    { document: 'ISO 965-1', clause: 'tolerances 6g and 6H', basis: 'memory' },
    { document: 'ASME B1.1', clause: 'tolerances of classes 2A and 2B', basis: 'memory' },
  ],
  validity: [
    { says: 'name a thread whose limits are known', holds: (x) => threadLimits.has(x.thread) },
    {
      says: 'both tensile strengths must be greater than zero',
      holds: (x) => x.boltStrength > 0 && x.tappedStrength > 0,
    },
  ],
  calculate: ({ thread, boltStrength, tappedStrength }) => {
    const { d, P, boltMajorMin, boltPitchMin, nutMinorMax, nutPitchMax } = threadLimits.get(thread)!;
    const area = thread.startsWith('M') ? metricStressArea(d, P) : unifiedStressArea(d, 1 / P);
    const equal = (2 * area) / (Math.PI * nutMinorMax * (1 / 2 + (0.57735 * (boltPitchMin - nutMinorMax)) / P));
    const shear = (diameter: number, reach: number) => (Math.PI / P) * equal * diameter * (P / 2 + 0.57735 * reach);
    const boltShear = shear(nutMinorMax, boltPitchMin - nutMinorMax);
    const nutShear = shear(boltMajorMin, boltMajorMin - nutPitchMax);
    const strengthRatio = (boltShear * boltStrength) / (nutShear * tappedStrength);
    const required = Math.max(1, strengthRatio) * equal;
    return {
      diameter: d,
      pitch: P,
      area,
      nutMinor: nutMinorMax,
      boltPitch: boltPitchMin,
      boltMajor: boltMajorMin,
      nutPitch: nutPitchMax,
      equal,
      boltShear,
      nutShear,
      strengthRatio,
      required,
      diameters: required / d,
    };
  },
  remark:
    'One diameter in steel, one and a half in cast iron and two in aluminium are common workshop rules, no source: fair as a warning, no proof of strength.',
  examples: [
    {
      given: { thread: '1/2-13 UNC', boltStrength: '120 ksi', tappedStrength: '120 ksi' },
      gives: { nutMinor: '0.434 in', boltPitch: '0.4435 in', boltMajor: '0.4876 in', nutPitch: '0.4565 in' },
      source: { document: 'ASME B1.1, limits of 1/2-13 UNC, classes 2A and 2B', basis: 'memory' },
    },
    {
      given: { thread: '1/2-13 UNC', boltStrength: '120 ksi', tappedStrength: '120 ksi' },
      gives: { equal: '0.364 in', boltShear: '0.284 in²', nutShear: '0.409 in²' },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
    {
      given: { thread: 'M10x1.5', boltStrength: '800 MPa', tappedStrength: '200 MPa' },
      gives: { nutMinor: '8.676 mm', boltPitch: '8.862 mm', equal: '7.45 mm' },
      source: {
        document: 'ISO 965-2, limits of M10; lengths worked from the formulas, regression only',
        basis: 'derived',
      },
    },
  ],
});
