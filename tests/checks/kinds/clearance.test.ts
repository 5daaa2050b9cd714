import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const at = (registration: string): Around => ({ vehicle: { registration } });
const place = (moves: string, gaps: string, more = 'engine: none') =>
  `places: [{ id: one, moves: ${moves}, ${gaps}, ${more} }]`;
const ride = (gap: string) => `straight: { ride: ${gap} }`;

describe('gaps of what moves', () => {
  it.each([
    // Recommended 25 mm to tyres and 10 mm to members (LS v2.1, code LS3, page 44 quoted by a street-rod forum): as read.
    ['tyre', '25.0 ± 0.5 mm', 'clearance.tyres', 'met'],
    ['tyre', '25.1 ± 0.5 mm', 'clearance.tyres', 'met'],
    ['tyre', '24.9 ± 0.5 mm', 'clearance.tyres', 'against'],
    ['member', '10.0 ± 0.5 mm', 'clearance.members', 'met'],
    ['member', '10.1 ± 0.5 mm', 'clearance.members', 'met'],
    ['member', '9.9 ± 0.5 mm', 'clearance.members', 'against'],
  ])('%s with %s: %s is %s', async (moves, gap, item, outcome) => {
    const { one } = await examineNote('clearance', place(moves, ride(gap)));
    expect(one(item, 'one')).toMatchObject({ result: outcome, limit: { recommended: true } });
  });

  it.each([
    // 10 mm between brake line and wheel (NSW brake assessment manual, checklist 12i): a limit, and in that state only.
    ['NSW', '10.0 ± 0.5 mm', 'unclear'],
    ['NSW', '11.0 ± 0.5 mm', 'met'],
    ['NSW', '9.0 ± 0.5 mm', 'against'],
    ['VIC', '9.0 ± 0.5 mm', 'out'],
  ])('a brake hose in %s with %s is %s', async (state, gap, outcome) => {
    expect(
      (await examineNote('clearance', place('line', ride(gap)), at(state))).result('brakes.line-wheel', 'one'),
    ).toBe(outcome);
  });

  it('takes the least of all positions', async () => {
    const { one } = await examineNote(
      'clearance',
      place(
        'tyre',
        'straight: { droop: 40 mm, ride: 44 mm, bump: 31 mm }, left-lock: { droop: 35 mm, ride: 30 mm, bump: 26.5 mm }, right-lock: { ride: 52 mm }',
      ),
    );
    expect(one('clearance.tyres', 'one').measured!.si).toBeCloseTo(0.0265, 12);
  });

  it('takes the movement of the engine off the gap, as the note on mounts states it', async () => {
    const notes = { '020-mounts.md': 'kind: mounts\nmovement-drive: 8.0 ± 0.2 mm\nmovement-overrun: 5 mm' };
    const gap = (more: string, around: Around = { notes }) =>
      examineNote('clearance', place('member', ride('17.0 ± 0.2 mm'), more), around);
    expect((await gap('engine: taken-off')).one('clearance.members', 'one')).toMatchObject({
      result: 'against',
    });
    expect((await gap('engine: taken-off')).one('clearance.members', 'one').measured!.si).toBeCloseTo(0.009, 12);
    expect((await gap('engine: included')).result('clearance.members', 'one')).toBe('met');
    expect((await gap('engine: taken-off', {})).one('clearance.members', 'one')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('the mounts note') as string,
    });
    expect((await gap('near: the sump')).one('clearance.members', 'one')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('places.one.engine') as string,
    });
  });

  it('wants more than nothing left between engine and body', async () => {
    const engine = async (gap: string) =>
      (await examineNote('clearance', place('engine', ride(gap), 'engine: included'))).result(
        'clearance.engine',
        'one',
      );
    expect([await engine('0.0 ± 0.5 mm'), await engine('6.0 ± 0.5 mm')]).toEqual(['unclear', 'met']);
  });

  it('refuses a gap in degrees and a place without an id', () => {
    expect(problemsOf('clearance', place('tyre', ride('25 deg')))).toMatchObject([{ code: 'quantity' }]);
    expect(problemsOf('clearance', 'places: [{ moves: tyre }]')).toMatchObject([{ found: 'no `id`' }]);
  });

  it('asks what moves, where nobody said so', async () => {
    const { all } = await examineNote('clearance', 'places: [{ id: one, straight: { ride: 20 mm } }]');
    expect(all('clearance.members', 'one')).toMatchObject([
      { result: 'missing', says: expect.stringContaining('what moves') as string },
    ]);
  });
});

