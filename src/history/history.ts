import type { Kind } from '../checks/engine/kind.js';
import type { Build } from '../project/model.js';
import type { KindShapes } from '../project/read.js';
import { type Covered, coveredBy } from './covered.js';
import { readBlobs } from './git/blobs.js';
import type { Repository } from './git/repository.js';
import { fileVersions } from './git/versions.js';
import { measuredText } from './measured.js';
import { type FieldHistory, largestNote, type ValueEvent, type ValueHistory, valuesThroughTime } from './values.js';
import { differenceOf, sameValue } from './written.js';

export interface ValueChange extends ValueEvent {
  /** From the value before, in its unit; absent where there are no two quantities to compare. */
  difference?: string;
  /** Only the writing changed: `25.4 mm` became `1 in`. */
  rewritten?: true;
  /** What it measures had been covered by then. */
  late?: Covered;
}

export interface FieldThroughTime extends FieldHistory {
  events: ValueChange[];
}

/** Who entered or changed which measured value when, up to one commit. */
export interface BuildHistory {
  /** `note` is relative to the build's folder, where the note lies in it. */
  fields: FieldThroughTime[];
  /** States of notes that could not be read, with paths from the root of the repository. */
  unread: ValueHistory['unread'];
  /** What this repository cannot tell, in words. */
  limits: readonly string[];
}

/** Reads the history of a build's folder (`repo.prefix`) up to the commit `at`. */
export async function historyOf(repo: Repository, at: string, shapes: KindShapes): Promise<BuildHistory> {
  const versions = await fileVersions(repo, repo.prefix, { endings: ['.md'], at });
  const values = await valuesThroughTime(versions, measuredText(shapes), (ids) =>
    readBlobs(repo, ids, { maxBytes: largestNote }),
  );
  const start = repo.prefix === '' ? '' : `${repo.prefix}/`;
  const within = (path: string): string => (path.startsWith(start) ? path.slice(start.length) : path);
  return {
    fields: values.fields.map((field) => ({
      ...field,
      note: within(field.note),
      events: field.events.map(withDifference),
    })),
    unread: values.unread,
    limits: repo.limits,
  };
}

function withDifference(event: ValueEvent): ValueChange {
  const { from, to } = event;
  const difference = differenceOf(from, to);
  return {
    ...event,
    ...(difference === undefined ? {} : { difference }),
    ...(from !== undefined && to !== undefined && sameValue(from, to) ? { rewritten: true } : {}),
  };
}

/** Points out every change of a value that the author dates after the day on which the work covered what it measures. */
export function pointOutLate(
  history: BuildHistory,
  build: Pick<Build, 'notes'>,
  kinds: ReadonlyMap<string, Kind>,
): BuildHistory {
  const fields = history.fields.map((field) => {
    const note = build.notes.find((n) => n.path === field.note);
    const kind = note && kinds.get(note.kind);
    const covered = note && kind ? coveredBy(field.field, note, kind) : undefined;
    if (!covered) return field;
    const isLate = ({ from, rewritten, date }: ValueChange): boolean =>
      from !== undefined && !rewritten && date.slice(0, 10) > covered.on;
    return { ...field, events: field.events.map((event) => (isLate(event) ? { ...event, late: covered } : event)) };
  });
  return { ...history, fields };
}

/** Whether a value was changed since it was first entered. */
export function isChanged(field: FieldThroughTime): boolean {
  return field.events.length > 1;
}
