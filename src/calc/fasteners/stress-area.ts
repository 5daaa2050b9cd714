import { sheet } from '../sheet.js';

/** Nominal stress area of an ISO metric thread, m², from its diameter and pitch in m (ISO 898-1). */
export function metricStressArea(d: number, P: number): number {
  const d2 = d - 0.649519 * P;
  const d3 = d - 1.226869 * P;
  return (Math.PI / 4) * ((d2 + d3) / 2) ** 2;
}

/** Stress area of a Unified thread, m², from its diameter in m and its threads for each m (ASME B1.1). */
export function unifiedStressArea(D: number, n: number): number {
  return (Math.PI / 4) * (D - 0.9743 / n) ** 2;
}

export const metricStressAreaSheet = sheet({
  id: 'stress-area-metric',
  subject: 'fasteners',
  title: 'Stress area of a metric thread',
  purpose: 'Diameters of the basic profile and the nominal stress area on which tensile loads are reckoned.',
  inputs: {
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter' },
    pitch: { symbol: 'P', unit: 'mm', says: 'pitch' },
  },
  results: {
    pitchDiameter: {
      symbol: 'd_2',
      unit: 'mm',
      says: 'basic pitch diameter',
      tex: '@diameter - 0.649519 \\cdot @pitch',
    },
    minorDiameter: {
      symbol: 'd_1',
      unit: 'mm',
      says: 'basic minor diameter',
      tex: '@diameter - 1.082532 \\cdot @pitch',
    },
    rootDiameter: {
      symbol: 'd_3',
      unit: 'mm',
      says: 'minor diameter of the external thread at its rounded root',
      tex: '@diameter - 1.226869 \\cdot @pitch',
    },
    area: {
      symbol: 'A_s',
      unit: 'mm²',
      says: 'nominal stress area',
      tex: '\\frac{\\pi}{4} \\cdot \\left(\\frac{@pitchDiameter + @rootDiameter}{2}\\right)^2',
    },
  },
  sources: [
    { document: 'ISO 898-1', edition: '2013', clause: '9.1.6', basis: 'memory' },
    { document: 'ISO 68-1 and ISO 724', clause: 'basic profile and basic dimensions', basis: 'memory' },
  ],
  validity: [
    { says: 'diameter and pitch must be greater than zero', holds: (x) => x.diameter > 0 && x.pitch > 0 },
    {
      says: 'the pitch is too coarse for this diameter: look at the designation again',
      holds: (x) => x.pitch <= x.diameter / 3,
    },
  ],
  calculate: ({ diameter: d, pitch: P }) => ({
    pitchDiameter: d - 0.649519 * P,
    minorDiameter: d - 1.082532 * P,
    rootDiameter: d - 1.226869 * P,
    area: metricStressArea(d, P),
  }),
  examples: [
    {
      given: { diameter: '12 mm', pitch: '1.75 mm' },
      gives: { area: '84.3 mm²' },
      source: {
        document: 'ISO metric thread proof loads (EN ISO 898-1), table of a fastener supplier',
        basis: 'quoted',
      },
    },
    {
      given: { diameter: '12 mm', pitch: '1.75 mm' },
      gives: { pitchDiameter: '10.863 mm', minorDiameter: '10.106 mm', rootDiameter: '9.853 mm' },
      source: { document: 'ISO 724, M12', basis: 'memory' },
    },
  ],
});

export const unifiedStressAreaSheet = sheet({
  id: 'stress-area-inch',
  subject: 'fasteners',
  title: 'Stress area of an inch (Unified) thread',
  purpose: 'The tensile stress area of a Unified thread, on which tensile loads are reckoned.',
  inputs: {
    diameter: { symbol: 'D', unit: 'in', says: 'nominal diameter' },
    threads: { symbol: 'n', unit: '1/in', says: 'threads for each inch' },
  },
  results: {
    area: {
      symbol: 'A_t',
      unit: 'in²',
      says: 'tensile stress area',
      tex: '\\frac{\\pi}{4} \\cdot \\left(@diameter - \\frac{0.9743}{@threads}\\right)^2',
    },
  },
  sources: [{ document: 'ASME B1.1', clause: 'Appendix B', basis: 'memory' }],
  validity: [
    {
      says: 'diameter and threads for each inch must be greater than zero',
      holds: (x) => x.diameter > 0 && x.threads > 0,
    },
    {
      says: 'the thread is too coarse for this diameter: look at the designation again',
      holds: (x) => 1 / x.threads <= x.diameter / 3,
    },
  ],
  calculate: ({ diameter, threads }) => ({ area: unifiedStressArea(diameter, threads) }),
  examples: [
    {
      given: { diameter: '3/4 in', threads: '16 1/in' },
      gives: { area: '0.373 in²' },
      source: { document: 'ASME B1.1, 3/4-16 UNF', basis: 'memory' },
    },
  ],
});
