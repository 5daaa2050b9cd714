import type { Element } from 'hast';
import { above, below, chart, leftOf } from './chart.js';
import { drawing, widths } from './frame.js';
import { circle, ink, line, paper } from './pen.js';
import { placer } from './place.js';
import { degrees, sized, type Size } from './words.js';
import { toUnit, unit } from '../../units/unit.js';

/** A twist test: pairs of moment and twist, and the line through them. SI units. */
export interface TwistTest {
  name: string;
  title: string;
  /** Symbols and units of both axes. */
  moment: { symbol: string; unit: string };
  twist: { symbol: string; unit: string };
  points: readonly { moment: number; twist: number; unloading?: boolean | undefined }[];
  /** Slope of the regression line, moment over twist. */
  stiffness: Size;
  /** Moment of the line at no twist. */
  intercept?: number | undefined;
}

/** Moment over twist with the regression line; readings while the load is taken off are hollow. */
export function twistTest({ name, title, moment, twist, points, stiffness, intercept = 0 }: TwistTest): Element {
  const shown = points.map((p) => ({ x: toUnit(p.twist, twist.unit), y: toUnit(p.moment, moment.unit), unloading: p.unloading === true }));
  const onLine = (x: number) => toUnit(intercept + stiffness.si * (x * unit(twist.unit).factor.toNumber()), moment.unit);
  const x = bounds([0, ...shown.map((p) => p.x)]);
  const y = bounds([0, ...shown.map((p) => p.y), onLine(Math.min(...shown.map((p) => p.x))), onLine(Math.max(...shown.map((p) => p.x)))]);
  const top = above + 2;
  const unloading = shown.some((p) => p.unloading);
  const plot = chart({ x, y, xSays: axis(twist), ySays: axis(moment), room: { left: leftOf(y), right: widths.half - 3, top, bottom: top + 58 } });
  const ends = clipped(x, y, onLine).map(([a, b]) => plot.at(a, b));
  const places = placer(plot.room, [[ends[0]!, ends[1]!], ...plot.x.ticks(3).map((t) => [plot.at(t, y[0]), plot.at(t, y[0])] as const)]);
  const dots = shown.map((p) => plot.at(p.x, p.y));
  for (const [a, b] of dots) places.keepOff({ left: a - 1.2, right: a + 1.2, top: b - 1.2, bottom: b + 1.2 });
  const middle = plot.at((x[0] + x[1]) / 2, Math.max(y[0], Math.min(y[1], onLine((x[0] + x[1]) / 2))));
  return drawing(
    { name, title, says: says({ moment, twist, points, stiffness }), width: widths.half, height: plot.room.bottom + below },
    plot.drawn,
    line(ends[0]!, ends[1]!, { weight: 'line' }),
    dots.map((p, i) => circle(p, 1, { weight: 'line', fill: shown[i]!.unloading ? paper : ink })),
    places.put(middle, sized(stiffness), (Math.PI * 3) / 4),
    unloading ? places.put(dots[shown.findIndex((p) => p.unloading)]!, 'hollow: load taken off', 0) : [],
  );
}

const axis = (of: { symbol: string; unit: string }) => `${of.symbol} in ${degrees(` ${unit(of.unit).text}`).trim()}`;

function bounds(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = (high - low || 1) * 0.08;
  return [low < 0 ? low - room : 0, high > 0 ? high + room : 0];
}

/** Ends of the regression line where it leaves the plot. */
function clipped([x0, x1]: readonly [number, number], [y0, y1]: readonly [number, number], at: (x: number) => number): [number, number][] {
  const [a, b] = [at(x0), at(x1)];
  const xAt = (y: number) => (b === a ? x0 : x0 + ((y - a) / (b - a)) * (x1 - x0));
  const inside = (y: number): number => Math.max(y0, Math.min(y1, y));
  const end = (x: number, y: number): [number, number] => (inside(y) === y ? [x, y] : [Math.max(x0, Math.min(x1, xAt(inside(y)))), inside(y)]);
  return [end(x0, a), end(x1, b)];
}

function says({ moment, twist, points, stiffness }: Pick<TwistTest, 'moment' | 'twist' | 'points' | 'stiffness'>): string {
  const each = points.map((p) => `${sized({ symbol: moment.symbol, si: p.moment, unit: moment.unit })} at ${sized({ symbol: twist.symbol, si: p.twist, unit: twist.unit })}${p.unloading ? ' (load taken off)' : ''}`);
  return `${each.join('; ')}. Regression: ${sized(stiffness)}.`;
}
