import { execFileSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { PDFDocument } from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { textOfPages } from '../../src/app/verify/page-text.js';
import { buildFile, emptyPdf, floorNote } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { configure, jo, mika, temporary } from '../history/throwaway.js';
import { gusset } from './run.js';

const note = 'builds/t/notes/010-floor.md';
const step = (day: string, files: NonNullable<Step['files']>, by = jo): Step => ({
  by,
  on: `${day}T18:00:00+10:00`,
  says: `Day ${day}`,
  files,
});
const begun = [step('2026-03-11', { 'builds/t/build.md': buildFile, [note]: floorNote() })];
const git = (directory: string, ...args: string[]) =>
  execFileSync('git', args, { cwd: directory, stdio: 'pipe' }).toString().trim();
function repository(steps = begun, settings = ''): string {
  const directory = temporary();
  makeHistory(directory, steps);
  configure(directory, settings);
  return directory;
}
const dry = (directory: string, ...more: string[]) =>
  gusset('issue', `${directory}/builds/t`, '--dry-run', '--with-open', ...more);

describe('the preconditions of an issue', { timeout: 120_000 }, () => {
  it('are listed with what would be done, and nothing is done', async () => {
    const directory = repository();
    const { code, out } = await dry(directory);
    expect(code).toBe(0);
    for (const name of ['repository', 'committed', 'recorded', 'new', 'showable', 'findings', 'tagger', 'signature'])
      expect(out).toContain(`✓ ${name}: `);
    expect(out).toMatch(
      /Would make issue A: submission in out\/t\/, tag t\/issue-A on commit [0-9a-f]{8}\. Nothing was done\./,
    );
    expect(git(directory, 'tag')).toBe('');
    expect(existsSync('out/t')).toBe(false);
  });

  it.each<[string, (directory: string) => void, RegExp]>([
    [
      'a file that differs',
      (d) => appendFileSync(`${d}/${note}`, 'More.\n'),
      /✗ committed: .*\n {4}builds\/t\/notes\/010-floor\.md/,
    ],
    [
      'a file that is not in git',
      (d) => writeFileSync(`${d}/builds/t/notes/020-new.md`, floorNote()),
      /✗ committed: .*\n {4}builds\/t\/notes\/020-new\.md/,
    ],
    [
      'limits of the workshop that are not in git',
      (d) => writeFileSync(`${d}/builds/limits.yaml`, 'figures: []\n'),
      /✗ committed: .*\n {4}builds\/limits\.yaml/,
    ],
    [
      'a repository without a name to tag under',
      (d) => writeFileSync(`${d}/.git/config`, '[core]\nrepositoryformatversion = 0\n'),
      /✗ tagger: .*user\.name/,
    ],
    [
      'a clone that is cut off',
      (d) => writeFileSync(`${d}/.git/shallow`, `${git(d, 'rev-parse', 'HEAD')}\n`),
      /✗ repository: This clone is cut off/,
    ],
    ['a bare name where a tag should be', (d) => git(d, 'tag', 't/issue-A'), /Would make issue B/],
  ])('are not met by %s', async (_, change, told) => {
    const directory = repository();
    change(directory);
    const { code, out, err } = await dry(directory);
    expect(out + err).toMatch(told);
    expect(code).toBe(/Would make/.test(told.source) ? 0 : 1);
  });

  it('are not met where the limits of the workshop were committed and lie there no more', async () => {
    const directory = repository([
      step('2026-03-11', {
        'builds/t/build.md': buildFile,
        [note]: floorNote(),
        'builds/limits.yaml': 'figures: []\n',
      }),
    ]);
    rmSync(`${directory}/builds/limits.yaml`);
    expect((await dry(directory)).out).toMatch(/✗ committed: .*\n {4}builds\/limits\.yaml/);
  });

  it('are not met by a file that is ignored, however clean git calls the folder', async () => {
    const papers = 'papers:\n  - { file: tube.pdf, shows: mill certificate }\n';
    const directory = repository([
      step('2026-03-11', {
        'builds/t/build.md': buildFile,
        [note]: floorNote({ more: papers }),
        'builds/t/papers/tube.pdf': emptyPdf,
        '.gitignore': '*.pdf\n',
      }),
    ]);
    expect((await dry(directory)).out).toMatch(
      /✓ committed[^]*✗ recorded: .*\.gitignore.*\n {4}builds\/t\/papers\/tube\.pdf/,
    );
  });

  it('are not met by a paper that does more than show', async () => {
    const papers = 'papers:\n  - { file: tube.pdf, shows: mill certificate }\n';
    const directory = repository([
      step('2026-03-11', {
        'builds/t/build.md': buildFile,
        [note]: floorNote({ more: papers }),
        'builds/t/papers/tube.pdf': emptyPdf.replace('        >>', '/AA<<>> >>'),
      }),
    ]);
    expect((await dry(directory)).out).toMatch(
      /✗ showable: put these right\n.*010-floor\.md:13:\d+: found `papers\/tube\.pdf`, which does something when it is opened/,
    );
  });

  it('are not met by another build that counts its issues under the same name', async () => {
    const directory = repository();
    mkdirSync(`${directory}/builds/u`);
    writeFileSync(`${directory}/builds/u/build.md`, buildFile.replace('title:', 'id: t\ntitle:'));
    expect((await dry(directory)).out).toMatch(/✗ id: another build has the id t too.*\n {4}u\n/);
  });

  it('are not met by open findings unless they are issued knowingly, nor by an unsigned tag where a signature is required', async () => {
    const directory = repository();
    const { code, err } = await gusset('issue', `${directory}/builds/t`, '--require-signature');
    expect(code).toBe(1);
    expect(err).toMatch(/✗ findings: \d+ finding\(s\) are open[^]*issue it with --with-open\n {4}[✗≈○?] /);
    expect(err).toMatch(/✗ signature: .*user\.signingkey/);
    expect(err).not.toContain('✓');
  });

  it('need notes that can be read and a repository', async () => {
    const directory = repository([
      step('2026-03-11', { 'builds/t/build.md': buildFile, [note]: floorNote({ wall: '2.48 kg' }) }),
    ]);
    expect(await dry(directory)).toMatchObject({
      code: 2,
      err: expect.stringContaining('keep the notes from being read. Nothing was issued.'),
    });
    expect(await gusset('issue', temporary())).toMatchObject({
      code: 2,
      err: expect.stringContaining('is in no git repository'),
    });
  });
});

describe('an issue', { timeout: 400_000 }, () => {
  const directory = repository();
  const out = `${temporary()}/t`;
  const issue = (...more: string[]) => gusset('issue', `${directory}/builds/t`, '--with-open', '--out', out, ...more);
  const pdf = async (folder = out) =>
    textOfPages(await PDFDocument.load(readFileSync(`${folder}/submission.pdf`), { updateMetadata: false }));
  let first: Buffer;

  beforeAll(async () => {
    expect(await issue()).toMatchObject({
      code: 0,
      err: '',
      out: expect.stringMatching(/^TT-01 issue A: \d+ pages in .*, tag t\/issue-A, not signed\./),
    });
    first = readFileSync(`${out}/submission.pdf`);
  });

  it('carries its letter, and its tag names the printed file by its digest', async () => {
    const manifest = JSON.parse(readFileSync(`${out}/manifest.json`, 'utf8'));
    expect(manifest).toMatchObject({
      issue: 'A',
      tag: 't/issue-A',
      signed: false,
      document: 'TT-01 issue A',
      folder: 'builds/t',
      commit: git(directory, 'rev-parse', 'HEAD'),
      dirty: [],
    });
    const tag = git(directory, 'cat-file', 'tag', 't/issue-A');
    expect(tag).toContain(
      `Document-SHA-256: ${manifest.outputs.find((o: { path: string }) => o.path === 'submission.pdf').sha256}`,
    );
    expect(tag).toContain('TT-01 issue A: A car made up for tests');
    const [cover = ''] = await pdf();
    expect(cover).toContain('TT-01 issue A');
    expect(cover).not.toContain('DRAFT');
  });

  it('is what a later print of its commit gives, byte for byte, and is not made twice', async () => {
    const again = `${temporary()}/again`;
    git(directory, 'checkout', '--quiet', '--detach');
    expect((await gusset('print', `${directory}/builds/t`, '--out', again)).code).toBe(0);
    git(directory, 'checkout', '--quiet', 'main');
    expect(readFileSync(`${again}/submission.pdf`).equals(first)).toBe(true);
    expect(readFileSync(`${again}/submission.html`).equals(readFileSync(`${out}/submission.html`))).toBe(true);
    expect(await issue()).toMatchObject({ code: 1, err: expect.stringContaining('✗ new: commit') });
  });

  it('leaves no tag and the last output where the signature fails', async () => {
    makeHistory(directory, [step('2026-03-25', { [note]: floorNote({ wall: '3.60 mm' }) }, mika)]);
    configure(directory, `[user]\nsigningkey = ${directory}/no-such-key.pub\n[gpg]\nformat = ssh\n`);
    const failed = await issue();
    configure(directory, '');
    expect(failed).toMatchObject({
      code: 3,
      err: expect.stringContaining('no tag stays, and the last output is untouched'),
    });
    expect(git(directory, 'tag')).toBe('t/issue-A');
    expect(readFileSync(`${out}/submission.pdf`).equals(first)).toBe(true);
    expect(readdirSync(`${out}/..`)).toEqual(['t']);
  });

  it('that follows another opens with what changed, and tells its history', async () => {
    mkdirSync(`${directory}/builds/t/queries`);
    const query =
      '---\nfrom: R. Ansell (invented)\ndate: 2026-03-20\nabout: 010\nquestion: Which steel?\nanswer: S355.\nanswered-by: JO\nanswered-on: 2026-04-03\nstate: answered\n---\n';
    makeHistory(directory, [step('2026-03-26', { 'builds/t/queries/01-steel.md': query })]);
    expect(await issue()).toMatchObject({ code: 0, err: '' });
    const pages = await pdf();
    const text = pages.join(' ');
    expect(pages[0]).toContain('issue A');
    expect(text).toMatch(/What changed since issue A/);
    expect(text).toMatch(/2\.48 mm → 3\.60 mm\s*\+1\.12 mm/);
    expect(text).toMatch(/not asked\s*answered\s*Which steel\?/);
    expect(text).toMatch(/after “painted” on 2026-03-20 had covered it/);
    expect(text).toMatch(/A\s*t\/issue-A[^]*B\s*t\/issue-B/);
    const again = `${temporary()}/again`;
    expect((await gusset('print', `${directory}/builds/t`, '--out', again)).code).toBe(0);
    expect(readFileSync(`${again}/submission.pdf`).equals(readFileSync(`${out}/submission.pdf`))).toBe(true);
    rmSync(again, { recursive: true });
  });

  it('goes on with its letters under its `id` when its folder was renamed', async () => {
    const repo = repository();
    const file = `${repo}/builds/t/build.md`;
    writeFileSync(file, readFileSync(file, 'utf8').replace('title:', 'id: wagon\ntitle:'));
    git(repo, 'commit', '--quiet', '--all', '--message', 'A name of its own');
    git(repo, 'tag', '--annotate', '--message', 'Issue A', 'wagon/issue-A', 'HEAD^');
    git(repo, 'mv', 'builds/t', 'builds/red-wagon');
    git(repo, 'commit', '--quiet', '--message', 'Renamed');
    const { out: told } = await gusset('issue', `${repo}/builds/red-wagon`, '--with-open', '--dry-run');
    expect(told).toContain('Would make issue B');
    expect(told).toContain('tag wagon/issue-B');
    expect((await gusset('history', `${repo}/builds/red-wagon`, '--from', 'A')).code).toBe(0);
  });
});
