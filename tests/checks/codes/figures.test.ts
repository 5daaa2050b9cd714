import { beforeAll, describe, expect, test } from 'vitest';
import { type CodeItem, type Codes, loadCodes } from '../../../src/checks/codes/codes.js';
import { bound, type Car, caseFor, restsOn, value } from './cases.js';

let codes: Codes;
beforeAll(async () => {
  codes = await loadCodes();
});

const item = (id: string): CodeItem => codes.items.get(id)!;
const max = (id: string, car: Car) => bound(codes, item(id), car, 'max');
const min = (id: string, car: Car) => bound(codes, item(id), car, 'min');
const basis = (id: string, car: Car) => restsOn(item(id), caseFor(codes, item(id), car)!);

describe('swept volume, clause 2.13 and Table LA1 of Section LA', () => {
  const car = (mass: number, induction: 'na' | 'forced'): Car => ({
    category: 'MA',
    states: { induction },
    facts: { original_mass: mass },
  });

  /** Worked values read in pages that quote the clause: an old-car forum (forced) and a roadster forum (naturally aspirated). */
  test.each([
    [1078, 'forced', 2964.5],
    [1096, 'forced', 3014],
    [1093, 'na', 4372],
    [1100, 'na', 5500],
  ] as const)('%d kg, %s: %d cm³, as in the pages that quote it', (mass, induction, volume) => {
    expect(max('engine.capacity', car(mass, induction))).toBe(volume);
    expect(basis('engine.capacity', car(mass, induction))).toBe('quoted');
  });

  /** Derived, regression only: factor times mass on both sides of each edge; the 800 kg edge and factors 2.5 and 3.0 (forced) are recalled. */
  test.each([
    [799, 'na', 2397, 'memory'],
    [800, 'na', 3200, 'memory'],
    [1092, 'na', 4368, 'memory'],
    [1099, 'na', 4396, 'quoted'],
    [1100, 'na', 5500, 'quoted'],
    [1101, 'na', 5505, 'quoted'],
    [799, 'forced', 1997.5, 'memory'],
    [800, 'forced', 2200, 'memory'],
    [1077, 'forced', 2961.75, 'memory'],
    [1099, 'forced', 3022.25, 'quoted'],
    [1100, 'forced', 3300, 'memory'],
  ] as const)('%d kg, %s: %d cm³, %s', (mass, induction, volume, rests) => {
    expect(max('engine.capacity', car(mass, induction))).toBe(volume);
    expect(basis('engine.capacity', car(mass, induction))).toBe(rests);
  });

  test('a hair below an edge is below it', () => {
    expect(max('engine.capacity', car(1099.999, 'na'))).toBeCloseTo(4399.996, 9);
    expect(max('engine.capacity', car(799.999, 'na'))).toBeCloseTo(2399.997, 9);
  });

  /** 1 lb is 0.45359237 kg exactly, so 1,100 kg lie between 2,425.0 lb and 2,425.1 lb. */
  test.each([
    [2425.0, false],
    [2425.1, true],
  ])('%d lb are in the upper band: %s', (pounds, holds) => {
    expect(value(codes, 'original_mass >= 1100 kg', { facts: { original_mass: pounds * 0.45359237 } })).toEqual({
      is: 'truth',
      holds,
    });
  });

  test.each(['NA', 'NB1', 'MC'])('no maximum for category %s, unless it derives from a passenger car', (category) => {
    const of = (derivative: string) =>
      caseFor(codes, item('engine.capacity'), {
        category,
        states: { induction: 'na', 'derivative-of-passenger-car': derivative },
        facts: { original_mass: 1500 },
      });
    expect(of('no')).toHaveProperty('not-applicable');
    expect(of('yes')).toMatchObject({ max: '5.0 cm3/kg * original_mass' });
  });

  test('a rotary engine asks for its rule, and an unstated induction for the table', () => {
    expect(
      caseFor(codes, item('engine.capacity'), {
        category: 'MA',
        states: { principle: 'rotary', induction: 'na' },
        facts: { original_mass: 900 },
      }),
    ).toHaveProperty('figure');
    expect(caseFor(codes, item('engine.capacity'), { category: 'MA', facts: { original_mass: 900 } })).toBeUndefined();
    expect(item('engine.capacity')).toHaveProperty('figure');
  });

  test('the step over the largest engine offered is a share of it', () => {
    const measured = (item('engine.step') as { measured: string }).measured;
    expect(value(codes, measured, { facts: { engine_capacity: 3000, largest_option_capacity: 2500 } })).toMatchObject({
      is: 'number',
      si: 0.2,
      dimension: {},
    });
    expect(basis('engine.step', {})).toBe('memory');
  });
});

