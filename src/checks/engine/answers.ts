import type { Answer } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import { proves } from '../../project/proves.js';
import type { CodeItem } from '../codes/codes.js';
import { weakest } from '../codes/limit.js';
import { applies } from '../codes/limits.js';
import { judgeEvidence } from './evidence.js';
import { type Finding, type Judged, outcomeOf } from './finding.js';
import type { Kind } from './kind.js';
import { evidenceIn } from './proofs.js';
import { followed } from './trails.js';
import { marksOf } from './verdict.js';
import type { Ground } from './work.js';

/** What a note says to the items of the codes: what the builder answered, and what follows from its measured facts. */
export interface Answers {
  given: Readonly<Record<string, Answer | undefined>>;
  /** Facts decide: an answer against what follows from them is contradicted. */
  derived: Readonly<Record<string, Answer | undefined>>;
}

/** A key left empty answers nothing. */
export function answersOf(note: Note, kinds: ReadonlyMap<string, Kind>): Answers {
  return { given: note.data.answers ?? {}, derived: kinds.get(note.kind)?.answers?.(note.data as never) ?? {} };
}

export const toldBy = ({ given, derived }: Answers, item: string): Answer | undefined => given[item] ?? derived[item];

/**
 * An item that asks for an answer or for evidence, over all notes that raise it.
 *
 * @param others notes beside those whose answers, photos and documents may serve it
 * @param parts of evidence, what each has to be shown by something
 */
export function answerItem(
  item: CodeItem & { kind: 'answer' | 'evidence' },
  notes: readonly Note[],
  others: readonly Note[],
  ground: Ground,
  answers: (note: Note) => Answers,
  parts: readonly string[] = [],
): Finding {
  const serves = (n: Note) =>
    toldBy(answers(n), item.id) !== undefined ||
    [...(n.data.photos ?? []), ...(n.data.papers ?? [])].some((e) => proves(e, item.id));
  const from = [...new Set([...notes, ...others])];
  const serving = from.filter(serves);
  const note = serving.find((n) => isAgainst(item, answers(n))) ?? serving[0] ?? notes[0]!;
  const basis = weakest(item.rests.basis, item.applies?.basis ?? 'own-copy');
  const of = item.kind === 'answer' ? 'answer' : 'proof';
  const base = {
    id: `${note.name}/${item.id}`,
    note: note.name,
    subject: '',
    item: item.id,
    title: item.title,
    of,
    form: item.kind,
    basis,
    marks: marksOf({ basis, status: item.rests.status }),
    place: placeOfField(note, ['answers', item.id]),
    stop: item.kind === 'answer' ? item.stop === true : undefined,
  } as const;
  const tests = notes.map((n) => applies(item.applies, ground.world(n)));
  const test = tests.find((t) => 'holds' in t && t.holds) ?? tests.find((t) => 'unstated' in t) ?? tests[0]!;
  if ('unstated' in test)
    return {
      ...base,
      outcome: outcomeOf(of, 'missing'),
      says: `whether it applies depends on ${test.unstated.join(', ')}`,
      todo: `state ${test.unstated.join(', ')}`,
    };
  if (!test.holds) return { ...base, outcome: 'not-applicable', says: test.reason };
  const { result, ...judged } = judge(item, note, answers(note), () =>
    judgeEvidence(
      item as CodeItem & { kind: 'evidence' },
      parts,
      from.flatMap((n) => evidenceIn(n, noTimes).map((e) => ({ ...e, from: n }))),
      toldBy(answers(note), item.id),
    ),
  );
  return { ...base, outcome: outcomeOf(of, result), ...judged };
}

/** What needs a word to the certifier: where notes differ, it is not hidden by another note's answer. */
function isAgainst(item: CodeItem, answers: Answers): boolean {
  if (item.kind !== 'answer') return false;
  if (isContradicted(answers, item.id)) return true;
  const answer = toldBy(answers, item.id)?.answer;
  return item.wants !== 'stated' && (answer === 'yes' || answer === 'no') && answer !== item.wants;
}

function isContradicted({ given, derived }: Answers, item: string): boolean {
  const [said, fact] = [given[item]?.answer, derived[item]?.answer];
  return said !== undefined && (fact === 'yes' || fact === 'no') && said !== fact;
}

export const isNotApplicable = (word: string | undefined): boolean => word === 'not applicable' || word === 'n/a';

/** When photos were taken matters at hold points only. */
const noTimes = new Map<string, string>();

function judge(
  item: CodeItem & { kind: 'answer' | 'evidence' },
  note: Note,
  answers: Answers,
  evidence: () => Judged,
): Judged {
  const answer = toldBy(answers, item.id);
  const word = answer?.answer;
  if (item.kind === 'answer' && isContradicted(answers, item.id)) {
    const fact = answers.derived[item.id]!;
    return {
      result: 'contradicted',
      says: `answered \`${word}\`, but the note's own facts say \`${fact.answer}\`${fact.because ? `: ${fact.because}` : ''}`,
      todo: 'correct the answer, or the fact if that is wrong',
      answer: word,
    };
  }
  if (isNotApplicable(word))
    return answer?.because
      ? { result: 'out', says: answer.because, answer: word }
      : {
          result: 'missing',
          says: 'answered as not applicable without a reason',
          todo: `add \`because:\` to the answer of ${item.id}`,
          answer: word,
        };
  return item.kind === 'evidence' ? evidence() : judgeAnswer(item, note, answer);
}

function judgeAnswer(item: CodeItem & { kind: 'answer' }, note: Note, answer: Answer | undefined): Judged {
  const word = answer?.answer;
  const because = answer?.because ? `; ${answer.because}` : '';
  if (word === undefined) {
    const named = [...(note.data.photos ?? []), ...(note.data.papers ?? [])].find((e) => proves(e, item.id));
    return {
      result: 'missing',
      says: named ? `\`${named.file}\` is attached for it, but the item is unanswered` : 'not answered',
      todo: `answer it under \`answers:\`, as \`${item.id}: …\`${item.wants === 'stated' ? '' : ' (yes or no)'}`,
    };
  }
  if (item.wants === 'stated')
    return { result: 'met', says: `stated: ${word}${because}; recorded, not judged`, answer: word };
  if (word === item.wants) return { result: 'met', says: `answered \`${word}\`${because}`, answer: word };
  if (word !== 'yes' && word !== 'no')
    return {
      result: 'missing',
      says: `answered \`${word.slice(0, 60)}\`, expected \`yes\`, \`no\` or \`not applicable\``,
      todo: 'answer with one of these and put the rest under `because:`',
      answer: word,
    };
  if (item.stop)
    return {
      result: 'against',
      says: `answered \`${word}\`${because}: this stops the note until the certifier has decided`,
      todo: 'stop work on it and put it to the certifier',
      answer: word,
    };
  if (item['leads-to']?.length)
    return {
      result: 'met',
      waits: followed,
      says: `answered \`${word}\`${because}; this leads to ${item['leads-to'].map((l) => l.item).join(', ')}`,
      todo: 'settle the items it leads to',
      answer: word,
    };
  return {
    result: 'against',
    says: `answered \`${word}\`, expected \`${item.wants}\`${because}`,
    todo: 'change what it is about, or ask the certifier for a concession',
    answer: word,
  };
}
