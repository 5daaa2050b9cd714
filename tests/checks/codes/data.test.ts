import { beforeAll, describe, expect, test } from 'vitest';
import { assemble, type CodeItem, type Codes, loadCodes } from '../../../src/checks/codes/codes.js';
import { type Case, noteKinds } from '../../../src/checks/codes/item.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { categories, jurisdictions } from '../../../src/project/vehicle.js';
import { caseFor, restsOn } from './cases.js';

let codes: Codes;
let items: CodeItem[];
beforeAll(async () => {
  codes = await loadCodes();
  items = [...codes.items.values()];
});

const cases = (item: CodeItem): readonly Case[] => ('cases' in item ? item.cases : []);
const bounds = (one: Case) => [one.min, one.max, one.above, one.below].filter((b) => b !== undefined);
const allRests = (item: CodeItem) => [
  item.rests,
  ...cases(item).flatMap((one) => one.rests ?? []),
  ...(item.compare ?? []).map((c) => c.rests),
];

describe('reach', () => {
  test('every item is raised by a kind of note', () => {
    const raised = new Set(noteKinds.flatMap((kind) => codes.raisedBy(kind).map((item) => item.id)));
    expect([...codes.items.keys()].filter((id) => !raised.has(id))).toEqual([]);
  });

  test.each(noteKinds)(
    '%s raises at least four checks and three proofs, hold points among them, in every state',
    (kind) => {
      const everywhere = codes.raisedBy(kind).filter((item) => item.country === 'AU' && !item.applies?.jurisdictions);
      expect(everywhere.filter((item) => item.kind !== 'evidence').length).toBeGreaterThanOrEqual(4);
      const proofs = everywhere.filter((item) => item.kind === 'evidence').length + kinds.get(kind)!.holdPoints.length;
      expect(proofs).toBeGreaterThanOrEqual(3);
    },
  );

  test('every link lands and can be followed both ways', () => {
    for (const item of items) {
      for (const { item: to } of codes.leadsTo(item.id)) {
        expect(codes.ledFrom(to.id).map((link) => link.item.id)).toContain(item.id);
      }
      expect(codes.leadsTo(item.id)).toHaveLength(item['leads-to']?.length ?? 0);
    }
  });

  test.each([
    ['engine.strength', 'body.structure-cut'],
    ['engine.emissions-report', 'tests.emissions'],
    ['engine.noise-report', 'tests.noise'],
    ['engine.capacity', 'brakes.engine-output'],
    ['axle.brakes', 'brakes.axle-exchanged'],
    ['axle.brakes', 'wheels.track'],
    ['wheels.diameter-step', 'brakes.tyre-diameter'],
    ['wheels.diameter', 'speedometer.accuracy'],
    ['gearbox.speedometer', 'speedometer.accuracy'],
    ['body.structure-cut', 'tests.twist'],
    ['links.altered', 'brakes.suspension-exchanged'],
    ['mass.cg-moved', 'tests.lane-change'],
    ['suspension.lift', 'tests.lane-change'],
    ['fuel.line-support', 'engine.lines-protected'],
    ['seating.backing-plates', 'body.load'],
    ['gearbox.structure', 'body.structure-cut'],
  ])('%s leads to %s', (from, to) => {
    expect(codes.leadsTo(from).map((link) => link.item.id)).toContain(to);
  });

  test('links between sections that were only recalled are marked so', () => {
    const basis = (from: string, to: string) => codes.leadsTo(from).find((link) => link.item.id === to)?.basis;
    expect(basis('fuel.line-support', 'engine.lines-protected')).toBe('memory');
    expect(basis('seating.backing-plates', 'body.load')).toBe('memory');
    expect(basis('gearbox.structure', 'body.structure-cut')).toBe('memory');
    expect(basis('suspension.lift', 'tests.lane-change')).toBe('memory');
  });

  test('a country has its own codes, and those of the others stay out', async () => {
    const [au, un] = [await loadCodes('AU'), await loadCodes('UN')];
    expect(au.items.size + un.items.size).toBe(codes.items.size);
    expect(un.codes.map((c) => c.code)).toEqual(['un-regulations']);
    expect(au.raisedBy('test').some((i) => i.id.startsWith('un.'))).toBe(false);
    expect(un.raisedBy('test').map((i) => i.id)).toContain('un.speedometer');
  });

  test('an item of a state applies in that state only', () => {
    const state = Object.fromEntries(codes.codes.filter((c) => c.jurisdiction).map((c) => [c.code, c.jurisdiction]));
    expect(Object.keys(state).sort()).toEqual(['nsw', 'qld', 'sa', 'tas', 'vic', 'wa']);
    for (const item of items.filter((i) => i.code in state))
      expect(item.applies?.jurisdictions).toEqual([state[item.code]]);
  });
});

