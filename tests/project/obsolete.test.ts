import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { shapes } from '../../src/app/load.js';
import { loadCodes } from '../../src/checks/codes/codes.js';
import { limitsSchema } from '../../src/checks/codes/own-copy.js';
import { commonShape } from '../../src/project/common.js';
import { metaAt } from '../../src/project/find-field.js';
import { format } from '../../src/project/format.js';
import { type Obsolete, obsolete } from '../../src/project/obsolete.js';
import { querySchema } from '../../src/project/queries.js';
import { readCurrent } from '../../src/project/read-current.js';
import { updated, withFormat } from '../../src/project/update.js';
import { buildSchema } from '../../src/project/vehicle.js';

/** Made up: no field of Gusset was ever called so. */
const table: readonly Obsolete[] = [
  { since: 2, of: 'note', path: ['writer'], now: { key: 'by' } },
  { since: 2, of: 'note', path: ['mood'], now: { gone: 'nothing rests on it' } },
  { since: 2, of: 'note', path: ['finish'], now: { ask: '`coat:`, which says how thick it is' } },
  { since: 2, of: 'bracket', path: ['parts', '[]', 'size'], now: { key: 'wall' } },
  { since: 2, of: 'bracket', path: ['parts', '[]', 'role'], now: { words: { new: 'replacement' } } },
  { since: 2, of: 'bracket', path: ['parts'], now: { key: 'pieces' } },
  { since: 2, of: 'bracket', path: ['parts', '[]', 'shine'], now: { gone: 'nothing rests on it' } },
  { since: 2, of: 'bracket', path: ['parts', '[]', 'gloss'], now: { gone: 'nothing rests on it' } },
  { since: 2, of: 'note', path: ['answers', '*', 'says'], now: { key: 'answer' } },
  { since: 2, of: 'note', path: ['codes', '[]'], now: { words: { X1: 'LA1' } } },
  { since: 3, of: 'bracket', path: ['pieces', '[]', 'wall'], now: { key: 'thickness' } },
];

const note = (...lines: string[]) =>
  `---\nkind: bracket\n${lines.map((l) => `${l}\n`).join('')}---\n\nWords: writer: JO\n`;
const read = (text: string) => readCurrent(text, 'n.md', 'note', table);
const update = (text: string) => updated(text, 'n.md', 'note', table);
const places = (text: string) => read(text).obsolete.map((u) => `${u.line}:${u.column} ${u.found} is ${u.now}`);

