import type { Element } from 'hast';
import { widths } from './frame.js';
import { arc, arrowhead, circle, ink, line, type Point, polyline } from './pen.js';
import { em, type Size, sized, word } from './words.js';

/** How far the rear yoke of a shaft is turned against its front yoke, clockwise seen from the front. */
export interface Phasing {
  says: string;
  twist: Size;
}

const radius = 5.5;

/** Height that the row of yokes takes, its heading included. */
export const yokeRow = 4 + 2 * radius + 6;

/** Front and rear yoke of each shaft, end on; `y` is the baseline of the heading. */
export function yokePairs(phasing: readonly Phasing[], y: number): Element[] {
  const middle = y + 3 + radius;
  const room = (widths.full - 4) / phasing.length;
  return [
    word(2, y, 'Yokes', 'start', true),
    word(widths.full - 2, y, 'end on, seen from the front', 'end'),
    ...phasing.flatMap(({ says, twist }, i) => {
      const x = 4 + i * room;
      return [
        ...yoke([x + radius, middle], 0),
        ...yoke([x + 3 * radius + 8, middle], twist.si),
        word(x + radius, middle + radius + 1.1 * em, 'front', 'middle'),
        word(x + 3 * radius + 8, middle + radius + 1.1 * em, 'rear', 'middle'),
        word(x + 4 * radius + 12, middle - 0.6, says),
        word(x + 4 * radius + 12, middle + 3.2, sized(twist)),
      ];
    }),
  ];
}

/** Two ears and the pin between them; an upright dash shows the front yoke where the rear one is turned. */
function yoke(centre: Point, turn: number): Element[] {
  const at = (along: number, across: number): Point => [
    centre[0] + along * Math.sin(turn) + across * Math.cos(turn),
    centre[1] - along * Math.cos(turn) + across * Math.sin(turn),
  ];
  const ear = (side: 1 | -1) =>
    polyline(
      [
        at(side * radius, -1.6),
        at(side * radius, 1.6),
        at(side * (radius - 2.2), 1.6),
        at(side * (radius - 2.2), -1.6),
      ],
      { weight: 'thin', fill: ink, close: true },
    );
  const up = -Math.PI / 2;
  const turned = Math.abs(turn) > 0.05;
  return [
    circle(centre, radius - 2.2, { weight: 'line' }),
    line(at(radius, 0), at(-radius, 0), { weight: 'line' }),
    line(at(0, radius - 2.2), at(0, 2.2 - radius), { weight: 'thin' }),
    ear(1),
    ear(-1),
    ...(turned
      ? [
          line([centre[0], centre[1] - radius], [centre[0], centre[1] + radius], { weight: 'thin', dash: 'hidden' }),
          arc(centre, radius + 1, up, up + turn),
          arrowhead(
            [centre[0] + (radius + 1) * Math.sin(turn), centre[1] - (radius + 1) * Math.cos(turn)],
            turn + (turn > 0 ? 0 : Math.PI),
            1.4,
          ),
        ]
      : []),
  ];
}
