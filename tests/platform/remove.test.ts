import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { remove } from '../../src/platform/remove.js';
import { scratch } from '../print/fixtures.js';

it('removes a file, a folder and what is not there', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'a/b'), { recursive: true });
  writeFileSync(join(folder, 'a/b/c'), '');
  for (const path of ['a/b/c', 'a', 'a']) remove(join(folder, path));
  expect(existsSync(join(folder, 'a'))).toBe(false);
});

it.skipIf(process.platform === 'win32')('removes a folder into which something is still written', async () => {
  const folder = join(scratch(), 'full');
  mkdirSync(folder);
  const writer = spawn('bash', ['-c', 'cd "$0"; echo; for ((i = 0; i < 3000; i++)); do : > $i || exit; done', folder], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  await once(writer.stdout, 'data');
  remove(folder);
  await once(writer, 'close');
  expect(existsSync(folder)).toBe(false);
});
