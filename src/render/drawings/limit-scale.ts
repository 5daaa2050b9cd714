import { scaleLinear } from 'd3-scale';
import type { Element } from 'hast';
import type { Interval } from '../../calc/value.js';
import { showQuantity } from '../../units/show.js';
import { drawing, widths } from './frame.js';
import { hatchDefs, hatched } from './hatch.js';
import { box, circle, ink, line } from './pen.js';
import { apart } from './place.js';
import { degrees, lineHeight, widthOf, word } from './words.js';

/** A value with its expanded uncertainty against its limits; all numbers in SI units. */
export interface LimitScale {
  name: string;
  title: string;
  value: number;
  /** Expanded uncertainty of the value, or the ends of its interval where it is simulated. */
  spread: number | Interval;
  /** Expanded uncertainty of the margin, where a limit is uncertain too: the bar is as long. */
  marginExpanded?: number | undefined;
  min?: ScaleBound | undefined;
  max?: ScaleBound | undefined;
  /** The value as read decides, whatever the bar reaches. */
  asRead?: boolean | undefined;
  /** Beyond a recommendation the scale is not closed off, only marked. */
  recommended?: boolean | undefined;
  unit: string;
  outcomeWord: string;
}

/** Strict: the limit itself is excluded. Expanded: of a limit that is itself calculated from measured facts. */
interface ScaleBound {
  si: number;
  strict?: boolean | undefined;
  expanded?: number | undefined;
}

const margin = 2;
const axis = 10.4;

/** A scale that fits into a table cell: what lies beyond a limit is hatched, the bar is value ± U. */
export function limitScale(of: LimitScale): Element {
  const { name, value, unit, min, max } = of;
  const bar = barOf(of);
  const shown = degrees(showQuantity(value, unit, of.spread));
  const limits = [
    ...(min ? [{ at: min.si, text: bound(min, min.strict ? '>' : '≥', unit), beyond: -1 as const }] : []),
    ...(max ? [{ at: max.si, text: bound(max, max.strict ? '<' : '≤', unit), beyond: 1 as const }] : []),
  ];
  const labels = limits.map((l) => widthOf(l.text));
  const stacked = limits.length > 1 && labels.reduce((a, b) => a + b, 0) + 2 > widths.cell - 2 * margin;
  const width = Math.max(
    widths.cell,
    widthOf(of.outcomeWord) * 1.1 + 2 * margin,
    ...[shown, ...limits.map((l) => l.text)].map((t) => widthOf(t) + 2 * margin + 1),
  );
  const foot = axis + 3 + lineHeight * (stacked ? 2 : 1);
  const height = foot + (of.recommended ? lineHeight : 0) + 1.2;

  const x = scaleLinear(domain([bar.low, bar.high, ...limits.map((l) => l.at)]), [margin, width - margin]);
  const within = [margin, width - margin] as const;
  const middle = (at: number, text: string) => apart([{ at, size: widthOf(text) }], 0, within)[0]!;
  const places = stacked
    ? limits.map((l) => middle(x(l.at), l.text))
    : apart(
        limits.map((l, i) => ({ at: x(l.at), size: labels[i]! })),
        2,
        within,
      );

  return drawing(
    {
      name,
      title: of.title,
      says: says(
        of,
        shown,
        limits.map((l) => l.text),
        bar,
      ),
      width,
      height,
    },
    hatchDefs(name, 'rising', 'wide'),
    word(margin, 3, of.outcomeWord, 'start', true),
    word(middle(x(value), shown), 3 + lineHeight, shown, 'middle'),
    limits.map(({ at, beyond }) => {
      const [from, to] = beyond === 1 ? [x(at), width - margin] : [margin, x(at)];
      return box([from, axis - 1.5], to - from, 3, {
        weight: 'thin',
        fill: hatched(name, of.recommended ? 'wide' : 'rising'),
      });
    }),
    line([margin, axis], [width - margin, axis], { weight: 'thin' }),
    limits.flatMap(({ at }, i) => [
      line([x(at), axis - 2], [x(at), axis + 2], {
        weight: 'outline',
        ...(of.recommended ? { dash: 'hidden' as const } : {}),
      }),
      line(
        [x(at), axis + 2],
        [clamped(x(at), places[i]!, labels[i]! / 2 - 1), axis + 3.3 + (stacked ? i * lineHeight : 0)],
        { weight: 'thin' },
      ),
    ]),
    line([x(bar.low), axis], [x(bar.high), axis], { weight: 'outline' }),
    [bar.low, bar.high].map((end) => line([x(end), axis - 1.1], [x(end), axis + 1.1], { weight: 'line' })),
    circle([x(value), axis], 0.75, { weight: 'thin', fill: ink }),
    of.recommended ? [word(margin, foot + 2.9, 'recommended limit')] : [],
    limits.map((l, i) => word(places[i]!, axis + 3 + 2.9 + (stacked ? i * lineHeight : 0), l.text, 'middle')),
  );
}

const clamped = (x: number, middle: number, half: number) => Math.max(middle - half, Math.min(middle + half, x));

function barOf({ value, spread, marginExpanded }: LimitScale): Interval {
  if (typeof spread === 'object') return { low: Math.min(spread.low, value), high: Math.max(spread.high, value) };
  const half = marginExpanded ?? spread;
  return { low: value - half, high: value + half };
}

const bound = ({ si, expanded }: ScaleBound, sign: string, unit: string) =>
  `${sign} ${degrees(showQuantity(si, unit, expanded))}`;

/** With room beyond every limit and every end of the bar. */
function domain(points: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...points), Math.max(...points)];
  const room = (high - low || Math.abs(high) || 1) * 0.16;
  return [low - room, high + room];
}

function says(of: LimitScale, shown: string, limits: readonly string[], { low, high }: Interval): string {
  const inside = (!of.min || low >= of.min.si) && (!of.max || high <= of.max.si);
  const outside = (of.min && high < of.min.si) || (of.max && low > of.max.si);
  const where = inside ? 'inside the limit' : outside ? 'beyond the limit' : 'across the limit';
  const bar = typeof of.spread === 'object' ? 'from the 2.5 % to the 97.5 % point' : 'of value ± U';
  const read = of.asRead ? ', and the value as read decides' : '';
  return `Value ${shown}; ${of.recommended ? 'recommended ' : ''}limit ${limits.join(' and ')}. The bar ${bar} lies ${where}${read}: ${of.outcomeWord}.`;
}
