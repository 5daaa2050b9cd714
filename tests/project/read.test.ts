import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { checkLinks } from '../../src/project/links.js';
import { readBuild } from '../../src/project/read.js';
import { buildFile, folderWith } from './scratch.js';

const shapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));
const read = (files: Record<string, string | Uint8Array>) => {
  const folder = folderWith(files);
  return { folder, ...readBuild(folder, shapes, folder) };
};
const withNote = (note: string, more: Record<string, string | Uint8Array> = {}) =>
  read({ 'build.md': buildFile, 'notes/010-a.md': note, ...more });
const only = (note: string) => {
  const { problems } = withNote(note);
  expect(problems).toHaveLength(1);
  return problems[0]!;
};
const engine = (...lines: string[]) => `---\nkind: engine\ntitle: Engine\n${lines.join('\n')}\n---\n\nWords.\n`;

describe('a note that can be read', () => {
  it('keeps scalars as text and gives each value its place', () => {
    const { build, problems } = withNote(engine('number: 0042', 'engine: 12E4567', 'bore: 86.0 mm'));
    expect(problems).toEqual([]);
    const data = build!.notes[0]!.data as unknown as {
      number: string;
      engine: string;
      bore: { quantity: { si: number }; at: object };
    };
    expect(data.number).toBe('0042');
    expect(data.engine).toBe('12E4567');
    expect(data.bore.quantity.si).toBe(0.086);
    expect(data.bore.at).toEqual({ file: 'notes/010-a.md', line: 6, column: 7, endColumn: 14, path: 'bore' });
  });

  it('takes a value with its instrument, readings as a list, CRLF and a byte order mark alike', () => {
    const note = engine(
      'bore: { value: 86.0 mm, with: caliper-1, on: 2026-03-14 }',
      'stroke: [86.0 mm, 86.1 mm, 86.2 mm]',
    );
    const { build } = withNote(`\uFEFF${note.replaceAll('\n', '\r\n')}`);
    const data = build!.notes[0]!.data as unknown as {
      bore: { with: string };
      stroke: { quantity: { si: number; readings: number[] } };
    };
    expect(data.bore.with).toBe('caliper-1');
    expect(data.stroke.quantity.si).toBeCloseTo(0.0861, 12);
    expect(data.stroke.quantity.readings).toHaveLength(3);
  });
});

