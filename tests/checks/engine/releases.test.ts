import { describe, expect, it } from 'vitest';
import { isOpen } from '../../../src/checks/engine/finding.js';
import type { HoldPoint, Kind } from '../../../src/checks/engine/kind.js';
import { releases } from '../../../src/checks/engine/releases.js';
import type { Note } from '../../../src/project/model.js';
import { buildOf, certified, noteOf } from './made.js';

/** Releases of hold points, by the certifier alone, between the stage that shows it and the stage that covers it. */

const tacked: HoldPoint = {
  id: 'tacked',
  shows: 'the joint tacked',
  level: 'hold',
  during: 'tacked',
  before: 'welded',
};
const recorded: HoldPoint = { ...tacked, id: 'recorded', level: 'record' };
const witnessed: HoldPoint = { ...tacked, id: 'witnessed', level: 'witness' };
const kindOf = (...holdPoints: HoldPoint[]) => ({ holdPoints }) as unknown as Kind;
const kinds = new Map([
  ['mounts', kindOf(tacked, recorded, witnessed)],
  ['inspection', kindOf()],
]);

const member = (stages = 'tacked: 2026-03-12, welded: 2026-03-16', name = '020-member') =>
  noteOf(name, `title: Member\nstages: { ${stages} }`);
const visit = (
  words: readonly string[],
  { on = '2026-03-13', who = 'R. Ansell', name = '900-visit', kind = 'inspection' } = {},
) =>
  noteOf(
    name,
    [
      ...(on ? [`on: ${on}`] : []),
      ...(who ? [`who: ${who}`] : []),
      'released:',
      ...words.map((w, i) => `  - { id: w${i}, ${/point:/.test(w) ? '' : 'note: 020-member, point: tacked, '}${w} }`),
    ].join('\n'),
    kind,
  );
const all = (notes: readonly Note[], text = certified) => releases(buildOf(notes, text), kinds);
const one = (notes: readonly Note[], text?: string) => {
  const [found, ...more] = all(notes, text);
  expect(more).toEqual([]);
  return { ...found!, open: isOpen(found!) };
};

describe('a hold point that holds', () => {
  it('is asked for a release, and no other is', () => {
    const found = all([member('tacked: 2026-03-12')]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      id: '020-member/tacked/release',
      note: '020-member',
      subject: 'tacked',
      item: 'hold-point-release',
      title: 'Release: the joint tacked',
      of: 'proof',
      outcome: 'not-shown',
      form: 'order',
      basis: 'own-copy',
      says: 'work stops here before it is welded, until the certifier releases it',
      todo: expect.stringContaining('show it to the certifier'),
    });
    expect(isOpen(found[0]!)).toBe(true);
  });

  it('that was covered without a release says since when', () => {
    expect(one([member()])).toMatchObject({
      says: '`welded` since 2026-03-16, without a release by the certifier',
      place: { path: 'stages.welded', line: 3 },
      open: true,
    });
    expect(one([member('tacked: 2026-03-12, painted: 2026-03-20')])).toMatchObject({
      place: { path: 'stages.painted' },
    });
  });

  it('released by the certifier in between is in order', () => {
    expect(one([member(), visit(['released: yes'])])).toMatchObject({
      of: 'date',
      outcome: 'in-order',
      says: 'released on 2026-03-13, `welded` on 2026-03-16',
      place: { file: 'notes/900-visit.md', path: 'released.0' },
      open: false,
    });
    expect(one([member('tacked: 2026-03-12'), visit(['released: yes, words: well fitted'])]).says).toBe(
      'released on 2026-03-13: well fitted',
    );
  });

  it.each([
    ['the day before it was there', '2026-03-11', 'part-missing'],
    ['the day it was there', '2026-03-12', 'in-order'],
    ['the day it was covered', '2026-03-16', 'in-order'],
    ['the day after', '2026-03-17', 'out-of-order'],
  ])('released %s', (_, on, outcome) => {
    expect(one([member(), visit([`released: yes, on: ${on}`])])).toMatchObject({
      outcome,
      open: outcome !== 'in-order',
    });
    expect(one([member(), visit(['released: yes'], { on })])).toMatchObject({ outcome });
  });

  it('released too late, with both places', () => {
    expect(one([member(), visit(['released: yes, on: 2026-03-17'])])).toMatchObject({
      says: 'released on 2026-03-17, after `welded` on 2026-03-16',
      place: { path: 'released.0' },
      related: { place: { path: 'stages.welded' }, says: '`welded` is dated here' },
    });
  });

  it('released too early says so', () => {
    expect(one([member(), visit(['released: yes, on: 2026-03-11'])])).toMatchObject({
      of: 'proof',
      says: 'released on 2026-03-11, before it was tacked on 2026-03-12: what was released is not what is there',
      todo: expect.stringContaining('again'),
    });
    expect(one([member('welded: 2026-03-16'), visit(['released: yes, on: 2026-03-01'])]).outcome).toBe('in-order');
    expect(one([noteOf('020-member'), visit(['released: yes'])]).outcome).toBe('in-order');
  });

  it.each([
    ['by nobody', '', 'by nobody who is named'],
    ['by the builder', 'J. Okoro', 'by J. Okoro'],
  ])('released %s is open', (_, who, says) => {
    const found = one([member(), visit(['released: yes'], { who })]);
    expect(found).toMatchObject({
      of: 'proof',
      outcome: 'part-missing',
      todo: expect.stringContaining('`who:`'),
      open: true,
    });
    expect(found.says).toContain(says);
  });

  it('released where build.md names no certifier is open', () => {
    expect(one([member(), visit(['released: yes'])], 'title: A car').open).toBe(true);
  });

  it('released on an unknown day is open', () => {
    expect(one([member(), visit(['released: yes'], { on: '' })])).toMatchObject({
      outcome: 'part-missing',
      says: 'released in 900-visit, which does not say when',
      todo: expect.stringContaining('`on:`'),
      place: { path: 'released.0' },
    });
  });

  it('named without a word is not released', () => {
    expect(one([member(), visit(['words: seen'])]).outcome).toBe('not-shown');
  });

  it('is released in the note of an inspection only', () => {
    const found = all([member(), visit(['released: yes'], { kind: 'mounts' })]);
    expect(found.map((f) => f.outcome)).toEqual(['not-shown', 'not-shown']);
    expect(found.map((f) => f.note)).toEqual(['020-member', '900-visit']);
  });
});

