import { describe, expect, it } from 'vitest';
import type { CodeItem } from '../../../src/checks/codes/codes.js';
import type { World } from '../../../src/checks/codes/limits.js';
import { type Finding, isOpen } from '../../../src/checks/engine/finding.js';
import { checkHoldPoints, isInStage, keyOf } from '../../../src/checks/engine/hold-points.js';
import type { HoldPoint, Kind } from '../../../src/checks/engine/kind.js';
import type { Derived } from '../../../src/checks/engine/told.js';
import type { Ground } from '../../../src/checks/engine/work.js';
import { type Stage, stageNames } from '../../../src/project/common.js';
import { noteOf } from './made.js';

/** What photos and documents prove at a hold point, by name, stage and day. Hold points and items are made up. */

const point: HoldPoint = { id: 'bare', shows: 'welds bare', level: 'record', during: 'welded', before: 'painted' };
const item = (over: object = {}) =>
  ({
    id: 'body.bare',
    kind: 'evidence',
    evidence: ['photo'],
    rests: { document: 'a text', basis: 'published', status: 'superseded' },
    ...over,
  }) as unknown as CodeItem;
const stages = 'stages: { as-received: 2026-03-01, welded: 2026-03-14, painted: 2026-03-20 }';
const photo = (on: string | undefined, proves = 'bare', more = '', file = 'a.jpg') =>
  `{ file: photos/${file}, shows: what it is, ${on ? `taken-on: ${on}, ` : ''}proves: [${proves}]${more} }`;
const paper = (on: string | undefined, proves = 'bare', more = '') =>
  `{ file: papers/b.pdf, shows: what it is, ${on ? `dated: ${on}, ` : ''}proves: [${proves}]${more} }`;

interface Case {
  point?: Partial<HoldPoint>;
  note?: string;
  photos?: readonly string[];
  papers?: readonly string[];
  items?: readonly CodeItem[];
  raised?: boolean;
  world?: Partial<World>;
  derived?: Readonly<Record<string, Derived>>;
  takenAt?: ReadonlyMap<string, string>;
}
function checked(of: Case) {
  const { note = stages, photos = [], papers = [], items = [], raised = true, world = {}, derived } = of;
  const one = noteOf('010-a', `${note}\nphotos: [${photos.join(', ')}]\npapers: [${papers.join(', ')}]`);
  const kind = { holdPoints: [{ ...point, ...of.point }], answers: derived && (() => derived) } as unknown as Kind;
  const ground = { items: new Map(items.map((i) => [i.id, i])), world: () => world } as unknown as Ground;
  return checkHoldPoints([one], new Map([['mounts', kind]]), ground, of.takenAt ?? new Map(), () => raised);
}
function held(of: Case): Finding & { open: boolean } {
  const [found, ...more] = checked(of).findings;
  expect(more).toEqual([]);
  return { ...found!, open: isOpen(found!) };
}

