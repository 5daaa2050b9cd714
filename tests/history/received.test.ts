import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { isClean } from '../../src/history/git/clean.js';
import { createTag, signingSetUp } from '../../src/history/git/create-tag.js';
import { ownSettings } from '../../src/history/git/own-settings.js';
import { git as ask } from '../../src/history/git/run.js';
import { fileAt } from '../../src/history/git/tree.js';
import { verifyTag } from '../../src/history/git/verify-tag.js';
import { fileVersions } from '../../src/history/git/versions.js';
import { configure, has, history, jo, type Throwaway, temporary, throwaway } from './throwaway.js';

/** A repository that somebody sent, with whatever settings they like. */

afterEach(() => vi.unstubAllEnvs());

const oneFile = {
  parents: [],
  files: { 'builds/t/build.md': 'The build', '.gitattributes': '*.md filter=x diff=x\n' },
};
const oneTag = (form: string): string =>
  `object ${'0'.repeat(40)}\ntype commit\ntag t/issue-A\ntagger Jo <${jo.email}> 1770000000 +0000\n\nIssue A\n-----BEGIN ${form} SIGNATURE-----\n\niHUEABYKAB0WIQ==\n-----END ${form} SIGNATURE-----\n`;

/** With a tag whose signature nobody made. */
function received(form = 'PGP'): Throwaway {
  const repo = throwaway();
  const [commit = ''] = history(repo, [oneFile]);
  repo.git('checkout', '--quiet', '--force', 'main');
  const file = join(temporary(), 'tag');
  writeFileSync(file, oneTag(form).replace('0'.repeat(40), commit));
  repo.git('update-ref', 'refs/tags/t/issue-A', repo.git('hash-object', '-t', 'tag', '-w', '--literally', file));
  return repo;
}

/** A program that leaves a mark when it is run, and says what it is told to. */
function liar(says = ''): { program: string; ran: () => boolean } {
  const folder = temporary();
  const program = join(folder, 'liar');
  writeFileSync(join(folder, 'says'), says);
  writeFileSync(program, `#!/bin/sh\ntouch "${folder}/ran"\ncat "${folder}/says"\ncat "${folder}/says" >&2\n`, {
    mode: 0o755,
  });
  return { program, ran: () => existsSync(join(folder, 'ran')) };
}

const goodPgp = `[GNUPG:] NEWSIG\n[GNUPG:] GOODSIG 0123456789ABCDEF ${jo.name} <${jo.email}>\n[GNUPG:] VALIDSIG 0123456789ABCDEF0123456789ABCDEF01234567\n[GNUPG:] TRUST_ULTIMATE 0 pgp\n`;
const goodSsh = `Good "git" signature for ${jo.email} with ED25519 key SHA256:x\n`;

describe('a signature', () => {
  it.each([
    ['gpg', 'program', 'PGP', goodPgp],
    ['gpg "openpgp"', 'program', 'PGP', goodPgp],
    ['gpg "ssh"', 'program', 'SSH', goodSsh],
    ['gpg "x509"', 'program', 'PGP', goodPgp],
  ])('is not good because a program named under [%s] %s says so', async (section, key, form, says) => {
    const { program, ran } = liar(says);
    const repo = received(form);
    configure(repo.dir, `[${section}]\n${key} = ${program}\n`);
    const verdict = await verifyTag(repo.place, 't/issue-A');
    expect(verdict.signed).toBe(true);
    expect(verdict.state).not.toBe('good');
    expect(ran()).toBe(false);
  });

  it('is not good because settings of an included file or of one working tree say so', async () => {
    const { program, ran } = liar(goodPgp);
    const repo = received();
    const more = join(temporary(), 'more');
    writeFileSync(more, `[gpg]\nprogram = ${program}\n`);
    configure(repo.dir, `[include]\npath = ${more}\n[extensions]\nworktreeConfig = true\n`);
    writeFileSync(join(repo.dir, '.git/config.worktree'), `[gpg "openpgp"]\nprogram = ${program}\n`);
    expect((await verifyTag(repo.place, 't/issue-A')).state).not.toBe('good');
    expect(ran()).toBe(false);
  });

  it('is judged by the program of whoever verifies, by either of its names', async () => {
    const [own, theirs] = [liar(goodPgp), liar()];
    const repo = received();
    for (const name of ['gpg', 'gpg "openpgp"']) {
      const mine = join(temporary(), 'config');
      writeFileSync(mine, `[${name}]\nprogram = ${own.program}\n`);
      vi.stubEnv('GIT_CONFIG_GLOBAL', mine);
      configure(repo.dir, `[gpg]\nprogram = ${theirs.program}\n[gpg "openpgp"]\nprogram = ${theirs.program}\n`);
      expect((await verifyTag(repo.place, 't/issue-A')).state).toBe('good');
    }
    expect([own.ran(), theirs.ran()]).toEqual([true, false]);
  });

  it.skipIf(!has('ssh-keygen', '-?'))('is not good by a list of signers that the repository names', async () => {
    const keys = temporary();
    execFileSync('ssh-keygen', ['-q', '-t', 'ed25519', '-N', '', '-f', join(keys, 'k')]);
    const list = join(keys, 'list');
    writeFileSync(list, `${jo.email} ${readFileSync(join(keys, 'k.pub'), 'utf8')}`);
    const repo = throwaway();
    const [commit = ''] = history(repo, [oneFile]);
    const settings = `[gpg]\nformat = ssh\n[user]\nsigningkey = ${join(keys, 'k.pub')}\n[gpg "ssh"]\nallowedSignersFile = ${list}\n`;
    configure(repo.dir, settings);
    await createTag(repo.place, { name: 't/issue-A', message: 'A', commit, sign: 'require' });
    expect((await verifyTag(repo.place, 't/issue-A')).state).toBe('unknown-key');
    const mine = join(keys, 'config');
    writeFileSync(mine, `[gpg "ssh"]\nallowedSignersFile = ${list}\n`);
    vi.stubEnv('GIT_CONFIG_GLOBAL', mine);
    configure(repo.dir, settings.replace(list, '/nowhere'));
    expect((await verifyTag(repo.place, 't/issue-A')).state).toBe('good');
  });

  it('is not made with a key that a command of the repository names', async () => {
    const { program, ran } = liar('key::ssh-ed25519 AAAA');
    const repo = throwaway();
    const [commit = ''] = history(repo, [oneFile]);
    configure(repo.dir, `[gpg]\nformat = ssh\n[gpg "ssh"]\ndefaultKeyCommand = ${program}\nprogram = ${program}\n`);
    expect(await signingSetUp(repo.place)).toBe(false);
    await expect(createTag(repo.place, { name: 't/issue-A', message: 'A', commit, sign: 'require' })).rejects.toThrow(
      'not set up to sign',
    );
    expect((await createTag(repo.place, { name: 't/issue-A', message: 'A', commit, sign: 'if-set-up' })).signed).toBe(
      false,
    );
    expect(ran()).toBe(false);
  });
});

