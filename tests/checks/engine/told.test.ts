import { describe, expect, it } from 'vitest';
import { exactly, type Value } from '../../../src/calc/value.js';
import type { Item } from '../../../src/checks/codes/item.js';
import { exactBound, type Limit } from '../../../src/checks/codes/limit.js';
import {
  goesAgainst,
  isNotApplicable,
  placeOfDerived,
  toldByBuild,
  toldByLimit,
} from '../../../src/checks/engine/told.js';
import { buildOf, findingOf, noteOf } from './made.js';

describe('an answer against a fact', () => {
  it.each([
    ['yes', 'yes', false],
    ['no', 'no', false],
    ['yes', 'no', true],
    ['no', 'yes', true],
    ['not applicable', 'yes', true],
    ['n/a', 'no', true],
    ['yes', 'not applicable', true],
    ['not applicable', 'n/a', false],
    ['by a ball joint', 'yes', true],
    ['yes', 'a ball joint', false],
    ['no', undefined, false],
  ])('`%s` where the fact is %s: %s', (said, answer, expected) => expect(goesAgainst(said, { answer })).toBe(expected));

  it('is what the fact excludes, where it says so itself', () => {
    const excludes = (said: string) => said === 'LA1';
    expect(goesAgainst('LA1', { answer: 'yes', excludes })).toBe(true);
    expect(goesAgainst('no', { answer: 'yes', excludes })).toBe(false);
  });

  it('knows the two ways to write that something does not apply', () => {
    expect(['not applicable', 'n/a', 'no', 'none', undefined].map(isNotApplicable)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('modification codes of build.md', () => {
  const item = (over: object = {}) =>
    ({
      id: 'engine.code',
      kind: 'answer',
      states: 'modification-code',
      codes: ['LA1', 'LA2', 'LA4'],
      ...over,
    }) as unknown as Item;
  const build = (codes: string) => buildOf([], `codes: ${codes}`);

  it('answer the item that asks for them, and stand where they are written', () => {
    const [told, ...more] = toldByBuild(item(), build('[LA2, LG1]'));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      item: 'engine.code',
      answer: 'LA2',
      because: '`codes:` of build.md names LA2',
      place: { file: 'build.md', line: 2, path: 'codes' },
    });
    expect(toldByBuild(item(), build('[LA2, LA4]'))[0]!.answer).toBe('LA2, LA4');
  });

  it.each([
    ['LA1', true],
    ['LA2', false],
    ['LA2 and LA1', false],
    ['LA1 or LA4', true],
    ['agreed with the certifier', false],
    ['LA12', false],
  ])('against the words `%s`: %s', (said, expected) =>
    expect(goesAgainst(said, toldByBuild(item(), build('[LA2]'))[0]!)).toBe(expected),
  );

  it('say nothing where none of the item is named, nor to any other item', () => {
    expect(toldByBuild(item(), build('[LG1]'))).toEqual([]);
    expect(toldByBuild(item(), buildOf([]))).toEqual([]);
    expect(toldByBuild(item({ states: 'original_mass' }), build('[LA2]'))).toEqual([]);
    expect(toldByBuild(item({ kind: 'evidence' }), build('[LA2]'))).toEqual([]);
    expect(toldByBuild(item({ codes: undefined }), build('[LA2]'))).toEqual([]);
  });

  it('exclude nothing where the item has no list of its own', () => {
    const told = toldByBuild(item(), build('[LA2]'))[0]!;
    expect(told.excludes!('anything')).toBe(false);
  });
});

describe('a value surely beyond a figure', () => {
  const item = (over: object = {}) =>
    ({
      id: 'engine.step',
      kind: 'limit',
      'speaks-against': { item: 'engine.code', words: ['LA1'], unless: ['LA2'], because: 'more than that is LA2' },
      ...over,
    }) as unknown as Item;
  const value = (si: number, u: number): Value => ({ ...exactly(si, '%'), parts: new Map([['here', u]]) });
  const limit = (over: Partial<Limit> = {}): Limit => ({
    document: 'text',
    basis: 'published',
    status: 'in-force',
    unit: '%',
    max: exactBound(20),
    ...over,
  });
  const finding = (si: number, over: object = {}) =>
    findingOf({
      outcome: 'does-not-conform',
      item: 'engine.step',
      measured: value(si, 1),
      limit: limit(),
      marks: ['a mark'],
      ...over,
    });

  it('speaks against the words of another answer, with its place and marks', () => {
    const [told, ...more] = toldByLimit(finding(57), item());
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      item: 'engine.code',
      note: '010-a',
      because: 'Title of engine.step: says of engine.step; more than that is LA2',
      place: finding(57).place,
      marks: ['a mark'],
    });
    expect(told!.answer).toBeUndefined();
    expect(told!.todo).toContain('read the figure in your copy');
    expect(['LA1', 'LA1, then LA2', 'LA2', 'none'].map((said) => goesAgainst(said, told!))).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it('whatever the figure rests on', () => {
    for (const over of [{ basis: 'memory' }, { status: 'superseded' }] as const)
      expect(toldByLimit(finding(57, { limit: limit(over) }), item())).toHaveLength(1);
    expect(toldByLimit(finding(57), item({ kind: 'test' }))).toHaveLength(1);
  });

  it.each([
    ['within', 10, 0],
    ['at the figure', 20, 0],
    ['beyond, but not with its uncertainty', 20.9, 0],
    ['at its uncertainty beyond', 21, 0],
    ['surely beyond', 21.1, 1],
  ])('%s', (_, si, many) => expect(toldByLimit(finding(si), item())).toHaveLength(many));

  it('is needed: without a value, a figure or such words it says nothing', () => {
    expect(toldByLimit(finding(57, { measured: undefined }), item())).toEqual([]);
    expect(toldByLimit(finding(57, { limit: undefined }), item())).toEqual([]);
    expect(toldByLimit(finding(57), item({ 'speaks-against': undefined }))).toEqual([]);
    expect(toldByLimit(finding(57), item({ kind: 'answer' }))).toEqual([]);
  });
});

describe('the place of an answer that follows', () => {
  it('is that of its field', () => {
    const note = noteOf('010-a', 'title: Tried\npieces: [{ id: cross, welded: yes }]');
    expect(placeOfDerived(note, { answer: 'yes', from: ['pieces', 'cross', 'welded'] })).toMatchObject({
      line: 3,
      path: 'pieces.cross.welded',
    });
    expect(placeOfDerived(note, { answer: 'yes' })).toBeUndefined();
  });
});
