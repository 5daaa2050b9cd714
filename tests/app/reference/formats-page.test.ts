import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { formatsPage } from '../../../src/app/reference/formats-page.js';
import { root } from '../../../src/app/reference/generate.js';
import { format } from '../../../src/project/format.js';

const page = formatsPage([
  { since: 2, of: 'brakes', path: ['discs', '[]', 'bore'], now: { key: 'size' } },
  { since: 2, of: 'build', path: ['hue'], now: { gone: 'nothing rests on it' } },
  { since: 2, of: 'note', path: ['load'], now: { words: { empty: 'unladen', full: 'laden' } } },
]);

it('lists every form of JSON that the code makes, and no other', () => {
  const source = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(root, 'src', file), 'utf8'))
    .join('\n');
  const made = new Set([...source.matchAll(/\bjsonForm\('(\w+)'\)/g)].map((m) => m[1]));
  const told = new Set(
    [...page.matchAll(/`gusset-(\w+)\/(\d+)` \|/g)].map((m) => (Number(m[2]) === format ? m[1] : 'stale')),
  );
  expect(told).toEqual(made);
  expect(made.size).toBeGreaterThan(5);
  // A form that is written out would keep its number when the format rises.
  expect(source.match(/'gusset-\w+\/\d+'/g)).toBeNull();
});

it('lists what is obsolete with what stands for it now', () => {
  expect(page).toContain('| 2 | brakes | `discs[].bore` | `size` |');
  expect(page).toContain('| 2 | `build.md` | `hue` | no longer read: nothing rests on it |');
  expect(page).toContain(
    '| 2 | all notes | `load`: `empty` | `unladen` |\n| 2 | all notes | `load`: `full` | `laden` |',
  );
});
