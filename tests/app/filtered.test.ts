import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { standingOf } from '../../src/app/repository/standing.js';
import { buildFile, floorNote } from '../history/invented.js';
import { type Throwaway, temporary, throwaway } from '../history/throwaway.js';

const note = 'builds/t/notes/010-floor.md';
function built(attributes: string, words: string): Throwaway {
  const repo = throwaway();
  repo.write('.gitattributes', attributes);
  repo.write('builds/t/build.md', buildFile);
  repo.write(note, `${floorNote({})}\n${words}\n`);
  repo.commit('All');
  return repo;
}
async function standing(folder: string) {
  const loaded = await load(folder);
  if (!('build' in loaded)) throw new Error(loaded.problems[0]?.found);
  return { name: loaded.build.name, ...(await standingOf(loaded.build)) };
}

/** gitattributes(5): git takes some of a file out as it commits it, and then calls the file unchanged. */
describe('a note that git calls unchanged', () => {
  it('is not taken for what is committed where a filter hides words of it', async () => {
    const repo = built('*.md ident\n', '$Id$');
    expect((await standing(join(repo.dir, 'builds/t'))).standing?.dirty).toEqual([]);
    repo.write(note, `${floorNote({})}\n$Id: it was loaded to 40 kN $\n`);
    expect(repo.git('diff', '--name-only')).toBe('');
    const { standing: now, inputs } = await standing(join(repo.dir, 'builds/t'));
    expect(now?.dirty).toEqual([note]);
    expect(now?.unrecorded).toEqual([note]);
    expect(inputs.find((i) => i.path === 'notes/010-floor.md')?.text?.toString()).toContain('40 kN');
  });

  it('is what is committed where only its line ends are others', async () => {
    const repo = built('*.md text eol=crlf\n', 'Words.');
    repo.write(note, `${floorNote({})}\nWords.\n`.replaceAll('\n', '\r\n'));
    const { standing: now, inputs } = await standing(join(repo.dir, 'builds/t'));
    expect(now?.dirty).toEqual([]);
    expect(inputs.find((i) => i.path === 'notes/010-floor.md')?.text?.toString()).not.toContain('\r');
  });
});

describe('a build behind a link', () => {
  it('is the same build, and has the same issues', async () => {
    const repo = built('', 'Words.');
    const link = join(temporary(), 'another name');
    symlinkSync(join(repo.dir, 'builds/t'), link);
    const [own, linked] = [await standing(join(repo.dir, 'builds/t')), await standing(link)];
    expect([own.name, linked.name]).toEqual(['t', 't']);
    expect(linked.standing?.repo.prefix).toBe('builds/t');
  });
});
