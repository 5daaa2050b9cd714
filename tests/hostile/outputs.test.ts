import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { gusset } from '../commands/run.js';
import { buildFile, floorNote } from '../history/invented.js';
import { temporary } from '../history/throwaway.js';

function workshop(): string {
  const directory = temporary();
  const before = process.cwd();
  onTestFinished(() => process.chdir(before));
  for (const [path, text] of Object.entries({
    'builds/t/build.md': buildFile,
    'builds/t/notes/010-floor.md': floorNote(),
    'letters/letter.txt': 'from the certifier',
  })) {
    mkdirSync(join(directory, path, '..'), { recursive: true });
    writeFileSync(join(directory, path), text);
  }
  symlinkSync('builds', join(directory, 'link'));
  process.chdir(directory);
  const git = (...args: string[]) => execFileSync('git', args, { stdio: 'pipe' });
  git('init', '-q');
  git('add', '.');
  git('-c', 'user.name=J', '-c', 'user.email=j@x.example', 'commit', '-q', '-m', 'all');
  return directory;
}

const everything = (folder: string): string[] =>
  (readdirSync(folder, { recursive: true, withFileTypes: true }) as import('node:fs').Dirent[])
    .filter((entry) => entry.isFile())
    .map((entry) => `${join(entry.parentPath, entry.name)} ${readFileSync(join(entry.parentPath, entry.name)).length}`)
    .sort();

it.each([
  '.',
  '..',
  'builds',
  'builds/t',
  'builds/t/notes',
  'link/t',
  'letters',
  '.git',
  'builds/../letters',
  'letters/letter.txt',
  'letters/letter.txt/out',
])('neither print nor issue replaces %s', async (out) => {
  const directory = workshop();
  const before = everything(directory);
  for (const args of [
    ['print', 'builds/t'],
    ['print', 'builds/t', '--as', 'proposal'],
    ['issue', 'builds/t', '--with-open'],
    ['issue', 'builds/t', '--with-open', '--dry-run'],
  ]) {
    const { code, err } = await gusset(...args, '--out', out);
    expect(code).toBe(2);
    expect(err).toMatch(
      /found .*expected a folder that is new or empty, or holds an earlier document.*name another one/,
    );
    expect(everything(directory)).toEqual(before);
  }
});
