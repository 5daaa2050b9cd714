import { OutOfRange, sheet } from '../sheet.js';
import { unifiedStressArea } from './stress-area.js';
import { unifiedThreads } from './unified-threads.js';

const inch = 0.0254;
const ksi = 6894757.293168361;

/** By grade: diameters up to, in, then proof and minimum tensile strength, ksi. */
const grades = {
  'SAE 2': [
    [0.75, 55, 74],
    [1, 33, 60],
  ],
  'SAE 5': [[1, 85, 120]],
  'SAE 8': [[1, 120, 150]],
} as const;
type Grade = keyof typeof grades;

export const boltLoadsInch = sheet({
  id: 'bolt-loads-inch',
  subject: 'fasteners',
  title: 'Loads of an inch bolt (SAE J429)',
  purpose: 'Proof load and minimum ultimate tensile load of an inch bolt, screw or stud of 1/4 to 1 in.',
  inputs: {
    thread: {
      symbol: 'D - n',
      says: 'thread',
      choices: Object.fromEntries(unifiedThreads.map((t) => [t.thread, t.thread])),
    },
    grade: {
      symbol: 'g',
      says: 'grade, from the marks on the head',
      choices: {
        'SAE 2': 'grade 2: no mark',
        'SAE 5': 'grade 5: three radial lines',
        'SAE 8': 'grade 8: six radial lines',
      } satisfies Record<Grade, string>,
    },
  },
  results: {
    diameter: { symbol: 'D', unit: 'in', says: 'nominal diameter', step: true },
    threads: { symbol: 'n', unit: '1/in', says: 'threads for each inch', step: true },
    area: {
      symbol: 'A_t',
      unit: 'in²',
      says: 'tensile stress area',
      tex: '\\frac{\\pi}{4} \\cdot \\left(@diameter - \\frac{0.9743}{@threads}\\right)^2',
      step: true,
    },
    proofStress: { symbol: 'S_p', unit: 'ksi', says: 'proof strength of the grade at this diameter', step: true },
    tensileStress: {
      symbol: 'S_u',
      unit: 'ksi',
      says: 'minimum tensile strength of the grade at this diameter',
      step: true,
    },
    proof: { symbol: 'F_p', unit: 'lbf', says: 'proof load', tex: '@proofStress \\cdot @area' },
    ultimate: { symbol: 'F_u', unit: 'lbf', says: 'minimum ultimate tensile load', tex: '@tensileStress \\cdot @area' },
  },
  method: 'The standard prints these loads rounded; the last digit can differ.',
  assumptions: [
    'The nut or the tapped hole is as strong as the bolt; the length of engagement has a sheet of its own.',
  ],
  sources: [
    {
      document: 'SAE J429',
      clause: 'mechanical requirements, as quoted in Shigley and Mischke, Mechanical Engineering Design, 5th ed.',
      basis: 'quoted',
    },
    { document: 'ASME B1.1', clause: 'Appendix B (stress area)', basis: 'memory' },
  ],
  validity: [
    {
      says: 'name a thread of 1/4 to 1 in, UNC or UNF',
      holds: (x) => unifiedThreads.some((t) => t.thread === x.thread),
    },
  ],
  calculate: (x) => {
    const { D, n } = unifiedThreads.find((t) => t.thread === x.thread)!;
    const row = grades[x.grade].find(([upTo]) => D <= upTo);
    if (!row) throw new OutOfRange(`the standard lists no ${x.grade} at ${D} in`);
    const area = unifiedStressArea(D * inch, n / inch);
    const [proofStress, tensileStress] = [row[1] * ksi, row[2] * ksi];
    return {
      diameter: D * inch,
      threads: n / inch,
      area,
      proofStress,
      tensileStress,
      proof: proofStress * area,
      ultimate: tensileStress * area,
    };
  },
  examples: [
    {
      given: { thread: '3/4-16 UNF', grade: 'SAE 5' },
      gives: { area: '0.373 in²', proof: '31.7 kip', ultimate: '44.8 kip' },
      source: { document: 'SAE J429, table of proof and tensile loads', basis: 'memory' },
    },
  ],
});