describe('where states differ', () => {
  test('growth of track: 25 mm in New South Wales (VSI 9) and Western Australia (r. 235), 26 mm in South Australia (r. 25), 50 mm for off-road vehicles and vans in New South Wales', () => {
    const track = (jurisdiction: string, category: string) => max('wheels.track', { jurisdiction, category });
    expect(track('NSW', 'MA')).toBe(25);
    expect(track('WA', 'MA')).toBe(25);
    expect(track('SA', 'MA')).toBe(26);
    expect(['MC', 'NA', 'NB1'].map((c) => track('NSW', c))).toEqual([50, 50, 50]);
    expect(['VIC', 'QLD', 'TAS', 'ACT', 'NT'].map((j) => track(j, 'MA'))).toEqual(Array(5).fill(undefined));
    expect(track('SA', 'MC')).toBeUndefined();
  });

  test('tyre diameter: +15 −26 mm in Queensland, ±7 % in New South Wales, 50 mm over for off-road vehicles', () => {
    const facts = { largest_tyre_diameter: 640, smallest_tyre_diameter: 600 };
    const car = (jurisdiction: string, category = 'MA'): Car => ({ jurisdiction, category, facts });
    expect([max('wheels.diameter', car('QLD')), min('wheels.diameter-smaller', car('QLD'))]).toEqual([655, 574]);
    expect([max('wheels.diameter', car('NSW')), min('wheels.diameter-smaller', car('NSW'))]).toEqual([684.8, 595.2]);
    expect(max('wheels.diameter', car('VIC', 'MC'))).toBe(690);
    expect([
      basis('wheels.diameter', car('QLD')),
      basis('wheels.diameter', car('NSW')),
      basis('wheels.diameter', car('VIC', 'MC')),
    ]).toEqual(['quoted', 'quoted', 'quoted']);
    expect([
      basis('wheels.diameter', car('SA')),
      basis('wheels.diameter', car('VIC')),
      basis('wheels.diameter-smaller', car('VIC', 'MC')),
    ]).toEqual(['memory', 'memory', 'memory']);
  });

  test('noise: the figure changes on 1 January 1983 in New South Wales and South Australia, on 1 November 1983 in Victoria', () => {
    const noise = (jurisdiction: string, built: string) =>
      max('tests.noise', { jurisdiction, category: 'MA', built, states: { 'noise-approval': 'none' } });
    for (const state of ['NSW', 'SA'])
      expect(['1982-12-31', '1983-01-01'].map((d) => noise(state, d))).toEqual([96, 90]);
    expect(['1983-10-31', '1983-11-01'].map((d) => noise('VIC', d))).toEqual([96, 90]);
    expect(noise('QLD', '1990-01-01')).toBeUndefined();
    expect(
      basis('tests.noise', {
        jurisdiction: 'SA',
        category: 'MA',
        built: '1990-01-01',
        states: { 'noise-approval': 'none' },
      }),
    ).toBe('quoted');
    expect(
      max('tests.noise-signature', {
        jurisdiction: 'NSW',
        states: { 'noise-approval': 'ADR 83/00' },
        facts: { signature_noise: 84 },
      }),
    ).toBe(89);
  });

  test('ground clearance: unladen in South Australia, laden in Queensland', () => {
    expect(min('suspension.ground-clearance-sa', { jurisdiction: 'SA' })).toBe(100);
    expect(min('suspension.ground-clearance-qld', { jurisdiction: 'QLD' })).toBe(100);
    expect(min('suspension.ground-clearance-qld', { jurisdiction: 'SA' })).toBeUndefined();
    expect([item('suspension.ground-clearance-sa').title, item('suspension.ground-clearance-qld').title]).toEqual([
      'Ground clearance, unladen',
      'Ground clearance, laden',
    ]);
  });

  test('lift in all: 75 mm where adopted, 50 mm elsewhere, 150 mm certified in Queensland', () => {
    const lift = (jurisdiction: string, category: string, states = {}) =>
      max('suspension.lift', { jurisdiction, category, states });
    expect([lift('NSW', 'MA'), lift('VIC', 'MC'), lift('QLD', 'MC', { 'stability-control': 'yes' })]).toEqual([
      75, 75, 75,
    ]);
    expect([lift('VIC', 'MA'), lift('TAS', 'MC'), lift('QLD', 'MC', { 'stability-control': 'no' })]).toEqual([
      50, 50, 50,
    ]);
    expect(max('suspension.lift-certified', { jurisdiction: 'QLD' })).toBe(150);
  });

  test('speed rating: the lesser of top speed and 180, 140 or 120 km/h (South Australia r. 52, Western Australia r. 46)', () => {
    const speed = (category: string, top_speed: number) =>
      min('wheels.speed-rating', { jurisdiction: 'SA', category, facts: { top_speed } });
    expect([speed('MA', 160), speed('MA', 220), speed('MC', 220), speed('NA', 220)]).toEqual([160, 180, 140, 120]);
    expect(min('wheels.speed-rating', { jurisdiction: 'WA', category: 'MC', facts: { top_speed: 220 } })).toBe(140);
  });
});

