import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse as parseYaml } from 'yaml';
import { alike } from '../../src/history/field-change.js';
import { readBlobs } from '../../src/history/git/blobs.js';
import { fileVersions } from '../../src/history/git/versions.js';
import { type ParseNote, type ValueEvent, type ValueHistory, valuesThroughTime } from '../../src/history/values.js';
import { history, jo, mika, note, type Snapshot, type Throwaway, temporary, throwaway } from './throwaway.js';

/** A reader of frontmatter for these tests: flat keys, all scalars as text. */
const frontmatter: ParseNote = (text) => {
  const [, head] = /^---\r?\n([^]*?)\r?\n---/.exec(text) ?? [];
  if (head === undefined) return undefined;
  return new Map(Object.entries(parseYaml(head, { schema: 'failsafe' }) as Record<string, string>));
};

async function values(
  repo: Throwaway,
  folder = 'demo',
  parse = frontmatter,
  found = repo.place,
): Promise<ValueHistory> {
  return valuesThroughTime(await fileVersions(found, folder, { endings: ['.md'] }), parse, (ids) =>
    readBlobs(found, ids),
  );
}
const eventsOf = (found: ValueHistory, field: string): ValueEvent[] =>
  found.fields.find((entry) => entry.field === field)?.events ?? [];
const steps = (events: readonly ValueEvent[]): (string | undefined)[][] =>
  events.map(({ author, from, to }) => [author.name, from, to]);
const made = (...snapshots: Snapshot[]): Throwaway => {
  const repo = throwaway();
  history(repo, snapshots);
  return repo;
};
const long = 'Words of the note that stay as they are.\n'.repeat(10);
const wall = (text: string): string => note({ wall: text, steel: 'S355' }, long);

