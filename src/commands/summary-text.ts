import pc from 'picocolors';
import type { Build } from '../build/model.js';
import { visible } from '../build/visible.js';
import type { Evaluation } from '../checks/examine.js';
import { isOpen, outcomes, type Finding } from '../checks/finding.js';
import { outcomeSays, signs } from '../checks/outcome-words.js';
import { bySeriousness } from '../checks/seriousness.js';
import { colourOf, findingLine, findingLines } from './finding-text.js';
import { wrap } from './wrap.js';

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
export function summaryText(build: Build, { findings }: Evaluation, options: SummaryOptions): string {
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
    ...(shown.length > full ? ['', `The last ${shown.length - full} are told in a line each, and long texts are cut; --all tells everything in full.`, ''] : []),
    ...wrap(`${findings.length} findings, ${findings.filter(isOpen).length} open. Gusset certifies nothing: the certifying engineer and the registration authority decide.`, options.width, ''),
    '',
  ].join('\n');
}

/** How the findings of each note stand; what there is none of is left blank. */
function perNote(build: Build, findings: readonly Finding[], { colour }: SummaryOptions): string[] {
  const paint = pc.createColors(colour);
  const widest = Math.max(10, ...build.notes.map((n) => visible(n.name).length));
  return build.notes.map((note) => {
    const own = findings.filter((f) => f.note === note.name);
    const counts = outcomes.map((o) => {
      const count = own.filter((f) => f.outcome === o).length;
      return count === 0 ? ' '.repeat(5) : colourOf(o, paint)(`${signs[o]} ${String(count).padStart(3)}`);
    });
    return `  ${visible(note.name).padEnd(widest)}  ${counts.join('  ')}`.trimEnd();
  });
}
