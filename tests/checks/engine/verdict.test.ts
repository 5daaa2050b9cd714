import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combine, weighted } from '../../../src/calc/propagate.js';
import type { Value } from '../../../src/calc/value.js';
import { boundOf, exactBound, type Limit, type Rule } from '../../../src/checks/codes/limit.js';
import { outcomeWith } from '../../../src/checks/engine/least-favourable.js';
import { decide, marksOf } from '../../../src/checks/engine/verdict.js';

const value = (si: number, u = 0, source = 'x'): Value => ({
  si,
  unit: '1',
  parts: new Map([[source, u]]),
  assumed: new Set(),
  origin: { kind: 'given', text: '' },
});
/** A simulated value with the ends of its interval. */
const simulated = (si: number, low: number, high: number): Value => ({
  ...value(si, (high - low) / 2),
  interval: { low, high },
});
const limit = (bounds: Partial<Limit>): Limit => ({
  document: 'test',
  basis: 'published',
  status: 'in-force',
  unit: '1',
  ...bounds,
});
const least = (si: number) => ({ min: exactBound(si) });
const most = (si: number) => ({ max: exactBound(si) });
const over = (si: number) => ({ min: exactBound(si, true) });
const under = (si: number) => ({ max: exactBound(si, true) });

describe('decide', () => {
  // Guarded acceptance and rejection with w = U (JCGM 106:2012, 8.3.2 and 8.3.3, memory): the limit exactly, one each side.
  it.each([
    [2.5, 0, most(2.5), 'met'],
    [2.4999, 0, most(2.5), 'met'],
    [2.5001, 0, most(2.5), 'against'],
    [2.4, 0.1, most(2.5), 'met'],
    [2.4001, 0.1, most(2.5), 'unclear'],
    [2.45, 0.1, most(2.5), 'unclear'],
    [2.55, 0.1, most(2.5), 'unclear'],
    [2.6, 0.1, most(2.5), 'unclear'],
    [2.6001, 0.1, most(2.5), 'against'],
    [10, 0, least(10), 'met'],
    [9.9, 0, least(10), 'against'],
    [10.1, 0.1, least(10), 'met'],
    [10.0999, 0.1, least(10), 'unclear'],
    [9.8999, 0.1, least(10), 'against'],
    [5, 0, { ...least(4), ...most(6) }, 'met'],
    [6.05, 0.1, { ...least(4), ...most(6) }, 'unclear'],
    [6.2, 0.1, { ...least(4), ...most(6) }, 'against'],
    [3.95, 0.1, { ...least(4), ...most(6) }, 'unclear'],
  ] as const)('%f ± %f against %o: %s', (x, u, bounds, outcome) => {
    expect(decide(value(x, u), limit(bounds)).result).toBe(outcome);
  });

  it.each([
    [750, 0, under(750), 'against'],
    [749.9, 0, under(750), 'met'],
    [749.9, 0.1, under(750), 'unclear'],
    [749.8, 0.1, under(750), 'met'],
    [750.1, 0.1, under(750), 'against'],
    [0, 0, over(0), 'against'],
    [0.1, 0, over(0), 'met'],
  ] as const)('%f ± %f against an excluded bound %o: %s', (x, u, bounds, outcome) => {
    expect(decide(value(x, u), limit(bounds)).result).toBe(outcome);
  });

  it.each([
    [4, { ...least(4), ...under(6) }, 'met'],
    [6, { ...least(4), ...under(6) }, 'against'],
    [3.999, { ...least(4), ...under(6) }, 'against'],
    [5.999, { ...least(4), ...under(6) }, 'met'],
    [4, { ...over(4), ...most(6) }, 'against'],
    [6, { ...over(4), ...most(6) }, 'met'],
  ] as const)('each bound keeps its own word for the limit itself: %f against %o: %s', (x, bounds, outcome) => {
    expect(decide(value(x), limit(bounds)).result).toBe(outcome);
  });

  it('takes 3.0 mm over 1.2 mm as exactly 2.5, although binary division in metres gives more', () => {
    expect(0.003 / 0.0012).not.toBe(2.5);
    expect(decide(value(0.003 / 0.0012), limit(most(2.5)))).toMatchObject({ result: 'met', margin: 0 });
  });

  it('gives the margin to the nearer bound with its uncertainty', () => {
    const window = limit({ ...least(4), ...most(6) });
    expect(decide(value(5.7, 0.1), window)).toMatchObject({ margin: 0.3, expanded: 0.1, rule: 'guarded' });
    expect(decide(value(4.2, 0.1), window)).toMatchObject({ margin: 0.2, expanded: 0.1 });
    expect(decide(value(7, 0.1), window)).toMatchObject({ margin: -1, expanded: 0.1 });
  });

  it('never conforms on a recalled figure', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e6, max: 1e6 }),
        fc.double({ noNaN: true, min: 0, max: 1e3 }),
        (x, u) => {
          expect(decide(value(x, u), limit({ ...most(1), basis: 'memory' })).result).toBe('unconfirmed');
        },
      ),
    );
  });

  it('conforms on a superseded text only by the own copy of it, and still does not conform beyond it', () => {
    const superseded = limit({ ...most(1), status: 'superseded' });
    expect(decide(value(0.5), superseded).result).toBe('unconfirmed');
    expect(decide(value(1.5), superseded).result).toBe('against');
    expect(decide(value(0.5), limit({ ...most(1), basis: 'own-copy' })).result).toBe('met');
  });

  it('never turns from conforming to inconclusive to not conforming and back as the value grows', () => {
    const order = ['met', 'unclear', 'against'];
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -10, max: 10 }),
        fc.double({ noNaN: true, min: 0, max: 5 }),
        fc.double({ noNaN: true, min: 0, max: 2 }),
        fc.constantFrom<Rule>('guarded', 'as-read', 'exact'),
        (x, step, u, rule) => {
          const at = (y: number) => order.indexOf(decide(value(y, u), limit({ ...most(1), rule })).result);
          expect(at(x + step)).toBeGreaterThanOrEqual(at(x));
        },
      ),
    );
  });

  it('has no limit without a bound', () => {
    expect(() => decide(value(1), limit({}))).toThrow();
  });
});

