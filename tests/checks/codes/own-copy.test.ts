import { describe, expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import type { Reading } from '../../../src/checks/codes/own-copy-problems.js';
import { readLimits } from '../../../src/checks/codes/read-own-copy.js';
import { readYamlFile } from '../../../src/project/frontmatter.js';
import { folderWith } from '../../project/scratch.js';
import { examineNote } from '../kinds/bench.js';

const codes = await loadCodes('AU');
const readBy = 'edition: "3", clause: "2.1", read-by: JO, on: 2026-03-14';

function limits(texts: string | readonly string[], reading: Reading = {}) {
  const files = [texts].flat().map((text, i) => {
    const file = `${'up/'.repeat(i)}limits.yaml`;
    return { file, path: file, front: readYamlFile(text, file).value! };
  });
  const read = readLimits(files, codes, reading);
  return {
    ...read,
    told: read.problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.found}; ${p.expected}`),
  };
}
const figure = (item: string, bounds: string, read = readBy) =>
  limits(`figures:\n  - { item: ${item}, ${bounds}, ${read} }\n`);

describe('figures', () => {
  // wheels.track is a length in mm, driveline.critical-speed a speed of rotation; facts have the dimensions that the codes declare.
  it.each([
    ['wheels.track', 'max: 25 mm', []],
    ['wheels.track', 'max: 1 in', []],
    ['wheels.track', 'max: 0.01 * original_track_rear', []],
    ['wheels.track', 'max: 25', ['limits.yaml:2:32 a ratio or a number in `25`; a length in mm']],
    ['wheels.track', 'max: 25 kg', ['limits.yaml:2:32 a mass in `25 kg`; a length in mm']],
    ['wheels.track', 'max: original_mass', ['limits.yaml:2:32 a mass in `original_mass`; a length in mm']],
    ['wheels.track', 'max: 3/4 in', []],
    ['wheels.track', 'max: 3 / 4 in', ['limits.yaml:2:32 another dimension in `3 / 4 in`; a length in mm']],
    ['wheels.track', 'max: trakc * 2', ['limits.yaml:2:32 the name `trakc`; a fact that is listed under `facts`']],
    ['body.thickness-ratio', 'max: "3/4"', []],
    ['body.thickness-ratio', 'max: 3 mm', ['limits.yaml:2:40 a length in `3 mm`; a ratio or a number in 1']],
    ['wheels.trakc', 'max: 25 mm', ['limits.yaml:2:13 no item `wheels.trakc`; the id of an item of the code']],
    [
      'wheels.spacers',
      'max: 25 mm',
      ['limits.yaml:2:13 a figure for `wheels.spacers`, which asks for an answer; an item that compares a number'],
    ],
  ])('%s with %s: %j', (item, bounds, told) => {
    const read = figure(item, bounds);
    expect(read.told).toEqual(told);
    expect(read.figures.has(item)).toBe(told.length === 0);
  });

  it.each([
    ['min: 1 mm, above: 2 mm', '`above:` beside `min:` at limits.yaml:2:32'],
    ['max: 1 mm, below: 2 mm', '`below:` beside `max:` at limits.yaml:2:32'],
  ])('%s: one of them', (bounds, found) => {
    expect(figure('wheels.track', bounds).problems).toMatchObject([{ line: 2, column: 38, found }]);
    expect(figure('wheels.track', 'min: 1 mm, below: 2 mm').problems).toEqual([]);
  });

  it('two figures for one item are an error with both places', () => {
    const one = `  - { item: wheels.track, max: 25 mm, ${readBy} }\n`;
    const read = limits(`figures:\n${one}${one.replace('25', '30')}`);
    expect(read.told).toEqual([
      'limits.yaml:3:13 a second entry for `wheels.track`; the first stands at limits.yaml:2:13; one entry for each item',
    ]);
    expect(read.figures.get('wheels.track')!.max).toBe('25 mm');
  });

  it("a build's figure stands before that of the workshop", () => {
    const one = `figures:\n  - { item: wheels.track, max: 25 mm, ${readBy} }\n`;
    const read = limits([one, one.replace('25', '30')]);
    expect(read.problems).toEqual([]);
    expect(read.figures.get('wheels.track')!.max).toBe('30 mm');
  });

  it.each([
    ['2026-03-14', []],
    ['2026-03-15', []],
    ['2026-03-13', ['limits.yaml:2:85 2026-03-14, which is still to come; a day up to 2026-03-13']],
  ])('on %s a figure of 14 March: %j', (today, told) => {
    const text = `figures:\n  - { item: wheels.track, max: 25 mm, ${readBy} }\n`;
    expect(limits(text, { today }).told).toEqual(told);
  });

  it.each(['edition: "3", ', 'clause: "2.1", ', 'read-by: JO, '])('asks for what it was read in: %s', (part) => {
    expect(figure('wheels.track', 'max: 25 mm', readBy.replace(part, '')).told).toEqual([
      `limits.yaml:2:13 no \`${part.split(':')[0]}:\` for \`wheels.track\`; edition, clause and who read them`,
    ]);
  });

  // The item's own bounds, 0 to 45 degrees, are those of r. 148 of the South Australian rules of 1999, which were replaced.
  it.each([
    ['max: 30 deg', '29', 'unconfirmed'],
    ['max: 30 deg', '31', 'against'],
    ['min: 0 deg, max: 30 deg', '29', 'met'],
    ['min: 5 deg', '50', 'against'],
  ])('a figure with %s keeps the other side: %s is %s', async (bounds, slope, result) => {
    const found = await examineNote(
      'exhaust',
      `outlet: { form: horizontal, slope: ${slope} ± 0.5 deg, slopes: down }`,
      {
        vehicle: { registration: 'SA' },
        limits: `figures:\n  - { item: exhaust.outlet-angle, ${bounds}, ${readBy} }\n`,
      },
    );
    expect(found.result('exhaust.outlet-angle')).toBe(result);
  });
});

