import type { State } from './state.js';

export interface FileDifference {
  /** Within the build; of the later state where it is there. */
  path: string;
  /** `replaced`: another content under the same name; `renamed`: the same content under another. */
  change: 'added' | 'removed' | 'replaced' | 'renamed' | 'described otherwise';
  /** The path that a renamed file had. */
  from?: string;
  /** Its caption, in the later state where it is there; none where the notes could not be read. */
  shows?: string;
  /** The caption that it had, where that is another. */
  showed?: string;
}

/** Photos or papers that are new, gone, replaced, renamed or described otherwise. */
export function fileDifferences(key: 'photos' | 'papers', from: State, to: State): FileDifference[] {
  const [before, after] = [named(key, from), named(key, to)];
  const paths = [...after.keys(), ...[...before.keys()].filter((path) => !after.has(path))];
  const gone = paths.filter((path) => !after.has(path));
  const moved = new Map<string, string>();
  for (const path of paths.filter((p) => !before.has(p))) {
    const old = gone.find((p) => from.files.get(p) === to.files.get(path) && ![...moved.values()].includes(p));
    if (old !== undefined) moved.set(path, old);
  }
  return paths.flatMap((path): FileDifference[] => {
    const old = moved.get(path) ?? path;
    const [shows, showed] = [after.get(path), before.get(old)];
    const change = changeOf(path, old);
    const described = change === undefined && shows !== showed;
    if ((change === undefined && !described) || [...moved.values()].includes(path)) return [];
    return [
      {
        path,
        change: change ?? 'described otherwise',
        ...(old === path ? {} : { from: old }),
        ...((shows ?? showed) ? { shows: shows ?? showed! } : {}),
        ...(shows !== undefined && showed !== undefined && shows !== showed ? { showed } : {}),
      },
    ];
  });

  function changeOf(path: string, old: string): FileDifference['change'] | undefined {
    if (old !== path) return 'renamed';
    if (!before.has(path)) return 'added';
    if (!after.has(path)) return 'removed';
    return from.files.get(path) === to.files.get(path) ? undefined : 'replaced';
  }
}

/** Files with their captions, as far as the notes could be read; else those that lie in the folder. */
function named(key: 'photos' | 'papers', { examined, files }: State): Map<string, string> {
  if (!examined)
    return new Map([...files.keys()].filter((path) => path.startsWith(`${key}/`)).map((path) => [path, '']));
  const { build } = examined;
  const entries = [
    ...build.notes.flatMap((n) => n.data[key] ?? []),
    ...(key === 'photos' ? (build.data.photos ?? []) : []),
  ];
  return new Map(entries.map((e) => [e.file, e.shows]));
}
