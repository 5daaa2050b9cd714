import { didYouMean } from '../../platform/near.js';
import { placeOfField } from '../../project/find-field.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import type { Query } from '../../project/queries.js';
import type { Finding } from './finding.js';

/** What a query is about. */
export type About = { is: 'note'; note: Note } | { is: 'item'; item: string } | { is: 'finding'; id: string };

/** A note by name or number, a finding by its id, an item of the code by its id; undefined where there is no such thing. */
export function aboutOf(
  reference: string,
  build: Pick<Build, 'notes'>,
  items: { has: (id: string) => boolean },
): About | undefined {
  const named =
    build.notes.find((n) => n.name === reference) ?? build.notes.find((n) => /^\d+/.exec(n.name)?.[0] === reference);
  if (named) return { is: 'note', note: named };
  if (items.has(reference)) return { is: 'item', item: reference };
  const [note, ...rest] = reference.split('/');
  const known = rest.length > 0 && build.notes.some((n) => n.name === note);
  return known ? { is: 'finding', id: reference } : undefined;
}

/** References of queries that lead nowhere. Whether a finding is there shows only once the build was examined. */
export function queryProblems(build: Build, items: ReadonlySet<string>): Problem[] {
  return build.queries.flatMap((query) =>
    query.data.about.flatMap((reference, i): Problem[] => {
      if (aboutOf(reference, build, items)) return [];
      const several = Array.isArray(query.front.data['about']);
      const range = query.front.locate(several ? ['about', i] : ['about']);
      const known = [...build.notes.map((n) => n.name), ...items];
      return [
        {
          code: 'reference-missing',
          file: query.file,
          ...range,
          source: query.front.sourceLine(range.line),
          found: `\`${reference}\``,
          expected: 'a note, an item of the code or the id of a finding',
          hint: didYouMean(reference, known),
        },
      ];
    }),
  );
}

/** An answer is settled when the certifier has closed the question. */
const standing = {
  open: { outcome: 'unanswered' },
  answered: { outcome: 'answered', waits: 'for the certifier' },
  closed: { outcome: 'answered' },
} as const;

/** Each query as a finding: open until it is answered, for the certifier until closed. `findings` are all the others. */
export function checkQueries(build: Build, items: ReadonlySet<string>, findings: readonly Finding[]): Finding[] {
  return build.queries.map((query): Finding => {
    const gone = query.data.about.filter(
      (r) => aboutOf(r, build, items)?.is === 'finding' && !findings.some((f) => f.id === r),
    );
    return {
      id: queryFinding(query),
      note: 'build',
      subject: query.name,
      item: 'query',
      title: `Query of ${query.data.from}`,
      form: 'answer',
      of: 'answer',
      ...standing[query.data.state],
      basis: 'own-copy',
      marks: gone.map((r) => `no finding ${r} any more`),
      says: saysOf(query),
      todo: {
        open: `answer it in ${query.path}`,
        answered: 'ask the certifier whether this settles it, and then set `state: closed`',
        closed: undefined,
      }[query.data.state],
      place: placeOfField(query, ['state']),
    };
  });
}

export const queryFinding = (query: Query): string => `build/${query.name}/query`;

function saysOf({ data }: Query): string {
  const asked = `asked on ${data.date}: ${data.question}`;
  if (data.answer === undefined || data.state === 'open') return asked;
  const when = data['answered-on'] ? ` on ${data['answered-on']}` : '';
  return `${asked} Answered${when}: ${data.answer}`;
}