describe('valuesThroughTime', () => {
  it('tells who set, changed and took out each value, and skips what did not change', async () => {
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('2.5 mm') } },
        { parents: [0], files: { 'demo/a.md': wall('2.4 mm') }, by: mika },
        { parents: [1], files: { 'demo/a.md': note({ wall: '2.4 mm', leg: '3 mm' }, 'Other words.\n') } },
      ),
    );
    expect(found.unread).toEqual([]);
    expect(steps(eventsOf(found, 'wall'))).toEqual([
      [jo.name, undefined, '2.5 mm'],
      [mika.name, '2.5 mm', '2.4 mm'],
    ]);
    expect(eventsOf(found, 'wall')[1]).toMatchObject({
      author: mika,
      date: '2026-02-02T03:40:00+00:00',
      subject: 'Commit 1',
      path: 'demo/a.md',
    });
    expect(steps(eventsOf(found, 'steel'))).toEqual([
      [jo.name, undefined, 'S355'],
      [jo.name, 'S355', undefined],
    ]);
    expect(found.fields.map(({ field, present }) => [field, present])).toEqual([
      ['wall', true],
      ['steel', false],
      ['leg', true],
    ]);
  });

  it('follows renames, of a note and of the folder, and gives the path at that time', async () => {
    const found = await values(
      made(
        { parents: [], files: { 'old/a.md': wall('2.5 mm') } },
        { parents: [0], files: { 'demo/b c.md': wall('2.5 mm') } },
        { parents: [1], files: { 'demo/d.md': wall('2.4 mm') } },
        { parents: [2], files: {} },
      ),
    );
    expect(eventsOf(found, 'wall').map(({ path, from, to }) => [path, from, to])).toEqual([
      ['old/a.md', undefined, '2.5 mm'],
      ['demo/d.md', '2.5 mm', '2.4 mm'],
      ['demo/d.md', '2.4 mm', undefined],
    ]);
    expect(found.fields[0]).toMatchObject({ note: 'demo/d.md', present: false });
  });

  it('does not count white space and line ends, but does count what they keep apart', async () => {
    const crlf = wall('1 1/8 in').replaceAll('\n', '\r\n');
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('1 1/8 in') } },
        { parents: [0], files: { 'demo/a.md': crlf }, by: mika },
        { parents: [1], files: { 'demo/a.md': crlf.replace('1 1/8 in', '   1  1/8in  ') }, by: mika },
        { parents: [2], files: { 'demo/a.md': wall('11/8 in') } },
      ),
    );
    expect(steps(eventsOf(found, 'wall'))).toEqual([
      [jo.name, undefined, '1 1/8 in'],
      [jo.name, '1 1/8 in', '11/8 in'],
    ]);
    expect(alike('2.5 mm', '2.5mm')).toBe(true);
    expect(alike('no table', 'not able')).toBe(false);
    expect(alike('', undefined)).toBe(false);
  });

  it('credits both authors where each changed another value, and the merge with nothing', async () => {
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': note({ wall: '2 mm', leg: '3 mm' }, long) } },
        { parents: [0], files: { 'demo/a.md': note({ wall: '2.1 mm', leg: '3 mm' }, long) } },
        { parents: [0], files: { 'demo/a.md': note({ wall: '2 mm', leg: '3.1 mm' }, long) }, by: mika },
        { parents: [1, 2], files: { 'demo/a.md': note({ wall: '2.1 mm', leg: '3.1 mm' }, long) } },
      ),
    );
    expect(steps(eventsOf(found, 'wall')).slice(1)).toEqual([[jo.name, '2 mm', '2.1 mm']]);
    expect(steps(eventsOf(found, 'leg')).slice(1)).toEqual([[mika.name, '3 mm', '3.1 mm']]);
  });

  it.each([
    ['a third value', '2.3 mm', '2.1 mm'],
    ['the value of the first side', '2.1 mm', '2.2 mm'],
    ['the value of the other side', '2.2 mm', '2.1 mm'],
    ['the value from before', '2 mm', '2.1 mm'],
  ])('says what a merge settled between two authors who changed one value: %s', async (_, settled, gaveWay) => {
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('2 mm') } },
        { parents: [0], files: { 'demo/a.md': wall('2.1 mm') } },
        { parents: [0], files: { 'demo/a.md': wall('2.2 mm') }, by: mika },
        { parents: [1, 2], files: { 'demo/a.md': wall(settled) } },
      ),
    );
    expect(steps(eventsOf(found, 'wall')).slice(1)).toEqual([
      [jo.name, '2 mm', '2.1 mm'],
      [mika.name, '2 mm', '2.2 mm'],
      [jo.name, gaveWay, settled],
    ]);
    expect(eventsOf(found, 'wall')[3]?.sides).toEqual(['2.1 mm', '2.2 mm']);
  });

  it('keeps the thread where sides part at a commit without notes, and where a side came to nothing', async () => {
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('2 mm') } },
        { parents: [0], files: { 'demo/a.md': wall('2 mm'), 'photo.jpg': 'x' } },
        { parents: [1], files: { 'demo/a.md': wall('2.1 mm'), 'photo.jpg': 'x' }, by: mika },
        { parents: [1], files: { 'demo/a.md': wall('2 mm'), 'photo.jpg': 'y' } },
        { parents: [3, 2], files: { 'demo/a.md': wall('2 mm'), 'photo.jpg': 'y' } },
      ),
    );
    expect(steps(eventsOf(found, 'wall'))).toEqual([
      [jo.name, undefined, '2 mm'],
      [mika.name, '2 mm', '2.1 mm'],
      [jo.name, '2.1 mm', '2 mm'],
    ]);
  });

  it('says that a merge dropped a note or brought one back', async () => {
    const dropped = await values(
      made(
        { parents: [], files: { 'demo/x.md': 'x' } },
        { parents: [0], files: { 'demo/x.md': 'x' } },
        { parents: [0], files: { 'demo/x.md': 'x', 'demo/a.md': wall('2 mm') }, by: mika },
        { parents: [1, 2], files: { 'demo/x.md': 'x' } },
      ),
    );
    expect(steps(eventsOf(dropped, 'wall'))).toEqual([
      [mika.name, undefined, '2 mm'],
      [jo.name, '2 mm', undefined],
    ]);
    const kept = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('2 mm') } },
        { parents: [0], files: {}, by: mika },
        { parents: [0], files: { 'demo/a.md': wall('2.1 mm') } },
        { parents: [1, 2], files: { 'demo/a.md': wall('2.1 mm') } },
      ),
    );
    expect(steps(eventsOf(kept, 'wall')).slice(1)).toEqual([
      [mika.name, '2 mm', undefined],
      [jo.name, '2 mm', '2.1 mm'],
      [jo.name, undefined, '2.1 mm'],
    ]);
  });

  it('does not take a note that could not be read for one without values', async () => {
    const found = await values(
      made(
        { parents: [], files: { 'demo/a.md': wall('2 mm') } },
        { parents: [0], files: { 'demo/a.md': `---\nwall: [2.1 mm\n---\n${long}` }, by: mika },
        { parents: [1], files: { 'demo/a.md': wall('2.1 mm') } },
      ),
    );
    expect(found.unread).toMatchObject([{ path: 'demo/a.md', reason: expect.stringContaining('Flow sequence') }]);
    expect(steps(eventsOf(found, 'steel'))).toEqual([[jo.name, undefined, 'S355']]);
    expect(eventsOf(found, 'wall')[1]).toMatchObject({ from: '2 mm', to: '2.1 mm', unread: [found.unread[0]?.commit] });
  });

  it('gives a rebased change to its author at its date, and shows an amended commit once', async () => {
    const repo = throwaway();
    repo.write('demo/a.md', wall('2 mm'));
    repo.commit('Made');
    repo.git('checkout', '--quiet', '-b', 'side');
    repo.write('demo/a.md', wall('2.1 mm'));
    repo.commit('Measured', mika);
    repo.git('checkout', '--quiet', 'main');
    repo.write('demo/b.md', note({ leg: '3 mm' }));
    repo.commit('Another');
    repo.git('rebase', '--quiet', 'main', 'side');
    repo.write('demo/b.md', note({ leg: '4 mm' }));
    repo.commit('Corrected');
    repo.write('demo/b.md', note({ leg: '5 mm' }));
    repo.git('add', '--all');
    repo.git('commit', '--quiet', '--amend', '--no-edit');
    const found = await values(repo);
    expect(steps(eventsOf(found, 'wall'))[1]).toEqual([mika.name, '2 mm', '2.1 mm']);
    expect(eventsOf(found, 'wall')[1]?.date).toBe('2026-02-04T09:00:00+00:00');
    expect(steps(eventsOf(found, 'leg'))).toEqual([
      [jo.name, undefined, '3 mm'],
      [jo.name, '3 mm', '5 mm'],
    ]);
  });

  it('says of a shallow clone that the first state may be older', async () => {
    const repo = made(
      { parents: [], files: { 'demo/a.md': wall('2 mm') } },
      { parents: [0], files: { 'demo/a.md': wall('2 mm'), 'demo/x.md': 'x' }, by: mika },
      { parents: [1], files: { 'demo/a.md': wall('2.1 mm') } },
    );
    const clone = throwaway(temporary(), false);
    clone.git('clone', '--quiet', '--depth=2', `file://${repo.dir}`, '.');
    const [first, second] = eventsOf(await values(clone, 'demo', frontmatter, await clone.open()), 'wall');
    expect(first).toMatchObject({ to: '2 mm', boundary: true });
    expect(second).not.toHaveProperty('boundary');
  });

  it('parses each content once, however often it comes back', async () => {
    const [one, two] = [wall('1 mm'), wall('2 mm')];
    const parsed: string[] = [];
    await values(
      made(
        ...[one, two, one, two, one].map((text, index) => ({
          parents: index === 0 ? [] : [index - 1],
          files: { 'demo/a.md': text, 'demo/b.md': one, 'other/c.md': `${text}c` },
        })),
      ),
      'demo',
      (text, path) => {
        parsed.push(text);
        return frontmatter(text, path);
      },
    );
    expect(parsed.sort()).toEqual([one, two]);
  });
});

