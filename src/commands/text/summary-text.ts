import pc from 'picocolors';
import type { Doubt } from '../../checks/engine/doubts.js';
import type { Evaluation } from '../../checks/engine/examine.js';
import { type Finding, isOpen, type Outcome, outcomes } from '../../checks/engine/finding.js';
import { outcomeSays, signs } from '../../checks/engine/outcome-words.js';
import { bySeriousness } from '../../checks/engine/seriousness.js';
import { visible } from '../../platform/visible.js';
import type { Build } from '../../project/model.js';
import { padTo, widestOf, wrap } from '../terminal/wrap.js';
import { colourOf, doubtLines, doubtsHeading, findingLine, findingLines } from './finding-text.js';

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
export function summaryText(build: Build, { findings, doubts }: Evaluation, options: SummaryOptions): string {
  const paint = pc.createColors(options.colour);
  const shown = findings.filter((f) => options.all || isOpen(f)).sort(bySeriousness);
  const full = options.all ? shown.length : inFull;
  const legend = outcomes.map((o) => `${signs[o]} ${outcomeSays[o]}`.replaceAll(' ', hard)).join(`${hard} `);
  return [
    paint.bold(visible(build.data.title)),
    '',
    ...perNote(build, findings, options),
    ...wrap(legend, options.width, '  ').map((line) => line.replaceAll(hard, ' ').trimEnd()),
    '',
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
    ...wrap(
      `${findings.length} findings, ${findings.filter(isOpen).length} open. Gusset certifies nothing: the certifying engineer and the registration authority decide.`,
      options.width,
      '',
    ),
    '',
  ].join('\n');
}

/** What was probably not meant as it stands; the findings take it as it does. */
function doubtsText(doubts: readonly Doubt[], options: SummaryOptions): string[] {
  if (doubts.length === 0) return [];
  return [pc.createColors(options.colour).bold(doubtsHeading), ...doubts.flatMap((d) => doubtLines(d, options)), ''];
}

/** How the findings of each note stand; what there is none of is left blank. */
function perNote(build: Build, findings: readonly Finding[], { colour }: SummaryOptions): string[] {
  const paint = pc.createColors(colour);
  const widest = Math.max(10, widestOf(build.notes.map((n) => visible(n.name))));
  const counted = new Map<string, number>();
  const key = (note: string | undefined, outcome: Outcome) => `${outcome} ${note}`;
  for (const { note, outcome } of findings) counted.set(key(note, outcome), (counted.get(key(note, outcome)) ?? 0) + 1);
  return build.notes.map((note) => {
    const counts = outcomes.map((o) => {
      const count = counted.get(key(note.name, o));
      return count === undefined ? ' '.repeat(5) : colourOf(o, paint)(`${signs[o]} ${String(count).padStart(3)}`);
    });
    return `  ${padTo(visible(note.name), widest)}  ${counts.join('  ')}`.trimEnd();
  });
}
