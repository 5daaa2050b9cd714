import pc from 'picocolors';
import type { Build } from '../build/model.js';
import type { Evaluation } from '../checks/examine.js';
import { isOpen, outcomes, type Finding, type Outcome } from '../checks/finding.js';
import { outcomeSays, outcomeWord, signs } from '../checks/outcome-words.js';
import { bySeriousness } from '../checks/seriousness.js';
import { visible } from '../build/visible.js';

/** The findings at a glance: a line a note, then what to do next, most serious first. */
export function summaryText(build: Build, evaluation: Evaluation, options: { all: boolean; width: number; colour: boolean }): string {
  const paint = pc.createColors(options.colour);
  const colourOf: Record<Outcome, (s: string) => string> = { conforming: paint.green, nonconforming: paint.red, undecided: paint.yellow, unconfirmed: paint.yellow, missing: paint.cyan, notApplicable: paint.dim };
  const { findings } = evaluation;
  const count = (of: readonly Finding[]) => outcomes.map((o) => colourOf[o](`${signs[o]} ${String(of.filter((f) => f.outcome === o).length).padStart(3)}`)).join('  ');
  const widest = Math.max(10, ...build.notes.map((n) => n.name.length));
  const lines = [
    paint.bold(visible(build.data.title)),
    '',
    ...build.notes.map((n) => `  ${visible(n.name).padEnd(widest)}  ${count(findings.filter((f) => f.note === n.name))}`),
    `  ${''.padEnd(widest)}  ${outcomes.map((o) => `${signs[o]} ${outcomeSays[o]}`).join('  ')}`,
    '',
  ];
  const shown = [...findings].filter((f) => options.all || isOpen(f)).sort(bySeriousness);
  for (const f of shown) {
    const where = `${f.place.file}${f.place.line > 0 ? `:${f.place.line}:${f.place.column}` : ''}`;
    lines.push(`${colourOf[f.outcome](`${signs[f.outcome]} ${outcomeWord(f)}`)}  ${paint.bold(visible(f.title))}${f.subject ? ` (${visible(f.subject)})` : ''}`);
    lines.push(...wrap(`${visible(f.says)}${f.marks.length > 0 ? ` [${f.marks.join('; ')}]` : ''}`, options.width, '    '));
    if (f.todo) lines.push(...wrap(`to do: ${visible(f.todo)}`, options.width, '    '));
    lines.push(paint.dim(`    ${visible(where)}  ${f.item}`), '');
  }
  const open = findings.filter(isOpen).length;
  lines.push(`${findings.length} findings, ${open} open.`);
  lines.push('Gusset certifies nothing: the certifying engineer and the registration authority decide.', '');
  return `${lines.join('\n')}\n`;
}

export function wrap(text: string, width: number, indent: string): string[] {
  const room = Math.max(20, width - indent.length);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line];
}