describe('what the certifier adopted in writing', () => {
  const agreed = 'agreed-with: R. Ansell, letter: plates, on: 2026-03-14';
  const reading: Reading = { papers: new Set(['plates', 'plates.pdf']), isCertifier: (name) => name === 'R. Ansell' };
  const of = (item: string, words: string) => limits(`figures:\n  - { item: ${item}, max: "3", ${words} }\n`, reading);
  it.each([
    ['body.thickness-ratio', agreed, []],
    ['body.thickness-ratio', agreed.replace('R. Ansell', 'J. Okoro'), ['`J. Okoro`; the certifier of build.md']],
    [
      'body.thickness-ratio',
      agreed.replace('plates', 'plate'),
      ['no paper `plate` in the notes; the id or file of a paper of this build'],
    ],
    [
      'body.thickness-ratio',
      agreed.replace('letter: plates, ', ''),
      ['`agreed-with:` without `letter:`; both: the certifier, and the paper that says so'],
    ],
    [
      'body.thickness-ratio',
      agreed.replace('agreed-with: R. Ansell, ', ''),
      ['`letter:` without `agreed-with:`; both: the certifier, and the paper that says so'],
    ],
    [
      'engine.step',
      agreed,
      [
        'a figure that was agreed for `engine.step`, which rests on VSB 14 Section LA Engine; an item of common practice; a figure of a text has its edition and clause',
      ],
    ],
  ])('%s with %s: %j', (item, words, told) => {
    expect(of(item, words).told.map((t) => t.replace(/^\S+ /, ''))).toEqual(told);
  });

  const floor = (wall: string) =>
    `pieces:\n  - { id: floor, role: bracket, joined-to: 1.00 ± 0.01 mm, now: { section: FL 100x3, steel: S355, wall: ${wall} ± 0.01 mm } }`;
  it.each([
    ['2.90', 'conforms'],
    ['3.10', 'does-not-conform'],
    ['3.00', 'inconclusive'],
  ])('makes of common practice a requirement: %s mm on 1.00 mm %s', async (wall, outcome) => {
    const limits = `figures:\n  - { item: body.thickness-ratio, max: "3", ${agreed} }\n`;
    const found = (await examineNote('body-structure', floor(wall), { limits })).one('body.thickness-ratio');
    expect(found).toMatchObject({
      of: 'requirement',
      outcome,
      limit: { document: 'letter plates', agreedWith: 'R. Ansell', on: '2026-03-14' },
    });
    expect(found.marks).toContain('agreed with the certifier');
    expect(found.marks).not.toContain('confirm against your copy');
  });
});

