import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeBuild } from './input.js';

/** The history of a build with 60 notes and some 1,000 measured values: 2,000 commits, each of which measures two values of one note again. */
export function makeHistory(directory: string): void {
  const folder = join(directory, 'builds/wagon');
  makeBuild(folder, 60);
  const paths = [
    'build.md',
    ...readdirSync(join(folder, 'notes'))
      .sort()
      .map((name) => `notes/${name}`),
  ];
  const [buildFile = '', ...notes] = paths.map((path) => twofold(readFileSync(join(folder, path), 'utf8')));
  const first = commit(
    0,
    paths.map((path, i) => [path, [buildFile, ...notes][i]!]),
  );
  const later = Array.from({ length: 1999 }, (_, index) => {
    const place = ((index + 1) * 7) % notes.length;
    const round = Math.floor(index / notes.length);
    notes[place] = [2 * round, 2 * round + 7].reduce((text, nth) => measuredAgain(text, nth, index), notes[place]!);
    return commit(index + 1, [[paths[place + 1]!, notes[place]]]);
  });
  git(directory, ['init', '--quiet', '--initial-branch=main']);
  git(directory, ['fast-import', '--quiet'], [first, ...later].join(''));
  git(directory, ['reset', '--quiet', '--hard', 'main']);
}

/** How long git itself takes to tell every change of the folder, in seconds; the best of three. */
export function plainLog(directory: string): number {
  return Math.min(
    ...[1, 2, 3].map(() => {
      const from = performance.now();
      git(directory, ['log', '-p', '--', 'builds/wagon']);
      return (performance.now() - from) / 1000;
    }),
  );
}

/** A note whose first list has its first entry twice. */
const twofold = (note: string): string =>
  note.replace(/^  - id: (\w+)\n(?:    .*\n)+/m, (entry, id: string) => entry + entry.replace(id, `${id}-2`));

const value = /\d+(\.\d+)? (?=mm|deg|kN|N)/g;

/** The note with another number in its nth value, counted round. */
function measuredAgain(note: string, nth: number, by: number): string {
  const wanted = nth % [...note.matchAll(value)].length;
  let at = 0;
  return note.replace(value, (found) => (at++ === wanted ? `${parseInt(found, 10)}.${(by % 90) + 10} ` : found));
}

const data = (text: string): string => `data ${Buffer.byteLength(text)}\n${text}\n`;

const commit = (index: number, files: [path: string, text: string][]): string =>
  `commit refs/heads/main\ncommitter Jo Ashdown <jo@workshop.example> ${1_770_000_000 + index * 3600} +0000\n${data(`Commit ${index}`)}${files.map(([path, text]) => `M 100644 inline builds/wagon/${path}\n${data(text)}`).join('')}`;

const git = (cwd: string, args: string[], input?: string): void =>
  void execFileSync('git', args, { cwd, maxBuffer: Infinity, ...(input === undefined ? {} : { input }) });
