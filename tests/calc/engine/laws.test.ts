import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/engine/index.js';
import { monotonic } from '../laws.js';
import { result, work } from '../sheet-rules.js';

const sheet = (id: string) => sheets.find((s) => s.id === id)!;
const first = (id: string) => sheet(id).examples[0].given;

describe('laws of the engine sheets', () => {
  it('capacity rises with bore and stroke', () => {
    monotonic(sheet('engine-capacity'), first('engine-capacity'), 'bore', {
      from: 40,
      to: 130,
      unit: 'mm',
      result: 'capacity',
      rises: true,
    });
    monotonic(sheet('engine-capacity'), first('engine-capacity'), 'stroke', {
      from: 40,
      to: 130,
      unit: 'mm',
      result: 'capacity',
      rises: true,
    });
  });

  it('the number of cylinders is whole and from 1 to 16', () => {
    const with_ = (cylinders: string) =>
      work(sheet('engine-capacity'), { bore: '86 mm', stroke: '86 mm', cylinders }).outOfRange;
    for (const good of ['1', '16']) expect(with_(good)).toBeUndefined();
    for (const bad of ['0', '17', '4.5'])
      expect(with_(bad)).toBe('the number of cylinders must be a whole number from 1 to 16');
  });

  it('compression rises as the chamber, the gasket or the deck shrinks', () => {
    const given = first('compression-ratio');
    monotonic(sheet('compression-ratio'), given, 'chamber', {
      from: 30,
      to: 100,
      unit: 'cm3',
      result: 'ratio',
      rises: false,
    });
    monotonic(sheet('compression-ratio'), given, 'gasketThickness', {
      from: 0.3,
      to: 3,
      unit: 'mm',
      result: 'ratio',
      rises: false,
    });
    monotonic(sheet('compression-ratio'), given, 'deck', {
      from: -0.5,
      to: 2,
      unit: 'mm',
      result: 'ratio',
      rises: false,
    });
  });

  it('two readings of a stop that are swapped put top dead centre on the other side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 600 }), fc.integer({ min: 1, max: 600 }), (a, b) => {
        const offset = (before: number, after: number) =>
          result(sheet('top-dead-centre'), { before: `${before / 10} deg`, after: `${after / 10} deg` }, 'offset');
        expect(offset(a, b)).toBeCloseTo(-offset(b, a), 12);
        expect(Math.sign(offset(a, b))).toBe(Math.sign(a - b));
      }),
    );
  });

  it('mounts share weight and torque so that both sides together carry the weight', () => {
    const given = { torque: '320 N·m', ratio: '3.2', spacing: '550 mm', weight: '70 kg' };
    const [down, up] = ['pressed', 'lifted'].map((r) => result(sheet('mount-reaction'), given, r));
    expect(down! - up!).toBeCloseTo(2 * 70 * 9.80665, 9);
    monotonic(sheet('mount-reaction'), given, 'spacing', {
      from: 300,
      to: 900,
      unit: 'mm',
      result: 'pair',
      rises: false,
    });
  });

  it('permissible unbalance falls with speed and rises with mass, G40 over G16 by their ratio', () => {
    const given = first('permissible-unbalance');
    monotonic(sheet('permissible-unbalance'), given, 'speed', {
      from: 1000,
      to: 8000,
      unit: 'rpm',
      result: 'unbalance',
      rises: false,
    });
    monotonic(sheet('permissible-unbalance'), given, 'mass', {
      from: 2,
      to: 40,
      unit: 'kg',
      result: 'unbalance',
      rises: true,
    });
    expect(
      result(sheet('permissible-unbalance'), { ...given, grade: 'G40' }, 'unbalance') /
        result(sheet('permissible-unbalance'), given, 'unbalance'),
    ).toBeCloseTo(2.5, 12);
  });

  it('a clearance does not depend on the order of the journals', () => {
    const { journals } = first('bearing-clearance') as { journals: readonly Record<string, string>[] };
    for (const name of ['smallest', 'largest', 'spread']) {
      expect(result(sheet('bearing-clearance'), { journals: [...journals].reverse() }, name)).toBe(
        result(sheet('bearing-clearance'), { journals }, name),
      );
    }
  });
});