describe('the three decision rules', () => {
  it.each([
    ['guarded', 2.5, 'unclear', 0.1],
    ['guarded', 2.4, 'met', 0.1],
    ['guarded', 2.61, 'against', 0.1],
    // Simple acceptance (JCGM 106:2012, 8.2, memory).
    ['as-read', 2.5, 'met', 0.1],
    ['as-read', 2.499, 'met', 0.1],
    ['as-read', 2.501, 'against', 0.1],
    ['exact', 2.5, 'met', 0],
    ['exact', 2.499, 'met', 0],
    ['exact', 2.501, 'against', 0],
  ] as const)('%s: %f ± 0.1 against at most 2.5: %s', (rule, x, outcome, expanded) => {
    const decision = decide(value(x, 0.1), limit({ ...most(2.5), rule }));
    expect(decision).toMatchObject({ result: outcome, expanded, rule });
  });

  it('read a recommendation as it stands, unless its item says otherwise', () => {
    const recommended = { ...most(2.5), recommended: true };
    expect(decide(value(2.45, 0.1), limit(recommended))).toMatchObject({ result: 'met', rule: 'as-read' });
    expect(decide(value(2.45, 0.1), limit({ ...recommended, rule: 'guarded' })).result).toBe('unclear');
  });

  it('never help a recalled figure', () => {
    for (const rule of ['guarded', 'as-read', 'exact'] as const)
      expect(decide(value(1, 0.1), limit({ ...most(2), rule, basis: 'memory' })).result).toBe('unconfirmed');
  });
});

