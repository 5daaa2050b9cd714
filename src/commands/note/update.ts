import { existsSync } from 'node:fs';
import { basename, join, posix, relative, resolve } from 'node:path';
import { updateBuild } from '../../app/notes/update-build.js';
import { didYouMean } from '../../platform/near.js';
import { UsageError } from '../../platform/usage.js';
import { listFolder } from '../../project/files.js';
import { format } from '../../project/format.js';
import { showProblem } from '../../project/show-problem.js';
import { type Exit, exits, type Io } from '../terminal/io.js';
import { obsoleteLine } from '../text/obsolete-text.js';

/** Rewrites what is obsolete in a build, or in the named notes of it, and says each line that it rewrites. */
export async function updateNotes(folder: string, names: readonly string[], io: Io): Promise<Exit> {
  if (!existsSync(join(folder, 'build.md')))
    throw new UsageError(`found no build.md in ${folder}, expected the folder of a build`);
  const chosen = new Set(names.map((name) => noteNamed(folder, name)));
  const { done, left, formatIn, id, problems } = await updateBuild(
    folder,
    (file) => chosen.size === 0 || chosen.has(posix.basename(file, '.md')),
  );
  const shown = problems.filter((p) => chosen.size === 0 || chosen.has(posix.basename(p.file, '.md')));
  if (shown.length > 0)
    io.stderr(
      `${shown.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${shown.length} problem(s). A file that cannot be read is left as it is.\n`,
    );
  const build = relative(process.cwd(), resolve(folder, 'build.md')).split('\\').join('/');
  const lines = [
    ...done.map(obsoleteLine),
    ...(formatIn === undefined ? [] : [`${formatIn}: format ${format}`]),
    ...(id === undefined ? [] : [`${build}: id ${id}`]),
    ...left.map((use) => `${obsoleteLine(use)}; rewrite this one by hand`),
  ];
  const files = new Set([
    ...done.map((use) => use.file),
    ...(formatIn === undefined && id === undefined ? [] : [build]),
  ]).size;
  io.stdout(
    `${lines.map((line) => `${line}\n`).join('')}${files > 0 ? `Rewrote ${files} file(s).` : 'Nothing was rewritten.'}\n`,
  );
  return shown.length > 0 ? exits.usage : left.length > 0 ? exits.findings : exits.clean;
}

/** A note by its name, its number or its file; `build` is `build.md`. */
function noteNamed(folder: string, given: string): string {
  const names = ['build', ...listFolder(folder, 'notes').map((file) => basename(file, '.md'))];
  const name = posix.basename(given.replaceAll('\\', '/'), '.md');
  const [found, ...more] = names.includes(name) ? [name] : names.filter((n) => n.startsWith(`${name}-`));
  if (found === undefined || more.length > 0)
    throw new UsageError(`found the note ${given}, expected the name of one; ${didYouMean(name, names)}`);
  return found;
}
