import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { replaced } from '../../src/history/git/own-settings.js';
import { git } from '../../src/history/git/run.js';
import { configure, history, temporary, throwaway } from './throwaway.js';

const of = (scope: string, name: string, value: string) => ({ scope, name, value });

it("puts the own settings, or git's usual ones, in the place of those of the repository", () => {
  expect(
    replaced([
      of('global', 'gpg.ssh.program', '/own/ssh-keygen'),
      of('local', 'gpg.ssh.program', '/evil'),
      of('local', 'gpg.program', '/evil'),
      of('worktree', 'GPG.OpenPGP.Program', '/evil'),
      of('local', 'gpg.ssh.allowedSignersFile', 'evil list'),
      of('local', 'filter.x.clean', 'evil'),
      of('local', 'filter.x.required', 'true'),
      of('local', 'filter.X.smudge', 'evil'),
      of('local', 'diff.pic.textconv', 'evil'),
      of('local', 'core.attributesFile', 'evil'),
    ]),
  ).toEqual([
    'gpg.ssh.program=/own/ssh-keygen',
    'gpg.program=gpg',
    'GPG.OpenPGP.Program=',
    'gpg.ssh.allowedSignersFile=',
    'filter.x.clean=',
    'filter.x.required=false',
    'filter.X.smudge=',
    'diff.pic.textconv=',
    'core.attributesFile=',
  ]);
});

it('leaves the others as they are', () => {
  expect(
    replaced([
      of('local', 'user.name', 'Jo'),
      of('local', 'core.bare', 'false'),
      of('local', 'gpg.format', 'ssh'),
      of('global', 'gpg.program', '/own/gpg'),
      of('system', 'filter.lfs.clean', 'git-lfs clean -- %f'),
    ]),
  ).toEqual([]);
});

it('runs no program that a repository names', async () => {
  const marker = join(temporary(), 'was-run');
  const program = join(temporary(), 'program');
  writeFileSync(program, `#!/bin/sh\ntouch ${marker}\ncat\n`, { mode: 0o755 });
  const repo = throwaway();
  history(repo, [{ parents: [], files: { 'note.md': 'One\n', '.gitattributes': '*.md filter=evil diff=evil\n' } }]);
  configure(
    repo.dir,
    `[filter "evil"]\nclean = ${program}\nsmudge = ${program}\nprocess = ${program}\nrequired = true\n[diff "evil"]\ntextconv = ${program}\ncommand = ${program}\n[diff]\nexternal = ${program}\n[core]\nfsmonitor = ${program}\npager = ${program}\n`,
  );
  writeFileSync(join(repo.dir, 'note.md'), 'Two\n');
  await git(repo.place, ['status', '--porcelain']);
  await git(repo.place, ['diff']);
  await git(repo.place, ['log', '-p', '-1']);
  expect(existsSync(marker)).toBe(false);
});
