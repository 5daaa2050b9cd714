import { expect, it } from 'vitest';
import { kinds } from '../../../src/checks/kinds/index.js';
import { fieldTree, leaves } from '../../../src/project/field-tree.js';

/** Numbers of the trade that check values of this project are made of: common practice, no source. */
const checkValues = [
  '3/4-16 UNF',
  '3/4-16 UNF LH',
  '3.175 mm',
  '2.5 deg nose up',
  '3.0 deg nose up',
  '3.0 deg down to the rear',
];

it.each(['driveline', 'rear-axle', 'suspension-link', 'steering'])(
  '%s: no example in the help of a field is a check value of the trade',
  (kind) => {
    const examples = leaves(fieldTree(kinds.get(kind)!.shape)).map(({ field }) => field.meta.typical);
    expect(examples.filter((typical) => typical !== undefined).length).toBeGreaterThan(5);
    for (const value of checkValues) expect(examples).not.toContain(value);
  },
);
