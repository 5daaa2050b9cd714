import { OutOfRange } from '../sheet.js';

/** Which corner radii a rectangular hollow section has. */
export const cornerRules = {
  'en-10219': 'EN 10219 (cold formed): outer radius 2 T to 6 mm, 2.5 T to 10 mm, 3 T beyond',
  'as-nzs-1163': 'AS/NZS 1163: outer radius 2 T to 3 mm, 2.5 T beyond',
  measured: 'the outer radius as measured',
} as const;
export type CornerRule = keyof typeof cornerRules;

/**
 * Outer corner radius, m, that the section tables of the standard calculate with, from the nominal wall in m.
 * @throws OutOfRange if the rule is `measured` and no radius is given
 */
export function outerRadius(rule: CornerRule, nominalWall: number, measured?: number): number {
  const beyond = (limit: number) => nominalWall > limit * (1 + 1e-9);
  switch (rule) {
    case 'en-10219':
      return nominalWall * (beyond(0.01) ? 3 : beyond(0.006) ? 2.5 : 2);
    case 'as-nzs-1163':
      return nominalWall * (beyond(0.003) ? 2.5 : 2);
    case 'measured':
      if (measured === undefined)
        throw new OutOfRange(
          'the outer corner radius is needed: measure it with a radius gauge, or name the standard of the tube',
        );
      return measured;
  }
}
