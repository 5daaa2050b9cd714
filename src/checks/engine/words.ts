import { type FactName, facts } from '../../project/facts.js';
import { vehicleStateWhere } from '../../project/vehicle.js';
import { showQuantity } from '../../units/show.js';
import { differenceUnit } from '../../units/unit.js';
import { boundWords } from '../codes/bound-words.js';
import type { Limit } from '../codes/limit.js';
import type { Resolved } from '../codes/limits.js';
import type { Finding, Result } from './finding.js';
import type { Missing } from './maybe.js';
import type { Decision } from './verdict.js';

/** What a finding on a number says, and what is to be done next. */

export function notMeasured(value: Missing): Pick<Finding, 'says' | 'todo' | 'run' | 'settledBy'> & { result: Result } {
  if (value.missing.length === 0)
    return {
      result: 'unclear',
      says: `no number: ${value.reason ?? 'the sheet gives none'}`,
      todo: 'agree alternative evidence with the certifier',
      settledBy: [
        { words: `other evidence, agreed with the certifier (${value.reason ?? 'the sheet gives no number'})` },
      ],
      run: value.run,
    };
  const names = value.missing.map((m) => m.says).join('; ');
  const how = value.missing.map((m) => `${m.where}${m.how ? ` (${m.how})` : ''}`).join('; ');
  return { result: 'missing', says: `not measured: ${names}`, todo: `fill in ${how}` };
}

export const notCounted = (reasons: readonly string[]) => `the result does not count: ${reasons.join('; ')}`;
/** The conditions of a test, as what would settle its finding. */
export const conditionsWords = (reasons: readonly string[]) =>
  `the conditions of the test, stated or met (${reasons.join('; ')})`;
export const repeat = 'state these conditions where they were met, or repeat the test with them met';

/** @param instead what is said in place of how the comparison came out */
export function sentence(shown: string, limit: Limit, decision: Decision, instead: readonly string[] = []): string {
  const { margin } = decision;
  const by = showQuantity(Math.abs(margin), differenceUnit(limit.unit));
  const tails: Partial<Record<Result, string>> = {
    met: `margin ${by}`,
    against: `beyond it by ${by}`,
    unclear: `the uncertainty reaches across the limit; ${onlyIf(limit, decision)}`,
    unconfirmed: `${margin < 0 ? 'beyond' : 'inside'} a limit that is not confirmed, so no outcome`,
  };
  const tail = instead.length > 0 ? instead.join('; ') : (tails[decision.result] ?? '');
  return `measured ${shown}, expected ${boundWords(limit)}; ${tail}`;
}

/** What would have to hold of a value that is inconclusive, or what is said in place of it. */
export const onlyIfSays = (limit: Limit, decision: Decision, instead: readonly string[]): string =>
  instead.length > 0 ? instead.join('; ') : onlyIf(limit, decision);

/** What would decide in its favour. */
function onlyIf({ unit }: Limit, { conformsOnlyIf, margin, expanded: U }: Decision): string {
  if (conformsOnlyIf) return `conforms only if ${boundWords({ ...conformsOnlyIf, unit })}`;
  const apart = differenceUnit(unit);
  return `conforms only if its margin, ${showQuantity(margin, apart, U)}, is at least ${showQuantity(U, apart)}`;
}

/** What is said where it is not certain which of several limits holds, and the outcome depends on it. */
export function acrossSays(shown: string, mayHold: readonly Resolved[]): string {
  const bounds = mayHold.map((one) => (one.is === 'limit' ? boundWords(one.limit) : 'no limit that is confirmed'));
  return `measured ${shown}; it lies so near the edge between two cases of the item that either may hold, ${bounds.join(' or ')}, and the outcome depends on it`;
}

export function nextStep(result: Result, limit: Limit, item: string): string | undefined {
  if (result === 'against')
    return limit.recommended
      ? 'justify it to the certifier as a concession, or change the part'
      : 'change the part, or ask the certifier for a concession';
  if (result === 'unclear') return 'measure again with a smaller uncertainty, or move away from the limit';
  if (result === 'unconfirmed') return `read the figure in your copy and type it into limits.yaml (item ${item})`;
  return undefined;
}

export const factName = (name: string) => (name in facts ? facts[name as FactName].says : name);
export const factWhere = (name: string) =>
  name in facts ? facts[name as FactName].where : (vehicleStateWhere[name] ?? `\`${name}\``);
