import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname } from 'node:path';
import { isAlive } from './alive.js';
import { MachineFailure } from './failure.js';
import { onInterrupt } from './interrupt.js';

/**
 * Runs `work` while holding the lock file, so that two processes do not write one output at once. A lock whose process is
 * gone is taken over. Throws MachineFailure at once, without waiting, if another holds it.
 */
export async function withLock<T>(file: string, work: () => Promise<T>): Promise<T> {
  mkdirSync(dirname(file), { recursive: true });
  while (!taken(file)) {
    if (isForeign(file)) throw isNoLock(file);
    if (!isStale(file)) throw isHeld(file);
    removeStale(file);
  }
  const release = () => rmSync(file, { force: true });
  const forget = onInterrupt(release);
  try {
    return await work();
  } finally {
    release();
    forget();
  }
}

function taken(file: string): boolean {
  const holder = JSON.stringify({ pid: process.pid, host: hostname(), since: new Date().toISOString() });
  // Written beside it and linked to its name, the lock is never there without its holder.
  const written = `${file}.${process.pid}.new`;
  try {
    writeFileSync(written, holder);
    linkSync(written, file);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') return false;
    if (!withoutLinks.has(code ?? '')) throw error;
    return takenInOneWrite(file, holder);
  } finally {
    rmSync(written, { force: true });
  }
}

/** How file systems without hard links refuse one. */
const withoutLinks = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EINVAL', 'EMLINK', 'UNKNOWN']);

/** For a moment such a lock is empty, and counts as held (see {@link isStale}). */
function takenInOneWrite(file: string, holder: string): boolean {
  try {
    writeFileSync(file, holder, { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

interface Holder {
  pid: number;
  host: string;
  since: string;
}

/** Undefined if the lock is gone, half written, or none of ours. */
function holderOf(file: string): Holder | undefined {
  try {
    return holderIn(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}

function holderIn(text: string): Holder | undefined {
  try {
    const holder = JSON.parse(text) as Partial<Holder> | null;
    return Number.isInteger(holder?.pid) && (holder?.pid as number) > 0 ? (holder as Holder) : undefined;
  } catch {
    return undefined;
  }
}

/** A file of that name which is no lock: it is somebody's, and stays. */
function isForeign(file: string): boolean {
  try {
    const text = readFileSync(file, 'utf8');
    return text !== '' && holderIn(text) === undefined;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EISDIR';
  }
}

/** A process on another machine cannot be asked for: its lock counts. One without a holder may be in the writing. */
function isStale(file: string): boolean {
  const holder = holderOf(file);
  if (holder) return holder.host === hostname() && !isAlive(holder.pid);
  const written = statSync(file, { throwIfNoEntry: false })?.mtimeMs;
  // Of the future it is where the clock was set back.
  return written === undefined || Math.abs(Date.now() - written) > 5000;
}

/** Moves the lock aside before removing it: should another process have taken it over meanwhile, it is put back. */
function removeStale(file: string): void {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch {
    return; // Another process was quicker; the next try shows who holds it.
  }
  if (isStale(aside)) rmSync(aside, { force: true });
  else renameSync(aside, file);
}

const isNoLock = (file: string): MachineFailure =>
  new MachineFailure({
    found: `${file} is no lock of Gusset`,
    expected: 'that name free while the document is made',
    todo: 'name another output folder with --out, or move that file away',
  });

function isHeld(file: string): MachineFailure {
  const holder = holderOf(file);
  const who = holder ? `process ${holder.pid} on ${holder.host}, since ${holder.since}` : 'just begun';
  return new MachineFailure({
    found: `another print of this build is running (${who})`,
    expected: 'one print of a build at a time',
    todo: `wait until it has finished; if it is surely gone, remove ${file}`,
  });
}
