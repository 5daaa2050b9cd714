import { expect, it } from 'vitest';
import { kinds } from '../../../src/checks/kinds/index.js';
import { fieldTree, leaves } from '../../../src/project/field-tree.js';

/** Numbers of the trade that check values of this project are made of: common practice, no source. */
const checkValues = {
  'thread of an adjuster': ['3/4-16 UNF', '3/4-16 UNF LH'],
  'change of length for one turn of it': ['3.175 mm', '0.125 in'],
  'slope of a pinion as it is set up': ['2.5 deg nose up', '3.0 deg nose up', '3.0 deg down to the rear'],
  'plug of a disused opening': ['1/4-18 NPT'],
  'unbalance of a damper or flywheel': ['28 oz·in', '50 oz·in'],
  'timing mark at the positive stop': ['20.5 deg', '21.5 deg'],
};

it.each([...kinds.keys()])('%s: no example in the help of a field is a check value of the trade', (kind) => {
  const fields = leaves(fieldTree(kinds.get(kind)!.shape)).map(({ field }) => field.meta);
  const examples = fields.map(({ typical }) => typical).filter((typical) => typical !== undefined);
  expect(examples.length).toBeGreaterThan(5);
  const words = fields.flatMap(({ says, how }) => [says ?? '', how ?? '']);
  for (const [what, values] of Object.entries(checkValues))
    for (const value of values) {
      expect(examples, what).not.toContain(value);
      expect(
        words.filter((text) => text.includes(value)),
        what,
      ).toEqual([]);
    }
});
