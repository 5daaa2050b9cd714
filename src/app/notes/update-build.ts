import { chmodSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, relative, resolve } from 'node:path';
import { MachineFailure } from '../../platform/failure.js';
import { writeFileWhole } from '../../platform/whole.js';
import { afresh } from '../../project/memory.js';
import type { Problem } from '../../project/problem.js';
import { readBuild } from '../../project/read.js';
import type { ObsoleteUse } from '../../project/translate.js';
import { updated, withFormat, withId } from '../../project/update.js';
import { shapes } from '../load.js';

export interface UpdatedBuild {
  /** What was rewritten, with the places that it had. */
  done: readonly ObsoleteUse[];
  /** What is to be rewritten by hand. */
  left: readonly ObsoleteUse[];
  /** `build.md` as shown in messages, where the number of the format was put into it. */
  formatIn?: string;
  /** The name of the build's issues, where it was put into `build.md`. */
  id?: string;
  /** What keeps files from being read: these were left as they are. */
  problems: readonly Problem[];
}

/**
 * Brings the files of a build up to this format, or only the chosen ones. The number of the format, and the name of the
 * build's issues where there is none, are set once nothing obsolete is left in the whole build. Throws MachineFailure if the disk refuses, or a file is saved meanwhile.
 */
export async function updateBuild(folder: string, chosen: (file: string) => boolean): Promise<UpdatedBuild> {
  const { obsolete, problems } = readBuild(folder, shapes, process.cwd(), afresh, true);
  const unread = new Set(problems.map((p) => p.file));
  const files = [...new Set(obsolete.map((use) => use.file))].filter((file) => chosen(file) && !unread.has(file));
  const updates = files.map((file) => {
    const before = readFileSync(resolve(file), 'utf8');
    return { file, before, ...updated(before, file, obsolete.find((use) => use.file === file)!.sort) };
  });
  const [done, left] = [updates.flatMap((u) => u.done), updates.flatMap((u) => u.left)];
  for (const { file, before, text } of updates) await replace(file, before, text);
  const shown = relative(process.cwd(), resolve(folder, 'build.md')).split('\\').join('/');
  const current = problems.length === 0 && done.length === obsolete.length;
  if (!current) return { done, left, problems };
  const before = readFileSync(resolve(shown), 'utf8');
  const formatted = withFormat(before);
  // Its issues were found by the name of the folder, and are from now on whatever that is called.
  const id = basename(resolve(folder));
  const text = withId(formatted, id);
  await replace(shown, before, text);
  return {
    done,
    left,
    problems,
    ...(formatted === before ? {} : { formatIn: shown }),
    ...(text === formatted ? {} : { id }),
  };
}

/** Writes the text if it differs and the file is still what was read; who may read and write it stays. */
async function replace(file: string, before: string, text: string): Promise<void> {
  if (text === before) return;
  const target = realpathSync(resolve(file));
  if (readFileSync(target, 'utf8') !== before) throw savedMeanwhile(file);
  const { mode } = statSync(target);
  await writeFileWhole(target, text);
  chmodSync(target, mode);
}

const savedMeanwhile = (file: string): MachineFailure =>
  new MachineFailure({
    found: `${file} was saved while it was being rewritten`,
    expected: 'files that stay as they are until it is done',
    todo: 'give the command again; nothing of the saved file was changed',
  });
