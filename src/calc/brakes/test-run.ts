import { type Source, sheet } from '../sheet.js';

const draft: Source = {
  document: 'Draft amendment to UN Regulation 13, working party on brakes, document GRRF-56-3',
  edition: 'September 2004',
  clause: 'Annex 4, 1.1.2: mean fully developed deceleration',
  basis: 'quoted',
};

export const meanDeceleration = sheet({
  id: 'brake-mean-deceleration',
  subject: 'brakes',
  title: 'Mean fully developed deceleration of a test stop',
  purpose: 'Deceleration averaged over distance between 80 % and 10 % of the speed at which the pedal was pressed.',
  inputs: {
    speed: { symbol: 'v_0', unit: 'km/h', says: 'speed at which the pedal was pressed' },
    toHigh: { symbol: 's_b', unit: 'm', says: 'distance from there to 80 % of that speed' },
    toLow: { symbol: 's_e', unit: 'm', says: 'distance from there to 10 % of that speed' },
  },
  results: {
    high: {
      symbol: 'v_b',
      unit: 'km/h',
      says: 'speed at the start of the interval',
      tex: '0.8 \\cdot @speed',
      step: true,
    },
    low: { symbol: 'v_e', unit: 'km/h', says: 'speed at its end', tex: '0.1 \\cdot @speed', step: true },
    deceleration: {
      symbol: 'd_m',
      unit: 'm/s²',
      says: 'mean fully developed deceleration',
      tex: '\\frac{@high^2 - @low^2}{2 \\left(@toLow - @toHigh\\right)}',
    },
  },
  assumptions: ['The published form divides by 25.92 = 2 · 3.6² for speeds in km/h.'],
  sources: [draft],
  validity: [
    { says: 'the speed must be greater than zero', holds: (x) => x.speed > 0 },
    {
      says: 'the distance to 10 % of the speed must be longer than that to 80 %',
      holds: (x) => x.toHigh >= 0 && x.toLow > x.toHigh,
    },
  ],
  calculate: ({ speed, toHigh, toLow }) => {
    const [high, low] = [0.8 * speed, 0.1 * speed];
    return { high, low, deceleration: (high ** 2 - low ** 2) / (2 * (toLow - toHigh)) };
  },
  examples: [
    {
      given: { speed: '100 km/h', toHigh: '20 m', toLow: '60 m' },
      gives: { high: '80 km/h', low: '10 km/h', deceleration: '6.0764 m/s²' },
      source: { document: 'Published formula worked by hand, regression only', basis: 'derived' },
    },
  ],
});

export const stoppingDistance = sheet({
  id: 'stopping-distance',
  subject: 'brakes',
  title: 'Stopping distance from a deceleration',
  purpose:
    'Distance from pressing the pedal to standstill for a mean fully developed deceleration and a build-up time.',
  inputs: {
    speed: { symbol: 'v_0', unit: 'km/h', says: 'speed at which the pedal is pressed' },
    deceleration: { symbol: 'd_m', unit: 'm/s²', says: 'mean fully developed deceleration' },
    buildUp: {
      symbol: 't_a',
      unit: 's',
      says: 'build-up time; the regulations’ 0.1 v (km/h, m) is 0.36 s',
      usual: '0.36 s',
    },
  },
  results: {
    distance: {
      symbol: 's',
      unit: 'm',
      says: 'stopping distance',
      tex: '@speed \\cdot @buildUp + \\frac{@speed^2}{2 \\cdot @deceleration}',
    },
  },
  sources: [draft, { document: 'Motion at constant deceleration', basis: 'derived' }],
  validity: [
    { says: 'speed and deceleration must be greater than zero', holds: (x) => x.speed > 0 && x.deceleration > 0 },
    { says: 'the build-up time must not be negative', holds: (x) => x.buildUp >= 0 },
  ],
  calculate: ({ speed, deceleration, buildUp }) => ({ distance: speed * buildUp + speed ** 2 / (2 * deceleration) }),
  examples: [
    {
      given: { speed: '100 km/h', deceleration: '6.43 m/s²' },
      gives: { distance: '70.0 m' },
      source: {
        document:
          'UN Regulation 13-H, Annex 3, type-0 test: 0.1 v + 0.0060 v² at 100 km/h agrees with its deceleration of 6.43 m/s²',
        basis: 'memory',
      },
    },
  ],
});

