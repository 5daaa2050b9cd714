import { closeSync, type Dirent, existsSync, lstatSync, openSync, readdirSync, readSync } from 'node:fs';
import { join, posix } from 'node:path';
import type { Problem } from './problem.js';

/** What lies in a build and is not read: an error where it looks like something that was typed to be read. */

/** Something of the folders of a build that nothing reads and no note names. */
export interface Unread {
  /** Relative to the build's folder. */
  path: string;
  /** What it is, in words. */
  what: string;
}

const folders = ['notes', 'queries', 'photos', 'papers'] as const;

/** Endings under which programs save Markdown. */
const markdown = /\.(?:md|markdown|mdown|mkdn?|mdwn|mdx?)$/i;
/** As editors name the earlier state of a file. */
const backup = /(?:~|\.(?:bak|old|orig|rej|save|sw[a-p]|tmp)|^#.*#)$/i;
/** Files of systems and of git, which nobody typed. */
const ofSystems = /^(?:thumbs\.db|desktop\.ini|\._.*|\.(?:ds_store|gitkeep|gitignore|gitattributes|keep))$/i;
const limitsName = /^limits\.(?:ya?ml|json|txt|yaml\.txt)$/i;
const limitsBeside = /^limits\.ya?ml$/i;
const buildName = /^build\.(?:md|markdown|mdown|txt|md\.txt)$/i;
/** How the folders of what is typed are mistyped. */
const misnamed: readonly (readonly [RegExp, (typeof folders)[number]])[] = [
  [/^notes?$/i, 'notes'],
  [/^quer(?:y|ies)$/i, 'queries'],
];

/**
 * Compares what lies in a build with what was read. `read` are the paths that were read or that a note names, relative to
 * the build's folder; `shown` is how messages name a path.
 */
export function unreadFiles(
  directory: string,
  read: ReadonlySet<string>,
  shown: (path: string) => string,
): { problems: Problem[]; unread: Unread[] } {
  const problems: Problem[] = [];
  const unread: Unread[] = [];
  const refuse = (path: string, found: string, hint: string) =>
    problems.push({
      code: 'file-unread',
      file: shown(path),
      line: 0,
      column: 0,
      found,
      expected: 'that everything that was typed is read',
      hint,
    });

  const limits = (path: string) =>
    refuse(path, `\`${posix.basename(path)}\`, which is not read`, 'name it `limits.yaml`, or put it elsewhere');
  for (const { name } of entriesOf(join(directory, '..')))
    if (limitsBeside.test(name) && name !== 'limits.yaml') limits(`../${name}`);
  for (const { name } of entriesOf(directory)) atRoot(name);

  function atRoot(name: string): void {
    if (limitsName.test(name) && name !== 'limits.yaml') limits(name);
    if (buildName.test(name) && name !== 'build.md')
      refuse(
        name,
        `\`${name}\` beside \`build.md\`, which is not read`,
        'put what it says into `build.md`, or put it elsewhere',
      );
    const [, meant] = misnamed.find(([pattern]) => pattern.test(name)) ?? [];
    if (meant !== undefined && name !== meant && holdsAnything(join(directory, name)))
      refuse(name, `\`${name}\`, which is not read`, `name it \`${meant}\`, or move what it holds there`);
    if (!read.has(name) && name !== 'build.md' && isTyped(join(directory, name)))
      refuse(name, `\`${name}\`, which looks like a note and is not read`, 'move it into `notes/`');
  }

  for (const folder of folders) {
    const at = join(directory, folder);
    const there = lstatSync(at, { throwIfNoEntry: false });
    if (there && !there.isDirectory())
      refuse(folder, `\`${folder}\`, which is ${kindOf(there)}`, 'make it a folder of the build with the files in it');
    else look(folder, folder === 'notes' || folder === 'queries');
  }

  function look(folder: string, typed: boolean): void {
    for (const entry of entriesOf(join(directory, folder))) {
      const path = `${folder}/${entry.name}`;
      if (read.has(path) || ofSystems.test(entry.name)) continue;
      if (entry.isDirectory()) {
        lookInto(path, typed);
        continue;
      }
      // What an open editor keeps beside a file, and what is being written, comes and goes.
      if (/^\.#|^\..*\.(?:sw[a-p]|partial)$/i.test(entry.name)) continue;
      if (looksTyped(path, entry, typed))
        refuse(
          path,
          `\`${path}\`, which ${entry.isFile() ? 'looks like a note or a query' : `is ${kindOf(entry)}`} and is not read`,
          entry.isFile() ? hintFor(path) : 'put the file itself there',
        );
      else
        unread.push({
          path,
          what: entry.isFile() ? (backup.test(entry.name) ? 'an earlier state' : 'a file') : kindOf(entry),
        });
    }
  }

  /** A folder within one of the four: notes and queries in it are not read, photos and papers only where they are named. */
  function lookInto(path: string, typed: boolean): void {
    if (path.split('/').length > deepest) {
      unread.push({ path, what: 'a folder' });
      return;
    }
    if (typed && entriesOf(join(directory, path)).length === 0) unread.push({ path, what: 'a folder' });
    look(path, typed);
  }

  function looksTyped(path: string, entry: Dirent, typed: boolean): boolean {
    if (backup.test(entry.name)) return false;
    if (typed && (entry.isSymbolicLink() || (markdown.test(entry.name) && !entry.name.startsWith('.')))) return true;
    return entry.isFile() && isTyped(join(directory, path));
  }
  return { problems, unread };
}

const deepest = 8;

function hintFor(path: string): string {
  const name = posix.basename(path);
  const [folder = '', ...below] = posix.dirname(path).split('/');
  if (folder !== 'notes' && folder !== 'queries') return 'move it into `notes/` or `queries/`';
  if (below.length > 0) return `move it into \`${folder}/\` itself: folders in it are not read`;
  if (name.startsWith('.')) return 'take the dot at the beginning of its name away';
  return `name it \`${name.replace(/(?:\.md)?\.[^.]*$/i, '')}.md\``;
}

function entriesOf(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return [];
  }
}

const holdsAnything = (folder: string): boolean => existsSync(folder) && entriesOf(folder).length > 0;

function kindOf(entry: Pick<Dirent, 'isSymbolicLink' | 'isDirectory' | 'isFile'>): string {
  if (entry.isSymbolicLink()) return 'a link';
  if (entry.isDirectory()) return 'a folder';
  return entry.isFile() ? 'a file' : 'no plain file';
}

/** A plain file that begins as a note or a query does. */
function isTyped(path: string): boolean {
  if (/\.(?:jpe?g|png|webp|tiff?|avif|hei[cf]|gif|pdf|csv|dng)$/i.test(path) || backup.test(posix.basename(path)))
    return false;
  if (!lstatSync(path, { throwIfNoEntry: false })?.isFile()) return false;
  try {
    const start = Buffer.alloc(4096);
    const file = openSync(path, 'r');
    try {
      const text = start.toString('utf8', 0, readSync(file, start)).replace(/^\uFEFF/, '');
      return /^---[^\n]*\r?\n(?:[^]*\n)?(?:kind|question)[^\S\n]*:/.test(text);
    } finally {
      closeSync(file);
    }
  } catch {
    return false;
  }
}
