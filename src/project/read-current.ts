import { withBodyTables } from './body-table.js';
import { ofLaterFormat } from './format.js';
import { type Frontmatter, readFrontmatter, readYamlFile } from './frontmatter.js';
import { obsolete } from './obsolete.js';
import type { Problem } from './problem.js';
import { type FileSort, type ObsoleteUse, translate } from './translate.js';

/** Reads the fields of a file with its tables, under the names that this format has for them. No schema has seen them yet. */
export function readCurrent(
  text: string,
  file: string,
  sort: FileSort,
  table = obsolete,
): { value?: Frontmatter; obsolete: readonly ObsoleteUse[]; problems: Problem[] } {
  const split = sort === 'limits' ? readYamlFile(text, file) : readFrontmatter(text, file);
  const read = split.value && (sort === 'note' || sort === 'build') ? withBodyTables(split.value, file) : split;
  if (!read.value) return { obsolete: [], problems: read.problems };
  const later = sort === 'build' ? ofLaterFormat(read.value, file) : undefined;
  return later ? { obsolete: [], problems: [later] } : translate(read.value, file, sort, table);
}
