import { format } from '../../project/format.js';
import { type Obsolete, obsolete } from '../../project/obsolete.js';

/** The page on the numbers of the formats, with all that is obsolete. */
export function formatsPage(table: readonly Obsolete[] = obsolete): string {
  return [
    '# Formats',
    '',
    `Made from the code by \`npm run generate\`. The present format is ${format}.`,
    '',
    '## Notes',
    '',
    `\`build.md\` states the format of its build once: \`format: ${format}\`. A build that states none is of format 1. Builds of earlier`,
    'formats are read: `gusset check` names each obsolete field with what stands for it now, and `gusset note <build> --update`',
    'rewrites it and keeps comments, order and everything else. A name that was given up never comes back with another meaning.',
    'A build of a later format than the program is refused.',
    '',
    '## Results as JSON',
    '',
    `The \`form\` of every JSON result says what it is and ends in its format, as in \`gusset-findings/${format}\`. The number rises when a`,
    'key or a word of any result gets another name or goes; keys that come in addition do not raise it.',
    '',
    '| form | from |',
    '| --- | --- |',
    ...results.map(([what, from]) => `| \`gusset-${what}/${format}\` | ${from} |`),
    '',
    '## Documents',
    '',
    'The manifest inside a document names the version of Gusset that printed it. `gusset verify` checks a document of another version',
    'by its digests, its tag and the contents of its commit; what only the same version prints and examines alike is `unchecked`,',
    'and never said to differ.',
    '',
    '## What is obsolete',
    '',
    ...(table.length === 0
      ? ['Nothing yet.']
      : ['| since | where | was | is now |', '| --- | --- | --- | --- |', ...table.map(row)]),
  ].join('\n');
}

/** What gives each form. */
const results = [
  ['findings', '`gusset check --format json`, `findings.json` of a document'],
  ['problems', '`gusset check --format json` of a build that cannot be read'],
  ['plan', '`gusset plan --format json`'],
  ['sheets', '`gusset calc --format json`'],
  ['calc', '`gusset calc <sheet> … --format json`'],
  ['solution', '`gusset calc <sheet> … --find … --format json`'],
  ['history', '`gusset history --format json`'],
  ['changes', '`gusset history --from … --to … --format json`'],
  ['verification', '`gusset verify --format json`'],
  ['manifest', '`manifest.json` of a document'],
] as const;

function row({ since, of, path, now }: Obsolete): string {
  const where =
    of === 'build'
      ? '`build.md`'
      : of === 'limits'
        ? '`limits.yaml`'
        : of === 'query'
          ? 'queries'
          : of === 'note'
            ? 'all notes'
            : of;
  const field = `\`${path.join('.').replaceAll('.[]', '[]')}\``;
  return 'words' in now
    ? Object.entries(now.words)
        .map(([old, word]) => `| ${since} | ${where} | ${field}: \`${old}\` | \`${word}\` |`)
        .join('\n')
    : `| ${since} | ${where} | ${field} | ${'key' in now ? `\`${now.key}\`` : 'gone' in now ? `no longer read: ${now.gone}` : `by hand: ${now.ask}`} |`;
}
