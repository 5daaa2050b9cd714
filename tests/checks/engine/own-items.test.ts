import { describe, expect, it } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { itemSchema } from '../../../src/checks/codes/item.js';
import { readLimits } from '../../../src/checks/codes/read-own-copy.js';
import { readYamlFile } from '../../../src/project/frontmatter.js';
import { examineNote } from '../kinds/bench.js';

/** An item of a made-up workshop sheet on a note of masses. */
const item = (lines: string) => `items:
  - id: own.front
    kind: limit
    title: Mass on the front axle
    asks: What the front axle carries.
    section: own
    rests: { document: workshop sheet (invented), basis: own-copy }
    raised-by: [mass]
    unit: kg
${lines
  .split('\n')
  .map((line) => `    ${line}`)
  .join('\n')}
`;
const weighed = (front: string) => `now: { front: ${front}, rear: 500 ± 10 kg }`;
const judged = async (front: string, lines: string) =>
  (await examineNote('mass', weighed(front), { limits: item(lines) })).one('own.front');

describe('an item of the builder', () => {
  it('counts a measurement on both sides of its comparison once', async () => {
    const both = await judged('592 ± 10 kg', 'measured: mass_front\ncases: [{ max: 1200 kg - mass_front }]');
    expect(both).toMatchObject({ outcome: 'inconclusive', says: expect.stringContaining('its margin, 16 ± 20 kg,') });
    expect(both.margin).toBeCloseTo(16, 9);
    const twice = await judged('592 ± 10 kg', 'measured: 2 * mass_front\ncases: [{ max: 1200 kg }]');
    expect(twice).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining('conforms only if at most 1180 kg'),
    });
    expect(twice.margin).toBeCloseTo(16, 9);
  });

  it.each([
    ['590 ± 10 kg', 'conforms'],
    ['590.1 ± 10 kg', 'inconclusive'],
    ['610 ± 10 kg', 'inconclusive'],
    ['610.1 ± 10 kg', 'does-not-conform'],
  ])('decides the same whichever way it is put: %s is %s', async (front, outcome) => {
    const ways = [
      'measured: mass_front\ncases: [{ max: 1200 kg - mass_front }]',
      'measured: 2 * mass_front\ncases: [{ max: 1200 kg }]',
      'measured: 2 * mass_front - 1200 kg\ncases: [{ max: 0 kg }]',
      'measured: 1200 kg - mass_front\ncases: [{ min: mass_front }]',
    ];
    for (const way of ways) expect((await judged(front, way)).outcome, way).toBe(outcome);
  });

  it('takes two measurements as independent', async () => {
    // 592 ± 10 kg against 500 ± 10 kg and 106.1 kg or 106.2 kg: U of the margin is 14.142 kg.
    const way = (more: string) => `measured: mass_front\ncases: [{ max: mass_rear + ${more} }]`;
    expect((await judged('592 ± 10 kg', way('106.1 kg'))).outcome).toBe('inconclusive');
    expect((await judged('592 ± 10 kg', way('106.2 kg'))).outcome).toBe('conforms');
  });

  it.each([
    ['{ min: 500 kg, below: 600 kg }', '500 kg', 'conforms'],
    ['{ min: 500 kg, below: 600 kg }', '499.9 kg', 'does-not-conform'],
    ['{ min: 500 kg, below: 600 kg }', '600 kg', 'does-not-conform'],
    ['{ min: 500 kg, below: 600 kg }', '599.9 kg', 'conforms'],
    ['{ above: 500 kg, max: 600 kg }', '500 kg', 'does-not-conform'],
    ['{ above: 500 kg, max: 600 kg }', '600 kg', 'conforms'],
  ])('keeps the word of each bound: %s at %s is %s', async (bounds, front, outcome) => {
    const { outcome: found, says } = await judged(
      front,
      `rule: exact
measured: mass_front
cases: [${bounds}]`,
    );
    expect(found).toBe(outcome);
    expect(says).toContain(
      bounds.includes('below') ? 'at least 500 kg and less than 600 kg' : 'more than 500 kg and at most 600 kg',
    );
  });

  it.each([
    ['', '{ max: 600 kg }', 'inconclusive'],
    ['rule: guarded\n', '{ max: 600 kg }', 'inconclusive'],
    ['rule: as-read\n', '{ max: 600 kg }', 'conforms'],
    ['rule: exact\n', '{ max: 600 kg }', 'conforms'],
    ['recommended: true\n', '{ max: 600 kg }', 'conforms'],
    ['recommended: true\nrule: guarded\n', '{ max: 600 kg }', 'inconclusive'],
    ['rule: as-read\n', '{ max: 600 kg, rule: guarded }', 'inconclusive'],
  ])('follows the rule that it states: %o %s', async (rule, bounds, outcome) => {
    const lines = `${rule}measured: mass_front\ncases: [${bounds}]`;
    expect((await judged('595 ± 10 kg', lines)).outcome).toBe(outcome);
  });

  it('is not measured while a name of its limit has no value', async () => {
    const lines = 'measured: mass_front\ncases: [{ max: 1200 kg - axle_gap }]';
    expect(await judged('592 ± 10 kg', lines)).toMatchObject({
      outcome: 'not-measured',
      says: expect.stringContaining('axle_gap'),
    });
  });

  it('has no limit where its expression gives no number', async () => {
    const lines = 'measured: mass_front\ncases: [{ max: 1 kg * (mass_rear / (mass_rear - mass_rear)) }]';
    expect((await judged('592 ± 10 kg', lines)).outcome).toBe('not-measured');
  });
});

