import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/noise/index.js';
import { result, work } from '../sheet-rules.js';

const sheet = (id: string) => sheets.find((s) => s.id === id)!;
const rows = (...levels: number[]) => ({ levels: levels.map((level) => ({ level: `${level} dB(A)` })) });
const levels = fc.array(
  fc.integer({ min: 400, max: 1200 }).map((x) => x / 10),
  { minLength: 1, maxLength: 8 },
);

describe('laws of sound levels', () => {
  it('the energy mean lies between the arithmetic mean and the highest reading', () => {
    fc.assert(
      fc.property(levels, (all) => {
        const mean = result(sheet('energy-mean'), rows(...all), 'mean');
        expect(mean).toBeGreaterThanOrEqual(all.reduce((a, b) => a + b, 0) / all.length - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
      }),
    );
  });

  it('taking a background off again gives what was added', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 110 }), fc.integer({ min: 0, max: 30 }), (source, below) => {
        const together = result(sheet('level-sum'), rows(source, source - below), 'sum');
        fc.pre(together - (source - below) >= 3.001);
        expect(
          result(
            sheet('background-correction'),
            { measured: `${together} dB(A)`, background: `${source - below} dB(A)` },
            'source',
          ),
        ).toBeCloseTo(source, 6);
      }),
    );
  });

  it('a background less than 3 dB below gives the reason, 3 dB a number', () => {
    const with_ = (background: string) =>
      work(sheet('background-correction'), { measured: '80 dB(A)', background }).outOfRange;
    expect(with_('77 dB(A)')).toBeUndefined();
    expect(with_('77.1 dB(A)')).toMatch(/at least 3 dB above/);
  });

  it('the test speed joins at its edges and keeps 5 % below what the engine reaches', () => {
    const at = (rated: string, attainable?: string) =>
      result(sheet('stationary-test-speed'), attainable ? { rated, attainable } : { rated }, 'speed');
    expect(at('5000 rpm')).toBeCloseTo(3750, 9);
    expect(at('7500 rpm')).toBeCloseTo(3750, 9);
    expect(at('8000 rpm')).toBeCloseTo(4000, 9);
    expect(at('6000 rpm', '3400 rpm')).toBeCloseTo(3230, 9);
    expect(at('6000 rpm', '5000 rpm')).toBeCloseTo(3750, 9);
  });
});
