import { z } from 'zod';
import { day } from '../../project/fields.js';
import { itemSchema } from './item.js';

/** `limits.yaml`: figures and items that the builder or the certifier read in their own copy, and items of their own. */

const read = {
  document: z.string().optional(),
  edition: z.string().min(1).optional(),
  clause: z.string().min(1).optional(),
  'read-by': z.string().min(1).optional(),
  on: day,
};

const ownFigureSchema = z.strictObject({
  item: z.string().meta({ says: 'id of the item that it replaces the figure of' }),
  min: z.string().optional(),
  max: z.string().optional(),
  above: z.string().optional(),
  below: z.string().optional(),
  ...read,
  'agreed-with': z.string().optional().meta({
    says: 'certifier who adopted the figure in writing, for an item of common practice; instead of edition and clause',
  }),
  letter: z.string().optional().meta({ says: 'paper of the build that says so' }),
});
export type OwnFigure = z.infer<typeof ownFigureSchema>;

const confirmedSchema = z.strictObject({
  item: z.string().meta({ says: 'id of a question or a proof that stands so in the own copy' }),
  ...read,
});
export type Confirmed = z.infer<typeof confirmedSchema>;

export const limitsSchema = z.strictObject({
  figures: z.array(ownFigureSchema).optional(),
  confirmed: z.array(confirmedSchema).optional(),
  items: z.array(itemSchema).optional(),
});
