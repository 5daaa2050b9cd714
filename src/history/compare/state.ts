import type { Evaluation } from '../../checks/engine/examine.js';
import type { Build } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';

/** A build as it was at one commit, read and examined with the rules of today. */
export interface State {
  /** `issue A` or `commit 1a2b3c4d`. */
  label: string;
  commit: string;
  /** The version of this program that made the issue, as its tag says. */
  madeWith?: string;
  /** Measured values as they were written, by the path of the note within the build and by field. */
  values: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** What tells contents apart (ids of git), by path within the build. */
  files: ReadonlyMap<string, string>;
  /** Absent where the notes of then cannot be read now; `problems` say why. */
  examined?: { build: Build; evaluation: Evaluation };
  problems: readonly Problem[];
}

/** Paths of notes now, with the path that each had in the earlier state, where it was another. */
export type Renames = ReadonlyMap<string, string>;
