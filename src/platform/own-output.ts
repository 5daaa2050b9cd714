import { createHash } from 'node:crypto';
import { lstatSync, readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { UsageError } from './usage.js';

/** Which folder an output may take the place of. Whatever replaces or removes a folder asks here first. */

/** The list of an output's files, with their digests, that lies among them. */
export const manifestName = 'manifest.json';

/** What systems leave in a folder that somebody looked at. */
const litter = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);

const anotherFolder = 'a folder that is new or empty, or holds an earlier document and nothing else';

/**
 * The folder itself, where its name is a link to one. Throws UsageError where something is there, or on the way to it,
 * that is no folder.
 */
export function realFolder(target: string): string {
  const place = resolve(target);
  for (let at = place; ; at = dirname(at)) {
    const there = entryAt(at);
    if (!there && dirname(at) !== at) continue;
    if (isFolder(at)) return at === place ? realpathSync(place) : place;
    throw new UsageError(
      `found ${there?.isSymbolicLink() ? 'a link that leads to no folder' : 'a file'} at ${at === place ? target : at}, expected ${anotherFolder}; name another one`,
    );
  }
}

function entryAt(path: string): Stats | undefined {
  try {
    return lstatSync(path);
  } catch {
    return undefined;
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/**
 * Throws UsageError if the folder must not be replaced: it is or holds the working folder or one of `keep`, or holds
 * anything but an earlier output as it was written. Nothing at that place is fine.
 */
export function refuseToReplace(target: string, keep: readonly string[] = [], name = target): void {
  const folder = statSync(target, { bigint: true, throwIfNoEntry: false });
  if (!folder) return;
  for (const kept of [process.cwd(), ...keep])
    if (upwards(kept).some((at) => isSame(at, folder)))
      throw new UsageError(
        `found ${name}, which is or holds ${kept === process.cwd() ? 'the working folder' : kept}, expected ${anotherFolder}; name another one, nothing was changed`,
      );
  const foreign = foreignIn(target);
  if (foreign !== undefined)
    throw new UsageError(
      `found ${foreign} in ${name}, expected ${anotherFolder}; name another one, or move it away to keep it; nothing was changed`,
    );
}

/** Something in a folder that is no output of this program, in words; undefined where all of it is, or where it is empty. */
export function foreignIn(folder: string): string | undefined {
  const entries = readdirSync(folder, { withFileTypes: true }).filter((entry) => !litter.has(entry.name));
  if (entries.length === 0) return undefined;
  const listed = outputsOf(folder);
  for (const entry of entries) {
    if (entry.name === '.git') return 'a git repository';
    if (!entry.isFile()) return `${entry.isDirectory() ? 'the folder' : 'the link'} ${entry.name}`;
    if (!listed) return `${entry.name} and no ${manifestName} of Gusset`;
    if (entry.name === manifestName) continue;
    const sha256 = listed.get(entry.name);
    if (sha256 === undefined) return `${entry.name}, which Gusset did not write,`;
    if (digestOf(join(folder, entry.name)) !== sha256) return `${entry.name}, which was changed after it was written,`;
  }
  return undefined;
}

const digestOf = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');

/** Digests of the files that the manifest of a folder lists, by name; of whatever format it is. */
function outputsOf(folder: string): ReadonlyMap<string, string> | undefined {
  try {
    const { form, outputs } = JSON.parse(readFileSync(join(folder, manifestName), 'utf8')) as {
      form: string;
      outputs: { path: string; sha256: string }[];
    };
    if (!/^gusset-manifest\/\d+$/.test(form)) return undefined;
    return new Map(outputs.map(({ path, sha256 }) => [path, sha256]));
  } catch {
    return undefined;
  }
}

/** A place and all folders above it, links followed. */
function upwards(place: string): string[] {
  const all: string[] = [];
  for (let at = realpathSync(place); ; at = dirname(at)) {
    all.push(at);
    if (dirname(at) === at) return all;
  }
}

/** By identity and not by name: the same folder may have several. */
function isSame(path: string, { dev, ino }: { dev: bigint; ino: bigint }): boolean {
  const other = statSync(path, { bigint: true, throwIfNoEntry: false });
  return other?.dev === dev && other.ino === ino;
}
