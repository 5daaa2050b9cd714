import type { CodeItem, Codes } from '../../../src/checks/codes/codes.js';
import { type Evaluated, evaluate } from '../../../src/checks/codes/evaluate.js';
import { readExpression } from '../../../src/checks/codes/expression.js';
import type { Applies, Case } from '../../../src/checks/codes/item.js';
import { type Basis, weakest } from '../../../src/checks/codes/limit.js';
import { facts as commonFacts } from '../../../src/project/facts.js';
import { readUnit } from '../../../src/units/unit.js';

export interface Car {
  jurisdiction?: string;
  category?: string;
  built?: string;
  states?: Readonly<Record<string, string>>;
  /** Facts in the unit that the code names for them. */
  facts?: Readonly<Record<string, number>>;
}

/** The value of an expression for a car. */
export function value(codes: Codes, text: string, car: Car): Evaluated {
  const read = readExpression(text);
  if (!read.ok) throw new Error(`${text}: ${read.problem.found}`);
  return evaluate(read.expression, (name) => {
    const given = car.facts?.[name];
    const declared: Readonly<Record<string, { unit: string }>> = commonFacts;
    const unit = readUnit((declared[name] ?? codes.facts.get(name))!.unit)!;
    return given === undefined ? undefined : { si: unit.factor.times(given).toNumber(), dimension: unit.dimension };
  });
}

/** The first case of an item that applies to a car. */
export function caseFor(codes: Codes, item: CodeItem, car: Car): Case | undefined {
  if (item.kind !== 'limit' && item.kind !== 'test') throw new Error(`${item.id} has no cases`);
  if (!applies(codes, item.applies, car)) return undefined;
  return item.cases.find((one) => applies(codes, one.applies, car));
}

function applies(codes: Codes, applies: Applies | undefined, car: Car): boolean {
  if (!applies) return true;
  const holds = applies.when === undefined ? undefined : value(codes, applies.when, car);
  return (
    (!applies.jurisdictions || applies.jurisdictions.includes(car.jurisdiction ?? '')) &&
    (!applies.categories || applies.categories.includes(car.category ?? '')) &&
    !applies['not-categories']?.includes(car.category ?? '') &&
    (applies['built-from'] === undefined || (car.built ?? '') >= applies['built-from']) &&
    (applies['built-before'] === undefined || (car.built ?? '') < applies['built-before']) &&
    Object.entries(applies.states ?? {}).every(([name, words]) => words.includes(car.states?.[name] ?? '')) &&
    (holds === undefined || (holds.is === 'truth' && holds.holds))
  );
}

/** A bound in the unit of its item. */
export function bound(
  codes: Codes,
  item: CodeItem,
  car: Car,
  side: 'min' | 'max' | 'above' | 'below',
): number | undefined {
  const text = caseFor(codes, item, car)?.[side];
  if (text === undefined || !('unit' in item)) return undefined;
  const result = value(codes, text, car);
  return result.is === 'number'
    ? Number((result.si / readUnit(item.unit)!.factor.toNumber()).toPrecision(12))
    : undefined;
}

/** What a finding on this case rests on: the weakest of figure, applicability and definition. */
export function restsOn(item: CodeItem, one: Case): Basis {
  return weakest((one.rests ?? item.rests).basis, item.applies?.basis ?? 'own-copy', one.applies?.basis ?? 'own-copy');
}
