import { describe, expect, it } from 'vitest';
import { sheetsOf } from '../../src/calc/catalogue.js';
import { isQuantity } from '../../src/calc/inputs.js';
import { run } from '../../src/calc/run.js';
import { equivalentStiffness } from '../../src/calc/sections/equivalent-stiffness.js';
import { type Sheet, type Subject, subjects } from '../../src/calc/sheet.js';
import { elasticity, shearModulus } from '../../src/calc/steel.js';
import { withUsual } from '../../src/calc/usual.js';
import { exactly, expanded } from '../../src/calc/value.js';
import { quantity } from './sheet-rules.js';

const all = (await Promise.all((Object.keys(subjects) as Subject[]).map(sheetsOf))).flat();
const moduli = all.flatMap((sheet) =>
  Object.entries(sheet.inputs).flatMap(([name, input]) =>
    isQuantity(input) && input.unit === 'GPa' ? [[sheet.id, name, input.usual, input.sharedSource] as const] : [],
  ),
);

describe('modulus of steel', () => {
  it('is one declared value in every sheet that is not a standard’s own', () => {
    expect(moduli.length).toBeGreaterThan(9);
    for (const [id, name, usual, source] of moduli) {
      const declared = /shear|G$/.test(name) ? shearModulus : elasticity;
      expect([id, usual, source]).toEqual([id, declared.usual, declared.sharedSource]);
    }
  });

  // Common practice, no source: 205 ± 5 GPa takes in AS 4100 (200 GPa) and EN 1993-1-1 (210 GPa), and ν is 0.3.
  it('has a shear modulus that belongs to it', () => {
    const [E, G] = [quantity(elasticity.usual, 'GPa'), quantity(shearModulus.usual, 'GPa')];
    expect([E.si, E.expanded]).toEqual([205e9, 5e9]);
    expect(Math.abs(G.si - E.si / 2.6)).toBeLessThanOrEqual(G.halfDigit);
    expect(Math.abs(G.expanded! - E.expanded! / 2.6)).toBeLessThanOrEqual(G.halfDigit);
  });

  it('brings its uncertainty to a result, unless a value is given', () => {
    const beam = all.find((s) => s.id === 'beam-centre-load')!;
    const given = {
      force: exactly(2000, 'N'),
      span: exactly(1, 'm'),
      secondMoment: exactly(27.04e-8, 'm^4'),
      modulus: exactly(10.82e-6, 'm^3'),
    };
    const usual = run('x', beam, withUsual(beam, given)).results!;
    expect(expanded(usual['deflection']!) / usual['deflection']!.si).toBeCloseTo(5 / 205, 3);
    expect([...usual['deflection']!.parts.keys()]).toEqual([elasticity.sharedSource]);
    expect(expanded(usual['stress']!)).toBe(0);
    const own = run('x', beam, withUsual(beam, { ...given, elasticity: exactly(210e9, 'GPa') })).results!;
    expect(expanded(own['deflection']!)).toBe(0);
  });

  it('cancels where one member of steel is compared with another', () => {
    const sheet = equivalentStiffness as unknown as Sheet;
    const sizes = ['A', 'Ix', 'Iy', 'J'].flatMap((name, i) => [
      [`original${name}`, exactly(3e-8 * (i + 1), 'm^4')] as const,
      [`replacement${name}`, exactly(7e-8 / (i + 3), 'm^4')] as const,
    ]);
    const done = run('x', sheet, withUsual(sheet, Object.fromEntries(sizes)));
    for (const ratio of Object.values(done.results!)) expect([...ratio.parts]).toEqual([]);
    const aluminium = { ...Object.fromEntries(sizes), replacementE: exactly(70e9, 'GPa') };
    expect(expanded(run('x', sheet, withUsual(sheet, aluminium)).results!['axial']!)).toBeGreaterThan(0);
  });
});
