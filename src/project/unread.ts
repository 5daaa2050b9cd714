import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from './problem.js';

/** What lies in a build's folder and is not read: nobody is to believe that it was. */

const folders = ['notes', 'queries', 'photos', 'papers'] as const;
const texts: ReadonlySet<string> = new Set(['notes', 'queries']);
const markdown = /\.(?:md|markdown|mdown|mkdn?|mdtext|mdx)$/i;
/** As deep as a folder is searched for what looks like a note. */
const deepest = 5;

/**
 * Problems for what looks like a note, a query, `build.md` or `limits.yaml` and is none of them, and the other files by their
 * path from the build's folder.
 *
 * @param named photos and papers that are named somewhere, by their path
 */
export function unreadFiles(
  directory: string,
  named: ReadonlySet<string>,
  shown: (path: string) => string,
): { problems: Problem[]; others: string[] } {
  const problems: Problem[] = [];
  const others: string[] = [];
  const refuse = (path: string, found: string, expected: string, hint: string) =>
    problems.push({ code: 'file-unread', file: shown(path), line: 0, column: 0, found, expected, hint });

  for (const entry of readdirSync(directory, { withFileTypes: true })) {
    const { name } = entry;
    for (const [wanted, like] of [
      ['build.md', /^build\.(?:md|markdown|mdown|mkdn?|txt)$/i],
      ['limits.yaml', /^limits\.ya?ml(?:\.txt)?$/i],
    ] as const)
      if (name !== wanted && like.test(name))
        refuse(name, `\`${name}\`, which is not read`, `\`${wanted}\``, 'rename it, or move what it says to that file');
    const folder = folders.find((f) => f === name.toLowerCase() || f.replace(/s$/, '') === name.toLowerCase());
    if (entry.isDirectory() && folder !== undefined && folder !== name && !existsSync(join(directory, folder)))
      refuse(name, `a folder \`${name}\`, which is not read`, `\`${folder}\``, 'rename it');
  }

  for (const folder of folders) {
    for (const entry of entriesOf(join(directory, folder))) {
      const path = `${folder}/${entry.name}`;
      if (entry.name.startsWith('.')) continue;
      if (!texts.has(folder)) {
        if (!named.has(path)) others.push(entry.isDirectory() ? `${path}/` : path);
        continue;
      }
      if (entry.isFile() && entry.name.endsWith('.md')) continue;
      if (entry.isDirectory()) {
        if (holdsMarkdown(join(directory, path)))
          refuse(
            path,
            'a folder with Markdown files, which are not read',
            `Markdown files in \`${folder}/\` itself`,
            'move them up',
          );
        else others.push(`${path}/`);
      } else if (markdown.test(entry.name))
        refuse(
          path,
          entry.isSymbolicLink()
            ? 'a link, which is not followed'
            : `the ending of \`${entry.name}\`, which is not read`,
          'a plain file whose name ends in `.md`',
          entry.isSymbolicLink() ? 'put the file itself there' : 'rename it',
        );
      else others.push(path);
    }
  }
  // What lies deeper is named by its own path.
  return { problems, others: others.filter((path) => ![...named].some((one) => one.startsWith(path))).sort() };
}

function entriesOf(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}

function holdsMarkdown(folder: string, depth = 0): boolean {
  return entriesOf(folder).some(
    (entry) =>
      markdown.test(entry.name) ||
      (entry.isDirectory() && depth < deepest && holdsMarkdown(join(folder, entry.name), depth + 1)),
  );
}
