import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { checkAlone } from '../app/verify/alone.js';
import { besideOf, checkBeside, type LoosePage } from '../app/verify/beside.js';
import { type Checked, differs, none, unchecked } from '../app/verify/checked.js';
import { openDocument, type VerifiedDocument } from '../app/verify/document.js';
import { checkAgain } from '../app/verify/print-again.js';
import { checkHistory, checkInputs, checkTag, repositoryOf } from '../app/verify/repository.js';
import { AlteredObject } from '../history/git/objects.js';
import { jsonText } from '../platform/json-text.js';
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

Of a folder, whatever else lies in it is looked at too. The exit code is 0 only if everything was checked and matches; with
--alone, if everything in the document does.`,
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
          whole: file !== path,
          places: values.repository === undefined ? ['.', dirname(file)] : [values.repository],
          say: progress.say,
        }).finally(progress.end);
  const name = 'problem' in document ? basename(file) : `${document.manifest.document} (${basename(file)})`;
  if (values.format === 'json')
    io.stdout(
      `${jsonText({ form: jsonForm('verification'), file: basename(file), document: 'problem' in document ? undefined : document.manifest.document, checks })}\n`,
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
  const there = statSync(path);
  if (!there.isDirectory() && !there.isFile())
    throw new UsageError(
      `found something at ${path} that is no plain file, expected a PDF or the folder it was written to`,
    );
  if (there.isFile()) return path;
  const found = readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.pdf$/i.test(entry.name))
    .map(({ name }) => name);
  if (found.length !== 1)
    throw new UsageError(`found ${found.length} PDF files in ${path}, expected one; name the file`);
  return join(path, found[0]!);
}

interface Asked {
  alone: boolean;
  /** The folder was named, and not the file. */
  whole: boolean;
  places: readonly string[];
  say: (says: string) => void;
}

async function checkAll(document: VerifiedDocument, file: string, asked: Asked): Promise<Checked[]> {
  const own = checkAlone(document);
  const beside = asked.alone && !asked.whole ? undefined : besideOf(file, asked.whole);
  const without = async (check: Checked, why: string) => {
    const { checks, page } = beside ? await checkBeside(beside, document, undefined) : { checks: [], page: undefined };
    return [...own, ...checks, ...(page ? [leftOpen(page, why)] : []), check];
  };
  if (asked.alone)
    return without(
      none(
        'repository',
        'not asked for: what the document says of itself was compared with itself, which whoever forges with care can make fit',
      ),
      'no tag was asked for',
    );
  try {
    const repo = await repositoryOf(document.manifest, asked.places);
    if (typeof repo === 'string') {
      const says = `inputs, findings, print, tag and signature could not be compared with a repository: ${repo}`;
      return await without(unchecked('repository', says), 'there is no repository whose tag could name it');
    }
    const history = await checkHistory(document, repo);
    const inputs = await checkInputs(document, repo);
    const { checks: tag, vouched, why } = await checkTag(document, repo);
    const { checks, page } = beside ? await checkBeside(beside, document, vouched) : { checks: [], page: undefined };
    const again = await checkAgain(document, repo, asked.say, page);
    const left = page && !again.some((c) => c.name === 'html') ? [leftOpen(page, why)] : [];
    return [...own, ...checks, ...left, ...history, inputs, ...tag, ...again];
  } catch (error) {
    if (!(error instanceof AlteredObject)) throw error;
    return without(
      differs('repository', `nothing here was compared with it, for it was altered or is damaged: ${error.found}`),
      'nothing of this repository can be relied on',
    );
  }
}

/** What would vouch for the page for screens is only the manifest beside it, which whoever alters the one can alter too. */
const leftOpen = ({ name }: LoosePage, why: string): Checked =>
  unchecked('html', `nothing but the manifest beside it vouches for ${name}: ${why}`);

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
