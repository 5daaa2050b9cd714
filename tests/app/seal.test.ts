import { describe, expect, it } from 'vitest';
import { dropAtOnce, sealWithTag } from '../../src/app/issue/seal.js';
import type { Manifest } from '../../src/history/manifest.js';
import { history, throwaway } from '../history/throwaway.js';

const repo = throwaway();
const [commit = ''] = history(repo, [{ parents: [], files: { 't/build.md': 'The demo' } }]);
const manifest: Manifest = {
  form: 'gusset-manifest/2',
  tool: 'gusset 0',
  browser: 'B/1',
  pictures: 'p',
  document: 'T issue A',
  as: 'submission',
  photos: 'print',
  build: 't',
  folder: 't',
  commit,
  date: '2026-03-01',
  dirty: [],
  inputs: [],
  attachments: [],
  pages: [],
  content: '0'.repeat(64),
  outputs: [{ path: 'submission.pdf', bytes: 1, sha256: '1'.repeat(64) }],
};
const standing = {
  repo: { ...repo.place, prefix: 't' },
  commit,
  date: '2026-03-01',
  dirty: [],
  unrecorded: [],
  issue: { letter: 'A', tag: 't/issue-A', signed: false },
};
const tags = () => repo.git('tag');

describe('the tag of an issue', () => {
  it('goes again when what follows it fails', async () => {
    const failing = sealWithTag(standing, 'Title', false, async (seal) => {
      await seal(manifest);
      expect(tags()).toBe('t/issue-A');
      throw new Error('the disk is full');
    });
    await expect(failing).rejects.toThrow('the disk is full');
    expect(tags()).toBe('');
  });

  it('is refused where git is not set up as the printed document says', async () => {
    const otherwise = { ...standing, issue: { ...standing.issue, signed: true } };
    await expect(sealWithTag(otherwise, 'Title', false, (seal) => seal(manifest))).rejects.toThrow(
      'which says that the tag is signed',
    );
    expect(tags()).toBe('');
  });

  it('stays once all is done, and is dropped at an interruption only by whoever made it', async () => {
    await sealWithTag(standing, 'Title\nof two lines', false, (seal) => seal(manifest));
    const message = repo.git('for-each-ref', '--format=%(contents)', 'refs/tags/t/issue-A');
    expect(message.split('\n')[0]).toBe('T issue A: Title‹U+000A›of two lines');
    dropAtOnce(repo.place, 't/issue-A', 'Another message');
    expect(tags()).toBe('t/issue-A');
    dropAtOnce(repo.place, 't/issue-A', message);
    expect(tags()).toBe('');
  });

  it('is never made over one that is there', async () => {
    repo.git('tag', 't/issue-A', commit);
    await expect(sealWithTag(standing, 'Title', false, (seal) => seal(manifest))).rejects.toThrow(
      'There is a tag t/issue-A already',
    );
    expect(tags()).toBe('t/issue-A');
  });
});
