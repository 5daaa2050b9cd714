import type { Run } from '../../calc/run.js';
import type { Place, Value } from '../../calc/value.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import { isMissing, type Maybe } from './maybe.js';

/** Where the value stands in the note; of a reckoned one, where its first measured input stands. */
export function placeOfValue(value: Maybe, note: Note, runs: readonly Run[]): Place {
  if (isMissing(value)) return placeOfField(note, value.missing[0]?.path ?? []);
  if (value.origin.kind === 'note' && value.origin.place.file === note.file) return value.origin.place;
  const { origin } = value;
  const run = origin.kind === 'sheet' ? runs.findLast((r) => r.id === origin.run) : undefined;
  const inputs = Object.values(run?.inputs ?? {}).filter((i): i is Value => typeof i === 'object' && !Array.isArray(i));
  for (const input of inputs) {
    const place = placeOfValue(input, note, runs);
    if (place.path !== '') return place;
  }
  return placeOfField(note, []);
}
