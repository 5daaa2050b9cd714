import type { Element } from 'hast';
import { axlePositions, type Links } from '../../calc/axle/linkage.js';
import { showNumber } from '../../units/show.js';
import { upright } from './dimension.js';
import { circle, ink, line, type Point, paper, polyline } from './pen.js';
import { lineHeight, type Size, sized, word } from './words.js';

/** Travel of the axle from ride height, both ways positive, and what holds at its two ends. */
export interface Travel {
  bump: Size;
  droop: Size;
  atBump: readonly Size[];
  atDroop: readonly Size[];
}

/** Room that the path takes. */
export const [pathWidth, pathHeight] = [52, 74];
const plotHeight = 46;
const reach = 5;

/** Path of the axle centre, its movement along the car enlarged so that it can be seen; forward lies to the left. */
export function axlePath(links: Links, travel: Travel, [left, top]: Point): Element[] {
  const [up, down] = [travel.bump.si, -travel.droop.si];
  const positions = axlePositions(
    links,
    Array.from({ length: 25 }, (_, i) => down + ((up - down) * i) / 24),
  );
  const widest = Math.max(...positions.map((p) => Math.abs(p.shift)));
  const scale = Math.min(plotHeight / (up - down), reach / Math.max(widest, 1e-9));
  const enlarged = rounded(reach / Math.max(widest, 1e-9) / scale);
  const [x0, y0] = [left + 9, top + 6];
  const at = (shift: number, height: number): Point => [x0 - shift * scale * enlarged, y0 + (up - height) * scale];
  const ends = [positions.at(-1)!, positions[0]!];
  const column = left + 21;
  const [high, ride, low] = [y0 + 2, at(0, 0)[1] + 1, y0 + plotHeight - lineHeight * travel.atDroop.length];
  const rideShown = ride >= high + lineHeight * (travel.atBump.length + 1) && ride <= low - lineHeight;
  const block = (sizes: readonly Size[], y: number) => sizes.map((s, i) => word(column, y + i * lineHeight, sized(s)));
  return [
    word(left, top + 1.2, 'Path of the axle centre', 'start', true),
    line([x0, y0 - 2], [x0, y0 + plotHeight + 2], { weight: 'thin', dash: 'centre' }),
    line([x0 - reach - 3, at(0, 0)[1]], [x0 + reach, at(0, 0)[1]], { weight: 'thin', dash: 'centre' }),
    polyline(
      positions.map((p) => at(p.shift, p.travel)),
      { weight: 'outline' },
    ),
    ...ends.map((p) => circle(at(p.shift, p.travel), 1, { weight: 'line', fill: paper })),
    circle(at(0, 0), 1, { weight: 'thin', fill: ink }),
    ...[up, down].filter((end) => end !== 0).flatMap((end) => upright(at(0, end), at(0, 0), column - 3, '', 1)),
    ...block([travel.bump, ...travel.atBump], high),
    ...(rideShown ? [word(column, ride, 'ride height')] : []),
    ...block([travel.droop, ...travel.atDroop], low),
    word(left, y0 + plotHeight + 8, 'forward to the left'),
    ...(enlarged === 1
      ? []
      : [word(left, y0 + plotHeight + 8 + lineHeight, `and drawn ${showNumber(enlarged)} times as large`)]),
  ];
}

/** The round number below: 1, 2, 5, 10, 20… */
function rounded(factor: number): number {
  if (factor <= 1) return 1;
  const ten = 10 ** Math.floor(Math.log10(Math.min(factor, 1e4)));
  return [5, 2, 1].find((k) => k * ten <= factor)! * ten;
}
