import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitIn } from '../../src/project/fields.js';
import { readQuantity } from '../../src/units/quantity.js';
import { directionWords, directionWordsOf, endsInDirection, readSlope, readSlopeAbout } from '../../src/units/slope.js';

const degrees = (text: string) => {
  const read = readSlope(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return (read.quantity.si * 180) / Math.PI;
};

describe('angles with their direction in words', () => {
  it.each([
    ['3.2 deg down to the rear', 3.2, 'pitch'],
    ['3.2 deg down to rear', 3.2, 'pitch'],
    ['1.5 deg up to the front', 1.5, 'pitch'],
    ['2 ± 0.1 deg nose up', 2, 'pitch'],
    ['2° nose up', 2, 'pitch'],
    ['2°nose-up', 2, 'pitch'],
    ['2 deg Nose Down', -2, 'pitch'],
    ['2 deg ± 0.1 deg up to the rear', -2, 'pitch'],
    ['1°30′ nose down', -1.5, 'pitch'],
    ['0 deg level', 0, 'pitch'],
    ['0 deg nose down', 0, 'pitch'],
    ['0.5 deg to the left', 0.5, 'plan'],
    ['0.5 deg to the right', -0.5, 'plan'],
    ['0.5 deg top in', -0.5, 'camber'],
    ['4 deg top to the rear', 4, 'caster'],
    ['0.1 deg toe in', 0.1, 'toe'],
    ['[2.1, 2.2, 2.3] deg nose down', -2.2, 'pitch'],
  ])('%s', (text, value, axis) => {
    expect(degrees(text)).toBeCloseTo(value, 12);
    expect(readSlope(text)).toMatchObject({ axis });
  });

  it.each([
    ['[2.9 deg nose up, 2.9 deg nose down]', 0, 'nose up'],
    ['[2.9 deg nose up, 0.1 deg nose down]', 1.4, 'nose up'],
    ['[0.1 deg nose up, 2.9 deg down to the front]', -1.4, 'down to the front'],
    ['[3.0 deg nose up, 3.2 deg rear down, 3.1 deg up to the front]', 3.1, 'nose up'],
    ['[1 ± 0.2 deg nose up, 0 deg level]', 0.5, 'nose up'],
  ])('each reading of %s has its own direction', (text, mean, direction) => {
    expect(degrees(text)).toBeCloseTo(mean, 12);
    expect(readSlope(text)).toMatchObject({ axis: 'pitch', direction, quantity: { text } });
    expect(endsInDirection(text)).toBe(true);
  });

  it('of readings with their own directions tells which lacks one', () => {
    const problem = (text: string) => {
      const read = readSlope(text);
      return read.ok ? undefined : [read.problem.code, text.slice(...read.problem.at)];
    };
    expect(problem('[2.9 deg nose up, 2.9 deg]')).toEqual(['direction', '2.9 deg']);
    expect(problem('[2.9 deg nose up, 2.9 deg top in]')).toEqual(['direction', '2.9 deg top in']);
    expect(problem('[2.9 deg nose up, -2.9 deg nose up]')).toEqual(['direction', '-2.9 deg nose up']);
    expect(problem('[2.9 deg nose up, 2.9 deg nose down] nose up')).toEqual(['direction', 'nose up']);
    expect(problem('[2.9 deg nose up, 2.9 mm nose up]')).toEqual(['dimension', 'mm']);
    expect(problem('[2, -2] deg level')?.[0]).toBe('direction');
    expect(problem('[2, -1] deg nose up')?.[0]).toBe('direction');
  });

  it('is told from a quantity by the words at its end: none of them ends in a unit that would be read', () => {
    for (const words of directionWords) {
      const text = `2 deg ${words}`;
      expect([text, endsInDirection(text), readQuantity(text, unitIn(text)).ok]).toEqual([text, true, false]);
    }
    for (const text of ['2 deg', '2 in', '2 deg stop in', 'level', `${'2'.repeat(500)} deg level`])
      expect([text, endsInDirection(text)]).toEqual([text, false]);
  });

  it('keeps what was written, its uncertainty, and tells what is positive', () => {
    const read = readSlope('2 ± 0.1 deg nose down');
    expect(read).toMatchObject({
      ok: true,
      direction: 'nose down',
      positive: 'front end higher',
      quantity: { text: '2 ± 0.1 deg nose down', unit: 'deg' },
    });
    expect(read.ok && read.quantity.expanded).toBeCloseTo(Math.PI / 1800, 12);
  });

  it.each([
    ['3.2 deg', 'direction'],
    ['-3.2 deg', 'direction'],
    ['-3.2 deg nose up', 'direction'],
    ['3.2 deg sideways', 'direction'],
    ['3.2 deg nose', 'direction'],
    ['2 deg level', 'direction'],
    ['3.2 nose up', 'unit-missing'],
    ['3.2', 'unit-missing'],
    ['2 mm nose up', 'dimension'],
    ['3,2 deg nose up', 'decimal-comma'],
    ['nose up', 'number'],
    ['', 'empty'],
  ])('%s is refused', (text, code) => {
    const read = readSlope(text);
    expect(read).toMatchObject({ ok: false, problem: { code } });
    if (!read.ok && code === 'direction' && !text.startsWith('-') && !text.includes('level')) {
      for (const words of directionWords) expect(read.problem.hint).toContain(words);
    }
  });

  it('never throws, and points inside the text', () => {
    const words = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.constantFrom(...directionWords),
      fc.constantFrom('3 deg', '°', ' ', '2 ± 0.1 deg'),
    );
    fc.assert(
      fc.property(
        fc.array(words, { maxLength: 30 }).map((w) => w.join(' ')),
        (text) => {
          const read = readSlope(text);
          if (read.ok) return;
          const [start, end] = read.problem.at;
          expect(0 <= start && start <= end && end <= text.length).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('angles about one axis', () => {
  it('takes the words of its axis and refuses those of another', () => {
    expect(readSlopeAbout('camber')('0.5 deg top in')).toMatchObject({ ok: true, axis: 'camber' });
    expect(readSlopeAbout('camber')('0.5 deg toe in')).toMatchObject({
      ok: false,
      problem: { code: 'direction', found: '“toe in”', hint: 'end with one of: top out, top in, upright', at: [8, 14] },
    });
    expect(readSlopeAbout('toe')('0.5 kg toe in')).toMatchObject({ ok: false });
    expect(directionWordsOf('toe')).toEqual(['toe in', 'toe out']);
  });
});
