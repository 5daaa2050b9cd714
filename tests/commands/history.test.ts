import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { buildFile, floorNote } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { jo, mika, temporary } from '../history/throwaway.js';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

const note = 'builds/t/notes/010-floor.md';
const evil = { name: 'Mika \u202egnihtemos', email: 'm@example.org' };
const step = (day: string, files: NonNullable<Step['files']>, by = jo, says = `Day ${day}`): Step => ({
  by,
  on: `${day}T18:00:00+10:00`,
  says,
  files,
});
const build = (...steps: Step[]): string => {
  const directory = temporary();
  makeHistory(directory, [step('2026-03-11', { 'builds/t/build.md': buildFile, [note]: floorNote() }), ...steps]);
  return `${directory}/builds/t`;
};

describe('gusset history', () => {
  it('lists what was changed, counts the rest, and points out what came too late', async () => {
    const { code, out } = await gusset(
      'history',
      build(step('2026-03-25', { [note]: floorNote({ wall: '0.1 in' }) }, evil)),
    );
    expect(code).toBe(0);
    expect(out).toContain('notes/010-floor.md  pieces.floor.now.wall\n');
    expect(out).toMatch(
      /2026-03-25 18:00 2\.48 mm → 0\.1 in \(\+0\.06 mm\) Mika ‹U\+202E›gnihtemos <m@example\.org>: Day\s+2026-03-25/,
    );
    expect(out).toContain('! dated after `painted` on 2026-03-20 covered what it measures');
    expect(out).toMatch(/^t: \d+ values, \d+ of them entered once, 1 changed since, 1 change\(s\) after/m);
    expect(out).not.toContain('joined-to');
  });

  it('needs nothing but notes that can be read to point out what came too late, and says when they cannot', async () => {
    const folder = build(step('2026-03-25', { [note]: floorNote({ wall: '0.1 in' }) }));
    const file = join(folder, 'notes/010-floor.md');
    writeFileSync(file, floorNote({ wall: '0.1 in', joined: '1.20 mm, photo: nowhere' }));
    expect((await gusset('check', folder)).code).toBe(2);
    expect(await gusset('history', folder)).toMatchObject({
      code: 0,
      err: '',
      out: expect.stringContaining('! dated after `painted`'),
    });
    writeFileSync(file, 'no measurements');
    const { code, out, err } = await gusset('history', folder);
    expect({ code, err }).toEqual({
      code: 0,
      err: expect.stringMatching(/^1 problem\(s\) keep the notes from being read/),
    });
    expect(out).toContain('2.48 mm → 0.1 in');
    expect(out).not.toContain('dated after');
  });

  it('lists one note or field whole, and says which there are', async () => {
    const folder = build();
    expect((await gusset('history', folder, '010', 'pieces.floor.joined-to')).out).toMatch(
      /joined-to\n {2}2026-03-11 18:00 entered 1\.20 mm Jo Ashdown/,
    );
    expect(await gusset('history', folder, '020')).toMatchObject({
      code: 2,
      err: expect.stringContaining('expected one of build, 010-floor'),
    });
    expect(await gusset('history', folder, '010', 'piece')).toMatchObject({
      code: 2,
      err: expect.stringContaining('pieces.floor.now.wall'),
    });
  });

  it('gives the same as JSON', async () => {
    const { out } = await gusset(
      'history',
      build(step('2026-03-25', { [note]: floorNote({ wall: '2.5 mm' }) })),
      '--format',
      'json',
    );
    const data = JSON.parse(out);
    expect(data).toMatchObject({ form: 'gusset-history/2', build: 't', unread: [], limits: [] });
    expect(data.fields.filter((f: { events: unknown[] }) => f.events.length > 1)).toMatchObject([
      {
        note: 'notes/010-floor.md',
        field: 'pieces.floor.now.wall',
        events: [
          { to: '2.48 mm' },
          {
            from: '2.48 mm',
            to: '2.5 mm',
            difference: '+0.02 mm',
            late: { stage: 'painted', on: '2026-03-20' },
            author: jo,
          },
        ],
      },
    ]);
    expect(data.enteredOnce).toBe(data.fields.length - 1);
  });

  it('tells what changed between two states', async () => {
    const folder = build(step('2026-03-25', { [note]: floorNote({ wall: '3.60 mm' }) }, mika));
    const { out, code } = await gusset('history', folder, '--from', 'HEAD~1');
    expect(code).toBe(0);
    expect(out).toContain('Measured values\n  notes/010-floor.md pieces.floor.now.wall: 2.48 mm → 3.60 mm (+1.12 mm)');
    expect(out).toMatch(
      /Outcomes\n {2}010-floor\/floor\/body\.thickness-ratio, [^]*within\s+usual\s+practice\s+→\s+outside\s+usual\s+practice/,
    );
    expect((await gusset('history', folder, '--from', 'HEAD', '--to', 'HEAD')).out).toContain(
      'Nothing that is measured, found or shown has changed.',
    );
    const { out: json } = await gusset('history', folder, '--from', 'HEAD~1', '--format', 'json');
    expect(JSON.parse(json)).toMatchObject({
      form: 'gusset-changes/2',
      outcomes: [{ from: { outcome: 'within-usual-practice' }, to: { outcome: 'outside-usual-practice' } }],
      values: [{}],
      limits: [],
    });
  });

  it('says what it cannot tell where there is no history or no such state', async () => {
    expect(await gusset('history', folderWith({ 'build.md': buildFile }))).toMatchObject({
      code: 2,
      err: expect.stringContaining('is in no git repository'),
    });
    const empty = temporary();
    makeHistory(empty, []);
    expect(await gusset('history', empty)).toMatchObject({
      code: 2,
      err: expect.stringContaining('Nothing is committed yet'),
    });
    expect(await gusset('history', build(), '--from', 'B')).toMatchObject({
      code: 2,
      err: expect.stringContaining('found neither an issue nor a commit `B`'),
    });
    expect(await gusset('history', build(), '--to', 'B')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--to without --from'),
    });
  });
});
