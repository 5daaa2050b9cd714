import { load } from '../app/load.js';
import { planJson } from '../app/results/plan-json.js';
import { kinds } from '../checks/kinds/index.js';
import { planOf } from '../checks/plan/plan.js';
import { jsonText } from '../platform/json-text.js';
import { didYouMean } from '../platform/near.js';
import { UsageError } from '../platform/usage.js';
import { afresh } from '../project/memory.js';
import { showProblem } from '../project/show-problem.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { planText } from './text/plan-text.js';

export const form = formOf({
  command: 'plan',
  names: [{ name: 'build', is: 'folder' }],
  about: `What to know before cutting: sections touched, limits, figures to read in the own copy, calculations to prepare, what to
measure as received, what to show before it is covered, tests to book, and what to ask the certifier.`,
  options: {
    kinds: { takes: 'kinds', usual: '', says: 'kinds of work that there is no note of yet, such as engine,brakes' },
    format: { oneOf: ['text', 'json'], usual: 'text', says: 'how it is printed' },
  },
  examples: [
    'gusset plan builds/wagon',
    'gusset plan builds/wagon --kinds engine,brakes',
    'gusset plan builds/wagon --format json > plan.json',
  ],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder] = names as [string];
  const named = namedKinds(values.kinds);
  const loaded = await load(folder, process.cwd(), afresh, named.length > 0);
  if (!('build' in loaded)) {
    const empty = loaded.problems.some((p) => p.code === 'build-empty')
      ? '\nWithout notes, name the kinds of work: --kinds engine,brakes.'
      : '';
    io.stderr(
      `${loaded.problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${loaded.problems.length} problem(s) keep ${folder} from being read. Nothing was planned.${empty}\n`,
    );
    return exits.usage;
  }
  const { build, rules, evaluation } = loaded;
  const plan = planOf(build, rules, evaluation, named);
  io.stdout(
    values.format === 'json'
      ? `${jsonText(planJson(build, plan))}\n`
      : planText(build, plan, { width: io.columns ?? 100, colour: io.colour }),
  );
  return exits.clean;
}

function namedKinds(text: string): string[] {
  const named = text
    .split(',')
    .map((t) => t.trim())
    .filter(Boolean);
  const unknown = named.find((n) => !kinds.has(n));
  if (unknown)
    throw new UsageError(`found --kinds ${unknown}, expected kinds of note; ${didYouMean(unknown, [...kinds.keys()])}`);
  return named;
}