describe('a refusal', () => {
  it('stands with its day and words', () => {
    expect(one([member(), visit(['released: no, words: out of square'])])).toMatchObject({
      of: 'answer',
      outcome: 'requirement-not-met',
      says: 'not released by the certifier on 2026-03-13: out of square',
      todo: 'stop until it is released',
      place: { path: 'released.0' },
      related: { place: { path: 'stages.welded' }, says: 'the stage that covers it' },
      open: true,
    });
    expect(one([member(), visit(['released: no'], { on: '' })]).says).toBe('not released by the certifier');
  });

  it.each<[string, string[], string]>([
    ['yields to a later yes', ['no, on: 2026-03-13', 'yes, on: 2026-03-14'], 'in-order'],
    ['yields to a later yes wherever that stands', ['yes, on: 2026-03-14', 'no, on: 2026-03-13'], 'in-order'],
    ['yields to a later yes of the same day', ['no, on: 2026-03-13', 'yes, on: 2026-03-13'], 'in-order'],
    ['takes an earlier yes back', ['yes, on: 2026-03-13', 'no, on: 2026-03-14'], 'requirement-not-met'],
    ['takes an earlier yes of the same day back', ['yes, on: 2026-03-13', 'no, on: 2026-03-13'], 'requirement-not-met'],
    [
      'takes an earlier yes back, so that a late one does not count as in time',
      ['yes, on: 2026-03-13', 'no, on: 2026-03-14', 'yes, on: 2026-03-17'],
      'out-of-order',
    ],
    [
      'twice yields to a yes after both',
      ['no, on: 2026-03-12', 'no, on: 2026-03-13', 'yes, on: 2026-03-14'],
      'in-order',
    ],
  ])('%s', (_, words, outcome) => {
    expect(one([member(), visit(words.map((w) => `released: ${w}`))]).outcome).toBe(outcome);
  });

  it('without a day comes after all that has one', () => {
    const notes = [
      visit(['released: yes'], { name: '901-visit' }),
      visit(['released: no'], { on: '', name: '902-visit' }),
    ];
    expect(one([member(), ...notes]).outcome).toBe('requirement-not-met');
  });
});

describe('of several releases', () => {
  it('one that counts is enough, wherever it stands', () => {
    const early = 'released: yes, on: 2026-03-11';
    const good = 'released: yes, on: 2026-03-14';
    const late = 'released: yes, on: 2026-03-17';
    expect(one([member(), visit([early, good, late])])).toMatchObject({
      outcome: 'in-order',
      place: { path: 'released.1' },
    });
    expect(one([member(), visit([early, late])])).toMatchObject({
      outcome: 'out-of-order',
      place: { path: 'released.1' },
    });
    const byOther = visit([good], { who: 'J. Okoro', name: '901-visit' });
    expect(one([member(), byOther, visit([early])])).toMatchObject({
      outcome: 'part-missing',
      place: { file: 'notes/901-visit.md' },
    });
  });
});

describe('a release', () => {
  it('names its note in full or by its number', () => {
    expect(one([member(), visit(['note: "020", point: tacked, released: yes'])]).outcome).toBe('in-order');
  });

  it.each([
    ['another point', 'note: 020-member, point: welded'],
    ['another note', 'note: 030-member, point: tacked'],
    ['the beginning of a number', 'note: "02", point: tacked'],
    ['a name without its number', 'note: member, point: tacked'],
  ])('of %s leads nowhere, and releases nothing', (_, names) => {
    const found = all([member(), visit([`${names}, released: yes`])]);
    expect(found.map((f) => f.outcome)).toEqual(['not-shown', 'not-shown']);
    expect(found[1]).toMatchObject({
      id: '900-visit/1/release',
      note: '900-visit',
      title: 'Release of a hold point',
      of: 'proof',
      place: { path: 'released.0' },
    });
  });

  it('that leads nowhere is told with the nearest that there is', () => {
    const [, near] = all([member(), visit(['note: 020-member, point: tackd, released: yes'])]);
    expect(near).toMatchObject({
      subject: '020-member tackd',
      says: 'no hold point `020-member tackd`',
      todo: 'did you mean `020-member tacked`?',
    });
    const [, far] = all([member(), visit(['note: zzz, point: qqqqqqqq, released: yes'])]);
    expect(far!.todo).toContain('name the note');
    const [, bare] = all([member(), visit(['point: , released: yes'])]);
    expect(bare!.subject).toBe('… …');
  });

  it('of a point that is only recorded is kept, and asks nothing', () => {
    expect(all([member(), visit(['note: 020-member, point: recorded, released: yes'])]).map((f) => f.subject)).toEqual([
      'tacked',
    ]);
  });

  it('of a point that the note does not ask for leads nowhere', () => {
    const none = new Map([
      ['mounts', { holdPoints: [tacked], holds: () => false } as unknown as Kind],
      ['inspection', kindOf()],
    ]);
    const found = releases(buildOf([member(), visit(['released: yes'])], certified), none);
    expect(found.map((f) => f.note)).toEqual(['900-visit']);
  });
});
