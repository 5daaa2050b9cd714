import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adhesionUtilisation, requiredRate, tightestAdhesion } from '../../../src/calc/brakes/adhesion.js';
import { dualBrakes, tandemBrakes } from '../../../src/calc/brakes/chain.js';
import { circuitFailure } from '../../../src/calc/brakes/circuit-failure.js';
import { brakeDistribution } from '../../../src/calc/brakes/distribution.js';
import { meanDeceleration, stoppingDistance } from '../../../src/calc/brakes/test-run.js';
import { valveCrossing } from '../../../src/calc/brakes/valve-crossing.js';
import {
  adhesionUsed,
  axleLoads,
  centreOfMass,
  crossingRate,
  g,
  idealFrontShare,
  ratesAtAdhesion,
  type Vehicle,
} from '../../../src/calc/brakes/vehicle.js';
import type { Sheet } from '../../../src/calc/sheet.js';
import { result, work } from '../sheet-rules.js';

const as = (sheet: unknown) => sheet as Sheet;
const whole = (min: number, max: number) => fc.integer({ min, max });
const vehicle: fc.Arbitrary<Vehicle> = fc
  .record({
    frontMass: whole(300, 1200),
    rearMass: whole(300, 1200),
    wheelbase: whole(2000, 3200),
    massHeight: whole(400, 700),
  })
  .map((v) => ({ ...v, wheelbase: v.wheelbase / 1000, massHeight: v.massHeight / 1000 }));
const share = whole(50, 90).map((x) => x / 100);
const rate = whole(5, 80).map((x) => x / 100);
const stands = (v: Vehicle, z: number) => centreOfMass(v).toFront > z * v.massHeight * 1.01;

describe('distribution', () => {
  it('moves load forward without losing any', () => {
    fc.assert(
      fc.property(vehicle, rate, (v, z) => {
        fc.pre(stands(v, z));
        const { front, rear } = axleLoads(v, z);
        expect(front + rear).toBeCloseTo(centreOfMass(v).weight, 6);
        expect(front).toBeGreaterThan(v.frontMass * g);
      }),
    );
  });

  it('uses the same adhesion at both axles where z = z*, and there k = z', () => {
    fc.assert(
      fc.property(vehicle, share, (v, phi) => {
        const z = crossingRate(v, phi);
        fc.pre(z > 0.01 && stands(v, z));
        const { front, rear } = adhesionUsed(v, phi, z);
        expect(front).toBeCloseTo(z, 9);
        expect(rear).toBeCloseTo(z, 9);
        expect(idealFrontShare(v, z)).toBeCloseTo(phi, 9);
      }),
    );
  });

  it('uses more at the front below z* and more at the rear above', () => {
    fc.assert(
      fc.property(vehicle, share, rate, (v, phi, z) => {
        fc.pre(stands(v, z) && Math.abs(z - crossingRate(v, phi)) > 1e-6);
        const { front, rear } = adhesionUsed(v, phi, z);
        expect(front > rear).toBe(z < crossingRate(v, phi));
      }),
    );
  });

  it('finds back the braking rate at which an axle uses an adhesion', () => {
    fc.assert(
      fc.property(vehicle, share, rate, (v, phi, z) => {
        fc.pre(stands(v, z));
        const { front, rear } = adhesionUsed(v, phi, z);
        expect(ratesAtAdhesion(v, phi, front).front).toBeCloseTo(z, 9);
        expect(ratesAtAdhesion(v, phi, rear).rear).toBeCloseTo(z, 9);
      }),
    );
  });

  // Halliday, Resnick and Walker, Fundamentals of Physics, chapter 12 (memory): car of 11 kN, wheelbase 4.2 m, centre of mass 1.8 m
  // behind the front axle and 0.75 m high, all wheels sliding at 0.40: 3.5 kN on each front wheel, 2.0 kN on each rear wheel.
  it('gives the textbook’s wheel loads of a skidding car', () => {
    const car = {
      frontMass: `${(11000 * 2.4) / 4.2 / g} kg`,
      rearMass: `${(11000 * 1.8) / 4.2 / g} kg`,
      wheelbase: '4.2 m',
      massHeight: '0.75 m',
      frontShare: '64 %',
      rate: '0.40',
    };
    expect(Math.abs(result(as(brakeDistribution), car, 'frontLoad') / 2 - 3500)).toBeLessThanOrEqual(50);
    expect(Math.abs(result(as(brakeDistribution), car, 'rearLoad') / 2 - 2000)).toBeLessThanOrEqual(50);
  });

  it('says so where the rear axle would lift', () => {
    const short = {
      frontMass: '900 kg',
      rearMass: '300 kg',
      wheelbase: '2.2 m',
      massHeight: '0.7 m',
      frontShare: '80 %',
    };
    expect(work(as(brakeDistribution), { ...short, rate: '0.78' }).results).toBeDefined();
    expect(work(as(brakeDistribution), { ...short, rate: '0.79' }).outOfRange).toMatch(/would lift/);
    expect(work(as(brakeDistribution), { ...short, rate: '0' }).outOfRange).toMatch(/greater than zero/);
  });
});