describe('the margin between two uncertain numbers', () => {
  const kg = (si: number, u: number, source: string) => value(si, u, source);

  it('counts a measurement on both sides once, with its sign (JCGM 100:2008, 5.2.2)', () => {
    // mass_front against 1200 kg less mass_front, at 592 ± 10 kg: the margin is 16 ± 20 kg.
    const mass = kg(592, 10, 'front');
    const rest = boundOf(weighted([1, kg(1200, 0, 'none')], [-1, mass]));
    expect(decide(mass, limit({ max: rest }))).toMatchObject({ result: 'unclear', margin: 16, expanded: 20 });
    // The same question put otherwise: twice the mass against 1200 kg.
    const twice: Value = { ...mass, ...weighted([2, mass]) };
    expect(decide(twice, limit(most(1200)))).toMatchObject({ result: 'unclear', margin: 16, expanded: 20 });
  });

  it('lets it cancel where both sides move together', () => {
    // The mass against the same mass and 5 kg more: 5 kg of margin whatever the weighbridge says.
    const mass = kg(592, 10, 'front');
    const more = boundOf(weighted([1, mass], [1, kg(5, 0, 'none')]));
    expect(decide(mass, limit({ max: more }))).toMatchObject({ result: 'met', margin: 5, expanded: 0 });
  });

  it('adds independent measurements as the root of the sum of squares (JCGM 100:2008, 5.1.2)', () => {
    const bound = (si: number) => ({ max: boundOf(kg(si, 4, 'bound')) });
    expect(decide(kg(10, 3, 'value'), limit(bound(15)))).toMatchObject({ result: 'met', expanded: 5 });
    expect(decide(kg(10, 3, 'value'), limit(bound(14.99))).result).toBe('unclear');
    expect(decide(kg(10, 3, 'value'), limit(bound(5))).result).toBe('unclear');
    expect(decide(kg(10, 3, 'value'), limit(bound(4.99))).result).toBe('against');
  });

  it('is the same for a × x ≤ b − c × x as for (a + c) × x ≤ b', () => {
    const number = fc.integer({ min: -50, max: 50 }).map((n) => n / 10);
    fc.assert(
      fc.property(number, number, number, number, fc.integer({ min: 0, max: 30 }), (x, a, b, c, u) => {
        const measured = value(x, u / 10);
        const apart = decide(
          { ...measured, ...weighted([a, measured]) },
          limit({ max: boundOf(weighted([1, value(b, 0, 'none')], [-c, measured])) }),
        );
        const together = decide({ ...measured, ...weighted([a + c, measured]) }, limit(most(b)));
        fc.pre(Math.abs(Math.abs(together.margin) - together.expanded) > 1e-9);
        expect(apart.result).toBe(together.result);
        expect(apart.margin).toBeCloseTo(together.margin, 9);
        expect(apart.expanded).toBeCloseTo(together.expanded, 9);
      }),
    );
  });
});

