import { type Source, sheet } from '../sheet.js';
import { listedThreads, threadAreas, threadChoices } from './iso898.js';

const as4100Bolts = (clause: string): Source => ({
  document: 'AS 4100 Steel structures',
  edition: '2020',
  clause,
  basis: 'memory',
});

/** Planes through the thread and through the shank. */
const shearPlanes = {
  'single-thread': [1, 0],
  'single-shank': [0, 1],
  'double-thread': [2, 0],
  'double-mixed': [1, 1],
  'double-shank': [0, 2],
} as const;

/** One bolt in tension and shear by AS 4100. */
export const boltAs4100 = sheet({
  id: 'bolt-as4100',
  subject: 'fasteners',
  title: 'Capacity of a bolt in tension and shear (AS 4100)',
  purpose: 'Design capacities of one metric bolt in tension and in shear through thread or shank.',
  inputs: {
    thread: { symbol: 'd \\times P', says: 'thread', choices: threadChoices },
    strength: {
      symbol: 'f_{uf}',
      unit: 'MPa',
      says: 'minimum tensile strength of the bolt: 400 for class 4.6, 830 for class 8.8',
    },
    planes: {
      symbol: 'n',
      says: 'where the joint shears the bolt',
      choices: {
        'single-thread': 'one plane, through the thread',
        'single-shank': 'one plane, through the plain shank',
        'double-thread': 'two planes, both through the thread',
        'double-mixed': 'two planes, one through the thread and one through the shank',
        'double-shank': 'two planes, both through the plain shank',
      },
      usual: 'single-thread',
    },
  },
  results: {
    stressArea: { symbol: 'A_s', unit: 'mm²', says: 'tensile stress area, as listed', step: true },
    coreArea: { symbol: 'A_c', unit: 'mm²', says: 'area at the root of the thread, to three digits', step: true },
    shankArea: { symbol: 'A_o', unit: 'mm²', says: 'area of the plain shank, to three digits', step: true },
    threadPlanes: { symbol: 'n_n', unit: '1', says: 'shear planes through the thread', step: true },
    shankPlanes: { symbol: 'n_x', unit: '1', says: 'shear planes through the shank', step: true },
    tension: {
      symbol: '\\phi N_{tf}',
      unit: 'kN',
      says: 'design capacity in tension',
      tex: '0.8 \\cdot @stressArea \\cdot @strength',
    },
    shear: {
      symbol: '\\phi V_f',
      unit: 'kN',
      says: 'design capacity in shear',
      tex: '0.8 \\cdot 0.62 \\cdot @strength \\cdot (@threadPlanes \\cdot @coreArea + @shankPlanes \\cdot @shankArea)',
    },
  },
  assumptions: [
    'Bolt in bearing, not relying on friction; joint no longer than 300 mm (k_r = 1).',
    'Tension and shear together: (V*/φV_f)² + (N*/φN_tf)² ≤ 1.',
  ],
  sources: [
    as4100Bolts('9.2.2 (9.3.2 in the 1998 edition): strength of bolts'),
    as4100Bolts('Table 3.4: capacity factor 0.8'),
    { document: 'ISO 898-1 and AS 1275', clause: 'areas of threads', basis: 'memory' },
  ],
  validity: [
    { says: 'name a thread of the table', holds: (x) => listedThreads.has(x.thread) },
    { says: 'the tensile strength must be greater than zero', holds: (x) => x.strength > 0 },
  ],
  calculate: ({ thread, strength, planes }) => {
    const [threadPlanes, shankPlanes] = shearPlanes[planes];
    const { stress: stressArea, root: coreArea, shank: shankArea } = threadAreas(listedThreads.get(thread)!);
    return {
      stressArea,
      coreArea,
      shankArea,
      threadPlanes,
      shankPlanes,
      tension: 0.8 * stressArea * strength,
      shear: 0.8 * 0.62 * strength * (threadPlanes * coreArea + shankPlanes * shankArea),
    };
  },
  examples: [
    {
      given: { thread: 'M20x2.5', strength: '830 MPa' },
      gives: { stressArea: '245 mm²', coreArea: '225 mm²', shankArea: '314 mm²', tension: '163 kN', shear: '92.6 kN' },
      source: { document: 'Design capacity tables for structural steel (AS 4100), M20 8.8/S', basis: 'memory' },
    },
  ],
});

