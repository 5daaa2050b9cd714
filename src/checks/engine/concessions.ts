import type { Build } from '../../project/model.js';
import { type Finding, isOpen } from './finding.js';

/** Puts the builder's justification and the certifier's word beside what does not conform. The outcome itself stays. */
export function concede(finding: Finding, build: Build): Finding {
  if (!isOpen(finding)) return finding;
  const note = build.notes.find((n) => n.name === finding.note);
  const entry = note?.data.concessions?.find(
    (c) => isOf(c.item, finding) && (c.subject === undefined || c.subject === finding.subject),
  );
  if (!entry) return finding;
  const { item: _, subject: __, ...concession } = entry;
  const dated = concession.word === 'asked' || (concession.by !== undefined && concession.on !== undefined);
  return {
    ...finding,
    concession: dated ? concession : { ...concession, word: 'asked' },
    todo: dated
      ? concession.word === 'accepted'
        ? undefined
        : finding.todo
      : "state who gave the certifier's word and on which day (`by:`, `on:`)",
  };
}

/** A hold point may be named as one whatever item of the code it serves. */
const isOf = (item: string, finding: Finding): boolean =>
  item === finding.item || (item === 'hold-point' && finding.point !== undefined);
