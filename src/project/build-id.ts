import { join } from 'node:path';
import { readText } from './files.js';
import { readFrontmatter } from './frontmatter.js';

/** The id that `build.md` of a folder states, whatever else is wrong with it; nothing where it states none. */
export function idOf(folder: string): string | undefined {
  const read = readText(join(folder, 'build.md'));
  const id = read.ok ? readFrontmatter(read.text, 'build.md').value?.data['id'] : undefined;
  return typeof id === 'string' && id !== '' ? id : undefined;
}
