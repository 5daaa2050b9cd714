import type { z } from 'zod';
import { categories, parts } from '../../../calc/welds/as4100.js';
import { filletAs4100 } from '../../../calc/welds/fillet-as4100.js';
import { joints } from '../../../calc/welds/joint.js';
import { readSteel } from '../../../project/designations/steel.js';
import { choice, designation, list, quantity, text } from '../../../project/fields.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { given } from './maybe.js';
import { type Coupons, examineThinWeld, isThin, thinWeldFields } from './thin-weld.js';

/** What a fillet weld joins, beside the thickness of the thinner part. */
export const joinedFields = {
  other: quantity('mm', 'thickness of the other part joined', {
    places: 'smallest',
    how: 'caliper on a cut edge or ultrasonic gauge, cleaned to bright metal',
    typical: '3.0 mm',
    usual: [0.5, 25],
  }),
  joint: choice(joints, 'form of the joint'),
  steel: designation(readSteel, 'steel of the weaker part joined', 'S355'),
  part: choice(parts, 'what every part under 3 mm is'),
  ...thinWeldFields,
};

/** Welds of a piece or bracket. */
export const weldsField = list(
  {
    type: choice({ fillet: 'fillet', butt: 'complete penetration butt', plug: 'plug' }, 'type of weld'),
    leg: quantity('mm', 'leg of a fillet, the shorter one', {
      places: 'smallest',
      measuredAs: 'weld-leg',
      how: 'fillet gauge, the smallest of three places',
      typical: '3 mm',
      usual: [1, 20],
    }),
    length: quantity('mm', 'length of full-size weld without its ends', {
      how: 'tape along the weld',
      typical: '110 mm',
      usual: [12, 1050],
    }),
    thickness: quantity('mm', 'thickness of the thinner part joined', {
      places: 'smallest',
      how: 'caliper before welding',
      typical: '3.0 mm',
      usual: [0.5, 25],
    }),
    ...joinedFields,
    category: choice(categories, 'weld category'),
    metal: quantity('MPa', 'nominal tensile strength of the weld metal', {
      how: 'class on the packet of the consumable',
      typical: '490 MPa',
      usual: [300, 1100],
    }),
    process: text('process', 'GMAW'),
    'load-case': text('load case in build.md', 'crossmember-drop'),
  },
  'welds of the piece',
);
type Weld = NonNullable<z.output<typeof weldsField>>[number];

/** What a weld takes from its piece or its note, where it does not state it itself. */
interface Around {
  thickness?: Maybe;
  other?: Maybe;
  coupons?: Coupons | undefined;
}
type Fillet = Omit<Weld, 'type' | 'process'>;

/** A fillet weld against its load case: the least of weld and metal beside it, or what takes the place of a capacity in thin metal. */
export function examineFillet(
  item: string,
  weld: Fillet,
  subject: string,
  path: readonly string[],
  around: Around,
  work: Work,
): void {
  const size = (name: 'thickness' | 'other') => {
    const own = around[name];
    return weld[name] || own === undefined || isMissing(own) ? work.take(weld[name], ...path, name) : own;
  };
  const sizes = { thickness: size('thickness'), other: size('other') };
  const named = weld['load-case'];
  const thin = Object.values(sizes)
    .flatMap((t) => (!isMissing(t) && isThin([t.si], weld.part) ? [t] : []))
    .sort((a, b) => a.si - b.si)[0];
  if (thin)
    return examineThinWeld(item, weld, { subject, path, thinner: thin, coupons: around.coupons ?? [], named }, work);
  const loadCase = work.loadCase(named);
  work.demandAgainst(item, subject, {
    demand: loadCase?.force ? work.take(loadCase.force, ...path, 'load-case') : undefined,
    capacity: filletCapacity(weld, sizes, subject, path, work),
    loadCase,
    named,
  });
}

/** Design capacity of a fillet weld and of the metal beside it, or why there is none. */
function filletCapacity(
  weld: Fillet,
  sizes: { thickness: Maybe; other: Maybe },
  subject: string,
  path: readonly string[],
  work: Work,
): Maybe {
  const { steel, part = 'plate' } = weld;
  const strength = (of: 'yield' | 'tensile'): Maybe => {
    if (!steel) return work.lacks(...path, 'steel');
    const si = steel[of];
    return si === undefined
      ? {
          missing: [],
          reason: 'the steel of the weaker part is not known, so neither is what it holds beside the weld',
        }
      : given(si, 'MPa', `${steel.written}, least ${of} strength`);
  };
  const { get } = work.sheet(filletAs4100, subject, {
    leg: work.take(weld.leg, ...path, 'leg'),
    length: work.take(weld.length, ...path, 'length'),
    ...sizes,
    joint: weld.joint ?? work.lacks(...path, 'joint'),
    joined: part,
    category: weld.category ?? work.lacks(...path, 'category'),
    strength: work.take(weld.metal, ...path, 'metal'),
    yield: strength('yield'),
    tensile: strength('tensile'),
  });
  return get('capacity');
}

/** The strength of a weld of a piece or bracket. */
export function examineWeld(one: Weld, subject: string, path: readonly string[], around: Around, work: Work): void {
  const uncounted = (says: string, todo: string) =>
    work.state('body.load', subject, 'missing', says, { of: 'element', todo, path });
  if (one.type === 'plug')
    return uncounted(
      'no number: no published rule for the strength of plug welds in body sheet is used here',
      'agree on a test coupon with the certifier',
    );
  if (one.type === 'butt')
    return uncounted(
      'a butt weld that is fused right through carries what the weaker part carries; the parts are calculated, not the weld',
      'show by procedure and test that it is fused right through',
    );
  examineFillet('body.load', one, subject, path, around, work);
}

/** Items and hold points that ask about welds. */
const aboutWelds = new Set([
  'body.weld-standard',
  'body.weld-procedure',
  'body.weld-test',
  'body.crack-test',
  'body.welds-shown',
  'body.tacked',
  'body.joint-form',
  'axle.housing-welds',
  'axle.brackets-shown',
  'tacked',
  'welds-bare',
  'mounts-tacked',
  'mount-welds',
  'brackets-tacked',
  'housing-welds-bare',
]);

/** Welds as a kind of note lists them, with the thicknesses beside them as far as they are stated; SI. */
export type Listed = readonly {
  weld: Pick<Weld, 'thickness' | 'other' | 'part'>;
  beside: readonly (number | undefined)[];
}[];

/**
 * Whether a note that says whether it was welded, and lists its welds, asks for an item or hold point about welds. What is
 * answered stays; `onlyThin` are items for metal that is too thin for a structural standard.
 */
export function asksWelds(
  item: string,
  data: { welded?: 'yes' | 'no' | undefined; answers?: Readonly<Record<string, unknown>> | undefined },
  listed: Listed,
  onlyThin: readonly string[] = ['body.crack-test'],
): boolean {
  if (!aboutWelds.has(item) || data.answers?.[item] !== undefined) return true;
  if (data.welded === 'no' && listed.length === 0) return false;
  return (
    !onlyThin.includes(item) ||
    listed.some(({ weld, beside }) =>
      isThin([weld.thickness?.quantity.si, weld.other?.quantity.si, ...beside], weld.part),
    )
  );
}
