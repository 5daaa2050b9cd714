import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const { bin, name, version } = JSON.parse(readFileSync('package.json', 'utf8')) as {
  bin: Record<string, string>;
  name: string;
  version: string;
};

describe('the program as it was built', () => {
  it.skipIf(process.platform === 'win32')('runs by its own name, as npx starts it', () => {
    const file = fileURLToPath(new URL(`../../${bin['gusset']}`, import.meta.url));
    expect(execFileSync(file, ['--version'], { encoding: 'utf8' })).toBe(`${name} ${version}\n`);
  });
});
