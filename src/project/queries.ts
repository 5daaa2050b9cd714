import { posix } from 'node:path';
import { z } from 'zod';
import { day, onDay, text } from './fields.js';
import type { Frontmatter } from './frontmatter.js';
import type { Problem } from './problem.js';
import { placeOf, validate } from './validate.js';

/** A question of the certifier, with its answer: one file in `queries/`. What the body says stands below both. */

export const queryStates = {
  open: 'asked, not answered',
  answered: 'answered; the certifier has not said yet that this settles it',
  closed: 'settled, as the certifier said',
} as const;

const words = (says: string) => z.string().min(3).meta({ form: 'text', says });
const reference = z.string().min(1);

export const querySchema = z.strictObject({
  from: words('who asks'),
  date: day.meta({ form: 'day', says: 'day on which it was asked' }),
  about: z.union([reference.transform((one) => [one]), z.array(reference).min(1)]).meta({
    form: 'text',
    says: 'note (its name or number), item of the code, or finding (its id), or a list of these',
  }),
  question: words('the question as it was asked'),
  answer: text('the answer'),
  'answered-by': text('who answers', 'JO'),
  'answered-on': onDay('day of the answer'),
  state: z
    .enum(Object.keys(queryStates) as [keyof typeof queryStates, ...(keyof typeof queryStates)[]])
    .meta({ form: 'choice', says: 'how it stands', choices: queryStates }),
});
export type QueryData = z.output<typeof querySchema>;

/** A question of the certifier: a file in `queries/`, with names and paths as for a note. */
export interface Query {
  name: string;
  path: string;
  file: string;
  data: QueryData;
  front: Frontmatter;
}

/** Reads the frontmatter of a query. `path` is relative to the build's folder, `file` is what messages show. */
export function readQuery(front: Frontmatter, path: string, file: string): { value?: Query; problems: Problem[] } {
  const { value: data, problems } = validate(querySchema, front, file);
  if (!data) return { problems };
  if (data.state !== 'open' && data.answer === undefined) {
    const place = placeOf(front, file, ['state']);
    return {
      problems: [
        {
          code: 'value',
          ...place,
          source: front.sourceLine(place.line),
          found: `the state \`${data.state}\` without an answer`,
          expected: '`answer:` with what was answered',
          hint: 'write the answer, or set `state: open`',
        },
      ],
    };
  }
  const unsigned = unsignedAnswer(data);
  if (unsigned) {
    const place = placeOf(front, file, ['state']);
    return { problems: [{ code: 'value', ...place, source: front.sourceLine(place.line), ...unsigned }] };
  }
  return { value: { name: posix.basename(path, '.md'), path, file, data, front }, problems: [] };
}

/** An answer is somebody's, of the day of the question or after it. */
function unsignedAnswer(data: QueryData): Pick<Problem, 'found' | 'expected' | 'hint'> | undefined {
  if (data.state === 'open') return undefined;
  const [by, on] = [data['answered-by'], data['answered-on']];
  if (by === undefined || on === undefined)
    return {
      found: `the state \`${data.state}\` with an answer that does not say ${by === undefined ? 'whose it is' : 'of which day it is'}`,
      expected: '`answered-by:` and `answered-on:`',
      hint: 'state who answered and when, or set `state: open`',
    };
  if (on >= data.date) return undefined;
  return {
    found: `an answer of ${on} to a question of ${data.date}`,
    expected: 'an answer of the day of the question or after it',
    hint: 'correct the date that is wrong',
  };
}
