import { describe, expect, it } from 'vitest';
import { expanded } from '../../../src/calc/value.js';
import { uncertaintyMarks, uncertaintyOf, valueOf } from '../../../src/checks/engine/values.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import type { Measured } from '../../../src/project/fields.js';
import { lateCheck } from '../../../src/project/instruments.js';
import { readBuild } from '../../../src/project/read.js';
import { COVERAGE, studentT } from '../../../src/units/student.js';
import { buildFile, folderWith } from '../../project/scratch.js';

const instruments = `instruments:
  - { id: caliper-1, what: caliper, uncertainty: 0.03 mm, checked: 2025-01-31 }
  - { id: coarse-1, what: caliper, uncertainty: 0.03 mm, resolution: 0.1 mm }
  - { id: yearly-1, what: caliper, uncertainty: 0.03 mm, checked: 2024-02-29, interval: 2 years }
  - { id: bare-1, what: caliper without a word on its uncertainty }
  - { id: wrench-1, what: click wrench, uncertainty: 4 % }
  - { id: tape-1, what: tape, uncertainty: 1 mm }
  - { id: thermo-1, what: thermometer, uncertainty: 2 degC }
  - { id: meter-1, what: sound level meter, uncertainty: 2 % }`;

function read(kind: string, fields: string) {
  const folder = folderWith({
    'build.md': buildFile.replace(/instruments:.*/, instruments),
    'notes/010-a.md': `---\nkind: ${kind}\ntitle: Tried\n${fields}\n---\n\nWords.\n`,
  });
  return readBuild(folder, new Map([...kinds].map(([id, k]) => [id, k.shape])), folder);
}

function the(kind: string, key: string, value: string, more = '') {
  const { build, problems } = read(kind, `${key}: ${value}\n${more}`);
  if (!build) throw new Error(JSON.stringify(problems));
  const measured = key.split('.').reduce<unknown>((of, k) => (of as Record<string, unknown>)[k], build.notes[0]!.data);
  const one = valueOf(measured as Measured, build);
  return { u: expanded(one), ...uncertaintyOf(measured as Measured, build), marks: uncertaintyMarks(one, build), one };
}

/** A width of the car is measured by tape (±2 mm, method ±1 mm), a tube by caliper (±0.1 mm, method ±0.05 mm): practice. */
const width = (value: string) => the('lights-and-body', 'width-now', value);
const tube = (value: string, more = '') => the('driveline', 'tube-diameter', value, more);
const mm = (x: number) => x / 1000;

describe('the uncertainty of one reading', () => {
  it('is that of the coarsest usual instrument where none is named, and is told to be assumed', () => {
    expect(width('1662 mm')).toMatchObject({ expanded: mm(2), assumed: 'usual tape', outOfDate: false });
    expect(width('1662 mm').marks).toEqual(['uncertainty of a usual instrument assumed']);
    expect([...width('1662 mm').one.assumed]).toEqual(['notes/010-a.md#width-now']);
  });

  it('does not differ tenfold with a digit: 749 mm and 749.5 mm with a tape', () => {
    expect(width('749 mm').u).toBe(mm(2));
    expect(width('749.5 mm').u).toBe(mm(2));
    expect(width('749.50 mm').u).toBe(mm(2));
  });

  it('is widened by half the last step written, and not narrowed', () => {
    expect(width('75e1 mm').u).toBe(mm(5));
    expect(width('66 in').u).toBe(0.0127);
    expect(width('26-1/8 in').u).toBe(mm(2));
    expect(tube('{ value: 76 mm, with: caliper-1 }').u).toBe(mm(0.5));
  });

  /** JCGM 100:2008, 4.3 and 5.1.2: √(0.03² + 0.05²) = 0.0583 mm. */
  it('combines instrument and method as the root of the sum of squares', () => {
    const { u, assumed, marks } = tube('{ value: 76.20 mm, with: caliper-1 }');
    expect(u).toBeCloseTo(mm(Math.sqrt(0.0034)), 12);
    expect([assumed, marks]).toEqual([undefined, []]);
  });

  it('counts half of the smallest step that the instrument shows', () => {
    expect(tube('{ value: 76.20 mm, with: coarse-1 }').u).toBeCloseTo(mm(Math.hypot(0.03, 0.05, 0.05)), 12);
  });

  it('of an instrument without a stated one is the usual one', () => {
    expect(tube('{ value: 76.20 mm, with: bare-1 }')).toMatchObject({ expanded: mm(0.1), assumed: 'usual caliper' });
  });

  it('of an instrument that measures something else is the usual one: a nut torque by tape', () => {
    const torque = the('wheels-tyres', 'nut-torque', '{ value: 100.0 N·m, with: tape-1 }');
    expect([torque.u, torque.assumed]).toEqual([6, 'usual click wrench']);
  });

  it('of a stated ± is what is stated, and no narrower than the instrument that is named', () => {
    expect(tube('76.20 ± 0.02 mm')).toMatchObject({ expanded: mm(0.02), assumed: undefined });
    expect(tube('{ value: 76.20 ± 0.04 mm, with: caliper-1 }').u).toBeCloseTo(mm(0.04), 12);
    expect(tube('{ value: 76.20 ± 0.03 mm, with: caliper-1 }').u).toBeCloseTo(mm(0.03), 12);
    expect(tube('{ value: 76.20 ± 0.02 mm, with: caliper-1 }').u).toBeCloseTo(mm(0.03), 12);
  });

  it('in per cent is a share of the reading', () => {
    const torque = the('wheels-tyres', 'nut-torque', '{ value: 100.0 N·m, with: wrench-1 }');
    expect(torque.u).toBeCloseTo(Math.hypot(4, 2), 12);
  });

  it('of a temperature is a difference', () => {
    expect(the('cooling', 'temperature', '{ value: 90.0 degC, with: thermo-1 }').u).toBeCloseTo(Math.hypot(2, 1), 9);
  });

  it('of a figure from a paper is half its last digit; of what is named or counted, none', () => {
    const power = the('engine', 'power', '140 kW');
    expect(power).toMatchObject({ expanded: 500, assumed: 'last digit' });
    expect(power.marks).toEqual(['uncertainty assumed from the last digit of a figure']);
    expect(the('engine', 'cylinders', '6')).toMatchObject({ expanded: 0, assumed: undefined, marks: [] });
  });
});

