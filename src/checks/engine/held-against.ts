import { placeOfField } from '../../project/find-field.js';
import type { Build } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import { contradicted } from './answers.js';
import { type Finding, resultOf } from './finding.js';
import { goesAgainst, isNotApplicable, saysNo } from './told.js';

/**
 * Findings of an item that a kind settled from the facts of a note, with what that note answers to it. An answer against the
 * facts is contradicted, on the least favourable of them; one that agrees is shown beside. Notes speak for their own work.
 */
export function heldAgainst(
  item: CodeItem & { kind: 'answer' },
  findings: readonly Finding[],
  build: Build,
): Finding[] {
  if (item.wants === 'stated') return [...findings];
  const changed = new Map<Finding, Finding>();
  for (const note of build.notes) {
    const answer = note.data.answers?.[item.id];
    const all = findings.filter((f) => f.item === item.id);
    const own = all.filter((f) => f.note === note.name);
    // A note without facts of its own speaks of those of the others where it says what is not wanted.
    const about = own.length > 0 || !isUnwanted(answer?.answer, item.wants) ? own : all;
    const decided = decidedBy(about, item.wants);
    if (!answer || !decided) continue;
    const fact = {
      answer: wordOf(decided, item.wants),
      because: decided.says,
      place: decided.place,
      of: 'note',
    } as const;
    const said = { ...answer, place: placeOfField(note, ['answers', item.id]) };
    if (goesAgainst(said.answer, fact)) {
      const { todo, ...told } = contradicted({ said, fact });
      changed.set(decided, { ...decided, waits: undefined, ...told, todo: decided.todo ?? todo });
    } else if (said.because)
      changed.set(decided, { ...decided, says: `${decided.says}; explained by the builder: ${said.because}` });
  }
  return findings.map((f) => changed.get(f) ?? f);
}

const isUnwanted = (said: string | undefined, wants: string): boolean =>
  said !== undefined && !isNotApplicable(said) && (wants === 'yes' ? saysNo(said) : said === 'yes');

/** The finding that decides: one that speaks against, or the first where all say the same. */
function decidedBy(own: readonly Finding[], wants: string): Finding | undefined {
  const words = own.map((f) => wordOf(f, wants));
  const against = words.findIndex((word) => word !== undefined && word !== wants && word !== 'not applicable');
  if (against !== -1) return own[against];
  return words.every((word) => word !== undefined && word === words[0]) ? own[0] : undefined;
}

/** The answer that a finding amounts to; absent where the facts do not decide. */
function wordOf({ outcome, waits, answer }: Finding, wants: string): string | undefined {
  if (waits !== undefined) return undefined;
  if (answer === 'yes' || answer === 'no') return answer;
  const result = resultOf(outcome);
  if (result === 'met') return wants;
  if (result === 'against') return wants === 'yes' ? 'no' : 'yes';
  return result === 'out' ? 'not applicable' : undefined;
}