describe('a hold point', () => {
  it('that nothing names is open, before and after it was covered', () => {
    expect(held({})).toMatchObject({
      id: '010-a/bare/hold-point',
      note: '010-a',
      subject: 'bare',
      item: 'hold-point',
      point: 'bare',
      title: 'welds bare',
      of: 'proof',
      outcome: 'not-shown',
      form: 'order',
      basis: 'own-copy',
      marks: [],
      says: '`painted` since 2026-03-20, and no photo names it',
      todo: 'add `proves: [bare]` to an earlier photo that shows it, or agree with the certifier on opening it or on another proof',
      place: { path: 'stages.painted', line: 2 },
      proof: [{ part: '', by: [] }],
      open: true,
    });
    expect(held({ note: 'title: Tried' })).toMatchObject({
      says: 'still to be recorded in the stage `welded`, before it is painted',
      todo: 'photograph it and add `proves: [bare]`: welds bare',
      open: true,
    });
  });

  it.each([
    ['long before', '2026-03-01', 'seen'],
    ['the day before it was covered', '2026-03-19', 'seen'],
    ['the day it was covered', '2026-03-20', 'seen'],
    ['the day after', '2026-03-21', 'out-of-order'],
  ])('photographed %s', (_, on, outcome) => {
    const found = held({ photos: [photo(on)] });
    expect(found).toMatchObject({ outcome, open: outcome !== 'seen', place: { path: 'photos.0' } });
  });

  it('is seen with its days', () => {
    expect(held({ photos: [photo('2026-03-15'), photo('2026-03-14', 'bare', '', 'c.jpg')] })).toMatchObject({
      says: 'photographed on 2026-03-14, 2026-03-15, `painted` on 2026-03-20',
      proof: [{ part: '', by: [{ file: 'photos/a.jpg' }, { file: 'photos/c.jpg' }] }],
    });
    expect(held({ note: 'title: Tried', photos: [photo('2026-03-15')] }).says).toBe(
      'photographed on 2026-03-15, not covered yet',
    );
  });

  it('photographed too late says so, with both places', () => {
    expect(held({ photos: [photo('2026-03-21')] })).toMatchObject({
      of: 'date',
      says: 'photo `a.jpg` for `bare` was taken on 2026-03-21, after `painted` on 2026-03-20',
      todo: 'name the photo that was taken before it was covered, or correct the date',
      related: { place: { path: 'stages.painted' }, says: '`painted` is dated here' },
      proof: [{ part: '', by: [] }],
    });
    expect(held({ photos: [photo('2026-03-21'), photo('2026-03-15', 'bare', '', 'c.jpg')] }).outcome).toBe('seen');
  });

  it('counts the day that the file itself tells', () => {
    const takenAt = new Map([['photos/a.jpg', '2026-03-21T08:00:00']]);
    expect(held({ photos: [photo('2026-03-15')], takenAt }).outcome).toBe('out-of-order');
  });

  it('photographed on an unknown day is open', () => {
    expect(held({ photos: [photo(undefined)] })).toMatchObject({
      outcome: 'part-missing',
      says: 'photo `a.jpg` does not say when it was taken',
      todo: 'add `taken-on:` to the photo',
      place: { path: 'photos.0' },
      open: true,
    });
  });

  it('is not shown by a photo of another stage', () => {
    expect(held({ photos: [photo('2026-03-15', 'bare', ', stage: cut')] })).toMatchObject({
      outcome: 'not-shown',
      says: 'photo `a.jpg` is of the stage `cut`, not `welded`',
      place: { path: 'photos.0' },
    });
    expect(held({ photos: [photo('2026-03-15', 'bare', ', stage: welded')] }).outcome).toBe('seen');
    expect(held({ photos: [photo(undefined, 'bare', ', stage: cut')] }).says).toContain('of the stage');
  });

  it('is named by its own name only', () => {
    expect(held({ photos: [photo('2026-03-15', 'other')] }).outcome).toBe('not-shown');
  });

  it('offers photos of its stage that name something else', () => {
    const of = (n: number, on = '2026-03-15') =>
      Array.from({ length: n }, (_, i) => photo(on, 'other', ', stage: welded', `${i}.jpg`));
    expect(held({ photos: of(1) }).todo).toBe(
      'photo `0.jpg` of stage `welded`: if it shows this, add `proves: [bare]`',
    );
    expect(held({ photos: of(6) }).todo).toBe(
      'photos `0.jpg`, `1.jpg`, `2.jpg`, `3.jpg` of stage `welded`: if it shows this, add `proves: [bare]`',
    );
    expect(held({ photos: of(1, '2026-03-20') }).todo).toContain('photo `0.jpg`');
    expect(held({ photos: of(1, '2026-03-21') }).todo).toContain('add `proves: [bare]` to an earlier photo');
    expect(held({ note: 'title: Tried', photos: of(1, '2026-03-21') }).todo).toContain('photo `0.jpg`');
    expect(held({ photos: ['{ file: photos/a.jpg, shows: what it is, stage: welded }'] }).todo).toContain(
      'photo `a.jpg`',
    );
    expect(held({ photos: [photo('2026-03-15', 'other', ', stage: tacked')] }).todo).toContain('to an earlier photo');
    expect(
      held({ photos: [photo('2026-03-15', 'bare', ', stage: cut'), photo('2026-03-21', 'other', ', stage: welded')] })
        .todo,
    ).toContain('to an earlier photo');
  });
});

