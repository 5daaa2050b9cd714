import { describe, expect, it } from 'vitest';
import type { HoldPoint, Kind } from '../../../src/checks/engine/kind.js';
import {
  evidenceIn,
  missingOf,
  named,
  namedOf,
  partsOf,
  partsOfItem,
  provesText,
  servedBy,
  showName,
  shownParts,
} from '../../../src/checks/engine/proofs.js';
import { noteOf } from './made.js';

/** Which parts a photo or document names, and what then is shown. */

const point: HoldPoint = { id: 'hoses', shows: 'hoses', level: 'record', during: 'assembled', before: 'tested' };
const photo = (...proves: string[]) =>
  evidenceIn(
    noteOf('010-a', `photos: [{ file: photos/a.jpg, shows: hoses, proves: [${proves.join(', ')}] }]`),
    new Map(),
  )[0]!;
const parts = ['droop', 'bump'];

describe('the photos and documents of a note', () => {
  const note = noteOf(
    '010-a',
    `photos:
  - { file: photos/a.jpg, shows: welds, stage: welded, taken-on: 2026-03-14, proves: [welds left] }
  - { file: photos/b.jpg, shows: welds, taken-on: 2026-03-15 }
papers: [{ file: papers/c.pdf, shows: report, dated: 2026-03-16, of: [48.3x3.2, S355], proves: [report] }]`,
  );
  it('are all there, with what they name, their days and places', () => {
    const [a, b, c, ...more] = evidenceIn(note, new Map());
    expect(more).toEqual([]);
    expect(a).toMatchObject({
      is: 'photo',
      note: '010-a',
      file: 'photos/a.jpg',
      stage: 'welded',
      on: '2026-03-14',
      names: [{ proof: 'welds', parts: ['left'] }],
      place: { line: 3, path: 'photos.0' },
    });
    expect(b).toMatchObject({ names: [], on: '2026-03-15', place: { path: 'photos.1' } });
    expect(c).toMatchObject({
      is: 'paper',
      file: 'papers/c.pdf',
      on: '2026-03-16',
      of: ['48.3x3.2', 'S355'],
      place: { path: 'papers.0' },
    });
    expect(evidenceIn(noteOf('010-a'), new Map())).toEqual([]);
  });
  it('are of the day that the file of the photo tells, before that which was typed', () => {
    const takenAt = new Map([['photos/b.jpg', '2026-03-13T10:20:00']]);
    expect(evidenceIn(note, takenAt).map((e) => e.on)).toEqual(['2026-03-14', '2026-03-13', '2026-03-16']);
  });
});

describe('what a name names', () => {
  it.each([
    [[], [], ['']],
    [[], ['left'], ['']],
    [parts, ['all'], parts],
    [parts, [], 'unsaid'],
    [['one'], [], ['one']],
    [['one'], ['two'], []],
    [parts, ['bump'], ['bump']],
    [parts, ['bump', 'droop', 'lock'], parts],
    [parts, ['lock'], []],
  ])('of %j by %j is %j', (of, words, expected) => expect(named(of as string[], words as string[])).toEqual(expected));
});

describe('which parts of a hold point a photo names', () => {
  const of = (evidence: ReturnType<typeof photo>, over: Partial<HoldPoint> = {}, own: readonly string[] = parts) =>
    namedOf({ ...point, ...over }, own, evidence);
  it('by its own id', () => {
    expect(of(photo('hoses droop'))).toEqual({ parts: ['droop'], unsaid: false });
    expect(of(photo('hoses droop', 'hoses bump droop'))).toEqual({ parts: ['droop', 'bump'], unsaid: false });
    expect(of(photo('hoses'), {}, [])).toEqual({ parts: [''], unsaid: false });
    expect(of(photo('other droop'))).toEqual({ parts: [], unsaid: false });
  });
  it('is not said by the whole, unless it is said beside', () => {
    expect(of(photo('hoses'))).toEqual({ parts: [], unsaid: true });
    expect(of(photo('hoses', 'hoses bump'))).toEqual({ parts: ['bump'], unsaid: false });
    expect(of(photo('hoses lock'))).toEqual({ parts: [], unsaid: false });
  });
  it('by the item that it serves as a whole', () => {
    const serves = { serves: 'brakes.hoses' };
    expect(of(photo('brakes.hoses bump'), serves).parts).toEqual(['bump']);
    expect(of(photo('brakes.hoses'), serves)).toEqual({ parts: [], unsaid: true });
    expect(of(photo('brakes.pipes bump'), serves).parts).toEqual([]);
    expect(of(photo('brakes.hoses bump')).parts).toEqual([]);
  });
  it('by the part of the item that it serves, and by no other', () => {
    const serves = { serves: 'engine.identity number' };
    expect(of(photo('engine.identity number'), serves, []).parts).toEqual(['']);
    expect(of(photo('engine.identity plate'), serves, []).parts).toEqual([]);
    expect(of(photo('engine.identity'), serves, []).parts).toEqual(['']);
    expect(of(photo('engine.identity all'), serves, []).parts).toEqual(['']);
    const both = { serves: 'engine.identity number plate' };
    expect(of(photo('engine.identity'), both, [])).toEqual({ parts: [], unsaid: true });
    expect(of(photo('engine.identity plate'), both, ['number', 'plate']).parts).toEqual(['plate']);
  });
  it('knows what it serves', () => {
    expect(servedBy(point)).toBeUndefined();
    expect(servedBy({ serves: 'engine.identity number' })).toEqual({ proof: 'engine.identity', parts: ['number'] });
  });
});

describe('parts', () => {
  const note = noteOf('010-a', 'title: Tried\nends: [left, right]');
  const data = note.data as never;
  it('of a hold point are a list, or made from the note', () => {
    expect(partsOf(point, data)).toEqual([]);
    expect(partsOf({ ...point, parts }, data)).toEqual(parts);
    expect(partsOf({ ...point, parts: (of: { ends: string[] }) => of.ends } as never, data)).toEqual(['left', 'right']);
  });
  it('of an item are those that its kind makes, else its own', () => {
    const kind = { proofParts: () => ({ welds: ['one'] }) } as unknown as Kind;
    expect(partsOfItem({ id: 'welds', parts }, kind, note)).toEqual(['one']);
    expect(partsOfItem({ id: 'other', parts }, kind, note)).toEqual(parts);
    expect(partsOfItem({ id: 'welds', parts }, {} as Kind, note)).toEqual(parts);
    expect(partsOfItem({ id: 'welds' }, undefined, note)).toEqual([]);
  });
  it('are shown by what was accepted for them', () => {
    const by = { is: 'photo', note: '010-a', file: 'photos/a.jpg' } as const;
    const proof = shownParts(parts, [{ evidence: { ...by, place: 1 } as never, parts: ['bump'] }]);
    expect(proof).toEqual([
      { part: 'droop', by: [] },
      { part: 'bump', by: [by] },
    ]);
    expect(missingOf(proof)).toEqual(['droop']);
    expect(shownParts([], [{ evidence: by, parts: [''] }])).toEqual([{ part: '', by: [by] }]);
    expect(missingOf(shownParts([], []))).toEqual(['']);
  });
  it('are named as they are to be written', () => {
    expect(provesText('hoses', parts)).toBe('`proves: [hoses droop bump]`');
    expect(provesText('hoses', [''])).toBe('`proves: [hoses]`');
    expect([showName({ is: 'photo', file: 'photos/a.jpg' }), showName({ is: 'paper', file: 'b.pdf' })]).toEqual([
      'photo `a.jpg`',
      'document `b.pdf`',
    ]);
  });
});
