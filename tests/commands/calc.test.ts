import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allSheets } from '../../src/calc/catalogue.js';
import { typedName } from '../../src/calc/names.js';
import { exampleArgs } from '../../src/commands/text/calc-describe.js';
import { quantity } from '../calc/sheet-rules.js';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

describe('gusset calc', () => {
  it('lists the sheets by subject', async () => {
    const { code, out } = await gusset('calc');
    expect(code).toBe(0);
    expect(out).toMatch(/^Engine\n {2}engine-capacity +Engine capacity$/m);
  });

  it('shows what a sheet wants, with an example that can be typed', async () => {
    const { code, out } = await gusset('calc', 'compression-ratio');
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}gasket-bore \(mm\) {2,}bore of the head gasket$/m);
    expect(out).toContain("gusset calc compression-ratio bore='4.03 in'");
  });

  it('prints inputs, formula, numbers put in, result with uncertainty, and source', async () => {
    const { code, out } = await gusset('calc', 'engine-capacity', 'bore=86.00 ± 0.02 mm', 'stroke=86mm', 'cylinders=4');
    expect(code).toBe(0);
    for (const line of [
      'B = 86.00 ± 0.02 mm',
      'V_cyl = π / 4 · B² · S',
      '= π / 4 · (86 mm)² · 86 mm',
      '= 1998.23 ± 0.93 cm³',
      'Taken as exact, since no uncertainty was given: stroke, cylinders.',
      'Source. Volume of a cylinder',
    ]) {
      expect(out).toContain(line);
    }
  });

  it('gives the same as JSON, in the units of the sheet', async () => {
    const { out } = await gusset(
      'calc',
      'engine-capacity',
      'bore=4.0 in',
      'stroke=3.5 in',
      'cylinders=8',
      '--format',
      'json',
    );
    const done = JSON.parse(out);
    expect(done.form).toBe('gusset-calc/2');
    expect(done.results.capacity.value).toBeCloseTo(351.858 * 16.387064, 1);
    expect(done.results['per-cylinder'].step).toBe(true);
    expect(done.sources[0].basis).toBe('derived');
  });

  it('says that nothing is known of the uncertainty where none was given', async () => {
    const { out } = await gusset('calc', 'engine-capacity', 'bore=86mm', 'stroke=86mm', 'cylinders=4');
    expect(out).toContain('No uncertainty was given: the inputs are taken as exact.');
  });

  it('takes usual values and says that they are assumed', async () => {
    const { out } = await gusset('calc', 'tyre-dimensions', 'width=205mm', 'aspect=55%', 'rim=16in');
    expect(out).toContain('f = 3.05   usual value, assumed');
    expect(out).toContain('= 632 mm');
  });

  it('gives the reason instead of a number, and exits with 1', async () => {
    const { code, out } = await gusset('calc', 'engine-capacity', 'bore=0mm', 'stroke=86mm', 'cylinders=4');
    expect(code).toBe(1);
    expect(out).toContain('No number: bore and stroke must be greater than zero.');
  });

  it('offers a second opinion on the uncertainty', async () => {
    const { out } = await gusset(
      'calc',
      'engine-capacity',
      'bore=86 ± 0.1 mm',
      'stroke=86mm',
      'cylinders=4',
      '--monte-carlo',
    );
    expect(out).toMatch(/Monte Carlo, \d+ trials; intervals hold 95.45 %\n {2}capacity = 1998.2 ± 4.[67] cm³/);
  });
});

describe('series', () => {
  const front = ['front=800kg', 'rear=600kg', 'wheelbase=2600mm'];
  const capacityOf = async (...args: string[]) =>
    JSON.parse((await gusset('calc', 'mass-added', ...args, '--format', 'json')).out).results.added.value;

  it('takes one argument a row', async () => {
    expect(await capacityOf(...front, 'parts=30kg,-200mm', 'parts=-12 kg, 1.9 m')).toBe(18);
  });

  it('takes a table whose columns stand in any order', async () => {
    const folder = folderWith({ 'parts.csv': 'part,place,mass\nengine,-200 mm,30 kg\nspare,1.9 m,-12 kg\n' });
    expect(await capacityOf(...front, `parts=@${join(folder, 'parts.csv')}`)).toBe(18);
  });

  it('says which columns are wanted', async () => {
    const folder = folderWith({ 'parts.csv': 'place\n-200 mm\n' });
    const file = join(folder, 'parts.csv');
    expect((await gusset('calc', 'mass-added', ...front, `parts=@${file}`)).err).toContain('found the columns place');
    writeFileSync(file, 'mass,place\n30,-200 mm\n');
    const { code, err } = await gusset('calc', 'mass-added', ...front, `parts=@${file}`);
    expect(code).toBe(2);
    expect(err).toMatch(/^parts, row 1, mass: found /);
    expect((await gusset('calc', 'mass-added', ...front, 'parts=30kg')).err).toContain(
      'found 1 values in row 1, expected 2: mass (kg), place (mm)',
    );
    expect((await gusset('calc', 'mass-added', ...front, 'parts=@nowhere.csv')).err).toContain('there is no such file');
  });

  it('keeps a list of readings together', async () => {
    expect(await capacityOf(...front, 'parts=[29, 31] kg,-200mm')).toBe(30);
  });
});

