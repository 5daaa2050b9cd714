import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/beams/index.js';
import { straightLine } from '../../../src/calc/beams/least-squares.js';
import { run as runSheet } from '../../../src/calc/run.js';
import type { Example } from '../../../src/calc/sheet.js';
import { exactly } from '../../../src/calc/value.js';
import norris from '../../reference/nist-norris.json' with { type: 'json' };
import { work } from '../sheet-rules.js';

const sheetOf = (id: string) => sheets.find((s) => s.id === id)!;
const run = (id: string, given: Example['given']) => work(sheetOf(id), given);
const value = (id: string, given: Example['given'], name: string) => run(id, given).results![name]!.si;
const close = (a: number, b: number, by = 1e-9) =>
  expect(Math.abs(a - b)).toBeLessThan(by * Math.max(Math.abs(b), 1e-12));

describe('the straight line', () => {
  it('meets the certified values of NIST StRD, Norris, to ten digits', () => {
    const line = straightLine(norris.points as unknown as readonly (readonly [number, number])[]);
    const { certified } = norris;
    close(line.slope, certified.slope, 1e-10);
    close(line.intercept, certified.intercept, 1e-10);
    close(line.slopeError, certified.slopeError, 1e-10);
    close(line.scatter, certified.scatter, 1e-10);
  });
  it('goes through points that lie on a line', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ min: 0.1, max: 5, noNaN: true }), (a, b) => {
        const line = straightLine([0, 1, 2, 5].map((x) => [x, a + b * x] as const));
        close(line.slope, b, 1e-9);
        expect(line.greatest).toBeLessThan(1e-9);
      }),
    );
  });
});

const bar = { force: '2 kN', secondMoment: '27.04 cm⁴', modulus: '10.82 cm³', elasticity: '210 GPa' };
const mm = (x: number) => `${x} mm`;

describe('beams', () => {
  it('with the load in the middle agree with the load anywhere', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 2000 }), (half) => {
        for (const name of ['moment', 'stress', 'deflection']) {
          close(
            value('beam-centre-load', { ...bar, span: mm(2 * half) }, name),
            value('beam-load-anywhere', { ...bar, left: mm(half), right: mm(half) }, name),
          );
        }
      }),
      { numRuns: 20 },
    );
  });
  it('hold the load between them, and mirror', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 900 }), fc.integer({ min: 50, max: 900 }), (a, b) => {
        const [one, other] = [
          run('beam-load-anywhere', { ...bar, left: mm(a), right: mm(b) }).results!,
          run('beam-load-anywhere', { ...bar, left: mm(b), right: mm(a) }).results!,
        ];
        close(one['leftForce']!.si + one['rightForce']!.si, 2000);
        close(one['leftForce']!.si, other['rightForce']!.si);
        close(one['deflection']!.si, other['deflection']!.si);
      }),
      { numRuns: 20 },
    );
  });
  it('of half the span and half the load are two brackets back to back', () => {
    close(
      value('beam-cantilever', { ...bar, force: '1 kN', reach: '500 mm' }, 'deflection'),
      value('beam-centre-load', { ...bar, span: '1000 mm' }, 'deflection'),
    );
    close(
      value('beam-cantilever', { ...bar, force: '1 kN', reach: '500 mm' }, 'moment'),
      value('beam-centre-load', { ...bar, span: '1000 mm' }, 'moment'),
    );
  });
  it('come to the same in pounds and inches', () => {
    const inches = {
      force: '449.6178862 lbf',
      secondMoment: '0.6496388 in4',
      modulus: '0.66027848 in3',
      elasticity: '30457.924919 ksi',
      span: '39.37007874 in',
    };
    close(
      value('beam-centre-load', inches, 'deflection'),
      value('beam-centre-load', { ...bar, span: '1000 mm' }, 'deflection'),
      1e-6,
    );
  });
});

describe('section capacity', () => {
  const section = { elastic: '10 cm³', plastic: '12 cm³', yield: '300 MPa', thickness: '3 mm' };
  it('takes the plastic modulus of compact sections, at most one and a half times the elastic one', () => {
    close(value('bending-as4100', section, 'capacity'), 2700);
    close(value('bending-as4100', { ...section, compactness: 'compact' }, 'capacity'), 3240);
    close(value('bending-as4100', { ...section, plastic: '16 cm³', compactness: 'compact' }, 'capacity'), 4050);
    close(value('bending-en1993', { ...section, class: 'plastic' }, 'capacity'), 3600);
  });
  it.each([
    ['bending-as4100', { thickness: '2.9 mm' }, /3 mm and more/],
    ['bending-as4100', { thickness: '2.9 mm', made: 'as-nzs-1163' }, undefined],
    ['bending-en1993', { thickness: '2.9 mm' }, /3 mm and more/],
    ['bending-en1993', { thickness: '1.5 mm', made: 'hollow' }, undefined],
    ['bending-en1993', { thickness: '1.4 mm', made: 'hollow' }, /1.5 mm/],
  ] as const)('%s at %o', (id, change, reason) => {
    const { outOfRange } = run(id, { ...section, ...change });
    if (reason) expect(outOfRange).toMatch(reason);
    else expect(outOfRange).toBeUndefined();
  });
});

