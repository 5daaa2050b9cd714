import { near } from '../platform/near.js';
import { type Sheet, type Subject, subjects } from './sheet.js';

/** All sheets, without loading one: the ids of each subject, in the order in which they are listed. */
export const sheetIds: Readonly<Record<Subject, readonly string[]>> = {
  sections: [
    'section-flat',
    'section-round-bar',
    'section-rhs',
    'section-chs',
    'section-angle',
    'section-channel',
    'section-top-hat',
    'section-top-hat-closed',
    'section-u',
    'section-lipped-u',
    'section-box',
    'section-built-up',
    'equivalent-stiffness',
    'equivalent-strength',
    'thickness-ratio',
    'utilisation',
  ],
  welds: [
    'fillet-weld-as4100',
    'fillet-leg-as4100',
    'fillet-edge-leg-as4100',
    'butt-weld-as4100',
    'fillet-weld-en1993',
    'fillet-weld-en1993-directional',
    'butt-weld-en1993',
    'weld-group',
  ],
  fasteners: [
    'stress-area-metric',
    'stress-area-inch',
    'bolt-loads-coarse',
    'bolt-loads-fine',
    'bolt-loads-inch',
    'tightening-torque',
    'tightening-torque-friction',
    'joint-stiffness',
    'bolted-joint',
    'bolt-as4100',
    'bolt-bearing-as4100',
    'bolt-en1993',
    'bolt-bearing-en1993',
    'thread-engagement',
    'pipe-thread-npt',
  ],
  links: [
    'rod-tension',
    'tube-tension',
    'rod-end-rating',
    'rod-buckling',
    'tube-buckling',
    'cranked-link',
    'link-bolt-double',
    'link-bolt-single',
    'bung-weld',
    'adjuster-turn',
    'adjuster-range',
    'adjuster-setting',
    'joint-misalignment',
  ],
  axle: ['axle-side-view', 'axle-travel', 'link-length-change', 'axle-shaft-travel'],
  driveline: [
    'highest-shaft-speed',
    'driveline-single-joint',
    'driveline-two-joints',
    'driveline-three-joints',
    'joints-in-series',
    'joint-angle-limit',
    'second-joint-angle',
    'tube-critical-speed',
    'shaft-torque',
    'tube-torsion',
    'slip-engagement',
  ],
  suspension: ['coil-rate', 'coil-travel', 'toe-change', 'axle-toe'],
  gearing: [
    'tyre-dimensions',
    'tyre-rating',
    'road-speed',
    'speedometer-error',
    'speedometer-change',
    'ride-height',
    'track-change',
    'rim-edges',
  ],
  engine: [
    'engine-capacity',
    'capacity-factor',
    'compression-ratio',
    'mount-reaction',
    'bearing-clearance',
    'ring-gap',
    'top-dead-centre',
    'damper-scale',
    'unbalance',
    'permissible-unbalance',
  ],
  brakes: [
    'brake-chain-tandem',
    'brake-chain-dual',
    'brake-displacement',
    'brake-distribution',
    'brake-valve-crossing',
    'adhesion-utilisation',
    'brake-circuit-failure',
    'brake-fade',
    'brake-mean-deceleration',
    'stopping-distance',
    'stopping-distance-allowed',
  ],
  mass: [
    'axle-masses',
    'corner-masses',
    'centre-of-mass-height',
    'axle-loads',
    'mass-added',
    'axle-load-change',
    'unladen-mass',
    'laden-mass',
  ],
  beams: [
    'beam-centre-load',
    'beam-load-anywhere',
    'beam-cantilever',
    'bending-as4100',
    'bending-en1993',
    'closed-tube-torsion',
    'twist-test',
    'beaming-test',
  ],
  noise: ['energy-mean', 'level-sum', 'background-correction', 'stationary-test-speed'],
  uncertainty: [
    'type-a-uncertainty',
    'combined-uncertainty',
    'coverage-factor',
    'conformity-probability',
    'guard-band',
    'length-difference',
  ],
};

/** Loads the sheets of one subject only, so that a check pays for no more than it uses. */
const load: Readonly<Record<Subject, () => Promise<{ sheets: readonly Sheet[] }>>> = {
  sections: () => import('./sections/index.js'),
  welds: () => import('./welds/index.js'),
  fasteners: () => import('./fasteners/index.js'),
  links: () => import('./links/index.js'),
  axle: () => import('./axle/index.js'),
  driveline: () => import('./driveline/index.js'),
  suspension: () => import('./suspension/index.js'),
  gearing: () => import('./gearing/index.js'),
  engine: () => import('./engine/index.js'),
  brakes: () => import('./brakes/index.js'),
  mass: () => import('./mass/index.js'),
  beams: () => import('./beams/index.js'),
  noise: () => import('./noise/index.js'),
  uncertainty: () => import('./uncertainty/index.js'),
};

const subjectIds = Object.keys(subjects) as Subject[];

export function subjectOf(id: string): Subject | undefined {
  return subjectIds.find((subject) => sheetIds[subject].includes(id));
}

export async function sheetsOf(subject: Subject): Promise<readonly Sheet[]> {
  return (await load[subject]()).sheets;
}

export async function findSheet(id: string): Promise<Sheet | undefined> {
  const subject = subjectOf(id);
  return subject && (await sheetsOf(subject)).find((sheet) => sheet.id === id);
}

/** Every sheet of every subject. */
export async function allSheets(): Promise<readonly Sheet[]> {
  return (await Promise.all(subjectIds.map(sheetsOf))).flat();
}

/** Ids like a mistyped one, best first: by spelling, then those that share a word with it. */
export function nearestSheets(id: string): string[] {
  const all = subjectIds.flatMap((subject) => sheetIds[subject]);
  const words = id
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((w) => w.length > 2);
  return [...new Set([...near(id, all, 3), ...all.filter((known) => words.some((w) => known.includes(w)))])].slice(
    0,
    5,
  );
}
