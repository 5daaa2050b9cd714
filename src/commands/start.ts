import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { basename, join, relative, resolve } from 'node:path';
import { ignoreOutputs } from '../app/notes/ignore-outputs.js';
import { slug } from '../app/notes/note-name.js';
import { packageFile } from '../platform/package-file.js';
import { UsageError } from '../platform/usage.js';
import { writeFolderWhole } from '../platform/whole.js';
import { buildTemplate } from '../project/build-template.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { wrap } from './terminal/wrap.js';

export const form = formOf({
  command: 'start',
  names: [{ name: 'build', is: 'folder' }],
  about:
    'Makes the folder of a new build: build.md to fill in, limits.yaml, and folders for notes, photos, papers and queries. What is there already is left as it is.',
  options: {},
  examples: ['gusset start builds/wagon'],
});

const folders = ['notes', 'photos', 'papers', 'queries'];

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { names } = parse(form, args);
  const [folder] = names as [string];
  const target = resolve(folder);
  refuseTaken(folder, target);
  const ignored = await writeFolderWhole(target, async (partial) => {
    for (const name of folders) mkdirSync(join(partial, name));
    await writeFile(join(partial, 'build.md'), buildTemplate(titleOf(basename(target)), newId(basename(target))));
    await writeFile(join(partial, 'limits.yaml'), readFileSync(packageFile('templates/start/limits.yaml')));
    return ignoreOutputs(process.cwd());
  });
  io.stdout(nextText(folder, ignored && relative(process.cwd(), ignored), Math.min(io.columns ?? 100, 100)));
  return exits.clean;
}

function refuseTaken(folder: string, target: string): void {
  if (!existsSync(target)) return;
  if (!statSync(target).isDirectory()) throw new UsageError(`found a file ${folder}, expected a name for a new folder`);
  if (existsSync(join(target, 'build.md')))
    throw new UsageError(
      `found the build ${folder}, which is there already, expected a new name; add a note to it with \`gusset note ${folder} <kind>\``,
    );
  if (readdirSync(target).length > 0)
    throw new UsageError(`found things in ${folder} that are no build, expected an empty folder or a new name`);
}

/** The name of the folder, so that people know it again, and what no other build has. */
const newId = (name: string): string => `${slug(name) || 'build'}-${randomBytes(3).toString('hex')}`;

/** `red-wagon` is called Red wagon until its title is filled in. */
function titleOf(name: string): string {
  const words = name.replace(/[-_\s]+/g, ' ').trim();
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return title.length < 3 ? `Build ${title}` : title;
}

function nextText(folder: string, ignored: string | undefined, width: number): string {
  const steps = [
    `Fill in ${folder}/build.md. Make, model and month of build come first, then the place of registration; what is not known yet stays empty.`,
    `gusset plan ${folder} --kinds engine,brakes says what to measure and photograph before anything is taken apart. \`gusset note --kinds\` lists the kinds.`,
    `gusset note ${folder} brakes "Front disc conversion" begins a note, one for each modification.`,
    `gusset check ${folder} --watch says in a second terminal what is found while you write.`,
  ];
  return [
    ...wrap(
      `Made ${folder} with build.md, limits.yaml, ${folders.join('/, ')}/.${ignored ? ` ${ignored} now leaves out/ out of git: documents land there.` : ''}`,
      width,
      '',
    ),
    '',
    'What to do next',
    ...steps.flatMap((step, i) =>
      wrap(step, width, '     ').map((line, j) => (j === 0 ? `  ${i + 1}. ${line.trimStart()}` : line)),
    ),
    '',
  ].join('\n');
}