describe('two bounds on one side', () => {
  const base = {
    id: 'own.front',
    kind: 'limit',
    title: 'Mass on the front axle',
    asks: 'What the front axle carries.',
    section: 'own',
    rests: { document: 'workshop sheet', basis: 'own-copy' },
    'raised-by': ['mass'],
    unit: 'kg',
  };

  it.each([
    [{ min: '1 kg', above: '2 kg' }, false],
    [{ max: '1 kg', below: '2 kg' }, false],
    [{ min: '1 kg', below: '2 kg' }, true],
    [{ above: '1 kg', max: '2 kg' }, true],
  ])('%o of a case', (bounds, fits) => {
    expect(itemSchema.safeParse({ ...base, cases: [bounds] }).success).toBe(fits);
  });

  it.each([
    ['min: 1 kg, above: 2 kg', false],
    ['max: 1 kg, below: 2 kg', false],
    ['min: 1 kg, below: 2 kg', true],
  ])('%s of a figure of the own copy', async (bounds, fits) => {
    const text = `figures:\n  - { item: mass.axle-front, ${bounds}, edition: v1, clause: c, read-by: JO, on: 2026-01-05 }\n`;
    const { value: front } = readYamlFile(text, 'limits.yaml');
    const { figures, problems } = readLimits(
      [{ file: 'limits.yaml', path: 'limits.yaml', front: front! }],
      await loadCodes('AU'),
    );
    expect(figures.has('mass.axle-front')).toBe(fits);
    expect(problems.length).toBe(fits ? 0 : 1);
  });
});

describe('an item that applies from a measured threshold on', () => {
  // 600 ± 10 kg: the careful side is that it applies.
  it.each([
    ['612 ± 10 kg', 'mass_front > 600 kg', 'does-not-conform'],
    ['600 ± 10 kg', 'mass_front > 600 kg', 'does-not-conform'],
    ['591 ± 10 kg', 'mass_front > 600 kg', 'does-not-conform'],
    ['590 ± 10 kg', 'mass_front > 600 kg', 'not-applicable'],
    ['590 ± 10 kg', 'mass_front >= 600 kg', 'does-not-conform'],
    ['609 ± 10 kg', 'mass_front < 600 kg', 'does-not-conform'],
    ['611 ± 10 kg', 'mass_front < 600 kg', 'not-applicable'],
    ['591 ± 10 kg', 'mass_front > 600 kg and mass_rear > 505 kg', 'does-not-conform'],
    ['591 ± 10 kg', 'mass_front > 600 kg and mass_rear > 511 kg', 'not-applicable'],
  ])('%s where %s: %s', async (front, when, outcome) => {
    const lines = `measured: mass_front\napplies: { when: ${when} }\ncases: [{ max: 400 kg }]`;
    expect((await judged(front, lines)).outcome).toBe(outcome);
  });
});
