import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const degrees = (si: number) => (si * 180) / Math.PI;
const axle = (left: string, right: string, maker = '') => `
wheels:
  - { id: front-left, now: { toe: ${left} } }
  - { id: front-right, now: { toe: ${right} } }
maker: { front: { toe: { ${maker} } } }`;
const window = 'least: 0.00 deg toe in, greatest: 0.20 deg toe in, from: sheet of the maker';

describe('toe', () => {
  it.each([
    ['0.15 ± 0.02 deg toe in', '0.05 ± 0.02 deg toe in', 0.2, 'unclear'],
    ['0.10 ± 0.02 deg toe in', '0.05 ± 0.02 deg toe in', 0.15, 'met'],
    ['0.15 ± 0.02 deg toe in', '0.10 ± 0.02 deg toe in', 0.25, 'against'],
    ['0.15 ± 0.02 deg toe in', '0.10 ± 0.02 deg toe out', 0.05, 'met'],
    ['0.05 ± 0.02 deg toe out', '0.05 ± 0.02 deg toe out', -0.1, 'against'],
  ])('%s and %s make %d deg together, which is %s', async (left, right, total, outcome) => {
    const { one } = await examineNote('alignment', axle(left, right, window));
    expect(degrees(one('alignment.toe', 'front').measured!.si)).toBeCloseTo(total, 10);
    expect(one('alignment.toe', 'front')).toMatchObject({ result: outcome, basis: 'maker' });
  });

  it('does not mind which end of the window was written first', async () => {
    const { result: outcome } = await examineNote(
      'alignment',
      axle(
        '0.05 ± 0.02 deg toe in',
        '0.05 ± 0.02 deg toe in',
        'least: 0.20 deg toe in, greatest: 0.05 deg toe out, from: sheet of the maker',
      ),
    );
    expect(outcome('alignment.toe', 'front')).toBe('met');
  });

  it('gives no outcome without the maker’s figure, and asks for the wheel that was left out', async () => {
    const without = await examineNote('alignment', axle('0.05 deg toe in', '0.05 deg toe in').replace(/maker:.*/, ''));
    expect(without.result('alignment.toe', 'front')).toBe('unconfirmed');
    const half = await examineNote('alignment', 'wheels: [{ id: front-left, now: { toe: 0.1 deg toe in } }]');
    expect(half.one('alignment.toe', 'front')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('wheels.front-right.now.toe') as string,
    });
  });

  it('refuses a toe without its direction, with that of another angle, and in millimetres', () => {
    const wheel = (text: string) => problemsOf('alignment', `wheels: [{ id: front-left, now: { toe: ${text} } }]`);
    expect(wheel('0.1 deg')).toMatchObject([{ found: expect.stringContaining('without a direction') as string }]);
    expect(wheel('0.1 deg top in')).toMatchObject([{ found: '“top in”', hint: 'end with one of: toe in, toe out' }]);
    expect(wheel('2 mm toe in')).toMatchObject([{ code: 'quantity' }]);
  });
});

describe('camber, caster and the rear axle', () => {
  const wheel = (camber: string) => `
wheels: [{ id: front-left, now: { camber: ${camber}, caster: 4.0 deg top to the rear } }]
maker: { front: { camber: { least: 1.5 deg top in, greatest: 0.5 deg top in, from: sheet of the maker }, caster: { least: 3.5 deg top to the rear, greatest: 4.8 deg top to the rear, from: sheet of the maker } } }`;
  it.each([
    ['0.5 ± 0.1 deg top in', 'unclear'],
    ['1.0 ± 0.1 deg top in', 'met'],
    ['0.2 ± 0.1 deg top in', 'against'],
    ['0.2 ± 0.1 deg top out', 'against'],
  ])('a camber of %s is %s', async (camber, outcome) => {
    const { one } = await examineNote('alignment', wheel(camber));
    expect(one('alignment.camber', 'front-left').result).toBe(outcome);
    expect(one('alignment.caster', 'front-left').result).toBe('met');
  });

  it('finds the direction of the rear axle from its wheels', async () => {
    const rear = `
wheels: [{ id: rear-left, now: { toe: 0.20 ± 0.01 deg toe in } }, { id: rear-right, now: { toe: 0.10 ± 0.01 deg toe out } }]
maker-thrust: { greatest: 0.10 deg, from: sheet of the maker }`;
    const { one } = await examineNote('alignment', rear);
    expect(one('alignment.thrust').result).toBe('against');
    expect(degrees(one('alignment.thrust').measured!.si)).toBeCloseTo(0.15, 10);
  });
});

