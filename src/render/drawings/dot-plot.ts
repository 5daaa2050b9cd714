import { scaleLinear } from 'd3-scale';
import type { Element } from 'hast';
import type { Interval } from '../../calc/value.js';
import { showNumber, showQuantity } from '../../units/show.js';
import { toUnit, unit as unitOf } from '../../units/unit.js';
import { legible } from './chart.js';
import { drawing, widths } from './frame.js';
import { hatchDefs, hatched } from './hatch.js';
import { box, circle, ink, line } from './pen.js';
import { apart } from './place.js';
import { amount, degrees, lineHeight, shortened, widthOf, word } from './words.js';

/** Readings of one kind, each against the same window; numbers in SI units. */
export interface DotPlot {
  name: string;
  title: string;
  /** What is read: `oil clearance`, or as the formula names it, `c_{i}`. */
  says: string;
  unit: string;
  /** Spread: the expanded uncertainty, or the ends of the interval of what is simulated. */
  readings: readonly { label: string; si: number; spread?: number | Interval | undefined }[];
  /** Strict: the limit itself is excluded. */
  min?: { si: number; strict?: boolean } | undefined;
  max?: { si: number; strict?: boolean } | undefined;
}

const row = 4.4;

/** One row a reading: a dot with what it may be on a common scale, what lies beyond the window hatched. */
export function dotPlot({ name, title, says: what, unit, readings, min, max }: DotPlot): Element {
  const values = readings.map(({ si, spread }) =>
    typeof spread === 'object' ? degrees(showQuantity(si, unit, spread)) : amount({ si, unit, expanded: spread }),
  );
  const labels = readings.map((r) => shortened(r.label, 60));
  const left = 2 + Math.max(...labels.map(widthOf)) + 3;
  const column = Math.max(...values.map(widthOf));
  const axisName = unitOf(unit).text === '1' ? what : `${what} in ${degrees(` ${unitOf(unit).text}`).trim()}`;
  const width = Math.max(widths.half, left + column + 45, widthOf(axisName) + 4);
  const right = width - 3 - column - 2;
  const top = 2 + lineHeight;
  const bottom = top + row * readings.length + 1;

  const ends = readings.flatMap(endsOf);
  const points = [...ends, ...[min, max].flatMap((bound) => (bound ? [bound.si] : []))];
  const [low, high] = [Math.min(...points), Math.max(...points)];
  const room = (high - low || Math.abs(high) || 1) * 0.12;
  const x = scaleLinear([toUnit(low - room, unit), toUnit(high + room, unit)], [left, right]);
  const at = (si: number) => x(toUnit(si, unit));
  const limits = [
    ...(min ? [{ si: min.si, sign: min.strict ? '>' : '≥' }] : []),
    ...(max ? [{ si: max.si, sign: max.strict ? '<' : '≤' }] : []),
  ];
  const limitTexts = limits.map((l) => `${l.sign} ${degrees(showQuantity(l.si, unit))}`);
  const limitPlaces = apart(
    limits.map((l, i) => ({ at: at(l.si), size: widthOf(limitTexts[i]!) })),
    2,
    [2, width - 2],
  );
  const ticks = x.ticks(4);

  return drawing(
    { name, title, says: says({ readings, limitTexts, values, what }), width, height: bottom + 2 * lineHeight + 3 },
    hatchDefs(name, 'rising'),
    ...(!min
      ? []
      : [box([left, top], at(min.si) - left, bottom - top, { weight: 'thin', fill: hatched(name, 'rising') })]),
    ...(!max
      ? []
      : [box([at(max.si), top], right - at(max.si), bottom - top, { weight: 'thin', fill: hatched(name, 'rising') })]),
    limits.flatMap((l, i) => [
      line([at(l.si), top - 0.8], [at(l.si), bottom], { weight: 'outline' }),
      word(limitPlaces[i]!, top - 1.4, limitTexts[i]!, 'middle'),
    ]),
    readings.flatMap((r, i) => {
      const y = top + row * (i + 0.5) + 0.5;
      const [from, to] = endsOf(r).map(at) as [number, number];
      return [
        line([left, y], [right, y], { weight: 'thin', dash: 'ghost' }),
        line([from, y], [to, y], { weight: 'line' }),
        ...[from, to].map((end) => line([end, y - 0.8], [end, y + 0.8], { weight: 'line' })),
        circle([at(r.si), y], 0.8, { weight: 'thin', fill: ink }),
        word(left - 2, y + 1, labels[i]!, 'end'),
        word(width - 2, y + 1, values[i]!, 'end'),
      ];
    }),
    line([left, bottom], [right, bottom], { weight: 'line' }),
    legible(
      ticks.map(x),
      ticks.map((t) => showNumber(t)),
    ).flatMap(([at, text]) => [
      line([at, bottom], [at, bottom + 1], { weight: 'thin' }),
      word(at, bottom + 1 + lineHeight * 0.8, text, 'middle'),
    ]),
    word(
      apart([{ at: (left + right) / 2, size: widthOf(axisName) }], 0, [2, width - 2])[0]!,
      bottom + 1 + lineHeight * 1.8,
      axisName,
      'middle',
    ),
  );
}

const endsOf = ({ si, spread = 0 }: DotPlot['readings'][number]): [number, number] =>
  typeof spread === 'object' ? [spread.low, spread.high] : [si - spread, si + spread];

function says(of: {
  readings: DotPlot['readings'];
  limitTexts: readonly string[];
  values: readonly string[];
  what: string;
}): string {
  const window = of.limitTexts.length > 0 ? ` Window: ${of.limitTexts.join(' and ')}.` : '';
  return `${of.what}: ${of.readings.map((r, i) => `${r.label} ${of.values[i]}`).join('; ')}.${window}`;
}
