import { describe, expect, it } from 'vitest';
import { judgeEvidence } from '../../../src/checks/engine/evidence.js';
import { evidenceIn } from '../../../src/checks/engine/proofs.js';
import type { Answer } from '../../../src/project/common.js';
import { noteOf } from './made.js';

/** What a photo, a document or an answer shows of an item. Items and files are made up. */

type Asked = Parameters<typeof judgeEvidence>[0];
const stages = 'stages: { as-received: 2026-03-01, cut: 2026-03-10, welded: 2026-03-14 }';
const photo = (proves: string, file = 'a.jpg') => `{ file: photos/${file}, shows: what it is, proves: [${proves}] }`;
const paper = (proves: string, more = '', file = 'b.pdf') =>
  `{ file: papers/${file}, shows: what it is, proves: [${proves}]${more} }`;

interface Case {
  item?: Partial<Asked>;
  parts?: readonly string[];
  photos?: readonly string[];
  papers?: readonly string[];
  answer?: Answer;
  note?: string;
}
function judged({ item, parts = [], photos = [], papers = [], answer, note = 'title: Tried' }: Case) {
  const from = noteOf('010-a', `${note}\nphotos: [${photos.join(', ')}]\npapers: [${papers.join(', ')}]`);
  const all = evidenceIn(from, new Map()).map((one) => ({ ...one, from }));
  return judgeEvidence({ id: 'welds', evidence: ['photo'], ...item }, parts, all, answer);
}
const anyOf = (...evidence: Asked['evidence']) => ({ evidence });

describe('a photo', () => {
  it('that names the item shows it', () => {
    expect(judged({ photos: [photo('welds')] })).toEqual({
      result: 'met',
      says: 'shown by photo a.jpg',
      answer: 'photo a.jpg',
      proof: [{ part: '', by: [{ is: 'photo', note: '010-a', file: 'photos/a.jpg' }] }],
    });
    expect(judged({ photos: [photo('welds'), photo('welds', 'c.jpg'), photo('other, welds')] }).answer).toBe(
      'photo a.jpg, photo c.jpg',
    );
  });
  it('that names another shows nothing', () => {
    expect(judged({ photos: [photo('other')] })).toMatchObject({
      result: 'missing',
      says: 'no photo for it',
      todo: 'add `proves: [welds]` to a photo that shows it',
      proof: [{ part: '', by: [] }],
    });
  });
  it('is no document, and a document no photo', () => {
    expect(judged({ item: anyOf('paper'), photos: [photo('welds')] })).toMatchObject({
      result: 'missing',
      says: 'shown by photo `a.jpg`, expected document',
    });
    expect(judged({ papers: [paper('welds')] })).toMatchObject({
      result: 'missing',
      says: 'shown by document `b.pdf`, expected photo',
    });
    expect(judged({ item: anyOf('photo', 'paper'), papers: [paper('welds')] }).result).toBe('met');
  });
  it('may be older than the work: its stage is judged elsewhere', () => {
    expect(
      judged({
        item: { 'after-work': true },
        note: stages,
        photos: ['{ file: photos/a.jpg, shows: what it is, taken-on: 2026-03-02, proves: [welds] }'],
      }).result,
    ).toBe('met');
  });
});

describe('of several parts', () => {
  const parts = ['left', 'right'];
  it('each has to be shown', () => {
    expect(judged({ parts, photos: [photo('welds left, welds right')] })).toMatchObject({
      result: 'met',
      says: 'shown by photo a.jpg',
    });
    expect(judged({ parts, photos: [photo('welds all')] }).result).toBe('met');
    expect(judged({ parts, photos: [photo('welds left right')] }).result).toBe('met');
    expect(judged({ parts, photos: [photo('welds left'), photo('welds right', 'c.jpg')] }).result).toBe('met');
  });
  it('one that nothing shows is missing', () => {
    expect(judged({ parts, photos: [photo('welds left')] })).toEqual({
      result: 'partly',
      says: 'shown by photo a.jpg; not shown: right',
      todo: 'add `proves: [welds right]` to a photo that shows it',
      answer: 'photo a.jpg',
      proof: [
        { part: 'left', by: [{ is: 'photo', note: '010-a', file: 'photos/a.jpg' }] },
        { part: 'right', by: [] },
      ],
    });
    expect(judged({ parts }).says).toBe('no photo for it: left, right');
    expect(judged({ parts, photos: [photo('welds top')] }).result).toBe('missing');
  });
  it('the whole is not enough', () => {
    expect(judged({ parts, photos: [photo('welds')] })).toMatchObject({
      result: 'partly',
      says: 'photo `a.jpg` does not say which of left, right it shows',
      todo: 'say which, as `proves: [welds left right]`',
      proof: [
        { part: 'left', by: [] },
        { part: 'right', by: [] },
      ],
    });
    expect(judged({ parts, photos: [photo('welds'), photo('welds left', 'c.jpg')] }).says).toBe(
      'shown by photo c.jpg; not shown: right',
    );
    expect(judged({ parts: ['left'], photos: [photo('welds')] }).result).toBe('met');
  });
  it('what is not taken is told beside', () => {
    const found = judged({
      parts,
      item: anyOf('photo'),
      photos: [photo('welds left')],
      papers: [paper('welds right')],
    });
    expect(found).toMatchObject({
      result: 'partly',
      says: 'shown by photo a.jpg; not shown: right; shown by document `b.pdf`, expected photo',
    });
    const none = judged({ parts, papers: [paper('welds left right')] });
    expect(none).toMatchObject({ result: 'missing', says: 'shown by document `b.pdf`, expected photo' });
  });
});