describe('a note that cannot be read says what, where and what to do', () => {
  it.each([
    ['unknown kind', engine().replace('kind: engine', 'kind: enigne'), 'kind-unknown', 2, 7, 'did you mean `engine`?'],
    ['unit missing', engine('bore: 86.0'), 'quantity', 4, 7, undefined],
    ['wrong dimension', engine('bore: 86 kg'), 'quantity', 4, undefined, undefined],
    ['decimal comma', engine("bore: '86,0 mm'"), 'quantity', 4, undefined, '86.0 mm'],
    ['unknown key', engine('bor: 86 mm'), 'key-unknown', 4, 1, 'did you mean `bore`?'],
    ['key in another spelling', engine('mount_spacing: 500 mm'), 'key-spelling', 4, 1, 'mount-spacing'],
    ['no such day', engine('stages: { cut: 2026-02-30 }'), 'value', 4, undefined, undefined],
    ['unreadable YAML', engine('bore: [86.0, 86.1] mm'), 'yaml', 4, undefined, 'in quotes'],
    ['the same key twice', engine('bore: 1 mm', 'bore: 2 mm'), 'yaml', 5, 1, undefined],
    ['an alias', engine('bore: &b 1 mm', 'stroke: *b'), 'yaml-alias', 5, 9, 'write the value out'],
    ['script frontmatter', engine().replace('---\n', '---js\n'), 'frontmatter-language', 1, 1, 'remove the word'],
    ['no frontmatter', 'Only words.\n', 'frontmatter-missing', 1, 1, undefined],
    ['frontmatter left open', '---\nkind: engine\ntitle: Engine\n', 'frontmatter-missing', 1, 1, undefined],
    [
      'photo not there',
      engine('photos: [{ file: a.jpg, shows: the engine }]'),
      'photo-missing',
      4,
      18,
      'put the file into `photos/`',
    ],
    [
      'photo outside',
      engine('photos: [{ file: ../../a.jpg, shows: the engine }]'),
      'path-outside',
      4,
      18,
      'copy it into the build',
    ],
    ['absolute photo', engine('photos: [{ file: /etc/hosts, shows: the engine }]'), 'path-outside', 4, 18, undefined],
  ])('%s', (_, note, code, line, column, hint) => {
    const problem = only(note);
    expect(problem).toMatchObject({ code, file: 'notes/010-a.md', line });
    if (column !== undefined) expect(problem.column).toBe(column);
    if (hint !== undefined) expect(problem.hint).toContain(hint);
    expect(problem.found).not.toBe('');
    expect(problem.expected).not.toBe('');
  });

  it('a decimal comma inside braces, which YAML takes for two keys', () => {
    const { problems } = withNote(engine('bore: { value: 86,0 mm }'));
    expect(problems.map((p) => p.code)).toEqual(['key-unknown']);
    expect(problems.find((p) => p.code === 'key-unknown')?.hint).toContain('decimal comma');
  });

  it('a mistyped key without a value, and a known one without', () => {
    expect(only(engine('bor:'))).toMatchObject({ code: 'key-unknown', line: 4 });
    expect(withNote(engine('bore:', 'stages: { cut: }', 'answers: { engine.code: }')).problems).toEqual([]);
  });

  it('collects the problems of all files in reading order', () => {
    const { problems, build } = read({
      'build.md': buildFile.replace('1100 kg', '1100'),
      'notes/010-a.md': engine('bore: 1'),
      'notes/020-b.md': engine('kid: 1'),
    });
    expect(build).toBeUndefined();
    expect(problems.map((p) => [p.file, p.code])).toEqual([
      ['build.md', 'quantity'],
      ['notes/010-a.md', 'quantity'],
      ['notes/020-b.md', 'key-unknown'],
    ]);
  });

  it('runs no script and reads a broken note as broken the second time too', () => {
    const note = engine().replace('---\n', '---js\n').replace('kind: engine', 'globalThis.ran = true');
    for (const _ of [1, 2]) expect(only(note).code).toBe('frontmatter-language');
    expect((globalThis as { ran?: boolean }).ran).toBeUndefined();
  });

  it('does not follow a link out of the build', () => {
    const folder = folderWith({
      'secret.txt': 'x',
      'b/build.md': buildFile,
      'b/notes/010-a.md': engine('photos: [{ file: a.jpg, shows: the engine }]'),
      'b/photos/x': '',
    });
    symlinkSync(join(folder, 'secret.txt'), join(folder, 'b/photos/a.jpg'));
    expect(readBuild(join(folder, 'b'), shapes).problems[0]?.code).toBe('path-outside');
  });

  it('takes duplicate ids, names and an empty photo', () => {
    expect(only(`---\nkind: body-structure\ntitle: Body\npieces: [{ id: a }, { id: a }]\n---\n`)).toMatchObject({
      code: 'id-duplicate',
      line: 4,
    });
    const twice = withNote(engine('photos: [{ file: a.jpg, shows: one }, { file: a.jpg, shows: two }]'), {
      'photos/a.jpg': 'x',
    });
    expect(twice.problems.map((p) => p.code)).toEqual(['name-duplicate']);
    expect(withNote(engine('photos: [{ file: a.jpg, shows: one }]'), { 'photos/a.jpg': '' }).problems[0]).toMatchObject(
      { code: 'photo-broken', found: 'an empty file (0 bytes)' },
    );
  });

  it('says which photo was meant when only capitals differ', () => {
    const { problems } = withNote(engine('photos: [{ file: A.jpg, shows: one }]'), { 'photos/a.jpg': 'x' });
    expect(problems[0]).toMatchObject({ code: 'photo-missing', hint: 'did you mean `a.jpg`?' });
  });

  it('refuses two notes whose names differ only in capitals', () => {
    const { problems } = read({ 'build.md': buildFile, 'notes/010-a.md': engine(), 'notes/010-A.md': engine() });
    expect(problems).toMatchObject([{ code: 'name-duplicate', file: 'notes/010-a.md', hint: 'rename one of the two' }]);
  });

  it('keeps line and column where lines end as on Windows', () => {
    const { problems } = withNote(engine('bore: 86 mm', 'stroke: 86 kg').replaceAll('\n', '\r\n'));
    expect(problems).toMatchObject([{ code: 'quantity', line: 5, column: 12, source: 'stroke: 86 kg' }]);
  });

  it('takes a photo by a path with backslashes, and no drive', () => {
    const { build } = withNote(engine('photos: [{ file: photos\\a.jpg, shows: the engine }]'), { 'photos/a.jpg': 'x' });
    expect(build!.notes[0]!.data.photos![0]!.file).toBe('photos/a.jpg');
    expect(only(engine('photos: [{ file: "C:\\\\a.jpg", shows: the engine }]'))).toMatchObject({
      code: 'path-outside',
    });
  });

  it('has words for a folder that is no build', () => {
    expect(readBuild('/nowhere/at/all', shapes).problems[0]?.code).toBe('build-missing');
    expect(read({ 'build.md': buildFile }).problems[0]).toMatchObject({
      code: 'build-empty',
      hint: 'write a Markdown file with a `kind:` line, as the demo does',
    });
    const folder = folderWith({ 'notes/010-a.md': engine() });
    expect(readBuild(folder, shapes, folder).problems[0]).toMatchObject({ code: 'build-missing', file: 'build.md' });
  });

  it('refuses bytes that are not text', () => {
    const { problems } = read({ 'build.md': buildFile, 'notes/010-a.md': new Uint8Array([0x2d, 0x2d, 0x2d, 0xff]) });
    expect(problems[0]).toMatchObject({ code: 'file-encoding' });
  });
});

describe('links between notes', () => {
  const linked = (body: string, more: Record<string, string> = {}) => {
    const { build, problems } = read({
      'build.md': buildFile,
      'notes/010-a.md': `${engine()}\n${body}\n`,
      'notes/020-b.md': engine(),
      'photos/x.jpg': 'x',
      ...more,
    });
    expect(problems).toEqual([]);
    return checkLinks(build!);
  };

  it('land on notes, photos and the web', () => {
    expect(linked('[b](020-b.md), [x](../photos/x.jpg), [w](https://example.org/), [b](.\\020-b.md)')).toEqual([]);
  });

  it('that lead nowhere are problems with their place and the nearest name', () => {
    expect(linked('See [b](020-d.md).')[0]).toMatchObject({
      code: 'link-missing',
      line: 9,
      column: 5,
      hint: 'did you mean `notes/020-b.md`?',
    });
    expect(linked('See [b](../../secret.md).')[0]).toMatchObject({ code: 'path-outside' });
    expect(linked('See [b](file:///etc/hosts).')[0]).toMatchObject({ code: 'path-outside' });
  });
});

it('leaves no trace of a file written while it reads', () => {
  const { folder } = withNote(engine());
  writeFileSync(join(folder, 'notes', '.hidden.md'), 'x');
  expect(readBuild(folder, shapes, folder).problems).toEqual([]);
});
