import type { State } from '../../history/compare/state.js';
import { readBlobs } from '../../history/git/blobs.js';
import type { GitFolder } from '../../history/git/run.js';
import { treeAt } from '../../history/git/tree.js';
import { measuredText } from '../../history/measured.js';
import { largestNote } from '../../history/values.js';
import { type Loaded, load, shapes } from '../load.js';
import { type BuildAt, withBuildAt } from './build-at.js';
import type { Input } from './inputs.js';

/** Reads and examines a build as it was at a commit, with the rules of today. */
export async function stateAt(repo: GitFolder, at: BuildAt, label: string): Promise<State> {
  const tree = await treeAt(repo, at.commit, at.prefix);
  const files = new Map([...tree].map(([path, { blob }]) => [path, blob]));
  const state = { label, commit: at.commit, files, values: await valuesAt(repo, files) };
  return withBuildAt(repo, at, async (folder): Promise<State> => {
    const loaded = await load(folder, folder);
    if (!('build' in loaded)) return { ...state, problems: loaded.problems };
    const { build, evaluation } = loaded;
    return { ...state, examined: { build, evaluation }, problems: [] };
  });
}

/** The state that a build has which was read and examined already. */
export function stateOf(
  { build, evaluation }: Pick<Loaded, 'build' | 'evaluation'>,
  inputs: readonly Input[],
  label: string,
  commit: string,
): State {
  const files = new Map(inputs.map((i) => [i.path, i.blob]));
  const values = new Map(inputs.flatMap(({ path, text }) => (text ? measured(path, text) : [])));
  return { label, commit, files, values, examined: { build, evaluation }, problems: [] };
}

async function valuesAt(repo: GitFolder, files: ReadonlyMap<string, string>): Promise<State['values']> {
  const notes = [...files].filter(([path]) => path.endsWith('.md'));
  const values: [string, ReadonlyMap<string, string>][] = [];
  let next = 0;
  for await (const blob of readBlobs(
    repo,
    notes.map(([, id]) => id),
    { maxBytes: largestNote },
  )) {
    const path = notes[next++]![0];
    if (blob.state === 'read') values.push(...measured(path, blob.data));
  }
  return new Map(values);
}

const parse = measuredText(shapes);

/** The measured values of a note that can be read; what is wrong with another shows when the build is loaded. */
function measured(path: string, text: Buffer): [string, ReadonlyMap<string, string>][] {
  try {
    const fields = path.endsWith('.md') ? parse(text.toString('utf8'), path) : undefined;
    return fields && fields.size > 0 ? [[path, fields]] : [];
  } catch {
    return [];
  }
}
