import type { Change } from './raw-log.js';
import { type Unions, unions } from './unions.js';
import type { FileVersions, Version } from './versions.js';

/** One state of one file. The same object stands for the file in every commit that did not touch it. */
export interface FileState {
  /** Number of the file through all its names; two that were merged into one are told by `Lineages.fileOf`. */
  file: number;
  path: string;
  /** Id of the contents; none once the file was deleted. */
  blob: string | undefined;
}

interface Touched {
  now: FileState;
  /** The file at each parent, in their order. */
  before: (FileState | undefined)[];
}

export interface Lineages {
  steps: { version: Version; touched: Touched[] }[];
  fileOf: (state: FileState) => number;
  /** Files that lay in the folder at any time, under whatever name. */
  inFolder: Set<number>;
  /** The last state of every file there is, by path. */
  current: Map<string, FileState>;
}

type Tree = Map<string, FileState>;

/** Follows every file through renames and merges. A file that is made anew under its old path goes on as the same file. */
export function lineages({ folder, versions }: FileVersions): Lineages {
  const files = unions();
  const trees = new Map<string, Tree>();
  const waiting = childCounts(versions);
  const steps = versions.map((version) => {
    const parents = version.parents.map((parent) => trees.get(parent)).filter((tree) => tree !== undefined);
    const last = version.parents.length === 1 && waiting.get(version.parents[0] ?? '') === 1;
    const tree: Tree = last ? (parents[0] ?? new Map()) : new Map(parents[0]);
    const changed = apply(tree, version.changes, parents.slice(1), files);
    const touched = parents.length > 1 ? merged(tree, parents, files) : changed;
    trees.set(version.commit, tree);
    for (const parent of version.parents) {
      const left = (waiting.get(parent) ?? 1) - 1;
      waiting.set(parent, left);
      if (left === 0) trees.delete(parent);
    }
    return { version, touched };
  });

  const fileOf = (state: FileState): number => files.find(state.file);
  const inside = (path: string): boolean => folder === '' || path.startsWith(`${folder}/`);
  const states = steps.flatMap((step) => step.touched.map(({ now }) => now));
  const end = trees.get(versions.at(-1)?.commit ?? '') ?? new Map<string, FileState>();
  return {
    steps,
    fileOf,
    inFolder: new Set(states.filter(({ path }) => inside(path)).map(fileOf)),
    current: new Map([...end].filter(([, { blob }]) => blob !== undefined)),
  };
}

function childCounts(versions: readonly Version[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { parents } of versions) {
    for (const parent of parents) counts.set(parent, (counts.get(parent) ?? 0) + 1);
  }
  return counts;
}

/** Turns the tree of the first parent into that of the commit. */
function apply(tree: Tree, changes: readonly Change[], otherParents: readonly Tree[], files: Unions): Touched[] {
  const old = changes.map(({ from, path }) => tree.get(from ?? path));
  for (const { from } of changes) if (from !== undefined) tree.delete(from);
  const present =
    otherParents.length === 0
      ? new Set<number>()
      : new Set([...tree.values()].filter(alive).map(({ file }) => files.find(file)));
  return changes.map(({ path, blob }, index) => {
    const before = old[index];
    const there = otherParents.map((parent) => parent.get(path)).find((state) => state !== undefined && alive(state));
    const adopted = there === undefined || present.has(files.find(there.file)) ? undefined : there.file;
    const now = { file: before?.file ?? adopted ?? files.add(), path, blob };
    tree.set(path, now);
    return { now, before: [before] };
  });
}

/** What a merge touched: every file that is not one and the same state at all parents and in the result. */
function merged(tree: Tree, parents: readonly Tree[], files: Unions): Touched[] {
  uniteSamePaths(tree, parents, files);
  const byFile = (of: Tree): Map<number, FileState> => {
    // A file that lives goes before one that was deleted under another path.
    const states = [...of.values()].sort((a, b) => Number(alive(a)) - Number(alive(b)));
    return new Map(states.map((state) => [files.find(state.file), state]));
  };
  const result = byFile(tree);
  const sides = parents.map(byFile);
  const touched: Touched[] = [];
  for (const file of new Set([...result.keys(), ...sides.flatMap((side) => [...side.keys()])])) {
    const before = sides.map((side) => side.get(file));
    const found = result.get(file);
    if (before.every((state) => state === found)) continue;
    const path = found?.path ?? before.find((state) => state !== undefined)?.path ?? '';
    const now = { file, path, blob: found?.blob };
    if (found !== undefined || !tree.has(path)) tree.set(path, now);
    touched.push({ now, before });
  }
  return touched;
}

/** Two sides may each have made a file under the same path; from the merge on they are one. */
function uniteSamePaths(tree: Tree, parents: readonly Tree[], files: Unions): void {
  const at = (of: Tree): Map<number, string> =>
    new Map([...of].filter(([, state]) => alive(state)).map(([path, state]) => [files.find(state.file), path]));
  const resultAt = at(tree);
  for (const parent of parents) {
    const parentAt = at(parent);
    for (const [path, theirs] of parent) {
      const ours = tree.get(path);
      if (ours === undefined || ours === theirs || !alive(ours) || !alive(theirs)) continue;
      const [one, other] = [files.find(ours.file), files.find(theirs.file)];
      if (one !== other && !resultAt.has(other) && !parentAt.has(one)) files.unite(one, other);
    }
  }
}

function alive(state: FileState): boolean {
  return state.blob !== undefined;
}
