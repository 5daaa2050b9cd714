import { describe, expect, it } from 'vitest';
import { answersOf, toldBy } from '../../../src/checks/engine/answers.js';
import type { Kind } from '../../../src/checks/engine/kind.js';
import { noteOf } from './made.js';
import { answered, answering, asks, found, proof } from './made-items.js';

/** What comes of an item that asks for an answer or for evidence. Items are made up. */

describe('an answer', () => {
  it('that is wanted closes its item, with where it stands', () => {
    expect(answered('yes')).toMatchObject({
      id: '010-a/some.item',
      note: '010-a',
      subject: '',
      item: 'some.item',
      title: 'Some item',
      of: 'answer',
      form: 'answer',
      outcome: 'answered',
      basis: 'published',
      answer: 'yes',
      says: 'answered `yes`',
      marks: [],
      place: { file: 'notes/010-a.md', path: 'answers.some.item' },
      open: false,
    });
    expect(answered('{ answer: yes, because: seen }').says).toBe('answered `yes`; seen');
  });

  it('that is not given leaves it open', () => {
    expect(found({})).toMatchObject({ outcome: 'unanswered', says: 'not answered', open: true });
    expect(found({}).todo).toContain('(yes or no)');
    expect(found({ item: asks({ wants: 'stated' }) })).toMatchObject({ outcome: 'unanswered' });
    expect(found({ item: asks({ wants: 'stated' }) }).todo).not.toContain('(yes or no)');
  });

  it.each(['photos', 'papers'])('is not given by one of the %s that is attached for it', (key) => {
    const note = noteOf(
      '010-a',
      `${key}: [{ file: other.x, shows: another, proves: [other] }, { file: a.x, shows: what it is, proves: [some.item] }]`,
    );
    expect(found({ notes: [note] })).toMatchObject({
      outcome: 'unanswered',
      says: '`a.x` is attached for it, but the item is unanswered',
      open: true,
    });
  });

  it.each(['maybe', 'Yes', 'yes indeed', 'none'])('`%s` where yes or no is wanted answers nothing', (word) => {
    expect(answered(word)).toMatchObject({ outcome: 'unanswered', open: true, answer: word });
    expect(answered(word).says).toContain(`answered \`${word}\`, expected`);
  });

  it('of many words is told by its beginning', () => {
    expect(answered('x'.repeat(70)).says).toBe(
      `answered \`${'x'.repeat(60)}\`, expected \`yes\`, \`no\` or \`not applicable\``,
    );
  });

  it('of any words closes what only has to be stated', () => {
    expect(answered('by drum', { wants: 'stated' })).toMatchObject({
      outcome: 'answered',
      answer: 'by drum',
      says: 'stated: by drum; recorded, not judged',
      open: false,
    });
    expect(answered('{ answer: no, because: why }', { wants: 'stated' }).says).toBe(
      'stated: no; why; recorded, not judged',
    );
  });

  it.each([
    ['no', 'yes'],
    ['yes', 'no'],
  ])('`%s` where `%s` is wanted is not met', (word, wants) => {
    expect(answered(`{ answer: ${word}, because: it is so }`, { wants })).toMatchObject({
      outcome: 'requirement-not-met',
      says: `answered \`${word}\`, expected \`${wants}\`; it is so`,
      todo: expect.stringContaining('concession'),
      stop: false,
      open: true,
    });
  });

  it('that stops the note stops it, wherever it would lead', () => {
    expect(
      answered('{ answer: no, because: it was heated }', { stop: true, 'leads-to': [{ item: 'other' }] }),
    ).toMatchObject({
      outcome: 'requirement-not-met',
      stop: true,
      says: 'answered `no`; it was heated: this stops the note until the certifier has decided',
      todo: 'stop work on it and put it to the certifier',
    });
    expect(answered('yes', { stop: true })).toMatchObject({ outcome: 'answered', stop: true, open: false });
  });

  it('that leads to other items waits for them', () => {
    expect(answered('no', { 'leads-to': [{ item: 'one' }, { item: 'two' }] })).toMatchObject({
      outcome: 'answered',
      waits: 'to be followed',
      says: 'answered `no`; this leads to one, two',
      todo: 'settle the items it leads to',
      open: true,
    });
    expect(answered('yes', { 'leads-to': [{ item: 'one' }] }).open).toBe(false);
    expect(answered('no', { 'leads-to': [] })).toMatchObject({ outcome: 'requirement-not-met', open: true });
  });

  it('that it does not apply needs a reason', () => {
    expect(answered('not applicable')).toMatchObject({
      outcome: 'unanswered',
      open: true,
      todo: 'add `because:` to the answer of some.item',
    });
    expect(answered('{ answer: n/a, because: there is none }')).toMatchObject({
      outcome: 'not-applicable',
      says: 'there is none',
      answer: 'n/a',
      open: false,
    });
  });
});

