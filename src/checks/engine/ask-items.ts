import type { Build, Note } from '../../project/model.js';
import { unit } from '../../units/unit.js';
import { calculated } from '../codes/calculated.js';
import type { CodeItem } from '../codes/codes.js';
import { agree } from './agreement.js';
import { answerItem, answersOf } from './answers.js';
import type { Finding } from './finding.js';
import { heldAgainst } from './held-against.js';
import { type Held, keyOf } from './hold-points.js';
import type { Kind } from './kind.js';
import { isMissing, type Maybe } from './maybe.js';
import { partsOfItem } from './proofs.js';
import { toldByBuild, toldByLimit } from './told.js';
import { type Done, type Ground, workOn } from './work.js';

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
    const ask: Ask = (among, others, parts) =>
      answerItem(item, { notes: among, others, answers, told: ofItem }, ground, parts);
    done.findings.push(...askEvidence(item, notes, build, kinds, served, ask));
  }
  for (const { item, notes } of raised.filter((r) => settled.has(r.item.id))) {
    if (item.kind === 'answer') done.findings = heldAgainst(item, done.findings, build);
    if (item.kind === 'limit' || item.kind === 'test') agreeWithTyped(item, notes, kinds, ground, done);
  }
}

type Ask = (among: readonly Note[], others: readonly Note[], parts: readonly string[]) => Finding;

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
      return asked.length > 0 && rest.length === 0 ? [] : [ask([note], asked.length > 0 ? build.notes : [], rest)];
    }),
    ...(together.length > 0 && !notes.some(isServed) ? [ask(together, build.notes, item.parts ?? [])] : []),
  ];
}

/** A value typed for an item that the kind of note measures by a field or a sheet of its own. */
function agreeWithTyped(
  item: Numeric,
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
): void {
  for (const note of notes) {
    const typed = note.data.measured?.[item.id];
    const own = done.findings.filter((f) => f.item === item.id && f.note === note.name);
    const values = own.flatMap((f) => (f.measured ? [f.measured] : []));
    if (!typed) continue;
    if (!sameUnit(typed.quantity.unit, item.unit)) {
      if (own.length === 0) compareIn(note, item, kinds, ground, done);
      continue;
    }
    const value = ground.valueOf(typed);
    const [first] = values;
    if (own.length === 0) compareIn(note, item, kinds, ground, done);
    else if (first && !values.some((other) => agree(value, other)))
      workOn(note, kinds.get(note.kind)!, ground, done).agree(
        item.id,
        { says: item.title, unit: item.unit },
        value,
        first,
      );
  }
}

type Numeric = CodeItem & { kind: 'limit' | 'test' };

/** Every value that was typed for an item is judged, so that the worst of several governs. */
function compareItem(
  item: Numeric,
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
): void {
  const typed = notes.filter((n) => n.data.measured?.[item.id] !== undefined);
  for (const note of typed.length > 0 ? typed : notes.slice(0, 1)) compareIn(note, item, kinds, ground, done);
}

/** A value that follows from facts stands before one that was typed for the item; where they differ it is told. */
function compareIn(note: Note, item: Numeric, kinds: ReadonlyMap<string, Kind>, ground: Ground, done: Done): void {
  const work = workOn(note, kinds.get(note.kind)!, ground, done);
  const typed = note.data.measured?.[item.id];
  const follows = item.measured === undefined ? undefined : reckon(item.measured, item.unit, note, ground);
  if (typed && !sameUnit(typed.quantity.unit, item.unit)) {
    work.state(item.id, '', 'missing', `measured in ${typed.quantity.unit}, expected a unit such as ${item.unit}`, {
      todo: `write the value in ${item.unit}`,
      path: ['measured', item.id],
    });
  } else if (typed && follows && !isMissing(follows)) {
    work.compare(item.id, '', follows);
    work.agree(item.id, { says: item.title, unit: item.unit }, ground.valueOf(typed), follows);
  } else if (typed) work.compare(item.id, '', ground.valueOf(typed));
  else if (follows) work.compare(item.id, '', follows);
  else
    work.compare(item.id, '', {
      missing: [
        {
          says: item.title,
          where: `measured.${item.id}`,
          how: `write \`measured: { ${item.id}: … ${item.unit} }\``,
          path: [],
        },
      ],
    });
}

const sameUnit = (a: string, b: string) =>
  JSON.stringify(sorted(unit(a).dimension)) === JSON.stringify(sorted(unit(b).dimension));
const sorted = (d: object) =>
  Object.entries(d)
    .filter(([, n]) => n !== 0)
    .sort();

/** The measured side of an item as an expression over facts, with the uncertainty of all of them. */
function reckon(text: string, unitText: string, note: Note, ground: Ground): Maybe {
  const number = calculated(text, ground.world(note).value);
  if (number.is === 'missing')
    return { missing: number.names.map((name) => ({ says: name.replaceAll('_', ' '), where: name, path: [] })) };
  if (number.is === 'none') return { missing: [{ says: number.reason, where: 'limits.yaml', path: [] }] };
  const { si, parts, interval, assumed } = number;
  return { si, unit: unitText, parts, interval, assumed, origin: { kind: 'given', text } };
}
