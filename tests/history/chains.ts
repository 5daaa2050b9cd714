import { lineages } from '../../src/history/git/lineage.js';
import type { FileVersions, Version } from '../../src/history/git/versions.js';

export interface Link {
  version: Version;
  /** The path at that time. */
  path: string;
  /** The path before, where this commit renamed the file. */
  from?: string;
  /** None where the file was deleted. */
  blob: string | undefined;
  previousBlob: string | undefined;
}

/**
 * For every file that lies in the folder now, by its path: each commit that gave it other contents or another name,
 * oldest first. A merge is listed only where its result differs from all its parents.
 */
export function chains(found: FileVersions): Map<string, Link[]> {
  const { steps, fileOf, current } = lineages(found);
  const links = new Map<number, Link[]>();
  for (const { version, touched } of steps) {
    for (const { now, before } of touched) {
      if (before.some((state) => state !== undefined && state.path === now.path && state.blob === now.blob)) continue;
      if (now.blob === undefined && before.every((state) => state?.blob === undefined)) continue;
      const previous = before.find((state) => state !== undefined);
      const link = {
        version,
        path: now.path,
        ...(previous === undefined || previous.path === now.path ? {} : { from: previous.path }),
        blob: now.blob,
        previousBlob: previous?.blob,
      };
      links.set(fileOf(now), [...(links.get(fileOf(now)) ?? []), link]);
    }
  }
  const inside = [...current].filter(([path]) => found.folder === '' || path.startsWith(`${found.folder}/`));
  return new Map(inside.map(([path, state]) => [path, links.get(fileOf(state)) ?? []]));
}