describe('adhesion utilisation', () => {
  const car = {
    frontMass: '807.6923 kg',
    rearMass: '692.3077 kg',
    wheelbase: '2.6 m',
    massHeight: '0.55 m',
    frontShare: '70 %',
  };

  // A handbook of automotive engineering, chapter 12.1 (quoted), draws the line as k = (z + 0.07)/0.85.
  it('uses the line of Directive 71/320 and Regulation 13', () => {
    for (const z of [0.1, 0.27, 0.44, 0.61]) expect(requiredRate((z + 0.07) / 0.85, 0.85)).toBeCloseTo(z, 12);
  });

  it('finds the smallest margin that a fine sweep finds', () => {
    fc.assert(
      fc.property(vehicle, share, (v, phi) => {
        const margin = (k: number) => {
          const { front, rear } = ratesAtAdhesion(v, phi, k);
          return Math.min(front, rear) - requiredRate(k, 0.85);
        };
        const swept = Math.min(...Array.from({ length: 601 }, (_, i) => margin(0.2 + i / 1000)));
        const { adhesion, reached } = tightestAdhesion(v, phi, 0.85);
        expect(margin(adhesion)).toBeCloseTo(reached - requiredRate(adhesion, 0.85), 12);
        expect(margin(adhesion)).toBeLessThanOrEqual(swept + 1e-9);
        expect(adhesion >= 0.2 && adhesion <= 0.8).toBe(true);
      }),
    );
  });

  it('gives no number for Regulation 13-H until its coefficient has been read', () => {
    expect(work(as(adhesionUtilisation), { ...car, regulation: 'un-r13-h' }).outOfRange).toBe(
      'coefficient not confirmed, read Annex 5 of UN Regulation 13-H',
    );
    expect(work(as(adhesionUtilisation), { ...car, regulation: 'directive-71-320' }).results).toBeDefined();
  });
});

const discs = {
  frontPistons: '1',
  frontPiston: '54 mm',
  frontFactor: '0.76',
  frontRadius: '110 mm',
  frontRolling: '300 mm',
  rearPistons: '1',
  rearPiston: '34 mm',
  rearFactor: '0.76',
  rearRadius: '115 mm',
  rearRolling: '300 mm',
  mass: '1500 kg',
};
const tandem = { pedalForce: '350 N', pedalRatio: '4.0', efficiency: '1', bore: '22.2 mm', ...discs };

describe('from pedal to deceleration', () => {
  // Brake work example 19 of a training site (published), which takes 0.785 for a quarter of pi: held to 0.1 %.
  it('gives the pressure of a published example', () => {
    const found = result(
      as(tandemBrakes),
      { ...tandem, pedalForce: '360 N', pedalRatio: '8', bore: '3 cm' },
      'frontPressure',
    );
    expect(Math.abs(found / 4.0764 - 1)).toBeLessThan(0.001);
  });

  it('a larger master cylinder lowers the pressure with the square of its bore', () => {
    const at = (bore: string) => result(as(tandemBrakes), { ...tandem, bore }, 'frontPressure');
    expect(at('20 mm') / at('25 mm')).toBeCloseTo((25 / 20) ** 2, 9);
  });

  it('a booster multiplies up to run-out and adds no more beyond', () => {
    const force = (pedalForce: string) =>
      result(as(tandemBrakes), { ...tandem, pedalForce, boosterRatio: '4', boosterAssist: '3000 N' }, 'boosted');
    expect(force('100 N')).toBeCloseTo(1600, 6);
    expect(force('250 N')).toBeCloseTo(4000, 6);
    expect(force('350 N')).toBeCloseTo(4400, 6);
    expect(work(as(tandemBrakes), { ...tandem, boosterRatio: '4' }).outOfRange).toMatch(
      /greatest force that the booster adds/,
    );
  });

  it('a reducing valve bends the rear pressure at its knee and does nothing with a slope of 1', () => {
    const rear = (over: object) => result(as(tandemBrakes), { ...tandem, ...over }, 'rearPressure');
    const front = result(as(tandemBrakes), tandem, 'frontPressure');
    expect(rear({})).toBeCloseTo(front, 9);
    expect(rear({ valveKnee: '2 MPa', valveSlope: '0.3' })).toBeCloseTo(2 + 0.3 * (front - 2), 9);
    expect(rear({ valveKnee: '9 MPa', valveSlope: '0.3' })).toBeCloseTo(front, 9);
  });

  it('a balance bar in the middle with equal bores is a tandem at half the area', () => {
    const bar = {
      pedalForce: '350 N',
      pedalRatio: '4.0',
      efficiency: '1',
      barShare: '50 %',
      frontBore: '22.2 mm',
      rearBore: '22.2 mm',
      ...discs,
    };
    expect(2 * result(as(dualBrakes), bar, 'deceleration')).toBeCloseTo(
      result(as(tandemBrakes), tandem, 'deceleration'),
      9,
    );
  });
});