describe('a simulated value', () => {
  // Torsional acceleration of 180 with its 97.5 % point at 435 rad/s², against 400 (issue of the landed version).
  it('is judged on its own 97.5 % point, not on ± U', () => {
    const torsional: Value = { ...simulated(180, 2, 435), parts: new Map([['angle', 220]]) };
    expect(decide({ ...torsional, interval: undefined }, limit(most(400))).result).toBe('met');
    expect(decide(torsional, limit(most(400)))).toMatchObject({ result: 'unclear', margin: 220, expanded: 255 });
    expect(decide(torsional, limit(most(435))).result).toBe('met');
    expect(decide(torsional, limit(most(434.9))).result).toBe('unclear');
  });

  it.each([
    [least(2), 'met'],
    [least(2.001), 'unclear'],
    [least(435), 'unclear'],
    [least(435.001), 'against'],
    [most(2), 'unclear'],
    [most(1.999), 'against'],
  ] as const)('180 (2 to 435) against %o: %s', (bounds, outcome) => {
    expect(decide(simulated(180, 2, 435), limit(bounds)).result).toBe(outcome);
  });

  it('neither conforms nor fails where the value itself is on the other side', () => {
    // At a least value both points are above the value.
    expect(decide(simulated(0, 0.1, 4), limit(least(0.05))).result).toBe('unclear');
    expect(decide(simulated(0, 0.1, 4), limit(most(0.05))).result).toBe('unclear');
  });

  it('never gains from resting on the same measurement as its bound', () => {
    const sharp = simulated(1, 0, 3);
    const bound = { ...value(3.1, 2), strict: false };
    expect(decide(sharp, limit({ max: bound }))).toMatchObject({ result: 'unclear' });
    expect(decide(sharp, limit({ max: bound })).expanded).toBeCloseTo(4, 12);
  });

  // Exact: a² + b² at zero is chi-squared with two degrees of freedom, so that half the width that holds 95.45 % about the
  // value is 6.18 u², and the 97.5 % point 7.38 u².
  it('is judged so when it comes out of the propagation', () => {
    const [a, b] = [value(0, 2, 'a'), value(0, 2, 'b')];
    const squares: Value = { ...a, ...combine([a, b], (x, y) => x * x + y * y) };
    expect(decide({ ...squares, interval: undefined }, limit(most(6.9))).result).toBe('met');
    expect(decide(squares, limit(most(6.9))).result).toBe('unclear');
    expect(decide(squares, limit(most(7.9))).result).toBe('met');
  });

  it('by the rule as-read counts as it stands', () => {
    expect(decide(simulated(180, 2, 435), limit({ ...most(400), rule: 'as-read' })).result).toBe('met');
  });
});

describe('what would conform', () => {
  it('is the limit moved in by the uncertainty', () => {
    expect(decide(value(2.45, 0.1), limit(most(2.5))).conformsOnlyIf).toEqual({
      min: undefined,
      max: exactBound(2.4),
    });
    expect(decide(value(10, 0.5), limit(over(9.9))).conformsOnlyIf).toEqual({
      min: exactBound(10.4, true),
      max: undefined,
    });
    expect(decide(value(5.95, 0.1), limit({ ...least(4), ...most(6) })).conformsOnlyIf).toEqual({
      min: exactBound(4.1),
      max: exactBound(5.9),
    });
  });

  it('conforms indeed, and one beyond it does not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100, max: 100 }),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(1, -1),
        (x, u, sign) => {
          const bounds = limit(sign > 0 ? least(0) : most(0));
          const { conformsOnlyIf } = decide(value(x, u), bounds);
          if (!conformsOnlyIf) return;
          const { si } = (conformsOnlyIf.min ?? conformsOnlyIf.max)!;
          expect(decide(value(si, u), bounds).result).toBe('met');
          expect(decide(value(si - sign, u), bounds).result).not.toBe('met');
        },
      ),
    );
  });

  it.each([
    ['it conforms', value(1, 0.1), most(2)],
    ['it does not conform', value(3, 0.1), most(2)],
    ['the window is narrower than the uncertainty', value(5, 0.2), { ...least(4.9), ...most(5.1) }],
    ['the bound moves with the value', value(5, 0.2), { max: boundOf(value(5.1, -0.1)) }],
  ] as const)('is no value where %s', (_, x, bounds) => {
    expect(decide(x, limit(bounds))).not.toHaveProperty('conformsOnlyIf');
  });
});

describe('marksOf', () => {
  it('marks all that the reader must confirm', () => {
    expect(marksOf({ basis: 'own-copy' })).toEqual([]);
    expect(marksOf({ basis: 'maker' })).toEqual([]);
    expect(marksOf({ basis: 'published', status: 'in-force' })).toEqual([]);
    expect(marksOf({ basis: 'published', status: 'superseded' })).toContain('confirm against your copy');
    expect(marksOf({ basis: 'published' })).toContain('currency not known');
    expect(marksOf({ basis: 'quoted' })).toEqual(['confirm against your copy']);
    expect(marksOf({ basis: 'practice' })).toContain('common practice');
  });

  it('of every basis says what is not confirmed', () => {
    expect(marksOf({ basis: 'memory' })).toEqual(['recalled, not confirmed']);
    expect(marksOf({ basis: 'practice' })).toEqual(['common practice', 'confirm against your copy']);
    expect(marksOf({ basis: 'published', status: 'superseded' })).toEqual([
      'superseded text',
      'confirm against your copy',
    ]);
    expect(marksOf({ basis: 'published', status: 'not-known' })).toEqual([
      'currency not known',
      'confirm against your copy',
    ]);
    expect(marksOf({ basis: 'own-copy', status: 'superseded' })).toEqual([]);
    expect(marksOf({ basis: 'maker', status: 'not-known' })).toEqual([]);
    for (const basis of ['own-copy', 'practice', 'memory'] as const)
      expect(marksOf({ basis, agreedWith: 'R. Ansell' })).toEqual(['agreed with the certifier']);
  });
});

