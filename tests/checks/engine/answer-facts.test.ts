import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/checks/engine/told.js';
import { noteOf } from './made.js';
import { answering, asks, found, proof } from './made-items.js';

/** Facts decide: what follows from fields, and what facts of the build say to an item. Items are made up. */

describe('an answer that follows from the fields of the note', () => {
  const note = noteOf('010-a', 'title: Tried\ncut: yes');
  const derived = (answer: string, over: Partial<Derived> = {}) => ({
    '010-a': { answer, because: 'it is cut', from: ['cut'], ...over },
  });
  it('answers the item, and stands with the field', () => {
    expect(found({ notes: [note], derived: derived('yes') })).toMatchObject({
      outcome: 'answered',
      answer: 'yes',
      says: 'answered `yes`; it is cut',
      place: { line: 3, path: 'cut' },
    });
    expect(found({ notes: [note], derived: derived('no') })).toMatchObject({ outcome: 'requirement-not-met' });
    expect(found({ notes: [note], derived: derived('yes', { from: undefined }) }).place.path).toBe('answers.some.item');
  });
  it('is shown beside nothing where the builder answers the same', () => {
    expect(found({ notes: [answering('yes')], derived: derived('yes') })).toMatchObject({
      outcome: 'answered',
      place: { path: 'answers.some.item' },
    });
  });
  it('contradicts what the builder answers otherwise, with both places', () => {
    const typed = noteOf(
      '010-a',
      'title: Tried\ncut: yes\nanswers: { some.item: { answer: no, because: only a hole } }',
    );
    expect(found({ notes: [typed], derived: derived('yes') })).toMatchObject({
      outcome: 'contradicted',
      says: "answered `no`, but the note's own facts say `yes`: it is cut; explained by the builder: only a hole",
      answer: 'no',
      todo: 'correct the answer, or the fact if that is wrong',
      place: { line: 4, path: 'answers.some.item' },
      related: { place: { line: 3, path: 'cut' }, says: 'it is cut' },
      open: true,
    });
  });
  it('contradicts with one place where it names no field', () => {
    const one = found({ notes: [answering('no')], derived: { '010-a': { answer: 'yes' } } });
    expect(one).toMatchObject({
      outcome: 'contradicted',
      says: "answered `no`, but the note's own facts say `yes`",
      related: undefined,
    });
  });
  it('contradicts in whatever note it is', () => {
    const notes = [answering('yes', '010-a'), answering('no', '020-b')];
    expect(found({ notes, derived: { '020-b': { answer: 'yes' } } })).toMatchObject({
      note: '020-b',
      outcome: 'contradicted',
    });
  });
});

