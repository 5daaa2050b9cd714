import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it, vi } from 'vitest';
import { gusset } from '../commands/run.js';
import { buildFile, emptyPdf, floorNote, pagelessPdf } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { jo, mika, temporary } from '../history/throwaway.js';

const note = 'builds/t/notes/010-floor.md';
const step = (day: string, files: NonNullable<Step['files']>, by = jo): Step => ({
  by,
  on: `${day}T18:00:00+10:00`,
  says: `Day ${day}`,
  files,
});
const steps = [
  step('2026-03-11', { 'builds/t/build.md': buildFile, [note]: floorNote(), 'builds/limits.yaml': 'figures: []\n' }),
  step('2026-03-12', { [note]: floorNote({ wall: '2.50 mm' }) }, mika),
];
const git = (directory: string, ...args: string[]) =>
  execFileSync('git', args, { cwd: directory, stdio: 'pipe' }).toString().trim();
const printed = async (folder: string) => {
  const out = temporary();
  const { code, err } = await gusset('print', folder, '--out', `${out}/o`);
  expect(err).toBe('');
  expect(code).toBe(0);
  return Object.fromEntries(
    ['submission.pdf', 'submission.html', 'findings.json', 'manifest.json'].map((name) => [
      name,
      readFileSync(`${out}/o/${name}`),
    ]),
  );
};

describe('the same commit', { timeout: 300_000 }, () => {
  it('gives the same bytes from a clone with other line ends and from another place', async () => {
    const first = temporary();
    makeHistory(first, steps);
    const second = temporary();
    execFileSync('git', ['clone', '--quiet', '-c', 'core.autocrlf=true', first, `${second}/a clone`], {
      stdio: 'pipe',
    });
    expect(readFileSync(`${second}/a clone/${note}`, 'utf8')).toContain('\r\n');
    git(`${second}/a clone`, 'checkout', '--quiet', '--detach');
    const [one, other] = [await printed(`${first}/builds/t`), await printed(`${second}/a clone/builds/t`)];
    for (const name of Object.keys(one)) expect(one[name]!.equals(other[name]!), name).toBe(true);
    expect(JSON.parse(one['manifest.json']!.toString())).toMatchObject({
      folder: 'builds/t',
      dirty: [],
      inputs: [{ path: '../limits.yaml' }, { path: 'build.md' }, { path: 'notes/010-floor.md' }],
    });
    expect(one['findings.json']!.toString()).not.toContain('gusset-test');
  });

  it('gives the same bytes whether the pages of its papers were drawn before or are drawn now', async () => {
    const directory = temporary();
    const pdf = await PDFDocument.create();
    pdf.addPage().drawText('Mill certificate, invented', { x: 60, y: 700 });
    makeHistory(directory, [
      ...steps,
      step('2026-03-13', {
        [note]: floorNote({
          more: 'papers:\n  - { file: tube.pdf, shows: mill certificate }\n  - { file: none.pdf, shows: the receipt }\n',
        }),
        'builds/t/papers/tube.pdf': Buffer.from(await pdf.save()),
        'builds/t/papers/none.pdf': pagelessPdf,
      }),
    ]);
    const [one, other] = [temporary(), temporary()];
    const prints: Awaited<ReturnType<typeof printed>>[] = [];
    for (const cache of [one, one, other]) {
      vi.stubEnv('GUSSET_CACHE', cache);
      prints.push(await printed(`${directory}/builds/t`));
      expect(readdirSync(`${cache}/first-pages`).filter((name) => !name.endsWith('.sha256'))).toHaveLength(1);
    }
    vi.unstubAllEnvs();
    expect(prints[0]!['submission.html']!.toString()).toContain('alt="The only page: mill certificate"');
    for (const name of Object.keys(prints[0]!))
      for (const print of prints) expect(print[name]!.equals(prints[0]![name]!), name).toBe(true);
  });

  it('is a draft where a file differs from it, or is in no commit', async () => {
    const directory = temporary();
    makeHistory(directory, [
      ...steps,
      step('2026-03-13', {
        '.gitignore': '*.pdf\n',
        [note]: floorNote({ more: 'papers:\n  - { file: tube.pdf, shows: mill certificate }\n' }),
        'builds/t/papers/tube.pdf': emptyPdf,
      }),
    ]);
    const manifest = JSON.parse((await printed(`${directory}/builds/t`))['manifest.json']!.toString());
    expect(manifest.dirty).toEqual(['builds/t/papers/tube.pdf']);
  });
});
