import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { type SectionShape, sectionProperties } from '../../../src/calc/sections/index.js';
import { extentOf, outlinePath, sectionOutline } from '../../../src/render/drawings/section-outline.js';
import { sectionPair } from '../../../src/render/drawings/section-pair.js';
import { elementsOf, expectSound, pathLoops, textsOf } from './read-drawing.js';
import { anyShape } from './shapes.js';

const hat: SectionShape = { kind: 'top-hat', crown: 0.06, depth: 0.04, flange: 0.02, wall: 0.002, bend: 0.003 };
const tube: SectionShape = { kind: 'rhs', depth: 0.05, width: 0.03, wall: 0.0025, corners: 'en-10219' };
const pair = (original: SectionShape, replacement: SectionShape) =>
  sectionPair({
    name: 'figure-p',
    title: 'Crossmember, before and after',
    original: { shape: original, says: 'Original' },
    replacement: { shape: replacement, says: 'Replacement' },
  });

/** The two outlines: the only closed paths with a fill. */
const outlines = (drawing: Element) =>
  elementsOf(drawing, 'path').filter((p) => p.properties['fillRule'] === 'evenodd');
const sizeOf = (outline: Element) => {
  const points = pathLoops(String(outline.properties['d'])).flat();
  const along = (i: 0 | 1) => Math.max(...points.map((p) => p[i])) - Math.min(...points.map((p) => p[i]));
  return { width: along(0), height: along(1) };
};

/** Area between closed lines by the shoelace formula: what lies inside the second is cut out. */
function areaOf(d: string): number {
  const areas = pathLoops(d).map(
    (loop) =>
      Math.abs(
        loop.reduce(
          (sum, [x, y], i) => sum + x * loop[(i + 1) % loop.length]![1] - loop[(i + 1) % loop.length]![0] * y,
          0,
        ),
      ) / 2,
  );
  return areas[0]! - (areas[1] ?? 0);
}

describe('the outline of a section', () => {
  it('encloses the area that its properties are reckoned with', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        const scale = 20_000;
        const drawn =
          areaOf(outlinePath(sectionOutline(shape), ([x, y]) => [x * scale, -y * scale], scale)) / scale ** 2;
        expect(Math.abs(drawn / sectionProperties(shape).A - 1)).toBeLessThan(2e-3);
      }),
    );
  });

  it('loses its wall where a loss is stated, and keeps its size outside', () => {
    const worn: SectionShape = { ...hat, loss: 0.0005 };
    expect(extentOf(sectionOutline(worn))).toEqual(extentOf(sectionOutline(hat)));
    expect(outlinePath(sectionOutline(worn), (p) => p, 1)).not.toBe(outlinePath(sectionOutline(hat), (p) => p, 1));
  });
});

describe('original and replacement side by side', () => {
  it('names the main dimensions as the sheets do', () => {
    const drawn = pair({ ...hat, loss: 0.0002 }, tube);
    expectSound(drawn);
    for (const text of [
      'b = 60 mm',
      'H = 40 mm',
      'c = 20 mm',
      't = 2 mm',
      'Δt = 0.2 mm',
      'r = 3 mm',
      'H = 50 mm',
      'B = 30 mm',
      'T = 2.5 mm',
      'ro = 5 mm',
      'Original',
      'Replacement',
    ]) {
      expect(textsOf(drawn)).toContain(text);
    }
  });

  it('draws both to one scale, and a bar of that scale', () => {
    fc.assert(
      fc.property(anyShape, anyShape, (a, b) => {
        const drawn = pair(a, b);
        const scales = [a, b].map((shape, i) => {
          const { left, right, top, bottom } = extentOf(sectionOutline(shape));
          const { width, height } = sizeOf(outlines(drawn)[i]!);
          return [width / (right - left), height / (top - bottom)];
        });
        const scale = Math.max(...scales.flat());
        for (const s of scales.flat()) expect(Math.abs(s / scale - 1)).toBeLessThan(0.01);
        const bar = textsOf(drawn).find((t) => t.endsWith('both to one scale'))!;
        const long = Number(/^[\d.]+/.exec(bar)![0]) * (bar.includes(' m,') ? 1 : 0.001) * scale;
        expect(long).toBeGreaterThan(7);
        expect(long).toBeLessThan(21);
      }),
      { numRuns: 60 },
    );
  });

  it('shows the same section twice where nothing but the hatching changed', () => {
    const [a, b] = outlines(pair(tube, tube));
    expect(sizeOf(a!).width).toBeCloseTo(sizeOf(b!).width, 2);
    expect(sizeOf(a!).height).toBeCloseTo(sizeOf(b!).height, 2);
    expect(a!.properties['fill']).not.toBe(b!.properties['fill']);
  });

  it('keeps every text and stroke of every pair within its frame', () => {
    fc.assert(
      fc.property(anyShape, anyShape, (a, b) => expectSound(pair(a, b))),
      { numRuns: 80 },
    );
  });

  it('fills metal that is too thin on the page to be hatched', () => {
    expect(outlines(pair({ kind: 'chs', diameter: 0.2, wall: 0.001 }, tube))[0]!.properties['fill']).toBe(
      'currentColor',
    );
    expect(outlines(pair({ kind: 'chs', diameter: 0.05, wall: 0.004 }, tube))[0]!.properties['fill']).toBe(
      'url(#figure-p-rising)',
    );
  });
});
