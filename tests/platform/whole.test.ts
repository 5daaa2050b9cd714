import { type ChildProcess, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { MachineFailure } from '../../src/platform/failure.js';
import { withLock } from '../../src/platform/lock.js';
import { writeFileWhole, writeFolderWhole } from '../../src/platform/whole.js';
import { runInChild, scratch, until } from '../print/fixtures.js';

/** What it gives, or nothing where it throws. */
function attempt<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}

/** The id of a process that has just ended. */
const gonePid = () => spawnSync(process.execPath, ['-e', '']).pid;

const anything = () => {};

describe('an output written whole', () => {
  test('is not put in the place of what may not be replaced, at the beginning or at the end', async () => {
    for (const refusesAt of [1, 2]) {
      const folder = scratch();
      mkdirSync(join(folder, 'out'));
      writeFileSync(join(folder, 'out/mine'), '');
      let asked = 0;
      const writing = writeFolderWhole(
        join(folder, 'out'),
        async (partial) => writeFileSync(join(partial, 'new'), ''),
        () => {
          if (++asked === refusesAt) throw new Error('not yours');
        },
      );
      await expect(writing).rejects.toThrow('not yours');
      expect(readdirSync(folder)).toEqual(['out']);
      expect(readdirSync(join(folder, 'out'))).toEqual(['mine']);
    }
  });

  test('replaces the old file and folder, and leaves nothing beside them', async () => {
    const folder = scratch();
    await writeFileWhole(join(folder, 'new/a.txt'), 'first');
    await writeFileWhole(join(folder, 'new/a.txt'), Buffer.from('second'));
    const result = await writeFolderWhole(
      join(folder, 'out'),
      async (partial) => {
        writeFileSync(join(partial, 'one'), '1');
        return 'done';
      },
      anything,
    );
    await writeFolderWhole(join(folder, 'out'), async (partial) => writeFileSync(join(partial, 'two'), '2'), anything);
    expect(result).toBe('done');
    expect(readFileSync(join(folder, 'new/a.txt'), 'utf8')).toBe('second');
    expect(readdirSync(join(folder, 'out'))).toEqual(['two']);
    expect(readdirSync(folder).sort()).toEqual(['new', 'out']);
    expect(readdirSync(join(folder, 'new'))).toEqual(['a.txt']);
  });

  test('stays as it was if the filling fails', async () => {
    const folder = scratch();
    await writeFolderWhole(join(folder, 'out'), async (partial) => writeFileSync(join(partial, 'good'), ''), anything);
    const failing = writeFolderWhole(
      join(folder, 'out'),
      async (partial) => {
        writeFileSync(join(partial, 'half'), '');
        throw new Error('no more');
      },
      anything,
    );
    await expect(failing).rejects.toThrow('no more');
    expect(readdirSync(join(folder, 'out'))).toEqual(['good']);
    expect(readdirSync(folder)).toEqual(['out']);
  });

  test.each(['SIGINT', 'SIGTERM'] as const)(
    'stays as it was upon %s, and the process ends by that signal',
    async (signal) => {
      const folder = scratch();
      mkdirSync(join(folder, 'out'));
      writeFileSync(join(folder, 'out/good'), '');
      const child = runInChild(
        'platform/whole.js',
        `
      await writeFolderWhole(${JSON.stringify(join(folder, 'out'))}, async (partial) => {
        (await import('node:fs')).writeFileSync(partial + '/half', '');
        await new Promise((resolve) => setTimeout(resolve, 30_000));
      }, () => {});`,
        'writeFolderWhole',
      );
      await until(() => readdirSync(folder).length === 2);
      expect(await endedBy(child, signal)).toBe(signal);
      expect(readdirSync(folder)).toEqual(['out']);
      expect(readdirSync(join(folder, 'out'))).toEqual(['good']);
    },
  );

  test('is set right after a process that was killed between the two renames, and its leavings go', async () => {
    const folder = scratch();
    mkdirSync(join(folder, '.out.old'));
    writeFileSync(join(folder, '.out.old/good'), '');
    mkdirSync(join(folder, `.out.${gonePid()}-0.partial`));
    mkdirSync(join(folder, `.out.${process.ppid}-0.partial`));
    await expect(
      writeFolderWhole(
        join(folder, 'out'),
        async () => {
          throw new Error('stop');
        },
        anything,
      ),
    ).rejects.toThrow('stop');
    expect(readdirSync(join(folder, 'out'))).toEqual(['good']);
    expect(readdirSync(folder).sort()).toEqual([`.out.${process.ppid}-0.partial`, 'out']);
  });

  test('tells what to do if the disk refuses', async () => {
    const folder = scratch();
    writeFileSync(join(folder, 'file'), '');
    const failure = await writeFileWhole(join(folder, 'file/inside.pdf'), 'x').catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(MachineFailure);
    expect((failure as MachineFailure).message).toMatch(/could not be written[\s\S]*to do: /);
    if (process.getuid?.() !== 0) {
      chmodSync(folder, 0o500);
      await expect(writeFileWhole(join(folder, 'a.pdf'), 'x')).rejects.toBeInstanceOf(MachineFailure);
      chmodSync(folder, 0o700);
    }
  });
});