describe('records and answers', () => {
  const whole = '{ droop: 40 mm, ride: 44 mm, bump: 31 mm }';
  it('takes a whole sweep as its record, and not one with gaps in it', async () => {
    const record = async (gaps: string) =>
      (await examineNote('clearance', place('tyre', gaps))).result('clearance.sweep-record');
    expect(await record(`straight: ${whole}`)).toBe('met');
    expect(await record(`straight: ${whole}, left-lock: ${whole}, right-lock: ${whole}`)).toBe('met');
    expect(await record(`straight: ${whole}, left-lock: { ride: 30 mm }`)).toBe('missing');
    expect(await record(ride('30 mm'))).toBe('missing');
  });

  it('asks ground clearance only where no note on suspension does', async () => {
    const notes = { '020-springs.md': 'kind: suspension' };
    expect(
      (await examineNote('clearance', '', at('SA'))).all('suspension.ground-clearance-sa').map((f) => f.note),
    ).toEqual(['010-tried']);
    expect(
      (await examineNote('clearance', '', { ...at('SA'), notes }))
        .all('suspension.ground-clearance-sa')
        .map((f) => f.note),
    ).toEqual(['020-springs']);
  });
});

const typical = `
load-state: unladen, half a tank, ride height 362 mm front and 352 mm rear
tyres: 205/65R15 on 6Jx15 ET25
bump-front: 78 mm
droop-front: 85 mm
bump-rear: 82 mm
droop-rear: 90 mm
lock-left: 34 deg
lock-right: 34 deg
places:
  - { id: front-tyre, place: left tyre at the inner guard, moves: tyre, near: seam, was: 41 mm, straight: { droop: 52 mm, ride: 47 mm, bump: 35 mm }, left-lock: { droop: 40 mm, ride: 37 mm, bump: 31 mm }, right-lock: { droop: 44 mm, ride: 39 mm, bump: 33 mm }, engine: none }
  - { id: drag-link, place: drag link under the sump, moves: member, near: sump, straight: { droop: 22 mm, ride: 19 mm, bump: 15 mm }, engine: included }
  - { id: tunnel, place: gearbox in the tunnel, moves: engine, near: tunnel, straight: { droop: 18 mm, ride: 18 mm, bump: 18 mm }, engine: included }
  - { id: hose, place: left brake hose at the tyre, moves: line, near: tyre, straight: { droop: 24 mm, ride: 22 mm, bump: 19 mm } }
ground: [{ id: pipe, place: front pipe, region: front-axle, load: unladen, now: 146 mm }, { id: sill, region: middle, load: laden, now: 141 mm }]
swept: yes
flat-tyre: yes`;

describe('the note as a whole', () => {
  it('a typical note has nothing against it', async () => {
    const { findings } = await examineNote('clearance', typical, {
      vehicle: { registration: 'NSW' },
      original: { wheelbase: '2640 mm' },
    });
    expect(findings.filter((f) => ['against', 'unclear'].includes(f.result)).map((f) => f.id)).toEqual([]);
    expect(findings.filter((f) => f.result === 'missing' && f.item !== 'hold-point').map((f) => f.item)).toEqual([
      'clearance.least-shown',
    ]);
  });

  it('an empty note says what is missing', async () => {
    const { findings } = await examineNote('clearance', '', at('NSW'));
    expect(findings.filter((f) => f.result === 'missing').length).toBeGreaterThan(8);
    expect(findings.filter((f) => f.result === 'met' || f.result === 'against')).toEqual([]);
  });
});
