import type { Note } from '../../project/model.js';
import { calculated } from '../codes/calculated.js';
import type { CodeItem } from '../codes/codes.js';
import { applies } from '../codes/limits.js';
import type { Kind } from './kind.js';
import { isMissing, type Maybe } from './maybe.js';
import { type Done, type Ground, type Work, workOn } from './work.js';

/**
 * Values that notes give under `measured:` for items of the codes that their kind has no field for. Each is judged, so that
 * the least favourable governs; where the value follows from facts, these decide and what was typed is held against it.
 */

type Numeric = CodeItem & { kind: 'limit' | 'test' };

const typedFor = (item: Numeric) => (note: Note) => note.data.measured?.[item.id] !== undefined;

/** An item that no kind measured: of the notes that raise it the first to which it applies speaks where none has a value. */
export function compareItem(
  item: Numeric,
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
): void {
  const workFor = (note: Note) => workOn(note, kinds.get(note.kind)!, ground, done);
  const typed = notes.filter(typedFor(item));
  const first = typed[0] ?? notes.find((note) => mayApply(item, note, ground)) ?? notes[0]!;
  const follows = item.measured === undefined ? undefined : reckon(item.measured, item.unit, first, ground);
  if (follows && (typed.length === 0 || !isMissing(follows))) {
    workFor(first).compare(item.id, '', follows);
    for (const note of typed)
      workFor(note).agree(item.id, { says: item.title, unit: item.unit }, typedIn(note, item, ground), follows);
    return;
  }
  for (const note of typed) compareTyped(item, workFor(note), ground);
  if (typed.length === 0)
    workFor(first).compare(item.id, '', {
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

/**
 * An item that the kinds of some notes measured: what other notes give for it is judged as well. Where the same note has
 * both, the value is refused when the build is read.
 */
export function compareBeside(
  item: Numeric,
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
): void {
  const measured = new Set(done.findings.flatMap((f) => (f.item === item.id ? [f.note] : [])));
  for (const note of notes.filter(typedFor(item)))
    if (!measured.has(note.name)) compareTyped(item, workOn(note, kinds.get(note.kind)!, ground, done), ground);
}

const mayApply = (item: Numeric, note: Note, ground: Ground): boolean => {
  const test = applies(item.applies, ground.world(note));
  return 'unstated' in test || test.holds;
};

const typedIn = (note: Note, item: Numeric, ground: Ground) => ground.valueOf(note.data.measured![item.id]!);

const compareTyped = (item: Numeric, work: Work, ground: Ground): void =>
  work.compare(item.id, '', typedIn(work.note, item, ground));

/** The measured side of an item as an expression over facts, with the uncertainty of all of them. */
function reckon(text: string, unitText: string, note: Note, ground: Ground): Maybe {
  const number = calculated(text, ground.world(note).value);
  if (number.is === 'missing')
    return { missing: number.names.map((name) => ({ says: name.replaceAll('_', ' '), where: name, path: [] })) };
  if (number.is === 'none') return { missing: [{ says: number.reason, where: 'limits.yaml', path: [] }] };
  const { si, parts, interval, assumed } = number;
  return { si, unit: unitText, parts, interval, assumed, origin: { kind: 'given', text } };
}