describe('what figures rest on', () => {
  test('a figure read by this project says whether its text still stands', () => {
    for (const item of items)
      for (const rests of allRests(item))
        if (rests.basis === 'published') expect(rests.status, `${item.id}: ${rests.document}`).toBeDefined();
  });

  test('texts known to have been replaced are marked', () => {
    const superseded = (id: string) => allRests(codes.items.get(id)!).some((r) => r.status === 'superseded');
    for (const id of [
      'exhaust.outlet-joint',
      'exhaust.outlet-height',
      'wheels.speed-rating',
      'tests.noise',
      'tests.noise-signature',
    ])
      expect(superseded(id), id).toBe(true);
  });

  /**
   * What a government published and this project read at first hand: pages of the brake manual, regulations, web guides and
   * inspection manuals. Titles and contents of a rule are not its text.
   */
  test('published texts are these', () => {
    const read = new Set(
      items
        .flatMap(allRests)
        .filter((r) => r.basis === 'published')
        .map((r) => r.document),
    );
    expect([...read].sort()).toEqual([
      'Brake assessment manual, New South Wales',
      'Engine and exhaust modifications, page of the South Australian government',
      'Environment Protection Regulations 2021, Victoria',
      'Fuel systems, page of the South Australian government',
      'Instruction G10.0, Queensland',
      'Light vehicle inspection manual, items on gas',
      'List of maximum tracks, page of the South Australian government',
      'MR810, guide on torsion and bending tests, South Australia',
      'Modifications to cars, page of the South Australian government',
      'National guidelines for street rods',
      'Protection of the Environment Operations (Noise Control) Regulation 2008, New South Wales',
      'Road Traffic (Miscellaneous) Regulations 1999, South Australia',
      'Road Traffic (Vehicle Standards) Rules 1999, South Australia',
      'Road Traffic (Vehicle Standards) Rules 2002, Western Australia',
      'Road Traffic (Vehicles) Regulations 2014, Western Australia',
      'Steering modifications, page of the South Australian government',
      'Suspension modifications, page of the South Australian government',
      'Transport Operations (Vehicle Standards and Safety) Regulation 2021, Queensland',
      'VSB 14 Section LS, cover page',
      'VSI 8, Victoria',
      'VSI 9 Alternative wheels and tyres, New South Wales',
      'Vehicle Standards Regulations 2024, Tasmania',
      'Vehicle inspection guidelines, steering, Queensland',
    ]);
    for (const rests of items.flatMap(allRests).filter((r) => r.basis === 'published'))
      expect(rests['read-in'], rests.document).toBeUndefined();
  });

  test('what was read on covers, in contents or in a copy is quoted', () => {
    for (const id of [
      'exhaust.outlet-rule',
      'emissions.rule',
      'noise.rule',
      'engine.epa-guideline',
      'seating.added-seats-sa',
    ])
      expect(codes.items.get(id)!.rests, id).toMatchObject({
        basis: 'quoted',
        'read-in': expect.any(String) as string,
      });
  });

  test("a state's sheet that a forum or the news quotes decides in that state only", () => {
    const elsewhere = (id: string, jurisdiction: string, category = 'MA') => {
      const item = codes.items.get(id)!;
      const one = caseFor(codes, item, { jurisdiction, category, facts: {} })!;
      return restsOn(item, one);
    };
    for (const id of ['suspension.height', 'suspension.bump-travel', 'suspension.rebound-travel'])
      expect([elsewhere(id, 'VIC'), elsewhere(id, 'WA')], id).toEqual(['quoted', 'memory']);
    expect([elsewhere('wheels.tyre-width', 'QLD'), elsewhere('wheels.tyre-width', 'VIC')]).toEqual([
      'quoted',
      'memory',
    ]);
    expect([elsewhere('suspension.lift', 'VIC', 'MC'), elsewhere('suspension.lift', 'VIC')]).toEqual([
      'quoted',
      'memory',
    ]);
  });

  test('nothing claims a text in force, because none was confirmed to be', () => {
    expect(items.flatMap(allRests).filter((r) => r.status === 'in-force')).toEqual([]);
  });

  test('common practice has no clause to claim', () => {
    for (const item of items)
      for (const rests of allRests(item))
        if (rests.basis === 'practice') expect([rests.clause, rests.edition], item.id).toEqual([undefined, undefined]);
  });

  test('own-copy and maker are words for builders, not for codes', () => {
    expect(items.flatMap(allRests).filter((r) => r.basis === 'own-copy' || r.basis === 'maker')).toEqual([]);
  });

  /** Every figure that was only recalled, so that none slips in unmarked and none is promoted without a source. */
  test('the recalled figures are these', () => {
    const recalled = items.flatMap((item) =>
      cases(item)
        .filter((one) => bounds(one).length > 0 && restsOn(item, one) === 'memory')
        .map((one) => `${item.id} ${bounds(one).join(' … ')}`),
    );
    expect(recalled.sort()).toEqual([
      'engine.capacity 2.5 cm3/kg * original_mass',
      'engine.capacity 2.75 cm3/kg * original_mass',
      'engine.capacity 3.0 cm3/kg * original_mass',
      'engine.capacity 3.0 cm3/kg * original_mass',
      'engine.capacity 4.0 cm3/kg * original_mass',
      'engine.step 20 %',
      'fasteners.engagement 1.0 * thread_diameter',
      'fasteners.engagement 1.5 * thread_diameter',
      'fasteners.engagement 2.0 * thread_diameter',
      'ground.clearance-middle 33.33 mm/m * wheelbase',
      'seating.anchorage-load 13.5 kN',
      'seating.anchorage-load-lap 22.2 kN',
      'suspension.bump-travel 2 / 3 * original_bump_travel',
      'suspension.height 50 mm',
      'suspension.lift 50 mm',
      'suspension.rebound-travel 2 / 3 * original_rebound_travel',
      'un.parking 20 %',
      'un.pedal-force 65 N … 500 N',
      'un.secondary-deceleration-h 2.44 m/s2',
      'un.secondary-distance-h 0.1 m * (brake_test_speed / 1 km/h) + 0.0158 m * (brake_test_speed / 1 km/h) * (brake_test_speed / 1 km/h)',
      'un.service-deceleration 6.43 m/s2',
      'un.service-deceleration-connected 5.76 m/s2',
      'un.service-distance 0.1 m * (brake_test_speed / 1 km/h) + 0.0060 m * (brake_test_speed / 1 km/h) * (brake_test_speed / 1 km/h)',
      'un.service-distance-connected 0.1 m * (brake_test_speed / 1 km/h) + 0.0067 m * (brake_test_speed / 1 km/h) * (brake_test_speed / 1 km/h)',
      'wheels.diameter largest_tyre_diameter + 15 mm',
      'wheels.diameter largest_tyre_diameter + 15 mm',
      'wheels.diameter-smaller smallest_tyre_diameter - 15 mm',
      'wheels.diameter-smaller smallest_tyre_diameter - 26 mm',
      'wheels.diameter-smaller smallest_tyre_diameter - 26 mm',
      'wheels.tyre-width 1.3 * widest_tyre',
    ]);
  });

  test('a limit without a figure says which one to read', () => {
    for (const item of items)
      if ('cases' in item && item.cases.length === 0) expect(item.figure, item.id).toBeDefined();
  });

  test('where a state or category has no case of its own, the item says which figure to read', () => {
    for (const item of items) {
      const open =
        cases(item).length > 0 && cases(item).every((one) => one.applies?.jurisdictions ?? one.applies?.categories);
      if (open && 'figure' in item) expect(item.figure, item.id).toBeDefined();
    }
  });

  test('figures that must stay out are out', () => {
    const everything = JSON.stringify(codes.codes);
    for (const out of ['152 mm', 'N·m/deg', 'N*m/deg', 'Nm/', '12.5 m ', '0.85', '100 mm by 40 mm', '22 mm'])
      expect(everything).not.toContain(out);
    expect(codes.items.get('driveline.retainer-drawing')).toMatchObject({
      kind: 'evidence',
      rests: { basis: 'memory' },
    });
    for (const id of ['body.fish-plate', 'tests.twist', 'seating.backing-plates', 'seating.bolts'])
      expect(codes.items.get(id)).toMatchObject({ kind: 'answer', wants: 'stated' });
    for (const id of [
      'un.adhesion',
      'fuel.exhaust-distance',
      'fuel.tank-clearance',
      'brakes.service-deceleration',
      'alignment.bump-steer',
    ])
      expect(codes.items.get(id)).toMatchObject({ cases: [] });
  });

  test('recommendations are these', () => {
    expect(
      items
        .filter((i) => 'recommended' in i && i.recommended === true)
        .map((i) => i.id)
        .sort(),
    ).toEqual([
      'brakes.balance-change',
      'clearance.members',
      'clearance.tyres',
      'driveline.angle-equal',
      'driveline.angle-least',
      'driveline.uniformity',
      'engine.capacity',
      'engine.step',
      'fasteners.engagement',
      'links.pair',
      'suspension.bump-travel',
      'suspension.height',
      'suspension.lift',
      'suspension.rebound-travel',
      'wheels.diameter-step',
    ]);
  });

  test('what stops a note is this', () => {
    expect(
      items
        .filter((i) => 'stop' in i && i.stop === true)
        .map((i) => `${i.id}: ${'wants' in i ? i.wants : ''}`)
        .sort(),
    ).toEqual([
      'brakes.stability-control: yes',
      'electrical.airbag-circuits: yes',
      'links.forged-worked: no',
      'links.rod-end-shear: yes',
      'seating.airbags-kept: yes',
      'seating.anchorages-kept: yes',
    ]);
  });

  test('a worked steering or suspension part needs nine pieces of evidence', () => {
    const nine = items.filter((i) => i.id.startsWith('links.weld-report-'));
    expect(nine).toHaveLength(9);
    for (const item of nine)
      expect(item).toMatchObject({
        kind: 'evidence',
        rests: { basis: 'quoted' },
        'raised-by': ['suspension-link', 'steering'],
      });
  });
});