describe('an obsolete field', () => {
  it('is read as what stands for it now, and named with its place', () => {
    const text = note('writer: JO', 'parts:', '  - id: a', '    size: 2.5 mm', '    role: new', '    shine: much');
    expect(read(text).value!.data).toEqual({
      kind: 'bracket',
      by: 'JO',
      pieces: [{ id: 'a', thickness: '2.5 mm', role: 'replacement' }],
    });
    expect(places(text)).toEqual([
      '3:1 `writer` is now `by`',
      '4:1 `parts` is now `pieces`',
      '6:5 `size` is now `wall`',
      '7:11 `new` is now `replacement`',
      '8:5 `shine` is no longer read: nothing rests on it',
      '6:5 `wall` is now `thickness`',
    ]);
  });

  it('keeps the places of its values under the new names', () => {
    const { value: front } = read(note('parts:', '  - id: a', '    size: 2.5 mm'));
    expect(front!.locate(['pieces', 0, 'thickness'])).toMatchObject({ line: 5, column: 11 });
    expect(front!.locate(['pieces', 0, 'thickness'], 'key')).toMatchObject({ line: 5, column: 5 });
    expect(front!.locate(['kind'])).toMatchObject({ line: 2, column: 7 });
  });

  it('holds only for its kind, at its place, for its word', () => {
    const other = '---\nkind: other\nparts: [{ size: 2 mm }]\n---\n';
    expect(read(other)).toMatchObject({ obsolete: [], value: { data: { parts: [{ size: '2 mm' }] } } });
    expect(read(note('size: 2 mm', 'parts: [{ role: doubler, by: { writer: JO } }]')).obsolete).toHaveLength(1);
    expect(readCurrent(note('writer: JO'), 'b.md', 'build', table).obsolete).toEqual([]);
  });

  it('is a problem where only a person can replace it, or where both names stand', () => {
    expect(read(note('finish: shiny')).value).toBeUndefined();
    expect(read(note('finish: shiny'))).toMatchObject({
      problems: [{ code: 'obsolete', line: 3, column: 1, expected: '`coat:`, which says how thick it is' }],
    });
    expect(read(note('by: JO', 'writer: MS')).problems).toMatchObject([
      { code: 'obsolete', line: 4, found: '`writer` beside `by`, which stands for it since format 2' },
    ]);
  });

  it('is found under any key, in lists of words, and in rows of a table below', () => {
    const text = note('answers: { a.b: { says: yes } }', 'codes: [X1, LB1]', 'parts: { table: Parts }').replace(
      'Words: writer: JO',
      'Parts\n\n| id | size (mm) |\n| --- | --- |\n| a | 2.5 |\n',
    );
    expect(read(text).value!.data).toMatchObject({
      answers: { 'a.b': { answer: 'yes' } },
      codes: ['LA1', 'LB1'],
      pieces: [{ id: 'a', thickness: '2.5 mm' }],
    });
    const { left, text: after } = update(text);
    expect(left.map((u) => u.found)).toEqual(['`size`', '`wall`']);
    expect(after).toContain('answers: { a.b: { answer: yes } }\ncodes: [LA1, LB1]\npieces: { table: Parts }\n');
  });
});

