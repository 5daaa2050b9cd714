import { constants, copyFileSync, existsSync, linkSync, lstatSync, mkdirSync, readdirSync, renameSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { isAlive } from './alive.js';
import { MachineFailure, refusedBySystem, wordsOf } from './failure.js';
import { onInterrupt } from './interrupt.js';
import { foreignIn, realFolder, refuseToReplace } from './own-output.js';
import { remove } from './remove.js';

/**
 * Writes the file beside its final place and moves it there in one step: a failure or an interruption leaves the old file.
 * Throws MachineFailure if the disk refuses.
 */
export const writeFileWhole = (target: string, content: Uint8Array | string | readonly Uint8Array[]): Promise<void> =>
  replaceWhole(target, (partial) => writeFile(partial, content), renameSync);

async function writeFile(path: string, content: Uint8Array | string | readonly Uint8Array[]): Promise<void> {
  const file = await open(path, 'wx');
  try {
    if (Array.isArray(content)) for (const group of groups(content)) await file.writeFile(group);
    else await file.writeFile(content as Uint8Array | string);
    await file.sync();
  } finally {
    await file.close();
  }
}

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
export const writeNewFileWhole = (target: string, content: Uint8Array | string): Promise<boolean> =>
  replaceWhole(target, (partial) => writeFile(partial, content), linkNew);

function linkNew(partial: string, target: string): boolean {
  try {
    linkSync(partial, target);
    return true;
  } catch (cause) {
    if (isThere(cause)) return false;
  }
  // Some disks have no second names for a file.
  try {
    copyFileSync(partial, target, constants.COPYFILE_EXCL);
    return true;
  } catch (cause) {
    if (isThere(cause)) return false;
    throw cause;
  }
}

const isThere = (cause: unknown): boolean => (cause as NodeJS.ErrnoException).code === 'EEXIST';

/**
 * Lets `fill` write into a new folder beside `target` and then puts it in the place of the old one: if `fill` throws or the
 * process is interrupted, the old folder stays and nothing of the new one does. Returns what `fill` returns.
 * Throws UsageError, before `fill` begins, if the old folder is none that may be replaced (see {@link refuseToReplace}),
 * MachineFailure if the disk refuses, or whatever `fill` throws.
 *
 * @param keep folders that must not be lost with the old one
 */
export async function writeFolderWhole<T>(
  target: string,
  fill: (folder: string) => Promise<T>,
  keep: readonly string[] = [],
): Promise<T> {
  const place = realFolder(target);
  return replaceWhole(
    place,
    (partial) => {
      refuseToReplace(place, keep, target);
      mkdirSync(partial);
      return fill(partial);
    },
    (partial, _, result) => {
      exchange(partial, place, target);
      return result;
    },
  );
}

let count = 0;

async function replaceWhole<T, R>(
  target: string,
  fill: (partial: string) => Promise<T>,
  put: (partial: string, target: string, filled: T) => R,
): Promise<R> {
  const partial = beside(target, `${process.pid}-${count++}.partial`);
  const forget = onInterrupt(() => remove(partial));
  try {
    mkdirSync(dirname(target), { recursive: true });
    clearUp(target);
    return put(partial, target, await fill(partial));
  } catch (cause) {
    throw refusedBySystem(cause) ? cannotWrite(target, cause) : cause;
  } finally {
    if (existsSync(partial)) remove(partial);
    forget();
  }
}

const beside = (target: string, ending: string): string => join(dirname(target), `.${basename(target)}.${ending}`);

/** A folder cannot be renamed over another: the old one steps aside first. Synchronous, so that no signal comes between. */
function exchange(partial: string, target: string, name: string): void {
  const old = beside(target, `${process.pid}-${count++}.old`);
  const folderThere = existsSync(target);
  if (folderThere) renameSync(target, old);
  try {
    // Something may have been put into it since it was looked at.
    refuseToReplace(old, [], name);
    renameSync(partial, target);
  } catch (cause) {
    if (folderThere) renameSync(old, target);
    throw cause;
  }
  remove(old);
}

/** Sets right what a process that was killed outright left: its partial outputs, and an old folder that stepped aside. */
function clearUp(target: string): void {
  const start = `.${basename(target)}.`;
  for (const name of readdirSync(dirname(target))) {
    const [, pid, what] = (name.startsWith(start) && /^(\d+)-\d+\.(partial|old)$/.exec(name.slice(start.length))) || [];
    if (pid === undefined || isAlive(Number(pid))) continue;
    const left = join(dirname(target), name);
    if (what === 'partial') remove(left);
    else if (!existsSync(target)) renameSync(left, target);
    else if (lstatSync(left).isDirectory() && foreignIn(left) === undefined) remove(left);
  }
}

const cannotWrite = (target: string, cause: unknown): MachineFailure =>
  new MachineFailure({
    found: `${target} could not be written: ${wordsOf(cause)}`,
    expected: 'a folder that can be written, with space left, and no program that holds the old output open',
    todo: 'close the document in other programs, check space and permissions, and print again; the last good output is still there',
    cause,
  });
