import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { examine } from '../checks/examine.js';
import { exits, type Exit, type Io } from './io.js';
import { load } from './load.js';
import { photoTimes } from './photo-times.js';
import { progressLine } from './progress.js';
import { showProblem } from './show-problem.js';
import { UsageError } from './usage.js';

export const help = `gusset print <build>

Writes the document of a build: HTML, PDF, findings and manifest, to out/<build>/.

  --as submission|proposal   which document (submission)
  --out <folder>             where to (out/<build>)

Examples
  gusset print builds/wagon
  gusset print builds/wagon --as proposal
`;

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { as: { type: 'string', default: 'submission' }, out: { type: 'string' } } });
  const [folder, more] = positionals;
  if (folder === undefined || more !== undefined) throw new UsageError(`found ${positionals.length} builds, expected one: gusset print builds/<name>`);
  if (values.as !== 'submission' && values.as !== 'proposal') throw new UsageError(`found --as ${values.as}, expected submission or proposal`);
  const loaded = await load(folder);
  if (!('build' in loaded)) {
    io.stderr(`${loaded.problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${loaded.problems.length} problem(s). Nothing was printed; what stood in the output folder is untouched.\n`);
    return exits.usage;
  }
  const takenAt = await photoTimes(loaded.build);
  const evaluation = examine(loaded.build, loaded.rules, takenAt);
  const { publish } = await import('./publish.js');
  const progress = progressLine(io);
  try {
    const done = await publish(loaded.build, loaded.rules, evaluation, takenAt, { as: values.as, out: resolve(values.out ?? `out/${basename(resolve(folder))}`), progress: progress.say });
    progress.end();
    const shown = values.out ?? `out/${basename(resolve(folder))}`;
    io.stdout(`${done.printed.pages} pages, printed ${done.printed.passes} times for true page numbers, by ${done.printed.browser}.\n${done.files.map((f) => `  ${shown}/${f}`).join('\n')}\n`);
    return exits.clean;
  } finally {
    progress.end();
  }
}
