import { existsSync, statSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import { z } from 'zod';
import { commonShape, type Common } from './common.js';
import { findFile, listFolder, readText } from './files.js';
import { readFrontmatter, readYamlFile, type Frontmatter, type Path } from './frontmatter.js';
import type { Build, BuildFile, LimitsFile, Note, Query } from './model.js';
import { didYouMean } from './near.js';
import { inReadingOrder, type Problem } from './problem.js';
import { readQuery } from './queries.js';
import { validate } from './validate.js';
import { buildSchema } from './vehicle.js';

/** Schemas of the measurements of each kind of note, by the name of the kind. */
export type KindShapes = ReadonlyMap<string, z.ZodRawShape>;

/** Reads a build's folder. Every problem of every file is collected; `build` is there when none was found. */
export function readBuild(folder: string, kinds: KindShapes, from = process.cwd()): { build?: Build; problems: Problem[] } {
  const directory = resolve(folder);
  const shown = (path: string) => relative(from, join(directory, path)).split('\\').join('/') || '.';
  const problems: Problem[] = [];
  const nothing = (code: 'build-missing' | 'build-empty', file: string, found: string, expected: string, hint: string) => ({
    problems: [{ code, file, line: 0, column: 0, found, expected, hint }],
  });
  if (!existsSync(directory) || !statSync(directory).isDirectory()) {
    return nothing('build-missing', shown('.'), 'no such folder', 'a folder with `build.md` and `notes/`', 'check the path, or make one with `gusset start`');
  }
  if (!existsSync(join(directory, 'build.md'))) {
    return nothing('build-missing', shown('build.md'), 'no `build.md`', 'a `build.md` that describes the vehicle', 'make one with `gusset start`');
  }
  const names = listFolder(directory, 'notes').filter((n) => n.endsWith('.md'));
  if (names.length === 0) {
    return nothing('build-empty', shown('notes'), 'no notes', 'at least one Markdown file in `notes/`', 'make one with `gusset note`');
  }
  const inputs: BuildFile[] = [];
  const load = <T>(path: string, read: (text: string, file: string) => { value?: T; problems: Problem[] }): { value: T; text: string } | undefined => {
    const absolute = join(directory, path);
    const text = readText(absolute);
    if (!text.ok) {
      problems.push({ code: text.code, file: shown(path), line: 0, column: 0, found: text.found, expected: text.expected });
      return undefined;
    }
    inputs.push({ path, absolute, bytes: Buffer.byteLength(text.text) });
    const result = read(text.text, shown(path));
    problems.push(...result.problems);
    return result.value === undefined ? undefined : { value: result.value, text: text.text };
  };

  const buildFile = load('build.md', readFrontmatter);
  const buildData = buildFile && validate(buildSchema, buildFile.value, shown('build.md'));
  problems.push(...(buildData?.problems ?? []));

  const notes: Note[] = [];
  for (const name of names) {
    const path = `notes/${name}`;
    const loaded = load(path, readFrontmatter);
    if (!loaded) continue;
    const result = validateNote(loaded.value, shown(path), kinds);
    problems.push(...result.problems);
    if (result.value) notes.push({ name: basename(name, '.md'), path, file: shown(path), kind: result.value.kind, data: result.value, front: loaded.value, text: loaded.text });
  }

  const queries: Query[] = [];
  for (const name of listFolder(directory, 'queries').filter((n) => n.endsWith('.md'))) {
    const path = `queries/${name}`;
    const loaded = load(path, readFrontmatter);
    if (!loaded) continue;
    const result = readQuery(loaded.value, path, shown(path));
    problems.push(...result.problems);
    if (result.value) queries.push(result.value);
  }

  const limits: LimitsFile[] = [];
  for (const path of ['../limits.yaml', 'limits.yaml']) {
    if (!existsSync(join(directory, path))) continue;
    const loaded = load(path, readYamlFile);
    if (loaded) limits.push({ file: shown(path), path, front: loaded.value });
  }

  const files = new Map<string, BuildFile>();
  const owners = [...notes.map((n) => ({ front: n.front, file: n.file, data: n.data })), ...(buildFile && buildData?.value ? [{ front: buildFile.value, file: shown('build.md'), data: buildData.value }] : [])];
  for (const owner of owners) problems.push(...findFiles(directory, owner, files));
  problems.push(...twinNames(notes));
  inputs.push(...files.values());

  if (problems.length > 0 || !buildFile || !buildData?.value) return { problems: inReadingOrder(problems) };
  return {
    build: { name: basename(directory), directory, file: shown('build.md'), text: buildFile.text, data: buildData.value, front: buildFile.value, notes, queries, files, limits, inputs },
    problems: [],
  };
}

function validateNote(front: Frontmatter, file: string, kinds: KindShapes): { value?: Common & Record<string, unknown>; problems: Problem[] } {
  const kind = front.data['kind'];
  const shape = typeof kind === 'string' ? kinds.get(kind) : undefined;
  if (!shape) {
    const range = front.locate(['kind']);
    const found = typeof kind === 'string' ? `the kind \`${kind.slice(0, 60)}\`` : 'no kind';
    return { problems: [{ code: 'kind-unknown', file, ...range, source: front.sourceLine(range.line), found, expected: 'one of the kinds of note', hint: didYouMean(String(kind ?? ''), [...kinds.keys()]) }] };
  }
  return validate(z.strictObject({ ...commonShape, ...shape }), front, file) as { value?: Common & Record<string, unknown>; problems: Problem[] };
}

/** Photos and papers that a file names: all must be there, inside the build, and named once. */
function findFiles(directory: string, owner: { front: Frontmatter; file: string; data: object }, files: Map<string, BuildFile>): Problem[] {
  const problems: Problem[] = [];
  for (const key of ['photos', 'papers'] as const) {
    const entries = (owner.data as { [K in typeof key]?: { id?: string | undefined; file: string }[] })[key] ?? [];
    const seen = new Set<string>();
    entries.forEach((entry, i) => {
      const path: Path = [key, i, 'file'];
      const range = owner.front.locate(path);
      const at = { file: owner.file, ...range, source: owner.front.sourceLine(range.line) };
      const name = entry.id ?? entry.file.replace(/\.[^.]*$/, '');
      if (seen.has(name)) problems.push({ code: 'name-duplicate', ...at, found: `\`${name}\` named twice in one note`, expected: `each of the ${key} once`, hint: 'give one of them an `id`' });
      seen.add(name);
      const found = findFile(directory, entry.file, key);
      if (found.ok) {
        files.set(found.file.path, found.file);
        entry.file = found.file.path;
        if (found.file.bytes === 0) problems.push({ code: key === 'photos' ? 'photo-broken' : 'paper-missing', ...at, found: 'an empty file (0 bytes)', expected: 'the file with its content', hint: 'copy it again from where it came' });
        return;
      }
      const missing = key === 'photos' ? ('photo-missing' as const) : ('paper-missing' as const);
      if (found.why === 'outside') problems.push({ code: 'path-outside', ...at, found: `\`${entry.file}\` leads out of the build's folder`, expected: `a file in \`${key}/\``, hint: 'copy it into the build' });
      else if (found.why === 'case') problems.push({ code: missing, ...at, found: `\`${entry.file}\`, spelled otherwise than the file`, expected: `\`${found.near}\``, hint: 'names are the same only when capitals are too' });
      else if (found.why === 'not-a-file') problems.push({ code: missing, ...at, found: `\`${entry.file}\` is no plain file`, expected: 'a file' });
      else problems.push({ code: missing, ...at, found: `no file \`${entry.file}\` in \`${key}/\``, expected: `a file in \`${key}/\``, hint: found.near ? `did you mean \`${found.near}\`?` : `put the file into \`${key}/\`` });
    });
  }
  return problems;
}

/** Two notes whose names differ only in capitals cannot live in one folder on every system. */
function twinNames(notes: readonly Note[]): Problem[] {
  const seen = new Map<string, Note>();
  return notes.flatMap((note) => {
    const twin = seen.get(note.name.toLowerCase());
    seen.set(note.name.toLowerCase(), note);
    return twin ? [{ code: 'name-duplicate' as const, file: note.file, line: 0, column: 0, found: `a name that differs from \`${twin.name}\` only in capitals`, expected: 'names that differ in more', hint: 'rename one of the two' }] : [];
  });
}