describe('bump steer', () => {
  const stations = (toes: readonly string[]) =>
    `[${toes.map((toe, i) => `{ id: s${i}, travel: ${-60 + 30 * i} mm, toe: ${toe.replace(' deg', ' ± 0.01 deg')} }`).join(', ')}]`;
  const note = (greatest = '0.3 deg') => `
bump-steer:
  - { id: front-left, stations: ${stations(['0.30 deg toe out', '0.05 deg toe out', '0.10 deg toe in', '0.12 deg toe in', '0.00 deg toe in'])}, maker: { greatest: ${greatest}, from: letter of the certifier } }`;

  it('takes the middle two thirds of the travel', async () => {
    const { one } = await examineNote('alignment', note());
    // At −40 mm, by the line from −60 to −30 mm: −0.1333°; greatest 0.12°. Worked by hand.
    expect(degrees(one('alignment.bump-steer', 'front-left').measured!.si)).toBeCloseTo(0.12 + 0.4 / 3, 9);
    expect(one('alignment.bump-steer', 'front-left').result).toBe('met');
    expect((await examineNote('alignment', note('0.2 deg'))).result('alignment.bump-steer', 'front-left')).toBe(
      'against',
    );
  });

  it('has no figure of its own, and says why two stations give no number', async () => {
    const without = await examineNote('alignment', note().replace(/, maker: .*\}/, ' }'));
    expect(without.result('alignment.bump-steer', 'front-left')).toBe('unconfirmed');
    const two = await examineNote(
      'alignment',
      `bump-steer: [{ id: front-left, stations: ${stations(['0.1 deg toe in', '0.1 deg toe in'])} }]`,
    );
    expect(two.one('alignment.bump-steer', 'front-left')).toMatchObject({
      result: 'unclear',
      says: expect.stringContaining('three stations') as string,
    });
  });
});

const wheel = (id: string, more: string) =>
  `  - { id: ${id}, was: { toe: 0.10 deg toe in, camber: 0.3 deg top in }, now: { toe: 0.05 ± 0.02 deg toe in, camber: 0.8 deg top in, height: 362 mm${more} } }`;
const steps = ['-60 mm', '0 mm', '60 mm']
  .map((travel, i) => `{ id: s${i}, travel: ${travel}, toe: 0.0${i + 4} deg toe in }`)
  .join(', ');
const typical = `
load-state: driver's seat 68 kg, half a tank
wheels:
${[wheel('front-left', ', caster: 4.2 deg top to the rear, inclination: 12.5 deg'), wheel('front-right', ', caster: 4.1 deg top to the rear'), wheel('rear-left', ''), wheel('rear-right', '')].join('\n')}
maker:
  front: { toe: { least: 0.0 deg toe in, greatest: 0.3 deg toe in, from: sheet of the maker }, camber: { least: 1.5 deg top in, greatest: 0.0 deg top in, from: sheet of the maker }, caster: { least: 3.5 deg top to the rear, greatest: 5.0 deg top to the rear, from: sheet of the maker } }
  rear: { toe: { least: 0.0 deg toe in, greatest: 0.3 deg toe in, from: sheet of the maker }, camber: { least: 1.5 deg top in, greatest: 0.0 deg top in, from: sheet of the maker } }
maker-thrust: { greatest: 0.1 deg, from: sheet of the maker }
bump-steer:
  - { id: front-left, stations: [${steps}], maker: { greatest: 0.3 deg, from: letter of the certifier } }
  - { id: front-right, stations: [${steps}], maker: { greatest: 0.3 deg, from: letter of the certifier } }
joint-play: 0.2 mm
equipment: four-wheel gauge A-114
equipment-checked: 2026-02-01
equipment-check: by its maker, certificate kept
wheel-centred: yes
worked: none`;

describe('the note as a whole', () => {
  it('a typical note has nothing against it, and is the record that the code asks for', async () => {
    const { findings, one } = await examineNote('alignment', typical, { vehicle: { registration: 'QLD' } });
    expect(findings.filter((f) => ['against', 'unclear', 'unconfirmed'].includes(f.result)).map((f) => f.id)).toEqual(
      [],
    );
    expect(findings.filter((f) => f.result === 'missing' && f.item !== 'hold-point').map((f) => f.id)).toEqual([]);
    expect(one('alignment.before')).toMatchObject({
      result: 'met',
      says: expect.stringContaining('front left: 0.10 deg toe in') as string,
    });
  });

  it('an empty note says what is missing', async () => {
    const { findings } = await examineNote('alignment', '', { vehicle: { registration: 'QLD' } });
    expect(findings.filter((f) => f.result === 'missing').length).toBeGreaterThan(12);
    expect(findings.filter((f) => f.result === 'met' || f.result === 'against')).toEqual([]);
  });
});
