import { findFile, type Listing } from './files.js';
import type { Frontmatter, Path } from './frontmatter.js';
import type { BuildFile } from './model.js';
import type { Problem } from './problem.js';

interface Entry {
  id?: string | undefined;
  file: string;
}
type Naming = { photos?: Entry[] | undefined; papers?: Entry[] | undefined };

/**
 * Photos and papers that a file names: all must be there, inside the build, and named once. Gives the data with the path
 * of each from the build's folder; those that are found are added to `files`.
 */
export function findNamedFiles<T extends object>(
  directory: string,
  owner: { front: Frontmatter; file: string; data: T },
  files: Map<string, BuildFile>,
  listing?: Listing,
): { data: T; problems: Problem[] } {
  const problems: Problem[] = [];
  const found: Record<string, Entry[]> = {};
  for (const key of ['photos', 'papers'] as const) {
    const entries = (owner.data as Naming)[key];
    if (!entries) continue;
    const seen = new Set<string>();
    found[key] = entries.map((entry, i) => {
      const path: Path = [key, i, 'file'];
      const range = owner.front.locate(path);
      const at = { file: owner.file, ...range, source: owner.front.sourceLine(range.line) };
      const name = entry.id ?? entry.file.replace(/\.[^.]*$/, '');
      if (seen.has(name))
        problems.push({
          code: 'name-duplicate',
          ...at,
          found: `\`${name}\` named twice in one note`,
          expected: `each of the ${key} once`,
          hint: 'give one of them an `id`',
        });
      seen.add(name);
      const there = findFile(directory, entry.file, key, listing);
      if (!there.ok) {
        problems.push({ ...at, ...notThere(there, entry.file, key) });
        return entry;
      }
      files.set(there.file.path, there.file);
      if (there.file.bytes === 0)
        problems.push({
          code: key === 'photos' ? 'photo-broken' : 'paper-missing',
          ...at,
          found: 'an empty file (0 bytes)',
          expected: 'the file with its content',
          hint: 'copy it again from where it came',
        });
      return { ...entry, file: there.file.path };
    });
  }
  return { data: { ...owner.data, ...found }, problems };
}

function notThere(
  found: Extract<ReturnType<typeof findFile>, { ok: false }>,
  file: string,
  key: 'photos' | 'papers',
): Pick<Problem, 'code' | 'found' | 'expected' | 'hint'> {
  const missing = key === 'photos' ? ('photo-missing' as const) : ('paper-missing' as const);
  if (found.why === 'outside')
    return {
      code: 'path-outside',
      found: `\`${file}\` leads out of the build's folder`,
      expected: `a file in \`${key}/\``,
      hint: 'copy it into the build',
    };
  if (found.why === 'case')
    return {
      code: missing,
      found: `\`${file}\`, spelled otherwise than the file`,
      expected: `\`${found.near}\``,
      hint: 'names are the same only when capitals are too',
    };
  if (found.why === 'not-a-file') return { code: missing, found: `\`${file}\` is no plain file`, expected: 'a file' };
  return {
    code: missing,
    found: `no file \`${file}\` in \`${key}/\``,
    expected: `a file in \`${key}/\``,
    hint: found.near ? `did you mean \`${found.near}\`?` : `put the file into \`${key}/\``,
  };
}
