import { loadCodes } from '../checks/codes/codes.js';
import type { Item } from '../checks/codes/item.js';
import { unknownItems } from '../checks/codes/known-items.js';
import { readLimits } from '../checks/codes/read-own-copy.js';
import { isCertifier } from '../checks/engine/certifier.js';
import { type Evaluation, examine, type Rules } from '../checks/engine/examine.js';
import { judgementProblems } from '../checks/engine/judgements.js';
import { proofNameProblems } from '../checks/engine/proof-names.js';
import type { TakenAt } from '../checks/engine/proofs.js';
import { queryProblems } from '../checks/engine/queries.js';
import { shownProblems, spellings } from '../checks/engine/shown.js';
import { unfitAnswers, unfitValues, unreadValues } from '../checks/engine/typed-problems.js';
import { kinds } from '../checks/kinds/index.js';
import { checkLinks } from '../project/links.js';
import { afresh } from '../project/memory.js';
import type { Build } from '../project/model.js';
import { inReadingOrder, type Problem } from '../project/problem.js';
import { type KindShapes, readBuild } from '../project/read.js';
import { daysToCome, latestDay, placesKept, unknownPeople } from '../project/typed-texts.js';
import { digestsIn } from './file-digests.js';
import { photoHeads } from './photo-heads.js';

/** What each kind of note measures. */
export const shapes: KindShapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));

/** What findings may stand under besides items of a code, and a concession may name. */
const notCodeItems = ['agreement', 'hold-point', 'hold-point-release', 'stage-order'];

/** A build with the rules that hold for it, the capture times of its photos and what was found. */
export interface Loaded {
  build: Build;
  rules: Rules;
  takenAt: TakenAt;
  evaluation: Evaluation;
  /** Photos that hold no picture: nothing is checked or printed with them, but what a commit holds of one can be compared. */
  noPictures: readonly Problem[];
  problems: [];
}

/**
 * Reads and examines a build, or gives all that keeps it from being read. Files are shown relative to `from`. With a
 * memory, only what was edited since the last time is read and worked through again.
 */
export async function load(
  folder: string,
  from = process.cwd(),
  recall = afresh,
  mayBeEmpty = false,
): Promise<Loaded | { problems: Problem[] }> {
  const codes = await loadCodes('AU');
  const { build, ...read } = readBuild(folder, shapes, from, recall, mayBeEmpty);
  if (!build) return { problems: read.problems };
  const today = latestDay();
  const limits = readLimits(build.limits, codes, {
    today,
    papers: papersOf(build),
    isCertifier: (name) => isCertifier(name, build),
  });
  const items = new Map<string, Item>([...codes.items, ...limits.items.map((i) => [i.id, i] as const)]);
  const problems = [
    ...limits.problems,
    ...checkLinks(build, recall),
    ...unknownItems(build, [...items.keys(), ...notCodeItems]),
    ...placesKept(build),
    ...daysToCome(build, today),
    ...unknownPeople(build),
    ...unfitValues(build, items),
    ...unfitAnswers(build, items),
    ...queryProblems(build, new Set(items.keys())),
    ...proofNameProblems(build, kinds, items),
  ];
  if (problems.length > 0) return { problems: inReadingOrder(problems) };
  const { figures: ownFigures, items: ownItems, confirmed } = limits;
  const rules: Rules = { codes, kinds, ownFigures, ownItems, confirmed, today, digestOf: digestsIn(build, recall) };
  const { takenAt, problems: noPictures } = await photoHeads(build, recall);
  const evaluation = examine(build, rules, takenAt, recall);
  const lost = [
    ...shownProblems(build, evaluation),
    ...unreadValues(build, items, evaluation),
    ...judgementProblems(build, evaluation.findings),
  ];
  return lost.length > 0
    ? { problems: inReadingOrder(lost) }
    : { build, rules, takenAt, evaluation, noPictures, problems: [] };
}

const papersOf = (build: Build): ReadonlySet<string> =>
  new Set(build.notes.flatMap((note) => (note.data.papers ?? []).flatMap(spellings)));