describe('questions and proofs that stand so in the own copy', () => {
  const confirmed = (item: string, words = readBy) => `confirmed:\n  - { item: ${item}, ${words} }\n`;
  it.each([
    ['brakes.pipes', 'answers: { brakes.pipes: yes }', ['common practice', 'confirm against your copy']],
    ['brakes.code', 'answers: { brakes.code: LG1 }', ['confirm against your copy']],
    ['brakes.warning-lamp', 'answers: { brakes.warning-lamp: yes }', ['recalled, not confirmed']],
    ['brakes.report', '', ['common practice', 'confirm against your copy']],
  ])('ends what is to be confirmed of %s, and changes no outcome', async (item, note, marks) => {
    const before = (await examineNote('brakes', note)).one(item);
    const after = (await examineNote('brakes', note, { limits: confirmed(item) })).one(item);
    expect(before.marks).toEqual(marks);
    expect(after).toMatchObject({ outcome: before.outcome, of: before.of, basis: 'own-copy', marks: [] });
  });

  it.each([
    [confirmed('wheels.track'), ['limits.yaml:2:13 `wheels.track`, which compares a number; a question or a proof']],
    [confirmed('wheels.spacer'), ['limits.yaml:2:13 no item `wheels.spacer`; the id of an item of the code']],
    [
      confirmed('wheels.fit', readBy.replace('clause: "2.1", ', '')),
      ['limits.yaml:2:13 no `clause:` for `wheels.fit`; edition, clause and who read them'],
    ],
    [
      confirmed('wheels.fit', readBy.replace('2026', '2027')),
      ['limits.yaml:2:71 2027-03-14, which is still to come; a day up to 2026-06-01'],
    ],
    [
      `${confirmed('wheels.fit')}${confirmed('wheels.fit').split('\n')[1]}\n`,
      [
        'limits.yaml:3:13 a second entry for `wheels.fit`; the first stands at limits.yaml:2:13; one entry for each item',
      ],
    ],
    [confirmed('wheels.fit'), []],
  ])('%s is told: %j', (text, told) => {
    expect(limits(text, { today: '2026-06-01' }).told).toEqual(told);
  });

  it('of a text that the item is only borrowed from, it confirms that it applies', async () => {
    const item = 'seating.belt-on-seat';
    const note = 'belts: [{ id: a, on-seat: no }]';
    const at = {
      document: 'own copy of Section LK',
      limits: confirmed(item, `document: own copy of Section LK, ${readBy}`),
    };
    const { confirmed: kept, items } = limits(at.limits);
    expect(kept.get(item)).toMatchObject({ document: at.document });
    expect(items[0]).toMatchObject({ id: item, applies: {}, rests: { document: at.document, basis: 'own-copy' } });
    expect((await examineNote('seating', note, { limits: at.limits })).one(item).marks).toEqual([]);
  });
});

