import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

const cli = fileURLToPath(new URL('../../dist/bundle/cli.js', import.meta.url));
const shell = (folder: string, script: string) =>
  spawnSync('bash', ['-c', script], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, GUSSET: `${process.execPath} ${cli}` },
  });

describe.skipIf(process.platform !== 'linux')('standard output', () => {
  it.each([
    ['check build', ''],
    ['check build --format json', ''],
    ['calc', ''],
    ['--help', ''],
    ['check nowhere', '2>&1'],
  ])('that nobody reads any more ends %s quietly, by a signal', (command, more) => {
    const { stdout, stderr } = shell(
      folderWith(Object.fromEntries(Object.entries(workshop).map(([path, text]) => [`build/${path}`, text]))),
      `{ ( sleep 0.3; exec $GUSSET ${command} ${more} ) ; echo "code $?" >&3; } 3>&1 1> >(true)`,
    );
    expect(stdout).toBe('code 141\n');
    expect(stderr).toBe('');
  });

  it('of which only the beginning is read says nothing more', () => {
    const folder = folderWith(
      Object.fromEntries(Object.entries(workshop).map(([path, text]) => [`build/${path}`, text])),
    );
    const { stdout, stderr } = shell(folder, '$GUSSET check build --all | head -1');
    expect([stdout, stderr]).toEqual(['A car made up for tests\n', '']);
  });

  it.each(['check build', 'check build --format sarif', 'calc', '--help', '--version', 'completion bash'])(
    'on a full disk is told: %s',
    (command) => {
      const folder = folderWith(
        Object.fromEntries(Object.entries(workshop).map(([path, text]) => [`build/${path}`, text])),
      );
      const { status, stderr } = shell(folder, `$GUSSET ${command} > /dev/full`);
      expect(stderr).toMatch(/no space left on device[^]*to do: /);
      expect(stderr).not.toMatch(/^\s+at .+:\d+:\d+/m);
      expect(status).toBe(3);
    },
  );

  it('in a file has all of it', () => {
    const folder = folderWith(
      Object.fromEntries(Object.entries(workshop).map(([path, text]) => [`build/${path}`, text])),
    );
    shell(folder, '$GUSSET check build --format json > all.json; $GUSSET check build --format json | cat > piped.json');
    const [all, piped] = ['all.json', 'piped.json'].map((name) => readFileSync(join(folder, name), 'utf8'));
    expect(JSON.parse(all!)).toEqual(JSON.parse(piped!));
  });
});
