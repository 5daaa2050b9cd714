import type { z } from 'zod';
import { categories, parts, thinReason, withinAs4100 } from '../../../calc/welds/as4100.js';
import { filletAs4100 } from '../../../calc/welds/fillet-as4100.js';
import { joints } from '../../../calc/welds/joint.js';
import { readSteel } from '../../../project/designations/steel.js';
import { choice, designation, list, quantity, text } from '../../../project/fields.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { given } from './maybe.js';

/** What a fillet weld joins, beside the thickness of the thinner part. */
export const joinedFields = {
  other: quantity('mm', 'thickness of the other part joined', {
    how: 'caliper on a cut edge or ultrasonic gauge, cleaned to bright metal',
    typical: '3.0 mm',
    usual: [0.6, 40],
  }),
  joint: choice(joints, 'form of the joint'),
  steel: designation(readSteel, 'steel of the weaker part joined', 'S355'),
  part: choice(parts, 'what every part under 3 mm is'),
};

/** Welds of a piece or bracket. */
export const weldsField = list(
  {
    type: choice({ fillet: 'fillet', butt: 'complete penetration butt', plug: 'plug' }, 'type of weld'),
    leg: quantity('mm', 'leg of a fillet, the shorter one', {
      measuredAs: 'weld-leg',
      how: 'fillet gauge, the smallest of three places',
      typical: '3 mm',
      usual: [1, 16],
    }),
    length: quantity('mm', 'length of full-size weld without its ends', {
      how: 'tape along the weld',
      typical: '110 mm',
    }),
    thickness: quantity('mm', 'thickness of the thinner part joined', {
      how: 'caliper before welding',
      typical: '3.0 mm',
      usual: [0.6, 25],
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

/** Thicknesses that a weld takes from its piece, where it does not state them itself. */
interface Around {
  thickness?: Maybe;
  other?: Maybe;
}

/** Design capacity of a fillet weld and of the metal beside it, or why there is none. */
export function filletCapacity(
  weld: Omit<Weld, 'type' | 'process' | 'load-case'>,
  subject: string,
  path: readonly string[],
  around: Around,
  work: Work,
): Maybe {
  const { steel, part = 'plate' } = weld;
  const size = (name: 'thickness' | 'other') => {
    const own = around[name];
    return weld[name] || own === undefined || isMissing(own) ? work.take(weld[name], ...path, name) : own;
  };
  const sizes = { thickness: size('thickness'), other: size('other') };
  if (Object.values(sizes).some((t) => !isMissing(t) && !withinAs4100(t.si, part)))
    return { missing: [], reason: thinReason };
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

/** The strength of a weld against its load case. `around` stands for the thicknesses that the weld does not state itself. */
export function examineWeld(one: Weld, subject: string, path: readonly string[], around: Around, work: Work): void {
  if (one.type === 'plug')
    return work.state(
      'body.load',
      subject,
      'missing',
      'no number: no published rule for the strength of plug welds in body sheet is used here',
      { todo: 'agree on a test coupon with the certifier', path },
    );
  const loadCase = work.loadCase(one['load-case']);
  const demand = loadCase?.force ? work.take(loadCase.force, ...path, 'load-case') : undefined;
  if (one.type === 'butt')
    return work.state(
      'body.load',
      subject,
      'missing',
      'a butt weld that is fused right through carries what the weaker part carries; the parts are reckoned, not the weld',
      { todo: 'show by procedure and test that it is fused right through', path },
    );
  work.demandAgainst('body.load', subject, {
    demand,
    capacity: filletCapacity(one, subject, path, around, work),
    loadCase,
    named: one['load-case'],
  });
}