describe('the lock', () => {
  test('keeps a second print out while the first runs, and is gone afterwards', async () => {
    const file = join(scratch(), 'out/.lock');
    await withLock(file, async () => {
      const refused = await withLock(file, async () => 'twice').catch((error: unknown) => error);
      expect(refused).toBeInstanceOf(MachineFailure);
      expect((refused as MachineFailure).found).toContain(`process ${process.pid}`);
      expect(existsSync(file)).toBe(true);
    });
    expect(existsSync(file)).toBe(false);
    await expect(
      withLock(file, async () => {
        throw new Error('no');
      }),
    ).rejects.toThrow('no');
    expect(await withLock(file, async () => 'again')).toBe('again');
  });

  test('is taken over from a process that is gone, or an old one that nobody can read', async () => {
    const folder = scratch();
    const file = join(folder, '.lock');
    writeFileSync(file, JSON.stringify({ pid: gonePid(), host: hostname(), since: '2026-01-01T00:00:00Z' }));
    expect(await withLock(file, async () => 'taken over')).toBe('taken over');
    expect(readdirSync(folder)).toEqual([]);
  });

  test('holds for a process on another machine, and for one that is just being written', async () => {
    const file = join(scratch(), '.lock');
    writeFileSync(file, JSON.stringify({ pid: gonePid(), host: 'another-machine', since: '2026-01-01T00:00:00Z' }));
    await expect(withLock(file, async () => 'no')).rejects.toThrow(/another-machine/);
    writeFileSync(file, '');
    await expect(withLock(file, async () => 'no')).rejects.toThrow(/just begun/);
  });

  test('is never there without its holder', async () => {
    const file = join(scratch(), '.lock');
    const child = runInChild(
      'platform/lock.js',
      `for (;;) await withLock(${JSON.stringify(file)}, async () => {});`,
      'withLock',
    );
    onTestFinished(() => void child.kill('SIGKILL'));
    await until(() => existsSync(file));
    let held = 0;
    for (const began = performance.now(); performance.now() - began < 1000; ) {
      const text = attempt(() => readFileSync(file, 'utf8'));
      if (text === undefined) continue;
      held += 1;
      expect(text).toContain(`"pid":${child.pid},`);
    }
    expect(held).toBeGreaterThan(20);
  });

  test('is released by an interrupted process', async () => {
    const file = join(scratch(), '.lock');
    const child = runInChild(
      'platform/lock.js',
      `await withLock(${JSON.stringify(file)}, () => new Promise((resolve) => setTimeout(resolve, 30_000)));`,
      'withLock',
    );
    await until(() => existsSync(file));
    await expect(withLock(file, async () => 'no')).rejects.toThrow(`process ${child.pid}`);
    await endedBy(child, 'SIGINT');
    expect(existsSync(file)).toBe(false);
  });
});

const endedBy = (child: ChildProcess, signal: NodeJS.Signals) =>
  new Promise<NodeJS.Signals | null>((resolve) => {
    child.on('exit', (_code, by) => resolve(by));
    child.kill(signal);
  });