describe('what an answer rests on', () => {
  it('is the weaker of figure and applicability, with its marks', () => {
    expect(answered('yes', { applies: { basis: 'memory' } })).toMatchObject({
      basis: 'memory',
      marks: ['recalled, not confirmed'],
    });
    expect(answered('yes', { applies: { basis: 'own-copy' } }).basis).toBe('published');
    expect(
      answered('yes', { rests: { document: 'a text', basis: 'published', status: 'superseded' } }).marks,
    ).toContain('superseded text');
  });
});

describe('an item that applies to some vehicles', () => {
  const applies = { categories: ['NA'] };
  it('is not applicable to others, whatever was answered', () => {
    expect(answered('no', { applies })).toMatchObject({
      outcome: 'not-applicable',
      says: expect.stringContaining('NA'),
    });
    expect(found({ item: asks({ applies }), worlds: { '010-a': { category: 'NA' } } }).outcome).toBe('unanswered');
  });
  it('asks for what decides it', () => {
    const unknown = { '010-a': { category: undefined } };
    expect(found({ item: asks({ applies }), worlds: unknown, notes: [answering('yes')] })).toMatchObject({
      outcome: 'unanswered',
      says: 'whether it applies depends on vehicle.category',
      todo: 'state vehicle.category',
      open: true,
    });
    expect(found({ item: proof({ applies }), worlds: unknown }).outcome).toBe('not-shown');
  });
  it('applies where it applies to one of the notes, and asks before it is lifted', () => {
    const notes = [noteOf('010-a'), noteOf('020-b')];
    const item = asks({ applies });
    const of = (a: string | undefined, b: string | undefined) =>
      found({ item, notes, worlds: { '010-a': { category: a }, '020-b': { category: b } } });
    expect(of('MA', 'NA')).toMatchObject({ outcome: 'unanswered', says: 'not answered' });
    expect(of(undefined, 'NA').says).toBe('not answered');
    expect(of('MA', undefined).says).toContain('depends on');
    expect(of('MA', 'MA').outcome).toBe('not-applicable');
  });
});

