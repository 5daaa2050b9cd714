import { z } from 'zod';
import { format } from '../project/format.js';
import { isLetter } from './git/issue-letter.js';

/** What a document was made from, with digests: attached to the PDF, and with the outputs beside it. */

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const file = { path: z.string(), bytes: z.number().int().min(0), sha256 };

const manifestSchema = z.object({
  /** With the number of its format; earlier and later ones are read as far as they are of this form. */
  form: z.string().regex(/^gusset-manifest\/[1-9]\d*$/),
  /** Name and version of this program. */
  tool: z.string(),
  browser: z.string(),
  /** The library that prepared the photos. */
  pictures: z.string(),
  document: z.string(),
  as: z.enum(['submission', 'proposal']),
  photos: z.enum(['print', 'mail']),
  /** Name of the build's folder. */
  build: z.string().refine((name) => !/^\.{0,2}$|[/\\\0]/.test(name), 'the name of a folder'),
  /** The name under which its issues are found; absent where that is the folder's. */
  id: z.string().min(1).optional(),
  /** The build's folder from the root of the repository; with the commit absent outside git. */
  folder: z
    .string()
    .refine((path) => !/^\/|(?:^|\/)\.{1,2}(?:\/|$)|[\\\0]/.test(path), 'a path within the repository')
    .optional(),
  commit: z
    .string()
    .regex(/^[0-9a-f]{40}(?:[0-9a-f]{24})?$/)
    .optional(),
  date: z.string(),
  /** Files that differed from the commit. */
  dirty: z.array(z.string()),
  issue: z.string().refine(isLetter, 'an issue letter').optional(),
  tag: z.string().optional(),
  /** Whether that tag carries a signature. */
  signed: z.boolean().optional(),
  inputs: z.array(z.object(file)),
  /** Files attached to the PDF beside this one; `of` is the input that one is a copy of, `rewritten` that of it only the pages are. */
  attachments: z.array(z.object({ ...file, of: z.string().optional(), rewritten: z.boolean().optional() })),
  /** Digest of each page by what is seen on it, and one over all of them. */
  pages: z.array(sha256),
  content: sha256,
  /** The files beside the PDF and the PDF itself; absent in the copy that is attached to it. */
  outputs: z.array(z.object(file)).optional(),
});
export type Manifest = z.output<typeof manifestSchema>;

export { manifestName } from '../platform/own-output.js';

export const manifestText = (manifest: Manifest): string => `${JSON.stringify(manifest, null, 2)}\n`;

/** A manifest, or in words why it is none; `later` where that is because a later version wrote it. */
export function readManifest(text: string): Manifest | { problem: string; later?: true } {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { problem: 'it is not JSON' };
  }
  const read = manifestSchema.safeParse(data);
  if (read.success) return read.data;
  const number = Number(/^gusset-manifest\/(\d+)$/.exec(String((data as { form?: unknown } | null)?.form))?.[1] ?? 0);
  if (number > format) return { problem: `it is of format ${number}, this version reads up to ${format}`, later: true };
  const [issue] = read.error.issues;
  return { problem: `${issue?.path.join('.') || 'the whole'}: ${issue?.message ?? 'not of this form'}` };
}
