import { expanded, type Value } from '../../calc/value.js';
import { type FactName, facts } from '../../project/facts.js';
import { showQuantity } from '../../units/show.js';
import type { FactClaim } from './agreement.js';
import { type Finding, outcomeOf, outcomesByClass, resultOf } from './finding.js';
import { outcomeLabel, outcomeWord } from './outcome-words.js';

/** Values that facts are supposed to have, whatever else is stated. */
export type Supposed = ReadonlyMap<FactName, Value>;

/** How often a build is evaluated at most because of facts that are disputed. */
const most = 4;

type Disputed = ReadonlyMap<FactName, readonly FactClaim[]>;
type Choice = readonly (readonly [FactName, FactClaim])[];

interface WithEach {
  findings: Finding[];
  /** Titles of the findings whose outcome depends on a disputed fact. */
  affected: (name: FactName) => string[];
}

/**
 * What rests on a disputed fact, evaluated with each value. An outcome that is the same with all of them stands; where they
 * differ the finding is inconclusive and says with which value it comes out how.
 *
 * @param found findings as they are without supposing anything
 * @param evaluate findings where facts have the supposed values
 */
export function withEach(
  disputed: Disputed,
  found: readonly Finding[],
  evaluate: (supposed: Supposed) => readonly Finding[],
): WithEach {
  if (disputed.size === 0) return { findings: [...found], affected: () => [] };
  const tried = choicesOf(disputed).map((choice) => ({
    choice,
    byId: new Map(
      evaluate(new Map(choice.map(([name, claim]) => [name, claim.value]))).map((finding) => [finding.id, finding]),
    ),
  }));
  const order = new Map(found.map((f) => [f.id, f]));
  for (const { byId } of tried) for (const [id, finding] of byId) if (!order.has(id)) order.set(id, finding);
  const merged = [...order.values()].map((finding) => ({
    finding,
    outcomes: tried.map(({ choice, byId }) => ({ choice, finding: byId.get(finding.id) })),
  }));
  const split = merged.filter(({ outcomes }) => new Set(outcomes.map((o) => wordOf(o.finding))).size > 1);
  return {
    findings: merged.map((one) =>
      split.includes(one)
        ? undecided(
            one.finding,
            one.outcomes,
            [...disputed.keys()].filter((name) => dependsOn(name, one.outcomes)),
          )
        : one.finding,
    ),
    affected: (name) => [
      ...new Set(split.filter(({ outcomes }) => dependsOn(name, outcomes)).map(({ finding }) => finding.title)),
    ],
  };
}

type Outcomes = readonly { choice: Choice; finding: Finding | undefined }[];

/** A finding that one value raises and another does not is not applicable with the other. */
const wordOf = (finding: Finding | undefined) => (finding ? outcomeWord(finding) : outcomeLabel('not-applicable'));

/** All combinations of the values; where these are too many, the least and the greatest of each fact, together. */
function choicesOf(disputed: Disputed): Choice[] {
  const each = [...disputed].map(([name, claims]) => [name, distinct(claims)] as const);
  if (each.reduce((count, [, claims]) => count * claims.length, 1) <= most) return combinations(each);
  const extremes = each.map(([name, claims]) => [name, [claims[0]!, claims.at(-1)!]] as const);
  if (2 ** extremes.length <= most) return combinations(extremes);
  return [0, 1].map((end) => extremes.map(([name, claims]) => [name, claims[end]!] as const));
}

function combinations(each: readonly (readonly [FactName, readonly FactClaim[]])[]): Choice[] {
  return each.reduce<Choice[]>(
    (choices, [name, claims]) =>
      choices.flatMap((choice) => claims.map((claim) => [...choice, [name, claim] as const])),
    [[]],
  );
}

/** One claim for each value, the least first. */
function distinct(claims: readonly FactClaim[]): FactClaim[] {
  const rising = claims.toSorted((a, b) => a.value.si - b.value.si);
  return rising.filter((claim, i) => i === 0 || claim.value.si !== rising[i - 1]!.value.si);
}

/** Whether the outcome differs between two choices that differ in this fact, and in no other where such a pair was tried. */
function dependsOn(name: FactName, outcomes: Outcomes): boolean {
  const apart = (a: Choice, b: Choice) => a.filter(([n, claim]) => claim !== b.find(([m]) => m === n)?.[1]);
  const pairs = outcomes.flatMap((a, i) =>
    outcomes.slice(i + 1).map((b) => ({ a, b, apart: apart(a.choice, b.choice) })),
  );
  const differing = pairs.filter(({ apart: names }) => names.some(([n]) => n === name));
  const alone = differing.filter(({ apart: names }) => names.length === 1);
  return (alone.length > 0 ? alone : differing).some(({ a, b }) => wordOf(a.finding) !== wordOf(b.finding));
}

/** Classes that know no inconclusive take the least favourable outcome. */
function undecided(finding: Finding, outcomes: Outcomes, dependsOn: readonly FactName[]): Finding {
  const base = outcomes.find((o) => o.finding)?.finding ?? finding;
  const unclear = 'unclear' in outcomesByClass[base.of];
  const worst = outcomes.map((o) => o.finding).toSorted((a, b) => rank(a) - rank(b))[0] ?? base;
  const { limit: _, margin: __, ...rest } = unclear ? base : worst;
  return {
    ...rest,
    outcome: unclear ? outcomeOf(base.of, 'unclear') : worst.outcome,
    says: outcomes
      .map(({ choice, finding: one }) => `with ${choice.map(says).join(' and ')}: ${wordOf(one)}`)
      .join('; '),
    onlyIf: undefined,
    settledBy: [
      {
        words: `finding out which is right of what is stated as ${dependsOn.map((name) => facts[name].says).join(' and ')}`,
      },
    ],
    todo: 'find out which is right; it is told apart under what does not agree',
  };
}

const ranked = ['against', 'contradicted', 'missing', 'partly', 'unconfirmed', 'unclear', 'met', 'out'];
const rank = (finding: Finding | undefined): number => (finding ? ranked.indexOf(resultOf(finding.outcome)) : 99);

const says = ([name, { value, note }]: Choice[number]): string =>
  `${facts[name].says} ${showQuantity(value.si, facts[name].unit, value.assumed.size > 0 ? 0 : expanded(value))} (${note ?? 'build.md'})`;
