import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { loadWithPapers } from '../app/publish/document-papers.js';
import { type Finding, isOpen, type Outcome, outcomes } from '../checks/engine/finding.js';
import { UsageError } from '../platform/usage.js';
import { shardOf } from './check/shard.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { printer } from './text/check-formats.js';

export const form = formOf({
  command: 'check',
  names: [{ name: 'build', count: 'any', is: 'folder' }],
  about: 'Checks the notes of a build against the limits and says what is found. Without a build: all under builds/.',
  options: {
    format: { oneOf: ['text', 'json', 'sarif'], usual: 'text', says: 'how the findings are printed' },
    allow: {
      takes: 'outcomes',
      usual: '',
      says: 'outcomes that do not make the exit code 1, such as not-measured,unanswered; or all',
    },
    all: { flag: true, says: 'list what conforms too, and tell everything in full' },
    watch: { flag: true, says: 'check again as files are saved, and print only what differs' },
    shard: { takes: 'k/n', says: 'only every nth build, beginning with the kth, to spread many builds over machines' },
  },
  examples: [
    'gusset check builds/wagon',
    'gusset check builds/wagon --watch',
    'gusset check builds/wagon --format json > findings.json',
    'gusset check --allow not-measured,unanswered,limit-not-confirmed',
  ],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  if (values.watch && values.format !== 'text')
    throw new UsageError(
      `found --watch with --format ${values.format}, expected one of the two: what differs is told as text`,
    );
  const allowed = allowedOutcomes(values.allow);
  const folders = names.length > 0 ? names : allBuilds();
  if (folders.length === 0)
    throw new UsageError(
      'found no build here, expected folders with a build.md under builds/; name one, or make one with `gusset start`',
    );
  const print = printer(values.format, io, values.all, folders.length > 1);
  if (values.watch) return (await import('./check/watch.js')).watchBuilds(shardOf(folders, values.shard), print, io);
  let worst: Exit = exits.clean;
  for (const folder of shardOf(folders, values.shard)) {
    const loaded = await loadWithPapers(folder);
    if (!('build' in loaded)) {
      worst = exits.usage;
      print.problems(folder, loaded.problems);
      continue;
    }
    print.findings(loaded.build, loaded.evaluation, loaded.rules);
    if (worst === exits.clean && loaded.evaluation.findings.some((f) => counts(f, allowed))) worst = exits.findings;
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
  const names = text
    .split(',')
    .map((t) => t.trim())
    .filter(Boolean);
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
