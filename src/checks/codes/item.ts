import { z } from 'zod';
import { bases, rules, statuses } from './limit.js';

/**
 * The form of a code of practice as data. A file under `codes/` is one code; an item is one thing that it asks, in our
 * own words. A builder's `limits.yaml` holds items of the same form.
 */

/** All kinds of note; an item names those that raise it. */
export const noteKinds = [
  'engine',
  'engine-assembly',
  'gearbox',
  'driveline',
  'rear-axle',
  'suspension-link',
  'suspension',
  'clearance',
  'alignment',
  'steering',
  'lights-and-body',
  'retained-systems',
  'inspection',
  'wheels-tyres',
  'brakes',
  'body-structure',
  'mounts',
  'fuel-system',
  'exhaust',
  'cooling',
  'electrical',
  'seating',
  'mass',
  'test',
  'general',
] as const;
export type NoteKind = (typeof noteKinds)[number];

const id = z.string().regex(/^[a-z][a-z0-9]*(?:[.-][a-z0-9]+)*$/, 'lower case words joined by dots and hyphens');
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a date such as 1986-01-01');
const words = z.string().trim().min(3);
/** `true` or left out; YAML scalars reach us as text. */
const flag = z.union([z.boolean(), z.enum(['true', 'false']).transform((word) => word === 'true')]);

/** All that is named must hold. Dates are those of the vehicle's build, `from` included and `before` excluded. */
const appliesSchema = z.strictObject({
  jurisdictions: z.array(z.string()).optional().describe('states of registration; left out: everywhere'),
  categories: z.array(z.string()).optional().describe('vehicle categories such as MA, MC, NA'),
  'not-categories': z.array(z.string()).optional(),
  'built-from': date.optional(),
  'built-before': date.optional(),
  states: z
    .record(z.string(), z.array(z.string()))
    .optional()
    .describe('words of the note or of build.md, such as induction: [forced]'),
  when: z.string().optional().describe('bounds on facts, as an expression such as `original_mass >= 800 kg`'),
  basis: z
    .enum(bases)
    .optional()
    .describe('the basis of the applicability or definition, where it is weaker than that of the figure'),
});
export type Applies = z.infer<typeof appliesSchema>;

const restsSchema = z.strictObject({
  document: z.string().trim().min(2).describe('title, or a name under `documents` of the same file'),
  edition: z.string().optional(),
  clause: z.string().optional(),
  basis: z.enum(bases),
  status: z.enum(statuses).optional(),
  'read-in': words.optional().describe('the publication in which it was read, where that is not the document'),
  'read-by': z.string().optional(),
  on: date.optional(),
});

/** A bound: a quantity (`25 mm`) or an expression over facts and measurements (`5.0 cm3/kg * original_mass`). */
const bound = z.string().min(1);
const bounds = ['min', 'max', 'above', 'below'] as const;
const rule = z
  .enum(rules)
  .optional()
  .describe(
    'what the comparison does with the uncertainty; left out: `as-read` for a recommendation, `guarded` for all else',
  );

/** One figure with its own applicability; the first case that applies is taken. */
const caseSchema = z
  .strictObject({
    applies: appliesSchema.optional(),
    min: bound.optional(),
    max: bound.optional(),
    above: bound.optional().describe('the value must be greater'),
    below: bound.optional().describe('the value must be smaller'),
    rests: restsSchema.optional().describe('where it differs from the item'),
    'not-applicable': words.optional().describe('the reason, where a case lifts the item'),
    figure: words.optional().describe('which figure to read in the own copy, where none is confirmed for this case'),
    rule: rule.describe('where it differs from the item'),
  })
  .refine(
    (one) =>
      [bounds.some((b) => one[b] !== undefined), one['not-applicable'] !== undefined, one.figure !== undefined].filter(
        Boolean,
      ).length === 1,
    'one of: bounds, `not-applicable`, `figure`',
  )
  .refine(
    (one) => !(one.min && one.above) && !(one.max && one.below),
    'one of `min` and `above`, one of `max` and `below`',
  );
export type Case = z.infer<typeof caseSchema>;

