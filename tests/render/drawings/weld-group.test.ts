import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineGroup, type Segment } from '../../../src/calc/welds/line-group.js';
import { type WeldGroup, weldGroupDrawing } from '../../../src/render/drawings/weld-group.js';
import { elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const mm = (symbol: string, si: number) => ({ symbol, si, unit: 'mm' });
const kN = (symbol: string, x: number) => ({ symbol, si: x * 1000, unit: 'kN' });
const group = (
  welds: readonly Segment[],
  at: readonly [number, number],
  [fx, fy, fz]: readonly [number, number, number],
): WeldGroup => {
  const { cx, cy } = lineGroup(welds);
  const size = Math.hypot(fx, fy);
  return {
    name: 'figure-w',
    title: 'Welds of the bracket',
    welds,
    centroid: { x: mm('x̄', cx), y: mm('ȳ', cy) },
    at: { x: mm('x_{F}', at[0]), y: mm('y_{F}', at[1]) },
    force: { x: kN('F_{x}', fx), y: kN('F_{y}', fy), z: kN('F_{z}', fz) },
    lever: size === 0 ? undefined : mm('M_{z}/F', Math.abs((at[0] - cx) * fy - (at[1] - cy) * fx) / size),
    worst: { x: welds[0]!.x1, y: welds[0]!.y1, load: { symbol: 'v*', si: 231_800, unit: 'kN/mm' } },
  };
};
const pair: Segment[] = [
  { x1: 0, y1: 0, x2: 0, y2: 0.1 },
  { x1: 0.06, y1: 0, x2: 0.06, y2: 0.1 },
];
const hanging = group(pair, [0.15, 0.05], [0, -10, 0]);
const welds = (of: WeldGroup) =>
  elementsOf(weldGroupDrawing(of), 'path')
    .filter((p) => numberOf(p, 'strokeWidth') === 0.5)
    .map((p) => pathPoints(String(p.properties['d'])))
    .filter((p) => p.length === 2);
const circleOf = (of: WeldGroup, r: number) =>
  elementsOf(weldGroupDrawing(of), 'circle')
    .filter((c) => numberOf(c, 'r') === r)
    .map((c) => [numberOf(c, 'cx'), numberOf(c, 'cy')] as const);

describe('a weld group under a force', () => {
  it('names centroid, force, lever arm and the point loaded most', () => {
    const drawn = weldGroupDrawing(hanging);
    expectSound(drawn);
    for (const text of ['x̄ = 30 mm, ȳ = 50 mm', 'Fy = −10 kN', 'Mz/F = 120 mm', 'v* = 0.2318 kN/mm'])
      expect(textsOf(drawn)).toContain(text);
  });

  it('draws the welds to one scale, and the centroid of two equal ones midway', () => {
    const [a, b] = welds(hanging) as [[number, number][], [number, number][]];
    const long = Math.abs(a[0]![1] - a[1]![1]);
    expect((b[0]![0] - a[0]![0]) / long).toBeCloseTo(0.6, 3);
    const [[cx, cy]] = circleOf(hanging, 1.5) as [readonly [number, number]];
    expect(cx).toBeCloseTo((a[0]![0] + b[0]![0]) / 2, 2);
    expect(cy).toBeCloseTo((a[0]![1] + a[1]![1]) / 2, 2);
  });

  it('lets the force point the way it acts', () => {
    const [[x, y]] = circleOf(hanging, 0.8) as [readonly [number, number]];
    const arrow = welds(hanging)[2]!;
    expect(arrow[0]).toEqual([x, y]);
    expect(arrow[1]![1]).toBeGreaterThan(y);
    expect(arrow[1]![0]).toBeCloseTo(x, 2);
  });

  it('marks a force out of the plane by a dot or a cross', () => {
    const towards = group(pair, [0.1, 0.05], [0, 0, 5]);
    const away = group(pair, [0.1, 0.05], [0, 0, -5]);
    expect(circleOf(towards, 0.7)).toHaveLength(1);
    expect(circleOf(away, 0.7)).toHaveLength(0);
    expect(textsOf(weldGroupDrawing(away))).toContain('Fz = −5 kN');
    expectSound(weldGroupDrawing(away));
  });

  it('stays within its frame for all groups and forces', () => {
    const place = fc.integer({ min: -300, max: 300 }).map((n) => n / 1000);
    const weld = fc
      .tuple(place, place, place, place)
      .filter(([a, b, c, d]) => a !== c || b !== d)
      .map(([x1, y1, x2, y2]) => ({ x1, y1, x2, y2 }));
    const force = fc.integer({ min: -50, max: 50 });
    fc.assert(
      fc.property(
        fc.array(weld, { minLength: 1, maxLength: 6 }),
        place,
        place,
        fc.tuple(force, force, force).filter((f) => f.some((x) => x !== 0)),
        (segments, x, y, f) => expectSound(weldGroupDrawing(group(segments, [x, y], f))),
      ),
      { numRuns: 80 },
    );
  });
});
