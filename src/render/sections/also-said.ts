import type { Element } from 'hast';
import { h } from 'hastscript';
import { type Finding, resultOf } from '../../checks/engine/finding.js';
import type { Answer } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import { anchor, joined, label, pointer } from '../anchors.js';
import { itemCode } from '../item.js';
import { shownPointers } from '../shown.js';
import type { Subject } from '../subject.js';
import { isBlank } from './answers.js';

/**
 * What a note answers or justifies that none of its findings tells: an item that another note answers for the build, that
 * does not apply or is not asked; a concession where nothing is open, or that a later word took the place of.
 */
export function alsoSaid(note: Note, own: readonly Finding[], subject: Subject): Element[] {
  const answers = Object.entries(note.data.answers ?? {}).flatMap(([item, answer]) =>
    answer && !own.some((f) => f.item === item && tells(f, answer)) ? [answerLine(item, answer, note, subject)] : [],
  );
  const concessions = (note.data.concessions ?? [])
    .filter((entry) => !own.some((f) => f.concession && isOf(f.concession, entry)))
    .map((entry) => concessionLine(entry, subject));
  const lines = [...answers, ...concessions];
  if (lines.length === 0) return [];
  return [
    h('div.also-said', [
      h('p.list-title', h('b', 'Also said in this note')),
      h(
        'ul',
        lines.map((line) => h('li', line)),
      ),
    ]),
  ];
}

/** Whether answer and reason are printed with the finding. */
function tells(f: Finding, { answer, because = '' }: Answer): boolean {
  if (f.outcome === 'not-applicable') return f.says === (because || answer);
  if ((f.form !== 'answer' && f.form !== 'evidence') || isBlank(f)) return false;
  const saysShown = f.answer === undefined || resultOf(f.outcome) === 'missing' || f.outcome === 'contradicted';
  const withReason = f.outcome !== 'contradicted' || f.says.includes(because);
  return withReason && (f.answer === answer || (saysShown && f.says.includes(answer)));
}

function answerLine(item: string, answer: Answer, note: Note, subject: Subject): (Element | string)[] {
  const finding = subject.evaluation.findings.find((f) => f.item === item);
  const why =
    finding === undefined
      ? 'not asked'
      : finding.outcome === 'not-applicable'
        ? 'does not apply'
        : finding.note === note.name
          ? undefined
          : pointer(anchor.finding(finding.id), `asked once, in ${label.note(finding.note)}`);
  const shown = answer.shown === undefined ? [] : shownPointers(answer.shown, note, subject);
  return [
    itemCode(item, subject),
    ...(why === undefined ? [] : [' (', why, ')']),
    `: ${[answer.answer, answer.because].filter(Boolean).join('; ')}`,
    ...(shown.length > 0 ? ['; shown by ', ...joined(shown)] : []),
  ];
}

type Entry = NonNullable<Note['data']['concessions']>[number];

const isOf = (told: NonNullable<Finding['concession']>, { because, condition, by, on }: Entry): boolean =>
  told.because === because && told.condition === condition && told.by === by && told.on === on;

function concessionLine(entry: Entry, subject: Subject): (Element | string)[] {
  const { item, subject: of, because, word, condition, by, on } = entry;
  return [
    itemCode(item, subject),
    ...(of === undefined ? [] : [' ', h('code', of)]),
    ` (a concession that no open finding takes): ${[because, word.replace('-', ' '), condition, by, on].filter(Boolean).join('; ')}`,
  ];
}
