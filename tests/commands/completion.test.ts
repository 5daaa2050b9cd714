import { execFileSync, spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { commands } from '../../src/commands/main.js';
import { gusset } from './run.js';

const scripts: Record<string, string> = {};
beforeAll(async () => {
  for (const shell of ['bash', 'zsh', 'fish']) scripts[shell] = (await gusset('completion', shell)).out;
});

/** What bash offers for the last word. */
function offered(...words: string[]): string[] {
  const list = words.map((w) => `'${w}'`).join(' ');
  const ask = `${scripts['bash']}\nCOMP_WORDS=(${list}); COMP_CWORD=${words.length - 1}; _gusset; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync('bash', ['--norc', '-c', ask], { encoding: 'utf8' }).split('\n').filter(Boolean);
}

describe.skipIf(spawnSync('bash', ['--version']).status !== 0)('in bash', () => {
  it.each<[string[], string[]]>([
    [
      ['gusset', 'p'],
      ['plan', 'photos', 'print'],
    ],
    [['gusset', 'check', '--f'], ['--format']],
    [
      ['gusset', 'check', '--format', ''],
      ['text', 'json', 'sarif'],
    ],
    [['gusset', 'check', '--format', 'j'], ['json']],
    [['gusset', 'note', 'builds/x', 'bra'], ['brakes']],
    [['gusset', 'note', 'builds/x', 'brakes', 'b'], []],
    [['gusset', 'note', 'b'], []],
    [['gusset', 'calc', 'engine-cap'], ['engine-capacity']],
    [['gusset', 'calc', '--format', 'json', 'engine-cap'], ['engine-capacity']],
    [['gusset', 'print', '--out', 'o'], []],
    [
      ['gusset', 'completion', ''],
      ['bash', 'zsh', 'fish'],
    ],
    [['gusset', 'nonsense', '--'], []],
  ])('%j is completed', (words, offers) => {
    expect(offered(...words)).toEqual(offers);
  });

  it('offers every command and every option of it', async () => {
    expect(offered('gusset', '')).toEqual([...Object.keys(commands), '--help', '--version']);
    for (const [name, { load }] of Object.entries(commands))
      expect(offered('gusset', name, '--')).toEqual(
        [...Object.keys((await load()).form.options), 'help'].map((o) => `--${o}`),
      );
  });
});

describe.each([
  ['zsh', ['-n']],
  ['fish', ['--no-execute']],
])('in %s', (shell, check) => {
  it('the script names every command, option and kind', async () => {
    for (const [name, { load }] of Object.entries(commands)) {
      expect(scripts[shell]).toContain(name);
      for (const option of Object.keys((await load()).form.options))
        expect(scripts[shell]).toMatch(
          shell === 'fish'
            ? new RegExp(`seen_subcommand_from ${name}' -l ${option} `)
            : new RegExp(`^    ${name}\\) .*'--${option}[=\\[]`, 'm'),
        );
    }
    for (const kind of kinds.keys()) expect(scripts[shell]).toContain(` ${kind}`.trim());
  });

  it.skipIf(spawnSync(shell, ['--version']).status !== 0)('the script can be read by the shell', () => {
    expect(spawnSync(shell, check, { input: scripts[shell]! }).status).toBe(0);
  });
});

it('says which shells there are', async () => {
  expect(await gusset('completion', 'fsh')).toMatchObject({
    code: 2,
    err: expect.stringContaining('did you mean `fish`?'),
  });
});