describe('what cannot be understood', () => {
  it.each([
    [['calc', 'engine-capasity'], 'did you mean `engine-capacity`'],
    [['calc', 'zzzz'], 'expected one of those that `gusset calc` lists'],
    [
      ['calc', 'engine-capacity', 'bor=86mm'],
      'found the input “bor”, expected one of those of sheet engine-capacity; did you mean `bore`?',
    ],
    [['calc', 'engine-capacity', 'bore=86kg'], 'bore: found kg, which is a mass, expected a length'],
    [['calc', 'engine-capacity', 'bore=86'], 'bore: found'],
    [['calc', 'engine-capacity', 'bore'], 'expected name=value'],
    [['calc', 'engine-capacity', 'bore=86mm', 'bore=87mm'], 'bore is given twice'],
    [['calc', 'engine-capacity', 'bore=86mm'], 'stroke (mm): stroke of the crankshaft fitted'],
    [['calc', 'tyre-rating', 'load-index=91', 'speed-symbol=h'], 'did you mean `H`?'],
    [['calc', 'engine-capacity', '--format', 'xml'], 'expected text or json'],
    [['calc', 'engine-capacity', 'bore=86mm', '--find', 'stroke'], 'expected both'],
    [
      ['calc', 'engine-capacity', 'bore=86mm', 'cylinders=4', '--find', 'bore', '--for', 'capacity=2L'],
      'bore is given and sought',
    ],
    [
      ['calc', 'engine-capacity', 'bore=86mm', 'cylinders=4', '--find', 'stroke', '--for', 'capacity=2kg'],
      'found kg, which is a mass',
    ],
    [
      ['calc', 'engine-capacity', 'bore=86mm', 'cylinders=4', '--find', 'stroke', '--for', 'volume=2L'],
      'found the result “volume”',
    ],
  ])('%j', async (args, says) => {
    const { code, out, err } = await gusset(...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(says);
  });

  it('tells all faults at once', async () => {
    const { err } = await gusset('calc', 'engine-capacity', 'bor=86mm', 'stroke=86kg');
    expect(err).toContain('bor');
    expect(err).toContain('stroke: found kg');
  });
});

describe('solving backwards', () => {
  const two = ['calc', 'engine-capacity', 'stroke=86mm', 'cylinders=4', '--find', 'bore', '--for'];

  it('finds the input and works the sheet through with it', async () => {
    const { code, out } = await gusset(...two, 'capacity=1998.23 cm3');
    expect(code).toBe(0);
    expect(out).toMatch(/^bore = 86\.000\d? mm$|^bore = 86 mm$|^bore = 86\.0001 mm$/m);
    expect(out).toContain('= 1998 cm³');
  });

  it('says what stands in the way, and exits with 1', async () => {
    const { code, out } = await gusset(...two, 'capacity=-1 cm3');
    expect(code).toBe(1);
    expect(out).toBe(
      'bore: no solution in the range of validity (bore and stroke must be greater than zero); the nearest is 0 cm³ at bore = 0 mm.\n',
    );
  });

  it('gives every solution', async () => {
    const { out } = await gusset(
      'calc',
      'track-change',
      'track=1450mm',
      'old-offset=40mm',
      'spacer=0mm',
      '--find',
      'new-offset',
      '--for',
      'now=1474mm',
      '--format',
      'json',
    );
    expect(JSON.parse(out)).toMatchObject({ form: 'gusset-solution/2', find: 'new-offset', unit: 'mm' });
    expect(JSON.parse(out).solutions).toHaveLength(1);
    expect(JSON.parse(out).solutions[0]).toBeCloseTo(28, 9);
  });
});

describe('every sheet at the bench', () => {
  it('has names that can be typed and told apart', async () => {
    for (const sheet of await allSheets()) {
      for (const names of [Object.keys(sheet.inputs), Object.keys(sheet.results)]) {
        const typed = names.map(typedName);
        expect(new Set(typed).size, sheet.id).toBe(typed.length);
        for (const name of typed) expect(name).toMatch(/^[A-Za-z][A-Za-z0-9]*(-[a-z0-9]+)*$/);
      }
    }
  });

  it('gives the printed values of its examples from the command line', async () => {
    for (const sheet of await allSheets()) {
      for (const example of sheet.examples) {
        const { code, out, err } = await gusset('calc', sheet.id, ...exampleArgs(sheet, example), '--format', 'json');
        expect(`${sheet.id} ${code} ${err}`).toBe(`${sheet.id} 0 `);
        const { results } = JSON.parse(out);
        for (const [name, printed] of Object.entries(example.gives)) {
          const { value, unit } = results[typedName(name)];
          const wanted = quantity(printed, sheet.results[name]!.unit);
          const found = quantity(unit === '1' ? String(value) : `${value} ${unit}`, unit);
          expect(Math.abs(found.si - wanted.si), `${sheet.id}: ${name}`).toBeLessThanOrEqual(
            wanted.halfDigit * (1 + 1e-9),
          );
        }
        expect((await gusset('calc', sheet.id, ...exampleArgs(sheet, example))).out, sheet.id).not.toMatch(
          /[\\{}@]|undefined|NaN/,
        );
      }
    }
  });
});
