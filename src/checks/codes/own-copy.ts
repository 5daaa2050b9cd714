import { z } from 'zod';
import { didYouMean } from '../../platform/near.js';
import { day } from '../../project/fields.js';
import type { LimitsFile } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { validate } from '../../project/validate.js';
import { type Item, itemSchema } from './item.js';

/** `limits.yaml`: figures that the builder or the certifier typed in from their own copy, and items of their own. */

const ownFigureSchema = z.strictObject({
  item: z.string().meta({ says: 'id of the item that it replaces the figure of' }),
  min: z.string().optional(),
  max: z.string().optional(),
  above: z.string().optional(),
  below: z.string().optional(),
  document: z.string().optional(),
  edition: z.string().min(1),
  clause: z.string().min(1),
  'read-by': z.string().min(1),
  on: day,
});
export type OwnFigure = z.infer<typeof ownFigureSchema>;

export const limitsSchema = z.strictObject({
  figures: z.array(ownFigureSchema).optional(),
  items: z.array(itemSchema).optional(),
});

/** Reads the limits files of the workshop and of the build; the later stands before the earlier. */
export function readLimits(
  files: readonly LimitsFile[],
  known: ReadonlySet<string>,
): { figures: Map<string, OwnFigure & { file: string }>; items: (Item & { file: string })[]; problems: Problem[] } {
  const figures = new Map<string, OwnFigure & { file: string }>();
  const items: (Item & { file: string })[] = [];
  const problems: Problem[] = [];
  for (const { file, front } of files) {
    const result = validate(limitsSchema, front, file);
    problems.push(...result.problems);
    for (const item of result.value?.items ?? []) items.push({ ...item, file });
    (result.value?.figures ?? []).forEach((figure, i) => {
      const range = front.locate(['figures', i, 'item']);
      const at = { file, ...range, source: front.sourceLine(range.line) };
      const names = [...known, ...items.map((n) => n.id)];
      if (!names.includes(figure.item))
        problems.push({
          code: 'reference-missing',
          ...at,
          found: `no item \`${figure.item}\``,
          expected: 'the id of an item of the code',
          hint: didYouMean(figure.item, names),
        });
      else if ([figure.min, figure.max, figure.above, figure.below].every((b) => b === undefined))
        problems.push({
          code: 'value',
          ...at,
          found: 'a figure without a bound',
          expected: '`min:`, `max:`, `above:` or `below:`',
        });
      else if ((figure.min && figure.above) || (figure.max && figure.below))
        problems.push({
          code: 'value',
          ...at,
          found: 'two bounds on one side',
          expected: '`min:` or `above:`, `max:` or `below:`',
        });
      else figures.set(figure.item, { ...figure, file });
    });
  }
  return { figures, items, problems };
}
