import { existsSync, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, join, normalize, relative, sep } from 'node:path';
import { near } from '../platform/near.js';
import type { BuildFile } from './model.js';

/** Access to a build's folder that never leaves it, links included. */

const textLimit = 4 * 1024 * 1024;

export type Found =
  | { ok: true; file: BuildFile }
  | { ok: false; why: 'missing' | 'outside' | 'not-a-file' | 'case'; near?: string | undefined };

/** The names in a folder. */
export type Listing = (folder: string) => readonly string[];

/** Reads each folder once: for looking up many files at one moment. */
export function listingOnce(): Listing {
  const known = new Map<string, readonly string[]>();
  return (folder) => {
    const names = known.get(folder) ?? readdirSync(folder);
    known.set(folder, names);
    return names;
  };
}

/** Finds a file named in a note. `folder` (`photos`, `papers`) is tried first, then the name as a path from the build's folder. */
export function findFile(directory: string, name: string, folder: string, listing: Listing = readdirSync): Found {
  const wanted = name.replaceAll('\\', '/');
  if (wanted.includes('\0') || isAbsolute(wanted) || /^[a-z]:/i.test(wanted)) return { ok: false, why: 'outside' };
  const candidates = [`${folder}/${wanted}`, wanted].map((p) => normalize(p).split(sep).join('/'));
  if (candidates.every((p) => p.startsWith('../') || p === '..')) return { ok: false, why: 'outside' };
  for (const path of candidates) {
    if (path.startsWith('../')) continue;
    const absolute = join(directory, path);
    if (!existsSync(absolute)) continue;
    const real = realpathSync(absolute);
    const inside = relative(realpathSync(directory), real);
    if (inside.startsWith('..') || isAbsolute(inside)) return { ok: false, why: 'outside' };
    const stat = statSync(real);
    if (!stat.isFile()) return { ok: false, why: 'not-a-file' };
    if (!spelledSo(directory, path, listing)) return { ok: false, why: 'case', near: path };
    return { ok: true, file: { path, absolute, bytes: stat.size } };
  }
  return { ok: false, why: 'missing', near: nearestFile(directory, folder, wanted) };
}

/** On file systems that ignore case a name must still be written as the file is, or the build breaks elsewhere. */
function spelledSo(directory: string, path: string, listing: Listing): boolean {
  let at = directory;
  for (const part of path.split('/')) {
    if (part === '.' || part === '') continue;
    if (!listing(at).includes(part)) return false;
    at = join(at, part);
  }
  return true;
}

function nearestFile(directory: string, folder: string, name: string): string | undefined {
  const names = listFolder(directory, folder);
  const lower = name.toLowerCase();
  return names.find((n) => n.toLowerCase() === lower) ?? near(name, names)[0];
}

/** Names of the plain files of a folder of the build, sorted; none where there is no such folder. */
export function listFolder(directory: string, folder: string): string[] {
  const absolute = join(directory, folder);
  if (!existsSync(absolute) || !lstatSync(absolute).isDirectory()) return [];
  return readdirSync(absolute, { withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
    .map((entry) => entry.name)
    .sort();
}

/** Text of a file, or why it cannot be read as text. */
export function readText(
  absolute: string,
):
  | { ok: true; text: string }
  | { ok: false; code: 'file-unreadable' | 'file-too-large' | 'file-encoding'; found: string; expected: string } {
  try {
    const stat = lstatSync(absolute);
    if (!stat.isFile())
      return {
        ok: false,
        code: 'file-unreadable',
        found: 'something that is not a plain file',
        expected: 'a plain text file',
      };
    if (stat.size > textLimit)
      return {
        ok: false,
        code: 'file-too-large',
        found: `${(stat.size / 1e6).toFixed(1)} MB of text`,
        expected: `at most ${textLimit / 1024 / 1024} MB`,
      };
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: false }).decode(readFileSync(absolute));
    if (text.includes('\0'))
      return { ok: false, code: 'file-encoding', found: 'NUL characters', expected: 'plain text in UTF-8' };
    return { ok: true, text };
  } catch (error) {
    if (error instanceof TypeError)
      return {
        ok: false,
        code: 'file-encoding',
        found: 'bytes that are not UTF-8',
        expected: 'a text file saved as UTF-8',
      };
    const code = (error as NodeJS.ErrnoException).code;
    return {
      ok: false,
      code: 'file-unreadable',
      found: code === 'EACCES' ? 'a file that may not be read' : `a file that cannot be read (${code ?? 'unknown'})`,
      expected: 'a readable text file',
    };
  }
}
