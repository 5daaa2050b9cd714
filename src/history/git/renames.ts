import { objectId } from './object-id.js';
import { fields, type GitFolder, git } from './run.js';

/** Markdown files that one commit has under another path than an earlier one: new path to old path, from the root. */
export async function renamesBetween(repo: GitFolder, from: string, to: string): Promise<Map<string, string>> {
  const out = await git(
    repo,
    [
      'diff',
      '--raw',
      '-z',
      '--no-abbrev',
      '--no-ext-diff',
      '--no-textconv',
      '--no-relative',
      '--diff-filter=R',
      '-M',
      '-l1000',
      objectId(from),
      objectId(to),
      '--',
      ':(top,glob,icase)**/*.md',
    ],
    { magicPathspecs: true },
  );
  const tokens = fields(out);
  const renames = new Map<string, string>();
  for (let at = 0; at + 2 < tokens.length; at += 3) renames.set(tokens[at + 2] ?? '', tokens[at + 1] ?? '');
  return renames;
}
