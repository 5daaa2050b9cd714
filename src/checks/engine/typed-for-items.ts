import type { Build } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import type { Evaluation, Rules } from './examine.js';

/**
 * A value under `measured:` that nobody would read: for an item that its note does not raise, or that its kind measures in fields
 * of its own.
 */
export function typedProblems(build: Build, { findings, raised }: Evaluation, { codes, ownItems }: Rules): Problem[] {
  const items = new Map([...codes.items, ...ownItems.map((item) => [item.id, item] as const)]);
  const raisedBy = new Map(raised.map(({ item, notes }) => [item.id, new Set(notes)]));
  return build.notes.flatMap((note) =>
    Object.keys(note.data.measured ?? {}).flatMap((id): Problem[] => {
      const range = note.front.locate(['measured', id]);
      const at = { code: 'key-unknown' as const, file: note.file, ...range, source: note.front.sourceLine(range.line) };
      const item = items.get(id);
      if (!item) return [];
      if (item.kind !== 'limit' && item.kind !== 'test')
        return [
          {
            ...at,
            found: `a value measured for \`${id}\`, which asks for no value`,
            expected: 'an item that limits a value',
            hint: `write it under \`answers:\``,
          },
        ];
      if (!raisedBy.get(id)?.has(note))
        return [
          {
            ...at,
            found: `a value measured for \`${id}\`, which is not asked of this note`,
            expected: `one of ${item['raised-by'].join(', ')}`,
            hint: 'move it to the note that it belongs to',
          },
        ];
      const own = findings.find(
        (f) => f.item === id && f.note === note.name && !/^measured(?:\.|$)/.test(f.place?.path ?? 'measured'),
      );
      return own && item.measured === undefined
        ? [
            {
              ...at,
              found: `a value measured for \`${id}\`, which this kind of note measures by itself`,
              expected: `the fields that it is measured in${own.place?.path ? `, such as \`${own.place.path}\`` : ''}`,
              hint: 'take it out of `measured:`, and write what was measured there',
            },
          ]
        : [];
    }),
  );
}
