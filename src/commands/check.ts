import { parseArgs } from 'node:util';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { outcomes, isOpen, type Finding, type Outcome } from '../checks/finding.js';
import { examine } from '../checks/examine.js';
import { printer } from './check-formats.js';
import { exits, type Exit, type Io } from './io.js';
import { load } from './load.js';
import { photoTimes } from './photo-times.js';
import { shardOf } from './shard.js';
import { UsageError } from './usage.js';

export const help = `gusset check [<build>…]

Checks the notes of a build against the limits and says what is found. Without a build: all under builds/.

  --format text|json|sarif   how the findings are printed (text)
  --allow <outcomes>   outcomes that do not make the exit code 1, such as missing,unconfirmed; or all
  --all                list what conforms too
  --shard <k>/<n>      only every nth build, beginning with the kth, to spread many builds over machines

Examples
  gusset check builds/wagon
  gusset check builds/wagon --format json > findings.json
  gusset check --allow missing,unconfirmed
`;

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { format: { type: 'string', default: 'text' }, allow: { type: 'string', default: '' }, all: { type: 'boolean', default: false }, shard: { type: 'string' } } });
  if (!['text', 'json', 'sarif'].includes(values.format)) throw new UsageError(`found --format ${values.format}, expected text, json or sarif`);
  const allowed = allowedOutcomes(values.allow);
  const folders = positionals.length > 0 ? positionals : allBuilds();
  if (folders.length === 0) throw new UsageError('found no build here, expected folders with a build.md under builds/; name one, or make one with `gusset start builds/<name>`');
  const print = printer(values.format, io, values.all, folders.length > 1);
  let worst: Exit = exits.clean;
  for (const folder of shardOf(folders, values.shard)) {
    const loaded = await load(folder);
    if (!('build' in loaded)) {
      worst = exits.usage;
      print.problems(folder, loaded.problems);
      continue;
    }
    const evaluation = examine(loaded.build, loaded.rules, await photoTimes(loaded.build));
    print.findings(loaded.build, evaluation, loaded.rules);
    if (worst === exits.clean && evaluation.findings.some((f) => counts(f, allowed))) worst = exits.findings;
  }
  print.end();
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
