import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LimitScale, limitScale } from '../../../src/render/drawings/limit-scale.js';
import { elementsOf, expectSound, numberOf, textsOf } from './read-drawing.js';

const base = { name: 'figure-a', title: 'Thickness ratio against its limit', unit: 'mm', outcomeWord: 'conforms' };
const dotOf = (of: LimitScale) => Number(elementsOf(limitScale(of), 'circle')[0]!.properties['cx']);
const hatchedOf = (of: LimitScale) =>
  elementsOf(limitScale(of), 'rect').map((r) => ({ x: numberOf(r, 'x'), width: numberOf(r, 'width') }));

describe('a value against its limits', () => {
  it('shows value, limit and outcome with their units', () => {
    const drawn = limitScale({ ...base, value: 0.00248, spread: 0.00002, max: { si: 0.0025 } });
    expectSound(drawn);
    expect(textsOf(drawn)).toEqual(['conforms', '2.48 ± 0.02 mm', '≤ 2.5 mm']);
  });

  it('tells an excluded limit from an included one, and a limit that is itself uncertain', () => {
    expect(textsOf(limitScale({ ...base, value: 0.7, spread: 0, max: { si: 0.75, strict: true } }))).toContain(
      '< 750 mm',
    );
    expect(textsOf(limitScale({ ...base, value: 0.7, spread: 0, min: { si: 0.6, strict: true } }))).toContain(
      '> 600 mm',
    );
    expect(textsOf(limitScale({ ...base, value: 0.7, spread: 0, min: { si: 0.6, expanded: 0.002 } }))).toContain(
      '≥ 600 ± 2 mm',
    );
    expect(
      textsOf(
        limitScale({
          ...base,
          value: 0.7,
          spread: 0,
          max: { si: 0.6 },
          recommended: true,
          outcomeWord: 'does not conform',
        }),
      ),
    ).toContain('recommended limit');
  });

  it('hatches what lies beyond each limit, and only that', () => {
    const window: LimitScale = { ...base, value: 0.05, spread: 0.01, min: { si: 0.03 }, max: { si: 0.08 } };
    const [low, high] = hatchedOf(window);
    expect(low!.x + low!.width).toBeLessThan(dotOf(window));
    expect(high!.x).toBeGreaterThan(dotOf(window));
    const beyond: LimitScale = { ...base, value: 0.1, spread: 0.001, max: { si: 0.08 } };
    const [only] = hatchedOf(beyond);
    expect(dotOf(beyond)).toBeGreaterThan(only!.x);
  });

  it('puts a value at the limit exactly on the line', () => {
    const at: LimitScale = { ...base, value: 0.0025, spread: 0.0001, max: { si: 0.0025 }, outcomeWord: 'undecided' };
    expect(dotOf(at)).toBeCloseTo(hatchedOf(at)[0]!.x, 2);
    expect(JSON.stringify(limitScale(at))).toContain('lies across the limit: undecided');
  });

  it('is the mirror image for a least value', () => {
    const most: LimitScale = { ...base, value: 2, spread: 0.1, max: { si: 3 } };
    const least: LimitScale = { ...base, value: -2, spread: 0.1, min: { si: -3 } };
    const width = Number(elementsOf(limitScale(most), 'svg')[0]!.properties['viewBox']!.toString().split(' ')[2]);
    expect(dotOf(least)).toBeCloseTo(width - dotOf(most), 2);
  });

  it('stays within its frame whatever is measured', () => {
    const number = fc.integer({ min: -1e8, max: 1e8 }).map((n) => n / 1000);
    fc.assert(
      fc.property(
        number,
        number.map(Math.abs),
        number,
        fc.option(number),
        fc.constantFrom('mm', 'deg', '1', 'rad/s²', '%', 'dB(A)'),
        fc.boolean(),
        (value, expanded, a, b, unit, recommended) => {
          const limits = b === null ? { max: { si: a } } : { min: { si: Math.min(a, b) }, max: { si: Math.max(a, b) } };
          expectSound(
            limitScale({
              ...base,
              value,
              spread: expanded,
              ...limits,
              unit,
              recommended,
              outcomeWord: 'limit unconfirmed',
            }),
          );
        },
      ),
    );
  });

  it('keeps its hatching under a name with brackets and marks', () => {
    const drawn = limitScale({ ...base, name: "figure-020-note_(old)'s", value: 3, spread: 0, max: { si: 2 } });
    expectSound(drawn);
    expect(elementsOf(drawn, 'rect')[0]!.properties['fill']).toMatch(/^url\(#[^()'"\s]+\)$/);
  });

  it('uses ids of its own', () => {
    const [a, b] = ['figure-a', 'figure-b'].map((name) =>
      elementsOf(limitScale({ ...base, name, value: 1, spread: 0.1, max: { si: 2 } }))
        .map((e) => e.properties['id'])
        .filter(Boolean),
    );
    expect(a!.filter((id) => b!.includes(id))).toEqual([]);
  });
});