describe('answers of several notes', () => {
  it('stand with the note that gives them', () => {
    const notes = [noteOf('010-a'), answering('yes', '020-b')];
    expect(found({ notes })).toMatchObject({ note: '020-b', outcome: 'answered' });
    expect(found({ notes: [noteOf('010-a')], others: [answering('yes', '020-b')] })).toMatchObject({
      note: '020-b',
      outcome: 'answered',
    });
    expect(found({ notes: [noteOf('010-a'), noteOf('020-b')] }).note).toBe('010-a');
  });
  it('are not hidden: one against what is wanted is told whatever another says', () => {
    const notes = [answering('yes', '010-a'), answering('no', '020-b')];
    expect(found({ notes })).toMatchObject({ note: '020-b', outcome: 'requirement-not-met' });
    expect(found({ notes: [notes[0]!], others: [notes[1]!] })).toMatchObject({
      note: '020-b',
      outcome: 'requirement-not-met',
    });
    expect(found({ notes, item: asks({ wants: 'no' }) })).toMatchObject({
      note: '010-a',
      outcome: 'requirement-not-met',
    });
    expect(found({ notes, item: asks({ wants: 'stated' }) })).toMatchObject({ note: '010-a', outcome: 'answered' });
    expect(found({ notes: [answering('maybe', '010-a'), answering('yes', '020-b')] })).toMatchObject({
      note: '010-a',
      outcome: 'unanswered',
    });
  });
  it('that say nothing against what is wanted leave the first', () => {
    const note = (first: string, second: string, wants: string) =>
      found({ notes: [answering(first, '010-a'), answering(second, '020-b')], item: asks({ wants }) }).note;
    expect(note('yes', 'maybe', 'yes')).toBe('010-a');
    expect(note('by drum', 'no', 'stated')).toBe('010-a');
    expect(note('no', 'yes', 'no')).toBe('020-b');
    expect(note('yes', 'no', 'yes')).toBe('020-b');
  });
  it.each(['photos', 'papers'])('stand with the note of the %s where none is given', (key) => {
    const shown = noteOf('020-b', `${key}: [{ file: a.x, shows: what it is, proves: [some.item] }]`);
    const other = noteOf('015-b', `${key}: [{ file: a.x, shows: what it is, proves: [other] }]`);
    expect(found({ notes: [noteOf('010-a'), other, shown] }).note).toBe('020-b');
  });
});

describe('an item that asks for evidence', () => {
  const photo = (name: string, proves: string) =>
    noteOf(name, `photos: [{ file: a.jpg, shows: what it is, proves: [${proves}] }]`);
  it('is shown by what names it, in any note', () => {
    expect(found({ item: proof(), notes: [photo('010-a', 'some.item')] })).toMatchObject({
      of: 'proof',
      form: 'evidence',
      outcome: 'seen',
      stop: undefined,
      open: false,
    });
    expect(found({ item: proof(), notes: [photo('010-a', 'some.item')] }).proof!.map((p) => p.part)).toEqual(['']);
    expect(found({ item: proof(), others: [photo('020-b', 'some.item')] })).toMatchObject({
      note: '020-b',
      outcome: 'seen',
    });
    expect(found({ item: proof(), notes: [photo('010-a', 'other.item')] })).toMatchObject({
      outcome: 'not-shown',
      open: true,
    });
  });
  it('is shown when each part is, over all notes', () => {
    const parts = ['left', 'right'];
    const [left, right] = [photo('010-a', 'some.item left'), photo('020-b', 'some.item right')];
    expect(found({ item: proof(), notes: [left], parts })).toMatchObject({ outcome: 'part-missing', open: true });
    expect(found({ item: proof(), notes: [left, right], parts }).outcome).toBe('seen');
    expect(found({ item: proof(), notes: [left], others: [left, right], parts }).outcome).toBe('seen');
  });
  it('is no answer that is against something', () => {
    const notes = [photo('010-a', 'some.item'), answering('no', '020-b')];
    expect(found({ item: proof({ wants: 'yes' }), notes }).note).toBe('010-a');
  });
  it('is lifted by a reason', () => {
    expect(found({ item: proof(), notes: [answering('{ answer: n/a, because: none fitted }')] })).toMatchObject({
      outcome: 'not-applicable',
      says: 'none fitted',
    });
  });
});

describe('what a note says', () => {
  it('is what was answered, and what its kind derives', () => {
    const kinds = new Map([
      ['mounts', { answers: () => ({ 'some.item': { answer: 'yes' } }) }],
    ]) as unknown as ReadonlyMap<string, Kind>;
    const said = answersOf(answering('no'), kinds);
    expect(said).toEqual({ given: { 'some.item': { answer: 'no' } }, derived: { 'some.item': { answer: 'yes' } } });
    expect(toldBy(said, 'some.item')).toEqual({ answer: 'no' });
    expect(toldBy({ given: {}, derived: said.derived }, 'some.item')).toEqual({ answer: 'yes' });
    expect(answersOf(noteOf('010-a', 'title: Tried', 'other'), kinds)).toEqual({ given: {}, derived: {} });
    expect(answersOf(noteOf('010-a'), new Map([['mounts', {}]]) as never)).toEqual({ given: {}, derived: {} });
  });
});
