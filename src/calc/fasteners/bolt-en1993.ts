import { OutOfRange, type Source, sheet } from '../sheet.js';
import { classes, listedThreads, type PropertyClass, threadAreas, threadChoices } from './iso898.js';

const en1993 = (clause: string): Source => ({ document: 'EN 1993-1-8', edition: '2005', clause, basis: 'memory' });
const partial = { symbol: '\\gamma_{M2}', unit: '1', says: 'partial factor for joints', usual: '1.25' } as const;

/** Classes of EN 1993-1-8, Table 3.1, with the tensile strength it reckons with (MPa) and the shear factor through the thread. */
const listed: Partial<Record<PropertyClass, readonly [strength: number, factor: number]>> = {
  '4.6': [400, 0.6],
  '4.8': [400, 0.5],
  '5.6': [500, 0.6],
  '5.8': [500, 0.5],
  '6.8': [600, 0.5],
  '8.8': [800, 0.6],
  '10.9': [1000, 0.5],
};
const choices = Object.fromEntries(classes.filter((c) => c in listed).map((c) => [c, `property class ${c}`])) as Record<
  string,
  string
>;

/** What binary fractions leave of a hole that is exactly at a bound, m. */
const HAIR = 1e-9;
/** Clearance of a normal round hole: 1 mm to M14, 2 mm to M24, 3 mm beyond. m. */
const normalClearance = (diameter: number) =>
  diameter < 0.016 - HAIR ? 0.001 : diameter < 0.027 - HAIR ? 0.002 : 0.003;
const takesLargeHole = (diameter: number) => [0.012, 0.014].some((d) => Math.abs(diameter - d) < HAIR);
const isLarge = (diameter: number, hole: number) => hole - diameter > normalClearance(diameter) + HAIR;
/** The hole is no larger than these rules cover: normal, or 2 mm clearance at M12 and M14. */
const isCovered = (diameter: number, hole: number) =>
  !isLarge(diameter, hole) || (takesLargeHole(diameter) && hole - diameter <= 0.002 + HAIR);
/** Classes whose shear resistance is taken with 0.85 in a 2 mm clearance hole. */
const lessened: readonly string[] = ['4.8', '5.8', '6.8', '8.8', '10.9'];
const diameterOf = (thread: string) => (listedThreads.get(thread)?.d ?? 0) / 1000;

const holeReason =
  'the rules hold for normal round holes: 1 mm clearance up to M14, 2 mm from M16 to M24 (M12 and M14 also in 2 mm under conditions); a larger hole needs fitted or preloaded bolts, or another hole';
const holeSources: readonly Source[] = [
  {
    document: 'EN 1090-2',
    clause: 'Table 11: clearance of normal round holes; under M12 the same 1 mm is taken',
    basis: 'memory',
  },
];

