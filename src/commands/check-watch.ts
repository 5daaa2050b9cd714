import { resolve } from 'node:path';
import pc from 'picocolors';
import { memory } from '../build/memory.js';
import type { Problem } from '../build/problem.js';
import { visible } from '../build/visible.js';
import { isOpen, type Finding } from '../checks/finding.js';
import { outcomeWord, signs } from '../checks/outcome-words.js';
import { bySeriousness } from '../checks/seriousness.js';
import { follow } from '../view/follow.js';
import type { Printer } from './check-formats.js';
import { differences, newProblems, type Difference } from './differences.js';
import { findingLines, nameOf } from './finding-text.js';
import { exits, untilEnded, type Exit, type Io } from './io.js';
import { load } from './load.js';
import { showProblem } from './show-problem.js';

/** Checks builds once in full, and after each save again: then only what differs is printed. */
export async function watchBuilds(folders: readonly string[], print: Printer, io: Io): Promise<Exit> {
  const ended = untilEnded(io);
  let fail: (cause: unknown) => void = () => {};
  const failure = new Promise<never>((_, reject) => (fail = reject));
  const looks = folders.map((folder) => ({ folder, look: looker(folder, print, io) }));
  for (const { look } of looks) await look([]);
  const following = await Promise.all(looks.map(({ folder, look }) => follow(resolve(folder), look, fail)));
  io.stdout('Checking again as files are saved; Ctrl-C ends it.\n');
  try {
    await Promise.race([ended, failure]);
  } finally {
    await Promise.all(following.map((f) => f.close()));
  }
  return exits.clean;
}

function looker(folder: string, print: Printer, io: Io): (saved: readonly string[]) => Promise<void> {
  const recall = memory();
  let findings: readonly Finding[] | undefined;
  let problems: readonly Problem[] = [];
  return async (saved) => {
    const loaded = await load(folder, process.cwd(), recall);
    if (saved.length > 0) io.stdout(`${pc.createColors(io.colour).dim(`${new Date().toLocaleTimeString('en-GB')}  ${visible(saved.join(', '))}`)}\n`);
    if (!('build' in loaded)) {
      if (saved.length === 0) print.problems(folder, loaded.problems);
      else io.stderr(problemsText(problems, loaded.problems, io));
      problems = loaded.problems;
      return;
    }
    const now = loaded.evaluation.findings;
    if (findings === undefined) print.findings(loaded.build, loaded.evaluation, loaded.rules);
    else io.stdout(differencesText(differences(findings, now), problems.length > 0, now, io));
    [findings, problems] = [now, []];
  };
}

function problemsText(before: readonly Problem[], now: readonly Problem[], io: Io): string {
  const fresh = newProblems(before, now).map((p) => showProblem(p, io.columns));
  const left = now.length - fresh.length;
  return `${[...fresh, ...(left > 0 ? [`${left} problem(s) as before.`] : [])].join('\n\n')}\n${now.length} problem(s) keep the notes from being read.\n\n`;
}

function differencesText(of: readonly Difference[], mended: boolean, now: readonly Finding[], io: Io): string {
  const options = { width: io.columns ?? 100, colour: io.colour };
  const { dim } = pc.createColors(io.colour);
  const was = (f: Finding) => `${signs[f.outcome]} ${outcomeWord(f)}`;
  const changed = of.filter((d) => d.now).sort((a, b) => bySeriousness(a.now!, b.now!));
  const lines = [
    ...(mended ? ['The notes can be read again.'] : []),
    ...changed.flatMap(({ before, now: finding }) => [...findingLines(finding!, options), dim(`    ${!before ? 'new' : before.outcome === finding!.outcome ? 'as before, with other numbers or words' : `before: ${was(before)}`}`)]),
    ...of.filter((d) => !d.now).map(({ before }) => dim(`gone: ${nameOf(before!)} (${was(before!)})`)),
    of.length === 0 ? 'Nothing that was found differs.' : `${of.length} of ${now.length} findings differ; ${now.filter(isOpen).length} are open.`,
  ];
  return `${lines.join('\n')}\n\n`;
}
