import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const drop = (force: string) => ({
  more: `load-cases: [{ id: drop, says: shock, force: ${force}, factor: 1, agreed-with: R. Ansell, agreed-on: 2026-02-10 }]`,
});
const usual = {
  leg: '4.0 mm',
  length: '100.0 mm',
  thickness: '3.0 mm',
  other: '5.0 mm',
  joint: 'tee',
  steel: 'S235',
  category: 'SP',
  metal: '490 MPa',
};
const piece = (weld: Record<string, string>, more = '') =>
  `pieces: [{ id: foot, role: bracket, now: { section: FL 60x3.0, steel: S235, wall: 3.0 mm }, ${more}welds: [{ id: toe, type: fillet, load-case: drop, ${Object.entries(
    weld,
  )
    .map(([key, value]) => `${key}: ${value}`)
    .join(', ')} }] }]`;
const found = async (weld: Record<string, string>, force = '20 kN', more = '') =>
  (await examineNote('body-structure', piece(weld, more), drop(force))).one('body.load', 'foot-toe');
const without = (name: keyof typeof usual) =>
  Object.fromEntries(Object.entries(usual).filter(([key]) => key !== name)) as Record<string, string>;

describe('fillet weld of a piece', () => {
  // AS 4100, 5.11.4 [memory]: 0.9 · 0.6 · 235 MPa · 3 mm · 100 mm = 38.07 kN of the plate, under 66.5 kN of the weld.
  it.each([
    ['36 kN', 'within'],
    ['38 kN', 'inconclusive'],
    ['41 kN', 'beyond'],
  ])('is bound by the plate beside it: %s is %s', async (force, outcome) => {
    expect((await found(usual, force)).outcome).toBe(outcome);
  });

  it('is larger along an edge only up to the edge', async () => {
    const strong = { ...usual, steel: '4130 (435/670 MPa)', leg: '6.0 mm' };
    // 0.8 · 0.6 · 490 · 3/√2 = 498.9 N/mm of a lap with its edge of 3 mm; 704.7 N/mm of plate at a tee.
    expect((await found({ ...strong, joint: 'lap' }, '60 kN')).outcome).toBe('beyond');
    expect((await found({ ...strong, joint: 'tee' }, '60 kN')).outcome).toBe('within');
  });

  it('has no capacity by a structural standard in sheet, whatever it is called', async () => {
    const thin = /not calculable by AS 4100.*sectioned coupon/;
    for (const weld of [
      { ...usual, thickness: '1.2 mm' },
      { ...usual, thickness: '1.2 mm', part: 'as-nzs-1163' },
      { ...usual, thickness: '2.9 mm' },
      { ...usual, other: '1.2 mm' },
    ])
      expect(await found(weld, '0.1 kN')).toMatchObject({
        outcome: 'inconclusive',
        says: expect.stringMatching(thin) as string,
      });
    expect(await found(without('other'), '0.1 kN', 'joined-to: 1.2 mm, ')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringMatching(thin) as string,
    });
  });

  it.each(['other', 'joint', 'steel'] as const)('asks for its %s', async (name) => {
    expect(await found(without(name))).toMatchObject({
      outcome: 'not-checked',
      todo: expect.stringContaining(`welds.toe.${name}`) as string,
    });
  });

  it('has no capacity beside a steel that nobody knows', async () => {
    expect(await found({ ...usual, steel: 'unknown' })).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining('not known') as string,
    });
  });

  it('refuses another unit than a length', () => {
    expect(problemsOf('body-structure', piece({ ...usual, other: '5 kg' }))).toMatchObject([{ code: 'quantity' }]);
  });
});