describe('form', () => {
  test('titles are noun phrases of up to eight words', () => {
    for (const item of items) expect(item.title.split(' ').length, item.title).toBeLessThanOrEqual(8);
  });

  test('states and categories are those that build.md knows', () => {
    for (const item of items) {
      for (const applies of [item.applies, ...cases(item).map((one) => one.applies)]) {
        for (const j of applies?.jurisdictions ?? []) expect(Object.keys(jurisdictions)).toContain(j);
        for (const c of [...(applies?.categories ?? []), ...(applies?.['not-categories'] ?? [])])
          expect(Object.keys(categories)).toContain(c);
      }
    }
  });

  test('a case is open or closed on both sides', () => {
    for (const item of items)
      for (const one of cases(item))
        expect(
          [one.above ?? one.below, one.min ?? one.max].filter((b) => b !== undefined).length,
          item.id,
        ).toBeLessThanOrEqual(1);
  });

  test('modification codes that items name are listed', () => {
    const listed = new Set(codes.codes.flatMap((code) => Object.keys(code['modification-codes'] ?? {})));
    expect(items.flatMap((item) => item.codes ?? []).filter((code) => !listed.has(code))).toEqual([]);
  });

  test('every document, section and fact that a code lists is used in it', () => {
    const unused = codes.codes.flatMap((code) => {
      const text = JSON.stringify([code.items, code['modification-codes'] ?? {}]);
      return [
        ...Object.values(code.documents ?? {}).flatMap((d) =>
          text.includes(JSON.stringify(d.title)) ? [] : [`${code.code}: ${d.title}`],
        ),
        ...Object.keys(code.sections).flatMap((s) =>
          code.items.some((i) => i.section === s) ? [] : [`${code.code}: ${s}`],
        ),
        ...Object.keys(code.facts ?? {}).flatMap((f) => (text.includes(f) ? [] : [`${code.code}: ${f}`])),
      ];
    });
    expect(unused).toEqual([]);
  });

  test('the compiled form loses nothing', () => {
    const again = assemble(
      codes.codes.map((code) => ({ file: `${code.code}.yaml`, code: JSON.parse(JSON.stringify(code)) as typeof code })),
    );
    expect([...again.items]).toEqual([...codes.items]);
  });
});
