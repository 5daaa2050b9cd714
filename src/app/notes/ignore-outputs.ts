import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { openRepository } from '../../history/git/repository.js';
import { writeFileWhole } from '../../platform/whole.js';

/** Lines that leave the outputs out already. */
const known = new Set(['out', 'out/', '/out', '/out/', '**/out', '**/out/']);

/**
 * Sees to it that git leaves `out/` out: in the `.gitignore` of the repository that holds the folder or, outside one, of
 * the folder itself. Gives the file where a line was added, and nothing where there was one.
 */
export async function ignoreOutputs(folder: string): Promise<string | undefined> {
  const repo = await openRepository(folder);
  const file = join(repo.kind === 'none' ? folder : repo.root, '.gitignore');
  const bytes = existsSync(file) ? readFileSync(file) : Buffer.alloc(0);
  const before = bytes.toString('latin1');
  if (before.split(/\r?\n/).some((line) => known.has(line.trim()))) return undefined;
  const end = before.includes('\r\n') ? '\r\n' : '\n';
  const line = `${before === '' || before.endsWith('\n') ? '' : end}out/${end}`;
  await writeFileWhole(existsSync(file) ? realpathSync(file) : file, Buffer.concat([bytes, Buffer.from(line)]));
  return file;
}
