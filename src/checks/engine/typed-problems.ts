import type { Measured } from '../../project/fields.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { nameOf } from '../../units/kinds.js';
import { readUnit, sameDimension } from '../../units/unit.js';
import type { Item } from '../codes/item.js';
import type { Evaluation } from './examine.js';

/** Values under `measured:` of a note that nothing would read, or that would be read as something else. */

type Typed = { note: Note; id: string; item: Item; measured: Measured };

function typedIn(build: Build, items: ReadonlyMap<string, Item>): Typed[] {
  return build.notes.flatMap((note) =>
    Object.entries(note.data.measured ?? {}).flatMap(([id, measured]) => {
      const item = items.get(id);
      // A key left empty states nothing yet.
      return item && measured ? [{ note, id, item, measured }] : [];
    }),
  );
}

function problemAt({ note, id }: Typed, part: 'key' | 'value', told: Pick<Problem, 'found' | 'expected' | 'hint'>) {
  const range = note.front.locate(['measured', id], part);
  return { code: 'value' as const, file: note.file, ...range, source: note.front.sourceLine(range.line), ...told };
}

/** Values for items that compare no number, or compare one of another dimension. Can be told before anything is examined. */
export function unfitValues(build: Build, items: ReadonlyMap<string, Item>): Problem[] {
  return typedIn(build, items).flatMap((typed): Problem[] => {
    const { id, item, measured } = typed;
    if (item.kind === 'answer' || item.kind === 'evidence')
      return [
        problemAt(typed, 'key', {
          found: `a value for \`${id}\`, which asks for ${item.kind === 'answer' ? 'an answer' : 'a proof'}`,
          expected: 'an item that compares a number',
          hint:
            item.kind === 'answer'
              ? `answer it under \`answers:\`, as \`${id}: …\``
              : `name it under \`proves:\` of the photo or paper that shows it`,
        }),
      ];
    const { dimension, text } = measured.quantity;
    const wanted = readUnit(item.unit);
    if (!wanted || sameDimension(dimension, wanted.dimension)) return [];
    return [
      problemAt(typed, 'value', {
        found: `${nameOf(dimension) ?? 'a value'} in \`${text}\` for \`${id}\``,
        expected: `${nameOf(wanted.dimension) ?? 'a value'} in ${item.unit}`,
        hint: `write the value in ${item.unit}`,
      }),
    ];
  });
}

/** Answers to items that compare a number: words settle nothing there. */
export function unfitAnswers(build: Build, items: ReadonlyMap<string, Item>): Problem[] {
  return build.notes.flatMap((note) =>
    Object.entries(note.data.answers ?? {}).flatMap(([id, answer]): Problem[] => {
      const item = items.get(id);
      if (!item || !answer || item.kind === 'answer' || item.kind === 'evidence') return [];
      const range = note.front.locate(['answers', id], 'key');
      return [
        {
          code: 'value',
          file: note.file,
          ...range,
          source: note.front.sourceLine(range.line),
          found: `an answer to \`${id}\`, which compares a number`,
          expected: `the value that was measured, in ${item.unit}`,
          hint: 'write the value in the field that it is measured in, or under `measured:`; a word of the certifier on it goes under `concessions:`',
        },
      ];
    }),
  );
}

/** Values for items that their note does not ask for, or that its own fields measure. */
export function unreadValues(
  build: Build,
  items: ReadonlyMap<string, Item>,
  { raised, findings }: Pick<Evaluation, 'raised' | 'findings'>,
): Problem[] {
  return typedIn(build, items).flatMap((typed): Problem[] => {
    const { note, id, item } = typed;
    if (!raised.some((r) => r.item.id === id && r.notes.includes(note)))
      return [
        problemAt(typed, 'key', {
          found: `a value for \`${id}\` (${item.title}), which this note does not ask for`,
          expected: `it in a note of kind ${item['raised-by'].join(', ')}${item['raised-by'].includes(note.kind as never) ? ' whose fields ask for it' : ''}`,
          hint: 'move it to the note whose work it is about',
        }),
      ];
    const own = findings.find((f) => f.item === id && f.note === note.name);
    if (!own || own.place.path === `measured.${id}` || 'measured' in item) return [];
    const field = own.place.path;
    return [
      problemAt(typed, 'key', {
        found: `a value for \`${id}\` (${item.title}), which a note of this kind has fields of its own for`,
        expected: field === '' ? 'it in these fields' : `it in the fields of this note, such as \`${field}\``,
        hint: 'fill in the field, and take the value out here: one fact, one place',
      }),
    ];
  });
}