describe('a document', () => {
  const item = { evidence: ['paper'], 'after-work': true } satisfies Partial<Asked>;
  it.each([
    ['the day before the work', '2026-03-09', 'missing'],
    ['the day the work began', '2026-03-10', 'met'],
    ['later', '2026-03-20', 'met'],
  ])('of %s', (_, dated, result) => {
    const found = judged({ item, note: stages, papers: [paper('welds', `, dated: ${dated}`)] });
    expect(found.result).toBe(result);
    if (result === 'missing')
      expect(found.says).toBe(`document \`b.pdf\` is of ${dated}, before the work of 2026-03-10`);
  });
  it('may be older where that does not matter, or where the work has no date', () => {
    const old = paper('welds', ', dated: 2026-03-02');
    expect(judged({ item: anyOf('paper'), note: stages, papers: [old] }).result).toBe('met');
    expect(judged({ item, papers: [old] }).result).toBe('met');
    expect(judged({ item, note: 'stages: { as-received: 2026-03-03 }', papers: [old] }).result).toBe('met');
  });
  it('says of which day it is where that matters, whether or not the work has a date', () => {
    const papers = [paper('welds')];
    const says = 'document `b.pdf` does not say of which day it is: state it under `dated:`';
    expect(judged({ item: anyOf('paper'), note: stages, papers }).result).toBe('met');
    expect(judged({ item, note: stages, papers })).toMatchObject({ result: 'missing', says });
    expect(judged({ item, papers })).toMatchObject({ result: 'missing', says });
    const dated = { evidence: ['paper'], dated: true } satisfies Partial<Asked>;
    expect(judged({ item: dated, papers })).toMatchObject({ result: 'missing', says });
    const of = (day: string) => judged({ item: dated, note: stages, papers: [paper('welds', `, dated: ${day}`)] });
    expect(['2026-03-09', '2026-03-10'].map((day) => of(day).result)).toEqual(['met', 'met']);
  });
  it('says of what it is where that matters', () => {
    const named = { evidence: ['paper', 'photo'], 'names-part': true } satisfies Partial<Asked>;
    const note = 'tube: CHS 48.3x3.2';
    const naming = (more: string) => judged({ item: named, note, papers: [paper('welds', more)] });
    expect(naming(', of: 48.3x3.2').result).toBe('met');
    for (const more of ['', ', dated: 2026-03-10'])
      expect(naming(more)).toMatchObject({
        result: 'missing',
        says: expect.stringContaining('document `b.pdf` does not say of what it is: state under `of:`'),
      });
    expect(judged({ item: named, note, photos: [photo('welds')] }).result).toBe('met');
  });
  it('that only an answer names is held to the same', () => {
    const answer = { answer: 'yes', shown: 'paper b' };
    expect(judged({ item, note: stages, papers: [paper('other')], answer }).result).toBe('missing');
    const later = paper('other', ', dated: 2026-03-10');
    expect(judged({ item, note: stages, papers: [later], answer }).result).toBe('met');
  });
  it('begins to count with the earliest stage, in whatever order they stand', () => {
    const note = 'stages: { welded: 2026-03-10, painted: 2026-03-08 }';
    expect(judged({ item, note, papers: [paper('welds', ', dated: 2026-03-08')] }).result).toBe('met');
    expect(judged({ item, note, papers: [paper('welds', ', dated: 2026-03-07')] }).result).toBe('missing');
  });
  it('of another size is not of this', () => {
    const note = 'tube: CHS 48.3x3.2';
    expect(judged({ item: anyOf('paper'), note, papers: [paper('welds', ', of: 48.3x3.2')] }).result).toBe('met');
    expect(judged({ item: anyOf('paper'), note, papers: [paper('welds', ', of: 60.3x3.2')] })).toMatchObject({
      result: 'missing',
      says: 'document `b.pdf` names 60.3x3.2; the note has CHS 48.3x3.2',
    });
  });
  it('of several parts is of the size of each', () => {
    const note = 'pieces: [{ id: left, tube: 50x3 }, { id: right, tube: 60x3 }]';
    const found = judged({
      item: anyOf('paper'),
      parts: ['left', 'right'],
      note,
      papers: [paper('welds all', ', of: 50x3')],
    });
    expect(found).toMatchObject({
      result: 'partly',
      says: 'shown by document b.pdf; not shown: right; document `b.pdf` names 50x3; `right` has 60x3',
    });
  });
  it('does for a drawing', () => {
    expect(judged({ item: anyOf('drawing'), papers: [paper('welds')] }).result).toBe('met');
    expect(judged({ item: anyOf('drawing'), photos: [photo('welds')] }).result).toBe('missing');
    expect(judged({ item: anyOf('sheet'), papers: [paper('welds')] }).result).toBe('missing');
  });
});

