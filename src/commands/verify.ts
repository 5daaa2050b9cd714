import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { checkAlone } from '../app/verify/alone.js';
import { checkBeside } from '../app/verify/beside.js';
import { type Checked, differs, none, unchecked } from '../app/verify/checked.js';
import { openDocument, type VerifiedDocument } from '../app/verify/document.js';
import { checkAgain } from '../app/verify/print-again.js';
import { checkInputs, checkTag, repositoryOf } from '../app/verify/repository.js';
import { manifestName } from '../history/manifest.js';
import { UsageError } from '../platform/usage.js';
import { visible } from '../platform/visible.js';
import { jsonForm } from '../project/format.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { progressLine } from './terminal/progress.js';
import { wrap } from './terminal/wrap.js';

export const form = formOf({
  command: 'verify',
  names: [{ name: 'pdf or folder', is: 'folder' }],
  about: `Does a document match the repository at its commit? Looks at every byte of the file, every attachment, every input at
its commit, the tag and its signature; examines the commit again and prints it again. Says in words what differs.`,
  options: {
    repository: {
      takes: 'folder',
      otherwise: 'this folder, else the one that holds the document',
      is: 'folder',
      says: 'where the repository is',
    },
    alone: { flag: true, says: 'look at the document by itself, without a repository' },
    format: { oneOf: ['text', 'json'], usual: 'text', says: 'how it is told' },
  },
  more: `A document of another version of Gusset is checked by its digests, its tag and the contents of its commit. It is not examined
and printed again, since another version does both otherwise: that is said as unchecked.

The exit code is 0 only if everything was checked and matches; with --alone, if everything in the document does.`,
  examples: ['gusset verify out/wagon', 'gusset verify letters/submission.pdf --repository ~/workshop'],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [path] = names as [string];
  const file = documentAt(path);
  const document = await openDocument(readFileSync(file));
  const progress = progressLine(io);
  const checks =
    'problem' in document
      ? [document.later ? unchecked('file', document.problem) : differs('file', document.problem)]
      : await checkAll(document, file, {
          alone: values.alone,
          places: values.repository === undefined ? ['.', dirname(file)] : [values.repository],
          say: progress.say,
        }).finally(progress.end);
  const name = 'problem' in document ? basename(file) : `${document.manifest.document} (${basename(file)})`;
  if (values.format === 'json')
    io.stdout(
      `${JSON.stringify({ form: jsonForm('verification'), file: basename(file), document: 'problem' in document ? undefined : document.manifest.document, checks }, null, 2)}\n`,
    );
  else io.stdout(verificationText(name, checks, io.columns ?? 100));
  return checks.some((c) => c.state === 'differs' || c.state === 'unchecked') ? exits.findings : exits.clean;
}

/** The PDF itself, or the one that a folder holds. */
function documentAt(path: string): string {
  if (!existsSync(path))
    throw new UsageError(
      `found nothing at ${path}, expected a PDF that Gusset printed or the folder it was written to`,
    );
  if (!statSync(path).isDirectory()) return path;
  const found = readdirSync(path).filter((name) => name.endsWith('.pdf'));
  if (found.length !== 1)
    throw new UsageError(`found ${found.length} PDF files in ${path}, expected one; name the file`);
  return join(path, found[0]!);
}

async function checkAll(
  document: VerifiedDocument,
  file: string,
  { alone, places, say }: { alone: boolean; places: readonly string[]; say: (says: string) => void },
): Promise<Checked[]> {
  const beside = manifestBeside(file);
  const own = [...checkAlone(document), ...(await besides(document, file, beside))];
  if (alone)
    return [
      ...own,
      none(
        'repository',
        'not asked for: what the document says of itself was compared with itself, which whoever forges with care can make fit',
      ),
    ];
  const repo = await repositoryOf(document.manifest, places);
  if (typeof repo === 'string')
    return [
      ...own,
      unchecked(
        'repository',
        `inputs, findings, print, tag and signature could not be compared with a repository: ${repo}`,
      ),
    ];
  return [
    ...own,
    await checkInputs(document, repo),
    ...(await checkTag(document, repo, beside)),
    ...(await checkAgain(document, repo, say, beside)),
  ];
}

/** The manifest and the other outputs, where they lie beside the document. */
async function besides(document: VerifiedDocument, file: string, manifest: string | undefined): Promise<Checked[]> {
  if (manifest === undefined) return [];
  const folder = dirname(file);
  const read = (name: string) => readFile(name.endsWith('.pdf') ? file : join(folder, name)).catch(() => undefined);
  return [await checkBeside(manifest, document.manifest, read)];
}

function manifestBeside(file: string): string | undefined {
  const path = join(dirname(file), manifestName);
  return existsSync(path) ? readFileSync(path, 'utf8') : undefined;
}

const signs = { matches: '✓', differs: '✗', unchecked: '?', none: '–' } as const;

function verificationText(name: string, checks: readonly Checked[], width: number): string {
  const lines = checks.flatMap((c) => [
    ...hanging(
      `${signs[c.state]} ${c.name}: ${c.state === 'unchecked' ? `unchecked (${visible(c.says)})` : visible(c.says)}`,
      width,
    ),
    ...c.list.flatMap((line) => wrap(visible(line), width, '    ')),
  ]);
  const count = (state: Checked['state']) => checks.filter((c) => c.state === state).length;
  const verdict =
    count('differs') > 0
      ? `${visible(name)} does NOT match: ${checks
          .filter((c) => c.state === 'differs')
          .map((c) => c.name)
          .join(', ')}.`
      : `${visible(name)} matches in all that was checked${
          count('unchecked') > 0
            ? `; unchecked: ${checks
                .filter((c) => c.state === 'unchecked')
                .map((c) => c.name)
                .join(', ')}`
            : ''
        }.`;
  return [
    ...lines,
    '',
    ...wrap(verdict, width, ''),
    ...wrap('That a document matches shows where it comes from, not that what was measured is true.', width, ''),
    '',
  ].join('\n');
}

function hanging(text: string, width: number): string[] {
  const [first = '', ...rest] = wrap(text, width - 4, '');
  return [first, ...rest.map((line) => `    ${line}`)];
}
