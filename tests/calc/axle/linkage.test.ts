import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axlePath,
  axlePosition,
  axlePositions,
  carriedBy,
  instantCentre,
  type Links,
  type Point,
} from '../../../src/calc/axle/linkage.js';
import { axleSideView } from '../../../src/calc/axle/side-view.js';
import { axleTravel } from '../../../src/calc/axle/travel.js';
import { OutOfRange, type Sheet } from '../../../src/calc/sheet.js';
import { work } from '../sheet-rules.js';

const whole = (min: number, max: number) => fc.integer({ min, max });
const axleEnd = (low: number, high: number) => fc.record({ x: whole(-60, 60), z: whole(low, high) });

/** Arms that run forward from the axle by 300 to 800 mm and slope by up to 80 mm, the upper at least 100 mm above the lower. */
const links: fc.Arbitrary<Links> = fc
  .record({
    lower: axleEnd(180, 260),
    upper: axleEnd(420, 520),
    lowerRun: whole(400, 800),
    upperRun: whole(300, 700),
    lowerRise: whole(-60, 80),
    upperRise: whole(-80, 60),
  })
  .map((r) => ({
    lower: { axle: r.lower, body: { x: r.lower.x + r.lowerRun, z: r.lower.z + r.lowerRise } },
    upper: { axle: r.upper, body: { x: r.upper.x + r.upperRun, z: r.upper.z + r.upperRise } },
    centre: { x: 0, z: 320 },
  }));
const travel = whole(-80, 80);
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.z - b.z);

describe('axle on links', () => {
  it('keeps the length of both arms, and the distance between points of the axle, at every travel', () => {
    fc.assert(
      fc.property(links, travel, (l, t) => {
        const p = axlePosition(l, t);
        expect(apart(p.lower, l.lower.body)).toBeCloseTo(apart(l.lower.axle, l.lower.body), 8);
        expect(apart(p.upper, l.upper.body)).toBeCloseTo(apart(l.upper.axle, l.upper.body), 8);
        expect(apart(p.lower, p.upper)).toBeCloseTo(apart(l.lower.axle, l.upper.axle), 8);
        expect(p.centre.z - l.centre.z).toBeCloseTo(t, 8);
        expect(carriedBy(l, l.upper.axle, p).x).toBeCloseTo(p.upper.x, 8);
      }),
    );
  });

  it('keeps its slope on equal parallel arms', () => {
    fc.assert(
      fc.property(whole(300, 700), whole(-100, 100), whole(150, 300), travel, (run, rise, between, t) => {
        const lower = { axle: { x: 10, z: 220 }, body: { x: 10 + run, z: 220 + rise } };
        const up = (p: Point) => ({ x: p.x - 25, z: p.z + between });
        const l: Links = { lower, upper: { axle: up(lower.axle), body: up(lower.body) }, centre: { x: 0, z: 320 } };
        expect(axlePosition(l, t).rotation).toBeCloseTo(0, 12);
        expect(() => instantCentre(l)).toThrow(/parallel in side view/);
      }),
    );
  });

  it('turns at first about the instant centre: dθ/dz = −1/x_IC, dx/dz = (z_0 − z_IC)/x_IC', () => {
    fc.assert(
      fc.property(links, (l) => {
        fc.pre(Math.abs(slopeGap(l)) > 1e-3);
        const centre = instantCentre(l);
        const [up, down] = [axlePosition(l, 0.01), axlePosition(l, -0.01)];
        expect((up.rotation - down.rotation) / 0.02).toBeCloseTo(-1 / centre.x, 8);
        expect((up.shift - down.shift) / 0.02).toBeCloseTo((l.centre.z - centre.z) / centre.x, 5);
      }),
    );
  });

  it('is the same in a mirror, with the turn and the shift the other way round', () => {
    const seen = (p: Point): Point => ({ x: -p.x, z: p.z });
    fc.assert(
      fc.property(links, travel, (l, t) => {
        const mirrored: Links = {
          lower: { axle: seen(l.lower.axle), body: seen(l.lower.body) },
          upper: { axle: seen(l.upper.axle), body: seen(l.upper.body) },
          centre: l.centre,
        };
        expect(axlePosition(mirrored, t).rotation).toBeCloseTo(-axlePosition(l, t).rotation, 10);
        expect(axlePosition(mirrored, t).shift).toBeCloseTo(-axlePosition(l, t).shift, 7);
      }),
    );
  });

  it('tips the nose of the pinion up on longer upper arms and down on longer lower arms', () => {
    fc.assert(
      fc.property(links, whole(1, 8), (l, longer) => {
        expect(axlePosition(l, 0, { upper: longer }).rotation).toBeGreaterThan(0);
        expect(axlePosition(l, 0, { lower: longer }).rotation).toBeLessThan(0);
      }),
    );
  });

  it('comes to the same place by few stations and by many, and stands still at ride height', () => {
    fc.assert(
      fc.property(links, travel, (l, t) => {
        expect(axlePath(l, t, 50).at(-1)!.rotation).toBeCloseTo(axlePosition(l, t).rotation, 10);
        const [still] = axlePositions(l, [0, t]);
        expect(still!.shift).toBeCloseTo(0, 9);
        expect(still!.rotation).toBeCloseTo(0, 12);
      }),
    );
  });

  it('says so where the arms cannot reach', () => {
    fc.assert(
      fc.property(links, (l) => {
        expect(() => axlePosition(l, 3000)).toThrow(OutOfRange);
        expect(() => axlePosition(l, 0, { lower: -3000 })).toThrow(/cannot reach/);
      }),
    );
  });
});

