import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/fasteners/index.js';
import { classes, coarse, fine } from '../../../src/calc/fasteners/iso898.js';
import { metricLimits } from '../../../src/calc/fasteners/metric-limits.js';
import { metricStressArea } from '../../../src/calc/fasteners/stress-area.js';
import { threadLimits } from '../../../src/calc/fasteners/thread-limits.js';
import { unifiedThreads } from '../../../src/calc/fasteners/unified-threads.js';
import type { Example } from '../../../src/calc/sheet.js';
import { work } from '../sheet-rules.js';

const run = (id: string, given: Example['given']) => work(sheets.find((s) => s.id === id)!, given);
const value = (id: string, given: Example['given'], name: string) => run(id, given).results![name]!.si;
const close = (a: number, b: number, by = 1e-9) => expect(Math.abs(a - b) / Math.abs(b)).toBeLessThan(by);

describe('the table of ISO 898-1', () => {
  const strength: Record<(typeof classes)[number], readonly [proof: number, tensile: number]> = {
    '4.6': [225, 400],
    '4.8': [310, 420],
    '5.6': [280, 500],
    '5.8': [380, 520],
    '6.8': [440, 600],
    '8.8': [580, 800],
    '9.8': [650, 900],
    '10.9': [830, 1040],
    '12.9': [970, 1220],
  };

  it.each([...coarse, ...fine].map((r) => [r.thread, r] as const))(
    '%s holds no slip: loads are area times stress but for rounding',
    (_, row) => {
      close(row.area, metricStressArea(row.d / 1000, row.P / 1000) * 1e6, 0.005);
      classes.forEach((c, i) => {
        const [proof, tensile] = c === '8.8' && row.d > 16 ? [600, 830] : strength[c];
        const absent = c === '9.8' && row.d > 16;
        expect(row.proof[i] === undefined).toBe(absent);
        expect(row.ultimate[i] === undefined).toBe(absent);
        if (absent) return;
        close(row.proof[i]!, row.area * proof, 0.006);
        close(row.ultimate[i]!, row.area * tensile, 0.006);
        if (i > 0 && row.ultimate[i - 1] !== undefined) expect(row.ultimate[i]!).toBeGreaterThan(row.ultimate[i - 1]!);
      });
    },
  );

  it('is not the product: M6 of class 8.8 is listed with 11600 N', () => {
    expect(value('bolt-loads-coarse', { thread: 'M6x1', class: '8.8' }, 'proof')).toBe(11600);
  });
  it('has no class 9.8 above 16 mm', () => {
    expect(run('bolt-loads-coarse', { thread: 'M16x2', class: '9.8' }).outOfRange).toBeUndefined();
    expect(run('bolt-loads-coarse', { thread: 'M18x2.5', class: '9.8' }).outOfRange).toMatch(/no class 9.8/);
  });
  it('leaves grade 2 of SAE J429 weaker above 3/4 in', () => {
    const stress = (thread: string) =>
      value('bolt-loads-inch', { thread, grade: 'SAE 2' }, 'proofStress') / 6894757.293168361;
    close(stress('3/4-10 UNC'), 55);
    close(stress('7/8-9 UNC'), 33);
  });
});

describe('limits of metric threads', () => {
  // ISO 965-1 gives the tolerances by formulas, rounded to the R 40 series of preferred numbers [memory].
  const r40 = [
    1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35,
    3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
  ];
  const preferred = [10, 100].flatMap((k) => r40.map((x) => x * k));
  const nearest = (x: number) => preferred.reduce((a, b) => (Math.abs(b - x) < Math.abs(a - x) ? b : a));
  const ranges = [2.8, 5.6, 11.2, 22.4, 45];

  it.each([...coarse, ...fine].map(({ thread, d, P }) => [thread, d, P] as const))(
    '%s follow the formulas of ISO 965-1',
    (_, d, P) => {
      const limits = metricLimits(d, P)!;
      const at = ranges.findIndex((r) => d <= r);
      const mean = Math.sqrt(ranges[at - 1]! * ranges[at]!);
      const pitchTolerance = nearest(90 * P ** 0.4 * mean ** 0.1);
      const nutTolerance = preferred[preferred.indexOf(pitchTolerance) + 5]!;
      const deviation = Math.round(15 + 11 * P);
      const um = (x: number) => Math.round(x * 1e6);
      const pitchDiameter = (d - 0.649519 * P) * 1000;
      expect(Math.abs(pitchDiameter - deviation - pitchTolerance - um(limits.boltPitchMin))).toBeLessThanOrEqual(2);
      expect(Math.abs(pitchDiameter + nutTolerance - um(limits.nutPitchMax))).toBeLessThanOrEqual(2);
      expect(
        Math.abs(d * 1000 - deviation - nearest(180 * P ** (2 / 3) - 3.15 / Math.sqrt(P)) - um(limits.boltMajorMin)),
      ).toBeLessThanOrEqual(2);
      const minor = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
      // The standard does not always round this one to the nearest: 236 for 230, 450 for 437.
      const step = preferred.indexOf(nearest(minor));
      const allowed = [step, step + 1].map((i) => (d - 1.082532 * P) * 1000 + preferred[i]!);
      expect(Math.min(...allowed.map((a) => Math.abs(a - um(limits.nutMinorMax))))).toBeLessThanOrEqual(2);
    },
  );
});

