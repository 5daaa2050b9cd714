import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { follow } from '../../src/view/follow.js';
import { until } from '../commands/running.js';
import { folderWith } from '../project/scratch.js';

async function followed(saved: (paths: string[]) => Promise<void> | void = () => {}) {
  const folder = join(folderWith({ 'x/build.md': 'a', 'x/notes/010-a.md': 'a', 'x/notes/020-b.md': 'a' }), 'x');
  const told: string[][] = [];
  const failures: Error[] = [];
  const following = await follow(
    folder,
    async (paths) => (told.push(paths), saved(paths)),
    (failure) => failures.push(failure),
  );
  onTestFinished(() => following.close());
  const seen = (path: string, from = 0) =>
    until(
      () => told.slice(from).flat().includes(path),
      () => `${path} among ${JSON.stringify(told)}`,
      45_000,
    );
  const write = (path: string, text: string) => writeFileSync(join(folder, path), text);
  return { folder, told, failures, following, seen, write };
}

it('tells what is saved, comes and goes, at once after it began and however quickly it follows', async () => {
  const { folder, told, seen, write, failures } = await followed();
  write('notes/010-a.md', 'b');
  await seen('notes/010-a.md');
  for (let i = 0; i < 8; i += 1) {
    const from = told.length;
    write('notes/010-a.md', `c${'c'.repeat(i)}`);
    await seen('notes/010-a.md', from);
  }
  mkdirSync(join(folder, 'queries'));
  write('queries/01-a.md', 'a');
  await seen('queries/01-a.md');
  rmSync(join(folder, 'notes/020-b.md'));
  await seen('notes/020-b.md');
  write('../limits.yaml', 'figures: []');
  await seen('../limits.yaml');
  write('limits.yaml', 'figures: []');
  await seen('limits.yaml');
  expect(failures).toEqual([]);
});

it('sees each of several saves by an editor that writes beside the file and renames', async () => {
  const { folder, told, seen, write } = await followed();
  for (let i = 0; i < 4; i += 1) {
    const from = told.length;
    write('notes/.010-a.md.part', `saved ${i}`);
    renameSync(join(folder, 'notes/.010-a.md.part'), join(folder, 'notes/010-a.md'));
    await seen('notes/010-a.md', from);
  }
});

it('passes over what editors and systems leave for a moment, and what lies beside the build', async () => {
  const { told, seen, write } = await followed();
  for (const path of [
    'notes/.010-a.md.swp',
    'notes/010-a.md~',
    'notes/#010-a.md#',
    'notes/4913',
    '.DS_Store',
    'notes/a.tmp',
    '../other.md',
  ])
    write(path, 'x');
  write('notes/010-a.md', 'b');
  await seen('notes/010-a.md');
  expect(told.flat()).toEqual(['notes/010-a.md']);
});

it('never runs two looks at once, and misses nothing that is saved during one', async () => {
  let running = 0;
  const { told, seen, write } = await followed(async () => {
    expect(++running).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 150));
    running -= 1;
  });
  write('notes/010-a.md', 'b');
  await seen('notes/010-a.md');
  write('notes/020-b.md', 'b');
  await seen('notes/020-b.md');
  write('notes/020-b.md', 'cc');
  await seen('notes/020-b.md', told.length);
});

it('tells a look that failed, and goes on', async () => {
  let fails = true;
  const { failures, seen, write, told } = await followed(() => {
    if (fails) throw new Error('no');
  });
  write('notes/010-a.md', 'b');
  await until(
    () => failures.length === 1,
    () => 'the failure',
  );
  fails = false;
  const from = told.length;
  write('notes/010-a.md', 'cc');
  await seen('notes/010-a.md', from);
});
