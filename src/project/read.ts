import { existsSync, statSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import { z } from 'zod';
import { didYouMean } from '../platform/near.js';
import { type Common, commonShape } from './common.js';
import { listFolder, listingOnce, readText } from './files.js';
import type { Frontmatter } from './frontmatter.js';
import { instrumentProblems } from './instruments.js';
import { afresh } from './memory.js';
import type { Build, BuildFile, LimitsFile, Note } from './model.js';
import { findNamedFiles } from './named-files.js';
import { inReadingOrder, type Problem } from './problem.js';
import type { Query } from './queries.js';
import { readQuery } from './queries.js';
import { readCurrent } from './read-current.js';
import type { FileSort, ObsoleteUse } from './translate.js';
import { twins } from './twins.js';
import { unreadFiles } from './unread.js';
import { validate } from './validate.js';
import { buildSchema } from './vehicle.js';

/** Schemas of the measurements of each kind of note, by the name of the kind. */
export type KindShapes = ReadonlyMap<string, z.ZodRawShape>;

/**
 * Reads a build's folder. Every problem of every file is collected; `build` is there when none was found. With a memory,
 * files whose text is the same as the last time are not read into data again.
 */
export function readBuild(
  folder: string,
  kinds: KindShapes,
  from = process.cwd(),
  recall = afresh,
  mayBeEmpty = false,
): { build?: Build; obsolete: ObsoleteUse[]; problems: Problem[] } {
  const directory = resolve(folder);
  const shown = (path: string) => relative(from, join(directory, path)).split('\\').join('/') || '.';
  const problems: Problem[] = [];
  const obsolete: ObsoleteUse[] = [];
  const nothing = (
    code: 'build-missing' | 'build-empty',
    file: string,
    found: string,
    expected: string,
    hint: string,
  ) => ({
    obsolete,
    problems: [{ code, file, line: 0, column: 0, found, expected, hint }],
  });
  if (!existsSync(directory) || !statSync(directory).isDirectory()) {
    return nothing(
      'build-missing',
      shown('.'),
      'no such folder',
      'a folder with `build.md` and `notes/`',
      'check the path, or make a new build with `gusset start`',
    );
  }
  if (!existsSync(join(directory, 'build.md'))) {
    return nothing(
      'build-missing',
      shown('build.md'),
      'no `build.md`',
      'a `build.md` that describes the vehicle',
      'make a new build with `gusset start`',
    );
  }
  const names = listFolder(directory, 'notes').filter((n) => n.endsWith('.md'));
  if (names.length === 0 && !mayBeEmpty) {
    const empty = nothing(
      'build-empty',
      shown('notes'),
      'no notes',
      'at least one Markdown file in `notes/`',
      'write a Markdown file with a `kind:` line, as the demo does',
    );
    return { ...empty, problems: [...empty.problems, ...unreadFiles(directory, new Set(), shown).problems] };
  }
  const inputs: BuildFile[] = [];
  const load = <T>(
    path: string,
    read: (text: string, file: string) => Reading<T>,
  ): { value: T; text: string } | undefined => {
    const absolute = join(directory, path);
    const text = readText(absolute);
    if (!text.ok) {
      problems.push({
        code: text.code,
        file: shown(path),
        line: 0,
        column: 0,
        found: text.found,
        expected: text.expected,
      });
      return undefined;
    }
    inputs.push({ path, absolute, bytes: Buffer.byteLength(text.text), text: text.text });
    const result = recall(`read ${shown(path)}`, text.text, () => read(text.text, shown(path)));
    problems.push(...result.problems);
    obsolete.push(...(result.obsolete ?? []));
    return result.value === undefined ? undefined : { value: result.value, text: text.text };
  };
  const files = new Map<string, BuildFile>();
  const listing = listingOnce();
  const withFiles = <T extends object>(owner: { front: Frontmatter; file: string; data: T }): T => {
    const found = findNamedFiles(directory, owner, files, listing);
    problems.push(...found.problems);
    return found.data;
  };

  const buildFile = load(
    'build.md',
    validated('build', (front, file) => validate(buildSchema, front, file)),
  );
  // Whatever else is wrong with a build of a later format is not for this version to say.
  const later = problems.find((p) => p.code === 'format');
  if (later) return { obsolete: [], problems: [later] };
  const buildData = buildFile && withFiles({ ...buildFile.value, file: shown('build.md') });

  const notes: Note[] = [];
  for (const name of names) {
    const path = `notes/${name}`;
    const loaded = load(
      path,
      validated('note', (front, file) => validateNote(front, file, kinds)),
    );
    if (!loaded) continue;
    const { front } = loaded.value;
    const data = withFiles({ ...loaded.value, file: shown(path) });
    notes.push({
      name: basename(name, '.md'),
      path,
      file: shown(path),
      kind: data.kind,
      data,
      front,
      text: loaded.text,
    });
  }

  const queries: Query[] = [];
  const asked = listFolder(directory, 'queries').filter((n) => n.endsWith('.md'));
  for (const name of asked) {
    const path = `queries/${name}`;
    const loaded = load(path, (text, file) =>
      andThen(readCurrent(text, file, 'query'), (front) => readQuery(front, path, file)),
    );
    if (loaded) queries.push(loaded.value);
  }

  const limits: LimitsFile[] = [];
  for (const path of ['../limits.yaml', 'limits.yaml']) {
    if (!existsSync(join(directory, path))) continue;
    const loaded = load(path, (text, file) => readCurrent(text, file, 'limits'));
    if (loaded) limits.push({ file: shown(path), path, front: loaded.value });
  }

  if (buildData)
    problems.push(...instrumentProblems([{ data: buildData, front: buildFile.value.front }, ...notes], buildData));
  inputs.push(...files.values());
  problems.push(...twins(notes, inputs, shown));
  const typed = [...names.map((n) => `notes/${n}`), ...asked.map((n) => `queries/${n}`)];
  const beside = unreadFiles(directory, new Set([...typed, ...inputs.map((i) => i.path)]), shown);
  problems.push(...beside.problems);

  if (problems.length > 0 || !buildFile || !buildData) return { obsolete, problems: inReadingOrder(problems) };
  return {
    build: {
      name: basename(directory),
      directory,
      file: shown('build.md'),
      text: buildFile.text,
      data: buildData,
      front: buildFile.value.front,
      notes,
      queries,
      files,
      limits,
      obsolete,
      unread: beside.unread,
      inputs,
    },
    obsolete,
    problems: [],
  };
}

/** What reading a file gave, with all that stood in the way, and what is obsolete in it. */
type Reading<T> = { value?: T; problems: Problem[]; obsolete?: readonly ObsoleteUse[] };

const andThen = <A, B>({ value, problems, obsolete = [] }: Reading<A>, next: (value: A) => Reading<B>): Reading<B> => {
  if (value === undefined) return { problems, obsolete };
  const read = next(value);
  return { ...read, obsolete: [...obsolete, ...(read.obsolete ?? [])] };
};

/** Frontmatter with the data that a schema makes of it. */
function validated<T>(
  sort: FileSort,
  check: (front: Frontmatter, file: string) => Reading<T>,
): (text: string, file: string) => Reading<{ front: Frontmatter; data: T }> {
  return (text, file) =>
    andThen(readCurrent(text, file, sort), (front) =>
      andThen(check(front, file), (data) => ({ value: { front, data }, problems: [] })),
    );
}

function validateNote(front: Frontmatter, file: string, kinds: KindShapes): Reading<Common & Record<string, unknown>> {
  const kind = front.data['kind'];
  const shape = typeof kind === 'string' ? kinds.get(kind) : undefined;
  if (!shape) {
    const range = front.locate(['kind']);
    const found = typeof kind === 'string' ? `the kind \`${kind.slice(0, 60)}\`` : 'no kind';
    return {
      problems: [
        {
          code: 'kind-unknown',
          file,
          ...range,
          source: front.sourceLine(range.line),
          found,
          expected: 'one of the kinds of note',
          hint: didYouMean(String(kind ?? ''), [...kinds.keys()]),
        },
      ],
    };
  }
  return validate(schemaOf(shape), front, file) as Reading<Common & Record<string, unknown>>;
}

const schemas = new WeakMap<z.ZodRawShape, z.ZodType>();

/** Made once a kind: zod compiles a schema when it is first used. */
function schemaOf(shape: z.ZodRawShape): z.ZodType {
  const known = schemas.get(shape) ?? z.strictObject({ ...commonShape, ...shape });
  schemas.set(shape, known);
  return known;
}
