import { isSeries, type Run } from '../calc/run.js';
import type { Place, Value } from '../calc/value.js';
import { expressionOf } from '../checks/codes/expression-of.js';
import type { Evaluation } from '../checks/engine/examine.js';
import type { Finding } from '../checks/engine/finding.js';
import type { FactName } from '../project/facts.js';

/** What a finding rests on: fields of the notes and of `build.md`, and calculation sheets, the nearest first. */
export interface Trace {
  fields: Place[];
  runs: string[];
}

/** Follows the measured side through all sheets to the fields, and the limit to the facts that it is reckoned from. */
export function traceOf(finding: Finding, evaluation: Evaluation): Trace {
  const fields = new Map<string, Place>();
  const runs = new Set<string>();
  const follow = (value: Value): void => {
    const { origin } = value;
    if (origin.kind === 'note') fields.set(keyOf(origin.place), origin.place);
    else if (origin.kind === 'sheet') followRun(origin.run);
    else if (origin.kind === 'given') followNames(origin.text);
  };
  const followRun = (id: string): void => {
    const run = runsOf(evaluation).get(id);
    if (!run || runs.has(id)) return;
    runs.add(id);
    for (const input of Object.values(run.inputs)) {
      if (isSeries(input)) input.flatMap((row) => Object.values(row)).forEach(follow);
      else if (input !== undefined && typeof input !== 'string') follow(input);
    }
  };
  const followNames = (expression: string): void => {
    const read = expressionOf(expression);
    for (const name of read.ok ? read.names : []) {
      const fact = evaluation.facts.get(name as FactName);
      if (fact) fields.set(keyOf(fact.value.at), fact.value.at);
    }
  };
  if (finding.run) followRun(finding.run);
  if (finding.measured) follow(finding.measured);
  if (finding.limit?.from) followNames(finding.limit.from);
  return { fields: [...fields.values()], runs: [...runs] };
}

function runsOf(evaluation: Evaluation): ReadonlyMap<string, Run> {
  const before = byId.get(evaluation);
  if (before) return before;
  const runs = new Map(evaluation.runs.map((run) => [run.id, run]));
  byId.set(evaluation, runs);
  return runs;
}

const byId = new WeakMap<Evaluation, ReadonlyMap<string, Run>>();

/** The field of a file, as one key. */
export const keyOf = (place: Pick<Place, 'file' | 'path'>): string => `${place.file}#${place.path}`;

const known = new WeakMap<Evaluation, ReadonlyMap<string, ReadonlySet<string>>>();

/** The items that each field serves, by the key of the field; reckoned once for an evaluation. */
export function servedBy(evaluation: Evaluation): ReadonlyMap<string, ReadonlySet<string>> {
  const before = known.get(evaluation);
  if (before) return before;
  const served = new Map<string, Set<string>>();
  for (const finding of evaluation.findings) {
    for (const place of traceOf(finding, evaluation).fields) {
      const items = served.get(keyOf(place)) ?? new Set();
      served.set(keyOf(place), items.add(finding.item));
    }
  }
  known.set(evaluation, served);
  return served;
}
