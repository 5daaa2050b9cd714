import { type Manifest, readManifest } from '../../history/manifest.js';
import { type Checked, listed } from './checked.js';
import { sha256Of } from './document.js';

/**
 * The manifest beside the document against the one inside it, and the files that it lists.
 *
 * @param read gives the content of a file beside it, or nothing where there is none
 */
export async function checkBeside(
  text: string,
  inside: Manifest,
  read: (name: string) => Promise<Uint8Array | undefined>,
): Promise<Checked> {
  const beside = readManifest(text);
  const told = (list: string[]) =>
    listed(
      'folder',
      'the manifest beside it says the same as the one inside, and the files are those that it lists',
      'the files beside it are not those that were written',
      list,
    );
  if ('problem' in beside) return told([`manifest.json cannot be read (${beside.problem})`]);
  const { outputs = [], ...same } = beside;
  const fields = [...new Set([...Object.keys(same), ...Object.keys(inside)])] as (keyof typeof same)[];
  const otherwise = fields.filter((field) => JSON.stringify(same[field]) !== JSON.stringify(inside[field]));
  const files = await Promise.all(
    outputs.map(async ({ path, sha256 }) => {
      const content = /[/\\]/.test(path) ? undefined : await read(path);
      if (!content) return [`${path} is not there`];
      return sha256Of(content) === sha256 ? [] : [`${path} is not the file that was written`];
    }),
  );
  return told([
    ...otherwise.map(
      (field) =>
        `manifest.json says otherwise than the one inside the PDF: ${field}${difference(same[field], inside[field])}`,
    ),
    ...files.flat(),
  ]);
}

/** For a list the first entry that differs; else both values. */
function difference(beside: unknown, inside: unknown): string {
  if (Array.isArray(beside) && Array.isArray(inside)) {
    const at = beside.findIndex((entry, i) => JSON.stringify(entry) !== JSON.stringify(inside[i]));
    const entry = at === -1 ? inside[beside.length] : beside[at];
    return ` (${typeof entry === 'object' && 'path' in entry ? String(entry.path) : `entry ${at + 1}`})`;
  }
  return ` (“${String(beside)}” and “${String(inside)}”)`;
}
