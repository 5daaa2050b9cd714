import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { findingsJson } from '../../src/app/results/findings-json.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import { showNumber, showQuantity } from '../../src/units/show.js';
import { gusset } from '../commands/run.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';
import { subjectOf } from '../render/document.js';

/** Numbers that no workshop measures: each gives a reason or a number, and no output has NaN, Infinity or a negative zero. */

const extremes = [
  '1e308',
  '1.7976931348623157e308',
  '1e309',
  '1e-308',
  '5e-324',
  '1e-400',
  '-0',
  '0',
  '-1',
  '0.0',
  '1e15',
  '1e-12',
  '1e9',
  '9'.repeat(40),
  `0.${'0'.repeat(60)}1`,
  `2.${'4'.repeat(200)}`,
  '1e-15 ± 1e15',
  '1e15 ± 1e-15',
  '1 ± 0',
  '0 ± 0',
  '[1e308, 1e308]',
  '[0, 0]',
  '[-0, 0, 1e-300]',
  'Infinity',
  'NaN',
  '0x10',
  '1_000',
  '１２',
  '１.５',
];

/** Fields that sheets divide by, take roots of, and compare, of four kinds. */
const fields: readonly (readonly [file: string, from: string, unit: string])[] = [
  ['notes/010-engine.md', 'stroke: 86.0 mm', 'mm'],
  ['notes/010-engine.md', 'highest-speed: 6200 rpm', 'rpm'],
  ['notes/020-crossmember.md', 'joined-to: { value: 1.20 mm, with: caliper-1 }', 'mm'],
  ['notes/020-crossmember.md', 'leg: 3.2 mm', 'mm'],
  ['notes/025-gearbox.md', 'ratio: 3.25', ''],
  ['notes/030-driveline.md', 'length: 1242 mm', 'mm'],
  ['notes/030-driveline.md', 'tube-wall: 1.65 mm', 'mm'],
  ['build.md', 'mass: 1100 kg', 'kg'],
];

const nonsense = /\bNaN\b|\bInfinity\b|∞|(?<![\w.])[-−]0(?:\.0+)?(?![.\d])|\d[eE]\+?\d{2,}/;
/** What the builder typed is shown as typed: only what the program reckoned and wrote is looked at. */
const nonsenseIn = (page: string, typed: string): string[] =>
  [
    ...page
      .replaceAll(typed, ' ')
      .replace(/<[^>]*>/g, ' ')
      .matchAll(new RegExp(`.{0,40}(?:${nonsense.source}).{0,20}`, 'gs')),
  ].map((m) => m[0]);

// Each value in two of the fields, in turn.
const cases = extremes.flatMap((value, i) =>
  [fields[i % fields.length]!, fields[(3 * i + 4) % fields.length]!].map((field) => [value, ...field] as const),
);

describe('a number as', () => {
  it.each(cases)('%s in %s for %s', async (value, file, from, unit) => {
    const key = from.slice(0, from.indexOf(':'));
    const typed = `${value} ${unit}`.trim();
    const text = workshop[file]!.replace(from, `${key}: '${typed}'`);
    expect(text).not.toBe(workshop[file]);
    const files = Object.entries({ ...workshop, [file]: text });
    // Under a name of its own: that of a temporary folder may look like a number.
    const folder = join(
      folderWith(Object.fromEntries(files.map(([path, content]) => [`car/${path}`, content]))),
      'car',
    );
    const loaded = await load(folder, folder);
    if (!('build' in loaded)) {
      expect(loaded.problems.length).toBeGreaterThan(0);
      for (const p of loaded.problems)
        expect([p.file, p.line > 0, `${p.expected}${p.hint}`]).toEqual([
          file,
          true,
          expect.not.stringMatching(nonsense),
        ]);
      return;
    }
    const subject = await subjectOf(loaded);
    expect(nonsenseIn(htmlPage(compose(subject, new Map()), subject, ''), typed)).toEqual([]);
    const json = JSON.stringify(findingsJson(loaded.build, loaded.evaluation), (_, x: unknown) =>
      Object.is(x, -0) ? '-0 ' : typeof x === 'number' && !Number.isFinite(x) ? 'NaN ' : x,
    );
    expect(json).not.toMatch(/-0 |NaN |null/);
  });
});

it('zero is printed as 0, whatever sign or size it came with', () => {
  for (const zero of [0, -0, 5e-324 * 0.1])
    expect([showNumber(zero), showQuantity(zero, 'mm'), showQuantity(zero, '%'), showQuantity(zero, 'kg', 0)]).toEqual([
      '0',
      '0 mm',
      '0 %',
      '0 kg',
    ]);
  expect(showQuantity(-1e-9, 'mm', 1e-3)).toBe('0 ± 1 mm');
  expect(showNumber(-0.0001, { places: 2 })).toBe('0.00');
});

it('a bench calculation says so too, and the terminal never shows a number that is none', async () => {
  for (const bore of ['1e308 mm', '-0 mm', '0 mm', '1e-300 mm']) {
    const { out, err } = await gusset('calc', 'swept-volume', `bore=${bore}`, 'stroke=86 mm', 'cylinders=6');
    expect(`${out}${err}`.replaceAll(bore, ' ')).not.toMatch(nonsense);
  }
});