describe('laws of any history, against a plain comparison of whole trees', () => {
  const value = fc.constantFrom('1 mm', '2 mm', '3 mm', undefined);
  const tree = fc.record({ a: fc.record({ x: value, y: value }), b: fc.record({ x: value, y: value }) });
  const files = (of: {
    a: Record<string, string | undefined>;
    b: Record<string, string | undefined>;
  }): Record<string, string> =>
    Object.fromEntries(
      Object.entries(of).map(([name, fields]) => [
        `demo/${name}.md`,
        note(
          Object.fromEntries(
            Object.entries({ id: name, ...fields }).filter(
              (entry): entry is [string, string] => entry[1] !== undefined,
            ),
          ),
          `${name} ${long}`,
        ),
      ]),
    );
  const commits = fc.array(fc.record({ tree, back: fc.nat(2), merge: fc.option(fc.nat(4), { freq: 2 }) }), {
    minLength: 3,
    maxLength: 12,
  });

  it('has every change of every commit with one parent, and ends at the value that is there', async () => {
    await fc.assert(
      fc.asyncProperty(commits, async (plan) => {
        const repo = throwaway();
        const snapshots: Snapshot[] = plan.map(({ tree: of, back, merge }, index) => {
          const parents = index === 0 ? [] : [Math.max(0, index - 1 - back)];
          const other = merge === null ? undefined : index - 1 - merge;
          if (other !== undefined && other >= 0 && other !== parents[0]) parents.push(other);
          return { parents, files: files(of) };
        });
        // All loose ends come together, so that every commit is part of the history.
        const used = new Set(snapshots.flatMap(({ parents }) => parents));
        const ends = snapshots.map((_, index) => index).filter((index) => !used.has(index));
        if (ends.length > 1) snapshots.push({ parents: ends, files: snapshots.at(-1)?.files ?? {} });
        const ids = history(repo, snapshots);
        const found = await values(repo);

        const read = (index: number | undefined, path: string): ReadonlyMap<string, string> => {
          const text = index === undefined ? undefined : snapshots[index]?.files[path];
          return (text === undefined ? undefined : frontmatter(text, path)) ?? new Map();
        };
        const expected = snapshots.flatMap(({ parents, files: now }, index) =>
          parents.length > 1
            ? []
            : Object.keys(now).flatMap((path) => {
                const [before, after] = [read(parents[0], path), read(index, path)];
                return [...new Set([...before.keys(), ...after.keys()])]
                  .filter((field) => before.get(field) !== after.get(field))
                  .map((field) => [ids[index], path, field, before.get(field), after.get(field)].join('|'));
              }),
        );
        const merges = new Set(ids.filter((_, index) => (snapshots[index]?.parents.length ?? 0) > 1));
        const listed = found.fields.flatMap(({ field, events }) =>
          events
            .filter(({ commit }) => !merges.has(commit))
            .map(({ commit, path, from, to }) => [commit, path, field, from, to].join('|')),
        );
        expect(listed.sort()).toEqual(expected.sort());

        const end = snapshots.length - 1;
        for (const { note: path, field, present, events } of found.fields) {
          expect(events.at(-1)?.to).toBe(read(end, path).get(field));
          expect(present).toBe(read(end, path).has(field));
        }
      }),
      { numRuns: 15 },
    );
  });
});
