import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { mayReplace } from '../../../src/app/publish/output-folder.js';
import { UsageError } from '../../../src/platform/usage.js';
import { manifestOf } from './made-up-manifest.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gusset-output-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const printed = { 'submission.pdf': 'pages', 'submission.html': 'screen' };

function put(files: Record<string, string>): string {
  const out = join(folder, 'out');
  mkdirSync(out);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(out, name), text);
  return out;
}

describe('an output folder is replaced', () => {
  it('where nothing is there, where it is empty, and where it holds a printed document and nothing else', () => {
    expect(() => mayReplace(join(folder, 'none'))).not.toThrow();
    mkdirSync(join(folder, 'empty'));
    expect(() => mayReplace(join(folder, 'empty'))).not.toThrow();
    expect(() => mayReplace(put({ ...printed, 'manifest.json': manifestOf(printed) }))).not.toThrow();
  });
  it('where one of the printed files was taken out', () => {
    expect(() => mayReplace(put({ 'submission.pdf': 'pages', 'manifest.json': manifestOf(printed) }))).not.toThrow();
  });
});

describe('an output folder is not replaced', () => {
  const own = { ...printed, 'manifest.json': manifestOf(printed) };
  it.each([
    [
      'a file beside the document',
      { ...own, 'notes.txt': 'mine' },
      /holds `notes.txt`, which its manifest.json does not list/,
    ],
    ['a hidden file', { ...own, '.gitignore': '' }, /\.gitignore/],
    [
      'a printed file that was written on',
      { ...own, 'submission.pdf': 'pages with remarks' },
      /was changed after it was printed/,
    ],
    ['files and no manifest', printed, /no manifest.json/],
    ['a manifest of something else', { ...printed, 'manifest.json': '{"form":"x"}' }, /cannot be read/],
  ])('with %s', (_, files, says) => {
    const out = put(files);
    expect(() => mayReplace(out)).toThrow(UsageError);
    expect(() => mayReplace(out)).toThrow(says);
  });
  it.each(['.git', 'notes'])('with a folder %s, even an empty one', (name) => {
    const out = put(own);
    mkdirSync(join(out, name));
    expect(() => mayReplace(out)).toThrow(`\`${name}\``);
  });
  it('that one works in, or that holds the folder one works in', () => {
    mkdirSync(join(folder, 'empty/deep'), { recursive: true });
    const here = vi.spyOn(process, 'cwd').mockReturnValue(join(folder, 'empty/deep'));
    for (const out of ['empty', 'empty/deep'])
      expect(() => mayReplace(join(folder, out))).toThrow('the folder that you work in');
    here.mockRestore();
  });
  it('that is a file, or a link to a folder', () => {
    writeFileSync(join(folder, 'file'), '');
    expect(() => mayReplace(join(folder, 'file'))).toThrow('is a file');
    symlinkSync(put(own), join(folder, 'link'));
    expect(() => mayReplace(join(folder, 'link'))).toThrow('is a link');
  });
});