describe('a limit', () => {
  it('without a bound is a mistake', () =>
    expect(() => decide(value(1), limit({}))).toThrow('a limit without a bound'));

  it.each([
    ['memory', 'in-force', 1, 'unconfirmed'],
    ['memory', 'in-force', 3, 'unconfirmed'],
    ['memory', 'in-force', 2, 'unconfirmed'],
    ['published', 'superseded', 1, 'unconfirmed'],
    ['published', 'superseded', 2, 'unclear'],
    ['published', 'superseded', 3, 'against'],
    ['published', 'not-known', 1, 'met'],
    ['published', 'in-force', 1, 'met'],
    ['own-copy', 'superseded', 1, 'met'],
    ['quoted', 'superseded', 1, 'met'],
  ] as const)('of basis %s and status %s, with %d ± 0.5 against 2: %s', (basis, status, x, result) => {
    expect(decide(value(x, 0.5), limit({ ...most(2), basis, status })).result).toBe(result);
  });

  it('that was calculated from a figure that nobody confirmed names nothing that would conform', () => {
    expect(decide(value(2, 0.5), limit({ ...most(2), basis: 'memory' }))).not.toHaveProperty('conformsOnlyIf');
  });
});

describe('the margin', () => {
  it('is that to the nearer bound, with its own uncertainty', () => {
    const bounds = { min: boundOf(value(0, 3, 'low')), max: boundOf(value(10, 4, 'high')) };
    expect(decide(value(7, 0), limit(bounds))).toMatchObject({ margin: 3, expanded: 4, rule: 'guarded' });
    expect(decide(value(3, 0), limit(bounds))).toMatchObject({ margin: 3, expanded: 3 });
    expect(decide(value(5, 0), limit(bounds))).toMatchObject({ margin: 5, expanded: 3 });
    expect(decide(value(12, 0), limit(bounds)).margin).toBe(-2);
  });
  it('is printed with its uncertainty by the rule as-read, and has none by the rule exact', () => {
    expect(decide(value(9, 2), limit({ ...most(10), rule: 'as-read' }))).toMatchObject({
      result: 'met',
      margin: 1,
      expanded: 2,
      rule: 'as-read',
    });
    expect(decide(value(9, 2), limit({ ...most(10), rule: 'exact' }))).toMatchObject({
      result: 'met',
      margin: 1,
      expanded: 0,
      rule: 'exact',
    });
    expect(decide(value(10.5, 2), limit({ ...most(10), recommended: true }))).toMatchObject({
      result: 'against',
      rule: 'as-read',
    });
  });
});

describe('a value with a limit that may hold', () => {
  it('comes out as it would with it', () => {
    expect(outcomeWith({ is: 'limit', limit: limit(most(2)) }, value(1))).toBe('met');
    expect(outcomeWith({ is: 'limit', limit: limit(most(2)) }, value(3))).toBe('against');
    expect(outcomeWith({ is: 'not-applicable', reason: 'other' }, value(1))).toBe('out');
    expect(outcomeWith({ is: 'figure', figure: 'mass' }, value(1))).toBe('unconfirmed');
    expect(outcomeWith({ is: 'unstated', names: ['mass'] }, value(1))).toBe('unconfirmed');
  });
});
