import { z } from 'zod';
import type { Codes } from '../../checks/codes/codes.js';
import { cautions, type Kind } from '../../checks/engine/kind.js';
import { commonShape } from '../../project/common.js';
import type { FieldMeta } from '../../project/fields.js';

/** The reference page of all kinds of note. */
export function kindsPage(kinds: Iterable<Kind>, codes: Codes): string {
  const all = [...kinds];
  return [
    '# Kinds of note',
    '',
    'Made from the schemas by `npm run generate`.',
    '',
    all.map((k) => `[${k.id}](#${k.id})`).join(', '),
    '',
    '## Long lists',
    '',
    'Any list below may stand as a table in the text of the note: `stops: { table: Brake stops }` reads the table right under the heading or the line "Brake stops". Each column is a field, with the unit of its numbers in brackets, such as `pedal force (N)`; blank cells are left out, and a row without an `id` column is named by its number.',
    '',
    '## Keys of every note',
    '',
    ...fields(commonShape),
    '',
    ...all.flatMap((kind) => one(kind, codes)),
  ].join('\n');
}

function one(kind: Kind, codes: Codes): string[] {
  return [
    `## ${kind.id}`,
    '',
    `**${kind.title}.** ${kind.covers}`,
    '',
    ...fields(kind.shape),
    '',
    ...(kind.holdPoints.length > 0
      ? [
          'To be recorded before the next stage covers it:',
          '',
          ...kind.holdPoints.map(
            (p) =>
              `- \`${p.id}\`: ${p.shows}${partsText(p.parts)} (${p.level}, in the stage \`${p.during}\`, before \`${p.before}\`)`,
          ),
          '',
        ]
      : []),
    ...(kind.cautions.length > 0 ? ['Cautions:', '', ...kind.cautions.map((c) => `- ${cautions[c]}`), ''] : []),
    'Items of the codes that it raises:',
    '',
    ...codes.raisedBy(kind.id as never).map((i) => `- [${i.id}](items.md#${i.id.replaceAll('.', '')}): ${i.title}`),
    '',
  ];
}

const partsText = (parts: Kind['holdPoints'][number]['parts']): string =>
  typeof parts === 'object' ? `; parts ${parts.join(', ')}` : parts ? '; parts from the lists of the note' : '';

function fields(shape: z.ZodRawShape): string[] {
  return ['| key | what | unit | how to measure | such as |', '| --- | --- | --- | --- | --- |', ...rows(shape, '')];
}

function rows(shape: z.ZodRawShape, above: string): string[] {
  return Object.entries(shape).flatMap(([key, schema]) => {
    const meta = ((schema as z.ZodType).meta?.() ?? {}) as Partial<FieldMeta> & { choices?: Record<string, string> };
    const choices = meta.choices
      ? ` (${Object.entries(meta.choices)
          .map(([k, v]) => `\`${k}\`: ${v}`)
          .join('; ')})`
      : '';
    const recorded = meta.recordedFor === undefined ? '' : `; recorded only, for ${meta.recordedFor}`;
    const path = above === '' ? key : `${above}.${key}`;
    const inner = innerShape(schema as z.ZodType);
    const row = `| \`${path}\` | ${cell((meta.says ?? '') + choices + recorded)} | ${cell(meta.unit === '1' ? '' : (meta.unit ?? ''))} | ${cell([meta.how, meta.places && 'a list is of places: the least favourable decides'].filter(Boolean).join('; '))} | ${meta.typical ? `\`${cell(meta.typical)}\`` : ''} |`;
    return [row, ...(inner ? rows(inner, path) : [])];
  });
}

function innerShape(schema: z.ZodType): z.ZodRawShape | undefined {
  if (schema instanceof z.ZodOptional) return innerShape(schema.unwrap() as z.ZodType);
  if (schema instanceof z.ZodArray) return innerShape(schema.element as z.ZodType);
  return schema instanceof z.ZodObject ? schema.shape : undefined;
}

const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
