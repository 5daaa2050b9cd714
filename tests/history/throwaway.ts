import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll } from 'vitest';
import { openRepository, type Repository } from '../../src/history/git/repository.js';

// Neither the settings of whoever runs the tests nor those of the machine may change what they see.
process.env.GIT_CONFIG_GLOBAL = '/dev/null';
process.env.GIT_CONFIG_NOSYSTEM = '1';
process.env.GIT_CEILING_DIRECTORIES = tmpdir();

const made: string[] = [];
afterAll(() => {
  for (const directory of made) rmSync(directory, { recursive: true, force: true });
});

export function temporary(): string {
  const directory = realpathSync(mkdtempSync(join(tmpdir(), 'gusset-test-')));
  made.push(directory);
  return directory;
}

export const jo = { name: 'Jo Ashdown', email: 'jo@workshop.example' };
export const mika = { name: 'Mika Sørby', email: 'mika@workshop.example' };

export interface Throwaway {
  dir: string;
  git: (...args: string[]) => string;
  write: (path: string, content: string | Buffer) => void;
  /** Commits everything that lies there and gives the id. */
  commit: (subject: string, by?: typeof jo) => string;
  open: (folder?: string) => Promise<Repository>;
  /** What `open` finds in an ordinary clone, without asking git. */
  place: Repository;
}

const ordinary = {
  kind: 'repository' as const,
  prefix: '',
  branch: 'main',
  objectFormat: 'sha1' as const,
  limits: [],
  bare: false,
  shallow: false,
  detached: false,
  empty: false,
  partial: false,
  ignored: false,
};

/** What `git init` makes, with a name to commit under and settings that tests may add to. */
function initialise(dir: string): void {
  for (const folder of ['objects', 'refs/heads', 'refs/tags', 'info'])
    mkdirSync(join(dir, '.git', folder), { recursive: true });
  writeFileSync(join(dir, '.git/HEAD'), 'ref: refs/heads/main\n');
  configure(dir, '');
}

/** Replaces the settings of a repository. */
export function configure(dir: string, settings: string): void {
  writeFileSync(
    join(dir, '.git/config'),
    `[core]\nrepositoryformatversion = 0\nbare = false\n[user]\nname = ${jo.name}\nemail = ${jo.email}\n${settings}`,
  );
}

/** A repository in a temporary place, removed after the tests of the file. Each commit is a day after the one before. */
export function throwaway(dir = temporary(), init = true): Throwaway {
  let day = 0;
  const run = (args: string[], by = jo): string => {
    const date = new Date(Date.UTC(2026, 1, 2 + day, 9)).toISOString();
    return execFileSync('git', args, {
      cwd: dir,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: {
        ...process.env,
        GIT_AUTHOR_NAME: by.name,
        GIT_AUTHOR_EMAIL: by.email,
        GIT_AUTHOR_DATE: date,
        GIT_COMMITTER_NAME: by.name,
        GIT_COMMITTER_EMAIL: by.email,
        GIT_COMMITTER_DATE: date,
      },
    }).trim();
  };
  if (init) initialise(dir);
  return {
    dir,
    place: { ...ordinary, root: dir },
    git: (...args) => run(args),
    write: (path, content) => {
      mkdirSync(dirname(join(dir, path)), { recursive: true });
      writeFileSync(join(dir, path), content);
    },
    commit: (subject, by) => {
      day += 1;
      run(['add', '--all'], by);
      run(['commit', '--quiet', '--allow-empty', '-m', subject], by);
      return run(['rev-parse', 'HEAD']);
    },
    open: async (folder = '') => {
      const found = await openRepository(join(dir, folder));
      if (found.kind === 'none') throw new Error(found.reason);
      return found;
    },
  };
}

export interface Snapshot {
  parents: number[];
  files: Record<string, string>;
  by?: typeof jo;
  /** The files are put over those of the first parent; else they are all there is. */
  over?: true;
}

/** Makes a history of whole trees in one process; `parents` are positions in the list. Gives the ids of the commits. */
export function history(repo: Throwaway, snapshots: readonly Snapshot[]): string[] {
  const parts: string[] = [];
  const data = (text: string): string => `data ${Buffer.byteLength(text)}\n${text}\n`;
  snapshots.forEach(({ parents, files, by = jo, over }, index) => {
    if (parents[0] !== index - 1) parts.push('reset refs/heads/main\n\n');
    parts.push(`commit refs/heads/main\nmark :${index + 1}\n`);
    const stamp = `${by.name} <${by.email}> ${1_770_000_000 + index * 3600} +0000`;
    parts.push(`author ${stamp}\ncommitter ${stamp}\n${data(`Commit ${index}`)}`);
    const [first, ...rest] = parents;
    if (first !== undefined)
      parts.push(
        `${first === index - 1 ? '' : `from :${first + 1}\n`}${rest.map((parent) => `merge :${parent + 1}\n`).join('')}`,
      );
    parts.push(
      over ? '' : 'deleteall\n',
      ...Object.entries(files).map(([path, text]) => `M 100644 inline ${path}\n${data(text)}`),
    );
  });
  const marks = join(temporary(), 'marks');
  execFileSync('git', ['fast-import', '--quiet', '--force', `--export-marks=${marks}`], {
    cwd: repo.dir,
    input: parts.join(''),
  });
  const ids: string[] = [];
  for (const [, mark, id = ''] of readFileSync(marks, 'utf8').matchAll(/^:(\d+) (\w+)$/gm)) ids[Number(mark) - 1] = id;
  return ids;
}

/** A note with measured values, as frontmatter. */
export function note(values: Record<string, string>, words = 'Done.'): string {
  return `---\n${Object.entries(values)
    .map(([name, text]) => `${name}: ${text}\n`)
    .join('')}---\n\n${words}\n`;
}

/** True if a program can be started; else says on the terminal why tests are skipped. */
export function has(program: string, ...args: string[]): boolean {
  const found = spawnSync(program, args, { stdio: 'ignore' }).error === undefined;
  if (!found) console.warn(`Skipped: ${program} is not installed, so its signatures cannot be made here.`);
  return found;
}