describe('no program is run', () => {
  const all = async (repo: Throwaway): Promise<void> => {
    const found = await repo.open('builds/t');
    // Of another size than git noted, so that it has to look into it.
    repo.write('builds/t/build.md', 'The build, changed');
    await isClean(found, 'builds/t');
    await isClean(found, '');
    await fileVersions(found, 'builds/t');
    await fileVersions(found, 'builds/t', { endings: ['.md'] });
    await verifyTag(found, 't/issue-A');
    await fileAt(found, repo.git('rev-parse', 'HEAD'), 'builds/t/build.md').catch(() => undefined);
    await createTag(found, { name: 't/issue-B', message: 'B', commit: repo.git('rev-parse', 'HEAD'), sign: 'no' });
  };

  it.each<[string, (program: string) => string]>([
    ['core.fsmonitor', (p) => `[core]\nfsmonitor = ${p}\n`],
    ['core.pager', (p) => `[core]\npager = ${p}\n[pager]\nlog = ${p}\nstatus = ${p}\ntag = ${p}\n`],
    ['core.editor', (p) => `[core]\neditor = ${p}\n[sequence]\neditor = ${p}\n`],
    ['filter clean and smudge', (p) => `[filter "x"]\nclean = ${p}\nsmudge = ${p}\nrequired = true\n`],
    ['filter process', (p) => `[filter "x"]\nprocess = ${p}\nrequired = true\n`],
    ['diff external', (p) => `[diff]\nexternal = ${p}\n[diff "x"]\ncommand = ${p}\n`],
    ['diff textconv', (p) => `[diff "x"]\ntextconv = ${p}\ncachetextconv = true\n`],
    ['aliases', (p) => `[alias]\nstatus = !${p}\nlog = !${p}\ntag = !${p}\n`],
    ['credentials', (p) => `[credential]\nhelper = !${p}\n[core]\naskPass = ${p}\n`],
  ])('by %s', async (_, settings) => {
    const { program, ran } = liar();
    const repo = received();
    configure(repo.dir, settings(program));
    await all(repo);
    expect(ran()).toBe(false);
  });

  it('by hooks, wherever they lie', async () => {
    const { program, ran } = liar();
    const repo = received();
    for (const folder of ['.git/hooks', 'my hooks'])
      for (const name of [
        'reference-transaction',
        'post-index-change',
        'pre-commit',
        'fsmonitor-watchman',
        'query-fsmonitor',
      ])
        repo.write(`${folder}/${name}`, '');
    for (const folder of ['.git/hooks', 'my hooks'])
      for (const name of ['reference-transaction', 'post-index-change']) {
        copyFileSync(program, join(repo.dir, folder, name));
        chmodSync(join(repo.dir, folder, name), 0o755);
      }
    await all(repo);
    configure(repo.dir, `[core]\nhooksPath = my hooks\n`);
    await isClean(await repo.open(), '');
    expect(ran()).toBe(false);
  });

  it('by a filter whose name holds what parts a name from its value', async () => {
    const { program, ran } = liar();
    const repo = received();
    writeFileSync(join(repo.dir, '.git/info/attributes'), '*.md filter=a=b\n');
    configure(repo.dir, `[filter "a=b"]\nclean = ${program}\n[filter "A=b"]\nclean = ${program}\n`);
    await all(repo);
    expect(ran()).toBe(false);
  });

  it('by a repository within it', async () => {
    const { program, ran } = liar();
    const repo = received();
    const inner = throwaway(join(repo.dir, 'builds/t/inner'));
    inner.write('a.md', 'a');
    writeFileSync(join(inner.dir, '.gitattributes'), '*.md filter=x\n');
    inner.commit('inner');
    repo.git('add', 'builds/t/inner');
    repo.commit('with it');
    configure(inner.dir, `[filter "x"]\nclean = ${program}\n[core]\nfsmonitor = ${program}\n`);
    // As long as before, so that git has to look into it.
    inner.write('a.md', 'b');
    await all(repo);
    expect(ran()).toBe(false);
  });

  it('to fetch what a clone left out, whatever transports are allowed', async () => {
    const { program, ran } = liar();
    const repo = received();
    configure(
      repo.dir,
      `[core]\nrepositoryformatversion = 1\n[extensions]\npartialClone = origin\n[remote "origin"]\nurl = ext::${program}\npromisor = true\nuploadpack = ${program}\n[protocol]\nallow = always\n[protocol "ext"]\nallow = always\n`,
    );
    const blob = repo.git('rev-parse', 'HEAD:builds/t/build.md');
    execFileSync('rm', ['-f', join(repo.dir, '.git/objects', blob.slice(0, 2), blob.slice(2))]);
    await all(repo).catch(() => undefined);
    await ask(repo.place, ['cat-file', 'blob', blob]).catch(() => undefined);
    expect(ran()).toBe(false);
  });

  it('but those that whoever runs it set up', async () => {
    const { program, ran } = liar('The build');
    const repo = received();
    const mine = join(temporary(), 'config');
    writeFileSync(mine, `[filter "x"]\nclean = ${program}\n`);
    vi.stubEnv('GIT_CONFIG_GLOBAL', mine);
    configure(repo.dir, '[filter "x"]\nclean = false\n');
    repo.write('builds/t/build.md', 'The build, changed');
    await isClean(await repo.open(), 'builds/t');
    expect(ran()).toBe(true);
  });
});

