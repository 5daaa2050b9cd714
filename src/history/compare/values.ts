import { alike } from '../field-change.js';
import { differenceOf, sameValue } from '../written.js';
import type { Renames, State } from './state.js';

export interface ValueDifference {
  /** Path of the note within the build, in the later state where it is there. */
  note: string;
  field: string;
  from?: string;
  to?: string;
  difference?: string;
  /** Written otherwise, the same value. */
  rewritten?: true;
}

/** Measured values that are new, gone or different, in the order of the later state. */
export function valueDifferences(from: State, to: State, renames: Renames): ValueDifference[] {
  const later = new Map([...renames].map(([now, then]) => [then, now]));
  const gone = [...from.values.keys()].filter((path) => !to.values.has(later.get(path) ?? path));
  return [...to.values.keys(), ...gone].flatMap((note) => {
    const before = from.values.get(renames.get(note) ?? note) ?? new Map<string, string>();
    const after = to.values.get(note) ?? new Map<string, string>();
    return [...new Set([...after.keys(), ...before.keys()])].flatMap((field): ValueDifference[] => {
      const [a, b] = [before.get(field), after.get(field)];
      return alike(a, b) ? [] : [differing(note, field, a, b)];
    });
  });
}

function differing(note: string, field: string, from: string | undefined, to: string | undefined): ValueDifference {
  const difference = differenceOf(from, to);
  return {
    note,
    field,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(difference === undefined ? {} : { difference }),
    ...(from !== undefined && to !== undefined && sameValue(from, to) ? { rewritten: true } : {}),
  };
}
