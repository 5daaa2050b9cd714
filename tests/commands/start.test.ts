import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { fileName, slug } from '../../src/app/notes/note-name.js';
import { loadCodes } from '../../src/checks/codes/codes.js';
import { readLimits } from '../../src/checks/codes/read-own-copy.js';
import { buildTemplate } from '../../src/project/build-template.js';
import { readYamlFile } from '../../src/project/frontmatter.js';
import { fillTypical } from '../project/fill-typical.js';
import { folderWith, pictureHead } from '../project/scratch.js';
import { gusset } from './run.js';

/** Each test works in an empty folder of its own, as a new user does. */
let folder: string;
beforeEach(() => {
  const before = process.cwd();
  folder = folderWith({});
  process.chdir(folder);
  onTestFinished(() => process.chdir(before));
});
const read = (path: string) => readFileSync(join(folder, path), 'utf8');

describe('gusset start', () => {
  it('makes a build to be filled in, and says what comes next', async () => {
    const { code, out } = await gusset('start', 'builds/red-wagon');
    expect(code).toBe(0);
    expect(readdirSync('builds/red-wagon').sort()).toEqual([
      'build.md',
      'limits.yaml',
      'notes',
      'papers',
      'photos',
      'queries',
    ]);
    expect(read('builds/red-wagon/build.md')).toContain('\ntitle: Red wagon\n');
    expect(read('.gitignore')).toBe('out/\n');
    expect(out).toMatch(
      /gusset plan builds\/red-wagon[^]*gusset note builds\/red-wagon brakes[^]*gusset check builds\/red-wagon --watch/,
    );
    expect(readdirSync('builds')).toEqual(['red-wagon']);
  });

  it('leaves three things to be filled in before the car can be read, and names them', async () => {
    await gusset('start', 'x');
    await gusset('note', 'x', 'general');
    const { code, err } = await gusset('check', 'x');
    expect(code).toBe(2);
    for (const key of ['make', 'model', 'built']) expect(err).toContain(`found no \`${key}\``);
    expect(err).toContain('3 problem(s)');
    writeFileSync(
      'x/build.md',
      read('x/build.md')
        .replace('  make:', '  make: Examplia')
        .replace('  model:', '  model: One')
        .replace('  built:', '  built: 1984-05'),
    );
    expect((await gusset('check', 'x', '--allow', 'all')).code).toBe(0);
  });

  it('never overwrites: neither a build, nor a folder with things in it, nor a file', async () => {
    await gusset('start', 'x');
    writeFileSync('x/build.md', 'mine');
    mkdirSync('y');
    writeFileSync('y/photo.jpg', 'mine');
    writeFileSync('z', 'mine');
    for (const [name, says] of [
      ['x', 'which is there already'],
      ['y', 'things in y that are no build'],
      ['z', 'found a file z'],
    ])
      expect(await gusset('start', name!)).toMatchObject({ code: 2, err: expect.stringContaining(says!) });
    expect([read('x/build.md'), read('y/photo.jpg'), read('z')]).toEqual(['mine', 'mine', 'mine']);
    mkdirSync('empty');
    expect((await gusset('start', 'empty')).code).toBe(0);
  });

  it('leaves nothing where it fails', async () => {
    mkdirSync('.gitignore');
    const { code } = await gusset('start', 'builds/x');
    expect(code).toBe(3);
    expect(readdirSync('builds')).toEqual([]);
  });

  it.each([
    ['', 'out/\n'],
    ['node_modules/', 'node_modules/\nout/\n'],
    ['a\r\n', 'a\r\nout/\r\n'],
    ['/out/\n', '/out/\n'],
    ['a\r\nout\r\n', 'a\r\nout\r\n'],
  ])('has git leave outputs out, once: %j', async (before, after) => {
    writeFileSync('.gitignore', before);
    await gusset('start', 'x');
    await gusset('start', 'y');
    expect(read('.gitignore')).toBe(after);
  });

  it('puts the line at the root of the repository that the folder belongs to', async () => {
    execFileSync('git', ['init', '-q']);
    mkdirSync('workshop/cars', { recursive: true });
    process.chdir('workshop/cars');
    const { out } = await gusset('start', 'x');
    expect(out).toContain(join('..', '..', '.gitignore'));
    expect(read('.gitignore')).toBe('out/\n');
    expect(existsSync('.gitignore')).toBe(false);
  });
});