describe('an answer that names what shows it', () => {
  const shown = (text: string, more: Partial<Answer> = {}): Answer => ({ answer: 'yes', shown: text, ...more });
  it.each([
    ['sheet crossmember', 'met'],
    ['Sheet crossmember', 'met'],
    ['note 020', 'missing'],
    ['note 020, sheet crossmember', 'met'],
    ['note 020 and sheet crossmember', 'met'],
    ['note 020;sheet crossmember', 'met'],
    ['crossmember sheet', 'missing'],
    ['', 'missing'],
  ])('`%s` where a sheet is asked: %s', (text, result) =>
    expect(judged({ item: anyOf('sheet'), answer: shown(text) }).result).toBe(result),
  );
  it('is told with its reason', () => {
    expect(judged({ item: anyOf('sheet'), answer: shown('sheet crossmember', { because: 'same load' }) })).toEqual({
      result: 'met',
      says: 'shown by sheet crossmember; same load',
      answer: 'yes',
    });
    expect(judged({ item: anyOf('sheet'), answer: shown('note 020') })).toMatchObject({
      says: 'shown by note 020, expected sheet',
      answer: 'yes',
    });
    expect(judged({ photos: [photo('welds')], answer: { answer: 'bare', because: 'by hand' } })).toMatchObject({
      says: 'shown by photo a.jpg; by hand',
      answer: 'bare',
    });
  });
  it('with a sheet or note shows the whole of several parts, with a photo or document none of them', () => {
    const parts = ['left', 'right'];
    expect(judged({ item: anyOf('sheet'), parts, answer: shown('sheet welds') }).result).toBe('met');
    expect(judged({ parts, answer: shown('photo a') })).toMatchObject({
      result: 'partly',
      says: '`photo a` does not say which of left, right it shows',
      answer: 'yes',
    });
    expect(judged({ item: anyOf('paper'), parts, answer: shown('paper a') }).result).toBe('partly');
    expect(judged({ item: anyOf('paper'), answer: shown('paper a') })).toEqual({
      result: 'met',
      says: 'shown by paper a',
      answer: 'yes',
    });
    expect(judged({ answer: shown('photo a') })).toMatchObject({ result: 'met', answer: 'yes' });
    expect(judged({ parts: ['left'], answer: shown('photo a') }).result).toBe('met');
    expect(judged({ item: anyOf('paper'), answer: shown('photo a') }).result).toBe('missing');
    expect(judged({ item: anyOf('photo'), answer: shown('paper a') }).result).toBe('missing');
  });
  it('keeps its word beside parts that are shown', () => {
    expect(
      judged({ parts: ['left', 'right'], photos: [photo('welds left')], answer: { answer: 'bare' } }),
    ).toMatchObject({ result: 'partly', answer: 'bare' });
  });
});

describe('a bare answer', () => {
  it('shows nothing', () => {
    expect(judged({ answer: { answer: 'yes' } })).toMatchObject({
      result: 'missing',
      says: 'answered `yes`, but nothing shows it; expected photo',
      todo: 'add `proves: [welds]` to a photo that shows it, or `shown:` to the answer',
      answer: 'yes',
    });
  });
  it('`no` leaves it open whatever is attached', () => {
    expect(
      judged({
        item: anyOf('photo', 'paper'),
        photos: [photo('welds')],
        answer: { answer: 'no', because: 'not welded yet' },
      }),
    ).toMatchObject({
      result: 'missing',
      says: 'answered `no`; not welded yet; expected photo or document',
      answer: 'no',
    });
  });
});