describe('a hold point of several parts', () => {
  const parts = { parts: ['left', 'right'] };
  it('is seen when each is', () => {
    expect(held({ point: parts, photos: [photo('2026-03-15', 'bare left right')] }).outcome).toBe('seen');
    expect(held({ point: parts, photos: [photo('2026-03-15', 'bare left')] })).toMatchObject({
      outcome: 'part-missing',
      says: 'photographed on 2026-03-15; not shown: right',
      todo: 'add `proves: [bare right]` to an earlier photo that shows it, or agree with the certifier on opening it or on another proof',
      place: { path: 'photos.0' },
      open: true,
    });
  });
  it('is made from the note', () => {
    const made = { parts: ((data: { ends: string[] }) => data.ends) as never };
    expect(held({ point: made, note: `${stages}\nends: [front, rear]` }).proof!.map((p) => p.part)).toEqual([
      'front',
      'rear',
    ]);
  });
  it('is not said by the whole', () => {
    expect(held({ point: parts, photos: [photo('2026-03-15')] })).toMatchObject({
      outcome: 'not-shown',
      says: 'photo `a.jpg` does not say which of left, right it shows',
      place: { path: 'photos.0' },
    });
    expect(held({ point: parts, photos: [photo('2026-03-15', 'bare', ', stage: cut')] }).says).toContain(
      'no photo names it',
    );
  });
  it('tells the late one, and why others are not taken', () => {
    const left = photo('2026-03-15', 'bare left');
    expect(held({ point: parts, photos: [left, photo('2026-03-21', 'bare right', '', 'c.jpg')] })).toMatchObject({
      outcome: 'out-of-order',
      place: { path: 'photos.1' },
    });
    expect(held({ point: parts, photos: [left, photo('2026-03-21', 'bare left', '', 'c.jpg')] }).outcome).toBe(
      'part-missing',
    );
    expect(
      held({ point: parts, photos: [left, photo('2026-03-15', 'bare right', ', stage: cut', 'c.jpg')] }).says,
    ).toBe('photographed on 2026-03-15; not shown: right; photo `c.jpg` is of the stage `cut`, not `welded`');
    expect(held({ point: parts, photos: [left, photo(undefined, 'bare right', '', 'c.jpg')] })).toMatchObject({
      outcome: 'part-missing',
      says: 'photo `c.jpg` does not say when it was taken; not shown: right',
      place: { path: 'photos.1' },
    });
  });
});

describe('a hold point that serves an item', () => {
  const serves = { serves: 'body.bare' };
  it('is asked once, as that item, with what the item rests on', () => {
    const found = checked({ point: serves, items: [item()] });
    expect(found.findings[0]).toMatchObject({
      item: 'body.bare',
      point: 'bare',
      basis: 'published',
      marks: ['superseded text', 'confirm against your copy'],
    });
    expect([...found.served]).toEqual([[keyOf(noteOf('010-a'), 'body.bare'), 'all']]);
    expect(checked({ point: serves, items: [item({ applies: { basis: 'memory' } })] }).findings[0]!.basis).toBe(
      'memory',
    );
    expect(
      checked({ point: serves, items: [item()], photos: [photo('2026-03-15', 'body.bare')] }).findings[0]!.outcome,
    ).toBe('seen');
  });
  it('serves its parts alone', () => {
    expect([...checked({ point: { serves: 'body.bare left right' }, items: [item()] }).served.values()]).toEqual([
      ['left', 'right'],
    ]);
  });
  it('together with others serves all that they serve', () => {
    const ground = { items: new Map([['body.bare', item()]]), world: () => ({}) } as unknown as Ground;
    const served = (...all: string[]) => {
      const holdPoints = all.map((text, i) => ({ ...point, id: `p${i}`, serves: text }));
      const kinds = new Map([['mounts', { holdPoints } as unknown as Kind]]);
      return [...checkHoldPoints([noteOf('010-a')], kinds, ground, new Map(), () => true).served.values()];
    };
    expect(served('body.bare left', 'body.bare right')).toEqual([['left', 'right']]);
    expect(served('body.bare', 'body.bare right')).toEqual(['all']);
    expect(served('body.bare left', 'body.bare')).toEqual(['all']);
  });
  it.each<[string, Case]>([
    ['is not there', {}],
    ['the note does not raise', { items: [item()], raised: false }],
    ['does not apply', { items: [item({ applies: { categories: ['NA'] } })], world: { category: 'MA' } }],
    ['may not apply', { items: [item({ applies: { categories: ['NA'] } })] }],
  ])('is a hold point of its own where the item %s', (_, of) => {
    const found = checked({ point: serves, ...of });
    expect(found.findings[0]).toMatchObject({ item: 'hold-point', basis: 'own-copy', marks: [] });
    expect(found.served.size).toBe(0);
  });
  it('is lifted by an answer with its reason, given or derived, and by no other', () => {
    const answered = (answer: string) =>
      held({ point: serves, items: [item()], note: `${stages}\nanswers: { body.bare: ${answer} }` });
    expect(answered('{ answer: n/a, because: none welded }')).toMatchObject({
      of: 'proof',
      outcome: 'not-applicable',
      says: 'none welded',
      answer: 'n/a',
      open: false,
    });
    expect(answered('n/a').outcome).toBe('not-shown');
    expect(answered('{ answer: no, because: not yet }').outcome).toBe('not-shown');
    expect(
      held({
        point: serves,
        items: [item()],
        derived: { 'body.bare': { answer: 'not applicable', because: 'bolted' } },
      }).says,
    ).toBe('bolted');
    expect(held({ note: `${stages}\nanswers: { body.bare: { answer: n/a, because: none } }` }).outcome).toBe(
      'not-shown',
    );
  });
});