describe('readings of one place', () => {
  /** JCGM 100:2008, 4.2.3 and G.3: t · s/√n, here s = 1 mm of 3 readings; tape ±2 mm is common practice. */
  it('add their spread to instrument and method', () => {
    const { u, assumed } = width("'[1661, 1662, 1663] mm'");
    expect(u).toBeCloseTo(mm(Math.hypot(2, studentT(2, COVERAGE) / Math.sqrt(3))), 12);
    expect(assumed).toBe('usual tape');
  });

  it('that are equal leave instrument and method', () => {
    expect(width("'[1662, 1662, 1662] mm'").u).toBe(mm(2));
    expect(tube('{ value: [76.20 mm, 76.20 mm, 76.20 mm], with: caliper-1 }').u).toBeCloseTo(
      mm(Math.hypot(0.03, 0.05)),
      12,
    );
  });

  it('keep each its own ±; what an instrument is off does not shrink with their number (JCGM 100:2008, 5.2.2)', () => {
    expect(width('[1662 ± 3 mm, 1662 ± 3 mm, 1662 ± 3 mm]').u).toBeCloseTo(mm(3), 12);
    const one = width('[40 mm, 41 ± 500 mm]').u;
    expect(one).toBeCloseTo(mm(Math.hypot(251, (studentT(1, COVERAGE) * Math.SQRT1_2) / Math.SQRT2)), 9);
    expect(tube('{ value: [76.2 ± 0.01 mm, 76.2 ± 0.01 mm], with: caliper-1 }').u).toBeCloseTo(mm(0.03), 12);
  });

  it('of other units are told with their place', () => {
    const { problems } = read('driveline', 'tube-diameter: [40 mm, 40 kg]');
    expect(problems).toMatchObject([{ code: 'quantity', line: 4, column: 27, endColumn: 29, file: 'notes/010-a.md' }]);
    expect(read('driveline', 'tube-diameter: { value: [40 mm, 40 kg] }').problems).toMatchObject([
      { line: 4, column: 36, endColumn: 38 },
    ]);
  });
});

