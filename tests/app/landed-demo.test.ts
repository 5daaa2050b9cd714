import { execFileSync } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { updateBuild } from '../../src/app/notes/update-build.js';
import { showProblem } from '../../src/project/show-problem.js';
import { configure, temporary } from '../history/throwaway.js';
import { pictureHead } from '../project/scratch.js';

/*
 * The notes of the demo as version 0.1.0 had them, at commit 3f9d347, in one commit of a repository of its own; pictures and
 * papers are stand-ins of a line. No later version may fail to read them: what renames or drops a field or a word of a note
 * adds its row to `src/project/obsolete.ts`, and this test says which row is missing.
 */
const bundle = fileURLToPath(new URL('verify/landed/demo.bundle', import.meta.url));

let folder: string;
beforeAll(() => {
  const repository = temporary();
  execFileSync('git', ['clone', '--quiet', '--mirror', bundle, `${repository}/.git`], { stdio: 'pipe' });
  configure(repository, '');
  execFileSync('git', ['reset', '--quiet', '--hard', 'main'], { cwd: repository });
  folder = join(repository, 'builds/sedge');
  // The bundle holds words in the place of the photos.
  for (const name of readdirSync(join(folder, 'photos'))) writeFileSync(join(folder, 'photos', name), pictureHead);
});

const examined = async () => {
  const loaded = await load(folder, folder);
  expect(loaded.problems.map((p) => showProblem(p))).toEqual([]);
  if (!('build' in loaded)) throw new Error('not read');
  const { build, evaluation } = loaded;
  return { build, outcomes: evaluation.findings.map(({ id, outcome, says }) => [id, outcome, says]) };
};

it('every field and word of the landed demo is read, and rewriting it changes no outcome', {
  timeout: 60_000,
}, async () => {
  const before = await examined();
  expect(before.outcomes.length).toBeGreaterThan(100);
  const { problems, left, formatIn } = await updateBuild(folder, () => true);
  expect(problems).toEqual([]);
  if (left.length === 0) expect(formatIn).toMatch(/build\.md$/);
  const after = await examined();
  expect(after.build.obsolete.map((use) => use.found).sort()).toEqual(left.map((use) => use.found).sort());
  expect(after.outcomes).toEqual(before.outcomes);
});
