import { describe, expect, it } from 'vitest';
import { certifiersOf, isCertifier } from '../../../src/checks/engine/certifier.js';
import { buildOf } from './made.js';

const build = (text: string) => buildOf([], text);
const named = build('certifier: { name: R. Ansell (invented) }\npeople: [{ id: JO, name: J. Okoro, role: builder }]');

describe('whose word settles something', () => {
  it.each(['R. Ansell', 'r ansell', 'R.  ANSELL', ' R. Ansell (licensed)', 'R.Ansell'])('is %s', (name) =>
    expect(isCertifier(name, named)).toBe(true),
  );
  it.each(['J. Okoro', 'JO', 'R. Ansel', 'Ansell', 'R. Ansells', ''])('is not %s', (name) =>
    expect(isCertifier(name, named)).toBe(false),
  );
  it.each(['certifying engineer', 'Certifier', 'approved person', 'signatory', 'our certifier'])(
    'is also a person with the role %s',
    (role) => {
      const other = build(
        `people: [{ id: RA, name: R. Ansell, role: ${role} }, { id: JO, name: J. Okoro, role: welder }]`,
      );
      expect(certifiersOf(other)).toEqual(['R. Ansell', 'RA']);
      expect(isCertifier('RA', other)).toBe(true);
    },
  );
  it.each(['builder', 'decertified welder', 'unapproved person'])('is not one with the role %s', (role) =>
    expect(certifiersOf(build(`people: [{ id: RA, name: R. Ansell, role: ${role} }]`))).toEqual([]),
  );
  it('is nobody where none is named', () => expect(certifiersOf(build('title: A car'))).toEqual([]));
});