const common = {
  id,
  title: words.describe('a noun phrase, up to eight words'),
  asks: words.describe('what it asks, in our own words'),
  section: z.string().describe('section of the code, as the code letters it'),
  rests: restsSchema,
  'raised-by': z.array(z.enum(noteKinds)).min(1).describe('kinds of note that raise it'),
  applies: appliesSchema.optional(),
  'leads-to': z.array(z.strictObject({ item: id, because: words, basis: z.enum(bases) })).optional(),
  codes: z.array(z.string()).optional().describe('modification codes it belongs to'),
  replaces: z
    .array(id)
    .optional()
    .describe('ids of items that are asked no longer, because this one asks for the same'),
  'because-of': words.optional().describe('the work or the fact for which it is asked'),
  'raised-where': z
    .array(z.string())
    .optional()
    .describe('words of build.md that must be `yes` for it to be asked at all, such as tows'),
  compare: z
    .array(z.strictObject({ says: words, rests: restsSchema }))
    .optional()
    .describe('figures of other texts, printed beside what was recorded and never judged'),
};

const figures = {
  unit: z.string().describe('the unit people write; `1` for a ratio'),
  measured: z
    .string()
    .optional()
    .describe('an expression over the measurements; left out: the kind of note measures it'),
  cases: z.array(caseSchema).describe('empty where the figure is still to be read in the own copy'),
  sides: z
    .array(z.enum(['min', 'max']))
    .min(1)
    .optional()
    .describe('which ends a figure must have before it limits; left out: those of its cases'),
  recommended: flag.optional(),
  rule,
  'speaks-against': z
    .strictObject({ item: id, words: z.array(z.string()).min(1), unless: z.array(z.string()), because: words })
    .optional()
    .describe(
      'words that an answer to another item cannot hold where the value lies surely beyond the figure, unless it has others',
    ),
  figure: words.optional().describe('which figure to read in the own copy, where no case applies'),
};

export const itemSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...common, kind: z.literal('limit'), ...figures }),
  z.strictObject({
    ...common,
    kind: z.literal('answer'),
    wants: z.enum(['yes', 'no', 'stated']).describe('the answer that needs no further word; `stated`: any, but given'),
    stop: flag
      .optional()
      .describe('any other answer is an open finding for the certifier, whatever else the note says'),
    states: z
      .string()
      .optional()
      .describe('what the answer states that build.md states as well: the name of a fact, or `modification-code`'),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('evidence'),
    evidence: z
      .array(z.enum(['photo', 'paper', 'drawing', 'sheet', 'note']))
      .min(1)
      .describe('any one of these will do'),
    parts: z
      .array(z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/))
      .min(2)
      .optional()
      .describe('what one picture or document each has to show; left out: one is enough'),
    'after-work': flag.optional().describe('a document from before the work, or without its day, does not show it'),
    dated: flag.optional().describe('a document without its day does not show it'),
    'names-part': flag
      .optional()
      .describe('a document that does not say of which part it is, under `of`, does not show it'),
  }),
  z.strictObject({ ...common, kind: z.literal('test'), ...figures }),
]);
export type Item = z.infer<typeof itemSchema>;

/** A name that expressions of the file may use, and what it stands for. */
const factSchema = z.strictObject({ unit: z.string(), says: words });
export type Fact = z.infer<typeof factSchema>;

export const codeSchema = z.strictObject({
  code: id,
  title: words,
  country: z.string(),
  jurisdiction: z.string().optional().describe('a state, where the rules are not national; its items apply there only'),
  note: words.optional().describe('what is and is not confirmed about this text'),
  documents: z
    .record(
      z.string(),
      z.strictObject({
        title: words,
        edition: z.string().optional(),
        status: z.enum(statuses).optional(),
        'read-in': words.optional(),
      }),
    )
    .optional()
    .describe('texts that `rests` of this file name'),
  facts: z.record(z.string().regex(/^[a-z][a-z0-9]*(?:_[a-z0-9]+)*$/), factSchema).optional(),
  sections: z.record(
    z.string(),
    z.strictObject({ title: words, edition: z.string().optional(), covers: words.optional() }),
  ),
  'modification-codes': z.record(z.string(), z.strictObject({ title: words, rests: restsSchema })).optional(),
  items: z.array(itemSchema),
});
export type Code = z.infer<typeof codeSchema>;
