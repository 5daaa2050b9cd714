import { chmodSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { shapes } from '../../src/app/load.js';
import { measuredText } from '../../src/history/measured.js';
import { format } from '../../src/project/format.js';
import type { Obsolete } from '../../src/project/obsolete.js';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

/** Made up: no field of Gusset was ever called so. */
vi.mock('../../src/project/obsolete.js', () => ({
  obsolete: [
    { since: 2, of: 'note', path: ['writer'], now: { key: 'by' } },
    { since: 2, of: 'build', path: ['car'], now: { key: 'vehicle' } },
    { since: 2, of: 'build', path: ['car', 'hue'], now: { gone: 'nothing rests on it' } },
    { since: 2, of: 'general', path: ['measurements', '[]', 'worth'], now: { key: 'value' } },
    { since: 2, of: 'general', path: ['measurements', '[]', 'basis'], now: { words: { factory: 'maker' } } },
    { since: 2, of: 'general', path: ['finish'], now: { ask: '`section:`, as the certifier sees it' } },
    { since: 2, of: 'query', path: ['asker'], now: { key: 'from' } },
    { since: 2, of: 'limits', path: ['values'], now: { key: 'figures' } },
  ] satisfies Obsolete[],
}));

const files = {
  'b/build.md': `---
# the car
title: A car made up for tests
car:
  make: Examplia   # as on the plate
  model: One
  built: 1990-06
  hue: green
  category: MA
  registration: VIC
original: { mass: 1100 kg, mass-source: made up, induction: na }
---
`,
  'b/notes/010-shaft.md': `---
kind: general
title: Run-out
writer: JO # on the day
measurements:
  - { id: flange, worth: "0.04 mm", greatest: 0.08 mm, basis: factory, document: manual, clause: '4' }
---

The writer: JO.
`,
  'b/notes/020-other.md': `---
kind: general
title: Other
writer: JO
---
`,
  'b/queries/1.md': `---
asker: R. Ansell
date: 2026-03-01
about: 010-shaft
question: Which flange?
state: open
---
`,
  'b/limits.yaml': 'values: # none yet\n',
};

function shop(more: Record<string, string> = {}): (path: string) => string {
  const before = process.cwd();
  const folder = folderWith({ ...files, ...more });
  process.chdir(folder);
  onTestFinished(() => process.chdir(before));
  return (path) => readFileSync(join(folder, path), 'utf8');
}

describe('gusset check of a build of an earlier format', () => {
  it('reads it, and names each obsolete field with its place and what stands for it', async () => {
    shop();
    const { code, out, err } = await gusset('check', 'b', '--allow', 'all');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('`gusset note b --update` rewrites it');
    for (const line of [
      'b/build.md:4:1: `car` is now `vehicle`',
      'b/build.md:8:3: `hue` is no longer read: nothing rests on it',
      'b/notes/010-shaft.md:4:1: `writer` is now `by`',
      'b/notes/010-shaft.md:6:19: `worth` is now `value`',
      'b/notes/010-shaft.md:6:63: `factory` is now `maker`',
      'b/queries/1.md:2:1: `asker` is now `from`',
      'b/limits.yaml:1:1: `values` is now `figures`',
    ])
      expect(out).toContain(`    ${line}\n`);
  });

  it('says so in JSON and SARIF, in the number of the format', async () => {
    shop();
    const json = JSON.parse((await gusset('check', 'b', '--format', 'json')).out) as Record<string, unknown>;
    expect(json['form']).toBe(`gusset-findings/${format}`);
    expect(json['obsolete']).toContainEqual({
      found: '`worth`',
      now: 'now `value`',
      since: 2,
      location: { file: 'notes/010-shaft.md', line: 6, column: 19, field: 'measurements.0.worth' },
    });
    const sarif = JSON.parse((await gusset('check', 'b', '--format', 'sarif')).out) as {
      runs: { invocations: { toolExecutionNotifications: { message: { text: string } }[] }[] }[];
    };
    expect(sarif.runs[0]!.invocations[0]!.toolExecutionNotifications.map((n) => n.message.text)).toContain(
      '`asker` is now `from`',
    );
  });

  it('asks a person where only a person can tell, at its place', async () => {
    shop({ 'b/notes/020-other.md': files['b/notes/020-other.md'].replace('---\n', '---\nfinish: dull\n') });
    expect(await gusset('check', 'b')).toMatchObject({
      code: 2,
      err: expect.stringContaining(
        'b/notes/020-other.md:2:1: found the key `finish`, obsolete since format 2, expected `section:`',
      ),
    });
  });
});

describe('gusset note --update', () => {
  it('rewrites each, says so, sets the number of the format, and then has nothing to do', async () => {
    const read = shop();
    const { code, out, err } = await gusset('note', 'b', '--update');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^b\/build\.md:4:1: `car` is now `vehicle`\n[^]*\nb\/build\.md: format 2\nb\/build\.md: id b\nRewrote 5 file\(s\)\.\n$/,
    );
    expect(read('b/build.md')).toBe(
      files['b/build.md']
        .replace('car:', 'vehicle:')
        .replace('hue', '# hue')
        .replace('tests\n', `tests\nid: b\nformat: ${format}\n`),
    );
    expect(read('b/notes/010-shaft.md')).toBe(
      files['b/notes/010-shaft.md'].replace('\nwriter', '\nby').replace('worth', 'value').replace('factory', 'maker'),
    );
    expect(read('b/queries/1.md')).toBe(files['b/queries/1.md'].replace('asker', 'from'));
    expect(read('b/limits.yaml')).toBe('figures: # none yet\n');
    const checked = (await gusset('check', 'b', '--allow', 'all')).out;
    expect(checked).not.toContain('Obsolete');
    expect(await gusset('note', 'b', '--update')).toEqual({ code: 0, out: 'Nothing was rewritten.\n', err: '' });
  });

  it('gives the same findings before and after', async () => {
    shop();
    type Result = { counts: object; findings: { id: string; outcome: string; says: string }[] };
    const found = async () => {
      const { counts, findings } = JSON.parse((await gusset('check', 'b', '--format', 'json')).out) as Result;
      return { counts, findings: findings.map(({ id, outcome, says }) => [id, outcome, says]) };
    };
    const before = await found();
    await gusset('note', 'b', '--update');
    expect(await found()).toEqual(before);
  });

  it('takes only the named notes, and states the format once the last is done', async () => {
    const read = shop();
    expect((await gusset('note', 'b', '--update', '020')).out).toBe(
      'b/notes/020-other.md:4:1: `writer` is now `by`\nRewrote 1 file(s).\n',
    );
    expect(read('b/notes/010-shaft.md')).toBe(files['b/notes/010-shaft.md']);
    expect(read('b/build.md')).toBe(files['b/build.md']);
    await gusset('note', 'b', '--update', 'b/notes/010-shaft.md', 'build.md');
    expect(read('b/build.md')).not.toContain('format:');
    expect((await gusset('note', 'b', '--update')).out).toContain('b/build.md: format 2\n');
    expect(await gusset('note', 'b', '--update', '030')).toMatchObject({
      code: 2,
      err: expect.stringContaining('found the note 030'),
    });
    expect((await gusset('note', 'x', '--update')).code).toBe(2);
  });

  it('leaves a note that cannot be read as it is, and states no format for it', async () => {
    const broken = files['b/notes/020-other.md'].replace('title: Other', 'titel: Other');
    const read = shop({ 'b/notes/020-other.md': broken });
    const { code, out, err } = await gusset('note', 'b', '--update');
    expect(code).toBe(2);
    expect(err).toContain('b/notes/020-other.md:3:1: found the key `titel`');
    expect(out).toContain('b/notes/010-shaft.md:4:1: `writer` is now `by`\n');
    expect(read('b/notes/020-other.md')).toBe(broken);
    expect(read('b/build.md')).not.toContain('format:');
  });

  it('names what is to be done by hand', async () => {
    const car = '{ hue: green, make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }';
    shop({ 'b/build.md': `---\ntitle: A car made up for tests\n\ncar: ${car}\n---\n` });
    const { code, out } = await gusset('note', 'b', '--update', 'build');
    expect(out).toContain('b/build.md:4:8: `hue` is no longer read: nothing rests on it; rewrite this one by hand\n');
    expect(out).toContain('b/build.md:4:1: `car` is now `vehicle`\n');
    expect(code).toBe(1);
  });

  it('keeps who may read the file', async () => {
    shop();
    chmodSync('b/notes/020-other.md', 0o640);
    await gusset('note', 'b', '--update');
    expect(statSync('b/notes/020-other.md').mode & 0o777).toBe(0o640);
  });
});

describe('a build of a later format', () => {
  it('is not read, and nothing else is said of it', async () => {
    shop({ 'b/notes/020-other.md': 'not a note yet' });
    const later = `---\nformat: ${format + 1}\nnew-key: x\n---\n`;
    writeFileSync('b/build.md', later);
    const { code, err } = await gusset('check', 'b');
    expect(code).toBe(2);
    expect(err).toContain(`b/build.md:2:9: found format ${format + 1}, expected at most ${format}`);
    expect(err).toContain('1 problem(s)');
    expect((await gusset('note', 'b', '--update')).code).toBe(2);
    expect(readFileSync('b/build.md', 'utf8')).toBe(later);
  });
});

it('history follows a value under the name that its field has now', () => {
  const parse = measuredText(shapes);
  const at = (key: string) => parse(`---\nkind: general\nmeasurements: [{ id: a, ${key}: 2 mm }]\n---\n`, 'notes/1.md');
  expect([...at('value')!.values()]).toEqual(['2 mm']);
  expect(at('worth')).toEqual(at('value'));
});
