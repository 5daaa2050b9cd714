import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { viewState } from '../../src/app/view-state.js';
import { memory } from '../../src/project/memory.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

/** A machine that does other work too tells nothing about speed: these run with `npm run bench`. */
const timed = it.skipIf(process.env['GUSSET_TIMES'] === undefined);

/**
 * Speed as a person waits for it, on a machine that does nothing else: the processor's time of the best of several rounds,
 * for other work on the machine only makes it longer.
 */
async function best(rounds: number, work: (round: number) => unknown): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const from = process.cpuUsage();
    await work(round);
    const { user, system } = process.cpuUsage(from);
    times.push((user + system) / 1000);
  }
  return Math.min(...times);
}

/** One engine and one gearbox, and members and shafts over and over. */
function sixtyNotes(): string {
  const notes = Object.entries(workshop).filter(([path]) => /notes\/0[23]0/.test(path));
  const more = Array.from(
    { length: 56 },
    (_, i) => [`notes/${String(100 + i * 10)}-more.md`, notes[i % 2]![1]] as const,
  );
  return folderWith({ ...workshop, ...Object.fromEntries(more) });
}

const edited = (build: string, round: number): void => {
  const path = join(build, 'notes/020-crossmember.md');
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace(/wall: \{ value: 2\.\d+ mm/, `wall: { value: 2.${40 + round} mm`),
  );
};

timed('checks a build of sixty notes again in under 100 ms after one was edited', { timeout: 180_000 }, async () => {
  const build = sixtyNotes();
  const recall = memory();
  const first = await load(build, build, recall);
  expect('build' in first && first.build.notes.length).toBe(60);
  const time = await best(15, async (round) => {
    edited(build, round);
    expect('build' in (await load(build, build, recall))).toBe(true);
  });
  expect(time).toBeLessThan(100);
});

timed('makes the document of a build anew in under 300 ms after a note was edited', { timeout: 180_000 }, async () => {
  const build = folderWith(workshop);
  const state = viewState(build, 'submission', () => {});
  await state.look([]);
  const time = await best(10, async (round) => {
    edited(build, round);
    const before = state.shown();
    await state.look(['notes/020-crossmember.md']);
    expect(state.shown()).not.toBe(before);
  });
  expect(time).toBeLessThan(300);
});

const cli = fileURLToPath(new URL('../../dist/bundle/cli.js', import.meta.url));

timed(
  'says what it can do in under 150 ms, or in no more than three bare starts of the interpreter',
  { timeout: 60_000 },
  async () => {
    const quickest = (...args: string[]): number => {
      const times = Array.from({ length: 12 }, () => {
        const from = performance.now();
        execFileSync(process.execPath, args);
        return performance.now() - from;
      });
      return Math.min(...times);
    };
    expect(quickest(cli, '--help')).toBeLessThan(Math.max(150, 3 * quickest('-e', '0')));
  },
);
