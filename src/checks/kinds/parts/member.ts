import { angleSection } from '../../../calc/sections/angle.js';
import { boxSection } from '../../../calc/sections/box.js';
import { channelSection } from '../../../calc/sections/channel.js';
import { chsSection } from '../../../calc/sections/chs.js';
import { flatSection } from '../../../calc/sections/flat.js';
import { lippedUSection } from '../../../calc/sections/lipped-u.js';
import { rhsSection } from '../../../calc/sections/rhs.js';
import { roundBarSection } from '../../../calc/sections/round-bar.js';
import type { SectionShape } from '../../../calc/sections/section-of.js';
import { topHatSection } from '../../../calc/sections/top-hat.js';
import { uSection } from '../../../calc/sections/u-pressing.js';
import type { Inputs, Results, Sheet } from '../../../calc/sheet.js';
import type { Section } from '../../../project/designations/section.js';
import type { Designated, Measured } from '../../../project/fields.js';
import type { Maybe, Work } from '../../engine/work.js';
import { given } from './maybe.js';

const sheetOf: Readonly<Record<SectionShape['kind'], Sheet<never, never>>> = {
  flat: flatSection,
  'round-bar': roundBarSection,
  rhs: rhsSection,
  chs: chsSection,
  angle: angleSection,
  channel: channelSection,
  'top-hat': topHatSection,
  u: uSection,
  'lipped-u': lippedUSection,
  box: boxSection,
} as never;

/** Inputs that a measured wall stands for, by kind of section. */
const wallOf: Readonly<Partial<Record<SectionShape['kind'], string>>> = {
  flat: 'thickness',
  rhs: 'wall',
  chs: 'wall',
  angle: 'thickness',
  'top-hat': 'wall',
  u: 'wall',
  'lipped-u': 'wall',
};

export interface Member {
  section?: Designated<Section> | undefined;
  /** Measured, and stands before the wall of the designation. */
  wall?: Measured | undefined;
  /** Corrosion loss of the wall. */
  loss?: Measured | undefined;
}

export interface Properties {
  get: (name: 'A' | 'Ix' | 'Iy' | 'Zx' | 'Zy' | 'J' | 'Sx' | 'Sy' | 'mass') => Maybe;
  /** Thickness of the wall, as measured or else by the designation. */
  wall: Maybe;
}

/** Properties of a member through the sheet of its section. `path` leads to the block that describes it. */
export function memberProperties(
  member: Member | undefined,
  subject: string,
  path: readonly string[],
  work: Work,
): Properties {
  const section = member?.section;
  if (!section) {
    const lacking = work.lacks(...path, 'section');
    return { get: () => lacking, wall: member?.wall ? work.take(member.wall, ...path, 'wall') : lacking };
  }
  const { shape } = section;
  const measured = wallOf[shape.kind];
  const sizes = Object.entries(shape).flatMap(([name, value]): [string, Maybe | string][] => {
    if (name === 'kind' || value === undefined) return [];
    if (typeof value === 'string') return [[name, value]];
    return [[name, given(value, 'mm', `${section.written}, nominal`)]];
  });
  const inputs: Record<string, unknown> = Object.fromEntries(sizes);
  // The standard picks the corner radius by the nominal wall; a measured wall must not move it.
  if (shape.kind === 'rhs' && member?.wall) inputs['nominalWall'] ??= inputs['wall'];
  if (measured && member?.wall) inputs[measured] = work.take(member.wall, ...path, 'wall');
  if (member?.loss) inputs['loss'] = work.take(member.loss, ...path, 'loss');
  const worked = work.sheet(sheetOf[shape.kind] as unknown as Sheet<Inputs, Results>, subject, inputs as never);
  return {
    get: (name) => worked.get(name),
    wall: measured ? (inputs[measured] as Maybe) : work.lacks(...path, 'wall'),
  };
}
