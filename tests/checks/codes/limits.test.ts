import { describe, expect, it } from 'vitest';
import { exactly, type Value } from '../../../src/calc/value.js';
import type { Applies, Case, Item } from '../../../src/checks/codes/item.js';
import { applies, type Resolved, resolve, resolveAcross, type World } from '../../../src/checks/codes/limits.js';
import type { OwnFigure } from '../../../src/checks/codes/own-copy.js';

/** Which limit holds for which vehicle. Items and figures are made up. */

const world = (over: Partial<World> = {}): World => ({
  jurisdiction: 'VIC',
  category: 'MA',
  built: '1990-06',
  state: () => undefined,
  value: () => undefined,
  ownFigures: new Map(),
  ...over,
});
const values = (of: Readonly<Record<string, Value>>) => ({ value: (name: string) => of[name] });
const kg = (si: number, u = 0, source = 'mass'): Value => ({
  ...exactly(si, 'kg'),
  parts: new Map(u === 0 ? [] : [[source, u]]),
});

describe('whether an item applies', () => {
  const test = (test: Applies | undefined, over: Partial<World> = {}) => {
    const found = applies(test, world(over));
    return 'unstated' in found ? found.unstated : found.holds;
  };
  const reason = (test: Applies, over: Partial<World> = {}) =>
    (applies(test, world(over)) as { reason: string }).reason;

  it('is so everywhere where nothing is said, without a reason', () => {
    expect(applies(undefined, world())).toEqual({ holds: true, reason: '' });
    expect(applies({}, world({ jurisdiction: undefined, category: undefined }))).toEqual({ holds: true, reason: '' });
  });
  it('in some states', () => {
    expect(test({ jurisdictions: ['SA', 'VIC'] })).toBe(true);
    expect(test({ jurisdictions: ['SA'] })).toBe(false);
    expect(test({ jurisdictions: ['SA'] }, { jurisdiction: undefined })).toEqual(['vehicle.registration']);
    expect(reason({ jurisdictions: ['SA', 'WA'] })).toBe('applies in SA, WA; this vehicle is registered in VIC');
  });
  it('to some categories, or to all but some', () => {
    expect(test({ categories: ['MA', 'MC'] })).toBe(true);
    expect(test({ categories: ['MC'] })).toBe(false);
    expect(test({ 'not-categories': ['MC'] })).toBe(true);
    expect(test({ 'not-categories': ['MA'] })).toBe(false);
    expect(test({ categories: ['MA'], 'not-categories': ['MC'] })).toBe(true);
    expect(reason({ categories: ['NA', 'NB'] })).toBe('applies to category NA, NB; this vehicle is MA');
    expect(reason({ 'not-categories': ['MA'] })).toBe('does not apply to category MA');
    for (const one of [{ categories: ['MA'] }, { 'not-categories': ['MA'] }])
      expect(test(one, { category: undefined })).toEqual(['vehicle.category']);
  });
  it.each([
    ['1990-06', '1990-06-01', true, false],
    ['1990-06', '1990-07-01', false, true],
    ['1990-06', '1990-05-31', true, false],
    ['1990-06-15', '1990-06-15', true, false],
    ['1990-06-14', '1990-06-15', false, true],
    ['1990-06-16', '1990-06-15', true, false],
  ])('a vehicle built %s, from and before %s', (built, date, from, before) => {
    expect(test({ 'built-from': date }, { built })).toBe(from);
    expect(test({ 'built-before': date }, { built })).toBe(before);
  });
  it('tells both dates', () => {
    expect(reason({ 'built-from': '1991-01-01' })).toBe(
      'applies to vehicles built from 1991-01-01; this one was built 1990-06',
    );
    expect(reason({ 'built-before': '1989-01-01' })).toBe(
      'applies to vehicles built before 1989-01-01; this one was built 1990-06',
    );
  });
  it('in some states of the note or vehicle', () => {
    const state = (name: string) => ({ induction: 'turbo', fuel: 'petrol' })[name];
    expect(test({ states: { induction: ['turbo', 'supercharged'], fuel: ['petrol'] } }, { state })).toBe(true);
    expect(test({ states: { induction: ['turbo'], fuel: ['gas'] } }, { state })).toBe(false);
    expect(test({ states: { induction: ['na'] } })).toEqual(['induction']);
    expect(reason({ states: { induction: ['na', 'none'] } }, { state })).toBe(
      'applies where induction is na or none; here it is turbo',
    );
  });
  it('within bounds on facts', () => {
    const when = 'original_mass >= 800 kg';
    expect(test({ when }, values({ original_mass: kg(800) }))).toBe(true);
    expect(test({ when }, values({ original_mass: kg(799) }))).toBe(false);
    expect(test({ when })).toEqual(['original_mass']);
    expect(reason({ when }, values({ original_mass: kg(799) }))).toBe('applies where original mass >= 800 kg');
  });
  it('is not known where the bounds cannot be read or are no comparison', () => {
    for (const when of ['original_mass >=', '2 * original_mass', 'original_mass >= 2 mm'])
      expect(test({ when }, values({ original_mass: kg(800) })), when).toEqual([when]);
  });
});

