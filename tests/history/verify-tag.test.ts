import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createTag } from '../../src/history/git/create-tag.js';
import { type TagVerdict, verifyTag } from '../../src/history/git/verify-tag.js';
import { configure, has, history, jo, type Throwaway, temporary, throwaway } from './throwaway.js';

function signer(settings = ''): Throwaway {
  const repo = throwaway();
  configure(repo.dir, settings);
  history(repo, [
    { parents: [], files: {} },
    { parents: [0], files: { 'builds/demo/build.md': 'The demo' } },
  ]);
  return repo;
}
const make = async (repo: Throwaway, sign: 'require' | 'no' = 'require'): Promise<unknown> =>
  createTag(repo.place, {
    name: 'demo/issue-A',
    message: 'Issue A of the demo',
    commit: repo.git('rev-parse', 'HEAD'),
    sign,
  });
const verify = async (repo: Throwaway): Promise<TagVerdict> => verifyTag(repo.place, 'demo/issue-A');

/** Settings of whoever verifies, for the rest of the file. */
const ownFile = join(temporary(), 'own settings');
function own(settings: string): void {
  writeFileSync(ownFile, settings);
  process.env.GIT_CONFIG_GLOBAL = ownFile;
}
beforeEach(() => own(''));

/** Puts a changed copy of the tag object in the place of the tag. */
function forge(repo: Throwaway, change: (object: string) => string): void {
  const file = join(temporary(), 'object');
  writeFileSync(file, change(`${repo.git('cat-file', 'tag', 'demo/issue-A')}\n`));
  repo.git('update-ref', 'refs/tags/demo/issue-A', repo.git('hash-object', '-t', 'tag', '-w', '--literally', file));
}

describe('a tag without a signature', () => {
  it('proves nothing, and less as a bare name', async () => {
    const repo = signer();
    await make(repo, 'no');
    expect(await verify(repo)).toMatchObject({
      signed: false,
      state: 'unsigned',
      says: expect.stringContaining('neither who nor when'),
    });
    repo.git('tag', '--force', 'demo/issue-A', 'HEAD');
    expect(await verify(repo)).toMatchObject({
      signed: false,
      state: 'unsigned',
      says: expect.stringContaining('bare name'),
    });
    await expect(verifyTag(repo.place, 'demo/issue-B')).rejects.toThrow('There is no tag demo/issue-B');
  });
});

describe.skipIf(!has('ssh-keygen', '-?'))('a tag signed with an SSH key', () => {
  const keys = temporary();
  const publicKey = (name: string): string =>
    readFileSync(join(keys, `${name}.pub`), 'utf8')
      .split(' ')
      .slice(0, 2)
      .join(' ');
  beforeAll(() => {
    for (const name of ['jo', 'mika'])
      execFileSync('ssh-keygen', ['-q', '-t', 'ed25519', '-N', '', '-C', name, '-f', join(keys, name)]);
    writeFileSync(join(keys, 'list'), `${jo.email} ${publicKey('jo')}\n`);
    writeFileSync(join(keys, 'other list'), `mika@workshop.example ${publicKey('mika')}\n`);
    writeFileSync(join(keys, 'old list'), `${jo.email} valid-before="20200101" ${publicKey('jo')}\n`);
  });
  const repo = signer();
  const signing = `[gpg]\nformat = ssh\n[user]\nsigningkey = ${join(keys, 'jo.pub')}\n`;
  configure(repo.dir, signing);
  const ssh = (settings: string): void => own(`[gpg "ssh"]\n${settings}\n`);
  const allow = (list: string, more = ''): void => ssh(`allowedSignersFile = ${join(keys, list)}\n${more}`);
  let object = '';
  const restore = (): string => repo.git('update-ref', 'refs/tags/demo/issue-A', object);
  beforeAll(async () => {
    ssh('');
    await make(repo);
    object = repo.git('rev-parse', 'refs/tags/demo/issue-A');
  });

  it('is good by a key on the own list, and says what that proves and what not', async () => {
    allow('list');
    const verdict = await verify(repo);
    const [, fingerprint] = execFileSync('ssh-keygen', ['-l', '-f', join(keys, 'jo.pub')], { encoding: 'utf8' }).split(
      ' ',
    );
    expect(verdict).toMatchObject({
      signed: true,
      state: 'good',
      format: 'ssh',
      signer: jo.email,
      key: `ED25519 key ${fingerprint}`,
    });
    expect(verdict.says).toContain(repo.git('rev-parse', 'HEAD'));
    expect(verdict.says).toContain('It does not prove when');
    expect(verdict.says).not.toContain('whoever can commit');
  });

  it('is unknown without a list, not allowed by a key that is not on it or no more, or withdrawn', async () => {
    ssh('');
    expect(await verify(repo)).toMatchObject({ state: 'unknown-key', key: expect.stringContaining('SHA256:') });
    allow('other list');
    expect(await verify(repo)).toMatchObject({
      state: 'not-allowed',
      says: expect.stringContaining('not on the list of allowed signers'),
    });
    allow('old list');
    expect((await verify(repo)).state).toBe('not-allowed');
    allow('list', `revocationFile = ${join(keys, 'jo.pub')}`);
    expect(await verify(repo)).toMatchObject({ state: 'not-allowed', says: expect.stringContaining('withdrawn') });
  });

  it('is bad once message, commit or signature were altered, or the tag stands under another name', async () => {
    allow('list');
    for (const change of [
      (text: string) => text.replace('Issue A of', 'Issue a of'),
      (text: string) => text.replace(/^object \w+/, `object ${repo.git('rev-parse', 'HEAD^')}`),
      (text: string) => text.replace(/\nU1NIU0/, '\nU1NJU0'),
    ]) {
      forge(repo, change);
      expect((await verify(repo)).state).toBe('bad');
      restore();
    }
    expect((await verify(repo)).state).toBe('good');
    repo.git('update-ref', 'refs/tags/demo/issue-B', object);
    expect(await verifyTag(repo.place, 'demo/issue-B')).toMatchObject({
      signed: true,
      state: 'bad',
      says: expect.stringContaining('was put under'),
    });
  });

  it('stays bad when altered where a list of withdrawn keys is set up, and where objects are replaced', async () => {
    allow('list', `revocationFile = ${join(keys, 'mika.pub')}`);
    forge(repo, (text) => text.replace('Issue A of', 'Issue a of'));
    expect((await verify(repo)).state).toBe('bad');
    repo.git('replace', repo.git('rev-parse', 'refs/tags/demo/issue-A'), object);
    expect((await verify(repo)).state).toBe('bad');
    restore();
  });

  it('does not believe a program named in the settings of the repository', async () => {
    const program = join(temporary(), 'liar');
    writeFileSync(program, '#!/bin/sh\necho \'Good "git" signature for jo with ED25519 key SHA256:x\'\n', {
      mode: 0o755,
    });
    allow('other list');
    configure(repo.dir, `${signing}[gpg "ssh"]\nprogram = ${program}\n`);
    expect((await verify(repo)).state).toBe('not-allowed');
    configure(repo.dir, signing);
  });

  it('cannot be verified without ssh-keygen', async () => {
    allow('list');
    const path = process.env.PATH;
    const bin = temporary();
    const gitAt = execFileSync('sh', ['-c', 'command -v git'], { encoding: 'utf8' }).trim();
    writeFileSync(join(bin, 'git'), `#!/bin/sh\nexec ${gitAt} "$@"\n`, { mode: 0o755 });
    process.env.PATH = bin;
    const verdict = await verify(repo).finally(() => {
      process.env.PATH = path;
    });
    expect(verdict).toMatchObject({
      signed: true,
      state: 'cannot-verify',
      says: expect.stringContaining('ssh-keygen'),
    });
  });

  it('is good by the list in the repository, with the warning that belongs to it', async () => {
    ssh('');
    const list = `${jo.email} ${publicKey('jo')}\n`;
    history(repo, [{ parents: [], files: { 'builds/demo/allowed-signers': list } }]);
    const place = { ...repo.place, prefix: 'builds/demo' };
    expect(await verifyTag(place, 'demo/issue-A')).toMatchObject({
      state: 'good',
      signer: jo.email,
      says: expect.stringContaining('whoever can commit'),
    });
    expect((await verify(repo)).state).toBe('unknown-key');
    allow('other list');
    expect((await verifyTag(place, 'demo/issue-A')).state).toBe('not-allowed');
  });
});

