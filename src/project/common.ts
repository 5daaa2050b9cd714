import { z } from 'zod';
import { anyQuantity, day, idOf, onDay, text } from './fields.js';

/** Keys that a note of any kind may have. */

export const stages = {
  'as-received': 'before anything was taken apart',
  dismantled: 'taken apart',
  cut: 'cut',
  machined: 'machined',
  tacked: 'tacked, before welding',
  welded: 'welded, before grinding and paint',
  assembled: 'assembled, before the next part covers it',
  painted: 'painted or sealed',
  trimmed: 'trim and carpet back',
  tested: 'tested',
  finished: 'finished',
} as const;
export type Stage = keyof typeof stages;
export const stageNames = Object.keys(stages) as [Stage, ...Stage[]];

const stage = z.enum(stageNames);
const fraction = z
  .string()
  .regex(/^(?:0(?:\.\d+)?|1(?:\.0+)?)$/)
  .transform(Number);

const proves = z.array(z.string().min(1)).optional().meta({
  says: 'what it shows: hold points of this note and items of the codes, each with the parts that it shows, such as `hoses-at-ends droop bump`; `all` for every part',
});

const photoSchema = z.strictObject({
  id: idOf.optional(),
  file: z.string(),
  shows: z.string().min(3),
  stage: stage.optional(),
  proves,
  'taken-on': day.optional().meta({ says: 'where the file itself does not say when it was taken' }),
  marks: z.array(z.strictObject({ at: z.tuple([fraction, fraction]), label: z.string() })).optional(),
});
export type PhotoEntry = z.infer<typeof photoSchema>;

const paperSchema = z.strictObject({
  id: idOf.optional(),
  file: z.string(),
  shows: z.string().min(3),
  proves,
  dated: day.optional().meta({ says: 'day of the document itself' }),
  of: z
    .union([z.string().transform((one) => [one]), z.array(z.string())])
    .optional()
    .meta({ says: 'size, designation, material or part number that the document names, one or a list' }),
});
export type PaperEntry = z.infer<typeof paperSchema>;

const answerSchema = z.strictObject({
  answer: z.string().min(1),
  shown: z.string().optional().meta({ says: 'where it is shown: `sheet …`, `photo …`, `paper …`, `note …`' }),
  because: z.string().optional(),
});
export type Answer = z.infer<typeof answerSchema>;

const concessionSchema = z.strictObject({
  item: z.string(),
  subject: z.string().optional(),
  because: z.string().min(10),
  word: z.enum(['accepted', 'refused', 'on-condition', 'asked']),
  condition: z.string().optional(),
  by: z.string().optional(),
  on: day.optional(),
});

/** Enough digits of a digest to know a file by. */
const digest = z.string().regex(/^[0-9a-f]{12,64}$/, 'twelve to sixty-four digits of a SHA-256');

export const judgementSchema = z.strictObject({
  id: idOf,
  about: z.string().min(1).meta({
    says: 'what is judged: a finding by its id, an item with its subject such as `body.thickness-ratio crossmember`, `photo …` or `paper …`',
  }),
  of: z.string().min(1).meta({
    says: 'the value, answer or evidence as it was when it was judged; where it changes, the judgement lapses',
  }),
  sha256: z
    .union([digest.transform((one) => [one]), z.array(digest)])
    .optional()
    .meta({
      says: 'SHA-256 of the photo or document that was judged, or its first twelve digits or more; of several a list',
      typical: '3f9a51c07be2',
    }),
  words: z.string().min(3).meta({ says: 'what was said' }),
  basis: z.enum(['seen', 'calculated', 'document']).meta({ says: 'what it rests on' }),
  by: z.string().min(1).meta({ says: 'initials or name of a person of build.md, or the name of the certifier' }),
  on: day,
  letter: z.string().optional().meta({ says: 'the document of this build that has it in writing, by file or id' }),
});
export type JudgementEntry = z.infer<typeof judgementSchema>;

export const commonShape = {
  kind: z.string(),
  title: z.string().min(3).max(120),
  by: text('initials of who did the work, as in build.md', 'JO'),
  started: onDay('day on which the work began'),
  'load-state': text(
    'load and ride height at which slopes and clearances were taken',
    'kerb, ride height 340 mm front 352 mm rear',
  ),
  stages: z.partialRecord(stage, day.optional()).optional().meta({ form: 'stages', says: 'each stage with its date' }),
  photos: z.array(photoSchema).optional(),
  papers: z.array(paperSchema).optional(),
  answers: z
    .record(z.string(), z.union([z.string().transform((answer): Answer => ({ answer })), answerSchema]).optional())
    .optional(),
  measured: z.record(z.string(), anyQuantity('value measured for this item of the code')).optional().meta({
    form: 'list',
    says: 'values for items of the code that this kind of note has no field for, by the id of the item',
  }),
  concessions: z.array(concessionSchema).optional(),
  judgements: z.array(judgementSchema).optional(),
};
const commonSchema = z.strictObject(commonShape);
export type Common = z.infer<typeof commonSchema>;
