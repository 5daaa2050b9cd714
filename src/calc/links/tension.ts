import { sheet } from '../sheet.js';
import { round, solidArea, solidInputs, solidValidity, tubeArea, tubeInputs, tubeValidity } from './round.js';

/** Reduction k in A_s = π/4 (d − kP)², as each thread standard gives it. */
const threadForms = { metric: 0.938194, unified: 0.9743 } as const;

const threadInputs = {
  thread: {
    symbol: '\\text{thread form}',
    says: 'thread of the end',
    choices: { metric: 'ISO metric (M)', unified: 'unified inch (UNC, UNF)' },
  },
  threadDiameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter of the thread' },
  pitch: { symbol: 'P', unit: 'mm', says: 'pitch of the thread' },
  bodyYield: { symbol: 'S_y', unit: 'MPa', says: 'yield strength of the body, from its certificate' },
  threadProof: {
    symbol: 'S_p',
    unit: 'MPa',
    says: 'proof strength of the threaded end, from its property class or certificate',
  },
} as const;

const steps = {
  reduction: {
    symbol: 'k_s',
    unit: '1',
    says: 'share of the pitch that the thread takes from the diameter (0.938194 metric, 0.9743 unified)',
    step: true,
  },
  threadArea: {
    symbol: 'A_s',
    unit: 'mm2',
    says: 'stress area of the thread',
    tex: '\\frac{\\pi}{4} \\left(@threadDiameter - @reduction \\cdot @pitch\\right)^2',
    step: true,
  },
  body: { symbol: 'F_b', unit: 'kN', says: 'tension at which the body yields', tex: '@area \\cdot @bodyYield' },
  root: { symbol: 'F_s', unit: 'kN', says: 'proof load of the thread', tex: '@threadArea \\cdot @threadProof' },
  capacity: {
    symbol: 'F_t',
    unit: 'kN',
    says: 'tension capacity, the smaller of the two',
    tex: '\\min\\left(@body,\\ @root\\right)',
  },
} as const;

const about = {
  assumptions: [
    'The thread is engaged far enough that it does not strip; that is a sheet of its own.',
    'Cut and rolled threads are taken alike. Fatigue is not covered. No factor of safety is contained; the load case states it.',
  ],
  sources: [
    { document: 'ISO 898-1', edition: '2013', clause: '9.1.6, nominal stress area', basis: 'memory' },
    { document: 'ASME B1.1', clause: 'appendix B, tensile stress area', basis: 'memory' },
    { document: 'Force over area', basis: 'derived' },
  ],
} as const;

interface Threaded {
  threadDiameter: number;
  pitch: number;
  bodyYield: number;
  threadProof: number;
}
const validity = [
  {
    says: 'the pitch must be greater than zero and less than a third of the thread diameter',
    holds: (x: Threaded) => x.pitch > 0 && x.pitch < x.threadDiameter / 3,
  },
  {
    says: 'yield and proof strength must be greater than zero',
    holds: (x: Threaded) => x.bodyYield > 0 && x.threadProof > 0,
  },
] as const;

function tension(area: number, x: Threaded & { thread: keyof typeof threadForms }) {
  const reduction = threadForms[x.thread];
  const threadArea = (Math.PI / 4) * (x.threadDiameter - reduction * x.pitch) ** 2;
  const body = area * x.bodyYield;
  const root = threadArea * x.threadProof;
  return { reduction, threadArea, body, root, capacity: Math.min(body, root) };
}

export const rodTension = sheet({
  id: 'rod-tension',
  subject: 'links',
  title: 'Tension in a solid rod with threaded ends',
  purpose: 'The pull at which the body of a round bar yields or the thread of its end reaches its proof load.',
  inputs: { ...solidInputs, ...threadInputs },
  results: { ...solidArea, ...steps },
  ...about,
  validity: [solidValidity, ...validity],
  calculate: (x) => {
    const { area } = round(x.diameter);
    return { area, ...tension(area, x) };
  },
  examples: [
    {
      given: {
        diameter: '20 mm',
        thread: 'metric',
        threadDiameter: '16 mm',
        pitch: '2 mm',
        bodyYield: '355 MPa',
        threadProof: '580 MPa',
      },
      gives: { threadArea: '157 mm2', root: '91 kN' },
      source: {
        document: 'EN ISO 898-1, stress areas and proof loads of metric coarse threads (M16, class 8.8: 91.0 kN)',
        basis: 'quoted',
      },
    },
    {
      given: {
        diameter: '7/8 in',
        thread: 'unified',
        threadDiameter: '3/4 in',
        pitch: '1/16 in',
        bodyYield: '52 ksi',
        threadProof: '85 ksi',
      },
      gives: { threadArea: '0.373 in2', body: '139 kN' },
      source: { document: 'ASME B1.1, stress area of 3/4-16 UNF; body worked by hand', basis: 'memory' },
    },
  ],
});

export const tubeTension = sheet({
  id: 'tube-tension',
  subject: 'links',
  title: 'Tension in a tube with threaded ends',
  purpose: 'The pull at which the body of a tube yields or the thread of its end reaches its proof load.',
  inputs: { ...tubeInputs, ...threadInputs },
  results: { ...tubeArea, ...steps },
  ...about,
  validity: [tubeValidity, ...validity],
  calculate: (x) => {
    const { bore, area } = round(x.diameter, x.wall);
    return { bore, area, ...tension(area, x) };
  },
  remark: 'Where the thread is tapped in a bung welded into the tube, the weld is a sheet of its own.',
  examples: [
    {
      given: {
        diameter: '33.7 mm',
        wall: '3.2 mm',
        thread: 'metric',
        threadDiameter: '20 mm',
        pitch: '2.5 mm',
        bodyYield: '235 MPa',
        threadProof: '600 MPa',
      },
      gives: { area: '307 mm2', threadArea: '245 mm2', root: '147 kN' },
      source: { document: 'EN 10219-2, tube 33.7×3.2; EN ISO 898-1, M20 class 8.8 (147 kN)', basis: 'memory' },
    },
  ],
});

export const rodEndRating = sheet({
  id: 'rod-end-rating',
  subject: 'links',
  title: 'Allowable load of a rod end',
  purpose: 'What the maker’s static radial rating leaves after the factor of the load case.',
  inputs: {
    rating: {
      symbol: 'C_0',
      unit: 'kN',
      says: 'static radial rating in the maker’s data sheet, for the head or the bearing, whichever is smaller',
    },
    factor: { symbol: 'n', unit: '1', says: 'factor on the rating, agreed with the certifier' },
  },
  results: {
    allowable: { symbol: 'F_a', unit: 'kN', says: 'allowable load along the shank', tex: '\\frac{@rating}{@factor}' },
  },
  assumptions: ['The load lies along the shank. A side load bends the shank and needs the maker’s word.'],
  sources: [{ document: 'Data sheet of the maker of the rod end, kept as a paper of the note', basis: 'practice' }],
  validity: [
    { says: 'the rating must be greater than zero', holds: (x) => x.rating > 0 },
    { says: 'the factor must be at least 1', holds: (x) => x.factor >= 1 },
  ],
  calculate: ({ rating, factor }) => ({ allowable: rating / factor }),
  examples: [
    {
      given: { rating: '60 kN', factor: '3' },
      gives: { allowable: '20 kN' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