describe.skipIf(!has('gpg', '--version'))('a tag signed with an OpenPGP key', () => {
  const home = temporary();
  const gpg = (...args: string[]): string =>
    execFileSync('gpg', ['--batch', '--quiet', '--homedir', home, ...args], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  beforeAll(() => {
    process.env.GNUPGHOME = home;
    execFileSync('chmod', ['700', home]);
    gpg('--passphrase', '', '--quick-gen-key', `${jo.name} <${jo.email}>`, 'ed25519', 'sign', 'never');
  });
  afterAll(() => {
    delete process.env.GNUPGHOME;
    execFileSync('gpgconf', ['--homedir', home, '--kill', 'all']);
  });

  it('is good by a key one trusts, bad once altered, unknown without the key', async () => {
    const repo = signer(`[user]\nsigningkey = ${jo.email}\n`);
    await make(repo);
    expect(await verify(repo)).toMatchObject({
      signed: true,
      state: 'good',
      format: 'openpgp',
      signer: `${jo.name} <${jo.email}>`,
      key: expect.stringMatching(/^[0-9A-F]{40}$/),
    });
    const publicKey = join(temporary(), 'key');
    gpg('--output', publicKey, '--export', jo.email);

    const stranger = temporary();
    execFileSync('chmod', ['700', stranger]);
    process.env.GNUPGHOME = stranger;
    expect(await verify(repo)).toMatchObject({
      signed: true,
      state: 'unknown-key',
      says: expect.stringContaining('your keyring'),
    });
    execFileSync('gpg', ['--batch', '--quiet', '--homedir', stranger, '--import', publicKey], { stdio: 'ignore' });
    expect(await verify(repo)).toMatchObject({
      signed: true,
      state: 'not-allowed',
      says: expect.stringContaining('nobody you trust'),
    });
    execFileSync('gpgconf', ['--homedir', stranger, '--kill', 'all']);
    process.env.GNUPGHOME = home;

    forge(repo, (text) => text.replace('Issue A of', 'Issue a of'));
    expect((await verify(repo)).state).toBe('bad');
  });

  it('cannot be verified without GnuPG', async () => {
    const repo = signer(`[user]\nsigningkey = ${jo.email}\n`);
    await make(repo);
    own('[gpg]\nprogram = /nowhere/gpg\n');
    expect(await verify(repo)).toMatchObject({
      signed: true,
      state: 'cannot-verify',
      says: expect.stringContaining('GnuPG'),
    });
  });
});
