import type { z } from 'zod';
import { categories, parts } from '../../../calc/welds/as4100.js';
import { filletAs4100 } from '../../../calc/welds/fillet-as4100.js';
import { choice, list, quantity, text } from '../../../project/fields.js';
import type { Maybe, Work } from '../../engine/work.js';

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
    part: choice(parts, 'what the thinner part is'),
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

/** The strength of a weld against its load case. `thinner` stands for a thickness that the weld does not state itself. */
export function examineWeld(one: Weld, subject: string, path: readonly string[], thinner: Maybe, work: Work): void {
  if (one.type === 'plug')
    return work.state(
      'body.load',
      subject,
      'missing',
      'no number: no published rule for the strength of plug welds in body sheet is used here',
      { todo: 'agree on a test coupon with the certifier', path },
    );
  const thickness = one.thickness ? work.take(one.thickness, ...path, 'thickness') : thinner;
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
  const sheet = work.sheet(filletAs4100, subject, {
    leg: work.take(one.leg, ...path, 'leg'),
    length: work.take(one.length, ...path, 'length'),
    thickness,
    joined: one.part ?? 'plate',
    category: one.category ?? work.lacks(...path, 'category'),
    strength: work.take(one.metal, ...path, 'metal'),
  });
  work.demandAgainst('body.load', subject, {
    demand,
    capacity: sheet.get('capacity'),
    loadCase,
    named: one['load-case'],
  });
}
