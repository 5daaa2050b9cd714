import { basename, resolve } from 'node:path';
import { load } from '../app/load.js';
import type { Problem } from '../project/problem.js';
import { showProblem } from '../project/show-problem.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { progressLine } from './terminal/progress.js';

export const form = formOf({
  command: 'print',
  names: [{ name: 'build', is: 'folder' }],
  about: 'Writes the document of a build: HTML, PDF, findings and manifest, to out/<build>/.',
  options: {
    as: { oneOf: ['submission', 'proposal'], usual: 'submission', says: 'which document' },
    out: { takes: 'folder', otherwise: 'out/<build>', is: 'folder', says: 'where to' },
    photos: {
      oneOf: ['print', 'mail'],
      usual: 'print',
      says: 'size of the photos: for print, or small enough for mail',
    },
  },
  examples: ['gusset print builds/wagon', 'gusset print builds/wagon --as proposal'],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder] = names as [string];
  const refuse = (problems: readonly Problem[]): Exit => {
    io.stderr(
      `${problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${problems.length} problem(s). Nothing was printed; what stood in the output folder is untouched.\n`,
    );
    return exits.usage;
  };
  const loaded = await load(folder);
  if (!('build' in loaded)) return refuse(loaded.problems);
  const { publish } = await import('../app/publish/publish.js');
  const shown = values.out ?? `out/${basename(resolve(folder))}`;
  const progress = progressLine(io);
  try {
    const done = await publish(loaded, {
      as: values.as,
      out: shown,
      photos: values.photos,
      progress: progress.say,
    });
    progress.end();
    if ('problems' in done) return refuse(done.problems);
    io.stdout(
      `${done.printed.pages} pages, printed by ${done.printed.browser}.\n${done.files.map((f) => `  ${shown}/${f}`).join('\n')}\n`,
    );
    return exits.clean;
  } finally {
    progress.end();
  }
}
