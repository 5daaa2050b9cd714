import { expanded, type Value } from '../../calc/value.js';
import { unit } from '../../units/unit.js';
import { calculated } from './calculated.js';
import { evaluate, type Names } from './evaluate.js';
import { expressionOf } from './expression-of.js';
import type { Applies, Case, Item } from './item.js';
import { type Basis, type Bound, boundOf, type Limit, weakest } from './limit.js';
import type { OwnFigure } from './own-copy.js';

/** Which limit of an item holds for one vehicle, in one state, on one note. */

export interface World {
  jurisdiction?: string | undefined;
  category?: string | undefined;
  /** Month or day of build. */
  built: string;
  /** Words such as `induction`, by name. */
  state: (name: string) => string | undefined;
  /** Facts and measurements, by the names that expressions use. */
  value: (name: string) => Value | undefined;
  ownFigures: ReadonlyMap<string, OwnFigure>;
}

export type Resolved =
  | { is: 'limit'; limit: Limit }
  | { is: 'not-applicable'; reason: string }
  /** The figure has to be read in the own copy. */
  | { is: 'figure'; figure: string }
  /** Applicability or figure depend on something that nobody stated. */
  | { is: 'unstated'; names: string[] };

type Test = { holds: boolean; reason: string } | { unstated: string[] };

/** Whether an item applies, with the reason where it does not. */
export function applies(test: Applies | undefined, world: World): Test {
  if (!test) return { holds: true, reason: '' };
  const no = (reason: string): Test => ({ holds: false, reason });
  if (test.jurisdictions) {
    if (!world.jurisdiction) return { unstated: ['vehicle.registration'] };
    if (!test.jurisdictions.includes(world.jurisdiction))
      return no(`applies in ${test.jurisdictions.join(', ')}; this vehicle is registered in ${world.jurisdiction}`);
  }
  if (test.categories || test['not-categories']) {
    if (!world.category) return { unstated: ['vehicle.category'] };
    if (test.categories && !test.categories.includes(world.category))
      return no(`applies to category ${test.categories.join(', ')}; this vehicle is ${world.category}`);
    if (test['not-categories']?.includes(world.category)) return no(`does not apply to category ${world.category}`);
  }
  const from = test['built-from'];
  if (from && world.built < from.slice(0, world.built.length))
    return no(`applies to vehicles built from ${from}; this one was built ${world.built}`);
  const before = test['built-before'];
  if (before && world.built >= before.slice(0, world.built.length))
    return no(`applies to vehicles built before ${before}; this one was built ${world.built}`);
  for (const [name, words] of Object.entries(test.states ?? {})) {
    const word = world.state(name);
    if (word === undefined) return { unstated: [name] };
    if (!words.includes(word)) return no(`applies where ${name} is ${words.join(' or ')}; here it is ${word}`);
  }
  if (test.when) {
    const read = expressionOf(test.when);
    if (!read.ok) return { unstated: [test.when] };
    const result = evaluate(read.expression, namesOf(world));
    if (result.is === 'missing') return { unstated: [...result.names] };
    if (result.is !== 'truth') return { unstated: [test.when] };
    if (!result.holds) return no(`applies where ${test.when.replaceAll('_', ' ')}`);
  }
  return { holds: true, reason: '' };
}

/**
 * Whether an item applies, on the careful side: it does where its bounds on facts hold anywhere within the uncertainty of these
 * facts.
 */
export function mayApply(test: Applies | undefined, world: World): Test {
  const plain = applies(test, world);
  if ('unstated' in plain || plain.holds || test?.when === undefined) return plain;
  const read = expressionOf(test.when);
  const names = read.ok ? [...read.names].filter((name) => isUncertain(world, name)).slice(0, mostMoved) : [];
  const corners = names.reduce<World[]>(
    (worlds, name) => worlds.flatMap((w) => [w, shift(w, name, 1), shift(w, name, -1)]),
    [world],
  );
  return corners.map((w) => applies(test, w)).find((t) => 'holds' in t && t.holds) ?? plain;
}