/** Coefficient c of s = 0.1 v + c v² with v in km/h and s in m. */
const coefficients = {
  'r13h-engine-disconnected': 0.006,
  'r13h-engine-connected': 0.0067,
  'r13h-secondary': 0.0158,
  'r13-m1-secondary': 2 / 150,
} as const;

export const stoppingDistanceAllowed = sheet({
  id: 'stopping-distance-allowed',
  subject: 'brakes',
  title: 'Stopping distance that a test allows',
  purpose: 'The longest stopping distance and the smallest mean deceleration of a regulation’s test at a test speed.',
  inputs: {
    test: {
      symbol: '\\text{test}',
      says: 'test whose formula is used',
      choices: {
        'r13h-engine-disconnected': 'UN R13-H type-0, engine disconnected (recalled, not confirmed)',
        'r13h-engine-connected': 'UN R13-H type-0, engine connected (recalled, not confirmed)',
        'r13h-secondary': 'UN R13-H secondary braking (recalled, not confirmed)',
        'r13-m1-secondary': 'UN R13, older text for cars, secondary braking (read in a published clause)',
      },
    },
    speed: { symbol: 'v', unit: 'km/h', says: 'test speed' },
  },
  results: {
    coefficient: {
      symbol: 'c',
      unit: '1',
      says: 'coefficient of the test in 0.1 v + c v², v in km/h and s in m',
      step: true,
    },
    deceleration: {
      symbol: 'd_{m,min}',
      unit: 'm/s²',
      says: 'mean deceleration that this formula contains',
      tex: '\\frac{1}{25.92 \\cdot @coefficient}',
    },
    distance: {
      symbol: 's_{max}',
      unit: 'm',
      says: 'longest stopping distance',
      tex: '@speed \\cdot 0.36 + \\frac{@speed^2}{2 \\cdot @deceleration}',
    },
  },
  assumptions: [
    'The regulation’s formula counts v in km/h and s in m; 0.1 v is then a build-up time of 0.36 s, and 25.92 = 2 · 3.6². The printed least deceleration of the test is rounded and governs.',
  ],
  sources: [
    { document: 'UN Regulation 13-H', clause: 'Annex 3', basis: 'memory' },
    {
      document: 'UN Regulation 13, older text',
      clause: 'Annex 4, secondary braking of category M1: 0.1 v + 2 v²/150',
      basis: 'quoted',
    },
  ],
  validity: [{ says: 'the test speed must be greater than zero', holds: (x) => x.speed > 0 }],
  calculate: ({ test, speed }) => {
    const coefficient = coefficients[test];
    const deceleration = 1 / (25.92 * coefficient);
    return { coefficient, deceleration, distance: 0.36 * speed + speed ** 2 / (2 * deceleration) };
  },
  remark:
    'A comparison with a formula that is recalled, not confirmed, shows no more than the order of size. Read the regulation that applies and type its figures in.',
  examples: [
    {
      given: { test: 'r13h-engine-disconnected', speed: '100 km/h' },
      gives: { distance: '70.0 m', deceleration: '6.43 m/s²' },
      source: { document: 'UN Regulation 13-H', clause: 'Annex 3, type-0', basis: 'memory' },
    },
    {
      given: { test: 'r13-m1-secondary', speed: '80 km/h' },
      gives: { deceleration: '2.9 m/s²' },
      source: {
        document: 'UN Regulation 13, older text',
        clause: 'Annex 4, secondary braking of category M1: 2.9 m/s²',
        basis: 'quoted',
      },
    },
  ],
});
