import type { Element } from 'hast';
import { arrow, arrowhead, line, type Point } from './pen.js';
import { em, widthOf, word } from './words.js';

/** Dimension lines: two arrows between extension lines, with the size written beside. */

const overshoot = 1;
const head = 2;

/**
 * Horizontal, at height `y`; `from` and `to` are the points measured. The text stands above the line. Where it is wider
 * than the distance it stands beyond the ends of the extension lines; or beside the line, to the right where that ends
 * before `beside`, and else to the left.
 */
export function across(from: Point, to: Point, y: number, text: string, tight: Tight = 'beyond'): Element[] {
  const [a, b] = from[0] <= to[0] ? [from, to] : [to, from];
  return [...[a, b].map((p) => extension(p, [p[0], y])), ...span([a[0], y], [b[0], y]), label(a, b, y, text, tight)];
}

type Tight = 'beyond' | { beside: number };

function label(a: Point, b: Point, y: number, text: string, tight: Tight): Element {
  const middle = (a[0] + b[0]) / 2;
  if (widthOf(text) + 1 < b[0] - a[0]) return word(middle, y - 0.9, text, 'middle');
  if (tight !== 'beyond') {
    const gap = b[0] - a[0] < 2.6 * head ? 2 * head + 1 : 1.5;
    const fits = b[0] + gap + widthOf(text) <= tight.beside;
    return word(fits ? b[0] + gap : a[0] - gap, y + 0.35 * em, text, fits ? 'start' : 'end');
  }
  return word(middle, Math.min(a[1], b[1]) > y ? y - overshoot - 0.9 : y + overshoot + 0.95 * em, text, 'middle');
}

/** Vertical, at `x`; the text stands to the left of it (`side` −1) or to the right. */
export function upright(from: Point, to: Point, x: number, text: string, side: 1 | -1): Element[] {
  const [a, b] = from[1] <= to[1] ? [from, to] : [to, from];
  return [
    ...[a, b].map((p) => extension(p, [x, p[1]])),
    ...span([x, a[1]], [x, b[1]]),
    word(
      x + side * (b[1] - a[1] > 1.5 * em ? 1.2 : 2.4),
      (a[1] + b[1]) / 2 + 0.35 * em,
      text,
      side === 1 ? 'start' : 'end',
    ),
  ];
}

function extension(from: Point, to: Point): Element {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long < 0.01) return line(from, to, { weight: 'thin' });
  const at = (d: number): Point => [from[0] + ((to[0] - from[0]) / long) * d, from[1] + ((to[1] - from[1]) / long) * d];
  return line(at(Math.min(0.8, long)), at(long + overshoot), { weight: 'thin' });
}

/** Arrows point outwards between the ends, or inwards from beyond them where there is no room. */
function span(a: Point, b: Point): Element[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const towards = Math.atan2(b[1] - a[1], b[0] - a[0]);
  if (long >= 2.6 * head)
    return [line(a, b, { weight: 'thin' }), arrowhead(b, towards), arrowhead(a, towards + Math.PI)];
  const beyond = (p: Point, d: number): Point => [p[0] + d * Math.cos(towards), p[1] + d * Math.sin(towards)];
  return [line(a, b, { weight: 'thin' }), ...arrow(beyond(a, -2 * head), a), ...arrow(beyond(b, 2 * head), b)];
}

/** A leader from a text to what it names. */
export function leader(from: Point, to: Point): Element[] {
  return arrow(from, to, { weight: 'thin' }, 1.6);
}
