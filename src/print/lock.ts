import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname } from 'node:path';
import { isAlive } from './alive.js';
import { MachineFailure } from './failure.js';
import { onInterrupt } from './interrupt.js';

interface Holder {
  pid: number;
  host: string;
  since: string;
}

/**
 * Runs `work` while holding the lock file, so that two processes do not write one output at once. A lock whose process is
 * gone is taken over. Throws MachineFailure at once, without waiting, if another process holds it.
 */
export async function withLock<T>(file: string, work: () => Promise<T>): Promise<T> {
  mkdirSync(dirname(file), { recursive: true });
  while (!taken(file)) {
    const holder = holderOf(file);
    if (holder && !isGone(holder)) throw isHeld(file, holder);
    if (holder) removeStale(file);
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

/** The lock appears with its content in one step: a second file is linked to its name. */
function taken(file: string): boolean {
  const mine = `${file}.${process.pid}`;
  const content: Holder = { pid: process.pid, host: hostname(), since: new Date().toISOString() };
  writeFileSync(mine, JSON.stringify(content));
  try {
    linkSync(mine, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    return false;
  } finally {
    rmSync(mine, { force: true });
  }
}

/** Undefined if the lock went meanwhile. A lock that cannot be understood belongs to nobody. */
function holderOf(file: string): Holder | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Holder;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? undefined : { pid: 0, host: hostname(), since: 'an unknown time' };
  }
}

const isGone = ({ pid, host }: Holder): boolean => host === hostname() && (pid === 0 || !isAlive(pid));

/** Moves the lock aside before removing it: if it turns out that somebody took it over first, it is put back. */
function removeStale(file: string): void {
  const aside = `${file}.${process.pid}.stale`;
  try {
    renameSync(file, aside);
    const holder = holderOf(aside);
    if (holder && !isGone(holder)) linkSync(aside, file);
  } catch {
    // Another process was quicker: the next try shows who holds it.
  } finally {
    rmSync(aside, { force: true });
  }
}

const isHeld = (file: string, { pid, host, since }: Holder): MachineFailure =>
  new MachineFailure({
    found: `another print of this build is running (process ${pid} on ${host}, since ${since})`,
    expected: 'one print of a build at a time',
    todo: `wait until it has finished; if that process is surely gone, remove ${file}`,
  });