describe('figures against the texts in which they were read', () => {
  /** Pages of the New South Wales brake assessment manual v1.0 (2013): pre-test, tests D, F, G, appendices 1 and 4, checklist. */
  test('brake assessment of New South Wales', () => {
    const car: Car = { jurisdiction: 'NSW' };
    expect([
      max('brakes.pretest-pedal', car),
      min('brakes.pretest-average', car),
      min('brakes.pretest-peak', car),
    ]).toEqual([885, 2.9, 3.4]);
    expect(
      ['half-system-laden', 'half-system-light', 'proportioning-failed', 'antilock-failed'].map((t) =>
        min(`brakes.${t}`, car),
      ),
    ).toEqual([2.55, 2.55, 2.55, 2.55]);
    expect(['plate-front-off', 'plate-rear-off', 'plate-booster-off'].map((t) => min(`brakes.${t}`, car))).toEqual([
      20, 50, 50,
    ]);
    expect([
      max('brakes.line-support', car),
      min('brakes.line-wheel', car),
      max('brakes.fluid-mark', car),
      min('brakes.threads-showing', car),
      min('brakes.surface-friction', car),
    ]).toEqual([300, 10, 100, 1, 0.6]);
    const mass = { unladen_mass: 1200, oil_coolant_mass: 12, full_fuel_mass: 40, unoccupied_seats: 3 };
    expect(min('brakes.test-mass', { ...car, facts: mass })).toBe(1200 + 12 + 30 + 204);
    for (const id of ['pretest-pedal', 'half-system-laden', 'plate-front-off', 'line-support'])
      expect(item(`brakes.${id}`).rests).toMatchObject({
        basis: 'published',
        status: 'not-known',
        edition: 'v1.0, October 2013',
      });
  });

  test('exhaust outlet of the South Australian rules of 1999, r. 148, replaced in 2013', () => {
    const sideways: Car = { jurisdiction: 'SA', states: { outlet: 'horizontal' } };
    expect([min('exhaust.outlet-joint', sideways), max('exhaust.outlet-side', sideways)]).toEqual([40, 0]);
    expect([min('exhaust.outlet-angle', sideways), max('exhaust.outlet-angle', sideways)]).toEqual([0, 45]);
    expect(caseFor(codes, item('exhaust.outlet-height'), sideways)).toMatchObject({ below: '750 mm' });
    expect(
      caseFor(codes, item('exhaust.outlet-height'), { ...sideways, states: { outlet: 'vertical' } }),
    ).toBeUndefined();
  });

  test('other figures of guides and quotations', () => {
    expect(min('steering.wheel-diameter', { jurisdiction: 'SA' })).toBe(330);
    expect(max('steering.free-play', { jurisdiction: 'QLD' })).toBe(3);
    expect(max('engine.idle-co', { jurisdiction: 'SA', built: '1972-01-01' })).toBe(4.5);
    expect(max('engine.idle-co', { jurisdiction: 'SA', built: '1971-12-31' })).toBeUndefined();
    expect([min('clearance.members', {}), min('clearance.tyres', {})]).toEqual([10, 25]);
    expect(max('wheels.axle-offset', { jurisdiction: 'NSW' })).toBe(12.5);
    expect(max('wheels.tyre-width', { category: 'MA', facts: { widest_tyre: 200 } })).toBe(260);
    expect(
      max('wheels.tyre-width', {
        category: 'MC',
        states: { axles: 'beam-front-and-rear' },
        facts: { widest_tyre: 200 },
      }),
    ).toBe(300);
    expect(min('suspension.bump-travel-sa', { jurisdiction: 'SA', facts: { original_bump_travel: 90 } })).toBe(60);
    expect([
      max('fuel.gas-clips', { states: { fuel: 'lpg' } }),
      min('fuel.gas-exhaust', { states: { fuel: 'lpg', 'heat-shield': 'no' } }),
      min('fuel.gas-exhaust', { states: { fuel: 'lpg', 'heat-shield': 'yes' } }),
    ]).toEqual([600, 150, 50]);
    expect(max('fuel.line-support', {})).toBeUndefined();
    expect(max('fuel.line-support', { states: { 'street-rod': 'yes' } })).toBe(300);
    expect(max('vehicle.gvm', {})).toBe(4500);
    expect(max('tests.lane-change-gvm', { states: { 'centre-of-mass-moved': 'yes' } })).toBe(3500);
  });

  test('driveline: pages of makers of joints and shafts', () => {
    expect([min('driveline.angle-least', {}), max('driveline.angle-equal', { states: { shafts: 'one' } })]).toEqual([
      0.5, 1,
    ]);
    // Target of the technical annex on universal drivelines, 3.2 and 3.3, for the whole line: U at most 0.0027.
    expect(max('driveline.uniformity', {})).toBe(0.27);
    expect(max('driveline.critical-speed', { facts: { critical_speed: 6510 } })).toBe(4557);
    for (const id of ['angle-least', 'angle-equal', 'angle-speed', 'uniformity', 'critical-speed'])
      expect(item(`driveline.${id}`).rests.basis).toBe('quoted');
    // The angles of the joints decide; the slope of the pinion has no limit of its own.
    expect(item('driveline.pinion')).toMatchObject({ kind: 'answer', wants: 'stated' });
  });

  test('thickness is an upper bound, from common practice, and nothing asks for thicker', () => {
    expect(max('body.thickness-ratio', {})).toBe(2.5);
    expect(min('body.thickness-ratio', {})).toBeUndefined();
    expect(basis('body.thickness-ratio', {})).toBe('practice');
  });

  /** UN R39, 5.3, as quoted in a news article: 50 → 59, 90 → 103, 130 → 147; ADR 18/03 has the same relation. */
  test.each([
    [50, 59],
    [90, 103],
    [130, 147],
    [100, 114],
  ])('at %d km/h a speedometer shows at most %d', (speed, shown) => {
    const facts = { true_speed: speed };
    expect([min('un.speedometer', { facts }), max('un.speedometer', { facts })]).toEqual([speed, shown]);
    expect(max('speedometer.accuracy', { built: '2010-01-01', facts })).toBe(shown);
  });

  test('the older speedometer rule holds above 40 km/h, and between the dates the model decides', () => {
    const shown = (built: string, true_speed: number, states = {}) => [
      min('speedometer.accuracy', { built, states, facts: { true_speed } }),
      max('speedometer.accuracy', { built, states, facts: { true_speed } }),
    ];
    expect(shown('1988-05-01', 100)).toEqual([90, 110]);
    expect(shown('2006-06-30', 80)).toEqual([72, 88]);
    expect(shown('1988-05-01', 40)).toEqual([undefined, undefined]);
    expect(shown('2006-07-01', 100)).toEqual([undefined, undefined]);
    expect(shown('2006-07-01', 100, { 'speedometer-rule': 'ADR 18/03' })).toEqual([100, 114]);
    expect(shown('2007-07-01', 100)).toEqual([100, 114]);
  });
});

