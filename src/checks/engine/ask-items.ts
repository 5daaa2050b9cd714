import type { Build, Note } from '../../project/model.js';
import { unit } from '../../units/unit.js';
import { calculated } from '../codes/calculated.js';
import type { CodeItem } from '../codes/codes.js';
import { answerItem, answersOf } from './answers.js';
import type { Finding } from './finding.js';
import type { Kind } from './kind.js';
import { type Done, type Ground, type Maybe, workOn } from './work.js';

/**
 * Items that the kinds themselves did not deal with: answers, evidence, and limits whose value stands under `measured`
 * or is reckoned by an expression. An item that several notes raise is asked once, of the first that answers it; it applies
 * where it applies to one of them.
 */
export function askItems(
  raised: readonly { item: CodeItem; notes: Note[] }[],
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  done: Done,
): Finding[] {
  const settled = new Set(done.findings.map((f) => f.item));
  const known = new Map(build.notes.map((note) => [note, answersOf(note, kinds)]));
  return raised.flatMap(({ item, notes }): Finding[] => {
    if (settled.has(item.id)) return [];
    if (item.kind === 'limit' || item.kind === 'test') return compareItem(item, notes, kinds, ground);
    return [answerItem(item, notes, build, ground, (note) => known.get(note)!)];
  });
}

type Numeric = CodeItem & { kind: 'limit' | 'test' };

function compareItem(
  item: Numeric,
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
): Finding[] {
  const note = notes.find((n) => n.data.measured?.[item.id] !== undefined) ?? notes[0]!;
  const apart: Done = { findings: [], runs: [] };
  const work = workOn(note, kinds.get(note.kind)!, ground, apart);
  const typed = note.data.measured?.[item.id];
  if (typed && !sameUnit(typed.quantity.unit, item.unit)) {
    work.state(item.id, '', 'missing', `measured in ${typed.quantity.unit}, expected a unit such as ${item.unit}`, {
      todo: `write the value in ${item.unit}`,
      path: ['measured', item.id],
    });
  } else if (typed) work.compare(item.id, '', ground.valueOf(typed));
  else if (item.measured) work.compare(item.id, '', reckon(item.measured, item.unit, note, ground));
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
  return apart.findings;
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
