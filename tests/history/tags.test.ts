import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createTag } from '../../src/history/git/create-tag.js';
import { letterNumber, nextLetter } from '../../src/history/git/issue-letter.js';
import { letterOf, tagName } from '../../src/history/git/tag-name.js';
import { issueTags, tagNamed } from '../../src/history/git/tags.js';
import { configure, history, jo, type Throwaway, throwaway } from './throwaway.js';

function tagged(): { repo: Throwaway; commit: string } {
  const repo = throwaway();
  const [commit = ''] = history(repo, [{ parents: [], files: {} }]);
  return { repo, commit };
}

describe('letters', () => {
  it('go from A to Z and on with AA, and never fill a gap', () => {
    expect(nextLetter([])).toBe('A');
    expect(nextLetter(['A'])).toBe('B');
    expect(nextLetter(['D', 'A'])).toBe('E');
    expect(nextLetter(['Y'])).toBe('Z');
    expect(nextLetter(['Z'])).toBe('AA');
    expect(nextLetter(['Z', 'AZ', 'B'])).toBe('BA');
    expect(nextLetter(['ZZ'])).toBe('AAA');
    expect(() => nextLetter(['a'])).toThrow('Expected an issue letter');
    expect(() => nextLetter([''])).toThrow('Expected an issue letter');
  });

  it('each count one more than the letter before', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[A-Z]{1,3}$/),
        (letter) => letterNumber(nextLetter([letter])) === letterNumber(letter) + 1,
      ),
    );
  });
});

describe('tagName', () => {
  it('is the build and the letter, and can be read back', () => {
    expect(tagName('demo', 'B')).toBe('demo/issue-B');
    expect(tagName('my car', 'A')).toBe('my%20car/issue-A');
    expect(letterOf('my%20car/issue-AB')).toBe('AB');
    expect(letterOf('demo/issue-')).toBeUndefined();
    expect(letterOf('demo/issue-a')).toBeUndefined();
    expect(() => tagName('demo', 'b')).toThrow('Expected an issue letter');
    expect(() => tagName('', 'A')).toThrow('Expected the name of a build');
  });

  it('is a name that git takes, another for every build', () => {
    const names = fc.sample(
      fc.string({ minLength: 1, unit: fc.constantFrom(...'ab.@{}/~^:?*[\\ -é山%\n\u0000\u007f', '.lock') }),
      60,
    );
    const tags = names.map((name) => tagName(name, 'A'));
    const { repo, commit } = tagged();
    const create = [...new Set(tags)].map((tag) => `create refs/tags/${tag}\0${commit}\0`).join('');
    execFileSync('git', ['update-ref', '--stdin', '-z'], { cwd: repo.dir, input: create });
    expect(new Set(tags).size).toBe(new Set(names.map((name) => name.normalize('NFC'))).size);
  });
});

describe('createTag and issueTags', () => {
  it('makes an annotated tag and lists the issues of one build in order', async () => {
    const { repo, commit } = tagged();
    const found = repo.place;
    expect(await issueTags(found, 'demo')).toEqual([]);
    const message = 'Issue B\n\n# not a comment\n$(id) `id` "quoted"\n--not-an-option Größe\n';
    for (const letter of ['B', 'AA', 'A'])
      await createTag(found, {
        name: tagName('demo', letter),
        message: letter === 'B' ? message : letter,
        commit,
        sign: 'if-set-up',
      });
    await createTag(found, { name: tagName('demo2', 'C'), message: 'other', commit, sign: 'no' });
    repo.git('tag', 'demo/issue-Z');
    repo.git('tag', 'demo/issue-a');
    const issues = await issueTags(found, 'demo');
    expect(issues.map(({ letter, annotated }) => [letter, annotated])).toEqual([
      ['A', true],
      ['B', true],
      ['Z', false],
      ['AA', true],
    ]);
    expect(issues[1]).toMatchObject({
      name: 'demo/issue-B',
      ownName: 'demo/issue-B',
      tagger: jo,
      message: message.trim(),
      commit,
    });
    expect(issues[1]?.date).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
    expect(repo.git('cat-file', 'tag', 'demo/issue-B')).toContain('# not a comment');
    expect(nextLetter(issues.map(({ letter }) => letter))).toBe('AB');
  });

  it('does not make a tag twice, nor one under a name that is none, nor on a commit that is not there', async () => {
    const { repo, commit } = tagged();
    const found = repo.place;
    const make = (name: string, message = 'x', on = commit): Promise<unknown> =>
      createTag(found, { name, message, commit: on, sign: 'no' });
    await make('demo/issue-A');
    const before = await tagNamed(found, 'demo/issue-A');
    await expect(make('demo/issue-A', 'again')).rejects.toThrow('take the next letter');
    expect(await tagNamed(found, 'demo/issue-A')).toEqual(before);
    for (const name of ['-d', 'a b', 'a..b', '', 'a\nb']) await expect(make(name)).rejects.toThrow('no name for a tag');
    await expect(make('demo/issue-B', 'x', 'f'.repeat(40))).rejects.toThrow('could not be made');
    await expect(make('demo/issue-B', 'x', 'HEAD')).rejects.toThrow('full git object id');
    await expect(make('demo/issue-B', 'x\n-----BEGIN SSH SIGNATURE-----\n')).rejects.toThrow('taken for a signature');
  });

  it('asks for a tagger, and for signing to be set up where a signature is wanted', async () => {
    const { repo, commit } = tagged();
    configure(repo.dir, '[user]\nname =\nemail =\nuseConfigOnly = true\n');
    const found = repo.place;
    await expect(createTag(found, { name: 'demo/issue-A', message: 'x', commit, sign: 'no' })).rejects.toThrow(
      'Set user.name and user.email',
    );
    await expect(createTag(found, { name: 'demo/issue-A', message: 'x', commit, sign: 'require' })).rejects.toThrow(
      'not set up to sign',
    );
  });

  it('never leaves a tag unsigned where git is set up to sign and cannot', async () => {
    const { repo, commit } = tagged();
    const signing = '[gpg]\nformat = ssh\n[user]\nsigningkey = /nowhere/key.pub\n';
    configure(repo.dir, signing);
    const found = repo.place;
    await expect(createTag(found, { name: 'demo/issue-A', message: 'x', commit, sign: 'if-set-up' })).rejects.toThrow(
      'the signature failed',
    );
    expect(await issueTags(found, 'demo')).toEqual([]);
    configure(repo.dir, `${signing}[tag]\ngpgSign = true\n`);
    expect(await createTag(found, { name: 'demo/issue-A', message: 'x', commit, sign: 'no' })).toMatchObject({
      signed: false,
    });
  });
});