describe('a second code in the same form: regulations of the United Nations', () => {
  /** s = 0.1 v + v²/(25.92 d): distance and deceleration say the same, which is all that could be shown of the recalled pair. */
  test.each([
    ['un.service-distance', 'un.service-deceleration', 100],
    ['un.service-distance-connected', 'un.service-deceleration-connected', 160],
    ['un.secondary-distance-h', 'un.secondary-deceleration-h', 100],
    ['un.secondary-distance', 'un.secondary-deceleration', 80],
  ])('%s agrees with %s', (distance, deceleration, v) => {
    const s = max(distance, { facts: { brake_test_speed: v } })!;
    const d = min(deceleration, {})!;
    expect(Math.abs(s / (0.1 * v + v ** 2 / (25.92 * d)) - 1)).toBeLessThan(0.003);
  });

  /** R13-H, Annex 3, from memory: 70.0 m at 100 km/h, 187.5 m connected at 160 km/h, 168 m secondary at 100 km/h. */
  test('the distances that follow', () => {
    const at = (id: string, brake_test_speed: number) => max(id, { facts: { brake_test_speed } });
    expect([
      at('un.service-distance', 100),
      at('un.service-distance-connected', 160),
      at('un.secondary-distance-h', 100),
    ]).toEqual([70, 187.52, 168]);
  });

  test('what was read in a page is quoted, what was recalled is memory, and adhesion waits for a reader', () => {
    expect(item('un.speedometer').rests.basis).toBe('quoted');
    expect(item('un.secondary-deceleration').rests.basis).toBe('quoted');
    expect(item('un.service-deceleration').rests.basis).toBe('memory');
    expect(item('un.adhesion')).toMatchObject({ cases: [], rests: { basis: 'memory' } });
  });
});