describe('items of the builder', () => {
  const item = (id: string, more = '', unit = 'mm') =>
    `items:\n  - id: ${id}\n    title: Width of a rail\n    kind: limit\n    section: own\n    unit: ${unit}\n    asks: How wide the rail is.\n    cases: [{ max: 40 mm }]\n    rests: { document: own rule, basis: own-copy }\n    raised-by: [general]\n${more}`;
  it('the id of an item of a code is an error with both, unless it says that it replaces it', () => {
    const read = limits(item('wheels.track'));
    expect(read.told).toEqual([
      'limits.yaml:2:9 the id `wheels.track`, which an item of vsb14-suspension.yaml has ("Growth of the track"); another id, or `replaces: [wheels.track]` where it is to stand in its place',
    ]);
    expect(limits(item('wheels.track', '    replaces: [wheels.track]\n')).problems).toEqual([]);
    expect(limits(item('own.rail')).problems).toEqual([]);
  });

  it('one that replaces keeps who raises the item and what it leads to', () => {
    const id = 'wheels.diameter-step';
    const { items } = limits(item(id, `    replaces: [${id}]\n    measured: 1\n`, "'%'").replace('40 mm', '5 %'));
    const { 'raised-by': by, 'leads-to': links } = codes.items.get(id)!;
    expect(items).toMatchObject([{ id, code: 'own', 'leads-to': links, 'raised-by': [...by, 'general'] }]);
  });

  it.each([
    ['wheels.track', 'kg', 'limits.yaml:4:11 `wheels.track` as limit in kg; limit in mm, as the item that it replaces'],
    ['wheels.spacers', 'mm', 'limits.yaml:4:11 `wheels.spacers` as limit in mm; answer, as the item that it replaces'],
  ])('%s in %s does not stand for it', (id, unit, told) => {
    expect(limits(item(id, `    replaces: [${id}]\n`, unit).replace('40 mm', `40 ${unit}`)).told).toEqual([told]);
  });

  it('two of one id are an error with both places', () => {
    const one = item('own.rail');
    expect(limits([one, one]).told).toEqual([
      'up/limits.yaml:2:9 a second entry for `own.rail`; the first stands at limits.yaml:2:9; one entry for each item',
    ]);
  });

  it.each([
    ['cases: [{ max: 40 mm }]', 'cases: [{ max: 40 kg }]', 'limits.yaml:8:20 a mass in `40 kg`; a length in mm'],
    [
      'cases: [{ max: 40 mm }]',
      'cases: [{ max: rail }]',
      'limits.yaml:8:20 the name `rail`; a fact that is listed under `facts`',
    ],
    ['unit: mm', 'unit: cubits', 'limits.yaml:6:11 the unit `cubits`; a unit that is known here'],
  ])('%s as `%s` is told', (was, now, told) => {
    expect(limits(item('own.rail').replace(was, now)).told).toEqual([told]);
  });
});

it('a build is read against its own certifier, papers and day', async () => {
  const text = (agreed: string, on: string) =>
    `figures:\n  - { item: body.thickness-ratio, max: "3", agreed-with: ${agreed}, letter: letter.pdf, on: ${on} }\n`;
  const folder = (limitsFile: string) =>
    folderWith({
      'build.md':
        '---\ntitle: One\nvehicle: { make: Examplia, model: One, built: 1984-05, category: MA, registration: VIC }\ncertifier: { name: R. Ansell (invented) }\n---\n\nWords.\n',
      'notes/010-floor.md':
        '---\nkind: body-structure\ntitle: Floor\npapers: [{ file: letter.pdf, shows: letter on plates }]\n---\n\nWords.\n',
      'papers/letter.pdf': '%PDF-1.4',
      'limits.yaml': limitsFile,
    });
  const found = async (limitsFile: string) => (await load(folder(limitsFile))).problems.map((p) => p.found);
  expect(await found(text('R. Ansell', '2026-03-14'))).toEqual([]);
  expect(await found(text('J. Okoro', '2026-03-14'))).toEqual(['`J. Okoro`']);
  expect(await found(text('R. Ansell', '2999-01-01'))).toEqual(['2999-01-01, which is still to come']);
  expect(await found(text('R. Ansell', '2026-03-14').replace('letter.pdf', 'other.pdf'))).toEqual([
    'no paper `other.pdf` in the notes',
  ]);
});
