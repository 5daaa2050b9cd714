import { parseArgs } from 'node:util';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { outcomes, isOpen, type Finding, type Outcome } from '../checks/finding.js';
import { examine } from '../checks/examine.js';
import { findingsJson } from '../checks/findings-json.js';
import { exits, type Exit, type Io } from './io.js';
import { load } from './load.js';
import { photoTimes } from './photo-times.js';
import { showProblem } from './show-problem.js';
import { summaryText } from './summary-text.js';
import { UsageError } from './usage.js';

export const help = `gusset check [<build>…]

Checks the notes of a build against the limits and says what is found. Without a build: all under builds/.

  --format text|json   how the findings are printed (text)
  --allow <outcomes>   outcomes that do not make the exit code 1, such as missing,unconfirmed; or all
  --all                list what conforms too

Examples
  gusset check builds/wagon
  gusset check builds/wagon --format json > findings.json
  gusset check --allow missing,unconfirmed
`;

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { format: { type: 'string', default: 'text' }, allow: { type: 'string', default: '' }, all: { type: 'boolean', default: false } } });
  if (values.format !== 'text' && values.format !== 'json') throw new UsageError(`found --format ${values.format}, expected text or json`);
  const allowed = allowedOutcomes(values.allow);
  const folders = positionals.length > 0 ? positionals : allBuilds();
  if (folders.length === 0) throw new UsageError('found no build here, expected folders with a build.md under builds/; name one, or make one with `gusset start builds/<name>`');
  let worst: Exit = exits.clean;
  const json: unknown[] = [];
  for (const folder of folders) {
    const loaded = await load(folder);
    if (!('build' in loaded)) {
      worst = exits.usage;
      if (values.format === 'json') json.push({ form: 'gusset-problems/1', build: folder, problems: loaded.problems });
      else io.stderr(`${loaded.problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${loaded.problems.length} problem(s) keep ${folder} from being read. Nothing was checked.\n`);
      continue;
    }
    const evaluation = examine(loaded.build, loaded.rules, await photoTimes(loaded.build));
    if (values.format === 'json') json.push(findingsJson(loaded.build, evaluation));
    else io.stdout(summaryText(loaded.build, evaluation, { all: values.all, width: io.columns ?? 100, colour: io.colour }));
    if (worst === exits.clean && evaluation.findings.some((f) => counts(f, allowed))) worst = exits.findings;
  }
  if (values.format === 'json') io.stdout(`${JSON.stringify(json.length === 1 ? json[0] : json, null, 2)}\n`);
  return worst;
}

/** Findings that make the exit code 1. */
function counts(finding: Finding, allowed: ReadonlySet<Outcome>): boolean {
  return isOpen(finding) && !allowed.has(finding.outcome);
}

function allowedOutcomes(text: string): ReadonlySet<Outcome> {
  if (text === 'all') return new Set(outcomes);
  const names = text.split(',').map((t) => t.trim()).filter(Boolean);
  const unknown = names.find((n) => !(outcomes as readonly string[]).includes(n));
  if (unknown) throw new UsageError(`found --allow ${unknown}, expected any of ${outcomes.join(', ')} or all`);
  return new Set(names as Outcome[]);
}

export function allBuilds(): string[] {
  if (!existsSync('builds')) return [];
  return readdirSync('builds', { withFileTypes: true })
    .filter((e) => e.isDirectory() && existsSync(join('builds', e.name, 'build.md')))
    .map((e) => join('builds', e.name));
}
