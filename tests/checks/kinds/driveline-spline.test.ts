import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const copy = (item: string): Around => ({
  limits: `figures:
  - { item: ${item}, min: 45 mm, clause: data sheet, edition: "2024", read-by: JO, on: 2026-01-10 }
`,
});
const maker = (least: string, name = 'maker-engaged') => `\n${name}: { least: ${least}, from: sheet of the yoke }`;
const found = async (item: string, frontmatter: string, around: Around = {}) =>
  (await examineNote('driveline', frontmatter, around)).one(item);

// By mechanics alone: a spline with nothing engaged is apart, a yoke with no travel left has bottomed.
describe.each([
  ['driveline.spline', 'spline-engaged', 'maker-engaged', /comes apart/],
  ['driveline.spline-room', 'spline-left', 'maker-left', /bottoms/],
])('%s', (item, field, window, reason) => {
  it.each([
    ['45.0 ± 1 mm', 'unclear'],
    ['47.0 ± 1 mm', 'met'],
    ['43.0 ± 1 mm', 'against'],
  ])('%s against 45 mm, of the maker or of the builder’s copy, is %s', async (left, result) => {
    expect(await found(item, `${field}: ${left}${maker('45 mm', window)}`)).toMatchObject({ result, basis: 'maker' });
    expect(await found(item, `${field}: ${left}`, copy(item))).toMatchObject({ result, basis: 'own-copy' });
  });

  it.each(['0 ± 1 mm'])('%s left is against it, whatever the figure', async (left) => {
    for (const more of ['', maker('45 mm', window), maker('0 mm', window)])
      expect(await found(item, `${field}: ${left}${more}`)).toMatchObject({
        outcome: 'does-not-conform',
        says: expect.stringMatching(reason) as string,
      });
    expect((await found(item, `${field}: ${left}`, copy(item))).outcome).toBe('does-not-conform');
  });

  it('less than nothing left is no measurement', () => {
    expect(problemsOf('driveline', `${field}: -5 mm`)).toMatchObject([{ found: expect.stringContaining('−5 mm') }]);
    expect(problemsOf('driveline', `${field}: 5 mm${maker('-10 mm', window)}`)).toMatchObject([
      { found: expect.stringContaining('−10 mm') },
    ]);
  });

  it('within the uncertainty of nothing it is inconclusive', async () => {
    expect(await found(item, `${field}: 1 ± 1 mm`)).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringMatching(reason) as string,
    });
  });

  it('conforms with no figure at hand never, however much is left', async () => {
    expect((await found(item, `${field}: 60 ± 1 mm`)).result).toBe('unconfirmed');
    const greatest = `\n${window}: { greatest: 80 mm, from: sheet of the yoke }`;
    expect((await found(item, `${field}: 60 ± 1 mm${greatest}`)).result).toBe('unconfirmed');
  });

  it('is asked for, and refuses another unit than a length', async () => {
    expect(await found(item, '')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining(field) as string,
    });
    expect(problemsOf('driveline', `${field}: 60 kg`)).toMatchObject([{ code: 'quantity' }]);
  });
});
