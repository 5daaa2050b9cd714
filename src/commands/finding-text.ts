import pc from 'picocolors';
import { visible } from '../build/visible.js';
import type { Finding, Outcome } from '../checks/finding.js';
import { outcomeWord, signs } from '../checks/outcome-words.js';
import { wrap } from './wrap.js';

export type Paint = ReturnType<typeof pc.createColors>;

/** Colour follows sign and word, and is never the only sign. */
export function colourOf(outcome: Outcome, paint: Paint): (text: string) => string {
  return { conforming: paint.green, nonconforming: paint.red, undecided: paint.yellow, unconfirmed: paint.yellow, missing: paint.cyan, notApplicable: paint.dim }[outcome];
}

/** `✗ does not conform`. */
export const outcomeText = (finding: Finding, paint: Paint): string => colourOf(finding.outcome, paint)(`${signs[finding.outcome]} ${outcomeWord(finding)}`);

export const nameOf = (finding: Finding): string => `${visible(finding.title)}${finding.subject ? ` (${visible(finding.subject)})` : ''}`;

export const placeText = ({ place }: Finding): string => visible(`${place.file}${place.line > 0 ? `:${place.line}:${place.column}` : ''}`);

/** A finding in full: how it stands, why, what to do, and where. */
export function findingLines(f: Finding, { width, colour }: { width: number; colour: boolean }): string[] {
  const paint = pc.createColors(colour);
  const marks = f.marks.length > 0 ? ` [${f.marks.join('; ')}]` : '';
  return [
    `${outcomeText(f, paint)}  ${paint.bold(nameOf(f))}`,
    ...wrap(visible(f.says) + marks, width, '    '),
    ...(f.todo ? wrap(`to do: ${visible(f.todo)}`, width, '    ') : []),
    paint.dim(`    ${placeText(f)}  ${f.item}`),
  ];
}

export function findingLine(f: Finding, { colour }: { colour: boolean }): string {
  const paint = pc.createColors(colour);
  return `${outcomeText(f, paint)}  ${nameOf(f)}  ${paint.dim(placeText(f))}`;
}
