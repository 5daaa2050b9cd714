import type { Element } from 'hast';
import { type AxlePosition, carriedBy, type Links, type Point as Place } from '../../calc/axle/linkage.js';
import { arc, arrow, circle, line, type Point, paper, polyline, type Stroke } from './pen.js';
import type { Placer, Segment } from './place.js';
import { type Size, sized } from './words.js';

/** The parts of a live axle in side view; `at` brings a place of the car (x forward, z up) to the page. */
type At = (place: Place) => Point;

export const arms = ({ lower, upper }: Links, at: At): Segment[] => [lower, upper].map((a) => [at(a.axle), at(a.body)]);

export function ghostArms({ lower, upper }: Links, p: AxlePosition, at: At): Segment[] {
  return [
    [at(p.lower), at(lower.body)],
    [at(p.upper), at(upper.body)],
  ];
}

/** The axle at an end of its travel. */
export function ghost(
  links: Links,
  p: AxlePosition,
  shaft: { front: Place; rear: Place } | undefined,
  at: At,
): Element[] {
  const stroke: Stroke = { weight: 'thin', dash: 'hidden' };
  const rear = shaft && carriedBy(links, shaft.rear, p);
  return [
    ...ghostArms(links, p, at).map(([a, b]) => line(a, b, stroke)),
    polyline([p.lower, p.centre, p.upper].map(at), stroke),
    circle(at(p.centre), 1.2, stroke),
    ...(rear ? [polyline([at(p.centre), at(rear), at(shaft.front)], stroke)] : []),
  ];
}

/** The nose of the pinion with its slope against the level. */
export function nose(centre: Point, slope: Size, put: Placer['put']): Element[] {
  const towards = Math.PI + slope.si;
  const [long, radius] = [15, 24];
  const along = (s: number): Point => [centre[0] + s * Math.cos(towards), centre[1] + s * Math.sin(towards)];
  return [
    ...noseTo(centre, along(long)),
    line(along(long), along(radius + 3), { weight: 'thin', dash: 'centre' }),
    line([centre[0] - long, centre[1]], [centre[0] - radius - 3, centre[1]], { weight: 'thin' }),
    ...(slope.si === 0 ? [] : [arc(centre, radius, Math.PI, towards)]),
    ...put([centre[0] - radius, centre[1]], sized(slope), slope.si > 0 ? Math.PI / 2 : -Math.PI / 2),
  ];
}

export function noseTo(centre: Point, end: Point): Element[] {
  const [dx, dy] = [end[0] - centre[0], end[1] - centre[1]];
  const long = Math.hypot(dx, dy) || 1;
  const side = (p: Point, t: number): Point => [p[0] - (t * dy) / long, p[1] + (t * dx) / long];
  return [
    polyline([side(centre, -2), side(end, -0.9), side(end, 0.9), side(centre, 2)], {
      weight: 'line',
      fill: paper,
      close: true,
    }),
  ];
}

/** The arms' lines, continued to where they cross. */
export function linesTo(centre: Place, { lower, upper }: Links, at: At): Segment[] {
  return [lower, upper].map((a) => {
    const far =
      Math.hypot(a.axle.x - centre.x, a.axle.z - centre.z) > Math.hypot(a.body.x - centre.x, a.body.z - centre.z)
        ? a.body
        : a.axle;
    return [at(far), at(centre)];
  });
}

export function centreMark([x, y]: Point): Element[] {
  return [
    circle([x, y], 1.6, { weight: 'line', fill: paper }),
    line([x - 3, y], [x + 3, y], { weight: 'thin' }),
    line([x, y - 3], [x, y + 3], { weight: 'thin' }),
  ];
}

/** Arrows along both arms towards a centre that lies outside the drawing. */
export function farAway(centre: Place, { lower, upper }: Links, at: At): Element[] {
  return [lower, upper].flatMap((a) => {
    const forward = centre.x > (a.axle.x + a.body.x) / 2;
    const start = at(forward === a.body.x > a.axle.x ? a.body : a.axle);
    const goal = at(centre);
    const long = Math.hypot(goal[0] - start[0], goal[1] - start[1]) || 1;
    return arrow(
      start,
      [start[0] + ((goal[0] - start[0]) / long) * 12, start[1] + ((goal[1] - start[1]) / long) * 12],
      { weight: 'thin', dash: 'hidden' },
    );
  });
}
