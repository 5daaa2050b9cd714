import type { SectionShape } from '../../calc/sections/section-of.js';
import type { Source } from '../../calc/sheet.js';
import { toSI } from '../../units/unit.js';
import type { Refuse } from './reading.js';
import { angleRoots, angleSource, type ChannelRow, pfc, pfcSource, upe, upeSource } from './section-tables.js';

/** The profiles and the order of their dimensions, all in mm unless `in` is written behind them. */
export const profiles = {
  FL: 'flat: width x thickness',
  RD: 'round bar: diameter',
  RHS: 'rectangular hollow section: depth x width x wall (standard, or r and the outer corner radius as measured)',
  SHS: 'square hollow section: side x wall, or side x side x wall (standard or radius as for RHS)',
  CHS: 'circular hollow section: outside diameter x wall',
  EA: 'equal angle: leg x leg x thickness',
  UA: 'unequal angle: upright leg x flat leg x thickness',
  PFC: 'parallel-flange channel from the table of AS/NZS 3679.1: depth x width',
  UPE: 'parallel-flange channel from the table of EN 10365: depth',
  HAT: 'top-hat pressing: width over the crown x depth x width of each flange x sheet',
  U: 'U bent from sheet: depth x flange x sheet',
  LIP: 'lipped U bent from sheet: depth x flange x lip x sheet',
  BOX: 'welded box: depth x width x wall, or depth x width x top and bottom x sides',
} as const;
export type Profile = keyof typeof profiles;

const standards = { en10219: 'en-10219', asnzs1163: 'as-nzs-1163', as1163: 'as-nzs-1163' } as const;
const names = { 'en-10219': 'EN 10219', 'as-nzs-1163': 'AS/NZS 1163' } as const;

interface Given {
  /** Dimensions in m. */
  n: readonly number[];
  /** In m. */
  radius: number | undefined;
  standard: string | undefined;
  refuse: Refuse;
}
/** Sizes in m, as the section sheets take them, and where those that were not written come from. */
type Made = { shape: SectionShape; standard?: string; source?: Source; text?: string };
type Maker = (given: Given) => Made | ReturnType<Refuse>;

/** For profiles with a given number of dimensions and nothing read from a table. */
const plain =
  (profile: Profile, count: number, shape: (n: readonly number[], radius: number | undefined) => SectionShape): Maker =>
  ({ n, radius, standard, refuse }) =>
    n.length === count
      ? { shape: shape(n, radius), ...(standard !== undefined && { standard }) }
      : refuse(`${profile} has ${count} dimensions: ${profiles[profile]}`);

const bent = (radius: number | undefined) => (radius === undefined ? {} : { bend: radius });

export const shapes: Readonly<Record<Profile, Maker>> = {
  FL: plain('FL', 2, ([width, thickness]) => ({ kind: 'flat', width: width!, thickness: thickness! })),
  RD: plain('RD', 1, ([diameter]) => ({ kind: 'round-bar', diameter: diameter! })),
  CHS: plain('CHS', 2, ([diameter, wall]) => ({ kind: 'chs', diameter: diameter!, wall: wall! })),
  HAT: plain('HAT', 4, ([crown, depth, flange, wall], r) => ({
    kind: 'top-hat',
    crown: crown!,
    depth: depth!,
    flange: flange!,
    wall: wall!,
    ...bent(r),
  })),
  U: plain('U', 3, ([depth, width, wall], r) => ({ kind: 'u', depth: depth!, width: width!, wall: wall!, ...bent(r) })),
  LIP: plain('LIP', 4, ([depth, width, lip, wall], r) => ({
    kind: 'lipped-u',
    depth: depth!,
    width: width!,
    lip: lip!,
    wall: wall!,
    ...bent(r),
  })),
  BOX: ({ n, refuse }) => {
    const [depth, width, flange, web = flange] = n;
    if (n.length !== 3 && n.length !== 4) return refuse(`BOX has 3 or 4 dimensions: ${profiles.BOX}`);
    return { shape: { kind: 'box', depth: depth!, width: width!, flange: flange!, web: web! } };
  },
  RHS: (given) =>
    given.n.length === 3 ? hollow(given, given.n) : given.refuse(`RHS has 3 dimensions: ${profiles.RHS}`),
  SHS: (given) => {
    const [side, other, wall] = given.n.length === 2 ? [given.n[0]!, given.n[0]!, given.n[1]!] : given.n;
    if (side === undefined || other === undefined || wall === undefined || given.n.length > 3)
      return given.refuse(`SHS has 2 or 3 dimensions: ${profiles.SHS}`);
    return side === other
      ? hollow(given, [side, side, wall])
      : given.refuse('the sides of a square hollow section are equal: write RHS');
  },
  EA: (given) => {
    const [leg, other, thickness] = given.n.length === 2 ? [given.n[0]!, given.n[0]!, given.n[1]!] : given.n;
    if (leg === undefined || other === undefined || thickness === undefined || given.n.length > 3)
      return given.refuse(`EA has 2 or 3 dimensions: ${profiles.EA}`);
    return leg === other
      ? angle(given, leg, leg, thickness)
      : given.refuse('the legs of an equal angle are equal: write UA');
  },
  UA: (given) =>
    given.n.length === 3
      ? angle(given, ...(given.n as [number, number, number]))
      : given.refuse(`UA has 3 dimensions: ${profiles.UA}`),
  PFC: (given) => channel(given, 'PFC', pfc, 'AS/NZS 3679.1', pfcSource),
  UPE: (given) => channel(given, 'UPE', upe, 'EN 10365', upeSource),
};

