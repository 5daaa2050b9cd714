import { expanded, type Value } from '../../calc/value.js';
import { unit } from '../../units/unit.js';
import { evaluate, type Names } from './evaluate.js';
import { expressionOf } from './expression-of.js';
import type { Applies, Case, Item } from './item.js';
import { type Basis, type Limit, weakest } from './limit.js';
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

/** The limit of an item that compares numbers. A figure of the own copy stands before all built-in ones. */
export function resolve(item: Item & { kind: 'limit' | 'test' }, world: World): Resolved {
  const whole = applies(item.applies, world);
  if ('unstated' in whole) return { is: 'unstated', names: whole.unstated };
  if (!whole.holds) return { is: 'not-applicable', reason: whole.reason };
  const own = world.ownFigures.get(item.id);
  if (own) {
    const kept = keptSide(own, item, world);
    return boundsOf({ ...kept?.bounds, ...own }, item, { ...ownRests(own, item), ...kept?.rests }, world);
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
    const basis = weakest(rests.basis, ...([one.applies?.basis, item.applies?.basis].filter(Boolean) as Basis[]));
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
function keptSide(own: OwnFigure, item: Item & { kind: 'limit' | 'test' }, world: World) {
  const one = item.cases.find((c) => {
    const test = applies(c.applies, world);
    return 'holds' in test && test.holds;
  });
  const low = own.min === undefined && own.above === undefined ? { min: one?.min, above: one?.above } : {};
  const high = own.max === undefined && own.below === undefined ? { max: one?.max, below: one?.below } : {};
  const bounds = Object.fromEntries(
    Object.entries({ ...low, ...high }).flatMap(([key, text]) => (text === undefined ? [] : [[key, text]])),
  );
  if (!one || Object.keys(bounds).length === 0) return undefined;
  const rests = one.rests ?? item.rests;
  return { bounds, rests: { basis: rests.basis, status: rests.status } };
}

type Bounds = Pick<Case, 'min' | 'max' | 'above' | 'below'>;

function boundsOf(
  bounds: Bounds,
  item: Item & { kind: 'limit' | 'test' },
  rests: Omit<Limit, 'unit'>,
  world: World,
): Resolved {
  const low = bounds.min ?? bounds.above;
  const high = bounds.max ?? bounds.below;
  const lower = low === undefined ? undefined : bound(low, world);
  const upper = high === undefined ? undefined : bound(high, world);
  const unstated = [lower, upper].flatMap((b) => (b && 'unstated' in b ? b.unstated : []));
  if (unstated.length > 0) return { is: 'unstated', names: unstated };
  const number = (b: typeof lower) => (b && 'si' in b ? b : undefined);
  return {
    is: 'limit',
    limit: {
      ...rests,
      unit: item.unit,
      min: number(lower)?.si,
      max: number(upper)?.si,
      open: bounds.above !== undefined || bounds.below !== undefined,
      expanded: Math.max(number(lower)?.expanded ?? 0, number(upper)?.expanded ?? 0),
      from: [low, high].find((b) => b !== undefined && /[a-z]_|[*]/.test(b)),
      recommended: item.recommended === true,
    },
  };
}

/** A bound in SI with the uncertainty of the facts it is reckoned from. */
function bound(text: string, world: World): { si: number; expanded: number } | { unstated: string[] } {
  const read = expressionOf(text);
  if (!read.ok) return { unstated: [text] };
  const at = (moved?: string, by = 0) => evaluate(read.expression, namesOf(world, moved, by));
  const middle = at();
  if (middle.is === 'missing') return { unstated: [...middle.names] };
  if (middle.is !== 'number') return { unstated: [text] };
  const parts = [...read.names].map((name) => {
    const [up, down] = [at(name, 0.5), at(name, -0.5)];
    return up.is === 'number' && down.is === 'number' ? up.si - down.si : 0;
  });
  return { si: middle.si, expanded: Math.hypot(...parts) };
}

function namesOf(world: World, moved?: string, by = 0): Names {
  return (name) => {
    const value = world.value(name);
    if (!value) return undefined;
    return { si: value.si + (name === moved ? by * expanded(value) : 0), dimension: unit(value.unit).dimension };
  };
}
