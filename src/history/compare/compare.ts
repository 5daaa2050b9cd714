import { posix } from 'node:path';
import type { QueryData } from '../../project/queries.js';
import { type FileDifference, fileDifferences } from './files.js';
import { type LimitDifference, limitDifferences, type OutcomeDifference, outcomeDifferences } from './outcomes.js';
import type { Renames, State } from './state.js';
import { type ValueDifference, valueDifferences } from './values.js';

interface NoteDifference {
  /** Within the build; of the later state where it is there. */
  path: string;
  change: 'added' | 'removed' | 'renamed';
  from?: string;
}

interface QueryDifference {
  name: string;
  question: string;
  from?: QueryData['state'];
  to?: QueryData['state'];
}

/** What differs between two states of a build, by meaning and not by text. */
export interface Changes {
  from: Pick<State, 'label' | 'commit' | 'madeWith'>;
  to: Pick<State, 'label' | 'commit'>;
  notes: NoteDifference[];
  values: ValueDifference[];
  outcomes: OutcomeDifference[];
  limits: LimitDifference[];
  photos: FileDifference[];
  papers: FileDifference[];
  queries: QueryDifference[];
  /** What could not be compared, and why. */
  untold: string[];
}

/** Compares two states. Pure; both were examined with the same rules, so that no difference comes from the program. */
export function compare(from: State, to: State, renames: Renames): Changes {
  const idNow = byNoteNow(renames);
  const evaluated =
    from.examined && to.examined ? ([from.examined.evaluation, to.examined.evaluation] as const) : undefined;
  return {
    from: {
      label: from.label,
      commit: from.commit,
      ...(from.madeWith === undefined ? {} : { madeWith: from.madeWith }),
    },
    to: { label: to.label, commit: to.commit },
    notes: noteDifferences(from, to, renames),
    values: valueDifferences(from, to, renames),
    outcomes: evaluated ? outcomeDifferences(...evaluated, idNow) : [],
    limits: evaluated ? limitDifferences(...evaluated, idNow) : [],
    photos: fileDifferences('photos', from, to),
    papers: fileDifferences('papers', from, to),
    queries: queryDifferences(from, to),
    untold: [from, to].flatMap(untold),
  };
}

/** True where nothing that is compared differs. */
export function isSame(changes: Changes): boolean {
  const { notes, values, outcomes, limits, photos, papers, queries, untold } = changes;
  return [notes, values, outcomes, limits, photos, papers, queries, untold].every((list) => list.length === 0);
}

/** The id that a finding of the earlier state has now that its note may be called otherwise. */
function byNoteNow(renames: Renames): (id: string) => string {
  const now = new Map(
    [...renames].map(([after, before]) => [posix.basename(before, '.md'), posix.basename(after, '.md')]),
  );
  return (id) => id.replace(/^[^/]*/, (note) => now.get(note) ?? note);
}

function noteDifferences(from: State, to: State, renames: Renames): NoteDifference[] {
  const notes = ({ files }: State) => [...files.keys()].filter((path) => /^notes\/[^/]+\.md$/.test(path));
  const [before, after] = [notes(from), notes(to)];
  const moved = new Set(renames.values());
  return [
    ...after
      .filter((path) => !before.includes(path))
      .map((path): NoteDifference => {
        const old = renames.get(path);
        return old === undefined ? { path, change: 'added' } : { path, change: 'renamed', from: old };
      }),
    ...before
      .filter((path) => !after.includes(path) && !moved.has(path))
      .map((path): NoteDifference => ({ path, change: 'removed' })),
  ];
}

function queryDifferences(from: State, to: State): QueryDifference[] {
  const [before, after] = [from, to].map(
    ({ examined }) => new Map(examined?.build.queries.map((q) => [q.name, q.data])),
  ) as [Map<string, QueryData>, Map<string, QueryData>];
  return [...new Set([...after.keys(), ...before.keys()])].flatMap((name): QueryDifference[] => {
    const [a, b] = [before.get(name), after.get(name)];
    if (a?.state === b?.state && a?.answer === b?.answer) return [];
    return [{ name, question: (b ?? a)!.question, ...(a && { from: a.state }), ...(b && { to: b.state }) }];
  });
}

function untold({ label, examined, problems }: State): string[] {
  if (examined) return [];
  const [first] = problems;
  const why = first
    ? `${first.file}${first.line > 0 ? `:${first.line}` : ''}: found ${first.found}, expected ${first.expected}${problems.length > 1 ? `, and ${problems.length - 1} more` : ''}`
    : 'its notes cannot be read';
  return [
    `The notes of ${label} cannot be read by this version (${why}), so outcomes, limits and queries are not compared; values and files are.`,
  ];
}
