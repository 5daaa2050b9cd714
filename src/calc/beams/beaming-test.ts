import { sheet } from '../sheet.js';
import { straightLine } from './least-squares.js';

/** Bending stiffness of a body (beaming) from a test with several loads. */
export const beamingTest = sheet({
  id: 'beaming-test',
  subject: 'beams',
  title: 'Bending stiffness of a body (beaming)',
  purpose:
    'Load for each millimetre that the middle of a body sinks between its supports, from several loads up and down again.',
  inputs: {
    loads: {
      symbol: 'j',
      says: 'the loads in the order in which they were put on, unloading included, with the readings, down positive',
      columns: {
        force: { symbol: 'F_j', unit: 'N', says: 'load in the middle of the wheelbase' },
        middle: { symbol: '\\delta_{m,j}', unit: 'mm', says: 'how far the body has sunk under the load' },
        front: { symbol: '\\delta_{f,j}', unit: 'mm', says: 'how far it has sunk at the front supports' },
        rear: { symbol: '\\delta_{r,j}', unit: 'mm', says: 'how far it has sunk at the rear supports' },
      },
    },
  },
  results: {
    load: { symbol: 'F_{max}', unit: 'N', says: 'greatest load of the test', tex: '\\max_j F_j', step: true },
    deflection: {
      symbol: '\\delta_{max}',
      unit: 'mm',
      says: 'greatest deflection, supports taken off',
      tex: '\\max_j \\left|\\delta_{m,j} - \\frac{\\delta_{f,j} + \\delta_{r,j}}{2}\\right|',
      step: true,
    },
    stiffness: {
      symbol: 'K_b',
      unit: 'N/mm',
      says: 'bending stiffness',
      tex: '\\frac{\\sum (F_j - \\bar{F})^2}{\\left|\\sum (F_j - \\bar{F})(\\delta_j - \\bar{\\delta})\\right|}',
    },
    uncertainty: {
      symbol: 'U_K',
      unit: 'N/mm',
      says: 'expanded uncertainty of the stiffness from the scatter of the readings alone (k = 2)',
    },
    scatter: { symbol: 's_\\delta', unit: 'mm', says: 'standard deviation of the deflection about the straight line' },
    greatest: { symbol: 'e_\\delta', unit: 'mm', says: 'greatest distance of a reading from the line' },
    set: {
      symbol: '\\delta_0',
      unit: 'mm',
      says: 'deflection that remains: last reading less first, at the load of the first',
    },
  },
  method:
    'The deflection at each load is that of the middle less the mean of the supports, the load being half-way between them. A straight line of deflection against load is laid through all readings by least squares (JCGM 100:2008, H.3); the stiffness is the reciprocal of its slope.',
  assumptions: [
    'Supports at the axles or suspension mounts, alike left and right; load half-way between them; readings are means of left and right.',
  ],
  sources: [
    { document: 'Equilibrium and superposition on a body resting on two supports', basis: 'derived' },
    { document: 'JCGM 100:2008', clause: 'H.3: straight line by least squares', basis: 'memory' },
  ],
  validity: [
    {
      says: 'at least three loads are needed, two of them different',
      holds: (x) => x.loads.length >= 3 && new Set(x.loads.map((l) => l.force)).size > 1,
    },
  ],
  calculate: ({ loads }) => {
    const points = loads.map((l) => [l.force, l.middle - (l.front + l.rear) / 2] as const);
    const line = straightLine(points);
    const stiffness = 1 / Math.abs(line.slope);
    const [first, last] = [points[0]!, points.at(-1)!];
    return {
      load: Math.max(...points.map(([f]) => f)),
      deflection: Math.max(...points.map(([, d]) => Math.abs(d))),
      stiffness,
      uncertainty: 2 * line.slopeError * stiffness ** 2,
      scatter: line.scatter,
      greatest: line.greatest,
      set: Math.abs(last[1] - first[1] - line.slope * (last[0] - first[0])),
    };
  },
  examples: [
    {
      given: {
        loads: [
          { force: '0 N', middle: '0 mm', front: '0 mm', rear: '0 mm' },
          { force: '1000 N', middle: '0.36 mm', front: '0.06 mm', rear: '0.04 mm' },
          { force: '2000 N', middle: '0.70 mm', front: '0.12 mm', rear: '0.08 mm' },
        ],
      },
      gives: {
        load: '2000 N',
        deflection: '0.600 mm',
        stiffness: '3333.3 N/mm',
        uncertainty: '128.3 N/mm',
        scatter: '0.00816 mm',
        greatest: '0.00667 mm',
        set: '0.000 mm',
      },
      source: { document: 'Worked by hand; regression only', basis: 'derived' },
    },
  ],
});
