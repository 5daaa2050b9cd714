import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adhesionUsed, crossingRate, idealFrontShare, type Vehicle } from '../../../src/calc/brakes/vehicle.js';
import {
  type BrakeDistribution,
  brakeDistribution,
  type LoadState,
} from '../../../src/render/drawings/brake-distribution.js';
import { elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const state = (says: string, vehicle: Vehicle, share: number): LoadState => ({
  says,
  toRear: vehicle.frontMass / (vehicle.frontMass + vehicle.rearMass),
  height: vehicle.massHeight / vehicle.wheelbase,
  crossing: { symbol: 'z*', si: crossingRate(vehicle, share), unit: '1' },
});
const laden: Vehicle = { frontMass: 850, rearMass: 950, wheelbase: 2.6, massHeight: 0.6 };
const unladen: Vehicle = { frontMass: 807.6923, rearMass: 692.3077, wheelbase: 2.6, massHeight: 0.55 };
const of = (share: number, ...states: [string, Vehicle][]): BrakeDistribution => ({
  name: 'figure-b',
  title: 'Brake distribution',
  frontShare: { symbol: 'φ', si: share, unit: '%' },
  states: states.map(([says, v]) => state(says, v, share)),
});
const both = of(0.7, ['laden', laden], ['unladen', unladen]);
const filled = (d: BrakeDistribution) =>
  elementsOf(brakeDistribution(d), 'circle').filter((c) => c.properties['fill'] === 'currentColor');
const hollow = (d: BrakeDistribution) =>
  elementsOf(brakeDistribution(d), 'circle').filter((c) => c.properties['fill'] === '#fff');
/** The heavy line from no braking. */
const installed = (d: BrakeDistribution) =>
  elementsOf(brakeDistribution(d), 'path')
    .filter((p) => numberOf(p, 'strokeWidth') === 0.5)
    .map((p) => pathPoints(String(p.properties['d'])))[0]!;

describe('installed brake distribution against the ideal one', () => {
  it('names share, states, braking rates and crossings', () => {
    const drawn = brakeDistribution(both);
    expectSound(drawn);
    for (const text of [
      'installed, φ = 70 %',
      'ideal, laden',
      'ideal, unladen',
      'z = 0.3',
      'z = 0.6',
      'z = 0.8',
      'z* = 0.7636 unladen',
    ])
      expect(textsOf(drawn)).toContain(text);
  });

  it('draws at 0.3, 0.6 and 0.8 the share that gives both axles the same adhesion', () => {
    const one = of(0.7, ['unladen', unladen]);
    const [x0, y0] = installed(one)[0]!;
    const end = installed(one)[1]!;
    const perX = (end[0] - x0) / 0.7;
    const perY = (y0 - end[1]) / 0.3;
    hollow(one).forEach((dot, i) => {
      const [front, rear] = [(numberOf(dot, 'cx') - x0) / perX, (y0 - numberOf(dot, 'cy')) / perY];
      expect(front / (front + rear)).toBeCloseTo(idealFrontShare(unladen, [0.3, 0.6, 0.8][i]!), 2);
    });
  });

  it('puts the crossing on both lines: adhesion used is alike there', () => {
    const one = of(0.7, ['unladen', unladen]);
    const z = crossingRate(unladen, 0.7);
    const used = adhesionUsed(unladen, 0.7, z);
    expect(used.front).toBeCloseTo(used.rear, 9);
    const [[x0, y0], [x1, y1]] = installed(one) as [[number, number], [number, number]];
    const [mark] = filled(one);
    const t = (numberOf(mark!, 'cx') - x0) / (x1 - x0);
    expect(numberOf(mark!, 'cy')).toBeCloseTo(y0 + t * (y1 - y0), 1);
  });

  it('says so in words where the lines do not cross', () => {
    expect(textsOf(brakeDistribution(of(0.5, ['laden', unladen]))).join()).toContain('the rear locks first throughout');
    expect(textsOf(brakeDistribution(of(0.9, ['laden', unladen]))).join()).toContain('beyond the drawing');
    expect(filled(of(0.9, ['laden', unladen]))).toHaveLength(0);
  });

  it('cuts a long name of a state where it would leave the drawing', () => {
    const drawn = brakeDistribution(of(0.7, ['laden with four persons, luggage and a trailer on the ball', laden]));
    expectSound(drawn);
    expect(textsOf(drawn).find((t) => t.startsWith('ideal, '))).toMatch(/^ideal, laden .*…$/);
    expect(JSON.stringify(drawn)).toContain('trailer on the ball');
  });

  it('stays within its frame for all shares and vehicles', () => {
    const vehicle = fc.record({
      frontMass: fc.integer({ min: 300, max: 1500 }),
      rearMass: fc.integer({ min: 300, max: 1500 }),
      wheelbase: fc.integer({ min: 1800, max: 3600 }).map((n) => n / 1000),
      massHeight: fc.integer({ min: 300, max: 900 }).map((n) => n / 1000),
    });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), vehicle, vehicle, (share, a, b) =>
        expectSound(brakeDistribution(of(share / 100, ['laden', a], ['unladen', b]))),
      ),
      { numRuns: 80 },
    );
  });
});