/** Of how many facts the ends are tried together. */
const mostMoved = 4;

/** The limit of an item that compares numbers. A figure of the own copy stands before all built-in ones. */
export function resolve(item: Item & { kind: 'limit' | 'test' }, world: World): Resolved {
  const whole = mayApply(item.applies, world);
  if ('unstated' in whole) return { is: 'unstated', names: whole.unstated };
  if (!whole.holds) return { is: 'not-applicable', reason: whole.reason };
  const own = world.ownFigures.get(item.id);
  if (own) {
    const one = item.cases.find((c) => {
      const test = applies(c.applies, world);
      return 'holds' in test && test.holds;
    });
    const kept = one && keptSide(own, one, item);
    const rests = ownRests(own, item);
    if (!kept) return boundsOf({ rule: one?.rule, ...own }, item, rests, world);
    const { bounds, document, basis, status } = kept;
    const both = { ...rests, document: `${rests.document}; other side ${document}`, basis, status };
    return boundsOf({ ...bounds, rule: one.rule, ...own }, item, both, world);
  }
  const reasons: string[] = [];
  for (const one of item.cases) {
    const test = applies(one.applies, world);
    if ('unstated' in test) return { is: 'unstated', names: test.unstated };
    if (!test.holds) {
      reasons.push(test.reason);
      continue;
    }
    if (one['not-applicable']) return { is: 'not-applicable', reason: one['not-applicable'] };
    if (one.figure) return { is: 'figure', figure: one.figure };
    const rests = one.rests ?? item.rests;
    const basis = weakest(rests.basis, ...basesOf(one, item));
    return boundsOf(
      one,
      item,
      {
        document: rests.document,
        edition: rests.edition,
        clause: rests.clause,
        basis,
        status: rests.status,
        readIn: rests['read-in'],
        readBy: rests['read-by'],
        on: rests.on,
      },
      world,
    );
  }
  if (item.figure) return { is: 'figure', figure: item.figure };
  return { is: 'not-applicable', reason: reasons.join('; ') || 'no case of the item applies' };
}

/** Bases of applicability and definition, where they are weaker than that of the figure. */
const basesOf = (one: Case, item: Item): Basis[] =>
  [one.applies?.basis, item.applies?.basis].filter((b) => b !== undefined);

/** What a figure of the own copy rests on, or the letter in which the certifier adopted it. */
function ownRests(own: OwnFigure, item: Item): Omit<Limit, 'unit'> {
  const agreedWith = own['agreed-with'];
  if (agreedWith !== undefined)
    return { document: own.document ?? `letter ${own.letter}`, basis: 'own-copy', agreedWith, on: own.on };
  return {
    document: own.document ?? item.rests.document,
    edition: own.edition,
    clause: own.clause,
    basis: 'own-copy',
    readBy: own['read-by'],
    on: own.on,
  };
}

/**
 * The side of the item's own bounds that a figure of the own copy does not speak of: it stays, and what the limit rests on is
 * then the weaker of both.
 */
function keptSide(own: OwnFigure, one: Case, item: Item) {
  const low = own.min === undefined && own.above === undefined ? { min: one.min, above: one.above } : {};
  const high = own.max === undefined && own.below === undefined ? { max: one.max, below: one.below } : {};
  const bounds = Object.fromEntries(
    Object.entries({ ...low, ...high }).flatMap(([key, text]) => (text === undefined ? [] : [[key, text]])),
  );
  if (Object.keys(bounds).length === 0) return undefined;
  const { document, basis, status } = one.rests ?? item.rests;
  return { bounds, document, status, basis: weakest(basis, ...basesOf(one, item)) };
}

/**
 * The limits that may hold where a fact decides between cases and its uncertainty reaches across the edge: that of the value as
 * it stands first. Mostly there is one.
 */
