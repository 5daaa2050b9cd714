import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { jurisdictions } from '../../src/project/vehicle.js';
import { gusset } from './run.js';

let before: string;
let folder: string;
beforeEach(() => {
  before = process.cwd();
  folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  process.chdir(folder);
});
afterEach(() => {
  process.chdir(before);
  rmSync(folder, { recursive: true, force: true });
});

it.each(Object.keys(jurisdictions))(
  'notes of all kinds that are not filled in yet can be checked and planned in %s',
  { timeout: 120_000 },
  async (state) => {
    await gusset('start', 'b');
    const build = readFileSync('b/build.md', 'utf8')
      .replace(/^( +)make:.*$/m, '$1make: Examplia')
      .replace(/^( +)model:.*$/m, '$1model: One')
      .replace(/^( +)built:.*$/m, '$1built: 1984-05')
      .replace(/^( +)registration:.*$/m, `$1registration: ${state}`);
    writeFileSync('b/build.md', build);
    for (const kind of kinds.keys()) expect((await gusset('note', 'b', kind)).err).toBe('');
    for (const command of ['check', 'plan']) {
      const { code, err } = await gusset(command, 'b');
      expect(err).not.toContain('Gusset itself failed');
      expect([err, code < 2]).toEqual(['', true]);
    }
  },
);
