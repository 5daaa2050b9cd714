import pc from 'picocolors';
import type { Doubt } from '../../checks/engine/doubts.js';
import { type Finding, type Outcome, resultOf } from '../../checks/engine/finding.js';
import { judgementText } from '../../checks/engine/judgements.js';
import { outcomeWord, signOf } from '../../checks/engine/outcome-words.js';
import { visible } from '../../platform/visible.js';
import { wrap } from '../terminal/wrap.js';

export type Paint = ReturnType<typeof pc.createColors>;

/** Colour follows sign and word, and is never the only sign; green is for what conforms and for nothing else. */
export function colourOf(outcome: Outcome, paint: Paint): (text: string) => string {
  const plain = (text: string): string => text;
  if (outcome === 'conforms') return paint.green;
  const colours = {
    met: plain,
    against: paint.red,
    contradicted: paint.red,
    unclear: paint.yellow,
    unconfirmed: paint.yellow,
    partly: paint.cyan,
    missing: paint.cyan,
    out: paint.dim,
  };
  return colours[resultOf(outcome)];
}

/** `✗ does not conform`. */
export const outcomeText = (finding: Finding, paint: Paint): string =>
  colourOf(finding.outcome, paint)(`${signOf(finding.outcome)} ${outcomeWord(finding)}`);

export const nameOf = (finding: Finding): string =>
  `${visible(finding.title)}${finding.subject ? ` (${visible(finding.subject)})` : ''}`;

export const placeText = ({ place }: Pick<Finding | Doubt, 'place'>): string =>
  visible(`${place.file}${place.line > 0 ? `:${place.line}:${place.column}` : ''}`);

/** A finding: how it stands, why, what to do, and where; why and what in at most so many lines each, if that is given; what would have to hold is told in full. */
export function findingLines(
  f: Finding,
  { width, colour, most = Infinity }: { width: number; colour: boolean; most?: number },
): string[] {
  const paint = pc.createColors(colour);
  const marks = f.marks.length > 0 ? ` [${f.marks.join('; ')}]` : '';
  return [
    `${outcomeText(f, paint)}  ${paint.bold(nameOf(f))}`,
    ...cut(wrap(visible(f.says) + marks, width - 2, '    '), f.onlyIf === undefined ? most : Infinity),
    ...(f.judgements ?? []).flatMap((j) => cut(wrap(visible(judgementText(j)), width - 2, '    '), most)),
    ...(f.todo ? cut(wrap(`to do: ${visible(f.todo)}`, width - 2, '    '), most) : []),
    paint.dim(`    ${placeText(f)}${f.related ? `, against ${placeText(f.related)}` : ''}  ${f.item}`),
  ];
}

const cut = (lines: readonly string[], most: number): string[] =>
  lines.length <= most ? [...lines] : lines.slice(0, most).map((line, i) => (i === most - 1 ? `${line} …` : line));

export function findingLine(f: Finding, { colour }: { colour: boolean }): string {
  const paint = pc.createColors(colour);
  return `${outcomeText(f, paint)}  ${nameOf(f)}  ${paint.dim(placeText(f))}`;
}

/** Stands over what was probably not meant as it stands. */
export const doubtsHeading = 'Values to look at again; no finding says so, they are taken as written';

/** A doubt: the value, what is usual, what may have been meant, and where. */
export function doubtLines(d: Doubt, { width, colour }: { width: number; colour: boolean }): string[] {
  return [
    ...wrap(visible(`${d.place.path}: found ${d.found}, expected ${d.expected}; ${d.hint}`), width - 2, '    '),
    pc.createColors(colour).dim(`    ${placeText(d)}`),
  ];
}
