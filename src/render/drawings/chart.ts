import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { Element } from 'hast';
import { showNumber } from '../../units/show.js';
import { line, type Point } from './pen.js';
import { em, lineHeight, type Room, roomOf, widthOf, word } from './words.js';

/** Two axes with their numbers; quantities are given in the units that the axes name. */
export interface Chart {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  at: (x: number, y: number) => Point;
  drawn: Element[];
  /** Room between the axes. */
  room: Room;
}

export interface Axes {
  /** From, to. */
  x: readonly [number, number];
  y: readonly [number, number];
  xSays: string;
  ySays: string;
  room: Room;
}

/** Room that the numbers of an axis take below and to the left of the plot. */
export const below = 2 * lineHeight + 2.5;
export const above = lineHeight + 1;

export function chart({ x: [x0, x1], y: [y0, y1], xSays, ySays, room }: Axes): Chart {
  const x = scaleLinear([x0, x1], [room.left, room.right]);
  const y = scaleLinear([y0, y1], [room.bottom, room.top]);
  const [xTicks, yTicks] = [x.ticks(6), y.ticks(5)];
  const number = (ticks: readonly number[]) => ticks.map((t) => showNumber(t));
  const drawn = [
    line([room.left, room.bottom], [room.right, room.bottom], { weight: 'line' }),
    line([room.left, room.bottom], [room.left, room.top], { weight: 'line' }),
    ...legible(xTicks.map(x), number(xTicks)).flatMap(([at, text]) => [
      line([at, room.bottom], [at, room.bottom + 1], { weight: 'thin' }),
      word(at, room.bottom + 1 + 0.95 * em, text, 'middle'),
    ]),
    ...yTicks.flatMap((t, i) => [
      line([room.left - 1, y(t)], [room.left, y(t)], { weight: 'thin' }),
      word(room.left - 1.8, y(t) + 0.35 * em, number(yTicks)[i]!, 'end'),
    ]),
    word(room.right, room.bottom + 1 + 0.95 * em + lineHeight, xSays, 'end'),
    word(2, room.top - 2.2, ySays),
  ];
  return { x, y, at: (a, b) => [x(a), y(b)], drawn, room };
}

/** Room to the left of the plot for the numbers of an axis. */
export function leftOf([y0, y1]: readonly [number, number]): number {
  return (
    Math.max(
      ...scaleLinear([y0, y1], [0, 1])
        .ticks(5)
        .map((t) => widthOf(showNumber(t))),
    ) + 4
  );
}

/** Without the numbers that would touch the one before. */
export function legible(places: readonly number[], texts: readonly string[]): [number, string][] {
  let edge = -Infinity;
  return places.flatMap((at, i): [number, string][] => {
    const { left, right } = roomOf(at, 0, texts[i]!, 'middle');
    if (left < edge + 1) return [];
    edge = right;
    return [[at, texts[i]!]];
  });
}