type Limited = Item & { kind: 'limit' | 'test' };
const item = (cases: readonly Partial<Case>[], over: object = {}): Limited =>
  ({
    id: 'some.item',
    kind: 'limit',
    unit: 'kg',
    rests: { document: 'a text', edition: '2', clause: '3.1', basis: 'published', status: 'in-force' },
    cases,
    ...over,
  }) as unknown as Limited;
const limitOf = (resolved: Resolved) => {
  if (resolved.is !== 'limit') throw new Error(JSON.stringify(resolved));
  return resolved.limit;
};
const limit = (of: Limited, over: Partial<World> = {}) => limitOf(resolve(of, world(over)));

describe('the limit of an item', () => {
  it('is that of the first case that applies, with all that it rests on', () => {
    const two = item([{ applies: { categories: ['NA'] }, max: '100 kg' }, { max: '200 kg' }, { max: '300 kg' }]);
    expect(limit(two)).toEqual({
      document: 'a text',
      edition: '2',
      clause: '3.1',
      basis: 'published',
      status: 'in-force',
      readIn: undefined,
      readBy: undefined,
      on: undefined,
      unit: 'kg',
      min: undefined,
      max: expect.objectContaining({ si: 200, strict: false }),
      from: undefined,
      rule: undefined,
      recommended: false,
    });
    expect(limit(two, { category: 'NA' }).max!.si).toBe(100);
  });
  it('has the bounds that it states, strict where it says so', () => {
    expect(limit(item([{ min: '1 kg', max: '2 kg' }]))).toMatchObject({
      min: { si: 1, strict: false },
      max: { si: 2, strict: false },
    });
    expect(limit(item([{ above: '1 kg', below: '2 kg' }]))).toMatchObject({
      min: { si: 1, strict: true },
      max: { si: 2, strict: true },
    });
    expect(limit(item([{ min: '1 kg', below: '2 kg' }]))).toMatchObject({
      min: { si: 1, strict: false },
      max: { si: 2, strict: true },
    });
    expect(limit(item([{ above: '1 kg', max: '2 kg' }]))).toMatchObject({
      min: { si: 1, strict: true },
      max: { si: 2, strict: false },
    });
  });
  it('calculated from facts carries their uncertainty, and says from what', () => {
    const calculated = item([{ max: '2 * original_mass' }]);
    expect(limit(calculated, values({ original_mass: kg(800, 10) }))).toMatchObject({
      from: '2 * original_mass',
      max: { si: 1600, parts: new Map([['mass', 20]]) },
    });
    expect(resolve(calculated, world())).toEqual({ is: 'unstated', names: ['original_mass'] });
    expect(limit(item([{ min: '2 kg', max: 'original_mass' }]), values({ original_mass: kg(800) })).from).toBe(
      'original_mass',
    );
    expect(limit(item([{ min: '2 kg', max: '3*1 kg' }])).from).toBe('3*1 kg');
  });
  it('is not known where a bound gives no number', () => {
    expect(resolve(item([{ min: '2 kg', max: '3 >= 2' }]), world())).toEqual({ is: 'unstated', names: ['3 >= 2'] });
    expect(resolve(item([{ min: '3 *', max: '2 kg' }]), world())).toEqual({ is: 'unstated', names: ['3 *'] });
    expect(resolve(item([{ min: 'a', max: 'b' }]), world())).toEqual({ is: 'unstated', names: ['a', 'b'] });
  });
  it('takes the rule of its case before that of the item', () => {
    expect(limit(item([{ max: '1 kg', rule: 'exact' }], { rule: 'as-read' })).rule).toBe('exact');
    expect(limit(item([{ max: '1 kg' }], { rule: 'as-read', recommended: true }))).toMatchObject({
      rule: 'as-read',
      recommended: true,
    });
  });
  it('rests on what its case rests on, and on the weakest of figure and applicability', () => {
    const rests = {
      document: 'another',
      edition: '3',
      clause: '4',
      basis: 'quoted',
      status: 'superseded',
      'read-in': 'a third',
      'read-by': 'JO',
      on: '2026-01-02',
    } as const;
    expect(limit(item([{ max: '1 kg', rests }]))).toMatchObject({
      document: 'another',
      edition: '3',
      clause: '4',
      basis: 'quoted',
      status: 'superseded',
      readIn: 'a third',
      readBy: 'JO',
      on: '2026-01-02',
    });
    expect(limit(item([{ max: '1 kg', applies: { basis: 'memory' } }])).basis).toBe('memory');
    expect(limit(item([{ max: '1 kg' }], { applies: { basis: 'practice' } })).basis).toBe('practice');
    expect(
      limit(item([{ max: '1 kg', rests, applies: { basis: 'own-copy' } }], { applies: { basis: 'maker' } })).basis,
    ).toBe('quoted');
  });
  it('is none where the item, or no case of it, applies', () => {
    expect(resolve(item([{ max: '1 kg' }], { applies: { categories: ['NA'] } }), world())).toEqual({
      is: 'not-applicable',
      reason: 'applies to category NA; this vehicle is MA',
    });
    const cases: Parameters<typeof item>[0] = [
      { applies: { categories: ['NA'] }, max: '1 kg' },
      { applies: { jurisdictions: ['SA'] }, max: '1 kg' },
    ];
    expect(resolve(item(cases), world())).toEqual({
      is: 'not-applicable',
      reason: 'applies to category NA; this vehicle is MA; applies in SA; this vehicle is registered in VIC',
    });
    expect(resolve(item([]), world())).toEqual({ is: 'not-applicable', reason: 'no case of the item applies' });
    expect(resolve(item([{ 'not-applicable': 'lifted here' }, { max: '1 kg' }]), world())).toEqual({
      is: 'not-applicable',
      reason: 'lifted here',
    });
  });
  it('is to be read where its figure is in the own copy only', () => {
    expect(resolve(item([{ figure: 'the mass of table 2' }]), world())).toEqual({
      is: 'figure',
      figure: 'the mass of table 2',
    });
    expect(resolve(item([], { figure: 'the mass' }), world())).toEqual({ is: 'figure', figure: 'the mass' });
    expect(limit(item([{ max: '1 kg' }], { figure: 'the mass' })).max!.si).toBe(1);
  });
  it('is not known while what decides is not stated', () => {
    const category = { applies: { categories: ['MA'] } };
    expect(resolve(item([{ max: '1 kg' }], category), world({ category: undefined }))).toEqual({
      is: 'unstated',
      names: ['vehicle.category'],
    });
    expect(resolve(item([{ ...category, max: '1 kg' }, { max: '2 kg' }]), world({ category: undefined }))).toEqual({
      is: 'unstated',
      names: ['vehicle.category'],
    });
  });
});

