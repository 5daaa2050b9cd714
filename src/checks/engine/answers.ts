import type { Place } from '../../calc/value.js';
import type { Answer } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import { proves } from '../../project/proves.js';
import { leavesOpen } from '../../project/typed-texts.js';
import type { CodeItem } from '../codes/codes.js';
import { weakest } from '../codes/limit.js';
import { mayApply } from '../codes/limits.js';
import { judgeEvidence } from './evidence.js';
import { type Finding, type Judged, outcomeOf } from './finding.js';
import type { Kind } from './kind.js';
import { evidenceIn } from './proofs.js';
import { type Derived, goesAgainst, isNotApplicable, placeOfDerived, type Told } from './told.js';
import { followed } from './trails.js';
import { marksOf } from './verdict.js';
import type { Ground } from './work.js';

/** What a note says to the items of the codes: what the builder answered, and what follows from its measured facts. */
export interface Answers {
  given: Readonly<Record<string, Answer | undefined>>;
  /** Facts decide: an answer against what follows from them is contradicted. */
  derived: Readonly<Record<string, Derived | undefined>>;
}

/** A key left empty answers nothing. */
export function answersOf(note: Note, kinds: ReadonlyMap<string, Kind>): Answers {
  return { given: note.data.answers ?? {}, derived: kinds.get(note.kind)?.answers?.(note.data as never) ?? {} };
}

export const toldBy = ({ given, derived }: Answers, item: string): Derived | undefined => given[item] ?? derived[item];

/** All that a build says to one item. */
export interface Saying {
  /** Notes that raise the item. */
  notes: readonly Note[];
  /** Notes beside those whose answers, photos and documents may serve it. */
  others: readonly Note[];
  answers: (note: Note) => Answers;
  /** What facts of the build say to it. */
  told: readonly Told[];
  /** The note that the finding stands with, whichever serves it; left out, one that serves it. */
  home?: Note | undefined;
}

/**
 * An item that asks for an answer or for evidence, over all notes that raise it.
 *
 * @param parts of evidence, what each has to be shown by something
 */
export function answerItem(
  item: CodeItem & { kind: 'answer' | 'evidence' },
  saying: Saying,
  ground: Pick<Ground, 'world'>,
  parts: readonly string[] = [],
): Finding {
  const { notes, others, answers, told, home } = saying;
  const serves = (n: Note) =>
    toldBy(answers(n), item.id) !== undefined || attachedTo(n).some((e) => proves(e, item.id));
  const from = [...new Set([...notes, ...others])];
  const serving = from.filter(serves);
  const clash = contradiction(item, serving, saying);
  const note = home ?? clash?.note ?? serving.find((n) => isAgainst(item, answers(n))) ?? serving[0] ?? notes[0]!;
  const basis = weakest(item.rests.basis, item.applies?.basis ?? 'own-copy');
  const of = item.kind === 'answer' ? 'answer' : 'proof';
  const fact = told.find((t) => t.answer !== undefined);
  const own = answers(note);
  const follows = own.given[item.id] ? undefined : own.derived[item.id];
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
    place:
      (follows && placeOfDerived(note, follows)) ??
      (fact && !toldBy(own, item.id) ? fact.place : placeOfField(note, ['answers', item.id])),
    stop: item.kind === 'answer' ? item.stop === true : undefined,
  } as const;
  const tests = notes.map((n) => mayApply(item.applies, ground.world(n)));
  const test = tests.find((t) => 'holds' in t && t.holds) ?? tests.find((t) => 'unstated' in t) ?? tests[0]!;
  if ('unstated' in test)
    return {
      ...base,
      outcome: outcomeOf(of, 'missing'),
      says: `whether it applies depends on ${test.unstated.join(', ')}`,
      todo: `state ${test.unstated.join(', ')}`,
    };
  if (!test.holds) return { ...base, outcome: 'not-applicable', says: test.reason };
  if (clash)
    return { ...base, ...contradicted(clash), marks: [...new Set([...base.marks, ...(clash.fact.marks ?? [])])] };
  const word = toldBy(own, item.id) ?? (fact && { answer: fact.answer!, because: fact.because });
  const { result, ...judged } = judge(item, note, word, () =>
    judgeEvidence(
      item as CodeItem & { kind: 'evidence' },
      parts,
      from.flatMap((n) => evidenceIn(n, noTimes).map((e) => ({ ...e, from: n }))),
      word,
    ),
  );
  return { ...base, outcome: outcomeOf(of, result), ...judged };
}

