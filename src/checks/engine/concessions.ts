import { stageNames } from '../../project/common.js';
import type { Build, Note } from '../../project/model.js';
import { certifiersOf, isCertifier } from './certifier.js';
import { type Finding, isOpen } from './finding.js';

type Entry = NonNullable<Note['data']['concessions']>[number];

/**
 * Puts the builder's justification and the certifier's latest word beside what is open. The outcome itself stays. A word
 * that is not the certifier's, or not of a day between the work and today, only asks.
 *
 * @param today as `2026-03-14`; left out, no day is too late
 */
export function concede(finding: Finding, build: Build, today?: string): Finding {
  if (!isOpen(finding)) return finding;
  const note = build.notes.find((n) => n.name === finding.note);
  const entry = latest(
    (note?.data.concessions ?? []).filter(
      (c) => isOf(c.item, finding) && (c.subject === undefined || c.subject === finding.subject),
    ),
  );
  if (!note || !entry) return finding;
  const { item: _, subject: __, ...concession } = entry;
  const lacking = concession.word === 'asked' ? undefined : whatIsLacking(concession, note, build, today);
  return {
    ...finding,
    concession: lacking === undefined ? concession : { ...concession, word: 'asked' },
    todo: lacking ?? (concession.word === 'accepted' ? undefined : finding.todo),
  };
}

/** Of several words the one of the latest day; of one day, or without days, the last written. */
const latest = (entries: readonly Entry[]): Entry | undefined =>
  entries.reduce<Entry | undefined>(
    (last, entry) => (last === undefined || (entry.on ?? '') >= (last.on ?? '') ? entry : last),
    undefined,
  );

/** What keeps a word from counting, as what to do about it. */
function whatIsLacking(
  { by, on }: Pick<Entry, 'by' | 'on'>,
  note: Note,
  build: Build,
  today: string | undefined,
): string | undefined {
  if (by === undefined || on === undefined)
    return "state who gave the certifier's word and on which day (`by:`, `on:`)";
  if (!isCertifier(by, build)) {
    const known = certifiersOf(build);
    return known.length === 0
      ? 'name the certifying engineer in build.md (`certifier:`): only their word counts'
      : `found the word of ${by}, expected that of the certifying engineer (${known.join(', ')}): nobody else can accept it`;
  }
  const begun = beginningOf(note) ?? on;
  if (on < begun)
    return `the word is of ${on}, before the work began on ${begun}: ask again, or correct the date that is wrong`;
  if (on > (today ?? on)) return `the word is of ${on}, which is still to come: correct the date`;
  return undefined;
}

/** The first day of the work itself. */
function beginningOf({ data }: Note): string | undefined {
  const work = stageNames.filter((s) => s !== 'as-received').flatMap((s) => data.stages?.[s] ?? []);
  return [data.started, ...work].sort()[0];
}

/** A hold point may be named as one whatever item of the code it serves. */
const isOf = (item: string, finding: Finding): boolean =>
  item === finding.item || (item === 'hold-point' && finding.point !== undefined);