describe('rewriting', () => {
  it('keeps comments, order, quotes, indentation and everything else', () => {
    const before = note(
      "'writer':   JO   # who did it",
      '# what was made',
      'parts:   # two',
      '  - { size: "2.5 mm", role: "new" }  # the first',
      '  # between',
      '  - size: [2.4, 2.5] mm # odd, but as typed'.replace('[2.4, 2.5] mm', "'[2.4, 2.5] mm'"),
      "    role: 'new'",
      '    shine:',
      '      - little   # at first',
      '',
      '      - much',
      '    # the end',
      'mood: |',
      '  writer: nobody',
      '',
      '  parts',
      'title: T',
    );
    const after = note(
      "'by':   JO   # who did it",
      '# what was made',
      'pieces:   # two',
      '  - { thickness: "2.5 mm", role: "replacement" }  # the first',
      '  # between',
      "  - thickness: '[2.4, 2.5] mm' # odd, but as typed",
      "    role: 'replacement'",
      '    # shine:',
      '    #   - little   # at first',
      '',
      '    #   - much',
      '    # the end',
      '# mood: |',
      '#   writer: nobody',
      '',
      '#   parts',
      'title: T',
    );
    expect(update(before)).toMatchObject({ text: after, left: [] });
    expect(update(after)).toEqual({ text: after, done: [], left: [] });
  });

  it('leaves what it cannot take away in its place to the writer', () => {
    const flow = note('parts: [{ id: a, shine: much }]');
    expect(update(flow)).toMatchObject({
      text: flow.replace('parts', 'pieces'),
      left: [{ found: '`shine`', line: 3 }],
    });
    const first = note('pieces:', '  - mood: x', 'mood: y');
    expect(update(first).text).toBe(first.replace('\nmood', '\n# mood'));
    const alone = '---\nmood: x\n---\n';
    expect(update(alone)).toMatchObject({ text: alone, done: [], left: [{ found: '`mood`' }] });
    const long = note('parts: [{ role:', '    new, id: a,', '    shine: much }]');
    expect(update(long)).toMatchObject({
      text: long.replace('parts', 'pieces').replace('new', 'replacement'),
      left: [{ found: '`shine`' }],
    });
    const folded = note('parts:', '  - role: >-', '      new', '    size: 2 mm');
    expect(update(folded)).toMatchObject({
      text: folded.replace('parts', 'pieces').replace('size', 'thickness'),
      left: [{ found: '`new`' }],
    });
  });

  it('touches nothing of a text that would then read otherwise', () => {
    const empty = note('writer: JO', 'parts:', '  -', '    shine: much', '    gloss: little');
    expect(update(empty)).toMatchObject({ text: empty, done: [] });
    expect(update(empty).left).toHaveLength(4);
  });

  it('keeps line ends and the byte order mark', () => {
    const windows = `\uFEFF${note('writer: JO', 'mood: x', 'parts: [{ size: 2 mm }]').replaceAll('\n', '\r\n')}`;
    expect(update(windows).text).toBe(
      windows
        .replace('writer:', 'by:')
        .replace('mood', '# mood')
        .replace('parts', 'pieces')
        .replace('size', 'thickness'),
    );
  });

  it('rewrites no text that cannot be read, however it is called', () => {
    for (const text of [
      '',
      'writer: JO',
      '---\nwriter: [\n---\n',
      '---js\nwriter: JO\n---\n',
      note('writer: a', 'by: b'),
    ])
      expect(update(text)).toMatchObject({ text, done: [] });
  });

  /** Blocks of fields in every style, some obsolete, with comments between. */
  const anyNote = fc
    .array(
      fc.oneof(
        fc.constantFrom('# a comment', '', '  ', 'title: T', 'load: 2', 'codes: [X1]  # c', "codes:\n- X1\n- 'X1'"),
        fc.constantFrom('writer: JO', '"writer": JO', 'writer:', "writer: '0042' # who", 'writer: >\n  JO\n  and MS'),
        fc.constantFrom(
          'mood: x',
          'mood:',
          'mood: { a: b,\n  c: d }',
          'mood:\n  a: b # c\n\n  # d\n  e: f',
          'mood: "x\n\n  y"',
        ),
        fc.constantFrom(
          'parts: [{ size: 2 mm, shine: x }, { role: new }]',
          'parts:\n  - size: 2 mm\n    shine: x # y\n  # z\n  - role: "new"\n    shine: |\n      x\n\n      y',
          'parts:\n- shine: x\n  size: 1\n- id: b\n  shine: x',
          'parts: { table: Parts }',
        ),
        fc.constantFrom('answers:\n  a.b: { says: yes }\n  c:\n    says: no # d', "answers: { 'a': { 'says': x } }"),
      ),
      { maxLength: 6 },
    )
    .map((lines) => {
      const seen = new Set<string>();
      return lines.filter((line) => {
        const key = /^"?(\w+)/.exec(line)?.[1];
        if (key === undefined) return true;
        return !seen.has(key) && seen.add(key);
      });
    });

  it('gives for any note one that reads the same, has nothing left to rewrite, and keeps the other lines', () => {
    let rewrote = 0;
    fc.assert(
      fc.property(anyNote, fc.boolean(), fc.boolean(), (lines, windows, mark) => {
        const plain = note(...lines, 'parts-note: x').replace('Words', 'Parts\n\n| size |\n| --- |\n| 2 mm |\n\nWords');
        const text = (mark ? '\uFEFF' : '') + (windows ? plain.replaceAll('\n', '\r\n') : plain);
        const before = read(text);
        expect(before.problems).toEqual([]);
        const { text: after, done, left } = update(text);
        rewrote += done.length;
        const again = read(after);
        expect(again.value!.data).toEqual(before.value!.data);
        expect(again.obsolete.map((u) => u.found).sort()).toEqual(left.map((u) => u.found).sort());
        expect(update(after).text).toBe(after);
        const uses = new Set(before.obsolete.map((u) => u.line));
        const [was, is] = [text.split('\n'), after.split('\n')];
        expect(is).toHaveLength(was.length);
        // A line differs only where something obsolete begins, or behind a `#`.
        for (const [i, line] of is.entries()) if (line !== was[i] && !uses.has(i + 1)) expect(line).toMatch(/^ *# /);
        if (left.length === 0 && done.length === 0) expect(after).toBe(text);
      }),
      { numRuns: 500 },
    );
    expect(rewrote).toBeGreaterThan(200);
  });
});

describe('the number of the format', () => {
  it('is put below the title, or in place of an earlier one', () => {
    const to = (text: string) => withFormat(text);
    expect(to('---\n# c\ntitle: T # t\nx: y\n---\n')).toBe(`---\n# c\ntitle: T # t\nformat: ${format}\nx: y\n---\n`);
    expect(to('---\r\ntitle: T\r\n---\r\n')).toBe(`---\r\ntitle: T\r\nformat: ${format}\r\n---\r\n`);
    expect(to('---\ntitle: >\n  T\n  U\nx: y\n---\n')).toBe(`---\ntitle: >\n  T\n  U\nformat: ${format}\nx: y\n---\n`);
    expect(to('---\nformat: 1  # c\ntitle: T\n---\n')).toBe(`---\nformat: ${format}  # c\ntitle: T\n---\n`);
    expect(to('---\nformat:\ntitle: T\n---\n')).toBe(`---\nformat: ${format}\ntitle: T\n---\n`);
    expect(to('---\n{ title: T }\n---\n')).toBe(`---\n{format: ${format},  title: T }\n---\n`);
    const now = `---\nformat: ${format}\n---\n`;
    expect(to(now)).toBe(now);
  });

  it.each([
    [String(format), []],
    ['1', []],
    [String(format + 1), ['format']],
    ['999999999999999999999999', ['format']],
  ])('%s is read, or said to be of a later version', (stated, codes) => {
    const { problems } = readCurrent(`---\nformat: ${stated}\n---\n`, 'build.md', 'build', table);
    expect(problems.map((p) => p.code)).toEqual(codes);
  });
});

const { items } = await loadCodes();
/** Items that an answer in words can settle. */
const inWords = new Set(
  [...items.values()].flatMap(({ id, kind }) => (kind === 'answer' || kind === 'evidence' ? [id] : [])),
);

/** Whether the schemas of today have a field, or the codes an item, at a path that the table names. */
function known(of: string, path: readonly string[]): boolean {
  const all: Record<string, z.ZodRawShape> = {
    build: buildSchema.shape,
    query: querySchema.shape,
    limits: limitsSchema.shape,
    note: commonShape,
  };
  let here: unknown = z.object(all[of] ?? { ...all['note'], ...shapes.get(of) });
  for (const step of path) {
    here = bare(here);
    if (here instanceof z.ZodArray) here = here.element;
    else if (here instanceof z.ZodObject) here = (here.shape as Record<string, unknown>)[step];
    else
      here = here instanceof z.ZodRecord && (path[0] !== 'answers' || inWords.has(step)) ? here.valueType : undefined;
  }
  return here !== undefined;
}

/** A schema without what lets it be left out, and of several forms the block. */
function bare(schema: unknown): unknown {
  if (schema instanceof z.ZodOptional) return bare(schema.unwrap());
  if (schema instanceof z.ZodPipe) return bare(schema.in);
  return schema instanceof z.ZodUnion ? bare(schema.options.find((o) => bare(o) instanceof z.ZodObject)) : schema;
}

describe('the table of what is obsolete', () => {
  const faults = (rows: readonly Obsolete[]): string[] =>
    rows.flatMap((row) => {
      const name = `${row.of} ${row.path.join('.')}`;
      const key = row.path.at(-1)!;
      return [
        ...(row.since >= 2 && row.since <= format ? [] : [`${name} is obsolete since a format that there is not`]),
        ...(['build', 'query', 'limits', 'note', ...shapes.keys()].includes(row.of) ? [] : [`${name}: no such file`]),
        ...('words' in row.now || (key !== '[]' && key !== '*') ? [] : [`${name} does not end in a key`]),
        ...(!('words' in row.now) && known(row.of, row.path) ? [`${name} is still a field`] : []),
        ...('words' in row.now ? wordFaults(name, row.now.words, choicesAt(row)) : []),
        ...('key' in row.now && row.since === format && !known(row.of, currentPath(rows, row, row.now.key))
          ? [`${name} was replaced by \`${row.now.key}\`, which is no field`]
          : []),
        ...rows
          .filter((r) => r !== row && r.of === row.of && r.since === row.since && same(r, row))
          .map(() => `${name} twice`),
      ];
    });
  /** A word that is still one of the field's would be taken for another; one that is replaced must stay so. */
  const wordFaults = (name: string, words: Readonly<Record<string, string>>, choices: string[] | undefined) =>
    Object.entries(words).flatMap(([old, word]) => [
      ...(choices?.includes(old) || Object.values(words).includes(old) ? [`${name}: \`${old}\` is still a word`] : []),
      ...(choices && !choices.includes(word) ? [`${name}: \`${word}\` is no word of it`] : []),
    ]);
  const choicesAt = ({ of, path }: Obsolete): string[] | undefined => {
    const shape = of === 'build' ? buildSchema.shape : { ...commonShape, ...shapes.get(of) };
    const { choices } = metaAt(shape, path) as { choices?: Readonly<Record<string, string>> };
    return choices && Object.keys(choices);
  };
  const same = (a: Obsolete, b: Obsolete) =>
    a.path.join('\0') === b.path.join('\0') && 'words' in a.now === 'words' in b.now;
  /** The path under its new name, with blocks above it that were renamed too. */
  const currentPath = (rows: readonly Obsolete[], row: Obsolete, key: string): string[] => {
    const above = row.path.slice(0, -1).map((step, i) => {
      const renamed = rows.find(
        (r) => r.of === row.of && r.since === row.since && r.path.join('\0') === row.path.slice(0, i + 1).join('\0'),
      );
      return renamed && 'key' in renamed.now ? renamed.now.key : step;
    });
    return [...above, key];
  };

  it('names what is no field any more, and what stands for it is one', () => expect(faults(obsolete)).toEqual([]));

  it('would be found at fault', () => {
    const row = (of: string, path: string[], now: Obsolete['now'], since = 2): Obsolete => ({ since, of, path, now });
    expect(
      faults([
        row('note', ['by'], { key: 'title' }),
        row('general', ['measurements', '[]', 'worth'], { key: 'valeu' }),
        row('general', ['measurements', '[]', 'worths'], { key: 'value' }),
        row('build', ['vehicle', 'colour'], { gone: 'x' }, format + 1),
        row('nothing', ['x'], { gone: 'x' }),
        row('note', ['photos', '[]'], { gone: 'x' }),
        row('build', ['hue'], { gone: 'x' }),
        row('build', ['hue'], { ask: 'x' }),
        row('general', ['measurements', '[]', 'basis'], { words: { maker: 'own-copy', factory: 'makers' } }),
        row('note', ['by'], { words: { a: 'b', b: 'c' } }),
        row('general', ['measurements', '[]', 'basis'], { words: { factory: 'maker' } }),
      ]),
    ).toEqual([
      'note by is still a field',
      'general measurements.[].worth was replaced by `valeu`, which is no field',
      'build vehicle.colour is obsolete since a format that there is not',
      'nothing x: no such file',
      'note photos.[] does not end in a key',
      'note photos.[] is still a field',
      'build hue twice',
      'build hue twice',
      'general measurements.[].basis: `maker` is still a word',
      'general measurements.[].basis: `makers` is no word of it',
      'general measurements.[].basis twice',
      'note by: `b` is still a word',
      'general measurements.[].basis twice',
    ]);
  });
});
