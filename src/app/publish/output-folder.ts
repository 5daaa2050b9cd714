import { createHash } from 'node:crypto';
import { lstatSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { manifestName, readManifest } from '../../history/manifest.js';
import { UsageError } from '../../platform/usage.js';
import { visible } from '../../platform/visible.js';

/**
 * Only one's own output is replaced: a folder is, where it is empty, or holds a manifest and nothing but the files that it
 * lists, each as it was printed. Never a link, a file, or the folder that one works in.
 *
 * @throws UsageError with what else is there
 */
export function mayReplace(folder: string): void {
  const target = resolve(folder);
  const there = lstatSync(target, { throwIfNoEntry: false });
  if (!there) return;
  if (!there.isDirectory()) refuse(target, there.isSymbolicLink() ? 'is a link' : 'is a file');
  if (holds(target, process.cwd())) refuse(target, 'is the folder that you work in, or one around it');
  const foreign = foreignIn(target);
  if (foreign !== undefined) refuse(target, foreign);
}

/** Why a folder is not an output of this program alone; nothing where it is, or is empty. */
function foreignIn(folder: string): string | undefined {
  const entries = readdirSync(folder, { withFileTypes: true });
  if (entries.length === 0) return undefined;
  const folders = entries.find((e) => !e.isFile());
  if (folders) return `holds \`${visible(folders.name)}\`, which no document has`;
  if (!entries.some((e) => e.name === manifestName)) return `holds ${entries.length} file(s) and no ${manifestName}`;
  const manifest = readManifest(readFileSync(join(folder, manifestName), 'utf8'));
  if ('problem' in manifest) return `holds a ${manifestName} that cannot be read: ${manifest.problem}`;
  const printed = new Map((manifest.outputs ?? []).map((file) => [file.path, file.sha256]));
  for (const { name } of entries) {
    if (name === manifestName) continue;
    const digest = printed.get(name);
    if (digest === undefined) return `holds \`${visible(name)}\`, which its ${manifestName} does not list`;
    if (
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex') !== digest
    )
      return `holds \`${visible(name)}\`, which was changed after it was printed`;
  }
  return undefined;
}

/** Whether a path is the folder or lies in it, links followed. */
function holds(folder: string, path: string): boolean {
  const way = relative(real(folder), real(path));
  return way === '' || !(way === '..' || way.startsWith(`..${sep}`));
}

/** The path with its links followed, as far down as something is there. */
function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : join(real(above), relative(above, path));
  }
}

function refuse(target: string, because: string): never {
  throw new UsageError(
    `${target} ${because}, so it is not replaced.\n  expected: a new or empty folder, or one that holds a printed document and nothing else\n  to do: name another folder with --out, or move what is yours out of it`,
  );
}