describe('a figure of the own copy', () => {
  const own = (figure: object) => ({
    ownFigures: new Map([
      [
        'some.item',
        { item: 'some.item', edition: '5', clause: '7', 'read-by': 'JO', on: '2026-02-03', ...figure } as OwnFigure,
      ],
    ]),
  });
  const built = item([{ min: '1 kg', max: '10 kg' }]);

  it('stands before all that is built in, with who read it and when', () => {
    expect(limit(item([{ max: '10 kg' }]), own({ max: '8 kg' }))).toMatchObject({
      document: 'a text',
      edition: '5',
      clause: '7',
      basis: 'own-copy',
      readBy: 'JO',
      on: '2026-02-03',
      min: undefined,
      max: { si: 8 },
    });
    expect(limit(item([{ max: '10 kg' }]), own({ max: '8 kg', document: 'their text' })).document).toBe('their text');
    expect(
      limit(item([{ max: '10 kg' }]), { ownFigures: new Map([['other', { max: '8 kg' } as never]]) }).max!.si,
    ).toBe(10);
    expect(limit(item([], { figure: 'the mass' }), own({ max: '8 kg' })).max!.si).toBe(8);
    expect(limit(item([{ max: '10 kg' }], { rule: 'exact' }), own({ max: '8 kg' })).rule).toBe('exact');
  });
  it('is judged by the rule of the case that it replaces', () => {
    expect(limit(item([{ max: '10 kg', rule: 'exact' }]), own({ max: '8 kg' })).rule).toBe('exact');
    expect(limit(item([{ min: '1 kg', max: '10 kg', rule: 'exact' }]), own({ max: '8 kg' })).rule).toBe('exact');
  });
  it('does not make an item apply', () => {
    expect(resolve(item([{ max: '10 kg' }], { applies: { categories: ['NA'] } }), world(own({ max: '8 kg' }))).is).toBe(
      'not-applicable',
    );
  });
  it('never drops the side that it does not speak of: what it rests on is then the weaker', () => {
    for (const [figure, bounds] of [
      [{ max: '8 kg' }, { min: { si: 1, strict: false }, max: { si: 8, strict: false } }],
      [{ below: '8 kg' }, { min: { si: 1, strict: false }, max: { si: 8, strict: true } }],
      [{ min: '2 kg' }, { min: { si: 2, strict: false }, max: { si: 10, strict: false } }],
      [{ above: '2 kg' }, { min: { si: 2, strict: true }, max: { si: 10, strict: false } }],
    ] as const)
      expect(limit(built, own(figure))).toMatchObject({
        ...bounds,
        basis: 'published',
        status: 'in-force',
        document: 'a text; other side a text',
        clause: '7',
        readBy: 'JO',
      });
    const strict = item([{ above: '1 kg', below: '10 kg' }]);
    expect(limit(strict, own({ max: '8 kg' }))).toMatchObject({
      min: { si: 1, strict: true },
      max: { si: 8, strict: false },
    });
    expect(limit(strict, own({ min: '2 kg' }))).toMatchObject({
      min: { si: 2, strict: false },
      max: { si: 10, strict: true },
    });
  });
  it('replaces both where it speaks of both', () => {
    expect(limit(built, own({ min: '2 kg', max: '8 kg' }))).toMatchObject({
      min: { si: 2 },
      max: { si: 8 },
      basis: 'own-copy',
      document: 'a text',
    });
    expect(limit(built, own({ above: '2 kg', below: '8 kg' }))).toMatchObject({
      min: { si: 2, strict: true },
      max: { si: 8, strict: true },
      basis: 'own-copy',
    });
  });
  it('keeps the other side of the case that applies, with its basis', () => {
    const cases: Parameters<typeof item>[0] = [
      { applies: { categories: ['NA'] }, min: '1 kg', max: '10 kg' },
      { min: '3 kg', max: '12 kg', rests: { document: 'quoted text', basis: 'quoted', status: 'superseded' } },
    ];
    expect(limit(item(cases), own({ max: '8 kg' }))).toMatchObject({
      min: { si: 3 },
      max: { si: 8 },
      basis: 'quoted',
      status: 'superseded',
      document: 'a text; other side quoted text',
    });
    expect(limit(item([{ min: '1 kg', applies: { basis: 'memory' } }]), own({ max: '8 kg' })).basis).toBe('memory');
    const unstated = [{ applies: { when: 'original_mass >= 1 kg' }, min: '1 kg' }, { min: '2 kg' }];
    expect(limit(item(unstated), own({ max: '8 kg' }))).toMatchObject({ min: { si: 2 } });
    expect(limit(item([cases[0]!]), own({ max: '8 kg' })).min).toBeUndefined();
    expect(limit(item([{ figure: 'the mass' }]), own({ max: '8 kg' }))).toMatchObject({
      basis: 'own-copy',
      min: undefined,
    });
  });
  it('may be one that the certifier adopted in writing', () => {
    const adopted = {
      edition: undefined,
      clause: undefined,
      'agreed-with': 'R. Ansell',
      letter: 'letter.pdf',
      max: '8 kg',
    };
    const found = limit(item([{ max: '10 kg' }]), own(adopted));
    expect(found).toMatchObject({
      document: 'letter letter.pdf',
      basis: 'own-copy',
      agreedWith: 'R. Ansell',
      on: '2026-02-03',
      max: { si: 8 },
    });
    expect(found.readBy).toBeUndefined();
    expect(limit(item([{ max: '10 kg' }]), own({ ...adopted, document: 'their text' })).document).toBe('their text');
  });
});