describe('the history', () => {
  it('is that of the commits, not of a table that lies beside them', async () => {
    const repo = throwaway();
    const [first = '', second = ''] = history(repo, [
      { parents: [], files: { 'builds/t/a.md': '1' } },
      { parents: [0], files: { 'builds/t/a.md': '2' } },
    ]);
    repo.git('commit-graph', 'write', '--reachable');
    const table = join(repo.dir, '.git/objects/info/commit-graph');
    execFileSync('chmod', ['u+w', table]);
    const bytes = readFileSync(table);
    // The entry of a commit ends in its tree, two parents, generation and date: the second is made to have none.
    const none = Buffer.from('70000000', 'hex');
    const at = bytes.indexOf(Buffer.from(repo.git('rev-parse', `${second}^{tree}`), 'hex'), 1000);
    none.copy(bytes, at + 20);
    writeFileSync(table, bytes);
    const { versions } = await fileVersions(await repo.open(), 'builds/t');
    expect(versions.map((v) => v.commit)).toEqual([first, second]);
  });
});

// Law: of whatever is set where, the last of one's own counts, and what the repository says is never left standing.
describe('settings', () => {
  const scope = fc.constantFrom('system', 'global', 'local', 'worktree', 'command', 'unknown');
  const name = fc.constantFrom(
    'gpg.program',
    'gpg.ssh.program',
    'gpg.ssh.allowedsignersfile',
    'filter.x.clean',
    'filter.a=b.clean',
    'core.sshcommand',
    'diff.x.textconv',
    'user.name',
    'core.bare',
  );
  const entry = fc.tuple(scope, name, fc.constantFrom('a', 'b', ''));
  it('of one’s own win over those of the repository', () => {
    fc.assert(
      fc.property(fc.array(entry), (entries) => {
        const given = ownSettings(entries.map(([s, n, v]) => `${s}\0${n}\n${v}\0`).join(''));
        const isOwn = (s: string) => s === 'system' || s === 'global' || s === 'command';
        for (const [s, n] of entries) {
          if (isOwn(s) || n === 'user.name' || n === 'core.bare') continue;
          const value = given.find(([one]) => one === n)?.[1];
          const last = entries.findLast(([of, one]) => one === n && isOwn(of))?.[2];
          const usual: Record<string, string> = { 'gpg.program': 'gpg', 'gpg.ssh.program': 'ssh-keygen' };
          expect(value).toBe(last ?? usual[n] ?? '');
        }
        expect(given.some(([n]) => n === 'user.name' || n === 'core.bare')).toBe(false);
      }),
    );
  });
});
