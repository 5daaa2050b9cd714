import { line as d3line } from 'd3-shape';
import type { Element } from 'hast';
import { s } from 'hastscript';

/** Strokes of a drawing. All lengths are millimetres on the printed page, x to the right and y down. */
export type Point = readonly [number, number];

/** Weights of lines: what is drawn, what goes with it, and what only measures or points. */
const weights = { outline: 0.5, line: 0.35, thin: 0.2 } as const;

const dashes = { hidden: '1.6 1', centre: '5 1 0.8 1', ghost: '0.7 0.9' } as const;

export interface Stroke {
  weight?: keyof typeof weights;
  dash?: keyof typeof dashes;
  /** `ink`, `paper` or the reference to a hatching; nothing where left out. */
  fill?: string;
  close?: boolean;
}

export const [ink, paper] = ['currentColor', '#fff'] as const;

/** Rounded to a thousandth of a millimetre, so that the same data give the same bytes. */
export const mm = (x: number): number => Math.round(x * 1000) / 1000 || 0;

function strokeOf({ weight = 'line', dash, fill = 'none' }: Stroke) {
  return {
    fill,
    strokeWidth: weights[weight],
    ...(fill === 'none' ? {} : { fillRule: 'evenodd' }),
    ...(dash ? { strokeDashArray: dashes[dash] } : {}),
  };
}

export function path(d: string, stroke: Stroke = {}): Element {
  return s('path', { d, ...strokeOf(stroke) });
}

const through = d3line<Point>()
  .x((p) => p[0])
  .y((p) => p[1])
  .digits(3);

/** Straight strokes through the points. */
export function polyline(points: readonly Point[], stroke: Stroke = {}): Element {
  return path(`${through(points as Point[]) ?? ''}${stroke.close ? 'Z' : ''}`, stroke);
}

export const line = (from: Point, to: Point, stroke: Stroke = {}): Element => polyline([from, to], stroke);

export function circle([x, y]: Point, radius: number, stroke: Stroke = {}): Element {
  return s('circle', { cx: mm(x), cy: mm(y), r: mm(radius), ...strokeOf(stroke) });
}

export function box([x, y]: Point, width: number, height: number, stroke: Stroke = {}): Element {
  return s('rect', {
    x: mm(x),
    y: mm(y),
    width: mm(Math.max(0, width)),
    height: mm(Math.max(0, height)),
    ...strokeOf(stroke),
  });
}

/** Part of a circle from one direction to another, in radians from the x axis, positive clockwise on the page. */
export function arc(
  [x, y]: Point,
  radius: number,
  from: number,
  to: number,
  stroke: Stroke = { weight: 'thin' },
): Element {
  const at = (a: number) => `${mm(x + radius * Math.cos(a))},${mm(y + radius * Math.sin(a))}`;
  const large = Math.abs(to - from) > Math.PI ? 1 : 0;
  return path(`M${at(from)}A${mm(radius)},${mm(radius)},0,${large},${to > from ? 1 : 0},${at(to)}`, stroke);
}

/** A filled arrowhead with its tip at a point, pointing along a direction in radians. */
export function arrowhead([x, y]: Point, towards: number, length = 2): Element {
  const back = (side: number): Point => [
    x - length * Math.cos(towards) + side * 0.2 * length * Math.sin(towards),
    y - length * Math.sin(towards) - side * 0.2 * length * Math.cos(towards),
  ];
  return s('path', { d: `${through([[x, y], back(1), back(-1)])}Z`, fill: ink, stroke: 'none' });
}

export const directionOf = ([x0, y0]: Point, [x1, y1]: Point): number => Math.atan2(y1 - y0, x1 - x0);

/** A line that ends in an arrowhead. */
export function arrow(from: Point, to: Point, stroke: Stroke = { weight: 'thin' }, length = 2): Element[] {
  return [line(from, to, stroke), arrowhead(to, directionOf(from, to), length)];
}
