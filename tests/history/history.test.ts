import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { kinds } from '../../src/checks/kinds/index.js';
import { headCommit } from '../../src/history/git/commits.js';
import { openRepository } from '../../src/history/git/repository.js';
import { type BuildHistory, type FieldThroughTime, historyOf, pointOutLate } from '../../src/history/history.js';
import { buildFile, floorNote } from './invented.js';
import { makeHistory, type Step } from './make-history.js';
import { jo, mika, temporary } from './throwaway.js';

const shapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));
const at = (day: string, by: Step['by'], files: NonNullable<Step['files']>, more: Partial<Step> = {}): Step => ({
  by,
  on: `${day}T18:00:00+11:00`,
  says: `Work of ${day}`,
  files,
  ...more,
});
const note = 'builds/t/notes/010-floor.md';
const begun = at('2026-03-11', jo, { 'builds/t/build.md': buildFile, [note]: floorNote() });

async function historyAfter(...steps: Step[]): Promise<BuildHistory> {
  const directory = temporary();
  makeHistory(directory, [begun, ...steps]);
  const repo = await openRepository(`${directory}/builds/t`);
  if (repo.kind === 'none') throw new Error(repo.reason);
  const loaded = await load(`${directory}/builds/t`);
  const history = await historyOf(repo, (await headCommit(repo))!, shapes);
  return 'build' in loaded ? pointOutLate(history, loaded.build, kinds) : history;
}
const wall = (history: BuildHistory): FieldThroughTime =>
  history.fields.find((f) => f.field === 'pieces.floor.now.wall')!;

describe('the history of a build', () => {
  it('tells who changed a value from what to what, with the difference in the unit it had', async () => {
    const history = await historyAfter(at('2026-03-12', mika, { [note]: floorNote({ wall: '0.1 in' }) }));
    expect(wall(history)).toMatchObject({
      note: 'notes/010-floor.md',
      present: true,
      events: [
        { to: '2.48 mm', author: jo },
        {
          from: '2.48 mm',
          to: '0.1 in',
          difference: '+0.06 mm',
          author: mika,
          date: '2026-03-12T18:00:00+11:00',
          subject: 'Work of 2026-03-12',
        },
      ],
    });
    expect(history.fields.filter((f) => f.events.length > 1)).toHaveLength(1);
    expect(history).toMatchObject({ unread: [], limits: [] });
  });

  it('follows a renamed note and a renamed build, and names the note as it is called now', async () => {
    const history = await historyAfter(
      at('2026-03-12', mika, {}, { moves: { [note]: 'builds/t/notes/020-boden-größer.md' } }),
      at('2026-03-13', mika, { 'builds/t/notes/020-boden-größer.md': floorNote({ wall: '2.5 mm' }) }),
    );
    expect(wall(history)).toMatchObject({
      note: 'notes/020-boden-größer.md',
      events: [{ path: note }, { path: 'builds/t/notes/020-boden-größer.md', from: '2.48 mm' }],
    });
  });

  it('tells both sides where two authors changed one value and a merge settled it', async () => {
    const directory = temporary();
    const git = (...args: string[]) =>
      execFileSync('git', ['-c', 'user.name=Jo', '-c', 'user.email=jo@workshop.example', ...args], {
        cwd: directory,
        stdio: 'pipe',
      });
    makeHistory(directory, [begun, at('2026-03-12', jo, { [note]: floorNote({ wall: '2.4 mm' }) })]);
    git('checkout', '--quiet', '-b', 'other', 'HEAD~1');
    makeHistory(directory, [at('2026-03-13', mika, { [note]: floorNote({ wall: '2.6 mm' }) })]);
    git('checkout', '--quiet', 'main');
    git('merge', '--quiet', '--no-commit', '--strategy-option=ours', 'other');
    makeHistory(directory, [at('2026-03-14', mika, {}, { says: 'Settled on what Jo measured' })]);
    const repo = await openRepository(`${directory}/builds/t`);
    if (repo.kind === 'none') throw new Error(repo.reason);
    const events = wall(await historyOf(repo, (await headCommit(repo))!, shapes)).events;
    expect(events.map((e) => [e.author.name, e.from, e.to, e.difference])).toEqual([
      [jo.name, undefined, '2.48 mm', undefined],
      [jo.name, '2.48 mm', '2.4 mm', '−0.08 mm'],
      [mika.name, '2.48 mm', '2.6 mm', '+0.12 mm'],
      [mika.name, '2.6 mm', '2.4 mm', '−0.2 mm'],
    ]);
    expect(events[3]!.sides).toEqual(['2.4 mm', '2.6 mm']);
  });

  it('goes through states that cannot be read, and says which they were', async () => {
    const history = await historyAfter(
      at('2026-03-12', mika, { [note]: floorNote().replace('kind:', '\tkind:') }),
      at('2026-03-13', mika, { [note]: floorNote({ wall: '2.5 mm' }) }),
    );
    expect(history.unread).toMatchObject([{ path: note, reason: expect.stringMatching(/^line 2: found /) }]);
    expect(wall(history).events[1]).toMatchObject({
      from: '2.48 mm',
      to: '2.5 mm',
      unread: [history.unread[0]!.commit],
    });
  });
});

describe('a change after the work was covered', () => {
  const changed = async (day: string, options: Parameters<typeof floorNote>[0], first = {}) =>
    wall(
      await historyAfter(
        at('2026-03-11', jo, { [note]: floorNote(first) }),
        at(day, mika, { [note]: floorNote(options) }),
      ),
    ).events.at(-1)!.late;

  it('is pointed out from the day after the last stage that covers it', async () => {
    // The note is painted on 20 March, which covers the last of the hold points of its kind.
    expect(await changed('2026-03-20', { wall: '2.6 mm' })).toBeUndefined();
    expect(await changed('2026-03-21', { wall: '2.6 mm' })).toEqual({ stage: 'painted', on: '2026-03-20' });
  });

  it('is none while something is still open, where only the writing changed, or in a plan', async () => {
    const open = { stages: 'welded: 2026-03-14' };
    expect(await changed('2026-03-21', { wall: '2.6 mm', ...open }, open)).toBeUndefined();
    expect(await changed('2026-03-21', { wall: '0.248 cm' })).toBeUndefined();
  });

  it('is measured against the stage of the photo that the value names', async () => {
    // Welding on 14 March covers what a photo of the stage `cut` shows.
    const withPhoto = (value: string) =>
      floorNote({ more: 'photos:\n  - { file: edge.jpg, shows: The cut edge, stage: cut }\n' }).replace(
        '2.48 mm, with: caliper-1',
        `${value}, with: caliper-1, photo: edge`,
      );
    const history = await historyAfter(
      at('2026-03-14', jo, { [note]: withPhoto('2.48 mm'), 'builds/t/photos/edge.jpg': 'not empty' }),
      at('2026-03-15', mika, { [note]: withPhoto('2.6 mm') }),
    );
    expect(wall(history).events.at(-1)!.late).toEqual({ stage: 'welded', on: '2026-03-14' });
  });
});
