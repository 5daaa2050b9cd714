import { beforeAll, describe, expect, it } from 'vitest';
import { noteTemplate } from '../../../src/app/notes/note-template.js';
import { type Codes, loadCodes } from '../../../src/checks/codes/codes.js';
import { noteKinds } from '../../../src/checks/codes/item.js';
import { examine } from '../../../src/checks/engine/examine.js';
import { resultOf } from '../../../src/checks/engine/finding.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { readBuild } from '../../../src/project/read.js';
import { fillTypical } from '../../project/fill-typical.js';
import { folderWith } from '../../project/scratch.js';

let codes: Codes;
beforeAll(async () => {
  codes = await loadCodes('AU');
});

const shapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));
const vehicle = (more: string) =>
  `---\ntitle: A car made up for tests\nvehicle: { make: Examplia, model: One, built: 1984-05, category: MA, ${more} }\n---\n`;
const read = (note: string, car = vehicle('registration: VIC'), files: readonly string[] = []) => {
  const folder = folderWith({
    'build.md': car,
    'notes/010-tried.md': note,
    ...Object.fromEntries(files.map((f) => [f, 'content'])),
  });
  return readBuild(folder, shapes, folder);
};
const problems = (found: ReturnType<typeof readBuild>) =>
  found.problems.map(
    (p) => `${p.line}: found ${p.found}, expected ${p.expected}${p.source ? `\n    ${p.source}` : ''}`,
  );
const template = (id: string, more = {}) =>
  noteTemplate(kinds.get(id)!, { title: 'A note: tried', items: codes.items.values(), ...more });

describe.each([...kinds.keys()])('template of %s', (id) => {
  it('reads without problems while it is empty, and finds only what is missing', () => {
    const found = read(template(id));
    expect(problems(found)).toEqual([]);
    const { findings } = examine(found.build!, { codes, kinds, ownFigures: new Map(), ownItems: [] });
    // What build.md alone decides, such as the state of registration, is no matter of the note.
    const decided = findings.filter(
      (f) => !['missing', 'out'].includes(resultOf(f.outcome)) && !['vehicle.state', 'vehicle.gvm'].includes(f.item),
    );
    expect(decided.map((f) => `${f.item} ${f.outcome}: ${f.says}`)).toEqual([]);
  });

  it('reads without problems when its comments are followed', () => {
    const { text, files } = fillTypical(template(id));
    const found = read(text, undefined, files);
    expect(problems(found)).toEqual([]);
    expect(() => examine(found.build!, { codes, kinds, ownFigures: new Map(), ownItems: [] })).not.toThrow();
  });

  it('keeps its lines short, and names each key of the kind', () => {
    const text = template(id);
    expect(
      text
        .slice(0, text.indexOf('\n---\n'))
        .split('\n')
        .filter((line) => line.length > 104 && !/ shows: /.test(line)),
    ).toEqual([]);
    for (const key of Object.keys(kinds.get(id)!.shape)) expect(text).toMatch(new RegExp(`^#?${key}:`, 'm'));
  });
});

it('has words for every kind that there can be', () => {
  for (const id of noteKinds.filter((k) => kinds.has(k))) expect(template(id)).toMatch(/\n---\n\n[^]*<!--/);
});

it('says beside a field what it is, how it is measured and which items it serves', () => {
  const text = template('mass');
  expect(text).toContain(`
now:
  # mass on the front axle, in a unit such as kg
  # How: weighbridge or two scales, the same floor for both axles, three readings
  # For example: '[685.5, 686.0, 685.5] kg'
  # Serves: mass.laden, mass.axle-front, mass.axle-rear
  front:
`);
  expect(text).toMatch(/# Serves: mass\.laden, mass\.axle-front/);
});

it('leaves out what does not apply to the car, and says why at the end', () => {
  const at = (registration: string, built: string) => {
    const { build } = read(
      '---\nkind: mass\ntitle: Weighed\n---\n',
      `---\ntitle: A car made up\nvehicle: { make: Examplia, model: One, built: ${built}, category: MA, registration: ${registration} }\n---\n`,
    );
    return template('retained-systems', { build });
  };
  const sa = at('SA', '1990-01');
  expect(sa).toMatch(
    /# Left out, because it does not apply to this car:[^]*# engine\.canister-sa: applies to vehicles built before 1986-01-01; this one was built 1990-01/,
  );
  expect(at('SA', '1984-05')).not.toMatch(/^# engine\.canister-sa: /m);
  expect(at('VIC', '1984-05')).toMatch(/# engine\.canister-sa: applies in SA; this vehicle is registered in VIC/);
});

it('asks for no answer that a field gives, so that an empty key cannot hide it', () => {
  const text = template('seating');
  const answers = text.slice(text.indexOf('\nanswers:'), text.indexOf('\nphotos:'));
  expect(answers).not.toContain('seating.airbags-kept:');
  expect(answers).toContain('seating.labels:');
});

it('shows an unmeasured example of a list as a comment', () => {
  const text = template('general');
  expect(text).toMatch(/^measurements:\n#\s+# name of the item.*\n#\s+- id: example\n/m);
});