describe('torsion of a tube', () => {
  it('of a thin round tube agrees with the exact one', () => {
    const [r, t] = [25, 0.1];
    const J = 2 * Math.PI * r ** 3 * t;
    const tube = {
      torque: '100 N·m',
      length: '1000 mm',
      enclosed: `${Math.PI * r ** 2} mm²`,
      wall: mm(t),
      torsionConstant: `${J} mm⁴`,
    };
    close(value('closed-tube-torsion', tube, 'stress'), (100 * (r / 1000)) / (J * 1e-12), 1e-9);
    close(value('closed-tube-torsion', tube, 'stiffness') * value('closed-tube-torsion', tube, 'twist'), 100);
  });
});

type Row = Record<string, string>;
const gauge = (x: number) => `${x.toFixed(12)} mm`;
const rig = { arm: '1.4 m', frontWidth: '1.2 m', rearWidth: '1.1 m' };
/** Readings of a body of stiffness K (N·m/rad) on a rig whose rear moves a little too. */
const loads = (K: number, forces: readonly number[], zero = 0, rear = 0): Row[] =>
  forces.map((force) => {
    const angle = (force * 1.4) / K + zero;
    const back = rear * force;
    const [f, r] = [(Math.tan(angle + back) * 1200) / 2, (Math.tan(back) * 1100) / 2];
    return {
      force: `${force} N`,
      frontLeft: gauge(f),
      frontRight: gauge(-f),
      rearLeft: gauge(r),
      rearRight: gauge(-r),
    };
  });

describe('the twist test', () => {
  const steps = [0, 200, 400, 600, 400, 200, 0];
  it('finds the stiffness whatever the zero of the gauges and the movement of the rear', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50_000, max: 2_000_000 }),
        fc.double({ min: -0.01, max: 0.01, noNaN: true }),
        fc.double({ min: 0, max: 1e-6, noNaN: true }),
        (K, zero, rear) => {
          const given = { ...rig, loads: loads(K, steps, zero, rear) };
          close(value('twist-test', given, 'stiffness'), K, 1e-6);
          expect(value('twist-test', given, 'set')).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });
  it('does not mind which way the couple turns', () => {
    const mirrored = loads(200_000, steps).map((r) => ({
      ...r,
      frontLeft: r['frontRight']!,
      frontRight: r['frontLeft']!,
    }));
    close(value('twist-test', { ...rig, loads: mirrored }, 'stiffness'), 200_000, 1e-6);
  });
  it('shows the twist that remains', () => {
    const rows = loads(200_000, steps);
    rows[6] = { ...rows[6]!, frontLeft: '0.3 mm', frontRight: '-0.3 mm' };
    const set = value('twist-test', { ...rig, loads: rows }, 'set');
    expect(set).toBeCloseTo(0.6 / 1200, 5);
    expect(value('twist-test', { ...rig, loads: rows }, 'scatter')).toBeGreaterThan(0);
    expect(value('twist-test', { ...rig, loads: rows }, 'uncertainty')).toBeGreaterThan(0);
  });
  it('needs three loads, two of them different', () => {
    expect(run('twist-test', { ...rig, loads: loads(2e5, [0, 500]) }).outOfRange).toMatch(/three loads/);
    expect(run('twist-test', { ...rig, loads: loads(2e5, [500, 500, 500]) }).outOfRange).toMatch(
      /two of them different/,
    );
    expect(run('twist-test', { ...rig, loads: loads(2e5, [0, 500, 0]) }).outOfRange).toBeUndefined();
  });
  it('prints N·m/deg as 1/1.35582 of lbf·ft/deg', () => {
    const { results } = run('twist-test', { ...rig, loads: loads(200_000, steps) });
    const perDegree = (results!['stiffness']!.si * Math.PI) / 180;
    expect(results!['stiffness']!.unit).toBe('N·m/deg');
    close(perDegree, (200_000 * Math.PI) / 180, 1e-6);
  });
  it('passes the uncertainty of the arm on in proportion', () => {
    const arm = { ...exactly(1.4, 'm'), parts: new Map([['tape', 0.014]]) };
    const inputs = work(sheetOf('twist-test'), { ...rig, loads: loads(200_000, steps) }).inputs;
    const { results } = runSheet('test', sheetOf('twist-test'), { ...inputs, arm });
    expect(Math.abs(results!['stiffness']!.parts.get('tape')!) / results!['stiffness']!.si).toBeCloseTo(0.01, 6);
  });
});

describe('the beaming test', () => {
  const rows = (k: number, settle: number): Row[] =>
    [0, 1000, 2000, 1000, 0].map((force) => ({
      force: `${force} N`,
      middle: gauge(force / k + settle * force),
      front: gauge(1.5 * settle * force),
      rear: gauge(0.5 * settle * force),
    }));
  it('takes the settling of the supports off', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 20000 }), fc.double({ min: 0, max: 1e-4, noNaN: true }), (k, settle) => {
        close(value('beaming-test', { loads: rows(k, settle) }, 'stiffness'), k * 1000, 1e-6);
      }),
      { numRuns: 30 },
    );
  });
});
