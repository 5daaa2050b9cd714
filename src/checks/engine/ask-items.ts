import type { Answer } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Build, Note } from '../../project/model.js';
import { unit } from '../../units/unit.js';
import { calculated } from '../codes/calculated.js';
import type { CodeItem } from '../codes/codes.js';
import { weakest } from '../codes/limit.js';
import { applies } from '../codes/limits.js';
import type { Finding } from './finding.js';
import type { Kind } from './kind.js';
import { marksOf } from './verdict.js';
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

/** What the builder answered outright, and what follows from fields of the note; a key left empty answers nothing. */
function answersOf(note: Note, kinds: ReadonlyMap<string, Kind>): Readonly<Record<string, Answer | undefined>> {
  const outright = Object.entries(note.data.answers ?? {}).filter(([, answer]) => answer !== undefined);
  return { ...kinds.get(note.kind)?.answers?.(note.data as never), ...Object.fromEntries(outright) };
}
type AnswersOf = (note: Note) => Readonly<Record<string, Answer | undefined>>;

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

function answerItem(
  item: CodeItem & { kind: 'answer' | 'evidence' },
  notes: readonly Note[],
  build: Build,
  ground: Ground,
  answers: AnswersOf,
): Finding {
  const serves = (n: Note) =>
    answers(n)[item.id] !== undefined ||
    [...(n.data.photos ?? []), ...(n.data.papers ?? [])].some((e) => e.serves?.includes(item.id));
  const serving = [...notes, ...build.notes].filter(serves);
  const note = serving.find((n) => isAgainst(item, answers(n)[item.id])) ?? serving[0] ?? notes[0]!;
  const basis = weakest(item.rests.basis, item.applies?.basis ?? 'own-copy');
  const base = {
    id: `${note.name}/${item.id}`,
    note: note.name,
    subject: '',
    item: item.id,
    title: item.title,
    form: item.kind,
    basis,
    marks: marksOf({ basis, status: item.rests.status }),
    place: placeOfField(note, ['answers', item.id]),
    stop: item.kind === 'answer' ? item.stop === true : undefined,
  };
  const tests = notes.map((n) => applies(item.applies, ground.world(n)));
  const test = tests.find((t) => 'holds' in t && t.holds) ?? tests.find((t) => 'unstated' in t) ?? tests[0]!;
  if ('unstated' in test)
    return {
      ...base,
      outcome: 'missing',
      says: `whether it applies depends on ${test.unstated.join(', ')}`,
      todo: `state ${test.unstated.join(', ')}`,
    };
  if (!test.holds) return { ...base, outcome: 'notApplicable', says: test.reason };
  return { ...base, ...judge(item, note, answers(note)[item.id]) };
}

/** The answer that needs a word to the certifier: where notes differ, it is not hidden by another note's. */
function isAgainst(item: CodeItem, answer: Answer | undefined): boolean {
  return (
    item.kind === 'answer' &&
    item.wants !== 'stated' &&
    (answer?.answer === 'yes' || answer?.answer === 'no') &&
    answer.answer !== item.wants
  );
}

type Judged = Pick<Finding, 'outcome' | 'says' | 'todo' | 'answer'>;

function judge(item: CodeItem & { kind: 'answer' | 'evidence' }, note: Note, answer: Answer | undefined): Judged {
  const photo = note.data.photos?.find((p) => p.serves?.includes(item.id));
  const paper = note.data.papers?.find((p) => p.serves?.includes(item.id));
  const word = answer?.answer;
  const because = answer?.because ? `; ${answer.because}` : '';
  if (word === 'not applicable' || word === 'n/a') {
    return answer?.because
      ? { outcome: 'notApplicable', says: answer.because, answer: word }
      : {
          outcome: 'missing',
          says: 'answered as not applicable without a reason',
          todo: `add \`because:\` to the answer of ${item.id}`,
          answer: word,
        };
  }
  if (item.kind === 'evidence') {
    const shown = photo ? `photo ${photo.id ?? photo.file}` : paper ? `paper ${paper.id ?? paper.file}` : answer?.shown;
    const kindOf = photo ? 'photo' : paper ? 'paper' : answer?.shown?.split(' ')[0];
    const fits = kindOf !== undefined && (item.evidence as readonly string[]).includes(kindOf);
    if (shown && fits) return { outcome: 'conforming', says: `shown by ${shown}${because}`, answer: word ?? shown };
    const wanted = item.evidence.join(' or ');
    if (shown)
      return {
        outcome: 'missing',
        says: `shown by ${shown}, expected ${wanted}`,
        todo: `add a ${wanted} with \`serves: [${item.id}]\``,
        answer: word,
      };
    if (word)
      return {
        outcome: 'missing',
        says: `answered \`${word}\`, but nothing shows it; expected ${wanted}`,
        todo: `add a ${wanted} with \`serves: [${item.id}]\`, or \`shown:\` to the answer`,
        answer: word,
      };
    return { outcome: 'missing', says: `no ${wanted} for it`, todo: `add one with \`serves: [${item.id}]\`` };
  }
  if (word === undefined) {
    const shown = photo ?? paper;
    return {
      outcome: 'missing',
      says: shown ? `\`${shown.file}\` is named for it, but there is no answer` : 'not answered',
      todo: `add \`${item.id}: ${item.wants === 'stated' ? '…' : item.wants}\` under \`answers:\``,
    };
  }
  if (item.wants === 'stated')
    return {
      outcome: item.rests.basis === 'memory' ? 'unconfirmed' : 'conforming',
      says: `stated: ${word}${because}; recorded, not judged`,
      answer: word,
    };
  if (word === item.wants)
    return {
      outcome: item.rests.basis === 'memory' ? 'unconfirmed' : 'conforming',
      says: `answered \`${word}\`${because}`,
      answer: word,
    };
  if (word !== 'yes' && word !== 'no')
    return {
      outcome: 'missing',
      says: `answered \`${word.slice(0, 60)}\`, expected \`yes\`, \`no\` or \`not applicable\``,
      todo: 'answer with one of these and put the rest under `because:`',
      answer: word,
    };
  if (item.stop)
    return {
      outcome: 'nonconforming',
      says: `answered \`${word}\`${because}: this stops the note until the certifier has decided`,
      todo: 'stop work on it and put it to the certifier',
      answer: word,
    };
  if (item['leads-to']?.length)
    return {
      outcome: 'undecided',
      says: `answered \`${word}\`${because}; this leads to ${item['leads-to'].map((l) => l.item).join(', ')}`,
      todo: `settle the items it leads to`,
      answer: word,
    };
  return {
    outcome: 'nonconforming',
    says: `answered \`${word}\`, expected \`${item.wants}\`${because}`,
    todo: 'put it right, or ask the certifier for a concession',
    answer: word,
  };
}
