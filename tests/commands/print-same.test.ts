import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildFile, emptyPdf, floorNote } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { jo, mika, temporary } from '../history/throwaway.js';
import { gusset } from './run.js';

const note = 'builds/t/notes/010-floor.md';
const step = (day: string, files: NonNullable<Step['files']>, by = jo): Step => ({ by, on: `${day}T18:00:00+10:00`, says: `Day ${day}`, files });
const steps = [
  step('2026-03-11', { 'builds/t/build.md': buildFile, [note]: floorNote(), 'builds/limits.yaml': 'figures: []\n' }),
  step('2026-03-12', { [note]: floorNote({ wall: '2.50 mm' }) }, mika),
];
const git = (directory: string, ...args: string[]) => execFileSync('git', args, { cwd: directory, stdio: 'pipe' }).toString().trim();
const printed = async (folder: string) => {
  const out = temporary();
  const { code, err } = await gusset('print', folder, '--out', `${out}/o`);
  expect(err).toBe('');
  expect(code).toBe(0);
  return Object.fromEntries(['submission.pdf', 'submission.html', 'findings.json', 'manifest.json'].map((name) => [name, readFileSync(`${out}/o/${name}`)]));
};

describe('the same commit', { timeout: 300_000 }, () => {
  it('gives the same bytes from a clone with other line ends and from another place', async () => {
    const first = temporary();
    makeHistory(first, steps);
    const second = temporary();
    execFileSync('git', ['clone', '--quiet', '-c', 'core.autocrlf=true', first, `${second}/a clone`], { stdio: 'pipe' });
    expect(readFileSync(`${second}/a clone/${note}`, 'utf8')).toContain('\r\n');
    git(`${second}/a clone`, 'checkout', '--quiet', '--detach');
    const [one, other] = [await printed(`${first}/builds/t`), await printed(`${second}/a clone/builds/t`)];
    for (const name of Object.keys(one)) expect(one[name]!.equals(other[name]!), name).toBe(true);
    expect(JSON.parse(one['manifest.json']!.toString())).toMatchObject({ folder: 'builds/t', dirty: [], inputs: [{ path: '../limits.yaml' }, { path: 'build.md' }, { path: 'notes/010-floor.md' }] });
    expect(one['findings.json']!.toString()).not.toContain('gusset-test');
  });

  it('is a draft where a file differs from it, or is in no commit', async () => {
    const directory = temporary();
    makeHistory(directory, [...steps, step('2026-03-13', { '.gitignore': '*.pdf\n', [note]: floorNote({ more: 'papers:\n  - { file: tube.pdf, shows: mill certificate }\n' }), 'builds/t/papers/tube.pdf': emptyPdf })]);
    const manifest = JSON.parse((await printed(`${directory}/builds/t`))['manifest.json']!.toString());
    expect(manifest.dirty).toEqual(['builds/t/papers/tube.pdf']);
  });
});