describe('where a fact decides between cases', () => {
  const banded = item([
    { applies: { when: 'original_mass < 800 kg' }, max: '3 kg' },
    { applies: { when: 'original_mass < 1100 kg' }, max: '4 kg' },
    { max: '5 kg' },
  ]);
  const bounds = (of: Limited, over: Partial<World>) =>
    resolveAcross(of, world(over)).map((r) => (r.is === 'limit' ? r.limit.max!.si : r.is));

  it.each([
    [kg(900, 10), [4]],
    [kg(805, 10), [4, 3]],
    [kg(795, 10), [3, 4]],
    [kg(900, 250), [4, 5, 3]],
    [kg(805), [4]],
    [kg(790, 10), [3, 4]],
    [kg(810, 10), [4]],
    [kg(789, 10), [3]],
  ])('all that its uncertainty reaches may hold, that of the value itself first: %#', (mass, expected) => {
    expect(bounds(banded, values({ original_mass: mass }))).toEqual(expected);
  });
  it('is one where nothing decides, or only what is exact does', () => {
    expect(bounds(item([{ max: '5 kg' }]), values({ original_mass: kg(800, 10) }))).toEqual([5]);
    expect(
      bounds(item([{ applies: { categories: ['MA'] }, max: '5 kg' }]), values({ original_mass: kg(800, 10) })),
    ).toEqual([5]);
    expect(bounds(banded, {})).toEqual(['unstated']);
    expect(
      bounds(item([{ applies: { when: 'original_mass >=' }, max: '5 kg' }]), values({ original_mass: kg(800, 10) })),
    ).toEqual(['unstated']);
  });
  it('moves one fact at a time, and not what the bounds are calculated from', () => {
    const two = item([{ applies: { when: 'original_mass + load < 800 kg' }, max: '2 * other' }, { max: '3 * other' }]);
    const facts = { original_mass: kg(600, 10), load: kg(195, 10, 'load'), other: kg(5, 1, 'other') };
    expect(bounds(two, values(facts))).toEqual([10, 15]);
    expect(bounds(two, values({ ...facts, load: kg(185, 10, 'load') }))).toEqual([10]);
    expect(bounds(two, values({ ...facts, load: kg(189, 10, 'load') }))).toEqual([10]);
  });
  it('none of which may apply', () => {
    const one = item([{ applies: { when: 'original_mass < 800 kg' }, max: '3 kg' }]);
    expect(bounds(one, values({ original_mass: kg(795, 10) }))).toEqual([3, 'not-applicable']);
  });
});
