import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthPerTurn } from '../../../src/calc/links/adjuster-parts.js';
import { adjusterRange } from '../../../src/calc/links/adjuster-range.js';
import { boltDouble } from '../../../src/calc/links/bolts.js';
import { buckling, rodBuckling, tubeBuckling } from '../../../src/calc/links/buckling.js';
import { bungWeld } from '../../../src/calc/links/bung.js';
import { crankedLink } from '../../../src/calc/links/cranked.js';
import { misalignment } from '../../../src/calc/links/misalignment.js';
import { round } from '../../../src/calc/links/round.js';
import type { Sheet } from '../../../src/calc/sheet.js';
import { result, work } from '../sheet-rules.js';

const as = (sheet: unknown) => sheet as Sheet;
const whole = (min: number, max: number) => fc.integer({ min, max });

describe('buckling', () => {
  const load = (diameter: number, length: number, wall?: number) => {
    const { area, inertia } = round(diameter, wall);
    return buckling(area, inertia, length, 1, 207_000, 350);
  };

  it('is the same by both formulas at the transition, at half the yield load', () => {
    fc.assert(
      fc.property(whole(10, 50), (d) => {
        const { area, inertia } = round(d);
        const { transition, gyration } = load(d, 100);
        const at = buckling(area, inertia, transition * gyration, 1, 207_000, 350);
        expect(at.euler / at.johnson).toBeCloseTo(1, 9);
        expect(at.critical / (area * 350)).toBeCloseTo(0.5, 9);
      }),
    );
  });

  // Johnson's parabola as far as it touches Euler's curve, at half the yield load (memory): with x the square of slenderness
  // against the transition it is 1 − x/2 of the yield load up to there, and 1/(2 x) beyond, where Euler's is never the less.
  it.each([0.1, 0.5, 0.9, 0.95, 0.99, 1.01, 1.1, 2, 5])(
    'at %d of the transition has the load of its own curve',
    (of) => {
      const { area, inertia } = round(20);
      const { transition, gyration } = load(20, 100);
      const at = buckling(area, inertia, of * transition * gyration, 1, 207_000, 350);
      expect(at.critical / (area * 350)).toBeCloseTo(of < 1 ? 1 - of ** 2 / 2 : 1 / (2 * of ** 2), 9);
      expect(at.critical).toBeLessThanOrEqual(at.euler);
    },
  );

  it('falls with length, grows with diameter, and never passes the yield load or the Euler load', () => {
    fc.assert(
      fc.property(whole(10, 50), whole(100, 2000), (d, l) => {
        expect(load(d, l + 10).critical).toBeLessThan(load(d, l).critical);
        expect(load(d + 1, l).critical).toBeGreaterThan(load(d, l).critical);
        expect(load(d, l).critical).toBeLessThan(round(d).area * 350);
        expect(load(d, l).critical).toBeLessThanOrEqual(load(d, l).euler * (1 + 1e-12));
      }),
    );
  });

  it('of a tube whose wall is nearly half its diameter is that of the bar', () => {
    expect(load(20, 500, 9.999999).critical / load(20, 500).critical).toBeCloseTo(1, 9);
  });

  it('takes the wall and the end condition up to their limits and not beyond', () => {
    const tube = { diameter: '50 mm', wall: '1 mm', length: '600 mm', yieldStrength: '350 MPa' };
    expect(work(as(tubeBuckling), tube).results).toBeDefined();
    expect(work(as(tubeBuckling), { ...tube, wall: '0.999 mm' }).outOfRange).toMatch(/buckle locally/);
    expect(work(as(tubeBuckling), { ...tube, wall: '25 mm' }).outOfRange).toMatch(/less than half/);
    const rod = { diameter: '20 mm', length: '600 mm', yieldStrength: '350 MPa' };
    expect(work(as(rodBuckling), { ...rod, fixity: '4' }).results).toBeDefined();
    expect(work(as(rodBuckling), { ...rod, fixity: '4.001' }).outOfRange).toMatch(/between 0.25/);
  });
});

describe('adjusters', () => {
  it('never leave less than the least engagement, nor more than home, and meet one bound at each end', () => {
    const mm = (x: number) => `${x} mm`;
    fc.assert(
      fc.property(
        whole(20, 30),
        whole(20, 30),
        fc.constantFrom(1, 1.5, 2),
        fc.constantFrom(1, 1.5, 2),
        (a, b, pitchA, pitchB) => {
          const { results } = work(as(adjusterRange), {
            length: '600 mm',
            pitchA: mm(pitchA),
            pitchB: mm(pitchB),
            engagedA: mm(a),
            engagedB: mm(b),
            homeA: '35 mm',
            homeB: '38 mm',
            leastA: '16 mm',
            leastB: '18 mm',
          });
          const of = (name: string) => results![name]!.si * 1000;
          expect(Math.min(of('longestA') - 16, of('longestB') - 18)).toBeCloseTo(0, 9);
          expect(Math.min(35 - of('shortestA'), 38 - of('shortestB'))).toBeCloseTo(0, 9);
          const thread = (end: string) => of(`${end}A`) + of(`${end}B`);
          expect(of('longest') - of('shortest')).toBeCloseTo(thread('shortest') - thread('longest'), 9);
        },
      ),
    );
  });

  it('turn by the sum, the difference or one pitch', () => {
    expect(lengthPerTurn('opposite', 1.5, 1.25)).toBe(2.75);
    expect(lengthPerTurn('same', 1.5, 1.25)).toBe(0.25);
    expect(lengthPerTurn('single', 1.5, 1.25)).toBe(1.5);
  });

  it('have no turn left at the least engagement, and say so with a negative number beyond it', () => {
    const ends = {
      length: '600 mm',
      pitchA: '1.5 mm',
      pitchB: '1.5 mm',
      engagedB: '25 mm',
      homeA: '35 mm',
      homeB: '35 mm',
      leastA: '20 mm',
      leastB: '20 mm',
    };
    expect(result(as(adjusterRange), { ...ends, engagedA: '20 mm' }, 'turnsOut')).toBe(0);
    expect(result(as(adjusterRange), { ...ends, engagedA: '17 mm' }, 'turnsOut')).toBeCloseTo(-2, 9);
    expect(work(as(adjusterRange), { ...ends, engagedA: '35.1 mm' }).outOfRange).toMatch(/further than home/);
  });
});

