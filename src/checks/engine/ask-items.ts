import type { Build, Note } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import { answerItem, answersOf } from './answers.js';
import type { Finding } from './finding.js';
import { heldAgainst } from './held-against.js';
import { type Held, keyOf } from './hold-points.js';
import type { Kind } from './kind.js';
import { partsOfItem } from './proofs.js';
import { toldByBuild, toldByLimit } from './told.js';
import { compareBeside, compareItem } from './typed-values.js';
import type { Done, Ground } from './work.js';

/**
 * Items that the kinds themselves did not deal with: answers, evidence, and limits whose value stands under `measured`
 * or is reckoned by an expression. An item that several notes raise is asked once, of the first that answers it; it applies
 * where it applies to one of them. What a note answers to an item that its facts have settled is held against these facts.
 */
export function askItems(
  raised: readonly { item: CodeItem; notes: Note[] }[],
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
  served: Held['served'],
): void {
  const settled = new Set(done.findings.map((f) => f.item));
  const known = new Map(build.notes.map((note) => [note, answersOf(note, kinds)]));
  const answers = (note: Note) => known.get(note)!;
  const open = raised.filter(({ item }) => !settled.has(item.id));
  for (const { item, notes } of open)
    if (item.kind === 'limit' || item.kind === 'test') compareItem(item, notes, kinds, ground, done);
  const told = [
    ...done.told,
    ...done.findings.flatMap((f) => {
      const item = ground.items.get(f.item);
      return item ? toldByLimit(f, item) : [];
    }),
  ];
  for (const { item, notes } of open) {
    if (item.kind === 'limit' || item.kind === 'test') continue;
    const ofItem = [...toldByBuild(item, build), ...told.filter((t) => t.item === item.id)];
    if (item.kind === 'answer') {
      done.findings.push(answerItem(item, { notes, others: build.notes, answers, told: ofItem }, ground));
      continue;
    }
    const ask: Ask = (among, others, parts, home) =>
      answerItem(item, { notes: among, others, answers, told: ofItem, home }, ground, parts);
    done.findings.push(...askEvidence(item, notes, build, kinds, served, ask));
  }
  for (const { item, notes } of raised.filter((r) => settled.has(r.item.id))) {
    if (item.kind === 'answer') done.findings = heldAgainst(item, done.findings, build);
    if (item.kind === 'limit' || item.kind === 'test') compareBeside(item, notes, kinds, ground, done);
  }
}

type Ask = (among: readonly Note[], others: readonly Note[], parts: readonly string[], home?: Note) => Finding;

/**
 * Evidence is asked of each note by itself where its own lists make the parts, of the other notes together. What hold points
 * of a note ask for is asked there, and what they leave of it once.
 */
function askEvidence(
  item: CodeItem & { kind: 'evidence' },
  notes: readonly Note[],
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
  served: Held['served'],
  ask: Ask,
): Finding[] {
  const partsIn = (note: Note) => partsOfItem(item, kinds.get(note.kind), note);
  const isServed = (note: Note) => served.has(keyOf(note, item.id));
  const isAlone = (note: Note) =>
    isServed(note) || kinds.get(note.kind)!.proofParts?.(note.data as never)[item.id] !== undefined;
  const together = notes.filter((note) => !isAlone(note));
  return [
    ...notes.filter(isAlone).flatMap((note): Finding[] => {
      const asked = served.get(keyOf(note, item.id)) ?? [];
      if (asked === 'all') return [];
      const rest = partsIn(note).filter((part) => !asked.includes(part));
      return asked.length > 0 && rest.length === 0
        ? []
        : [ask([note], asked.length > 0 ? build.notes : [], rest, note)];
    }),
    ...(together.length > 0 && !notes.some(isServed) ? [ask(together, build.notes, item.parts ?? [])] : []),
  ];
}
