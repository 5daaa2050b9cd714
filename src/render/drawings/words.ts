import type { Element } from 'hast';
import { s } from 'hastscript';
import { plainTex } from '../../calc/plain-tex.js';
import { showQuantity, showToUncertainty } from '../../units/show.js';
import { ink, mm, paper } from './pen.js';

/** Text of a drawing. `_{…}` within it is set as a subscript. */

/** Size of all text in mm: 8 pt, so that a drawing shrunk by a tenth still has 7 pt. */
export const em = 2.82;
export const lineHeight = 3.7;
const small = 0.75;

/** A number as the formula names it, in SI units, to be shown in `unit`. */
export interface Size {
  /** Such as `t₁` or `e_{A}`. */
  symbol: string;
  si: number;
  unit: string;
  /** Expanded uncertainty: it decides to how many places the number is shown. */
  expanded?: number | undefined;
}

/** `θ₁ = 2.5°`: the number has the places that it has in its sheet. */
export const sized = (size: Size): string => `${size.symbol} = ${amount(size)}`;

export function amount({ si, unit, expanded }: Omit<Size, 'symbol'>): string {
  return degrees(expanded === undefined ? showQuantity(si, unit) : showToUncertainty(si, unit, expanded));
}

/** `4.0 ± 0.1°` rather than `deg`. */
export const degrees = (text: string): string => text.replace(/ deg$/, '°');

/** The symbol of a sheet as text: `\theta_1` becomes `θ₁`, `e_A` becomes `e_{A}`. */
export function symbolText(tex: string): string {
  return tex
    .replaceAll(/\^\*/g, '*')
    .split(/(_\{[^}]*\}|_[A-Za-z0-9])/)
    .map((part) => {
      if (!part.startsWith('_')) return plainTex(part).replaceAll("'", '′').replaceAll(' ', '');
      const below = plainTex(part.slice(1).replace(/^\{(.*)\}$/, '$1'));
      return /^\d+$/.test(below) ? [...below].map((d) => '₀₁₂₃₄₅₆₇₈₉'[Number(d)]).join('') : `_{${below}}`;
    })
    .join('');
}

/** For readers who hear the drawing: `e_{A}` becomes `e_A`. */
export const spoken = (text: string): string => text.replaceAll(/_\{([^}]*)\}/g, '_$1');

/** Width of a text in mm, estimated and rather too wide than too narrow. */
export function widthOf(text: string): number {
  return runs(text).reduce(
    (sum, { text, below }) => sum + [...text].reduce((w, c) => w + advance(c), 0) * em * (below ? small : 1),
    0,
  );
}

function advance(c: string): number {
  if (/\p{M}/u.test(c)) return 0;
  if (/[ .,:;·'′|!iIjltfr()[\]/°-]/.test(c)) return 0.55;
  if (/[mwMW%@]/.test(c)) return 0.94;
  return /\p{Lu}/u.test(c) ? 0.72 : 0.6;
}

function runs(text: string): { text: string; below: boolean }[] {
  return text
    .split(/(_\{[^}]*\})/)
    .filter((t) => t !== '')
    .map((t) => (t.startsWith('_{') ? { text: t.slice(2, -1), below: true } : { text: t, below: false }));
}

/** A name that somebody chose, cut where it is wider than its place. */
export function shortened(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && widthOf(`${letters.join('')}…`) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** Parts joined by `; ` into as few lines as fit a width. */
export function inLines(parts: readonly string[], width: number): string[] {
  return parts.reduce<string[]>((lines, part) => {
    const last = lines.at(-1);
    const joined = `${last}; ${part}`;
    return last === undefined || widthOf(joined) > width ? [...lines, part] : [...lines.slice(0, -1), joined];
  }, []);
}

export type Anchor = 'start' | 'middle' | 'end';

/** One line of text with its baseline at y. Filled only: a stroked rim would enter the PDF as a second, nameless text. */
export function word(x: number, y: number, text: string, anchor: Anchor = 'start', bold = false): Element {
  const parts = runs(text);
  return s(
    'text',
    {
      x: mm(x),
      y: mm(y),
      textAnchor: anchor,
      fontSize: em,
      fill: ink,
      stroke: 'none',
      ...(bold ? { fontWeight: 700 } : {}),
    },
    parts.map(({ text, below }, i) => {
      if (!below && !parts[i - 1]?.below) return text;
      const shift = below ? 0.22 * em : -0.22 * em;
      return s('tspan', { dy: mm(shift), ...(below ? { fontSize: mm(em * small) } : {}) }, text);
    }),
  );
}

/** The same on a piece of paper that covers the lines behind it. */
export function plate(x: number, y: number, text: string, anchor: Anchor = 'start'): Element[] {
  const { left, top, right, bottom } = roomOf(x, y, text, anchor);
  const behind = {
    x: mm(left),
    y: mm(top),
    width: mm(right - left),
    height: mm(bottom - top),
    fill: paper,
    stroke: 'none',
  };
  return [s('rect', behind), word(x, y, text, anchor)];
}

/** Room on the page. */
export interface Room {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export function roomOf(x: number, y: number, text: string, anchor: Anchor = 'start'): Room {
  const width = widthOf(text);
  const left = x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
  return { left, top: y - 0.8 * em, right: left + width, bottom: y + 0.35 * em };
}
