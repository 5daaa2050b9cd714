import { sheet } from '../sheet.js';
import { normalBelow } from './normal.js';

/** Probability that the true value lies inside its limits. */
export const conformityProbability = sheet({
  id: 'conformity-probability',
  subject: 'uncertainty',
  title: 'Probability of conformity',
  purpose: 'Probability that the true value lies inside its limits, from the measured value and its uncertainty.',
  inputs: {
    value: { symbol: 'y', unit: '1', says: 'measured value; all values in one unit' },
    standard: { symbol: 'u', unit: '1', says: 'standard uncertainty (half of an expanded uncertainty with k = 2)' },
    lower: { symbol: 'T_L', unit: '1', says: 'lower limit', optional: true },
    upper: { symbol: 'T_U', unit: '1', says: 'upper limit', optional: true },
  },
  results: {
    below: { symbol: 'p_L', unit: '%', says: 'probability of lying below the lower limit' },
    above: { symbol: 'p_U', unit: '%', says: 'probability of lying above the upper limit' },
    probability: {
      symbol: 'p_c',
      unit: '%',
      says: 'probability of conformity',
      tex: '\\Phi\\left(\\frac{T_U - @value}{@standard}\\right) - \\Phi\\left(\\frac{T_L - @value}{@standard}\\right)',
    },
  },
  method: 'Φ is the distribution function of the standard normal distribution. A limit that is not given drops out.',
  assumptions: ['The value is normally distributed about what was measured, and nothing was known about it before.'],
  sources: [
    {
      document: 'JCGM 106 The role of measurement uncertainty in conformity assessment',
      edition: '2012',
      clause: '7',
      basis: 'memory',
    },
  ],
  validity: [
    { says: 'the standard uncertainty must be greater than zero', holds: (x) => x.standard > 0 },
    { says: 'a lower or an upper limit must be given', holds: (x) => x.lower !== undefined || x.upper !== undefined },
    {
      says: 'the lower limit must lie below the upper',
      holds: (x) => x.lower === undefined || x.upper === undefined || x.lower < x.upper,
    },
  ],
  calculate: ({ value, standard, lower, upper }) => {
    const below = lower === undefined ? 0 : normalBelow((lower - value) / standard);
    const above = upper === undefined ? 0 : normalBelow((value - upper) / standard);
    return { below, above, probability: 1 - below - above };
  },
  examples: [
    {
      given: { value: '-5.47', standard: '0.05', upper: '-5.40' },
      gives: { probability: '91.9 %' },
      source: { document: 'JCGM 106:2012, 7.4 (breakdown voltage, in volts)', basis: 'memory' },
    },
    {
      given: { value: '509.7', standard: '8.6', lower: '490' },
      gives: { probability: '98.9 %' },
      source: { document: 'JCGM 106:2012, 7.4 (burst strength, in kilopascals)', basis: 'memory' },
    },
  ],
});

/** Acceptance limit inside a tolerance limit. */
export const guardBand = sheet({
  id: 'guard-band',
  subject: 'uncertainty',
  title: 'Guard band and acceptance limit',
  purpose:
    'Acceptance limit that a guard band leaves inside a limit, and the greatest risk that a value accepted there is not inside the limit.',
  inputs: {
    limit: { symbol: 'T', unit: '1', says: 'limit; all values in one unit' },
    side: {
      symbol: 'side',
      says: 'side on which values are accepted',
      choices: { below: 'upper limit: values below it', above: 'lower limit: values above it' },
    },
    expanded: { symbol: 'U', unit: '1', says: 'expanded uncertainty (k = 2)' },
    multiple: {
      symbol: 'r',
      unit: '1',
      says: 'guard band over expanded uncertainty; 1 is the rule of this document, 0 is simple acceptance',
      usual: '1',
    },
  },
  results: {
    band: { symbol: 'w', unit: '1', says: 'guard band', tex: '@multiple \\cdot @expanded' },
    acceptance: { symbol: 'A', unit: '1', says: 'acceptance limit' },
    risk: { symbol: 'p_{fa}', unit: '%', says: 'greatest risk of a false acceptance', tex: '1 - \\Phi(2 @multiple)' },
  },
  method: 'The acceptance limit lies inside the limit by the guard band.',
  sources: [
    {
      document: 'ILAC-G8 Guidelines on decision rules and statements of conformity',
      edition: '09/2019',
      clause: 'guard bands',
      basis: 'quoted',
    },
    {
      document: 'JCGM 106 The role of measurement uncertainty in conformity assessment',
      edition: '2012',
      clause: '8',
      basis: 'memory',
    },
  ],
  validity: [
    { says: 'the expanded uncertainty must be greater than zero', holds: (x) => x.expanded > 0 },
    { says: 'the multiple must be from 0 to 3', holds: (x) => x.multiple >= 0 && x.multiple <= 3 },
  ],
  calculate: ({ limit, side, expanded, multiple }) => {
    const band = multiple * expanded;
    return { band, acceptance: side === 'below' ? limit - band : limit + band, risk: normalBelow(-2 * multiple) };
  },
  examples: [
    {
      given: { limit: '25', side: 'below', expanded: '2', multiple: '1' },
      gives: { band: '2', acceptance: '23', risk: '2.3 %' },
      source: { document: 'ILAC-G8:09/2019 (guard band of U: risk under 2.5 %), worked by hand', basis: 'derived' },
    },
  ],
});
