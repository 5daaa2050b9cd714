import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Value } from '../../../src/calc/value.js';
import type { Limit } from '../../../src/checks/codes/limit.js';
import { decide, marksOf } from '../../../src/checks/engine/verdict.js';

const value = (si: number, u = 0): Value => ({
  si,
  unit: '1',
  parts: new Map([['x', u]]),
  assumed: new Set(),
  origin: { kind: 'given', text: '' },
});
const limit = (bounds: Partial<Limit>): Limit => ({
  document: 'test',
  basis: 'published',
  status: 'in-force',
  unit: '1',
  ...bounds,
});

describe('decide', () => {
  it.each([
    [2.5, 0, { max: 2.5 }, 'conforming'],
    [2.4999, 0, { max: 2.5 }, 'conforming'],
    [2.5001, 0, { max: 2.5 }, 'nonconforming'],
    [2.4, 0.1, { max: 2.5 }, 'conforming'],
    [2.45, 0.1, { max: 2.5 }, 'undecided'],
    [2.55, 0.1, { max: 2.5 }, 'undecided'],
    [2.61, 0.1, { max: 2.5 }, 'nonconforming'],
    [750, 0, { below: 750 }, 'nonconforming'],
    [749.9, 0, { below: 750 }, 'conforming'],
    [10, 0, { min: 10 }, 'conforming'],
    [9.9, 0, { min: 10 }, 'nonconforming'],
    [5, 0, { min: 4, max: 6 }, 'conforming'],
    [6.05, 0.1, { min: 4, max: 6 }, 'undecided'],
  ] as const)('%f ± %f against %o: %s', (x, u, bounds, outcome) => {
    expect(decide(value(x, u), limit(bounds)).outcome).toBe(outcome);
  });

  it('takes 3.0 mm over 1.2 mm as exactly 2.5, although binary division in metres gives more', () => {
    expect(0.003 / 0.0012).not.toBe(2.5);
    expect(decide(value(0.003 / 0.0012), limit({ max: 2.5 }))).toEqual({ outcome: 'conforming', margin: 0 });
  });

  it('never conforms on a recalled figure', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e6, max: 1e6 }),
        fc.double({ noNaN: true, min: 0, max: 1e3 }),
        (x, u) => {
          expect(decide(value(x, u), limit({ max: 1, basis: 'memory' })).outcome).toBe('unconfirmed');
        },
      ),
    );
  });

  it('never turns from conforming to undecided to not conforming and back as the value grows', () => {
    const order = ['conforming', 'undecided', 'nonconforming'];
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -10, max: 10 }),
        fc.double({ noNaN: true, min: 0, max: 5 }),
        fc.double({ noNaN: true, min: 0, max: 2 }),
        (x, step, u) => {
          const at = (y: number) => order.indexOf(decide(value(y, u), limit({ max: 1 })).outcome);
          expect(at(x + step)).toBeGreaterThanOrEqual(at(x));
        },
      ),
    );
  });
});

describe('marksOf', () => {
  it('marks all that the reader must confirm', () => {
    expect(marksOf({ basis: 'own-copy' })).toEqual([]);
    expect(marksOf({ basis: 'maker' })).toEqual([]);
    expect(marksOf({ basis: 'published', status: 'in-force' })).toEqual([]);
    expect(marksOf({ basis: 'published', status: 'superseded' })).toContain('confirm against your copy');
    expect(marksOf({ basis: 'published' })).toContain('currency not known');
    expect(marksOf({ basis: 'quoted' })).toEqual(['confirm against your copy']);
    expect(marksOf({ basis: 'practice' })).toContain('common practice');
  });
});
