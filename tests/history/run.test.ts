import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterEach, expect, it, onTestFinished, vi } from 'vitest';
import { tryGit } from '../../src/history/git/run.js';

afterEach(() => vi.unstubAllEnvs());

/** A folder with a `git` that is ended by the signal so many times before it answers. */
function gitEndedBy(signal: string, times: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(
    join(folder, 'git'),
    `#!/bin/sh\ncase "$*" in *config*) exit 0;; esac\necho x >> "${folder}/tries"\n[ $(wc -l < "${folder}/tries") -gt ${times} ] || kill -s ${signal} $$\necho the answer\n`,
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
  await expect(tryGit({ root: folder }, ['version'])).rejects.toThrow('Command failed');
  expect(readFileSync(join(folder, 'tries'), 'utf8')).toBe('x\n'.repeat(tries));
});

it.skipIf(process.platform === 'win32')('ends a git that does not answer, and says so', async () => {
  const folder = gitEndedBy('STOP', 1000);
  vi.stubEnv('GUSSET_GIT_SECONDS', '0.3');
  await expect(tryGit({ root: folder }, ['version'])).rejects.toThrow('git version gave no answer within 0.3 s');
});
