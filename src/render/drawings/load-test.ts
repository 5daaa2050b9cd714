import type { Element } from 'hast';
import { toUnit, unit } from '../../units/unit.js';
import { above, below, chart, leftOf } from './chart.js';
import { drawing, widths } from './frame.js';
import { circle, ink, line, paper } from './pen.js';
import { placer } from './place.js';
import { degrees, type Size, sized } from './words.js';

/** A test with several loads, in SI units: a twist test (moment over twist) or a beaming test (force over deflection). */
export interface LoadTest {
  name: string;
  title: string;
  /** Symbols and units of both axes. */
  load: { symbol: string; unit: string };
  response: { symbol: string; unit: string };
  points: readonly { load: number; response: number; unloading?: boolean | undefined }[];
  /** The straight line through the readings: response = intercept + slope · load. */
  line: { slope: number; intercept: number };
  stiffness: Size;
}

/** Load over response with the regression line; readings while the load is taken off are hollow. */
export function loadTest({ name, title, load, response, points, line: fit, stiffness }: LoadTest): Element {
  const shown = points.map((p) => ({
    x: toUnit(p.response, response.unit),
    y: toUnit(p.load, load.unit),
    unloading: p.unloading === true,
  }));
  const fitted = points.map((p) => toUnit(fit.intercept + fit.slope * p.load, response.unit));
  const x = bounds([0, ...shown.map((p) => p.x), ...fitted]);
  const y = bounds([0, ...shown.map((p) => p.y)]);
  const top = above + 2;
  const plot = chart({
    x,
    y,
    xSays: axis(response),
    ySays: axis(load),
    room: { left: leftOf(y), right: widths.half - 3, top, bottom: top + 58 },
  });
  const at = (moment: number) =>
    plot.at(
      Math.max(x[0], Math.min(x[1], toUnit(fit.intercept + fit.slope * moment, response.unit))),
      toUnit(moment, load.unit),
    );
  const loads = points.map((p) => p.load);
  const [low, high] = [at(Math.min(...loads)), at(Math.max(...loads))];
  const places = placer(plot.room, [[low, high]]);
  const dots = shown.map((p) => plot.at(p.x, p.y));
  for (const [a, b] of dots) places.keepOff({ left: a - 1.2, right: a + 1.2, top: b - 1.2, bottom: b + 1.2 });
  const hollow = shown.findIndex((p) => p.unloading);
  return drawing(
    {
      name,
      title,
      says: says({ load, response, points, stiffness }),
      width: widths.half,
      height: plot.room.bottom + below,
    },
    plot.drawn,
    line(low, high, { weight: 'line' }),
    dots.map((p, i) => circle(p, 1, { weight: 'line', fill: shown[i]!.unloading ? paper : ink })),
    places.put([(low[0] + high[0]) / 2, (low[1] + high[1]) / 2], sized(stiffness), (Math.PI * 5) / 4),
    hollow >= 0 ? places.put(dots[hollow]!, 'hollow: load taken off', 0) : [],
  );
}

const axis = (of: { symbol: string; unit: string }) => `${of.symbol} in ${degrees(` ${unit(of.unit).text}`).trim()}`;

function bounds(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = (high - low || 1) * 0.08;
  return [low < 0 ? low - room : 0, high > 0 ? high + room : 0];
}

function says({
  load,
  response,
  points,
  stiffness,
}: Pick<LoadTest, 'load' | 'response' | 'points' | 'stiffness'>): string {
  const each = points.map(
    (p) =>
      `${sized({ ...load, si: p.load })} at ${sized({ ...response, si: p.response })}${p.unloading ? ' (load taken off)' : ''}`,
  );
  return `${each.join('; ')}. Straight line through them: ${sized(stiffness)}.`;
}
