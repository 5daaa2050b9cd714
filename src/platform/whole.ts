import { existsSync, linkSync, mkdirSync, readdirSync, renameSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { isAlive } from './alive.js';
import { MachineFailure, refusedBySystem, wordsOf } from './failure.js';
import { onInterrupt } from './interrupt.js';
import { remove } from './remove.js';

/** So that no two writings of one process share a name. */
let count = 0;

/**
 * Writes the file beside its final place and moves it there in one step: a failure or an interruption leaves the old file.
 * Throws MachineFailure if the disk refuses.
 */
export const writeFileWhole = (target: string, content: Uint8Array | string | readonly Uint8Array[]): Promise<void> =>
  replaceWhole(target, async (partial) => {
    const file = await open(partial, 'wx');
    try {
      if (Array.isArray(content)) for (const group of groups(content)) await file.writeFile(group);
      else await file.writeFile(content as Uint8Array | string);
      await file.sync();
    } finally {
      await file.close();
    }
  });

/** Pieces put together, so that there is not a call of the system for each: a megabyte or more, but for the last. */
function* groups(pieces: readonly Uint8Array[]): Generator<Uint8Array> {
  let group: Uint8Array[] = [];
  let length = 0;
  for (const piece of pieces) {
    group.push(piece);
    length += piece.length;
    if (length < 2 ** 20) continue;
    yield Buffer.concat(group);
    [group, length] = [[], 0];
  }
  yield Buffer.concat(group);
}

/**
 * The same for a file that must not be there yet: gives `false`, and leaves it as it is, where something of that name is.
 * Throws MachineFailure if the disk refuses.
 */
export async function writeNewFileWhole(target: string, content: Uint8Array | string): Promise<boolean> {
  const whole = join(dirname(target), `.${basename(target)}.${process.pid}-${count++}.new`);
  await writeFileWhole(whole, content);
  try {
    linkSync(whole, target);
    return true;
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'EEXIST') return false;
    // Some disks have no second names for a file.
    if (existsSync(target)) return false;
    renameSync(whole, target);
    return true;
  } finally {
    remove(whole);
  }
}

/**
 * Lets `fill` write into a new folder beside `target` and then puts it in the place of the old one: if `fill` throws or the
 * process is interrupted, the old folder stays and nothing of the new one does. Returns what `fill` returns.
 * `mayReplace` throws where what stands there is not to be replaced; it is asked before anything is written, and again at the
 * end. Throws MachineFailure if the disk refuses, or whatever `fill` or `mayReplace` throws.
 */
export async function writeFolderWhole<T>(
  target: string,
  fill: (folder: string) => Promise<T>,
  mayReplace: (target: string) => void,
): Promise<T> {
  mayReplace(target);
  return replaceWhole(target, async (partial) => {
    mkdirSync(partial);
    const result = await fill(partial);
    mayReplace(target);
    return result;
  });
}

async function replaceWhole<T>(target: string, fill: (partial: string) => Promise<T>): Promise<T> {
  const partial = join(dirname(target), `.${basename(target)}.${process.pid}-${count++}.partial`);
  const forget = onInterrupt(() => remove(partial));
  try {
    mkdirSync(dirname(target), { recursive: true });
    clearUp(target);
    const result = await fill(partial);
    exchange(partial, target);
    return result;
  } catch (cause) {
    if (existsSync(partial)) remove(partial);
    throw refusedBySystem(cause) ? cannotWrite(target, cause) : cause;
  } finally {
    forget();
  }
}

/** A folder cannot be renamed over another: the old one steps aside first. Synchronous, so that no signal comes between. */
function exchange(partial: string, target: string): void {
  const old = oldOf(target);
  const folderThere = statSync(target, { throwIfNoEntry: false })?.isDirectory() ?? false;
  if (folderThere) renameSync(target, old);
  try {
    renameSync(partial, target);
  } catch (cause) {
    if (folderThere) renameSync(old, target);
    throw cause;
  }
  remove(old);
}

/** Sets right what a process that was killed outright left: its partial outputs, and an old folder that stepped aside. */
function clearUp(target: string): void {
  const old = oldOf(target);
  if (existsSync(old)) {
    if (existsSync(target)) remove(old);
    else renameSync(old, target);
  }
  const start = `.${basename(target)}.`;
  for (const name of readdirSync(dirname(target))) {
    const pid = name.startsWith(start) ? /^(\d+)-\d+\.partial$/.exec(name.slice(start.length))?.[1] : undefined;
    if (pid !== undefined && !isAlive(Number(pid))) remove(join(dirname(target), name));
  }
}

const oldOf = (target: string): string => join(dirname(target), `.${basename(target)}.old`);

const cannotWrite = (target: string, cause: unknown): MachineFailure =>
  new MachineFailure({
    found: `${target} could not be written: ${wordsOf(cause)}`,
    expected: 'a folder that can be written, with space left, and no program that holds the old output open',
    todo: 'close the document in other programs, check space and permissions, and print again; the last good output is still there',
    cause,
  });
