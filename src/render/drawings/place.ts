import type { Element } from 'hast';
import { line, type Point } from './pen.js';
import { em, plate, type Room, roomOf, widthOf } from './words.js';

/** Places for texts, so that none covers another or leaves the drawing. */

/**
 * Centres of texts that stand in a row (or column), each as near as may be to where it is wanted.
 *
 * @param wanted centre and size of each, in any order
 * @param within bounds of the row; where the texts do not fit they run beyond its end
 */
export function apart(
  wanted: readonly { at: number; size: number }[],
  gap: number,
  within: readonly [number, number],
): number[] {
  const order = wanted.map((w, i) => ({ ...w, i })).sort((a, b) => a.at - b.at || a.i - b.i);
  const centres: number[] = [];
  let edge = within[0];
  for (const { at, size, i } of order) {
    centres[i] = Math.max(at, edge + size / 2);
    edge = centres[i] + size / 2 + gap;
  }
  edge = within[1];
  for (const { size, i } of [...order].reverse()) {
    centres[i] = Math.min(centres[i]!, edge - size / 2);
    edge = centres[i] - size / 2 - gap;
  }
  const beyond = order.length > 0 ? within[0] - (centres[order[0]!.i]! - order[0]!.size / 2) : 0;
  return beyond > 0 ? centres.map((c) => c + beyond) : centres;
}

export type Segment = readonly [Point, Point];

/** Puts texts beside points, clear of each other and, as far as may be, of the lines named. */
export interface Placer {
  put: (beside: Point, text: string, towards?: number) => Element[];
  /** Room that no text may take. */
  keepOff: (room: Room) => void;
}

export function placer(within: Room, lines: readonly Segment[]): Placer {
  const taken: Room[] = [];
  const put = (beside: Point, text: string, towards = -Math.PI / 4): Element[] => {
    const places = around(beside, text, towards).filter(
      ({ room }) => inside(room, within) && !taken.some((t) => meets(room, t)),
    );
    const cost = ({ room, far }: Spot) => far + 3 * lines.reduce((sum, l) => sum + covered(l, room), 0);
    const best =
      places.reduce<Spot | undefined>((a, b) => (a && cost(a) <= cost(b) ? a : b), undefined) ??
      around(beside, text, towards)[0]!;
    taken.push(best.room);
    const { room, far } = best;
    const y = room.bottom - 0.35 * em;
    const foot: Point = [
      Math.min(room.right, Math.max(room.left, beside[0])),
      Math.min(room.bottom, Math.max(room.top, beside[1])),
    ];
    return [
      ...(far > 3 ? [line(beside, foot, { weight: 'thin' })] : []),
      ...plate((room.left + room.right) / 2, y, text, 'middle'),
    ];
  };
  return { put, keepOff: (room) => void taken.push(room) };
}

interface Spot {
  room: Room;
  far: number;
}

/** Places about a point, the nearest and those in the wanted direction first. */
function around([x, y]: Point, text: string, towards: number): Spot[] {
  const [w, h] = [widthOf(text), 1.15 * em];
  const turns = Array.from({ length: 16 }, (_, i) => (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 8));
  return [1.6, 3, 5, 7, 10, 13, 17, 22, 28, 35, 43, 52, 62].flatMap((far) =>
    turns.map((turn) => {
      const a = towards + turn;
      const [cx, cy] = [
        x + far * Math.cos(a) + (w / 2) * clip(1.4 * Math.cos(a)),
        y + far * Math.sin(a) + (h / 2) * clip(1.4 * Math.sin(a)),
      ];
      return { room: roomOf(cx, cy + h / 2 - 0.35 * em, text, 'middle'), far: far + Math.abs(turn) };
    }),
  );
}

const clip = (x: number) => Math.max(-1, Math.min(1, x));
const inside = (r: Room, w: Room) => r.left >= w.left && r.right <= w.right && r.top >= w.top && r.bottom <= w.bottom;
const meets = (a: Room, b: Room) =>
  a.left < b.right + 0.8 && b.left < a.right + 0.8 && a.top < b.bottom + 0.3 && b.top < a.bottom + 0.3;

/** How much of a line lies in a room, in mm (Liang and Barsky). */
function covered([[x0, y0], [x1, y1]]: Segment, room: Room): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  let [enter, leave] = [0, 1];
  for (const [p, q] of [
    [-dx, x0 - room.left],
    [dx, room.right - x0],
    [-dy, y0 - room.top],
    [dy, room.bottom - y0],
  ] as const) {
    if (p === 0 && q < 0) return 0;
    if (p < 0) enter = Math.max(enter, q / p);
    if (p > 0) leave = Math.min(leave, q / p);
  }
  return Math.max(0, leave - enter) * Math.hypot(dx, dy);
}
