import { basename, resolve } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { findPhotos } from '../app/intake/find.js';
import { type Proposal, propose } from '../app/intake/propose.js';
import { type Taken, takeIn } from '../app/intake/take-in.js';
import { type Loaded, load } from '../app/load.js';
import { unknownIn } from '../checks/engine/proof-names.js';
import { MachineFailure } from '../platform/failure.js';
import { UsageError } from '../platform/usage.js';
import { visible } from '../platform/visible.js';
import { readName } from '../project/proves.js';
import { showProblem } from '../project/show-problem.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { progressLine } from './terminal/progress.js';

export const form = formOf({
  command: 'photos',
  names: [
    { name: 'build', is: 'folder' },
    { name: 'folder', is: 'folder' },
  ],
  about: `Takes photos in from a phone's folder: copies of those that are new, by content, without their position data. The folder
is left as it is. For each photo it says which note and stage its capture time fits and what it could prove there: you say which of
it the photo shows, and the entry then names that under \`proves:\`.`,
  options: {
    note: { takes: 'name', says: 'take all of them in for this note' },
    stage: { takes: 'stage', says: 'and this stage' },
    proves: { takes: 'names', says: 'and what they show, such as "tacked, welds-bare rail-left"' },
    'dry-run': { flag: true, says: 'say what would be done, and do nothing' },
  },
  examples: [
    'gusset photos builds/wagon ~/Phone/DCIM',
    'gusset photos builds/wagon ~/Phone/DCIM --note 020-crossmember --stage welded',
    'gusset photos builds/wagon ~/Phone/one --note 020-crossmember --stage tacked --proves tacked',
  ],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder, from] = names as [string, string];
  const loaded = await load(folder);
  if (!('build' in loaded)) {
    io.stderr(
      `${loaded.problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\nPut these right first, so that photos can be matched with notes.\n`,
    );
    return exits.usage;
  }
  const { build, rules, evaluation } = loaded;
  if (values.note !== undefined && !build.notes.some((n) => n.name === values.note))
    throw new UsageError(`found --note ${values.note}, expected one of ${build.notes.map((n) => n.name).join(', ')}`);
  const stated = values.proves === undefined ? undefined : provesOf(values.proves, values.note, loaded);
  const progress = progressLine(io);
  const found = await findPhotos(resolve(from), build, progress.say);
  progress.end();
  if (found.photos.length === 0) {
    io.stdout(
      found.known > 0
        ? `Nothing new: all ${found.known} photos of ${from} are in the build already.\n`
        : `No photos in ${from}.\n`,
    );
    for (const r of found.refused) io.stderr(`${visible(r.file)}: ${r.reason}; ${r.hint}\n`);
    if (found.refused.some((r) => r.unread)) return exits.machine;
    return found.refused.length > 0 ? exits.usage : exits.clean;
  }
  const entries: Taken[] = [];
  const failed: MachineFailure[] = [];
  for (const photo of found.photos) {
    const offered = propose(photo, build, rules, evaluation.findings, { note: values.note, stage: values.stage });
    const chosen = io.interactive && values.note === undefined ? await ask(photo.file, offered, io) : offered[0];
    const proves = stated ?? (io.interactive && chosen ? await askProves(chosen, io) : []);
    try {
      const taken = await takeIn(photo, chosen, proves, build, values['dry-run']);
      entries.push(taken);
      io.stdout(line(taken, chosen, values['dry-run']));
    } catch (cause) {
      // The others are taken in all the same, and what was taken is told.
      if (!(cause instanceof MachineFailure)) throw cause;
      failed.push(cause);
    }
  }
  io.stdout(
    `${values['dry-run'] ? 'Would take' : 'Took'} in ${entries.length} photo(s); ${found.known} were there already.\n\nPaste into the frontmatter and say what each shows:\n`,
  );
  for (const note of new Set(entries.map((e) => e.note ?? 'no note')))
    io.stdout(
      `\n# ${note}\nphotos:\n${entries
        .filter((e) => (e.note ?? 'no note') === note)
        .map((e) => e.yaml)
        .join('')}`,
    );
  for (const r of found.refused) io.stderr(`${visible(r.file)}: ${r.reason}; ${r.hint}\n`);
  for (const { message } of failed) io.stderr(`not taken in: ${visible(message)}\n`);
  return failed.length > 0 || found.refused.some((r) => r.unread) ? exits.machine : exits.clean;
}

function line(taken: Taken, chosen: Proposal | undefined, dry: boolean): string {
  const why = chosen
    ? `${chosen.note}, stage ${chosen.stage ?? 'not clear'}: ${chosen.why}${chosen.open.length > 0 ? `; could show: ${[...new Set(chosen.open.map((o) => o.shows))].join('; ')}` : ''}`
    : 'fits no note by its date';
  return `${dry ? 'would take' : 'took'} ${visible(basename(taken.from))} as photos/${taken.name}\n    ${visible(why)}\n`;
}

async function ask(file: string, offered: readonly Proposal[], io: Io): Promise<Proposal | undefined> {
  if (offered.length === 0) return undefined;
  io.stderr(
    `\n${visible(basename(file))}\n${offered.map((o, i) => `  ${i + 1} ${o.note}, ${o.stage ?? 'no stage'}: ${o.why}`).join('\n')}\n`,
  );
  const typed = await question('Which? [1] ');
  return offered[typed === '' ? 0 : Number(typed) - 1];
}

/** Nothing is taken as shown that was not confirmed. */
async function askProves({ open }: Proposal, io: Io): Promise<string[]> {
  if (open.length === 0) return [];
  io.stderr(`${open.map((o, i) => `  ${i + 1} ${o.name}: ${o.shows}`).join('\n')}\n`);
  const typed = await question('Which of these does it show? Numbers with commas, or Enter for none: ');
  return typed.split(/[\s,]+/).flatMap((number) => open[Number(number) - 1]?.name ?? []);
}

async function question(text: string): Promise<string> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return (await lines.question(text)).trim();
  } finally {
    lines.close();
  }
}

/** What `--proves` names, all of it known to the note. */
function provesOf(text: string, name: string | undefined, { build, rules }: Loaded): string[] {
  const note = build.notes.find((n) => n.name === name);
  if (!note) throw new UsageError('found --proves without --note, expected the note whose hold points it names');
  const names = text.split(',').flatMap((one) => one.trim() || []);
  for (const one of names) {
    const [unknown] = unknownIn(readName(one), note, rules.kinds.get(note.kind)!, rules.codes.items);
    if (unknown) throw new UsageError(`found ${unknown.found}, expected ${unknown.expected}; ${unknown.hint ?? ''}`);
  }
  return names;
}