/** What needs a word to the certifier: where notes differ, it is not hidden by another note's answer. */
function isAgainst(item: CodeItem, answers: Answers): boolean {
  if (item.kind !== 'answer') return false;
  const answer = toldBy(answers, item.id)?.answer;
  return item.wants !== 'stated' && (answer === 'yes' || answer === 'no') && answer !== item.wants;
}

interface Contradiction {
  note: Note;
  said: { answer: string; because?: string | undefined; place: Place };
  fact: Pick<Told, 'answer' | 'because' | 'place' | 'excludes' | 'marks' | 'todo'> & { of: 'note' | 'build' };
}

/** An answer, of any note or of `build.md`, against what its note's fields say or what the facts of the build say. */
function contradiction(item: CodeItem, serving: readonly Note[], saying: Saying): Contradiction | undefined {
  if (item.kind !== 'answer') return undefined;
  for (const note of serving) {
    const { given, derived } = saying.answers(note);
    const [typed, field] = [given[item.id], derived[item.id]];
    const place = placeOfField(note, ['answers', item.id]);
    if (typed && field && goesAgainst(typed.answer, field)) {
      const at = placeOfDerived(note, field) ?? place;
      return {
        note,
        said: { ...typed, place },
        fact: { answer: field.answer, because: field.because ?? '', place: at, of: 'note' },
      };
    }
    const said = [
      ...(typed ? [{ ...typed, place }] : []),
      ...(field ? [{ ...field, place: placeOfDerived(note, field) ?? place }] : []),
    ];
    for (const one of said) {
      const fact = saying.told.find((t) => goesAgainst(one.answer, t));
      if (fact) return { note, said: one, fact: { ...fact, of: 'build' } };
    }
  }
  for (const stated of saying.told) {
    const fact = saying.told.find((t) => stated.answer !== undefined && t !== stated && goesAgainst(stated.answer, t));
    const note = saying.notes[0];
    if (fact && note)
      return { note, said: { answer: stated.answer!, place: stated.place }, fact: { ...fact, of: 'build' } };
  }
  return undefined;
}

/** What is made of an answer that goes against a fact: both places are shown, and what explains it stays beside it. */
export function contradicted({
  said,
  fact,
}: Pick<Contradiction, 'said' | 'fact'>): Pick<Finding, 'outcome' | 'says' | 'todo' | 'answer' | 'place' | 'related'> {
  const whose = fact.of === 'note' ? "the note's own facts say" : 'the facts say';
  const follows = fact.answer === undefined ? fact.because : `\`${fact.answer}\``;
  const why = fact.answer !== undefined && fact.because ? `: ${fact.because}` : '';
  const explained = said.because ? `; explained by the builder: ${said.because}` : '';
  const apart = fact.place.file !== said.place.file || fact.place.path !== said.place.path;
  return {
    outcome: 'contradicted',
    says: `answered \`${said.answer}\`, but ${whose} ${follows}${why}${explained}`,
    todo: fact.todo ?? 'correct the answer, or the fact if that is wrong',
    answer: said.answer,
    place: said.place,
    related: apart ? { place: fact.place, says: fact.because || `the fact: \`${fact.answer}\`` } : undefined,
  };
}

const attachedTo = ({ data }: Note) => [...(data.photos ?? []), ...(data.papers ?? [])];

/** When photos were taken matters at hold points only. */
const noTimes = new Map<string, string>();

function judge(
  item: CodeItem & { kind: 'answer' | 'evidence' },
  note: Note,
  answer: Answer | undefined,
  evidence: () => Judged,
): Judged {
  if (answer && isNotApplicable(answer.answer))
    return answer.because
      ? { result: 'out', says: answer.because, answer: answer.answer }
      : {
          result: 'missing',
          says: 'answered as not applicable without a reason',
          todo: `add \`because:\` to the answer of ${item.id}`,
          answer: answer.answer,
        };
  return item.kind === 'evidence' ? evidence() : judgeAnswer(item, note, answer);
}

function judgeAnswer(item: CodeItem & { kind: 'answer' }, note: Note, answer: Answer | undefined): Judged {
  const word = answer?.answer;
  const because = answer?.because ? `; ${answer.because}` : '';
  if (word === undefined) {
    const named = attachedTo(note).find((e) => proves(e, item.id));
    return {
      result: 'missing',
      says: named ? `\`${named.file}\` is attached for it, but the item is unanswered` : 'not answered',
      todo: `answer it under \`answers:\`, as \`${item.id}: …\`${item.wants === 'stated' ? '' : ' (yes or no)'}`,
    };
  }
  if (item.wants === 'stated' && leavesOpen(word))
    return {
      result: 'missing',
      says: `answered \`${word.slice(0, 60)}\`${because}, which settles nothing`,
      todo: 'state it when it is known',
      answer: word,
    };
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
