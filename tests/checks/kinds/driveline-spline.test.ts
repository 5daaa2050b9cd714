import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const figure: Around = {
  limits: `figures:
  - { item: driveline.spline, min: 45 mm, clause: data sheet, edition: "2024", read-by: JO, on: 2026-01-10 }
`,
};
const spline = (engaged: string, left: string) => `spline-engaged: ${engaged} ± 1 mm\nspline-left: ${left} ± 1 mm`;
const found = async (engaged: string, left: string, around: Around = figure) =>
  (await examineNote('driveline', spline(engaged, left), around)).one('driveline.spline');

// Common practice, no source: the spline must stay together and must not bottom, whatever figure the maker gives.
describe('slip spline', () => {
  it.each([
    ['46 mm', '22 mm', 'conforms'],
    ['47 mm', '22 mm', 'conforms'],
    ['43 mm', '22 mm', 'does-not-conform'],
  ])('%s left engaged and %s of travel against the builder’s figure: %s', async (engaged, left, outcome) => {
    expect((await found(engaged, left)).outcome).toBe(outcome);
  });

  it.each([
    ['0 mm', '22 mm', /comes apart/],
    ['-5 mm', '22 mm', /comes apart/],
    ['1 mm', '22 mm', /comes apart/],
    ['60 mm', '0 mm', /bottoms/],
    ['60 mm', '-5 mm', /bottoms/],
    ['60 mm', '1 mm', /bottoms/],
  ])('%s left engaged and %s of travel is open, with the reason', async (engaged, left, reason) => {
    for (const around of [figure, {}])
      expect(await found(engaged, left, around)).toMatchObject({
        outcome: 'inconclusive',
        says: expect.stringMatching(reason) as string,
      });
  });

  it('asks for both ends of the travel', async () => {
    const { one } = await examineNote('driveline', 'spline-engaged: 60 mm', figure);
    expect(one('driveline.spline')).toMatchObject({
      outcome: 'not-measured',
      todo: expect.stringContaining('spline-left') as string,
    });
  });

  it('refuses another unit than a length', () => {
    expect(problemsOf('driveline', 'spline-engaged: 60 kg')).toMatchObject([{ code: 'quantity' }]);
  });
});
