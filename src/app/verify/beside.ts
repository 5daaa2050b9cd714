import { lstatSync, readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Manifest, manifestName, readManifest } from '../../history/manifest.js';
import { litter } from '../../platform/own-output.js';
import { type Checked, listed, unchecked } from './checked.js';
import { sha256Of, type VerifiedDocument } from './document.js';

/** What lies in the folder of a document. */
export interface Beside {
  /** Names of what lies there, but for the document itself. */
  names: readonly string[];
  /** The content of a plain file of that name; nothing where there is none. */
  read: (name: string) => Promise<Uint8Array | undefined>;
  /** The folder was named and not the document alone: then whatever else lies there counts. */
  whole: boolean;
}

/** The page for screens that lies beside a document, as long as nothing vouches for it. */
export interface LoosePage {
  name: string;
  bytes: Uint8Array;
}

const findingsName = 'findings.json';

/** Links and what is no plain file are not followed or read. */
export function besideOf(file: string, whole: boolean): Beside {
  const folder = dirname(file);
  const isPlain = (name: string) => lstatSync(join(folder, name), { throwIfNoEntry: false })?.isFile() === true;
  return {
    names: readdirSync(folder).filter((name) => name !== basename(file) && !litter.has(name)),
    read: async (name) => (isPlain(name) ? readFile(join(folder, name)) : undefined),
    whole,
  };
}

/**
 * The files beside a document. The tag names the manifest by its digest, which names the others; without that only what the
 * document itself carries is known, and the rest is left open: the page for screens to be compared with a new print.
 *
 * @param vouched digest of the manifest, from a tag that vouches for the document
 */
export async function checkBeside(
  { names, read, whole }: Beside,
  { manifest: inside, sha256, attached }: VerifiedDocument,
  vouched: string | undefined,
): Promise<{ checks: Checked[]; page?: LoosePage }> {
  const written = await read(manifestName);
  if (!written && (!whole || names.length === 0)) return { checks: [] };
  const manifest = written && readManifest(Buffer.from(written).toString('utf8'));
  const isNamed = written !== undefined && vouched === sha256Of(written);
  const against = [
    ...(written && vouched !== undefined && !isNamed ? [`${manifestName} is not the one that the tag names`] : []),
    ...(!manifest
      ? []
      : 'problem' in manifest
        ? [`${manifestName} cannot be read (${manifest.problem})`]
        : [...otherwise(manifest, inside), ...(await notWritten(manifest, sha256, read))]),
  ];
  const findings = await read(findingsName);
  const carried = attached.get(findingsName);
  if (findings && (!carried || sha256Of(findings) !== sha256Of(carried)))
    against.push(`${findingsName} is not the one that the document carries`);

  const outputs = isNamed && manifest && !('problem' in manifest) ? (manifest.outputs ?? []) : [];
  const known = new Set([manifestName, ...(findings ? [findingsName] : []), ...outputs.map(({ path }) => path)]);
  const pageName = `${inside.as}.html`;
  const bytes = known.has(pageName) ? undefined : await read(pageName);
  const foreign = names.filter((name) => !known.has(name) && !(bytes && name === pageName));
  const same = [...(written ? [manifestName] : []), ...(findings ? [findingsName] : [])];
  const folder = listed(
    'folder',
    isNamed
      ? 'the manifest beside it is the one that the tag names by its digest, and the files are those that it lists'
      : `${same.join(' and ')} beside it ${same.length > 1 ? 'say' : 'says'} the same as inside`,
    'the files beside it are not those that were written',
    [...new Set(against)],
  );
  return {
    checks: [
      ...(same.length > 0 ? [folder] : []),
      ...(whole && foreign.length > 0
        ? [
            unchecked(
              'others',
              `nothing is known of what else lies there, name the file to ask for it alone: ${foreign.join(', ')}`,
            ),
          ]
        : []),
    ],
    ...(bytes ? { page: { name: pageName, bytes } } : {}),
  };
}

/** Where the manifest beside a document says otherwise than the one inside it. */
function otherwise({ outputs: _, ...same }: Manifest, inside: Manifest): string[] {
  const fields = [...new Set([...Object.keys(same), ...Object.keys(inside)])] as (keyof typeof same)[];
  return fields
    .filter((field) => JSON.stringify(same[field]) !== JSON.stringify(inside[field]))
    .map(
      (field) =>
        `${manifestName} says otherwise than the one inside the PDF: ${field}${difference(same[field], inside[field])}`,
    );
}

/** The PDF may be called otherwise since. */
async function notWritten({ outputs = [] }: Manifest, pdf: string, read: Beside['read']): Promise<string[]> {
  const files = outputs.map(async ({ path, sha256 }) => {
    const content = /[/\\]/.test(path) || path.endsWith('.pdf') ? undefined : await read(path);
    const digest = path.endsWith('.pdf') && !/[/\\]/.test(path) ? pdf : content && sha256Of(content);
    if (digest === undefined) return [`${path} is not there`];
    return digest === sha256 ? [] : [`${path} is not the file that was written`];
  });
  return (await Promise.all(files)).flat();
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
