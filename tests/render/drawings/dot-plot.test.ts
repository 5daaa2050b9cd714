import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DotPlot, dotPlot } from '../../../src/render/drawings/dot-plot.js';
import { elementsOf, expectSound, numberOf, textsOf } from './read-drawing.js';

const clearances: DotPlot = {
  name: 'figure-d',
  title: 'Bearing oil clearance of five journals',
  says: 'c_{i}',
  unit: 'mm',
  min: { si: 0.000025 },
  max: { si: 0.000064 },
  readings: [55, 60, 25, 64, 66].map((um, i) => ({ label: `journal ${i + 1}`, si: um * 1e-6, spread: 4e-6 })),
};
const dots = (of: DotPlot) => elementsOf(dotPlot(of), 'circle').map((c) => numberOf(c, 'cx'));

describe('readings against a window', () => {
  it('names each reading, the window and the unit', () => {
    const drawn = dotPlot(clearances);
    expectSound(drawn);
    for (const text of ['journal 1', '0.055 mm', 'journal 5', '0.066 mm', '≥ 0.025 mm', '≤ 0.064 mm', 'ci in mm'])
      expect(textsOf(drawn)).toContain(text);
  });

  it('puts readings at the limits on the limits, and those beyond into the hatching', () => {
    const [low, high] = elementsOf(dotPlot(clearances), 'rect').map((r) => ({
      from: numberOf(r, 'x'),
      to: numberOf(r, 'x') + numberOf(r, 'width'),
    }));
    const at = dots(clearances);
    expect(at[2]).toBeCloseTo(low!.to, 2);
    expect(at[3]).toBeCloseTo(high!.from, 2);
    expect(at[4]!).toBeGreaterThan(high!.from);
    expect(at[0]!).toBeGreaterThan(low!.to);
    expect(at[0]!).toBeLessThan(high!.from);
  });

  it('draws what is simulated from its 2.5 % to its 97.5 % point, as it is judged', () => {
    const drawn = dotPlot({
      ...clearances,
      readings: [{ label: 'one', si: 50e-6, spread: { low: 45e-6, high: 70e-6 } }],
    });
    expectSound(drawn);
    expect(textsOf(drawn).join(' ')).toMatch(/0\.0500 \(0\.0450 to 0\.0700\) mm/);
    const [dot] = elementsOf(drawn, 'circle');
    const y = numberOf(dot!, 'cy');
    const level = elementsOf(drawn, 'path').flatMap((p) => {
      const ends = /^M([\d.]+),([\d.]+)L([\d.]+),([\d.]+)$/.exec(String(p.properties['d']))?.slice(1).map(Number);
      return ends && Math.abs(ends[1]! - y) < 0.02 && Math.abs(ends[3]! - y) < 0.02
        ? [[ends[0]!, ends[2]!] as const]
        : [];
    });
    const [from, to] = level.toSorted((a, b) => a[1] - a[0] - (b[1] - b[0]))[0]!;
    const x = numberOf(dot!, 'cx');
    expect((to - x) / (x - from)).toBeCloseTo(20 / 5, 1);
  });

  it('spaces readings by their size', () => {
    const [a, b, , c] = dots(clearances);
    expect((b! - a!) / (c! - b!)).toBeCloseTo(5 / 4, 2);
  });

  it('stays within its frame whatever is read', () => {
    const reading = fc.record({
      label: fc.constantFrom('1', 'journal 12', 'cylinder 3, top ring'),
      si: fc.integer({ min: -5000, max: 100_000 }).map((n) => n * 1e-6),
      spread: fc.option(
        fc.integer({ min: 0, max: 4000 }).map((n) => n * 1e-6),
        { nil: undefined },
      ),
    });
    const bound = fc.option(
      fc.integer({ min: 0, max: 40_000 }).map((n) => n * 1e-6),
      { nil: undefined },
    );
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 16 }), bound, bound, (readings, min, extra) => {
        expectSound(
          dotPlot({
            ...clearances,
            readings,
            min: min === undefined ? undefined : { si: min },
            max: extra === undefined ? undefined : { si: (min ?? 0) + extra },
          }),
        );
      }),
      { numRuns: 60 },
    );
  });
});
