import { basename, resolve } from 'node:path';
import { shapes } from '../app/load.js';
import { changesBetween, checkedOut, named } from '../app/repository/changes.js';
import { kinds } from '../checks/kinds/index.js';
import { openRepository, type Repository } from '../history/git/repository.js';
import { type BuildHistory, historyOf, pointOutLate } from '../history/history.js';
import { UsageError } from '../platform/usage.js';
import { idOf } from '../project/build-id.js';
import { readBuild } from '../project/read.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { changesJson, historyJson } from './text/history-json.js';
import { changesText, historyText } from './text/history-text.js';

export const form = formOf({
  command: 'history',
  names: [
    { name: 'build', is: 'folder' },
    { name: 'note', count: 'optional' },
    { name: 'field', count: 'optional' },
  ],
  about: 'Who entered or changed which measured value when, as git recorded it; or what changed between two states.',
  options: {
    from: {
      takes: 'issue or commit',
      says: 'what changed since then, by meaning: values, outcomes, limits, photos, papers, queries',
    },
    to: { takes: 'issue or commit', otherwise: 'the commit that is checked out', says: 'up to then' },
    format: { oneOf: ['text', 'json'], usual: 'text', says: 'how it is printed' },
  },
  more: `Without a note, values that were entered once are counted and not listed. A note is named by its name or number, a field
by its path or the beginning of it.`,
  examples: [
    'gusset history builds/wagon',
    'gusset history builds/wagon 020 pieces.crossmember.now',
    'gusset history builds/wagon --from A',
    'gusset history builds/wagon --from A --to B --format json',
  ],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder, note, field] = names as [string, string?, string?];
  if (values.to !== undefined && values.from === undefined)
    throw new UsageError('found --to without --from, expected both: --from A --to B');
  const repo = await openRepository(folder);
  if (repo.kind === 'none') throw new UsageError(repo.reason);
  const build = basename(resolve(folder));
  const under = idOf(folder) ?? build;
  const json = (data: object) => io.stdout(`${JSON.stringify(data, null, 2)}\n`);

  if (values.from !== undefined) {
    const to = values.to === undefined ? await checkedOut(repo) : await named(repo, under, values.to);
    const changes = await changesBetween(repo, build, await named(repo, under, values.from), to);
    if (values.format === 'json') json(changesJson(build, changes));
    else io.stdout(changesText(changes, io.columns ?? 100));
    return exits.clean;
  }
  const head = await checkedOut(repo);
  const history = await readHistory(repo, folder, head.commit, io);
  const chosen = note === undefined ? history : choose(history, note, field);
  if (values.format === 'json') json(historyJson(build, head.commit, chosen));
  else
    io.stdout(
      historyText(build, chosen, { everything: note !== undefined, width: io.columns ?? 100, colour: io.colour }),
    );
  return exits.clean;
}

async function readHistory(repo: Repository, folder: string, commit: string, io: Io): Promise<BuildHistory> {
  const history = await historyOf(repo, commit, shapes);
  // What the work covered is read from the notes; nothing that is found in them is shown here.
  const { build, problems } = readBuild(folder, shapes);
  if (build) return pointOutLate(history, build, kinds);
  io.stderr(
    `${problems.length} problem(s) keep the notes from being read (\`gusset check ${folder}\` shows them), so that nothing is said of values changed after the work covered them.\n`,
  );
  return history;
}

/** The fields of one note, and of these the ones at or below a path. */
function choose(history: BuildHistory, note: string, field: string | undefined): BuildHistory {
  const stem = (path: string) => basename(path, '.md');
  const ofNote = history.fields.filter(
    (f) => stem(f.note) === note || /^\d+/.exec(stem(f.note))?.[0] === note || f.note === note,
  );
  if (ofNote.length === 0)
    throw new UsageError(
      `found no measured value of a note \`${note}\`, expected one of ${[...new Set(history.fields.map((f) => stem(f.note)))].join(', ') || 'the notes that are committed'}`,
    );
  const fields =
    field === undefined ? ofNote : ofNote.filter((f) => f.field === field || f.field.startsWith(`${field}.`));
  if (fields.length === 0)
    throw new UsageError(
      `found no field \`${field}\` in ${note}, expected one of ${ofNote.map((f) => f.field).join(', ')}`,
    );
  return { ...history, fields };
}
