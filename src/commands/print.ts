import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { Problem } from '../build/problem.js';
import { exits, type Exit, type Io } from './io.js';
import { load } from './load.js';
import { progressLine } from './progress.js';
import { showProblem } from './show-problem.js';
import { UsageError } from './usage.js';

export const help = `gusset print <build>

Writes the document of a build: HTML, PDF, findings and manifest, to out/<build>/.

  --as submission|proposal   which document (submission)
  --out <folder>             where to (out/<build>)
  --photos print|mail        size of the photos: for print (print), or small enough for mail

Examples
  gusset print builds/wagon
  gusset print builds/wagon --as proposal
`;

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { as: { type: 'string', default: 'submission' }, out: { type: 'string' }, photos: { type: 'string', default: 'print' } } });
  const [folder, more] = positionals;
  if (folder === undefined || more !== undefined) throw new UsageError(`found ${positionals.length} builds, expected one: gusset print builds/<name>`);
  if (values.as !== 'submission' && values.as !== 'proposal') throw new UsageError(`found --as ${values.as}, expected submission or proposal`);
  if (values.photos !== 'print' && values.photos !== 'mail') throw new UsageError(`found --photos ${values.photos}, expected print or mail`);
  const refuse = (problems: readonly Problem[]): Exit => {
    io.stderr(`${problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${problems.length} problem(s). Nothing was printed; what stood in the output folder is untouched.\n`);
    return exits.usage;
  };
  const loaded = await load(folder);
  if (!('build' in loaded)) return refuse(loaded.problems);
  const { publish } = await import('./publish.js');
  const progress = progressLine(io);
  try {
    const done = await publish(loaded, { as: values.as, out: resolve(values.out ?? `out/${basename(resolve(folder))}`), photos: values.photos, progress: progress.say });
    progress.end();
    if ('problems' in done) return refuse(done.problems);
    const shown = values.out ?? `out/${basename(resolve(folder))}`;
    io.stdout(`${done.printed.pages} pages, printed ${done.printed.passes} times for true page numbers, by ${done.printed.browser}.\n${done.files.map((f) => `  ${shown}/${f}`).join('\n')}\n`);
    return exits.clean;
  } finally {
    progress.end();
  }
}
