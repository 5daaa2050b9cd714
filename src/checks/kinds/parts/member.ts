import { angleSection } from '../../../calc/sections/angle.js';
import { boxSection } from '../../../calc/sections/box.js';
import { channelSection } from '../../../calc/sections/channel.js';
import { chsSection } from '../../../calc/sections/chs.js';
import { closedTopHatSection } from '../../../calc/sections/closed-top-hat.js';
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
import { placeOf } from '../../../project/places.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { difference, given } from './maybe.js';

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
  /** What the wall has lost to corrosion at its worst place, under the wall that is stated. */
  loss?: Measured | undefined;
}

export type Get = (name: 'A' | 'Ix' | 'Iy' | 'Zx' | 'Zy' | 'J' | 'Sx' | 'Sy' | 'mass') => Maybe;
export interface Properties {
  get: Get;
  /** The same of a top-hat that a floor of this thickness closes; other sections have none. */
  closedBy?: (floor: Maybe) => Get;
  /** Thickness of the wall, as measured or else by the designation. */
  wall: Maybe;
  /** The thickest place measured, or the designation. */
  thickest: Maybe;
  /** The thinnest that is left: the least place measured and the designation, less what was lost. */
  kept: Maybe;
}

/**
 * Properties of a member through the sheet of its section. `path` leads to the block that describes it. An original counts as
 * its maker made it: without loss, and with the wall of its designation where the places measured are thinner.
 */
export function memberProperties(
  member: Member | undefined,
  subject: string,
  path: readonly string[],
  work: Work,
  as: 'made' | 'measured' = 'measured',
): Properties {
  const section = member?.section;
  const at = (name: 'wall' | 'loss') => work.take(member?.[name], ...path, name);
  const thickest = () => work.take(member?.wall && placeOf(member.wall, 'largest'), ...path, 'wall');
  if (!section) {
    const lacking = work.lacks(...path, 'section');
    const wall = member?.wall ? at('wall') : lacking;
    return { get: () => lacking, wall, thickest: member?.wall ? thickest() : lacking, kept: less(wall, member, at) };
  }
  const { shape } = section;
  const measured = wallOf[shape.kind];
  const inputs: Record<string, unknown> = Object.fromEntries(
    Object.entries(shape).flatMap(([name, value]): [string, Maybe | string][] => {
      if (name === 'kind' || value === undefined) return [];
      if (typeof value === 'string') return [[name, value]];
      return [[name, given(value, 'mm', `${section.written}, nominal`)]];
    }),
  );
  const nominal = measured ? (inputs[measured] as Maybe) : work.lacks(...path, 'wall');
  // The standard picks the corner radius by the nominal wall; a measured wall must not move it.
  if (shape.kind === 'rhs' && member.wall) inputs['nominalWall'] ??= inputs['wall'];
  if (measured && member.wall) inputs[measured] = as === 'made' ? thicker(thickest(), nominal) : at('wall');
  if (member.loss && as === 'measured') inputs['loss'] = at('loss');
  const worked = work.sheet(sheetOf[shape.kind] as unknown as Sheet<Inputs, Results>, subject, inputs as never);
  const thinnest = member.wall ? thinner(at('wall'), nominal) : nominal;
  const closedBy = (floor: Maybe): Get =>
    work.sheet(closedTopHatSection as unknown as Sheet<Inputs, Results>, subject, { ...inputs, floor } as never).get;
  return {
    get: (name) => worked.get(name),
    ...(shape.kind === 'top-hat' ? { closedBy } : {}),
    wall: measured ? (inputs[measured] as Maybe) : nominal,
    thickest: measured && member.wall ? thickest() : nominal,
    kept: less(thinnest, member, at),
  };
}

const thicker = (a: Maybe, b: Maybe): Maybe => (isMissing(a) || isMissing(b) || a.si >= b.si ? a : b);
const thinner = (a: Maybe, b: Maybe): Maybe => (isMissing(a) || isMissing(b) || a.si <= b.si ? a : b);

function less(wall: Maybe, member: Member | undefined, at: (name: 'loss') => Maybe): Maybe {
  return member?.loss ? difference(wall, at('loss')) : wall;
}
