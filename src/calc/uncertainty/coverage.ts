import { studentT } from '../../units/student.js';
import { OutOfRange, sheet } from '../sheet.js';

/** Degrees of freedom are cut off to the next lower whole number (JCGM 100:2008, G.6.4); beyond this t is that of the normal distribution to within 0.02 %. */
export const PLENTY = 10_000;

/** Student's t for any number of degrees of freedom from 1 on. @throws OutOfRange where there is none */
export function coverage(freedom: number, confidence: number): number {
  if (!(freedom >= 1)) throw new OutOfRange('there is less than one degree of freedom: take more readings');
  if (!(confidence > 0 && confidence < 1)) throw new OutOfRange('a coverage probability lies between 0 % and 100 %');
  return studentT(Math.min(Math.floor(freedom), PLENTY), confidence);
}

/** Coverage factor of Student's distribution. */
export const coverageFactor = sheet({
  id: 'coverage-factor',
  subject: 'uncertainty',
  title: 'Coverage factor',
  purpose:
    'Factor by which a standard uncertainty is multiplied so that the interval covers a wanted share of what may reasonably be measured.',
  inputs: {
    freedom: {
      symbol: '\\nu',
      unit: '1',
      says: 'degrees of freedom: readings less one, or effective degrees of freedom',
    },
    confidence: { symbol: 'p', unit: '%', says: 'coverage probability', usual: '95.45 %' },
  },
  results: { factor: { symbol: 'k', unit: '1', says: 'coverage factor', tex: 't_{p}(@freedom)' } },
  method: 'Student’s t for the next lower whole number of degrees of freedom.',
  sources: [{ document: 'NIST Technical Note 1297', edition: '1994', clause: 'Table B.1', basis: 'published' }],
  validity: [
    { says: 'degrees of freedom must be at least 1', holds: (x) => x.freedom >= 1 },
    {
      says: 'the coverage probability must be from 50 % to 99.99 %',
      holds: (x) => x.confidence >= 0.5 && x.confidence <= 0.9999,
    },
  ],
  calculate: ({ freedom, confidence }) => ({ factor: coverage(freedom, confidence) }),
  examples: [
    {
      given: { freedom: '16', confidence: '99 %' },
      gives: { factor: '2.92' },
      source: { document: 'NIST Technical Note 1297', clause: 'Table B.1', basis: 'published' },
    },
    {
      given: { freedom: '4', confidence: '95.45 %' },
      gives: { factor: '2.87' },
      source: { document: 'NIST Technical Note 1297', clause: 'Table B.1', basis: 'published' },
    },
  ],
});
