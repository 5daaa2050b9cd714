import { OutOfRange, sheet } from '../sheet.js';
import { coverage, PLENTY } from './coverage.js';

/** Combines standard uncertainties and finds the coverage factor. */
export const combinedUncertainty = sheet({
  id: 'combined-uncertainty',
  subject: 'uncertainty',
  title: 'Combined and expanded uncertainty',
  purpose:
    'Combined standard uncertainty of independent contributions, its effective degrees of freedom and the expanded uncertainty.',
  inputs: {
    contributions: {
      symbol: 'contributions',
      says: 'one row a source of uncertainty',
      columns: {
        u: { symbol: 'u_i', unit: '1', says: 'standard uncertainty it brings to the result, all in one unit' },
        freedom: {
          symbol: '\\nu_i',
          unit: '1',
          says: 'degrees of freedom; 0 where they are unlimited (an instrument’s certificate, half the last digit)',
        },
      },
    },
    confidence: { symbol: 'p', unit: '%', says: 'coverage probability', usual: '95.45 %' },
  },
  results: {
    combined: { symbol: 'u_c', unit: '1', says: 'combined standard uncertainty', tex: '\\sqrt{\\sum u_i^2}' },
    freedom: {
      symbol: '\\nu_{eff}',
      unit: '1',
      says: 'effective degrees of freedom; 10000 stands for that many or more',
      tex: '\\frac{@combined^4}{\\sum u_i^4/\\nu_i}',
      step: true,
    },
    factor: { symbol: 'k', unit: '1', says: 'coverage factor', tex: 't_{p}(@freedom)', step: true },
    expanded: { symbol: 'U', unit: '1', says: 'expanded uncertainty', tex: '@factor \\cdot @combined' },
  },
  method:
    'Contributions add as the root of the sum of their squares; the effective degrees of freedom follow Welch and Satterthwaite, cut off to a whole number for k.',
  assumptions: ['The contributions are independent.'],
  sources: [
    {
      document: 'JCGM 100 Guide to the expression of uncertainty in measurement',
      edition: '2008',
      clause: '5.1, 6.2, G.4',
      basis: 'memory',
    },
  ],
  validity: [
    { says: 'at least one contribution must be given', holds: (x) => x.contributions.length > 0 },
    {
      says: 'contributions and degrees of freedom must not be negative',
      holds: (x) => x.contributions.every((c) => c.u >= 0 && c.freedom >= 0),
    },
    {
      says: 'the coverage probability must be from 50 % to 99.99 %',
      holds: (x) => x.confidence >= 0.5 && x.confidence <= 0.9999,
    },
  ],
  calculate: ({ contributions, confidence }) => {
    const combined = Math.hypot(...contributions.map((c) => c.u));
    if (combined === 0) throw new OutOfRange('no contribution is greater than zero');
    const weight = contributions.reduce((sum, c) => sum + (c.freedom > 0 ? (c.u / combined) ** 4 / c.freedom : 0), 0);
    const freedom = Math.min(1 / weight, PLENTY);
    const factor = coverage(freedom, confidence);
    return { combined, freedom, factor, expanded: factor * combined };
  },
  examples: [
    {
      given: {
        contributions: [
          { u: '25', freedom: '18' },
          { u: '9.7', freedom: '25.6' },
          { u: '2.9', freedom: '50' },
          { u: '16.6', freedom: '2' },
        ],
        confidence: '99 %',
      },
      gives: { combined: '32', factor: '2.92' },
      source: { document: 'JCGM 100:2008, H.1 (end-gauge calibration, in nanometres)', basis: 'quoted' },
    },
  ],
});

/** Type A evaluation of repeated readings. */
export const typeAUncertainty = sheet({
  id: 'type-a-uncertainty',
  subject: 'uncertainty',
  title: 'Repeated readings',
  purpose: 'Mean of repeated readings and the uncertainty that their scatter gives it.',
  inputs: {
    readings: {
      symbol: 'readings',
      says: 'one row a reading, all in one unit',
      columns: { reading: { symbol: 'x_i', unit: '1', says: 'reading' } },
    },
    confidence: { symbol: 'p', unit: '%', says: 'coverage probability', usual: '95.45 %' },
  },
  results: {
    count: { symbol: 'n', unit: '1', says: 'number of readings', step: true },
    mean: { symbol: '\\bar{x}', unit: '1', says: 'mean', tex: '\\frac{1}{@count} \\sum x_i' },
    scatter: {
      symbol: 's',
      unit: '1',
      says: 'standard deviation of one reading',
      tex: '\\sqrt{\\frac{\\sum (x_i - \\bar{x})^2}{@count - 1}}',
      step: true,
    },
    standard: {
      symbol: 'u',
      unit: '1',
      says: 'standard uncertainty of the mean',
      tex: '\\frac{@scatter}{\\sqrt{@count}}',
    },
    factor: {
      symbol: 'k',
      unit: '1',
      says: 'coverage factor for n − 1 degrees of freedom',
      tex: 't_{p}(@count - 1)',
      step: true,
    },
    expanded: { symbol: 'U', unit: '1', says: 'expanded uncertainty of the mean', tex: '@factor \\cdot @standard' },
  },
  method: 'Student’s t is that of n − 1 degrees of freedom.',
  assumptions: ['The readings are independent: the instrument was taken off and set again each time.'],
  sources: [
    {
      document: 'JCGM 100 Guide to the expression of uncertainty in measurement',
      edition: '2008',
      clause: '4.2, G.3',
      basis: 'memory',
    },
  ],
  validity: [
    { says: 'at least two readings must be given', holds: (x) => x.readings.length >= 2 },
    {
      says: 'the coverage probability must be from 50 % to 99.99 %',
      holds: (x) => x.confidence >= 0.5 && x.confidence <= 0.9999,
    },
  ],
  calculate: ({ readings, confidence }) => {
    const n = readings.length;
    const mean = readings.reduce((sum, r) => sum + r.reading, 0) / n;
    const scatter = Math.sqrt(readings.reduce((sum, r) => sum + (r.reading - mean) ** 2, 0) / (n - 1));
    const standard = scatter / Math.sqrt(n);
    const factor = coverage(n - 1, confidence);
    return { count: n, mean, scatter, standard, factor, expanded: factor * standard };
  },
  remark: 'Scatter says nothing of an error that all readings share. Add the instrument’s own uncertainty.',
  examples: [
    {
      given: { readings: [{ reading: '2.48' }, { reading: '2.51' }, { reading: '2.50' }], confidence: '95.45 %' },
      gives: { mean: '2.497', scatter: '0.0153', standard: '0.0088', factor: '4.53', expanded: '0.040' },
      source: {
        document: 'JCGM 100:2008, 4.2, worked by hand; factor of NIST Technical Note 1297, Table B.1',
        basis: 'derived',
      },
    },
  ],
});
