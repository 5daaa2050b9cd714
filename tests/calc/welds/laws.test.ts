import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Example } from '../../../src/calc/sheet.js';
import { sheets } from '../../../src/calc/welds/index.js';
import { lineGroup, type Segment } from '../../../src/calc/welds/line-group.js';
import { work } from '../sheet-rules.js';

const sheetOf = (id: string) => sheets.find((s) => s.id === id)!;
const run = (id: string, given: Example['given']) => work(sheetOf(id), given);
const value = (id: string, given: Example['given'], name: string) => run(id, given).results![name]!.si;
const close = (a: number, b: number, by = 1e-9) => expect(Math.abs(a - b) / Math.abs(b)).toBeLessThan(by);
const row = (...[x1, y1, x2, y2]: readonly number[]) => ({
  x1: `${x1} mm`,
  y1: `${y1} mm`,
  x2: `${x2} mm`,
  y2: `${y2} mm`,
});
const side = fc.double({ min: 20, max: 300, noNaN: true });

describe('fillet welds', () => {
  const parts = { thickness: '6 mm', other: '8 mm', joint: 'tee' };
  const as = {
    leg: '6 mm',
    length: '100 mm',
    ...parts,
    category: 'SP',
    strength: '480 MPa',
    yield: '350 MPa',
    tensile: '450 MPa',
  };
  const en = { leg: '6 mm', length: '100 mm', ...parts, steel: 'S275', yield: '275 MPa', strength: '410 MPa' };
  const AS = 'fillet-weld-as4100';
  const EN = ['fillet-weld-en1993', 'fillet-weld-en1993-directional'];

  it('comes to the same in inches and ksi', () => {
    const inches = { ...as, leg: '0.2362204724409449 in', length: '3.937007874015748 in', thickness: '6 mm' };
    close(value(AS, inches, 'capacity'), value(AS, as, 'capacity'));
  });
  it('grows in step with leg and length as long as the metal beside it holds', () => {
    close(value(AS, { ...as, leg: '12 mm' }, 'weld'), 2 * value(AS, as, 'weld'));
    close(value(AS, { ...as, length: '300 mm' }, 'capacity'), 3 * value(AS, as, 'capacity'));
  });

  it.each([
    ['2.99 mm', /not calculable by AS 4100.*3 mm and more.*sectioned coupon of the same thickness and position/],
    ['1.2 mm', /not calculable/],
    ['3 mm', undefined],
    ['3.01 mm', undefined],
  ])('AS 4100 at a part of %s, whichever of both it is', (thin, reason) => {
    for (const sizes of [{ thickness: thin }, { other: thin }]) {
      const { outOfRange } = run(AS, { ...as, leg: '3 mm', ...sizes });
      if (reason) expect(outOfRange).toMatch(reason);
      else expect(outOfRange).toBeUndefined();
    }
  });
  it.each([
    ['3.99 mm', /not calculable by EN 1993-1-8.*4 mm and more.*crack test/],
    ['4 mm', undefined],
    ['4.01 mm', undefined],
  ])('EN 1993-1-8 at a part of %s, whichever of both it is', (thin, reason) => {
    for (const id of EN)
      for (const sizes of [{ thickness: thin }, { other: thin }]) {
        const { outOfRange } = run(id, { ...en, ...sizes, along: '1 kN' });
        if (reason) expect(outOfRange).toMatch(reason);
        else expect(outOfRange).toBeUndefined();
      }
  });
  it('takes a thin hollow section to AS/NZS 1163 with its own factor, in category SP alone, to its thinnest wall', () => {
    const thin = { ...as, leg: '3 mm', thickness: '2.5 mm', joined: 'as-nzs-1163' };
    expect(value(AS, thin, 'factor')).toBe(0.7);
    expect(value(AS, { ...thin, thickness: '3 mm' }, 'factor')).toBe(0.8);
    expect(run(AS, { ...thin, category: 'GP' }).outOfRange).toMatch(/category SP/);
    expect(run(AS, { ...thin, thickness: '1.6 mm' }).outOfRange).toBeUndefined();
    expect(run(AS, { ...thin, thickness: '1.59 mm' }).outOfRange).toMatch(/not calculable/);
    expect(run(AS, { ...thin, other: '1.2 mm' }).outOfRange).toMatch(/not calculable/);
  });
  it('refuses welds too short to count', () => {
    expect(run(AS, { ...as, length: '24 mm' }).outOfRange).toBeUndefined();
    expect(run(AS, { ...as, length: '23.9 mm' }).outOfRange).toMatch(/four legs/);
    expect(run('fillet-weld-en1993', { ...en, length: '38.4 mm' }).outOfRange).toMatch(/30 mm/);
    expect(run('fillet-weld-en1993', { ...en, length: '38.5 mm' }).outOfRange).toBeUndefined();
    expect(run('fillet-weld-en1993', { ...en, leg: '4.2 mm' }).outOfRange).toMatch(/throat/);
    expect(run('fillet-weld-en1993', { ...en, thickness: '4 mm', joint: 'lap' }).outOfRange).toMatch(/throat/);
  });

  // AS 4100, 9.6.3.3 [memory]: along an edge under 6 mm the thickness, from there up 1 mm less.
  it.each([
    ['lap', '5.9 mm', 5.9],
    ['lap', '6 mm', 5],
    ['lap', '7 mm', 6],
    ['lap', '8 mm', 6],
    ['tee', '6 mm', 6],
    ['tee', '5 mm', 6],
  ])('a leg of 6 mm at a %s of %s counts with %d mm', (joint, thickness, counted) => {
    close(value(AS, { ...as, joint, thickness, other: '10 mm' }, 'counted'), counted / 1000);
    close(value(AS, { ...as, joint, thickness: '10 mm', other: thickness }, 'counted'), counted / 1000);
  });
  it('by EN 1993-1-8 counts along an edge with no more than the part is thick', () => {
    for (const id of EN) {
      const at = (joint: string) => value(id, { ...en, joint, thickness: '5 mm', along: '1 kN' }, 'counted');
      close(at('lap'), 0.005);
      close(at('tee'), 0.006);
    }
  });

  it('never passes on more than the thinner part holds in shear or tension beside it', () => {
    const size = fc.double({ min: 4, max: 20, noNaN: true });
    fc.assert(
      fc.property(size, size, size, fc.constantFrom('lap', 'tee'), (leg, one, two, joint) => {
        const sizes = { leg: `${leg + 3} mm`, thickness: `${one} mm`, other: `${two} mm`, length: '200 mm', joint };
        const thin = Math.min(one, two);
        const byAs = value(AS, { ...as, ...sizes }, 'perLength') / 1000;
        expect(byAs).toBeLessThanOrEqual(0.9 * 0.6 * 350 * thin * (1 + 1e-9));
        expect(byAs).toBeLessThanOrEqual(0.9 * Math.min(350, 0.85 * 450) * thin * (1 + 1e-9));
        if ((joint === 'lap' ? Math.min(leg + 3, thin) : leg + 3) < 4.25) return;
        for (const id of EN)
          expect(value(id, { ...en, ...sizes, acrossOne: '1 kN' }, 'perLength') / 1000).toBeLessThanOrEqual(
            ((275 * thin) / Math.sqrt(3)) * (1 + 1e-9),
          );
      }),
      { numRuns: 60 },
    );
    close(value(AS, { ...as, leg: '12 mm', thickness: '4 mm' }, 'capacity'), 0.9 * 0.6 * 350 * 4 * 100);
  });
  it('has the strength of the steel that it is given, and refuses a tensile strength below the yield strength', () => {
    expect(run(AS, { ...as, tensile: '350 MPa' }).outOfRange).toBeUndefined();
    expect(run(AS, { ...as, tensile: '349 MPa' }).outOfRange).toMatch(/not below the yield/);
    expect(value(AS, { ...as, yield: '200 MPa' }, 'capacity')).toBeLessThan(value(AS, as, 'capacity'));
  });

  it('is √1.5 times as strong across as along, in any turn of the force never weaker than the simplified method', () => {
    const directional = (f: Record<string, string>) => value('fillet-weld-en1993-directional', { ...en, ...f }, 'weld');
    close(directional({ acrossOne: '10 kN' }), Math.sqrt(1.5) * directional({ along: '10 kN' }));
    close(directional({ acrossOne: '10 kN' }), directional({ acrossTwo: '-10 kN' }));
    const simple = value('fillet-weld-en1993', en, 'weld');
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (a, b, c) => {
          expect(
            directional({
              acrossOne: `${a.toFixed(6)} kN`,
              acrossTwo: `${b.toFixed(6)} kN`,
              along: `${c.toFixed(6)} kN`,
            }),
          ).toBeGreaterThan(simple * (1 - 1e-9));
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('butt welds', () => {
  it('are governed by yield or by rupture, whichever is less', () => {
    const given = { width: '100 mm', thickness: '6 mm', category: 'SP' };
    close(value('butt-weld-as4100', { ...given, yield: '300 MPa', tensile: '400 MPa' }, 'tension'), 0.9 * 600 * 300);
    close(value('butt-weld-as4100', { ...given, yield: '350 MPa', tensile: '400 MPa' }, 'tension'), 0.9 * 600 * 340);
    close(
      value('butt-weld-as4100', { ...given, yield: '300 MPa', tensile: '400 MPa', category: 'GP' }, 'tension'),
      0.6 * 600 * 300,
    );
  });
  it('have no number for thin sheet', () => {
    const given = { width: '100 mm', yield: '300 MPa', tensile: '400 MPa' };
    expect(run('butt-weld-as4100', { ...given, category: 'SP', thickness: '2.9 mm' }).outOfRange).toMatch(
      /3 mm and more/,
    );
    expect(run('butt-weld-en1993', { ...given, thickness: '3.9 mm' }).outOfRange).toMatch(/4 mm and more/);
  });
});

describe('lines of weld', () => {
  const rectangle = (b: number, d: number): Segment[] => [
    { x1: 0, y1: 0, x2: b, y2: 0 },
    { x1: b, y1: 0, x2: b, y2: d },
    { x1: b, y1: d, x2: 0, y2: d },
    { x1: 0, y1: d, x2: 0, y2: 0 },
  ];

  // Closed forms of unit weld groups: Shigley, Mechanical Engineering Design, tables of torsional and bending properties of fillet welds [memory].
  it('has the polar second moments of the handbook patterns', () => {
    fc.assert(
      fc.property(side, side, (b, d) => {
        const polar = (s: Segment[]) => {
          const g = lineGroup(s);
          return g.Ix + g.Iy;
        };
        const [bottom, right, top, left] = rectangle(b, d) as [Segment, Segment, Segment, Segment];
        close(polar([left]), d ** 3 / 12);
        close(polar([left, right]), (d * (3 * b ** 2 + d ** 2)) / 6);
        close(polar([left, bottom]), ((b + d) ** 4 - 6 * b ** 2 * d ** 2) / (12 * (b + d)));
        close(polar([left, bottom, top]), (8 * b ** 3 + 6 * b * d ** 2 + d ** 3) / 12 - b ** 4 / (2 * b + d));
        close(polar([bottom, right, top, left]), (b + d) ** 3 / 6);
        close(lineGroup([left, bottom, top]).cx, b ** 2 / (2 * b + d));
        close(lineGroup([bottom, right, top, left]).Ix, (d ** 2 / 6) * (3 * b + d));
        close(lineGroup([bottom, top]).Ix, (b * d ** 2) / 2);
      }),
    );
  });

  it('does not care how a weld is cut into pieces or which way it runs', () => {
    fc.assert(
      fc.property(side, side, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (b, d, k) => {
        const whole = lineGroup([
          { x1: 0, y1: 0, x2: b, y2: d },
          { x1: 0, y1: 0, x2: 0, y2: d },
        ]);
        const cut = lineGroup([
          { x1: b, y1: d, x2: k * b, y2: k * d },
          { x1: 0, y1: 0, x2: k * b, y2: k * d },
          { x1: 0, y1: d, x2: 0, y2: 0 },
        ]);
        for (const name of ['length', 'cx', 'cy', 'Ix', 'Iy', 'Ixy'] as const) close(cut[name], whole[name], 1e-7);
      }),
    );
  });
});

describe('weld groups', () => {
  const pair = [row(0, 0, 0, 100), row(60, 0, 60, 100)];

  it('under a force through the centroid carries plain shear', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: 1, max: 50 }),
        (fx, fy, fz) => {
          const given = {
            segments: pair,
            forceX: `${fx} kN`,
            forceY: `${fy} kN`,
            forceZ: `${fz} kN`,
            atX: '30 mm',
            atY: '50 mm',
          };
          close(value('weld-group', given, 'greatest'), (Math.hypot(fx, fy, fz) * 1000) / 0.2);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('bent out of its plane agrees with M d / 2 over the handbook second moment', () => {
    const given = {
      segments: [row(0, 0, 60, 0), row(0, 100, 60, 100)],
      forceY: '-5 kN',
      atX: '30 mm',
      atY: '50 mm',
      atZ: '200 mm',
    };
    const moment = 5000 * 0.2;
    close(Math.abs(value('weld-group', given, 'vz')), (moment * 0.05) / ((0.06 * 0.1 ** 2) / 2));
    close(Math.abs(value('weld-group', given, 'vy')), 5000 / 0.12);
  });

  it('balances the load: the forces along all welds add up to the force and to its moment', () => {
    const given = {
      segments: [row(0, 0, 0, 80), row(0, 0, 50, 0)],
      forceX: '3 kN',
      forceY: '-4 kN',
      forceZ: '2 kN',
      atX: '90 mm',
      atY: '40 mm',
      atZ: '30 mm',
    };
    const r = Object.fromEntries(
      Object.entries(run('weld-group', given).results!).map(([n, v]) => [n, v.si]),
    ) as Record<string, number>;
    const steps = 4000;
    let [Fz, Mx, My] = [0, 0, 0];
    for (const [x1, y1, x2, y2] of [
      [0, 0, 0, 0.08],
      [0, 0, 0.05, 0],
    ] as const) {
      const ds = Math.hypot(x2 - x1, y2 - y1) / steps;
      for (let i = 0; i < steps; i++) {
        const k = (i + 0.5) / steps;
        const [u, v] = [x1 + k * (x2 - x1) - r['centreX']!, y1 + k * (y2 - y1) - r['centreY']!];
        const f = (2000 / r['length']! + r['slopeX']! * u + r['slopeY']! * v) * ds;
        Fz += f;
        Mx += v * f;
        My -= u * f;
      }
    }
    close(Fz, 2000, 1e-6);
    close(Mx, r['momentX']!, 1e-6);
    close(My, r['momentY']!, 1e-6);
  });

  it('does not change when the origin moves or everything is mirrored', () => {
    const at = (dx: number, s: number) =>
      value(
        'weld-group',
        {
          segments: [row(s * dx, 10, s * dx, 90), row(s * dx, 10, s * (dx + 40), 10)],
          forceX: `${s * 2} kN`,
          forceY: '-4 kN',
          forceZ: '1 kN',
          atX: `${s * (dx + 100)} mm`,
          atY: '60 mm',
          atZ: '20 mm',
        },
        'greatest',
      );
    close(at(300, 1), at(0, 1));
    close(at(0, -1), at(0, 1));
  });

  it('on one line holds bending along the line and refuses bending across it', () => {
    const line = { segments: [row(0, 0, 0, 100)], atX: '0 mm', atY: '50 mm', atZ: '30 mm' };
    close(Math.abs(value('weld-group', { ...line, forceY: '1 kN' }, 'vz')), (1000 * 0.03 * 0.05) / (0.1 ** 3 / 12));
    expect(run('weld-group', { ...line, forceX: '1 kN' }).outOfRange).toMatch(/one line/);
  });
});