describe('a fact of the build', () => {
  it('answers what no note answers, and stands where it was found', () => {
    expect(found({ told: [{ answer: 'yes' }] })).toMatchObject({
      outcome: 'answered',
      says: 'answered `yes`; measured',
      place: { file: 'build.md', path: 'fact' },
    });
    expect(found({ told: [{ answer: 'no' }] })).toMatchObject({
      outcome: 'requirement-not-met',
      place: { file: 'build.md' },
    });
  });
  it('that answers nothing leaves it unanswered', () => {
    expect(found({ told: [{ excludes: () => true }] })).toMatchObject({
      outcome: 'unanswered',
      place: { file: 'notes/010-a.md' },
    });
    expect(found({ told: [{ excludes: () => false }, { answer: 'yes' }] }).outcome).toBe('answered');
  });
  it('leaves the place of what a note answers or what follows there', () => {
    expect(found({ notes: [answering('yes')], told: [{ answer: 'yes' }] }).place.path).toBe('answers.some.item');
    const note = noteOf('010-a', 'title: Tried\ncut: yes');
    expect(
      found({ notes: [note], derived: { '010-a': { answer: 'yes', from: ['cut'] } }, told: [{ answer: 'yes' }] }).place
        .path,
    ).toBe('cut');
    expect(
      found({ notes: [note], derived: { '010-a': { answer: 'yes' } }, told: [{ answer: 'yes' }] }).place.path,
    ).toBe('answers.some.item');
  });
  it('contradicts an answer, with its marks and what is to be done', () => {
    const item = asks({ rests: { document: 'a text', basis: 'quoted' } });
    const fact = { answer: 'yes', marks: ['common practice', 'confirm against your copy'], todo: 'measure again' };
    expect(found({ item, notes: [answering('no')], told: [fact] })).toMatchObject({
      outcome: 'contradicted',
      says: 'answered `no`, but the facts say `yes`: measured',
      marks: ['confirm against your copy', 'common practice'],
      todo: 'measure again',
      related: { place: { file: 'build.md' }, says: 'measured' },
    });
    expect(found({ notes: [answering('no')], told: [{ answer: 'yes', because: '' }] })).toMatchObject({
      says: 'answered `no`, but the facts say `yes`',
      related: { says: 'the fact: `yes`' },
      marks: [],
    });
  });
  it('that only excludes some answers contradicts these', () => {
    const told = [{ excludes: (said: string) => said === 'LA1' }];
    const item = asks({ wants: 'stated' });
    expect(found({ item, notes: [answering('LA1')], told })).toMatchObject({
      outcome: 'contradicted',
      says: 'answered `LA1`, but the facts say measured',
    });
    expect(found({ item, notes: [answering('LA2')], told }).outcome).toBe('answered');
  });
  it('contradicts what follows from the fields of a note', () => {
    const note = noteOf('010-a', 'title: Tried\ncut: yes');
    const derived = (from?: string[]) => ({ '010-a': { answer: 'no', because: 'not cut', from } });
    expect(found({ notes: [note], derived: derived(['cut']), told: [{ answer: 'yes' }] })).toMatchObject({
      outcome: 'contradicted',
      place: { path: 'cut' },
      says: 'answered `no`, but the facts say `yes`: measured; explained by the builder: not cut',
    });
    expect(found({ notes: [note], derived: derived(), told: [{ answer: 'yes' }] }).place.path).toBe(
      'answers.some.item',
    );
  });
  it('contradicts another fact of the build', () => {
    const two = [
      { answer: 'yes', place: { file: 'notes/010-a.md', line: 1, column: 1, path: 'one' } },
      { answer: 'no' },
    ];
    expect(found({ told: two })).toMatchObject({
      outcome: 'contradicted',
      answer: 'yes',
      note: '010-a',
      place: { path: 'one' },
      related: { place: { path: 'fact' } },
      open: true,
    });
    expect(found({ told: [{ answer: 'yes' }, { answer: 'yes' }] }).outcome).toBe('answered');
    expect(found({ told: [{ excludes: () => true }, { answer: 'yes' }] })).toMatchObject({
      outcome: 'contradicted',
      answer: 'yes',
    });
    expect(found({ told: [{ answer: 'yes', excludes: () => true }] }).outcome).toBe('answered');
  });
  it('that stands in the same file elsewhere is shown beside', () => {
    const place = { file: 'notes/010-a.md', line: 9, column: 1, path: 'fact' };
    expect(found({ notes: [answering('no')], told: [{ answer: 'yes', place }] }).related?.place).toEqual(place);
    const other = { file: 'build.md', line: 9, column: 1, path: 'answers.some.item' };
    expect(found({ notes: [answering('no')], told: [{ answer: 'yes', place: other }] }).related?.place).toEqual(other);
  });
  it('is held against what counts as answered only where the item applies', () => {
    const item = asks({ applies: { categories: ['NA'] } });
    expect(found({ item, notes: [answering('no')], told: [{ answer: 'yes' }] }).outcome).toBe('not-applicable');
  });
  it('contradicts no proof', () => {
    expect(found({ item: proof(), notes: [answering('no')], told: [{ answer: 'yes' }] }).outcome).toBe('not-shown');
  });
});