function hollow(
  { radius, standard, refuse }: Given,
  [depth, width, wall]: readonly number[],
): Made | ReturnType<Refuse> {
  const sizes = { kind: 'rhs', depth: depth!, width: width!, wall: wall! } as const;
  if (radius !== undefined && standard === undefined) return { shape: { ...sizes, corners: 'measured', radius } };
  if (radius !== undefined) return refuse('give the standard or the measured radius, not both', standard);
  const key = standard
    ?.toLowerCase()
    .replaceAll(/[^a-z0-9]/g, '')
    .replace(/^(bs|din|is)(?=en)/u, '')
    .replace(/2$|-2$/u, '') as keyof typeof standards | undefined;
  const corners = key !== undefined && Object.hasOwn(standards, key) ? standards[key] : undefined;
  if (corners === undefined) {
    const known = Object.values(names).join(') or (');
    return refuse(
      `name its standard, (${known}), or the outer corner radius as measured, as r5: corners differ`,
      standard,
    );
  }
  return { shape: { ...sizes, corners }, standard: names[corners] };
}

function angle(
  { radius, standard, refuse }: Given,
  depth: number,
  width: number,
  thickness: number,
): Made | ReturnType<Refuse> {
  const sizes = { kind: 'angle', depth, width, thickness } as const;
  if (radius !== undefined) return { shape: { ...sizes, root: radius } };
  if (standard === undefined) return { shape: sizes };
  if (!/^(?:BS |DIN )?EN ?10056(?:-1)?$/iu.test(standard)) {
    return refuse(
      'leave the standard out and write the sizes as measured, with r and the root radius: rolled angles can be thinner than their name',
      standard,
    );
  }
  const root = depth === width ? angleRoots[Math.round(depth * 1000)] : undefined;
  if (root === undefined)
    return refuse('the radii of this size are not in the table: write the root radius as measured, as r6');
  return {
    shape: { ...sizes, root: toSI(root, 'mm'), toe: toSI(root / 2, 'mm') },
    standard: 'EN 10056-1',
    source: angleSource,
  };
}

function channel(
  { n, standard, refuse }: Given,
  profile: Profile,
  rows: readonly ChannelRow[],
  name: string,
  source: Source,
): Made | ReturnType<Refuse> {
  const plainName = (text: string) => text.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
  if (standard !== undefined && plainName(standard) !== plainName(name))
    return refuse(`${profile} is read from ${name}: leave the brackets out`, standard);
  const row = rows.find(
    ([depth, width]) => toSI(depth, 'mm') === n[0] && (n[1] === undefined || toSI(width, 'mm') === n[1]),
  );
  if (!row || n.length > 2)
    return refuse(
      `${profile} sizes are ${rows.map(([d, w]) => `${d}x${w}`).join(', ')}; another channel is written U with its sizes`,
    );
  const [depth, width, web, flange, root] = row.map((x) => toSI(x, 'mm')) as [number, number, number, number, number];
  return {
    shape: { kind: 'channel', depth, width, web, flange, root },
    standard: name,
    source,
    text: `${profile} ${row[0]}x${row[1]}`,
  };
}

/** Sizes that no section can have, most often because they stand in another order. */
export function whyImpossible(shape: SectionShape): string | undefined {
  switch (shape.kind) {
    case 'rhs':
      return 2 * shape.wall >= Math.min(shape.depth, shape.width) ? 'two walls do not fit in it' : undefined;
    case 'chs':
      return 2 * shape.wall >= shape.diameter ? 'two walls do not fit in it' : undefined;
    case 'flat':
      return shape.thickness > shape.width ? 'it is thicker than wide' : undefined;
    case 'angle':
      return shape.thickness >= Math.min(shape.depth, shape.width) ? 'it is thicker than its leg' : undefined;
    case 'top-hat':
      return 2 * shape.wall >= Math.min(shape.crown, shape.depth) ? 'two sheets do not fit in it' : undefined;
    case 'u':
    case 'lipped-u':
      return 2 * shape.wall >= Math.min(shape.depth, shape.width) ? 'two sheets do not fit in it' : undefined;
    case 'box':
      return 2 * shape.flange >= shape.depth || 2 * shape.web >= shape.width ? 'two walls do not fit in it' : undefined;
    default:
      return undefined;
  }
}
