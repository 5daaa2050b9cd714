import type { Place } from '../calc/value.js';
import type { Common } from './common.js';
import type { Frontmatter } from './frontmatter.js';
import type { Query } from './queries.js';
import type { ObsoleteUse } from './translate.js';
import type { Unread } from './unread.js';
import type { BuildData } from './vehicle.js';

/** A file of the build that a note or `build.md` names. `path` is relative to the build's folder, with forward slashes. */
export interface BuildFile {
  path: string;
  absolute: string;
  bytes: number;
  /** What was read, of a file that was read as text. */
  text?: string;
}

export interface Note {
  /** File name without `.md`, for instance `030-driveline`; what findings and sheets are named after. */
  name: string;
  /** Path relative to the build's folder. */
  path: string;
  /** As shown in messages. */
  file: string;
  kind: string;
  /** The validated frontmatter: the common keys and those of its kind. */
  data: Common & Record<string, unknown>;
  front: Frontmatter;
  text: string;
}

export interface Build {
  /** Folder name. */
  name: string;
  directory: string;
  /** `build.md` as shown in messages. */
  file: string;
  text: string;
  data: BuildData;
  front: Frontmatter;
  notes: Note[];
  queries: Query[];
  /** Photos and papers by their path relative to the build's folder. */
  files: Map<string, BuildFile>;
  /** `limits.yaml` of the workshop and of the build, in that order. */
  limits: LimitsFile[];
  /** Fields and words of an earlier format, read as what stands for them now. */
  obsolete: readonly ObsoleteUse[];
  /** What lies in its folders and is neither read nor named by a note. */
  unread: readonly Unread[];
  /** Every file that was read or named, for the manifest. */
  inputs: BuildFile[];
}

/** The name under which the issues of a build are found: its own, or that of its folder where it has none yet. */
export const issuesUnder = ({ name, data }: { name: string; data: Pick<BuildData, 'id'> }): string => data.id ?? name;

export interface LimitsFile {
  file: string;
  path: string;
  front: Frontmatter;
}

/** A pointer for a finding when no value is there to point at: the nearest key that is. */
export function placeIn(note: Pick<Note, 'front' | 'file'>, path: readonly (string | number)[]): Place {
  const { line, column, endColumn } = note.front.locate(path);
  return { file: note.file, line, column, endColumn, path: path.join('.') };
}
