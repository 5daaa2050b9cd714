import { resolve } from 'node:path';
import pc from 'picocolors';
import { amidSaves } from '../../app/amid-saves.js';
import { differences, newDoubts, newProblems } from '../../app/differences.js';
import { loadWithPapers } from '../../app/publish/document-papers.js';
import type { Evaluation } from '../../checks/engine/examine.js';
import { type Finding, isOpen } from '../../checks/engine/finding.js';
import { outcomeWord, signOf } from '../../checks/engine/outcome-words.js';
import { bySeverity } from '../../checks/engine/severity.js';
import { visible } from '../../platform/visible.js';
import { memory } from '../../project/memory.js';
import type { Problem } from '../../project/problem.js';
import { showProblem } from '../../project/show-problem.js';
import { follow } from '../../view/follow.js';
import { type Exit, exits, type Io, untilEnded } from '../terminal/io.js';
import type { Printer } from '../text/check-formats.js';
import { doubtLines, doubtsHeading, findingLines, nameOf, placeText } from '../text/finding-text.js';

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
  let before: Evaluation | undefined;
  let problems: readonly Problem[] = [];
  return async (saved) => {
    const loaded = await amidSaves(() => loadWithPapers(folder, recall));
    if (saved.length > 0)
      io.stdout(
        `${pc.createColors(io.colour).dim(`${new Date().toLocaleTimeString('en-GB')}  ${visible(saved.join(', '))}`)}\n`,
      );
    if (!('build' in loaded)) {
      if (saved.length === 0) print.problems(folder, loaded.problems);
      else io.stderr(problemsText(problems, loaded.problems, io));
      problems = loaded.problems;
      return;
    }
    const now = loaded.evaluation;
    if (before === undefined) print.findings(loaded.build, now, loaded.rules);
    else io.stdout(differencesText(before, now, problems.length > 0, io));
    [before, problems] = [now, []];
  };
}

function problemsText(before: readonly Problem[], now: readonly Problem[], io: Io): string {
  const fresh = newProblems(before, now).map((p) => showProblem(p, io.columns));
  const left = now.length - fresh.length;
  return `${[...fresh, ...(left > 0 ? [`${left} problem(s) as before.`] : [])].join('\n\n')}\n${now.length} problem(s) keep the notes from being read.\n\n`;
}

function differencesText(before: Evaluation, { findings, doubts }: Evaluation, mended: boolean, io: Io): string {
  const options = { width: io.columns ?? 100, colour: io.colour };
  const { bold, dim } = pc.createColors(io.colour);
  const was = (f: Finding) => `${signOf(f.outcome)} ${outcomeWord(f)}`;
  const differ = differences(before.findings, findings);
  const changed = differ.filter((d) => d.now).sort((a, b) => bySeverity(a.now!, b.now!));
  const { fresh, gone } = newDoubts(before.doubts, doubts);
  const lines = [
    ...(mended ? ['The notes can be read again.'] : []),
    ...changed.flatMap(({ before: then, now: finding }) => [
      ...findingLines(finding!, options),
      dim(
        `    ${!then ? 'new' : then.outcome === finding!.outcome ? 'as before, with other numbers or words' : `before: ${was(then)}`}`,
      ),
    ]),
    ...differ.filter((d) => !d.now).map(({ before: then }) => dim(`gone: ${nameOf(then!)} (${was(then!)})`)),
    ...(fresh.length > 0
      ? [bold(doubtsHeading), ...fresh.flatMap((d) => [...doubtLines(d, options), dim('    new')])]
      : []),
    ...gone.map((d) => dim(`gone: the doubt about ${visible(d.place.path)}, ${visible(d.found)} (${placeText(d)})`)),
    differ.length > 0
      ? `${differ.length} of ${findings.length} findings differ; ${findings.filter(isOpen).length} are open.`
      : fresh.length + gone.length > 0
        ? 'No finding differs.'
        : 'Nothing that was found differs.',
  ];
  return `${lines.join('\n')}\n\n`;
}