/** One bolt in tension and shear by EN 1993-1-8. */
export const boltEn1993 = sheet({
  id: 'bolt-en1993',
  subject: 'fasteners',
  title: 'Resistance of a bolt in tension and shear (EN 1993-1-8)',
  purpose: 'Design resistances of one metric bolt in tension and in shear, for each shear plane.',
  inputs: {
    thread: { symbol: 'd \\times P', says: 'thread', choices: threadChoices },
    class: { symbol: 'c', says: 'property class, from the marking on the head', choices },
    hole: { symbol: 'd_0', unit: 'mm', says: 'diameter of the hole, the larger one of the plies' },
    bearing: {
      symbol: 'F_{b,Rd}',
      unit: 'kN',
      says: 'design resistance in bearing for each shear plane, only for M12 and M14 in a hole of more than 1 mm clearance',
      optional: true,
    },
    partial,
  },
  results: {
    strength: { symbol: 'f_{ub}', unit: 'MPa', says: 'tensile strength of the class', step: true },
    factor: {
      symbol: '\\alpha_v',
      unit: '1',
      says: 'shear factor through the thread: 0.6, but 0.5 for classes 4.8, 5.8, 6.8 and 10.9',
      step: true,
    },
    inHole: {
      symbol: '\\kappa',
      unit: '1',
      says: 'factor on shear for the hole: 0.85 for M12 and M14 of classes 4.8, 5.8, 6.8, 8.8 and 10.9 in more than 1 mm clearance, otherwise 1',
      step: true,
    },
    area: { symbol: 'A_s', unit: 'mm²', says: 'tensile stress area, as listed', step: true },
    shank: { symbol: 'A', unit: 'mm²', says: 'area of the plain shank, to three digits', step: true },
    tension: {
      symbol: 'F_{t,Rd}',
      unit: 'kN',
      says: 'design resistance in tension',
      tex: '\\frac{0.9 \\cdot @strength \\cdot @area}{@partial}',
    },
    threadShear: {
      symbol: 'F_{v,Rd}',
      unit: 'kN',
      says: 'design resistance in shear through the thread',
      tex: '@inHole \\cdot \\frac{@factor \\cdot @strength \\cdot @area}{@partial}',
    },
    shankShear: {
      symbol: 'F_{v,Rd}',
      unit: 'kN',
      says: 'design resistance in shear through the plain shank',
      tex: '@inHole \\cdot \\frac{0.6 \\cdot @strength \\cdot @shank}{@partial}',
    },
  },
  assumptions: ['Not countersunk; no packing. Tension and shear together: F_v/F_v,Rd + F_t/(1.4 F_t,Rd) ≤ 1.'],
  sources: [
    en1993('Table 3.4: resistance of bolts'),
    en1993('Table 3.1: classes'),
    en1993('3.6.1(5): M12 and M14 in holes with 2 mm clearance'),
    ...holeSources,
    { document: 'ISO 898-1', edition: '2013', clause: 'nominal stress areas', basis: 'quoted' },
  ],
  validity: [
    { says: 'name a thread of the table', holds: (x) => listedThreads.has(x.thread) },
    { says: 'the partial factor must be greater than zero', holds: (x) => x.partial > 0 },
    { says: 'the hole cannot be smaller than the bolt', holds: (x) => x.hole >= diameterOf(x.thread) - HAIR },
    { says: holeReason, holds: (x) => isCovered(diameterOf(x.thread), x.hole) },
    {
      says: 'for M12 and M14 in a hole of more than 1 mm clearance state the design resistance in bearing too (sheet bolt-bearing-en1993)',
      holds: (x) => !isLarge(diameterOf(x.thread), x.hole) || (x.bearing ?? 0) > 0,
    },
  ],
  calculate: ({ thread, class: c, hole, bearing, partial }) => {
    const [mpa, factor] = listed[c as PropertyClass]!;
    const strength = mpa * 1e6;
    const { stress: area, shank } = threadAreas(listedThreads.get(thread)!);
    const large = isLarge(diameterOf(thread), hole);
    const inHole = large && lessened.includes(c) ? 0.85 : 1;
    const threadShear = (inHole * factor * strength * area) / partial;
    if (large && bearing !== undefined && threadShear < bearing)
      throw new OutOfRange(
        'M12 and M14 may sit in 2 mm clearance only where the resistance in shear is at least that in bearing, so that the holes give before the bolts: take 1 mm clearance',
      );
    return {
      strength,
      factor,
      inHole,
      area,
      shank,
      tension: (0.9 * strength * area) / partial,
      threadShear,
      shankShear: (inHole * 0.6 * strength * shank) / partial,
    };
  },
  remark:
    'The condition on shear and bearing in 2 mm clearance is recalled: read 3.6.1(5) in your own copy before it decides anything.',
  examples: [
    {
      given: { thread: 'M20x2.5', class: '8.8', hole: '22 mm' },
      gives: { tension: '141 kN', threadShear: '94.1 kN' },
      source: { document: 'SCI P363, resistance of non-preloaded M20 bolts of class 8.8', basis: 'memory' },
    },
  ],
});

