import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { type AdjustableLink, adjustableLink } from '../../../src/render/drawings/link.js';
import { elementsOf, expectSound, numberOf, textsOf } from './read-drawing.js';

const mm = (symbol: string, x: number) => ({ symbol, si: x / 1000, unit: 'mm' });
const setting = (says: string, sub: string, [l, a, b]: readonly [number, number, number]) => ({
  says,
  length: mm(`l${sub}`, l),
  a: mm(`e_{A}${sub}`, a),
  b: mm(`e_{B}${sub}`, b),
});
const link: AdjustableLink = {
  name: 'figure-l',
  title: 'Upper link at three settings',
  home: { a: 0.04, b: 0.04 },
  least: { a: mm('m_{A}', 22), b: mm('m_{B}', 22) },
  settings: [
    setting('Shortest', '′', [596, 40, 37]),
    setting('Present', '', [620, 28, 25]),
    setting('Longest', '″', [626, 25, 22]),
  ],
};

/** Middles of the eyes, row by row: left and right. */
const eyes = (drawing: Element) => {
  const big = elementsOf(drawing, 'circle')
    .filter((c) => numberOf(c, 'r') > 4)
    .map((c) => numberOf(c, 'cx'));
  return Array.from({ length: big.length / 2 }, (_, i) => [big[2 * i]!, big[2 * i + 1]!] as const);
};

describe('an adjustable link', () => {
  it('names length and engagement at both ends of all settings, and the least engagement', () => {
    const drawn = adjustableLink(link);
    expectSound(drawn);
    for (const text of [
      'Shortest',
      'Present',
      'Longest',
      'l = 620 mm',
      'eA = 28 mm',
      'eB = 25 mm',
      'eA′ = 40 mm',
      'l″ = 626 mm',
      'mA = 22 mm',
      'mB = 22 mm',
    ])
      expect(textsOf(drawn)).toContain(text);
  });

  it('moves the eyes apart by what the threads come out, both ends to one scale', () => {
    const [short, now, long] = eyes(adjustableLink(link));
    const out = (a: typeof short, b: typeof short) => [a![0] - b![0], b![1] - a![1]] as const;
    const [leftFirst, rightFirst] = out(short, now);
    expect(leftFirst).toBeCloseTo(rightFirst, 2);
    const [leftThen] = out(now, long);
    expect(leftFirst / leftThen).toBeCloseTo(12 / 3, 1);
  });

  it('is symmetrical where both ends are alike', () => {
    const even = { ...link, settings: [setting('Present', '', [600, 30, 30])] };
    const [[left, right]] = eyes(adjustableLink(even)) as [readonly [number, number]];
    expect(left + right).toBeCloseTo(170, 2);
  });

  it('leans the threads of the two ends opposite ways', () => {
    const crests = elementsOf(adjustableLink(link), 'path')
      .map((p) => /^M([\d.]+),[\d.]+L([\d.]+),[\d.]+$/.exec(String(p.properties['d'])))
      .filter((m) => m !== null);
    const leaning = crests
      .map(([, a, b]) => ({ x: Number(a), lean: Number(b) - Number(a) }))
      .filter((c) => Math.abs(c.lean - 0.7) < 0.01 || Math.abs(c.lean + 0.7) < 0.01);
    expect(leaning.length).toBeGreaterThan(20);
    for (const { x, lean } of leaning) expect(Math.sign(lean)).toBe(x < 85 ? 1 : -1);
  });

  it('stays within its frame at any setting, even one that is out of reach', () => {
    const depth = fc.integer({ min: 100, max: 9000 }).map((n) => n / 100);
    const length = fc.integer({ min: 50, max: 20_000 }).map((n) => n / 10);
    const row = fc.tuple(length, depth, depth);
    fc.assert(
      fc.property(row, row, row, depth, depth, depth, depth, (a, b, c, homeA, homeB, leastA, leastB) => {
        const settings = [
          setting('Shortest setting', '_{min}', a),
          setting('Present setting', '', b),
          setting('Longest setting', '_{max}', c),
        ];
        expectSound(
          adjustableLink({
            ...link,
            settings,
            home: { a: homeA / 1000, b: homeB / 1000 },
            least: { a: mm('m_{A}', Math.min(leastA, homeA)), b: mm('m_{B}', Math.min(leastB, homeB)) },
          }),
        );
      }),
      { numRuns: 60 },
    );
  });
});