export function resolveAcross(item: Item & { kind: 'limit' | 'test' }, world: World): readonly Resolved[] {
  const deciding = new Set(
    item.cases.flatMap((one) => {
      const read = one.applies?.when === undefined ? undefined : expressionOf(one.applies.when);
      return read?.ok ? [...read.names] : [];
    }),
  );
  const uncertain = [...deciding].filter((name) => isUncertain(world, name));
  const shifted = uncertain.flatMap((name) => [shift(world, name, 1), shift(world, name, -1)]);
  const all = [world, ...shifted].map((w) => ({ taken: caseTaken(item, w), world: w }));
  const first = all.filter(({ taken }, i) => all.findIndex((other) => other.taken === taken) === i);
  return first.map(({ world: w }) => resolve(item, w));
}

/** The first case that applies, by its place in the list. */
function caseTaken(item: Item & { kind: 'limit' | 'test' }, world: World): number {
  return item.cases.findIndex((one) => {
    const test = applies(one.applies, world);
    return 'unstated' in test || test.holds;
  });
}

/** The ends that a figure must have before it limits: as the item says, and of a figure in its place those of its cases. */
export function sidesOf(
  item: Item & { kind: 'limit' | 'test' },
  instead: Limit | undefined,
): readonly ('min' | 'max')[] {
  if (item.sides) return item.sides;
  const has = (...keys: readonly ('min' | 'max' | 'above' | 'below')[]) =>
    item.cases.some((one) => keys.some((key) => one[key] !== undefined));
  if (!instead) return [];
  return [...(has('min', 'above') ? ['min' as const] : []), ...(has('max', 'below') ? ['max' as const] : [])];
}

/** The end that a limit lacks, in a word. */
export function lacksSide(limit: Limit, sides: readonly ('min' | 'max')[]): 'least' | 'greatest' | undefined {
  const side = sides.find((one) => limit[one] === undefined);
  return side && (side === 'min' ? 'least' : 'greatest');
}

const isUncertain = (world: World, name: string): boolean => expanded(world.value(name) ?? { parts: new Map() }) > 0;

/** The world with one fact at an end of what it may be. */
function shift(world: World, moved: string, by: 1 | -1): World {
  return {
    ...world,
    value: (name) => {
      const value = world.value(name);
      if (!value || name !== moved) return value;
      const { interval } = value;
      return { ...value, si: interval ? (by < 0 ? interval.low : interval.high) : value.si + by * expanded(value) };
    },
  };
}

type Bounds = Pick<Case, 'min' | 'max' | 'above' | 'below' | 'rule'>;

function boundsOf(
  bounds: Bounds,
  item: Item & { kind: 'limit' | 'test' },
  rests: Omit<Limit, 'unit'>,
  world: World,
): Resolved {
  const ends = [bounds.min ?? bounds.above, bounds.max ?? bounds.below];
  const [lower, upper] = ends.map((text) => (text === undefined ? undefined : calculated(text, world.value)));
  const unstated = [lower, upper].flatMap((end, i) =>
    end?.is === 'missing' ? end.names : end?.is === 'none' ? [ends[i]!] : [],
  );
  if (unstated.length > 0) return { is: 'unstated', names: unstated };
  const bound = (end: typeof lower, strict: boolean): Bound | undefined =>
    end?.is === 'number' ? boundOf(end, strict) : undefined;
  return {
    is: 'limit',
    limit: {
      ...rests,
      unit: item.unit,
      min: bound(lower, bounds.above !== undefined),
      max: bound(upper, bounds.below !== undefined),
      from: ends.find((text) => text !== undefined && /[a-z]_|[*]/.test(text)),
      rule: bounds.rule ?? item.rule,
      recommended: item.recommended === true,
    },
  };
}

function namesOf(world: World): Names {
  return (name) => {
    const value = world.value(name);
    return value && { si: value.si, dimension: unit(value.unit).dimension };
  };
}