const slopeGap = ({ lower, upper }: Links) =>
  (lower.body.z - lower.axle.z) / (lower.body.x - lower.axle.x) -
  (upper.body.z - upper.axle.z) / (upper.body.x - upper.axle.x);

const side = axleSideView as unknown as Sheet;
const given = {
  lowerAxleX: '0 mm',
  lowerAxleZ: '220 mm',
  lowerBodyX: '600 mm',
  lowerBodyZ: '260 mm',
  upperAxleX: '30 mm',
  upperAxleZ: '480 mm',
  upperBodyX: '430 mm',
  upperBodyZ: '440 mm',
  wheelbase: '2600 mm',
  massHeight: '560 mm',
};

describe('side view of a live axle', () => {
  // 100 % anti-squat is the line of slope h/L through the contact patch (page on adjustments of four-link axles, quoted).
  it('gives 100 % where the instant centre lies on the line of slope h/L', () => {
    const on = {
      ...given,
      lowerAxleZ: '215.3846 mm',
      lowerBodyX: '1000 mm',
      lowerBodyZ: '215.3846 mm',
      upperAxleX: '0 mm',
      upperAxleZ: '430.7692 mm',
      upperBodyX: '500 mm',
      upperBodyZ: '323.0769 mm',
    };
    const { results } = work(side, on);
    expect(results!.centreX!.si).toBeCloseTo(1, 6);
    expect(results!.antiSquat!.si).toBeCloseTo(1, 6);
  });

  it('gives a reason for parallel arms, for one point of an arm missing its other, and for a travel out of reach', () => {
    expect(work(side, { ...given, upperBodyZ: '506.6666666666666 mm', upperBodyX: '430 mm' }).outOfRange).toMatch(
      /parallel/,
    );
    expect(work(side, { ...given, upperBodyX: '30 mm', upperBodyZ: '480 mm' }).outOfRange).toMatch(/lie apart/);
    const { wheelbase: _w, massHeight: _h, ...arms } = given;
    const travels = { ...arms, centreZ: '320 mm', pinionSlope: '3 deg' };
    expect(work(axleTravel as unknown as Sheet, { ...travels, bump: '900 mm', droop: '50 mm' }).outOfRange).toMatch(
      /cannot reach/,
    );
    expect(work(axleTravel as unknown as Sheet, { ...travels, bump: '0 mm', droop: '0 mm' }).outOfRange).toMatch(
      /not both zero/,
    );
  });
});
