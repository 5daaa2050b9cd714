import { extname } from 'node:path';
import { type FieldState, fieldChange } from './field-change.js';
import type { Blob } from './git/blobs.js';
import { type FileState, lineages } from './git/lineage.js';
import type { FileVersions, Version } from './git/versions.js';
import type { Person } from './who.js';

/** The fields of a note by name, each with its text as written; nothing if the note cannot be read. May throw for the same reason. */
export type ParseNote = (text: string, path: string) => ReadonlyMap<string, string> | undefined;

export interface ValueEvent {
  commit: string;
  author: Person;
  /** When the author says so (ISO 8601). */
  date: string;
  subject: string;
  /** Path of the note at that time. */
  path: string;
  /** The text before; none where the value is new. In a merge, the first value that gave way. */
  from?: string;
  /** The text after; none where the value was taken out. */
  to?: string;
  /** For a merge that settled between values or brought a new one: the value on each side. */
  sides?: (string | undefined)[];
  /** The clone is cut off here: the value may be older, and somebody else's. */
  boundary?: true;
  /** Commits before this one in which the note could not be read: the value may have changed there. */
  unread?: string[];
}

export interface FieldHistory {
  /** Path of the note now, or the last it had. */
  note: string;
  field: string;
  /** False if note or field are there no more. */
  present: boolean;
  /** Oldest first: parents before children, else by date of commit. */
  events: ValueEvent[];
}

export interface ValueHistory {
  fields: FieldHistory[];
  /** States of notes that could not be read. */
  unread: { commit: string; path: string; reason: string }[];
}

/** A state of a note, read. */
type Content = ReadonlyMap<string, string> | { reason: string };

/** Larger notes are taken for unreadable, in bytes. */
export const largestNote = 4 * 1024 * 1024;

/**
 * Who changed which value when, for all notes that lay in the folder at any time. Each distinct content is read and
 * parsed once. Changes of white space or line ends alone are no changes.
 */
export async function valuesThroughTime(
  found: FileVersions,
  parse: ParseNote,
  read: (ids: Iterable<string>) => AsyncIterable<Blob>,
): Promise<ValueHistory> {
  const { steps, fileOf, inFolder, current } = lineages(found);
  const relevant = steps.map(({ version, touched }) => ({
    version,
    touched: touched.filter(({ now }) => inFolder.has(fileOf(now))),
  }));
  const states = relevant.flatMap(({ touched }) => touched.map(({ now }) => now));
  const contents = await contentsOf(states, parse, read);

  const known = new Map<FileState, { fields: ReadonlyMap<string, FieldState>; unread: string[] }>();
  const histories = new Map<string, FieldHistory>();
  const unread: ValueHistory['unread'] = [];
  for (const { version, touched } of relevant) {
    for (const { now, before } of touched) {
      const content =
        now.blob === undefined
          ? new Map<string, string>()
          : (contents.get(key(now, now.blob)) ?? { reason: 'Its contents are not in this clone.' });
      const sides = before.map((state) => (state === undefined ? undefined : known.get(state)));
      const missed = [...new Set(sides.flatMap((side) => side?.unread ?? []))];
      const fieldsBefore = sides.map((side) => side?.fields ?? new Map<string, FieldState>());
      if ('reason' in content) {
        unread.push({ commit: version.commit, path: now.path, reason: content.reason });
        known.set(now, { fields: fieldsBefore[0] ?? new Map(), unread: [...missed, version.commit] });
        continue;
      }
      const fields = new Map<string, FieldState>();
      for (const field of new Set([...content.keys(), ...fieldsBefore.flatMap((side) => [...side.keys()])])) {
        const { state, change } = fieldChange(
          fieldsBefore.map((side) => side.get(field)),
          content.get(field),
        );
        fields.set(field, state);
        if (change === undefined) continue;
        const id = `${fileOf(now)} ${field}`;
        const history = histories.get(id) ?? { note: now.path, field, present: true, events: [] };
        history.events.push({
          ...eventOf(version, now.path, change),
          ...(missed.length === 0 ? {} : { unread: missed }),
        });
        histories.set(id, history);
      }
      known.set(now, { fields, unread: [] });
    }
  }
  return { fields: settled(histories, states, fileOf, current), unread };
}

function eventOf(version: Version, path: string, change: Pick<ValueEvent, 'from' | 'to' | 'sides'>): ValueEvent {
  const { commit, author, date, subject, boundary } = version;
  return { commit, author, date, subject, path, ...change, ...(boundary ? { boundary } : {}) };
}

/** Gives every history the last path of its note, and sorts by it. */
function settled(
  histories: Map<string, FieldHistory>,
  states: FileState[],
  fileOf: (state: FileState) => number,
  current: Map<string, FileState>,
): FieldHistory[] {
  const paths = new Map(states.map((state) => [fileOf(state), state.path]));
  for (const [path, state] of current) paths.set(fileOf(state), path);
  return [...histories]
    .map(([id, history]) => {
      const note = paths.get(Number(id.split(' ', 1)[0])) ?? history.note;
      return { ...history, note, present: history.events.at(-1)?.to !== undefined };
    })
    .sort((a, b) => (a.note < b.note ? -1 : a.note > b.note ? 1 : 0));
}

function key(state: FileState, blob: string): string {
  return `${blob}${extname(state.path)}`;
}

async function contentsOf(
  states: FileState[],
  parse: ParseNote,
  read: (ids: Iterable<string>) => AsyncIterable<Blob>,
): Promise<Map<string, Content>> {
  const wanted = new Map<string, { blob: string; path: string }>();
  for (const state of states) {
    if (state.blob !== undefined) wanted.set(key(state, state.blob), { blob: state.blob, path: state.path });
  }
  const contents = new Map<string, Content>();
  const order = [...wanted][Symbol.iterator]();
  for await (const blob of read([...wanted.values()].map((state) => state.blob))) {
    const next = order.next();
    if (next.done === true) break;
    const [id, { path }] = next.value;
    contents.set(id, contentOf(blob, path, parse));
  }
  return contents;
}

function contentOf(blob: Blob, path: string, parse: ParseNote): Content {
  if (blob.state === 'missing') return { reason: 'Its contents are not in this clone.' };
  if (blob.state === 'too-large') return { reason: `It has ${blob.size} bytes, more than a note can have.` };
  try {
    return parse(blob.data.toString('utf8'), path) ?? { reason: 'It could not be read as a note.' };
  } catch (error) {
    return { reason: error instanceof Error ? error.message : String(error) };
  }
}
