import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Value } from '../../../src/calc/value.js';
import { exactBound, type Limit } from '../../../src/checks/codes/limit.js';
import type { Finding } from '../../../src/checks/engine/finding.js';
import { groupsBySettler, inconclusiveOf } from '../../../src/checks/engine/inconclusive.js';
import { groupSays } from '../../../src/checks/engine/settler-words.js';
import { settlers } from '../../../src/checks/engine/settling.js';
import { examineNote } from '../kinds/bench.js';

/** What is inconclusive stands under the one measurement or test that would settle most of it. */
const finding = (id: string) => ({ id, outcome: 'inconclusive' }) as Finding;
const grouped = (settlersOf: Readonly<Record<string, readonly string[]>>) =>
  groupsBySettler(Object.keys(settlersOf).map(finding), (f) => settlersOf[f.id]!).map(({ by, findings }) => [
    by,
    findings.map((f) => f.id),
  ]);

describe('groups', () => {
  it('begin with what settles most, then what settles most of the rest', () => {
    expect(grouped({ a: ['tape'], b: ['pads', 'tape'], c: ['pads'], d: ['pads', 'scale'], e: ['scale'] })).toEqual([
      [['pads'], ['b', 'c', 'd']],
      [['tape'], ['a']],
      [['scale'], ['e']],
    ]);
  });

  it('name all that would settle the same', () => {
    expect(grouped({ a: ['pads', 'a lock-order test'], b: ['a lock-order test', 'pads'] })).toEqual([
      [
        ['pads', 'a lock-order test'],
        ['a', 'b'],
      ],
    ]);
  });

  it('end with what no one thing settles; of nothing there are none', () => {
    expect(grouped({ a: [], b: ['tape'], c: [] })).toEqual([
      [['tape'], ['b']],
      [[], ['a', 'c']],
    ]);
    expect(grouped({})).toEqual([]);
  });

  it('hold each finding exactly once, the first is the largest possible, and each thing named settles all of its group', () => {
    const some = fc.array(fc.subarray(['p', 'q', 'r', 's', 't']), { maxLength: 12 });
    fc.assert(
      fc.property(some, (lists) => {
        const all = lists.map((_, i) => finding(String(i)));
        const of = (f: Finding) => lists[Number(f.id)]!;
        const groups = groupsBySettler(all, of);
        expect(groups.flatMap((g) => g.findings.map((f) => f.id)).sort()).toEqual(all.map((f) => f.id).sort());
        const reach = (by: string) => all.filter((f) => of(f).includes(by)).length;
        const largest = Math.max(0, ...['p', 'q', 'r', 's', 't'].map(reach));
        if (largest > 0) expect(groups[0]!.findings).toHaveLength(largest);
        for (const { by, findings } of groups)
          for (const one of by) expect(findings.every((f) => of(f).includes(one))).toBe(true);
        expect(groups.filter((g) => g.by.length === 0).every((g) => g.findings.every((f) => of(f).length === 0))).toBe(
          true,
        );
      }),
    );
  });

  it('say how many of how many', () => {
    const two = [finding('a'), finding('b')];
    expect(groupSays({ by: ['friction of the pads, measured', 'a lock-order test'], findings: two }, 5)).toBe(
      'Friction of the pads, measured (or a lock-order test), would settle 2 of 5 inconclusive findings',
    );
    expect(groupSays({ by: [], findings: two.slice(1) }, 1)).toBe(
      'No single measurement would settle 1 of 1 inconclusive finding',
    );
  });

  it('are of open findings alone: a conceded one is none', () => {
    const conceded = { ...finding('b'), concession: { word: 'accepted', because: 'agreed' } } as Finding;
    expect(inconclusiveOf([finding('a'), conceded, { ...finding('c'), outcome: 'conforms' }]).map((f) => f.id)).toEqual(
      ['a'],
    );
  });
});

const value = (si: number, parts: Readonly<Record<string, number>>, interval?: Value['interval']): Value => ({
  si,
  unit: 'm',
  parts: new Map(Object.entries(parts)),
  interval,
  assumed: new Set(),
  origin: { kind: 'given', text: '' },
});
const limit = (max: number, more: Partial<Limit> = {}): Limit => ({
  unit: 'm',
  document: 'made up',
  basis: 'maker',
  max: exactBound(max),
  ...more,
});

describe('a source settles a comparison where the others alone leave no doubt', () => {
  it.each([
    // Margin 5: of ±6 and ±3 together ±6.7 reach across; without the first ±3 do not, without the second ±6 do.
    [value(95, { tape: 6, scale: 3 }), ['tape']],
    // Margin 5 with ±4 and ±4: each alone is inside.
    [value(95, { tape: 4, scale: 4 }), ['tape', 'scale']],
    // Margin 1 with ±4 and ±4: neither.
    [value(99, { tape: 4, scale: 4 }), []],
    // At the limit exactly: known exactly, it conforms.
    [value(100, { tape: 4 }), ['tape']],
    // Decided already: nothing is left to settle.
    [value(90, { tape: 4 }), []],
    // A simulated value reaches 6.1 up to its 97.5 % point, against a margin of 3.7: without the tape 3.66, without the scale 4.88.
    [value(96.3, { tape: 8, scale: 6 }, { low: 90, high: 102.4 }), ['tape']],
  ])('%#', (of, sources) => {
    expect(settlers(of, limit(100), {})).toEqual(sources.map((source) => ({ source })));
  });

  it('that is on both sides counts on both', () => {
    const bound = { si: 100, parts: new Map([['tape', 6]]), strict: false };
    expect(settlers(value(95, { scale: 1 }), limit(100, { max: bound }), {})).toEqual([{ source: 'tape' }]);
  });

  it('what is not valid is settled by its conditions and not by a measurement; a test settles beside', () => {
    expect(
      settlers(value(95, { tape: 6 }), limit(100), { invalid: ['the load is not stated'], test: 'a test' }),
    ).toEqual([{ words: 'the conditions of the test, stated or met (the load is not stated)' }, { words: 'a test' }]);
    expect(settlers(value(95, { tape: 6 }), limit(100), { range: 'the steel, tested' })).toEqual([
      { words: 'the steel, tested' },
    ]);
  });
});

describe('a build', () => {
  const discs = (one: string, two: string) =>
    `now: { front: { type: disc, thickness: ${one} }, rear: { type: disc, thickness: ${two} } }\nfront-maker: { thickness: { least: 20 mm, from: sheet (invented) } }\nrear-maker: { thickness: { least: 20 mm, from: sheet (invented) } }`;
  it('names the field, its key and its note', async () => {
    const { settledTogether, one } = await examineNote('brakes', discs('20.05 mm', '25.0 mm'));
    expect(settledTogether).toMatchObject([
      {
        by: ['thickness of the front discs, the least, measured more closely (`now.front.thickness` of 010-tried)'],
        findings: [{ item: 'brakes.disc-thickness', subject: 'front' }],
      },
    ]);
    expect(one('brakes.disc-thickness', 'front').onlyIf).toMatch(/^conforms only if at least 20\.1/);
    expect(one('brakes.disc-thickness', 'rear').onlyIf).toBeUndefined();
  });

  it('with nothing inconclusive has no group', async () => {
    expect((await examineNote('brakes', discs('25.0 mm', '25.0 mm'))).settledTogether).toEqual([]);
  });
});