describe('an instrument', () => {
  it('that build.md does not declare is an error at its place, with the nearest one', () => {
    const { build, problems } = read('driveline', 'tube-diameter: { value: 76.2 mm, with: calipper-1 }');
    expect(build).toBeUndefined();
    expect(problems).toMatchObject([
      {
        code: 'reference-missing',
        file: 'notes/010-a.md',
        line: 4,
        column: 40,
        endColumn: 50,
        hint: 'did you mean `caliper-1`?',
      },
    ]);
  });

  it('with a share of the reading is refused for a level', () => {
    const { problems } = read('exhaust', 'noise: { now: { value: 88.0 dB(A), with: meter-1 } }');
    expect(problems).toMatchObject([
      { code: 'quantity', line: 4, hint: 'state it in `build.md` as `uncertainty: … dB`' },
    ]);
  });

  it.each(['0 mm', '-0.03 mm'])('with an uncertainty of %s is refused', (u) => {
    const folder = folderWith({
      'build.md': buildFile.replace('0.03 mm', u),
      'notes/010-a.md': '---\nkind: driveline\ntitle: Tried\n---\n\nWords.\n',
    });
    const { problems } = readBuild(folder, new Map([...kinds].map(([id, k]) => [id, k.shape])), folder);
    expect(problems).toMatchObject([{ code: 'quantity', file: 'build.md', line: 5 }]);
    expect(problems[0]!.expected).toContain('more than zero');
  });

  /** Twelve months and twice the uncertainty are common practice, no source. */
  it.each([
    ['caliper-1', '2026-01-31', false],
    ['caliper-1', '2026-02-01', true],
    ['caliper-1', '2024-06-01', false],
    ['yearly-1', '2026-02-28', false],
    ['yearly-1', '2026-03-01', true],
    ['coarse-1', '2026-03-01', false],
  ])('%s on %s: its check is too old is %s', (id, on, late) => {
    const { u, outOfDate, marks } = tube(`{ value: 76.20 mm, with: ${id}, on: ${on} }`);
    const step = id === 'coarse-1' ? 0.05 : 0;
    const factor = late ? lateCheck.factor : 1;
    expect(u).toBeCloseTo(mm(Math.hypot(0.03 * factor, step, 0.05)), 12);
    expect(outOfDate).toBe(late);
    expect(marks).toEqual(late ? ['instrument out of date, its uncertainty doubled'] : []);
  });

  it('is too old by the day of the block, where the value has none of its own', () => {
    const block = (on: string) =>
      read('brakes', `now: { on: ${on}, bore: { value: 22.20 mm, with: caliper-1 } }`).build!;
    const bore = (on: string) => (block(on).notes[0]!.data['now'] as { bore: Measured }).bore;
    expect(uncertaintyOf(bore('2026-02-01'), block('2026-02-01')).outOfDate).toBe(true);
    expect(uncertaintyOf(bore('2026-01-31'), block('2026-01-31')).outOfDate).toBe(false);
  });
});

describe('a value that cannot be', () => {
  it.each([
    ['exhaust', 'noise: { now: -88.9 dB(A) }', '−88.9 dB(A), which cannot be'],
    ['clearance', 'lock-left: 362.9 deg', '362.9 deg, which cannot be'],
    ['wheels-tyres', 'nut-torque: -110 N·m', '−110 N·m, which cannot be'],
    ['driveline', "tube-diameter: '[76.2, -76.2] mm'", '−76.2 mm, which cannot be'],
    ['driveline', 'stations: [{ id: ride, shaft: 95 deg nose up }]', '95 deg, which cannot be'],
    ['cooling', 'temperature: -90 degC', '−90 degC, which cannot be'],
    ['engine', 'bore: -0.01 mm', '−0.01 mm, which cannot be'],
  ])('%s %s is an error of its field', (kind, field, found) => {
    expect(read(kind, field).problems).toMatchObject([{ code: 'quantity', line: 4, found }]);
  });

  it.each([
    ['exhaust', 'noise: { now: 0 dB(A) }'],
    ['clearance', 'lock-left: 360 deg'],
    ['cooling', 'temperature: -20 degC'],
    ['wheels-tyres', 'front: { now: { offset: -12 mm } }'],
    ['exhaust', 'outlet: { past-side: -15 mm }'],
    ['alignment', 'maker-thrust: { least: -0.1 deg, greatest: 0.1 deg, from: the sheet }'],
    ['general', 'measurements: [{ id: a, value: -3 mm }]'],
    ['driveline', 'stations: [{ id: ride, shaft: 90 deg nose down }]'],
  ])('%s %s is none', (kind, field) => {
    expect(read(kind, field).problems.filter((p) => p.code === 'quantity')).toEqual([]);
  });

  it('tells what was found, what can be, and what to do', () => {
    const folder = folderWith({
      'build.md': buildFile.replace('mass: 1100 kg,', 'mass: 1100 kg, track-front: -1400 mm,'),
      'notes/010-a.md': '---\nkind: driveline\ntitle: Tried\n---\n\nWords.\n',
    });
    const { problems } = readBuild(folder, new Map([...kinds].map(([id, k]) => [id, k.shape])), folder);
    expect(problems).toMatchObject([
      {
        file: 'build.md',
        line: 4,
        found: '−1400 mm, which cannot be',
        expected: 'front track: 0 mm or more',
        hint: 'leave the minus out, or look at the reading again',
      },
    ]);
  });
});
