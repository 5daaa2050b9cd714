import { angle } from './angle.js';
import { box } from './box.js';
import { channel } from './channel.js';
import { chs } from './chs.js';
import type { CornerRule } from './corner-radii.js';
import { flat } from './flat.js';
import { lippedU } from './lipped-u.js';
import type { SectionProperties } from './properties.js';
import { hollowRectangle, rhs } from './rhs.js';
import { roundBar } from './round-bar.js';
import { topHat } from './top-hat.js';
import { uPressing } from './u-pressing.js';

/**
 * A section by its sizes in m, named as in the inputs of its sheet. `loss` is taken off each wall; radii that are left out
 * count as zero. Of a flat the x axis lies along the width.
 */
export type SectionShape =
  | { kind: 'flat'; width: number; thickness: number; loss?: number }
  | { kind: 'round-bar'; diameter: number; loss?: number }
  | {
      kind: 'rhs';
      depth: number;
      width: number;
      wall: number;
      nominalWall?: number;
      corners: CornerRule;
      radius?: number;
      loss?: number;
    }
  | { kind: 'chs'; diameter: number; wall: number; loss?: number }
  | { kind: 'angle'; depth: number; width: number; thickness: number; root?: number; toe?: number; loss?: number }
  | { kind: 'channel'; depth: number; width: number; web: number; flange: number; root?: number; loss?: number }
  | { kind: 'top-hat'; crown: number; depth: number; flange: number; wall: number; bend?: number; loss?: number }
  | { kind: 'u'; depth: number; width: number; wall: number; bend?: number; loss?: number }
  | { kind: 'lipped-u'; depth: number; width: number; lip: number; wall: number; bend?: number; loss?: number }
  | { kind: 'box'; depth: number; width: number; flange: number; web: number; loss?: number };

/**
 * Properties of a steel section in SI units, by the functions that the sheets use. The sizes are taken as they are: whether
 * they make sense is for the validity of the sheet to say.
 * @throws OutOfRange if a tube with measured corners has no radius
 */
export function sectionProperties(shape: SectionShape): SectionProperties {
  const less = (thickness: number, loss = 0) => thickness - loss;
  switch (shape.kind) {
    case 'flat':
      return flat({ b: shape.width, t: less(shape.thickness, shape.loss) });
    case 'round-bar':
      return roundBar({ D: less(shape.diameter, 2 * (shape.loss ?? 0)) });
    case 'rhs':
      return rhs(hollowRectangle({ ...shape, rule: shape.corners }));
    case 'chs':
      return chs({ D: shape.diameter, t: less(shape.wall, shape.loss) });
    case 'angle':
      return angle({
        a: shape.depth,
        b: shape.width,
        t: less(shape.thickness, shape.loss),
        r1: shape.root ?? 0,
        r2: shape.toe ?? 0,
      });
    case 'channel': {
      const [tw, tf] = [less(shape.web, shape.loss), less(shape.flange, shape.loss)];
      return channel({ H: shape.depth, B: shape.width, tw, tf, r: shape.root ?? 0 });
    }
    case 'top-hat':
      return topHat({
        b: shape.crown,
        H: shape.depth,
        c: shape.flange,
        t: less(shape.wall, shape.loss),
        ri: shape.bend ?? 0,
      });
    case 'u':
      return uPressing({ H: shape.depth, B: shape.width, t: less(shape.wall, shape.loss), ri: shape.bend ?? 0 });
    case 'lipped-u':
      return lippedU({
        H: shape.depth,
        B: shape.width,
        c: shape.lip,
        t: less(shape.wall, shape.loss),
        ri: shape.bend ?? 0,
      });
    case 'box':
      return box({
        H: shape.depth,
        B: shape.width,
        tf: less(shape.flange, shape.loss),
        tw: less(shape.web, shape.loss),
      });
  }
}