/** The hole and the edge beside it by EN 1993-1-8. */
export const bearingEn1993 = sheet({
  id: 'bolt-bearing-en1993',
  subject: 'fasteners',
  title: 'Bearing and distances at a bolt hole (EN 1993-1-8)',
  purpose:
    'Design resistance of a ply in bearing, with the distances to edges and next bolts, and the least of those distances.',
  inputs: {
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter of the bolt' },
    hole: { symbol: 'd_0', unit: 'mm', says: 'diameter of the hole' },
    thickness: { symbol: 't', unit: 'mm', says: 'thickness of the ply' },
    strength: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the ply' },
    boltStrength: { symbol: 'f_{ub}', unit: 'MPa', says: 'tensile strength of the bolt' },
    end: { symbol: 'e_1', unit: 'mm', says: 'distance from the centre of the hole to the end, along the force' },
    side: {
      symbol: 'e_2',
      unit: 'mm',
      says: 'distance from the centre of the hole to the side edge, across the force',
    },
    pitch: {
      symbol: 'p_1',
      unit: 'mm',
      says: 'distance to the next bolt along the force; left out where there is none',
      optional: true,
    },
    gauge: {
      symbol: 'p_2',
      unit: 'mm',
      says: 'distance to the next bolt across the force; left out where there is none',
      optional: true,
    },
    partial,
  },
  results: {
    alpha: { symbol: '\\alpha_b', unit: '1', says: 'least of e1/(3 d0), p1/(3 d0) − 1/4, fub/fu and 1', step: true },
    k1: { symbol: 'k_1', unit: '1', says: 'least of 2.8 e2/d0 − 1.7, 1.4 p2/d0 − 1.7 and 2.5', step: true },
    capacity: {
      symbol: 'F_{b,Rd}',
      unit: 'kN',
      says: 'design resistance in bearing',
      tex: '\\frac{@k1 \\cdot @alpha \\cdot @strength \\cdot @diameter \\cdot @thickness}{@partial}',
    },
    leastEdge: { symbol: 'e_{min}', unit: 'mm', says: 'least end and edge distance', tex: '1.2 \\cdot @hole' },
    leastPitch: {
      symbol: 'p_{1,min}',
      unit: 'mm',
      says: 'least distance of bolts along the force',
      tex: '2.2 \\cdot @hole',
    },
    leastGauge: {
      symbol: 'p_{2,min}',
      unit: 'mm',
      says: 'least distance of bolts across the force',
      tex: '2.4 \\cdot @hole',
    },
  },
  assumptions: [
    'Normal round holes; the force acts in the plane of the ply. With several bolts the weakest counts for all, unless each is worked.',
  ],
  sources: [en1993('Table 3.4: bearing'), en1993('Table 3.3: least distances'), ...holeSources],
  validity: [
    {
      says: 'diameter, thickness, strengths and partial factor must be greater than zero',
      holds: (x) => Math.min(x.diameter, x.thickness, x.strength, x.boltStrength, x.partial) > 0,
    },
    { says: 'the hole cannot be smaller than the bolt', holds: (x) => x.hole >= x.diameter },
    { says: holeReason, holds: (x) => isCovered(x.diameter, x.hole) },
    {
      says: 'distances must keep the least of the standard: e1, e2 1.2 d0, p1 2.2 d0, p2 2.4 d0',
      holds: (x) => {
        const least = (given: number | undefined, k: number) => given === undefined || given >= k * x.hole * (1 - 1e-9);
        return least(x.end, 1.2) && least(x.side, 1.2) && least(x.pitch, 2.2) && least(x.gauge, 2.4);
      },
    },
  ],
  calculate: (x) => {
    const alpha = Math.min(
      x.end / (3 * x.hole),
      x.pitch === undefined ? 1 : x.pitch / (3 * x.hole) - 0.25,
      x.boltStrength / x.strength,
      1,
    );
    const k1 = Math.min(
      (2.8 * x.side) / x.hole - 1.7,
      x.gauge === undefined ? 2.5 : (1.4 * x.gauge) / x.hole - 1.7,
      2.5,
    );
    return {
      alpha,
      k1,
      capacity: (k1 * alpha * x.strength * x.diameter * x.thickness) / x.partial,
      leastEdge: 1.2 * x.hole,
      leastPitch: 2.2 * x.hole,
      leastGauge: 2.4 * x.hole,
    };
  },
  examples: [
    {
      given: {
        diameter: '12 mm',
        hole: '13 mm',
        thickness: '5 mm',
        strength: '410 MPa',
        boltStrength: '800 MPa',
        end: '26 mm',
        side: '26 mm',
      },
      gives: {
        alpha: '0.6667',
        k1: '2.50',
        capacity: '32.80 kN',
        leastEdge: '15.6 mm',
        leastPitch: '28.6 mm',
        leastGauge: '31.2 mm',
      },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});
