import { scaleLinear } from 'd3-scale';
import type { Element } from 'hast';
import { across } from './dimension.js';
import { drawing, widths } from './frame.js';
import { hatchDefs, hatched } from './hatch.js';
import { box, circle, ink, line, type Point, paper, path } from './pen.js';
import { apart } from './place.js';
import { em, lineHeight, type Size, sized, widthOf, word } from './words.js';

/** Masses that belong together, one under the other: an axle before and after, or its two wheels. */
export interface BarGroup {
  says: string;
  /** `before` is drawn empty, everything else hatched. */
  bars: readonly { says: string; before?: boolean | undefined; size: Size }[];
  rating?: Size | undefined;
}

/** Where the centre of mass lies between the axles. */
interface Wheelbase {
  wheelbase: Size;
  centres: readonly { says: string; before?: boolean | undefined; behindFront: Size }[];
}

export interface AxleLoads {
  name: string;
  title: string;
  groups: readonly BarGroup[];
  base?: Wheelbase | undefined;
}

const bar = 4.4;

/** Masses as bars with their ratings as marks, and the place of the centre of mass below them. */
export function axleLoads({ name, title, groups, base }: AxleLoads): Element {
  const words = Math.max(...groups.flatMap((g) => [widthOf(g.says), ...g.bars.map((b) => widthOf(b.says))]));
  const values = Math.max(...groups.flatMap((g) => g.bars.map((b) => widthOf(sized(b.size)))));
  const [left, right] = [2 + words + 3, widths.full - 2 - values - 3];
  const most = Math.max(...groups.flatMap((g) => [...g.bars.map((b) => b.size.si), g.rating?.si ?? 0]));
  const x = scaleLinear([0, (most || 1) * 1.06], [left, right]);
  const heights = groups.map((g) => lineHeight + 1.8 + g.bars.length * (bar + 1) + 3);
  const tops = heights.map((_, i) => 1 + heights.slice(0, i).reduce((a, b) => a + b, 0));
  const foot = 1 + heights.reduce((a, b) => a + b, 0);
  const height = foot + (base ? 36 + 7 * base.centres.length : 0);
  return drawing(
    { name, title, says: says(groups, base), width: widths.full, height },
    hatchDefs(name, 'rising'),
    groups.flatMap((g, i) => group(name, g, tops[i]!, x, right)),
    base ? wheelbase(base, foot) : [],
  );
}

function group(
  name: string,
  { says, bars, rating }: BarGroup,
  top: number,
  x: (si: number) => number,
  right: number,
): Element[] {
  const first = top + lineHeight + 1.8;
  const last = first + bars.length * (bar + 1) - 1;
  const mark = rating ? x(rating.si) : 0;
  const place = rating
    ? apart([{ at: mark, size: widthOf(`rating ${sized(rating)}`) }], 0, [
        2 + widthOf(says) * 1.1 + 3,
        widths.full - 2,
      ])[0]!
    : 0;
  return [
    word(2, top + em, says, 'start', true),
    line([x(0), first - 1], [x(0), last + 1], { weight: 'line' }),
    ...bars.flatMap((b, i) => {
      const y = first + i * (bar + 1);
      return [
        box([x(0), y], x(b.size.si) - x(0), bar, { weight: 'line', fill: b.before ? paper : hatched(name, 'rising') }),
        word(x(0) - 2, y + bar / 2 + 0.35 * em, b.says, 'end'),
        word(right + 3, y + bar / 2 + 0.35 * em, sized(b.size)),
      ];
    }),
    ...(rating
      ? [
          line([mark, first - 0.6], [mark, last + 1], { weight: 'outline', dash: 'hidden' }),
          word(place, top + em, `rating ${sized(rating)}`, 'middle'),
        ]
      : []),
  ];
}

/** Front to the left: two wheels, the centre of mass before and after, and the distances measured. */
function wheelbase({ wheelbase, centres }: Wheelbase, top: number): Element[] {
  const [front, rear] = [40, 130];
  const radius = 9;
  const floor = top + 4 + 2 * radius;
  const x = scaleLinear([0, wheelbase.si], [front, rear]).clamp(true);
  const dimensions = floor + 7;
  return [
    line([front - 22, floor], [rear + 22, floor], { weight: 'line' }),
    ...[front, rear].flatMap((c) => [
      circle([c, floor - radius], radius, { weight: 'outline', fill: paper }),
      circle([c, floor - radius], 1.2, { weight: 'line' }),
    ]),
    line([front + radius, floor - radius], [rear - radius, floor - radius], { weight: 'thin' }),
    word(front - radius - 2, floor - 1.5, 'front', 'end'),
    word(rear + radius + 2, floor - 1.5, 'rear'),
    ...centres.flatMap((c) => centreMark([x(c.behindFront.si), floor - radius], c.before === true)),
    ...centres.flatMap((c, i) =>
      across(
        [front, floor],
        [x(c.behindFront.si), floor - radius + 2.4],
        dimensions + 7 * i,
        `${sized(c.behindFront)}${centres.length > 1 ? ` ${c.says}` : ''}`,
        { beside: widths.full },
      ),
    ),
    ...across([front, floor], [rear, floor], dimensions + 7 * centres.length, sized(wheelbase)),
  ];
}

/** The usual sign of a centre of mass: a circle with two opposite quarters filled; with dashes where it was before. */
function centreMark([x, y]: Point, before: boolean): Element[] {
  const r = 2.4;
  const quarter = (a: 1 | -1) =>
    path(
      `M${(x).toFixed(3)},${y.toFixed(3)}L${(x + a * r).toFixed(3)},${y.toFixed(3)}A${r},${r},0,0,0,${x.toFixed(3)},${(y - a * r).toFixed(3)}Z`,
      { weight: 'thin', fill: ink },
    );
  if (before)
    return [
      circle([x, y], r, { weight: 'line', dash: 'ghost', fill: paper }),
      line([x - r, y], [x + r, y], { weight: 'thin' }),
      line([x, y - r], [x, y + r], { weight: 'thin' }),
    ];
  return [circle([x, y], r, { weight: 'line', fill: paper }), quarter(1), quarter(-1)];
}

function says(groups: readonly BarGroup[], base: Wheelbase | undefined): string {
  const each = groups.map(
    (g) =>
      `${g.says}: ${g.bars.map((b) => `${b.says} ${sized(b.size)}`).join(', ')}${g.rating ? `, rating ${sized(g.rating)}` : ''}`,
  );
  const place = base
    ? `. Wheelbase ${sized(base.wheelbase)}; centre of mass behind the front axle: ${base.centres.map((c) => `${c.says} ${sized(c.behindFront)}`).join(', ')}`
    : '';
  return `${each.join('. ')}${place}.`;
}
