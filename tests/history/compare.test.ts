import { describe, expect, it } from 'vitest';
import { changesBetween, named } from '../../src/app/repository/changes.js';
import { type Changes, isSame } from '../../src/history/compare/compare.js';
import { openRepository } from '../../src/history/git/repository.js';
import { buildFile, floorNote } from './invented.js';
import { makeHistory, type Step } from './make-history.js';
import { jo, mika, temporary } from './throwaway.js';

const note = 'builds/t/notes/010-floor.md';
const step = (day: number, files: NonNullable<Step['files']>, moves = {}, by = jo): Step => ({
  by,
  on: `2026-04-${String(day).padStart(2, '0')}T18:00:00+10:00`,
  says: `Day ${day}`,
  files,
  moves,
});
const photos =
  'photos:\n  - { file: edge.jpg, shows: The cut edge, stage: cut }\n  - { file: tacked.jpg, shows: Tacked, stage: tacked }\npapers:\n  - { file: tube.pdf, shows: mill certificate }\n';
const first = step(1, {
  'builds/t/build.md': buildFile,
  [note]: floorNote({ more: photos }),
  'builds/t/photos/edge.jpg': 'edge',
  'builds/t/photos/tacked.jpg': 'tacked',
  'builds/t/papers/tube.pdf': 'tube',
});

async function changesAfter(...steps: Step[]): Promise<Changes> {
  const directory = temporary();
  const [from = ''] = makeHistory(directory, [first, ...steps]);
  const repo = await openRepository(`${directory}/builds/t`);
  if (repo.kind === 'none') throw new Error(repo.reason);
  return changesBetween(repo, 't', await named(repo, 't', from), await named(repo, 't', 'HEAD'));
}

describe('two states of a build', () => {
  it('do not differ where only words, order and writing changed', async () => {
    const changes = await changesAfter(
      step(2, {
        [note]: floorNote({ more: photos, words: 'Other words.' })
          .replace('title: Bracket', 'title: "Bracket')
          .replace('floor\nby', 'floor"\nby')
          .replaceAll('\n', '\r\n'),
      }),
    );
    expect(changes).toMatchObject({ from: { label: expect.stringMatching(/^commit [0-9a-f]{8}$/) } });
    expect(isSame(changes)).toBe(true);
  });

  it('differ in a value, in the outcome that rests on it, and in nothing else', async () => {
    // 2.5 times the original thickness is the limit, common practice without a source: 2.48/1.20 is inside, 3.6/1.20 beyond.
    const changes = await changesAfter(step(2, { [note]: floorNote({ more: photos, wall: '3.60 mm' }) }, {}, mika));
    expect(changes.values).toEqual([
      {
        note: 'notes/010-floor.md',
        field: 'pieces.floor.now.wall',
        from: '2.48 mm',
        to: '3.60 mm',
        difference: '+1.12 mm',
      },
    ]);
    expect(changes.outcomes.map((o) => [o.id, o.from?.outcome, o.to?.outcome])).toEqual([
      ['010-floor/floor/body.thickness-ratio', 'within-usual-practice', 'outside-usual-practice'],
    ]);
    expect(
      [changes.notes, changes.limits, changes.photos, changes.papers, changes.queries, changes.untold].flat(),
    ).toEqual([]);
  });

  it('are told apart by the content of photos and papers, whatever they are called', async () => {
    const changes = await changesAfter(
      step(
        2,
        {
          [note]: floorNote({
            more: photos
              .replace('tacked.jpg', 'square.jpg')
              .replace('mill certificate', 'mill certificate of the tube')
              .replace('papers:', '  - { file: welded.jpg, shows: All welds bare, stage: welded }\npapers:'),
          }),
          'builds/t/photos/edge.jpg': 'another edge',
          'builds/t/photos/welded.jpg': 'welded',
        },
        { 'builds/t/photos/tacked.jpg': 'builds/t/photos/square.jpg' },
      ),
    );
    expect(changes.photos).toEqual([
      { path: 'photos/edge.jpg', change: 'replaced', shows: 'The cut edge' },
      { path: 'photos/square.jpg', change: 'renamed', from: 'photos/tacked.jpg', shows: 'Tacked' },
      { path: 'photos/welded.jpg', change: 'added', shows: 'All welds bare' },
    ]);
    expect(changes.papers).toEqual([
      {
        path: 'papers/tube.pdf',
        change: 'described otherwise',
        shows: 'mill certificate of the tube',
        showed: 'mill certificate',
      },
    ]);
    expect(changes.values).toEqual([]);
  });

  it('tell a figure that was typed in from the own copy, and another edition of it', async () => {
    const limits = (edition: string, max: string) =>
      `figures:\n  - { item: body.thickness-ratio, max: "${max}", edition: "${edition}", clause: "1.2", read-by: JO, on: 2026-04-02 }\n`;
    const changes = await changesAfter(step(2, { 'builds/limits.yaml': limits('2020', '2.0') }));
    expect(changes.limits).toMatchObject([
      {
        item: 'body.thickness-ratio',
        subjects: ['floor'],
        from: { basis: 'practice', max: { si: 2.5 } },
        to: { basis: 'own-copy', max: { si: 2 }, edition: '2020' },
      },
    ]);
    const later = await changesAfter(
      step(2, { 'builds/limits.yaml': limits('2020', '2.5') }),
      step(3, { 'builds/limits.yaml': limits('2024', '2.5') }),
    );
    expect(later.limits).toMatchObject([{ to: { edition: '2024' } }]);
  });

  it('are the same build where folder and note were renamed', async () => {
    const changes = await changesAfter(
      step(2, {}, { 'builds/t': 'builds/u', 'builds/u/notes/010-floor.md': 'builds/u/notes/020-boden.md' }),
      step(
        3,
        {
          'builds/t/queries/01-a.md':
            '---\nfrom: R. Ansell\ndate: 2026-04-02\nabout: 020\nquestion: Which steel?\nstate: open\n---\n',
        },
        { 'builds/u': 'builds/t' },
      ),
    );
    expect(changes.untold).toEqual([]);
    expect(changes.notes).toEqual([{ path: 'notes/020-boden.md', change: 'renamed', from: 'notes/010-floor.md' }]);
    expect(changes.queries).toEqual([{ name: '01-a', question: 'Which steel?', to: 'open' }]);
    expect(changes.outcomes.map((o) => [o.id, o.from, o.to?.outcome])).toEqual([
      ['build/01-a/query', undefined, 'unanswered'],
    ]);
    expect(changes.values).toEqual([]);
  });

  it('of which one cannot be read are compared by their values and files, and that is said', async () => {
    const changes = await changesAfter(
      step(2, { [note]: floorNote({ more: photos, wall: '2.50 mm' }).replace('role: bracket', 'role: shelf') }),
    );
    expect(changes.values).toMatchObject([{ from: '2.48 mm', to: '2.50 mm' }]);
    expect(changes.outcomes).toEqual([]);
    expect(changes.untold).toEqual([
      expect.stringMatching(
        /^The notes of commit [0-9a-f]{8} cannot be read by this version \(notes\/010-floor\.md:\d+: found `shelf`/,
      ),
    ]);
  });
});