describe('a document at a hold point', () => {
  const wanted = { point: { serves: 'body.bare' }, items: [item({ evidence: ['paper'] })] };
  it('is taken where the item asks for one', () => {
    expect(held({ ...wanted, papers: [paper('2026-03-15')] })).toMatchObject({
      outcome: 'seen',
      says: 'recorded on 2026-03-15, `painted` on 2026-03-20',
    });
    expect(held({ papers: [paper('2026-03-15')] })).toMatchObject({
      outcome: 'not-shown',
      says: 'document `b.pdf` is no photo',
    });
    expect(held({ point: { serves: 'body.bare' }, items: [item()], papers: [paper('2026-03-15')] }).outcome).toBe(
      'not-shown',
    );
    expect(
      held({
        point: { serves: 'body.bare' },
        items: [item({ kind: 'answer', evidence: ['paper'] })],
        papers: [paper('2026-03-15')],
      }).outcome,
    ).toBe('not-shown');
    expect(held({ ...wanted, photos: [photo('2026-03-15')], papers: [paper('2026-03-16')] }).says).toContain(
      'recorded on 2026-03-15, 2026-03-16',
    );
  });
  it.each([
    ['2026-03-13', 'not-shown'],
    ['2026-03-14', 'seen'],
    ['2026-03-20', 'seen'],
    ['2026-03-21', 'out-of-order'],
    [undefined, 'part-missing'],
  ])('of %s is %s', (on, outcome) => expect(held({ ...wanted, papers: [paper(on)] }).outcome).toBe(outcome));
  it('tells why it is not taken', () => {
    expect(held({ ...wanted, papers: [paper('2026-03-13')] }).says).toBe(
      'document `b.pdf` is of 2026-03-13, before `welded` on 2026-03-14',
    );
    expect(held({ ...wanted, papers: [paper('2026-03-21')] }).says).toContain('was made on 2026-03-21');
    expect(held({ ...wanted, papers: [paper(undefined)] })).toMatchObject({
      says: 'document `b.pdf` does not say when it was made',
      todo: 'add `dated:` to the document',
    });
    expect(held({ ...wanted, note: 'stages: { painted: 2026-03-20 }', papers: [paper('2026-03-01')] }).outcome).toBe(
      'seen',
    );
  });
  it('of another size is not of this; as it came, what was there counts', () => {
    const note = `${stages}\nwas: { tube: 60x3 }\nnow: { tube: 50x3 }`;
    const sized = (during: Stage, of: string) =>
      held({
        ...wanted,
        point: { serves: 'body.bare', during, before: 'painted' },
        note,
        papers: [paper('2026-03-15', 'bare', `, of: ${of}`)],
      });
    expect(sized('welded', '50x3').outcome).toBe('seen');
    expect(sized('welded', '60x3')).toMatchObject({
      outcome: 'not-shown',
      says: 'document `b.pdf` names 60x3; the note has 50x3',
    });
    expect(sized('as-received', '60x3').outcome).toBe('seen');
  });
  it('of the car as it came may be older than the day it came', () => {
    const asReceived = { ...wanted, point: { serves: 'body.bare', during: 'as-received', before: 'painted' } as const };
    expect(held({ ...asReceived, papers: [paper('2020-01-01')] }).outcome).toBe('seen');
  });
});

describe('the stages in which a photo may be taken', () => {
  it('are from the one in which it is made to the last before it is covered', () => {
    expect(stageNames.filter((stage) => isInStage(point, stage))).toEqual(
      stageNames.slice(stageNames.indexOf('welded'), stageNames.indexOf('painted')),
    );
  });
});
