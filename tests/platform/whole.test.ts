import { type ChildProcess, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { MachineFailure } from '../../src/platform/failure.js';
import { withLock } from '../../src/platform/lock.js';
import { writeFileWhole, writeFolderWhole, writeNewFileWhole } from '../../src/platform/whole.js';
import { runInChild, scratch, until } from '../print/fixtures.js';
import { written } from './written.js';

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

describe('an output written whole', () => {
  test('replaces the old file and folder, and leaves nothing beside them', async () => {
    const folder = scratch();
    await writeFileWhole(join(folder, 'new/a.txt'), 'first');
    await writeFileWhole(join(folder, 'new/a.txt'), Buffer.from('second'));
    const result = await writeFolderWhole(join(folder, 'out'), async (partial) => {
      written(partial, { one: '1' });
      return 'done';
    });
    await writeFolderWhole(join(folder, 'out'), async (partial) => written(partial, { two: '2' }));
    expect(result).toBe('done');
    expect(readFileSync(join(folder, 'new/a.txt'), 'utf8')).toBe('second');
    expect(readdirSync(join(folder, 'out'))).toEqual(['manifest.json', 'two']);
    expect(readdirSync(folder).sort()).toEqual(['new', 'out']);
    expect(readdirSync(join(folder, 'new'))).toEqual(['a.txt']);
  });

  test('stays as it was if the filling fails', async () => {
    const folder = scratch();
    await writeFolderWhole(join(folder, 'out'), async (partial) => written(partial, { good: '' }));
    const failing = writeFolderWhole(join(folder, 'out'), async (partial) => {
      writeFileSync(join(partial, 'half'), '');
      throw new Error('no more');
    });
    await expect(failing).rejects.toThrow('no more');
    expect(readdirSync(join(folder, 'out'))).toEqual(['good', 'manifest.json']);
    expect(readdirSync(folder)).toEqual(['out']);
  });

  test.each(['SIGINT', 'SIGTERM'] as const)(
    'stays as it was upon %s, and the process ends by that signal',
    async (signal) => {
      const folder = scratch();
      written(join(folder, 'out'), { good: '' });
      const child = runInChild(
        'platform/whole.js',
        `
      await writeFolderWhole(${JSON.stringify(join(folder, 'out'))}, async (partial) => {
        (await import('node:fs')).writeFileSync(partial + '/half', '');
        await new Promise((resolve) => setTimeout(resolve, 30_000));
      });`,
        'writeFolderWhole',
      );
      await until(() => readdirSync(folder).length === 2);
      expect(await endedBy(child, signal)).toBe(signal);
      expect(readdirSync(folder)).toEqual(['out']);
      expect(readdirSync(join(folder, 'out'))).toEqual(['good', 'manifest.json']);
    },
  );

  test('is set right after a process that was killed between the two renames, and its leavings go', async () => {
    const folder = scratch();
    written(join(folder, `.out.${gonePid()}-1.old`), { good: '' });
    mkdirSync(join(folder, `.out.${gonePid()}-0.partial`));
    mkdirSync(join(folder, `.out.${process.ppid}-0.partial`));
    await expect(
      writeFolderWhole(join(folder, 'out'), async () => {
        throw new Error('stop');
      }),
    ).rejects.toThrow('stop');
    expect(readdirSync(join(folder, 'out'))).toEqual(['good', 'manifest.json']);
    expect(readdirSync(folder).sort()).toEqual([`.out.${process.ppid}-0.partial`, 'out']);
  });

  test('goes without what others have beside it, however that is called', async () => {
    const folder = scratch();
    const names = ['.a.md.old', '.a.md.new', '.out.old', '.a.md.12', '.a.md.x-1.partial'];
    for (const name of names) writeFileSync(join(folder, name), 'mine');
    mkdirSync(join(folder, `.out.${gonePid()}-0.old`));
    writeFileSync(join(folder, readdirSync(folder).find((name) => /-0\.old$/.test(name))!, 'mine'), '');
    written(join(folder, 'out'), { good: '' });
    const before = readdirSync(folder);
    await writeFileWhole(join(folder, 'a.md'), 'x');
    expect(await writeNewFileWhole(join(folder, 'b.md'), 'x')).toBe(true);
    await writeFolderWhole(join(folder, 'out'), async (partial) => written(partial, { good: '2' }));
    expect(readdirSync(folder).sort()).toEqual([...before, 'a.md', 'b.md'].sort());
  });

  test('is no file in the place of a folder', async () => {
    const folder = scratch();
    mkdirSync(join(folder, 'a.md'));
    await expect(writeFileWhole(join(folder, 'a.md'), 'x')).rejects.toBeInstanceOf(MachineFailure);
    expect(readdirSync(folder)).toEqual(['a.md']);
  });

  test('is a new file for one alone of many who write at once', async () => {
    const file = join(scratch(), 'a.jpg');
    const made = await Promise.all(Array.from({ length: 20 }, (_, i) => writeNewFileWhole(file, `${i}`)));
    expect(made.filter(Boolean)).toHaveLength(1);
    expect(readFileSync(file, 'utf8')).toBe(String(made.indexOf(true)));
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

  test('leaves a file of that name that is no lock, and takes nothing then', async () => {
    const file = join(scratch(), 'yarn.lock');
    for (const text of ['# of a package manager', '{}', 'null', '[1]']) {
      writeFileSync(file, text);
      utimesSync(file, 0, 0);
      await expect(withLock(file, async () => 'no')).rejects.toThrow(/is no lock of Gusset/);
      expect(readFileSync(file, 'utf8')).toBe(text);
    }
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