describe('what it writes', () => {
  it('reads without problems when its comments are followed', async () => {
    await gusset('start', 'x');
    const { text, files } = fillTypical(buildTemplate('Wagon', 'wagon'));
    writeFileSync('x/build.md', text.replace(/^codes: .*$/m, 'codes: [LA1, LB1]'));
    for (const file of ['photos/as-received.jpg', ...files]) writeFileSync(join('x', file), pictureHead);
    await gusset('note', 'x', 'general');
    expect((await gusset('check', 'x', '--allow', 'all')).err).toBe('');
  });

  it('has examples that are taken as they stand', async () => {
    const codes = await loadCodes();
    const text = readFileSync(new URL('../../templates/start/limits.yaml', import.meta.url), 'utf8');
    const limits = (lines: string) =>
      readLimits(
        [{ file: 'limits.yaml', path: 'limits.yaml', front: readYamlFile(lines, 'limits.yaml').value! }],
        codes,
      );
    expect(limits(text)).toMatchObject({ problems: [], items: [] });
    expect([limits(text).figures.size, limits(text).confirmed.size]).toEqual([0, 0]);
    const used = limits(text.replace(/^#(?! \S|$)/gm, ''));
    expect(used.problems).toEqual([]);
    expect(used.figures.get('body.thickness-ratio')).toMatchObject({ max: '2.5', clause: '2.4' });
    expect(used.confirmed.get('fasteners.appendix')).toMatchObject({ clause: 'A.2' });
  });
});

describe('gusset note', () => {
  it('begins the next note, numbered in tens, and says what to measure first', async () => {
    await gusset('start', 'x');
    const { out } = await gusset('note', 'x', 'brakes', 'Front disc conversion');
    expect(out).toMatch(/^Made x\/notes\/010-front-disc-conversion\.md\./);
    expect(out).toMatch(
      /Before anything is taken apart[^]*pedal ratio[^]*Before the next stage covers it[^]*Hoses at full droop/,
    );
    expect(read('x/notes/010-front-disc-conversion.md')).toMatch(/^---\nkind: brakes\ntitle: Front disc conversion\n/);
    await gusset('note', 'x', 'mass');
    await gusset('note', 'x', 'body-structure', 'Floor', 'let', 'in');
    expect(readdirSync('x/notes').sort()).toEqual([
      '010-front-disc-conversion.md',
      '020-mass.md',
      '030-floor-let-in.md',
    ]);
  });

  it('leaves out what does not apply to this car, once the car can be read', async () => {
    await gusset('start', 'x');
    expect((await gusset('note', 'x', 'retained-systems')).out).toContain(
      'items that do not apply to this car are in the note',
    );
    expect(read('x/notes/010-retained-systems.md')).not.toContain('Left out');
    writeFileSync(
      'x/build.md',
      '---\ntitle: A car made up\nvehicle: { make: Examplia, model: One, built: 1990-05, category: MA, registration: VIC }\n---\n',
    );
    expect((await gusset('note', 'x', 'retained-systems')).out).not.toContain('cannot be read');
    expect(read('x/notes/020-retained-systems.md')).toContain('# engine.canister-sa: applies in SA');
  });

  it('never overwrites, and leaves no file behind that is not whole', async () => {
    await gusset('start', 'x');
    writeFileSync('x/notes/010-brakes.md', 'mine');
    await Promise.all([1, 2, 3].map(() => gusset('note', 'x', 'brakes')));
    expect(read('x/notes/010-brakes.md')).toBe('mine');
    expect(readdirSync('x/notes').sort()).toEqual(['010-brakes.md', '020-brakes.md', '030-brakes.md', '040-brakes.md']);
  });

  it('says what is wrong with a kind, a folder and a title', async () => {
    await gusset('start', 'x');
    expect(await gusset('note', 'x', 'brake')).toMatchObject({
      code: 2,
      err: expect.stringContaining('did you mean `brakes`?'),
    });
    expect(await gusset('note', 'y', 'brakes')).toMatchObject({
      code: 2,
      err: expect.stringContaining('gusset start y'),
    });
    expect(await gusset('note', 'x')).toMatchObject({
      code: 2,
      err: expect.stringContaining('found no kind of note, expected gusset note <build> <kind> [<title>]'),
    });
    expect(await gusset('note', 'x', 'brakes', 'x'.repeat(121))).toMatchObject({
      code: 2,
      err: expect.stringContaining('121 characters'),
    });
    expect((await gusset('note', '--kinds')).out).toMatch(/^ {2}brakes +Brakes\. /m);
    expect(readdirSync('x/notes')).toEqual([]);
  });
});

describe('names of notes', () => {
  it.each([
    [[], '010-a.md'],
    [['010-x.md', '025-y.md'], '030-a.md'],
    [['030-x.md', '010-x.md', 'words.md'], '040-a.md'],
    [['990-x.md'], '1000-a.md'],
    [['010-x.md', '2026-plan.md'], '2030-a.md'],
    [['010-x.md', '20260314-plan.md'], '020-a.md'],
    [['999980-x.md'], '999990-a.md'],
    [['010-x.md', '999990-x.md'], '020-a.md'],
    [['010-x.md', '020-x.md', '999999-x.md'], '030-a.md'],
    [['1000000-x.md'], '010-a.md'],
  ])('take the next free ten: %j', (files, name) => {
    expect(fileName(files, 'A', 'general')).toBe(name);
  });

  it.each([
    ['Front disc conversion', 'front-disc-conversion'],
    ['Größe & Maß: Ø 12 mm', 'grosse-mass-12-mm'],
    ['../../etc/passwd', 'etc-passwd'],
    ['CON', 'con'],
    ['車', ''],
    [
      'A title that goes on and on, far beyond what a file name ought to hold',
      'a-title-that-goes-on-and-on-far-beyond-what-a',
    ],
    ['x'.repeat(100), 'x'.repeat(48)],
  ])('are plain letters: %s', (title, name) => {
    expect(slug(title)).toBe(name);
  });

  it('fall back on the kind where a title has no plain letters', () => {
    expect(fileName([], '車', 'general')).toBe('010-general.md');
  });
});
