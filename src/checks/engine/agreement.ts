import { weighted } from '../../calc/propagate.js';
import { expanded, type Place, spread, type Value } from '../../calc/value.js';
import { type FactName, facts, holdsThroughout, type Method, type Stated } from '../../project/facts.js';
import type { Build } from '../../project/model.js';
import { showQuantity } from '../../units/show.js';
import { differenceUnit } from '../../units/unit.js';
import type { Finding } from './finding.js';
import { noVaguerThanUsual, valueOf } from './values.js';

/** One thing, stated or calculated, with where that was done. */
export interface Claim {
  value: Value;
  /** Name of the note; absent for `build.md`. */
  note?: string | undefined;
  place: Place;
}

/** A fact that the build states, or a note calculates. */
export interface FactClaim extends Claim {
  name: FactName;
}

export const claimOf = ({ name, value, note }: Stated, build: Build): FactClaim => ({
  name,
  value: valueOf(value, build),
  note: note?.name,
  place: value.at,
});

/** Facts of which not all statements agree, each with all that is stated of it; build.md comes first. */
export function disagreeing(claims: readonly FactClaim[], build: Build): Map<FactName, FactClaim[]> {
  const byName = new Map<FactName, FactClaim[]>();
  for (const claim of claims) {
    const before = byName.get(claim.name) ?? [];
    const said = before.some(({ note, value }) => note === claim.note && value.si === claim.value.si);
    if (!said && (claim.note !== undefined || holdsThroughout(claim.name))) byName.set(claim.name, [...before, claim]);
  }
  return new Map(
    [...byName].filter(([, all]) =>
      all.some((c) => !agreeIn(build, all[0]!.value, c.value, methodOf(c.name)?.expanded)),
    ),
  );
}

/**
 * Two values agree when they differ by no more than the uncertainty of their difference; what both rest on cancels out.
 *
 * @param method expanded uncertainty of the way of measuring or calculating, SI
 */
export function agree(a: Value, b: Value, method = 0): boolean {
  return Math.abs(a.si - b.si) <= Math.hypot(expanded(weighted([1, a], [-1, b])), method) * (1 + 1e-9);
}

/**
 * Whether two statements of a build agree. One that is vaguer than a usual instrument leaves it agrees with no more for it: else
 * it would be enough to state a large ± to be rid of what contradicts it.
 */
export const agreeIn = (build: Build, a: Value, b: Value, method?: number): boolean =>
  agree(noVaguerThanUsual(a, build), noVaguerThanUsual(b, build), method);

const methodOf = (name: FactName): Method | undefined => (facts[name] as { method?: Method }).method;

/** One open item for each statement that does not agree with the first, with what rests on it. */
export function agreement(
  disputed: ReadonlyMap<FactName, readonly FactClaim[]>,
  affected: (name: FactName) => readonly string[],
  build: Build,
): Finding[] {
  return [...disputed].flatMap(([name, [first, ...others]]) =>
    others
      .filter((other) => !agreeIn(build, first!.value, other.value, methodOf(name)?.expanded))
      .map((other) =>
        disagreement(name, { ...facts[name], method: methodOf(name), affects: affected(name) }, first!, other),
      ),
  );
}

export interface About {
  says: string;
  unit: string;
  /** What the way of measuring or calculating is uncertain by beside its inputs, SI, and why. */
  method?: Method | undefined;
  /** Titles of the findings whose outcome depends on which value is right. */
  affects?: readonly string[] | undefined;
}

/** The open item for two values of one thing that do not agree; it stands with the second. */
export function disagreement(
  subject: string,
  { says, unit, method, affects }: About,
  first: Claim,
  second: Claim,
): Finding {
  const shown = ({ value }: Claim) => showQuantity(value.si, unit, spread(value));
  const how = ({ value }: Claim) => (value.origin.kind === 'sheet' ? 'calculated' : 'stated');
  const apart = Math.abs(first.value.si - second.value.si);
  const note = second.note ?? first.note ?? 'build';
  const where = first.note === second.note ? '' : ` in ${first.note ?? 'build.md'}`;
  const here = first.note === second.note ? '' : ' here';
  return {
    id: [note, subject, 'agreement'].join('/'),
    note,
    subject,
    item: 'agreement',
    title: `${first.note === second.note ? 'Stated and calculated values' : 'Notes'} agree on the ${says}`,
    of: 'answer',
    outcome: 'contradicted',
    form: 'agreement',
    basis: 'own-copy',
    marks: [],
    measured: second.value,
    says: `${how(second)} as ${shown(second)}${here} and ${how(first)} as ${shown(first)}${where}: they differ by ${showQuantity(apart, differenceUnit(unit))}${method ? `, more than ${showQuantity(method.expanded, differenceUnit(unit))} for ${method.because}` : ''}${affects ? `; ${affectsSay(affects)}` : ''}`,
    todo:
      how(first) === 'stated' && how(second) === 'stated'
        ? 'find out which is right and state it once'
        : 'find out which is right: measure again what it is calculated from, or correct what is stated',
    place: second.place,
    related: { place: first.place, says: `${how(first)} as ${shown(first)} here` },
  };
}

const mostNamed = 4;

function affectsSay(titles: readonly string[]): string {
  if (titles.length === 0) return 'no outcome depends on which is right';
  const named = titles.slice(0, mostNamed).join('; ');
  const more = titles.length - mostNamed;
  return `what depends on it: ${named}${more > 0 ? `; and ${more} more` : ''}`;
}
