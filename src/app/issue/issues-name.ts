import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { readFrontmatter } from '../../project/frontmatter.js';

/** The name under which the issues of the build in a folder are tagged: the `id` of its `build.md`, else the folder's own. */
export function issuesNameOf(folder: string): string {
  try {
    const { value } = readFrontmatter(readFileSync(join(folder, 'build.md'), 'utf8'), 'build.md');
    const id = value?.data['id'];
    if (typeof id === 'string' && id !== '') return id;
  } catch {
    // Whoever needs more of it than its name will say what is wrong with it.
  }
  return basename(resolve(folder));
}

/** Folders beside a build that are builds of the same name. */
export function builtUnderTheSameName(folder: string): string[] {
  const own = resolve(folder);
  const name = issuesNameOf(own);
  return readdirSync(dirname(own), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== basename(own))
    .map((entry) => join(dirname(own), entry.name))
    .filter((other) => holdsBuild(other) && issuesNameOf(other) === name)
    .map((other) => basename(other));
}

function holdsBuild(folder: string): boolean {
  try {
    return readFileSync(join(folder, 'build.md')).length > 0;
  } catch {
    return false;
  }
}