describe('one circuit failed', () => {
  const car = {
    frontForce: '8000 N',
    rearForce: '3200 N',
    frontMass: '807.6923 kg',
    rearMass: '692.3077 kg',
    wheelbase: '2.6 m',
    massHeight: '0.55 m',
  };
  const left = (remaining: string) => result(as(circuitFailure), { ...car, remaining }, 'deceleration');

  it('front and rear add up to the whole, and a diagonal is half of it', () => {
    expect(left('front') + left('rear')).toBeCloseTo(11200 / 1500, 6);
    expect(left('diagonal')).toBeCloseTo(11200 / 3000, 6);
  });
});

describe('test stops', () => {
  it('a stop at constant deceleration gives that deceleration, and its distance', () => {
    fc.assert(
      fc.property(whole(30, 160), whole(20, 100), (speed, tenths) => {
        const [v, d] = [speed / 3.6, tenths / 10];
        const to = (part: number) => `${(v ** 2 * (1 - part ** 2)) / (2 * d)} m`;
        const given = { speed: `${speed} km/h`, toHigh: to(0.8), toLow: to(0.1) };
        expect(result(as(meanDeceleration), given, 'deceleration')).toBeCloseTo(d, 6);
        expect(
          result(
            as(stoppingDistance),
            { speed: `${speed} km/h`, deceleration: `${d} m/s²`, buildUp: '0 s' },
            'distance',
          ),
        ).toBeCloseTo(v ** 2 / (2 * d), 6);
      }),
    );
  });

  it('needs the second distance to be the longer', () => {
    expect(work(as(meanDeceleration), { speed: '100 km/h', toHigh: '60 m', toLow: '60 m' }).outOfRange).toMatch(
      /longer/,
    );
  });
});

describe('a pressure-reducing valve', () => {
  const valve = fc.record({
    front: whole(1000, 2000),
    rear: whole(400, 1500),
    knee: whole(1, 50).map((x) => x / 10),
    slope: whole(0, 100).map((x) => x / 100),
  });
  /** Forces in N for a front pressure in MPa. */
  const forces = ({ front, rear, knee, slope }: typeof valve extends fc.Arbitrary<infer V> ? V : never, p: number) => ({
    front: front * p,
    rear: rear * (p <= knee ? p : knee + slope * (p - knee)),
  });

  // Stepped through pressure by pressure with the equilibrium of each: another way to the same rate.
  it('gives the first rate at which the rear uses as much adhesion as the front', () => {
    fc.assert(
      fc.property(vehicle, valve, (v, of) => {
        const { weight } = centreOfMass(v);
        const at = forces(of, 2);
        const crossing = result(
          as(valveCrossing),
          {
            frontMass: `${v.frontMass} kg`,
            rearMass: `${v.rearMass} kg`,
            wheelbase: `${v.wheelbase} m`,
            massHeight: `${v.massHeight} m`,
            frontForce: `${at.front} N`,
            rearForce: `${at.rear} N`,
            frontPressure: '2 MPa',
            rearPressure: `${at.rear / of.rear} MPa`,
            valveKnee: `${of.knee} MPa`,
            valveSlope: `${of.slope}`,
          },
          'crossing',
        );
        fc.pre(crossing > 0.02);
        const frontFirst = (p: number) => {
          const f = forces(of, p);
          const z = (f.front + f.rear) / weight;
          if (!stands(v, z)) return undefined;
          const loads = axleLoads(v, z);
          return { z, is: f.front / loads.front > f.rear / loads.rear };
        };
        for (let p = 0.05; p < 40; p += 0.05) {
          const here = frontFirst(p);
          if (!here) break;
          if (here.z < crossing - 1e-6) expect(here.is, `z ${here.z} below ${crossing}`).toBe(true);
          else if (here.z > crossing + 1e-6) {
            expect(here.is, `z ${here.z} above ${crossing}`).toBe(false);
            break;
          }
        }
      }),
    );
  });
});
