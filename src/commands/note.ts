import { existsSync, readdirSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { shapes } from '../app/load.js';
import { fileName } from '../app/notes/note-name.js';
import { noteTemplate } from '../app/notes/note-template.js';
import { loadCodes } from '../checks/codes/codes.js';
import type { Kind } from '../checks/engine/kind.js';
import { kinds } from '../checks/kinds/index.js';
import { didYouMean } from '../platform/near.js';
import { UsageError } from '../platform/usage.js';
import { writeNewFileWhole } from '../platform/whole.js';
import { afresh } from '../project/memory.js';
import { readBuild } from '../project/read.js';
import { formOf, parse, usageLine } from './terminal/form.js';
import { twoColumns } from './terminal/help.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { wrap } from './terminal/wrap.js';
import { measureFirst } from './text/note-text.js';

export const form = formOf({
  command: 'note',
  names: [
    { name: 'build', count: 'optional', is: 'folder' },
    { name: 'kind', count: 'optional', is: 'kind' },
    { name: 'title', count: 'any' },
  ],
  usage: 'gusset note <build> <kind> [<title>] | <build> --update [<note>…]',
  about: `Begins the next note: every field of its kind with what it is, how it is measured and which items of the codes it serves.
What does not apply to this car is left out. Notes are numbered in tens, so that others can come between. Nothing is overwritten.

With --update the build, or only the named notes of it, is brought up to the present format: obsolete fields and words are
rewritten where they stand, comments and all else stay as they are. Notes that cannot be read are left as they are.`,
  options: {
    kinds: { flag: true, says: 'list the kinds of note' },
    update: { flag: true, says: 'rewrite obsolete fields, which `gusset check` names' },
  },
  examples: [
    'gusset note builds/wagon brakes "Front disc conversion"',
    'gusset note builds/wagon general',
    'gusset note --kinds',
    'gusset note builds/wagon --update',
  ],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const width = Math.min(io.columns ?? 100, 100);
  if (values.kinds) {
    io.stdout(
      `${twoColumns(
        [...kinds.values()].map((k) => [k.id, `${k.title}. ${k.covers}`]),
        width,
      ).join('\n')}\n`,
    );
    return exits.clean;
  }
  const [folder, id, ...words] = names;
  if (values.update && folder !== undefined)
    return (await import('./note/update.js')).updateNotes(folder, names.slice(1), io);
  if (folder === undefined || id === undefined)
    throw new UsageError(
      `found ${folder === undefined ? 'no build' : 'no kind of note'}, expected ${usageLine(form)}; \`gusset note --kinds\` lists the kinds`,
    );
  const kind = kinds.get(id);
  if (!kind)
    throw new UsageError(
      `found the kind \`${id}\`, expected one of those that \`gusset note --kinds\` lists; ${didYouMean(id, [...kinds.keys()])}`,
    );
  if (!existsSync(join(folder, 'build.md')))
    throw new UsageError(
      `found no build.md in ${folder}, expected the folder of a build; make one with \`gusset start ${folder}\``,
    );
  const title = words.join(' ').replace(/\s+/g, ' ').trim() || kind.title;
  if (title.length < 3 || title.length > 120)
    throw new UsageError(`found a title of ${title.length} characters, expected 3 to 120`);
  const { build, problems } = readBuild(folder, shapes, process.cwd(), afresh, true);
  const text = noteTemplate(kind, { title, build, items: (await loadCodes('AU')).items.values() });
  const path = await write(folder, kind, words.length > 0 ? title : kind.id, text);
  const more = build
    ? ''
    : ` The build cannot be read yet (${problems.length} problem(s), which \`gusset check ${folder}\` shows): items that do not apply to this car are in the note too.`;
  io.stdout(`${wrap(`Made ${path}.${more}`, width, '').join('\n')}\n\n${measureFirst(kind, width)}`);
  return exits.clean;
}

/** Writes the note under the next number; should another take it at the same moment, under the one after. */
async function write(folder: string, kind: Kind, name: string, text: string): Promise<string> {
  const notes = join(resolve(folder), 'notes');
  await mkdir(notes, { recursive: true });
  for (;;) {
    const file = fileName(readdirSync(notes), name, kind.id);
    if (await writeNewFileWhole(join(notes, file), text)) return `${folder.replace(/[\\/]+$/, '')}/notes/${file}`;
  }
}
