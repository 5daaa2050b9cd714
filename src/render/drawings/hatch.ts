import type { Element } from 'hast';
import { s } from 'hastscript';
import { ink } from './pen.js';

/** Hatchings tell areas apart without colour. */
const hatchings = {
  /** Cut metal of the original, and what lies beyond a limit. */
  rising: { turn: -45, spacing: 1.3, weight: 0.2 },
  /** Cut metal of the replacement. */
  falling: { turn: 45, spacing: 1.3, weight: 0.2 },
  /** Quieter, for wide areas. */
  wide: { turn: -45, spacing: 2.2, weight: 0.15 },
} as const;
export type Hatching = keyof typeof hatchings;

/** Brackets and quotation marks would end the reference `url(#…)`. */
const idOf = (name: string, kind: Hatching) =>
  `${name}-${kind}`.replace(/["'()\s]/g, (c) => `~${c.charCodeAt(0).toString(16)}`);

/** Declares hatchings for one drawing; their ids carry its name. */
export function hatchDefs(name: string, ...kinds: Hatching[]): Element {
  return s(
    'defs',
    kinds.map((kind) => {
      const { turn, spacing, weight } = hatchings[kind];
      return s(
        'pattern',
        {
          id: idOf(name, kind),
          patternUnits: 'userSpaceOnUse',
          width: spacing,
          height: spacing,
          patternTransform: `rotate(${turn})`,
        },
        [s('path', { d: `M0,${spacing / 2}H${spacing}`, stroke: ink, strokeWidth: weight, fill: 'none' })],
      );
    }),
  );
}

export const hatched = (name: string, kind: Hatching): string => `url(#${idOf(name, kind)})`;
