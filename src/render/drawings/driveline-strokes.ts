import type { Element } from 'hast';
import { circle, type Point, paper, polyline } from './pen.js';
import type { Segment } from './place.js';

/** The parts of a driveline as they are drawn. */

/** From a point, so far along a direction and so far to the right of it. */
export const along =
  ([x, y]: Point, a: number) =>
  (s: number, t: number): Point => [x + s * Math.cos(a) - t * Math.sin(a), y + s * Math.sin(a) + t * Math.cos(a)];

export function gearbox(start: Point, angle: number, long: number): Element[] {
  const p = along(start, angle);
  const [box, out] = [Math.min(12, long * 0.5), long / Math.cos(angle) - 1];
  return [
    polyline([p(0, -6.5), p(box * 0.7, -6.5), p(box, -3.2), p(box, 3.2), p(box * 0.7, 6.5), p(0, 6.5)], {
      weight: 'outline',
      fill: paper,
      close: true,
    }),
    polyline([p(box, -1.3), p(out, -1.3), p(out, 1.3), p(box, 1.3)], { weight: 'line', fill: paper, close: true }),
  ];
}

export function tube(a: Point, b: Point): Element[] {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const p = along(a, angle);
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [
    polyline(
      [
        p(4.5, -1.9),
        p(long - 4.5, -1.9),
        p(long - 1, -1.1),
        p(long - 1, 1.1),
        p(long - 4.5, 1.9),
        p(4.5, 1.9),
        p(1, 1.1),
        p(1, -1.1),
      ],
      { weight: 'outline', fill: paper, close: true },
    ),
  ];
}

export function noseEdges(joint: Point, end: Point, angle: number): Segment[] {
  const p = along(joint, angle);
  const long = Math.hypot(end[0] - joint[0], end[1] - joint[1]);
  return [-1, 1].flatMap((s): Segment[] => [
    [p(7, s * 1.6), p(long - 7, s * 4.4)],
    [p(long - 7, s * 4.4), p(long - 2, s * 7.5)],
  ]);
}

export function pinion(joint: Point, end: Point, angle: number): Element[] {
  const p = along(joint, angle);
  const long = Math.hypot(end[0] - joint[0], end[1] - joint[1]);
  return [
    polyline([p(1, -1.2), p(1, 1.2), p(7, 1.6), p(long - 7, 4.4), p(long - 7, -4.4), p(7, -1.6)], {
      weight: 'outline',
      fill: paper,
      close: true,
    }),
    circle(p(long - 2, 0), 7.5, { weight: 'outline', fill: paper }),
    circle(p(long - 2, 0), 1.6, { weight: 'line' }),
  ];
}