describe('thread engagement', () => {
  const given = (thread: string, bolt: number, tapped: number) => ({
    thread,
    boltStrength: `${bolt} MPa`,
    tappedStrength: `${tapped} MPa`,
  });

  it('knows every thread that has loads, and every inch thread', () => {
    for (const { thread } of [...coarse, ...fine, ...unifiedThreads])
      expect(threadLimits.has(thread), thread).toBe(true);
  });

  it.each([...threadLimits.keys()].map((t) => [t] as const))(
    '%s: in equal metal the bolt thread has twice the stress area and governs',
    (thread) => {
      const results = run('thread-engagement', given(thread, 800, 800)).results!;
      close(results['boltShear']!.si, 2 * results['area']!.si);
      expect(results['strengthRatio']!.si).toBeLessThan(1);
      expect(results['required']!.si).toBe(results['equal']!.si);
      expect(results['diameters']!.si).toBeGreaterThan(0.4);
      expect(results['diameters']!.si).toBeLessThan(1);
    },
  );

  it('grows in step with the strength ratio once the tapped thread governs, and never shrinks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...threadLimits.keys()),
        fc.integer({ min: 100, max: 1200 }),
        fc.integer({ min: 100, max: 1200 }),
        (thread, bolt, tapped) => {
          const one = value('thread-engagement', given(thread, bolt, tapped), 'required');
          const weaker = value('thread-engagement', given(thread, bolt, tapped / 2), 'required');
          expect(weaker).toBeGreaterThanOrEqual(one);
          const ratio = value('thread-engagement', given(thread, bolt, tapped), 'strengthRatio');
          if (ratio >= 1) close(weaker, 2 * one);
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('torque, joint and bearing', () => {
  it('the torque coefficient turns the torque from friction back into the preload', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 5, max: 25 }),
        fc.integer({ min: 5, max: 25 }),
        (preload, f, fc_) => {
          const thread = {
            preload: `${preload} kN`,
            diameter: '12 mm',
            pitch: '1.75 mm',
            threadFriction: `0.${String(f).padStart(2, '0')}`,
            headFriction: `0.${String(fc_).padStart(2, '0')}`,
          };
          const [torque, K] = [
            value('tightening-torque-friction', thread, 'torque'),
            value('tightening-torque-friction', thread, 'coefficient'),
          ];
          close(
            value(
              'tightening-torque',
              { proof: `${preload} kN`, share: '1', coefficient: String(K), diameter: '12 mm' },
              'torque',
            ),
            torque,
            1e-9,
          );
        },
      ),
      { numRuns: 25 },
    );
  });
  it('without friction the torque lifts the load by one pitch a turn', () => {
    const torque = value(
      'tightening-torque-friction',
      { preload: '10 kN', diameter: '12 mm', pitch: '1.75 mm', threadFriction: '0', headFriction: '0' },
      'torque',
    );
    close(torque * 2 * Math.PI, 10000 * 0.00175);
  });

  it('shares the pull between bolt and parts, and refuses a joint that opens', () => {
    const joint = {
      area: '84.3 mm²',
      proofStress: '580 MPa',
      preload: '30 kN',
      pull: '10 kN',
      boltStiffness: '600e3 N/mm',
      memberStiffness: '2400e3 N/mm',
    };
    const r = run('bolted-joint', joint).results!;
    close(r['boltLoad']!.si - r['clamp']!.si, 10000);
    close(r['constant']!.si, 0.2);
    expect(run('bolted-joint', { ...joint, pull: '37.5 kN' }).outOfRange).toMatch(/opens the joint/);
    expect(run('bolted-joint', { ...joint, pull: '37.4 kN' }).outOfRange).toBeUndefined();
  });

  const ply = { diameter: '12 mm', thickness: '5 mm', strength: '440 MPa', edge: 'machined' };
  it.each([
    ['38.4 mm', 'the edge distance at which both are equal'],
    ['38.3 mm', 'a little less'],
    ['38.5 mm', 'a little more'],
  ])('AS 4100 bearing with %s: %s', (edgeDistance) => {
    const r = run('bolt-bearing-as4100', { ...ply, edgeDistance }).results!;
    close(r['capacity']!.si, Math.min(r['bearing']!.si, r['tearOut']!.si));
    expect(r['tearOut']!.si - r['bearing']!.si).toBeCloseTo(0.9 * (parseFloat(edgeDistance) - 38.4) * 5 * 440, 4);
  });
  it('AS 4100 has no bearing figure below 3 mm', () => {
    expect(run('bolt-bearing-as4100', { ...ply, edgeDistance: '20 mm', thickness: '2.9 mm' }).outOfRange).toMatch(
      /3 mm and more/,
    );
    expect(run('bolt-bearing-as4100', { ...ply, edgeDistance: '20 mm', thickness: '3 mm' }).outOfRange).toBeUndefined();
  });

  const plate = {
    diameter: '12 mm',
    hole: '13 mm',
    thickness: '5 mm',
    strength: '410 MPa',
    boltStrength: '800 MPa',
    end: '39 mm',
    side: '20 mm',
  };
  it('EN 1993-1-8 bearing reaches 2.5 f_u d t far from every edge, and less with neighbours near', () => {
    const far = value('bolt-bearing-en1993', plate, 'capacity');
    close(far, (2.5 * 410e6 * 0.012 * 0.005) / 1.25);
    expect(value('bolt-bearing-en1993', { ...plate, pitch: '30 mm', gauge: '32 mm' }, 'capacity')).toBeLessThan(far);
    close(value('bolt-bearing-en1993', { ...plate, pitch: '300 mm', gauge: '300 mm' }, 'capacity'), far);
  });
  it.each([
    ['end', '15.6 mm', undefined],
    ['end', '15.5 mm', /1.2 d0/],
    ['pitch', '28.6 mm', undefined],
    ['pitch', '28.5 mm', /2.2 d0/],
    ['gauge', '31.2 mm', undefined],
    ['gauge', '31.1 mm', /2.4 d0/],
  ])('EN 1993-1-8 at %s %s', (name, text, reason) => {
    const { outOfRange } = run('bolt-bearing-en1993', { ...plate, [name]: text });
    if (reason) expect(outOfRange).toMatch(reason);
    else expect(outOfRange).toBeUndefined();
  });

  // EN 1090-2, Table 11 [memory]: 1 mm to M14, 2 mm to M24; EN 1993-1-8, 3.6.1(5) [memory; its 0.85 quoted]: M12 and M14 in 2 mm.
  it.each([
    ['M12x1.75', '11.9 mm', /smaller than the bolt/],
    ['M12x1.75', '12 mm', undefined],
    ['M12x1.75', '13 mm', undefined],
    ['M12x1.75', '13.1 mm', /state the design resistance in bearing/],
    ['M12x1.75', '14.1 mm', /normal round holes/],
    ['M10x1.5', '11 mm', undefined],
    ['M10x1.5', '11.1 mm', /normal round holes/],
    ['M16x2', '18 mm', undefined],
    ['M16x2', '18.1 mm', /normal round holes/],
    ['M24x3', '26 mm', undefined],
    ['M24x3', '26.1 mm', /normal round holes/],
  ])('EN 1993-1-8: %s in a hole of %s', (thread, hole, reason) => {
    const { outOfRange } = run('bolt-en1993', { thread, class: '8.8', hole });
    if (reason) expect(outOfRange).toMatch(reason);
    else expect(outOfRange).toBeUndefined();
  });
  it('EN 1993-1-8: M12 and M14 in 2 mm clearance shear with 0.85, and only where bearing gives first', () => {
    for (const [thread, normal, large] of [
      ['M12x1.75', '13 mm', '14 mm'],
      ['M14x2', '15 mm', '16 mm'],
    ] as const) {
      const at = (c: string, more: object) => ({ thread, class: c, ...more }) as Record<string, string>;
      const full = value('bolt-en1993', at('8.8', { hole: normal }), 'threadShear');
      const wide = { hole: large, bearing: '15 kN' };
      close(value('bolt-en1993', at('8.8', wide), 'threadShear'), 0.85 * full);
      close(
        value('bolt-en1993', at('8.8', wide), 'shankShear'),
        0.85 * value('bolt-en1993', at('8.8', { hole: normal }), 'shankShear'),
      );
      close(
        value('bolt-en1993', at('8.8', wide), 'tension'),
        value('bolt-en1993', at('8.8', { hole: normal }), 'tension'),
      );
      close(
        value('bolt-en1993', at('4.6', wide), 'threadShear'),
        value('bolt-en1993', at('4.6', { hole: normal }), 'threadShear'),
      );
      const bearing = (share: number) => at('8.8', { hole: large, bearing: `${0.85 * full * share} N` });
      expect(run('bolt-en1993', bearing(0.999)).outOfRange).toBeUndefined();
      expect(run('bolt-en1993', bearing(1.001)).outOfRange).toMatch(/shear is at least that in bearing/);
    }
  });
  it('EN 1993-1-8 bearing is for normal holes too', () => {
    expect(run('bolt-bearing-en1993', { ...plate, hole: '14 mm' }).outOfRange).toBeUndefined();
    expect(run('bolt-bearing-en1993', { ...plate, hole: '14.1 mm' }).outOfRange).toMatch(/normal round holes/);
  });

  it('gives the same stress area in inches and in mm', () => {
    close(
      value('stress-area-metric', { diameter: '1 in', pitch: '0.1 in' }, 'area'),
      value('stress-area-metric', { diameter: '25.4 mm', pitch: '2.54 mm' }, 'area'),
    );
  });
});
