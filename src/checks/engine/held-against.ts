import { placeOfField } from '../../project/find-field.js';
import type { Build } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import { contradicted } from './answers.js';
import { type Finding, resultOf } from './finding.js';
import { goesAgainst } from './told.js';

/**
 * Findings of an item that a kind settled from the facts of its notes, with what notes answer to it. An answer against the
 * facts is contradicted, on the least favourable of them; one that agrees is shown beside.
 */
export function heldAgainst(
  item: CodeItem & { kind: 'answer' },
  findings: readonly Finding[],
  build: Build,
): Finding[] {
  const answered = build.notes.flatMap((note) => {
    const answer = note.data.answers?.[item.id];
    return answer ? [{ ...answer, place: placeOfField(note, ['answers', item.id]) }] : [];
  });
  if (answered.length === 0 || item.wants === 'stated') return [...findings];
  const own = findings.filter((f) => f.item === item.id);
  const words = own.map((f) => wordOf(f, item.wants));
  const worst = Math.max(
    words.findIndex((word) => word !== undefined && word !== item.wants && word !== 'not applicable'),
    words.every((word) => word === words[0]) ? 0 : -1,
  );
  const decided = own[worst];
  if (!decided) return [...findings];
  const fact = { answer: words[worst], because: decided.says, place: decided.place, of: 'note' as const };
  const against = answered.find((said) => goesAgainst(said.answer, fact));
  return findings.map((f) => {
    if (f !== decided) return f;
    if (against)
      return { ...f, waits: undefined, ...contradicted({ said: against, fact }), ...(f.todo ? { todo: f.todo } : {}) };
    const because = answered.map((said) => said.because).filter(Boolean);
    return because.length > 0 ? { ...f, says: `${f.says}; explained by the builder: ${because.join('; ')}` } : f;
  });
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
