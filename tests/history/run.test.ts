import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { tryGit } from '../../src/history/git/run.js';
import { gusset } from '../commands/run.js';
import { buildFile, floorNote } from './invented.js';
import { throwaway } from './throwaway.js';

afterEach(() => vi.unstubAllEnvs());

/** A folder with a `git` that is ended by the signal so many times before it answers. */
function gitEndedBy(signal: string, times: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(
    join(folder, 'git'),
    `#!/bin/sh\necho x >> "${folder}/tries"\n[ $(wc -l < "${folder}/tries") -gt ${times} ] || kill -s ${signal} $$\necho the answer\n`,
  );
  chmodSync(join(folder, 'git'), 0o755);
  vi.stubEnv('PATH', `${folder}${delimiter}${process.env['PATH']}`);
  return folder;
}

it.skipIf(process.platform === 'win32')(
  'asks git again when a broken pipe between it and a program of its own ended it',
  async () => {
    const folder = gitEndedBy('PIPE', 3);
    expect((await tryGit({ root: folder }, ['version'])).out.toString()).toBe('the answer\n');
    expect(readFileSync(join(folder, 'tries'), 'utf8')).toBe('x\n'.repeat(4));
  },
);

it.skipIf(process.platform === 'win32').each([
  ['PIPE', 20],
  ['KILL', 1],
])('gives up when %s ends it, after %i tries', async (signal, tries) => {
  const folder = gitEndedBy(signal, 1000);
  await expect(tryGit({ root: folder }, ['version'])).rejects.toThrow(`was ended by SIG${signal}`);
  expect(readFileSync(join(folder, 'tries'), 'utf8')).toBe('x\n'.repeat(tries));
});

/** A folder with a `git` that does this. */
function gitThat(does: string): void {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(join(folder, 'git'), `#!/bin/sh\n${does}\n`, { mode: 0o755 });
  vi.stubEnv('PATH', `${folder}${delimiter}${process.env['PATH']}`);
}

describe.skipIf(process.platform === 'win32')('a git that is not in order', () => {
  it('is not waited for longer than its time, nor are its children', async () => {
    gitThat('sleep 30 & sleep 30');
    const began = performance.now();
    const asked = tryGit({ root: '.' }, ['version'], { patience: 300 });
    await expect(asked).rejects.toMatchObject({
      name: 'MachineFailure',
      found: '`git version` did not end within 0.3 s',
    });
    expect(performance.now() - began).toBeLessThan(5000);
  });

  it('is not listened to without end', { timeout: 120_000 }, async () => {
    gitThat('exec yes');
    await expect(tryGit({ root: '.' }, ['version'])).rejects.toMatchObject({
      name: 'MachineFailure',
      found: '`git version` printed more than 256 MB',
    });
  });

  const working = execFileSync('sh', ['-c', 'command -v git'], { encoding: 'utf8' }).trim();
  it.each<[string, string, RegExp]>([
    ['hangs', 'sleep 60', /`git version` did not end within 10 s/],
    ['prints something else', 'echo garbage', /`git version` tells no version/],
    ['ends with 128', 'echo "fatal: nothing goes" >&2; exit 128', /`git version` tells no version: nothing goes/],
    ['says nothing', 'exit 0', /`git version` tells no version/],
    [
      'answers only that',
      'case "$*" in *version*) echo git version 2.40.0;; *) echo garbage;; esac',
      /answered with something else/,
    ],
    [
      'ends with 128 later on',
      `case "$*" in *" ls-tree "*|*" for-each-ref "*|*" log "*) exit 128;; *) exec ${working} "$@";; esac`,
      /git [a-z-]+ failed/,
    ],
    ['garbles contents', `case "$*" in *cat-file*) echo "garbage $*";; *) exec ${working} "$@";; esac`, /cat-file/],
  ])('and %s is told, in one message', { timeout: 60_000 }, async (_, does, says) => {
    const repo = throwaway();
    repo.write('t/build.md', buildFile);
    repo.write('t/notes/010-floor.md', floorNote());
    repo.commit('Begun');
    gitThat(does);
    const { code, err } = await gusset('history', join(repo.dir, 't'));
    expect(err).toMatch(says);
    expect(err).toContain('to do: ');
    expect(err).not.toContain('Gusset itself failed');
    expect(code).toBe(3);
  });
});