/** The hole and the edge beside it by AS 4100. */
export const bearingAs4100 = sheet({
  id: 'bolt-bearing-as4100',
  subject: 'fasteners',
  title: 'Bearing and tear-out at a bolt hole (AS 4100)',
  purpose:
    'Design capacity of a ply against crushing at the bolt and against tearing out to the edge, and the least distances to edge and to the next bolt.',
  inputs: {
    diameter: { symbol: 'd_f', unit: 'mm', says: 'nominal diameter of the bolt' },
    thickness: { symbol: 't_p', unit: 'mm', says: 'thickness of the ply' },
    strength: { symbol: 'f_{up}', unit: 'MPa', says: 'tensile strength of the ply' },
    edgeDistance: {
      symbol: 'a_e',
      unit: 'mm',
      says: 'distance from the edge of the hole to the edge of the ply along the force, plus half the bolt diameter',
    },
    edge: {
      symbol: 'e',
      says: 'how the edge was made',
      choices: {
        sheared: 'sheared or hand flame cut',
        machined: 'rolled plate, machine flame cut, sawn or planed',
        rolled: 'rolled edge of a section',
      },
    },
  },
  results: {
    bearing: {
      symbol: '\\phi V_{b1}',
      unit: 'kN',
      says: 'design capacity against crushing',
      tex: '0.9 \\cdot 3.2 \\cdot @diameter \\cdot @thickness \\cdot @strength',
    },
    tearOut: {
      symbol: '\\phi V_{b2}',
      unit: 'kN',
      says: 'design capacity against tearing out',
      tex: '0.9 \\cdot @edgeDistance \\cdot @thickness \\cdot @strength',
    },
    capacity: { symbol: '\\phi V_b', unit: 'kN', says: 'design capacity of the ply', tex: '\\min(@bearing, @tearOut)' },
    factor: {
      symbol: 'k_e',
      unit: '1',
      says: 'least edge distance over diameter: 1.75, 1.50 or 1.25 by the edge',
      step: true,
    },
    leastEdge: {
      symbol: 'e_{min}',
      unit: 'mm',
      says: 'least distance from the centre of the hole to the edge',
      tex: '@factor \\cdot @diameter',
    },
    leastPitch: {
      symbol: 'p_{min}',
      unit: 'mm',
      says: 'least distance between centres of bolts',
      tex: '2.5 \\cdot @diameter',
    },
  },
  assumptions: ['Standard round hole; the force acts in the plane of the ply.'],
  sources: [
    as4100Bolts('9.2.2.4 (9.3.2.4 in the 1998 edition): ply in bearing'),
    as4100Bolts('9.5.1 and 9.5.2 (9.6 in the 1998 edition): pitch and edge distance'),
    as4100Bolts('1.1: thickness of steel covered'),
  ],
  validity: [
    {
      says: 'diameter, thickness, strength and edge distance must be greater than zero',
      holds: (x) => Math.min(x.diameter, x.thickness, x.strength, x.edgeDistance) > 0,
    },
    {
      says: 'AS 4100 is for steel of 3 mm and more: for a thinner ply load a test piece of the same joint',
      holds: (x) => x.thickness >= 0.003,
    },
  ],
  calculate: (x) => {
    const bearing = 0.9 * 3.2 * x.diameter * x.thickness * x.strength;
    const tearOut = 0.9 * x.edgeDistance * x.thickness * x.strength;
    const factor = { sheared: 1.75, machined: 1.5, rolled: 1.25 }[x.edge];
    return {
      bearing,
      tearOut,
      capacity: Math.min(bearing, tearOut),
      factor,
      leastEdge: factor * x.diameter,
      leastPitch: 2.5 * x.diameter,
    };
  },
  examples: [
    {
      given: { diameter: '12 mm', thickness: '5 mm', strength: '440 MPa', edgeDistance: '20 mm', edge: 'sheared' },
      gives: {
        bearing: '76.03 kN',
        tearOut: '39.60 kN',
        capacity: '39.60 kN',
        leastEdge: '21.0 mm',
        leastPitch: '30.0 mm',
      },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});