describe('cranked link', () => {
  const given = {
    load: '15 kN',
    direction: 'compression',
    offset: '20 mm',
    length: '600 mm',
    area: '351.86 mm2',
    inertia: '35186 mm4',
    fibre: '16 mm',
    yieldStrength: '350 MPa',
  };

  /** Largest offset of a strut with equal end offsets, by stepping the equation of the bent line from its middle. */
  function bowed(load: number, stiffness: number, length: number, offset: number): number {
    const n = 20_000;
    const h = length / 2 / n;
    let [y, slope] = [1, 0];
    for (let i = 0; i < n; i += 1) {
      const middle = slope - (h / 2) * (load / stiffness) * y;
      const next = y + h * middle;
      slope = middle - (h / 2) * (load / stiffness) * next;
      y = next;
    }
    return offset / y;
  }

  it('bows as its differential equation says', () => {
    const offset = bowed(15e3, 205e9 * 35186e-12, 0.6, 0.02);
    expect(result(as(crankedLink), given, 'moment')).toBeCloseTo(15e3 * offset, 3);
  });

  it('has only the direct stress without an offset, and gives no number at its Euler load', () => {
    expect(result(as(crankedLink), { ...given, offset: '0 mm' }, 'stress')).toBeCloseTo(
      result(as(crankedLink), given, 'direct'),
      9,
    );
    expect(work(as(crankedLink), { ...given, load: '200 kN' }).outOfRange).toMatch(/Euler load/);
    expect(work(as(crankedLink), { ...given, load: '200 kN', direction: 'tension' }).results).toBeDefined();
  });
});

describe('bolts, bungs and misalignment', () => {
  it('the moment in a pin is that of evenly spread loads', () => {
    const [f, a, c, b] = [20, 5, 2, 40];
    const support = (f / 2) * (a / 2 + c + b / 2);
    expect(
      result(
        as(boltDouble),
        { load: '20 kN', diameter: '16 mm', plate: '5 mm', gap: '2 mm', eye: '40 mm', strength: '580 MPa' },
        'moment',
      ),
    ).toBeCloseTo(support - ((f / 2) * b) / 4, 9);
  });

  it('the weld of a bung starts at 3 mm and ends at the edge and the metal of the wall', () => {
    const given = {
      diameter: '33.7 mm',
      wall: '3.2 mm',
      leg: '3 mm',
      weldStrength: '490 MPa',
      yield: '350 MPa',
      tensile: '430 MPa',
      category: 'GP',
    };
    expect(work(as(bungWeld), given).results).toBeDefined();
    expect(work(as(bungWeld), { ...given, wall: '3 mm' }).results).toBeDefined();
    expect(work(as(bungWeld), { ...given, wall: '2.9 mm' }).outOfRange).toMatch(/3 mm and more/);
    expect(work(as(bungWeld), { ...given, leg: '2.9 mm' }).outOfRange).toMatch(/at least 3 mm/);
    expect(work(as(bungWeld), { ...given, leg: '3.2 mm' }).results).toBeDefined();
    expect(work(as(bungWeld), { ...given, leg: '3.3 mm' }).outOfRange).toMatch(/edge of the tube/);
    expect(work(as(bungWeld), { ...given, wall: '6 mm', leg: '5 mm' }).results).toBeDefined();
    expect(work(as(bungWeld), { ...given, wall: '6 mm', leg: '5.1 mm' }).outOfRange).toMatch(/edge of the tube/);
    const soft = { ...given, yield: '150 MPa' };
    expect(result(as(bungWeld), soft, 'capacity')).toBeCloseTo((0.54 * 150 * 3.2 * Math.PI * 33.7) / 1000, 6);
  });

  it('misalignment is that of the mirrored link on mirrored bolts, and the angle of a rotation', () => {
    const rad = Math.PI / 180;
    fc.assert(
      fc.property(
        whole(200, 800),
        whole(-200, 200),
        whole(-200, 200),
        whole(-30, 30),
        whole(-10, 10),
        (rearward, leftward, upward, plan, roll) => {
          const there = misalignment({ rearward, leftward, upward }, plan * rad, roll * rad);
          expect(misalignment({ rearward, leftward: -leftward, upward }, -plan * rad, -roll * rad)).toBeCloseTo(
            there,
            12,
          );
          expect(misalignment({ rearward, leftward: 0, upward }, 0, 0)).toBe(0);
        },
      ),
    );
    expect(misalignment({ rearward: 500, leftward: 0, upward: 0 }, 12 * rad, 0) / rad).toBeCloseTo(12, 9);
    expect(misalignment({ rearward: 0.001, leftward: 0, upward: 500 }, 0, 7 * rad) / rad).toBeCloseTo(7, 3);
  });
});
