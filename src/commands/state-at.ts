import { examine } from '../checks/examine.js';
import type { State } from '../history/compare/state.js';
import { readBlobs } from '../history/git/blobs.js';
import type { GitFolder } from '../history/git/run.js';
import { treeAt } from '../history/git/tree.js';
import { measuredText } from '../history/measured.js';
import { largestNote } from '../history/values.js';
import { withBuildAt, type BuildAt } from './build-at.js';
import { load, shapes } from './load.js';
import { photoTimes } from './photo-times.js';

/** Reads and examines a build as it was at a commit, with the rules of today. */
export async function stateAt(repo: GitFolder, at: BuildAt, label: string): Promise<State> {
  const tree = await treeAt(repo, at.commit, at.prefix);
  const files = new Map([...tree].map(([path, { blob }]) => [path, blob]));
  const state = { label, commit: at.commit, files, values: await valuesOf(repo, files) };
  return withBuildAt(repo, at, async (folder): Promise<State> => {
    const loaded = await load(folder, folder);
    if (!('build' in loaded)) return { ...state, problems: loaded.problems };
    const { build, rules } = loaded;
    return { ...state, examined: { build, evaluation: examine(build, rules, await photoTimes(build)) }, problems: [] };
  });
}

/** Measured values of every note that can be read; what is wrong with the others shows when the build is loaded. */
async function valuesOf(repo: GitFolder, files: ReadonlyMap<string, string>): Promise<State['values']> {
  const notes = [...files].filter(([path]) => path.endsWith('.md'));
  const parse = measuredText(shapes);
  const values = new Map<string, ReadonlyMap<string, string>>();
  let next = 0;
  for await (const blob of readBlobs(repo, notes.map(([, id]) => id), { maxBytes: largestNote })) {
    const path = notes[next++]![0];
    const fields = blob.state === 'read' ? readable(() => parse(blob.data.toString('utf8'), path)) : undefined;
    if (fields && fields.size > 0) values.set(path, fields);
  }
  return values;
}

function readable<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}
