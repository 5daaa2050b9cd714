import { posix } from 'node:path';
import pc from 'picocolors';
import type { Doubt } from '../../checks/engine/doubts.js';
import type { Evaluation } from '../../checks/engine/examine.js';
import { countsByClass, type Finding, isOpen } from '../../checks/engine/finding.js';
import type { SettledTogether } from '../../checks/engine/inconclusive.js';
import { classLabels, outcomeLabel, shortClassLabels, signOf } from '../../checks/engine/outcome-words.js';
import { groupSays } from '../../checks/engine/settler-words.js';
import { bySeverity } from '../../checks/engine/severity.js';
import { visible } from '../../platform/visible.js';
import type { Build } from '../../project/model.js';
import { padTo, widestOf, wrap } from '../terminal/wrap.js';
import { colourOf, doubtLines, doubtsHeading, findingLine, findingLines, nameOf } from './finding-text.js';
import { obsoleteLine } from './obsolete-text.js';
import { unreadLines } from './unread-text.js';

export interface SummaryOptions {
  /** What conforms too, and everything in full. */
  all: boolean;
  width: number;
  colour: boolean;
}

/** A space at which no line ends. */
const hard = '\u00a0';

/** So many are told in full, the others in a line each. */
const inFull = 20;

/** The findings at a glance: a line a note, then what to do next, most serious first. */
export function summaryText(
  build: Build,
  { findings, doubts, settledTogether }: Evaluation,
  options: SummaryOptions,
): string {
  const paint = pc.createColors(options.colour);
  const shown = findings.filter((f) => options.all || isOpen(f)).sort(bySeverity);
  const full = options.all ? shown.length : inFull;
  return [
    paint.bold(visible(build.data.title)),
    '',
    ...perNote(build, findings, options),
    '',
    ...totals(findings, options),
    '',
    ...settling(settledTogether, options),
    ...shown.slice(0, full).flatMap((f) => [...findingLines(f, options.all ? options : { ...options, most: 2 }), '']),
    ...shown.slice(full).map((f) => findingLine(f, options)),
    ...(shown.length > full
      ? [
          '',
          `The last ${shown.length - full} are told in a line each, and long texts are cut; --all tells everything in full.`,
          '',
        ]
      : []),
    ...doubtsText(doubts, options),
    ...obsoleteText(build, options),
    ...unreadText(build, options),
    ...wrap(
      `${findings.length} findings, ${findings.filter(isOpen).length} open${countOf(doubts)}. Gusset certifies nothing: the certifying engineer and the registration authority decide.`,
      options.width,
      '',
    ),
    '',
  ].join('\n');
}

const countOf = ({ length }: readonly Doubt[]): string =>
  length === 0 ? '' : `; ${length} ${length === 1 ? 'value' : 'values'} to look at again`;

/** What was probably not meant as it stands; the findings take it as it does. */
function doubtsText(doubts: readonly Doubt[], options: SummaryOptions): string[] {
  if (doubts.length === 0) return [];
  return [pc.createColors(options.colour).bold(doubtsHeading), ...doubts.flatMap((d) => doubtLines(d, options)), ''];
}

/** What an earlier format had; it was read as what stands for it now. */
function obsoleteText({ obsolete, file }: Build, { width, colour }: SummaryOptions): string[] {
  if (obsolete.length === 0) return [];
  const folder = visible(posix.dirname(file));
  const heading = `Obsolete, and read as what stands for it now; \`gusset note ${folder} --update\` rewrites it`;
  return [
    ...wrap(heading, width, '').map(pc.createColors(colour).bold),
    ...obsolete.flatMap((use) => wrap(obsoleteLine(use), width - 2, '    ')),
    '',
  ];
}

/** What somebody put there and nothing reads. */
function unreadText({ unread }: Build, { width, colour }: SummaryOptions): string[] {
  if (unread.length === 0) return [];
  return [
    pc.createColors(colour).bold('Not read, and not named by a note'),
    ...unreadLines(unread).flatMap((line) => wrap(line, width - 2, '    ')),
    '',
  ];
}

/** How the findings of each note came out, by class; what there is none of is left out. */
function perNote(build: Build, findings: readonly Finding[], { colour, width }: SummaryOptions): string[] {
  const paint = pc.createColors(colour);
  const widest = Math.max(10, widestOf(build.notes.map((n) => visible(n.name))));
  const byNote = new Map<string, Finding[]>();
  for (const f of findings) byNote.set(f.note, [...(byNote.get(f.note) ?? []), f]);
  return build.notes.flatMap((note) => {
    const parts = countsByClass(byNote.get(note.name) ?? []).map(({ of, counts }) =>
      [
        shortClassLabels[of].replaceAll(' ', hard),
        ...counts
          .filter(({ count }) => count > 0)
          .map(({ outcome, count }) => colourOf(outcome, paint)(`${signOf(outcome)}${hard}${count}`)),
      ].join(hard),
    );
    const indent = ' '.repeat(widest + 4);
    return wrap(parts.join(` ·${hard}`), width, indent).map((line, i) =>
      (i === 0 ? `  ${padTo(visible(note.name), widest)}  ${line.slice(indent.length)}` : line)
        .replaceAll(hard, ' ')
        .trimEnd(),
    );
  });
}

/** So many groups are told in a day's check, the others counted. */
const groupsTold = 4;

/** What is inconclusive, under the one measurement or test that would settle most of it. */
function settling(groups: readonly SettledTogether[], { all, colour, width }: SummaryOptions): string[] {
  if (groups.length === 0) return [];
  const count = groups.reduce((sum, { findings }) => sum + findings.length, 0);
  const told = all ? groups : groups.slice(0, groupsTold);
  const more = groups.slice(told.length).reduce((sum, { findings }) => sum + findings.length, 0);
  return [
    pc.createColors(colour).bold('What would settle the inconclusive findings'),
    ...told.flatMap((group) =>
      wrap(visible(`${groupSays(group, count)}: ${group.findings.map(placedName).join('; ')}`), width - 2, '    '),
    ),
    ...(more > 0 ? [`    ${more} more, each by something else; --all tells them`] : []),
    '',
  ];
}

const placedName = (f: Finding): string => `${/^\d+/.exec(f.note)?.[0] ?? f.note} ${nameOf(f)}`;

/** The whole build, a line a class: classes are counted apart, since an answer or a picture is no measured value. */
function totals(findings: readonly Finding[], { colour, width }: SummaryOptions): string[] {
  const paint = pc.createColors(colour);
  return countsByClass(findings).flatMap(({ of, counts }) => {
    const told = counts.filter(({ count }) => count > 0);
    const text = told.map(({ outcome, count }) =>
      colourOf(outcome, paint)(`${count} ${signOf(outcome)} ${outcomeLabel(outcome)}`.replaceAll(' ', hard)),
    );
    return wrap(`${classLabels[of]}: ${text.join(', ')}`, width, '  ').map((line) => line.replaceAll(hard, ' '));
  });
}
