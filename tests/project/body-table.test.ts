import { describe, expect, it } from 'vitest';
import { shapes } from '../../src/app/load.js';
import { measuredText } from '../../src/history/measured.js';
import { withBodyTables } from '../../src/project/body-table.js';
import { readFrontmatter } from '../../src/project/frontmatter.js';
import { readBuild } from '../../src/project/read.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from './scratch.js';

const note = (table: string, name = 'Brake stops') => `---
kind: test
title: Brake test
brakes:
  stops: { table: ${name} }
---

Driven on the dry track.

## Brake stops

${table}

What was found.
`;
const stops = `| test | Speed (km/h) | pedal force (N) | state |
| --- | ---: | ---: | --- |
| service | 80.4 | 360 ± 10 | now |
| pre-test | 30.1 | | |`;

const read = (text: string) => withBodyTables(readFrontmatter(text, 'n.md').value!, 'n.md');
const problemsOf = (text: string) =>
  readBuild(folderWith({ ...workshop, 'notes/090-test.md': text }), shapes, process.cwd()).problems;

describe('a list that stands as a table in the text', () => {
  it('is read as its rows, with the units of the head, the number of the row as its name, and blank cells left out', () => {
    expect(read(note(stops)).value!.data['brakes']).toEqual({
      stops: [
        { id: '1', test: 'service', speed: '80.4 km/h', 'pedal-force': '360 ± 10 N', state: 'now' },
        { id: '2', test: 'pre-test', speed: '30.1 km/h' },
      ],
    });
  });

  it('keeps a unit that a cell has of its own, and a name that a row has', () => {
    const own = read(note('| id | speed (km/h) |\n| --- | --- |\n| wet-1 | 50.0 mph |')).value!.data['brakes'];
    expect(own).toEqual({ stops: [{ id: 'wet-1', speed: '50.0 mph' }] });
  });

  it('stands in a build as if it were written out', () => {
    const build = readBuild(folderWith({ ...workshop, 'notes/090-test.md': note(stops) }), shapes).build!;
    const { brakes } = build.notes.at(-1)!.data as unknown as {
      brakes: { stops: { speed: { quantity: { si: number } } }[] };
    };
    expect(brakes.stops.map((s) => Math.round(s.speed.quantity.si * 3600) / 1000)).toEqual([80.4, 30.1]);
  });

  it('is told apart by its own place when a cell or a head is wrong', () => {
    const [unit, ...others] = problemsOf(note(stops.replace('80.4', '80.4 kg')));
    expect(others).toEqual([]);
    expect(unit).toMatchObject({
      line: 14,
      source: '| service | 80.4 kg | 360 ± 10 | now |',
      found: expect.stringContaining('kg'),
    });
    expect(unit!.source!.slice(unit!.column - 1)).toMatch(/^kg|^80\.4 kg/);
    const [head] = problemsOf(note(stops.replace('Speed (km/h)', 'Sped (km/h)')));
    expect(head).toMatchObject({ line: 12, column: 10, found: expect.stringContaining('sped') });
  });

  it('needs its unit, in the head or in the cell', () =>
    expect(problemsOf(note(stops.replace(' (km/h)', '')))[0]).toMatchObject({
      line: 14,
      found: expect.stringContaining('80.4'),
    }));

  it('is missed with a hint when no table has that name', () => {
    expect(read(note(stops, 'Brake stop')).problems).toMatchObject([
      { code: 'reference-missing', line: 5, column: 19, hint: 'did you mean `brake stops`?' },
    ]);
    expect(read(note('No table.')).problems[0]!.hint).toMatch(/right above the table/);
  });

  it('is followed through the history like what stands above', () => {
    const values = measuredText(shapes)(note(stops), 'notes/090-test.md');
    expect(values!.get('brakes.stops.1.speed')).toBe('80.4 km/h');
  });
});
