import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/gearing/index.js';
import { monotonic } from '../laws.js';
import { result, work } from '../sheet-rules.js';

const sheet = (id: string) => sheets.find((s) => s.id === id)!;
const first = (id: string) => sheet(id).examples[0].given;

describe('laws of gearing', () => {
  it('road speed rises with engine speed and falls with the ratio', () => {
    monotonic(sheet('road-speed'), first('road-speed'), 'engineSpeed', {
      from: 500,
      to: 7000,
      unit: 'rpm',
      result: 'speed',
      rises: true,
    });
    monotonic(sheet('road-speed'), first('road-speed'), 'finalDrive', {
      from: 2.5,
      to: 5.5,
      unit: '1',
      result: 'speed',
      rises: false,
    });
  });

  it('a larger tyre makes the speedometer read low, and a change back undoes it', () => {
    const there = { oldCircumference: '1930 mm', newCircumference: '2050 mm', oldRatio: '3.45', newRatio: '3.90' };
    const back = { oldCircumference: '2050 mm', newCircumference: '1930 mm', oldRatio: '3.90', newRatio: '3.45' };
    const factor = result(sheet('speedometer-change'), there, 'factor');
    expect(result(sheet('speedometer-change'), { ...back, before: String(factor) }, 'factor')).toBeCloseTo(1, 12);
    expect(
      result(sheet('speedometer-change'), { oldCircumference: '1930 mm', newCircumference: '2050 mm' }, 'error'),
    ).toBeLessThan(0);
  });

  it.each([['40 km/h', '39.99 km/h']])('the speedometer rules start at %s', (at, below) => {
    const with_ = (trueSpeed: string) =>
      work(sheet('speedometer-error'), { indicated: '42 km/h', trueSpeed, rule: 'before-2006' }).outOfRange;
    expect(with_(at)).toBeUndefined();
    expect(with_(below)).toMatch(/at least 40 km\/h/);
  });

  it('a rule never lets the newer speedometer read low', () => {
    const given = { indicated: '100 km/h', trueSpeed: '100 km/h' };
    expect(result(sheet('speedometer-error'), { ...given, rule: 'from-2006' }, 'lowest')).toBe(0);
    expect(result(sheet('speedometer-error'), { ...given, rule: 'from-2006' }, 'highest')).toBeCloseTo(14, 9);
    expect(result(sheet('speedometer-error'), { ...given, rule: 'before-2006' }, 'lowest')).toBeCloseTo(-10, 9);
  });

  it('an axle that is the lowest point follows the tyres alone', () => {
    const given = { ...first('ride-height'), lowestPoint: 'axle' };
    expect(result(sheet('ride-height'), given, 'clearance')).toBeCloseTo(160, 9);
  });

  it('spacer and offset move the wheel alike', () => {
    const track = { track: '1450 mm', oldOffset: '40 mm' };
    expect(result(sheet('track-change'), { ...track, newOffset: '30 mm' }, 'now')).toBeCloseTo(
      result(sheet('track-change'), { ...track, newOffset: '40 mm', spacer: '10 mm' }, 'now'),
      9,
    );
  });

  it('a rim code that is not whole, and a width out of range, give the reason', () => {
    const with_ = (given: Record<string, string>) =>
      work(sheet('tyre-dimensions'), { width: '205 mm', aspect: '55 %', rim: '16 in', ...given }).outOfRange;
    expect(with_({ rim: '16.5 in' })).toMatch(/whole number from 10 to 30/);
    expect(with_({ width: '99 mm' })).toMatch(/100 mm to 400 mm/);
    expect(with_({ width: '100 mm' })).toBeUndefined();
  });
});
