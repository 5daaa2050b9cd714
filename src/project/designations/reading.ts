import { type QuantityProblem, quoted } from '../../units/problem.js';

/** What a reader of designations gives back. */
export type Read<T> = ({ ok: true } & T) | { ok: false; problem: QuantityProblem };

/** Refuses what was read, with what to write instead; `part` is the piece of the text that is wrong. */
export type Refuse = (hint: string, part?: string) => { ok: false; problem: QuantityProblem };

const LONGEST = 80;

/**
 * A reader of one kind of designation. It is handed the text without spaces around it, with `x` for `×`, plain hyphens
 * and plain spaces; it never sees an empty or overlong text, nor a decimal comma.
 *
 * @param expected what is read, with an example: `a tyre size such as 205/65R15 94H`
 */
export function reader<T>(
  expected: string,
  read: (body: string, refuse: Refuse) => Read<T>,
): (text: string) => Read<T> {
  return (text) => {
    const from = text.length - text.trimStart().length;
    const body = text
      .trim()
      .replaceAll('×', 'x')
      .replaceAll(/[‐‑–—−]/gu, '-')
      .replaceAll(/\s/gu, ' ');
    const problem = (code: QuantityProblem['code'], found: string, hint: string, start = 0, end = body.length) => ({
      ok: false as const,
      problem: { code, found, expected, hint, at: [from + start, from + end] as const },
    });
    if (body === '') return problem('empty', 'nothing', `write ${expected.replace(/^.* such as /, '')}`);
    if (body.length > LONGEST)
      return problem('designation', `${body.length} characters`, `keep it within ${LONGEST} characters`);
    const comma = /\d{1,9},\d{1,9}/u.exec(body);
    if (comma) {
      const point = body.replaceAll(/(\d),(\d)/gu, '$1.$2');
      return problem('decimal-comma', quoted(comma[0]), `write ${point}`, comma.index, comma.index + comma[0].length);
    }
    return read(body, (hint, part = body) => {
      const start = Math.max(0, body.lastIndexOf(part));
      return problem('designation', quoted(part), hint, start, start + part.length);
    });
  };
}
