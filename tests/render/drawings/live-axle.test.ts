import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { axlePosition, instantCentre, type Links } from '../../../src/calc/axle/linkage.js';
import { type LiveAxle, liveAxle } from '../../../src/render/drawings/live-axle.js';
import { dashOf, elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const mm = (symbol: string, si: number) => ({ symbol, si, unit: 'mm' });
const deg = (symbol: string, x: number) => ({ symbol, si: (x * Math.PI) / 180, unit: 'deg' });
const links: Links = {
  lower: { axle: { x: 0, z: 0.22 }, body: { x: 0.6, z: 0.26 } },
  upper: { axle: { x: 0.03, z: 0.48 }, body: { x: 0.43, z: 0.44 } },
  centre: { x: 0, z: 0.32 },
};
const centreOf = (of: Links) => {
  const { x, z } = instantCentre(of);
  return { x: mm('x_{IC}', x), z: mm('z_{IC}', z) };
};
const base = { name: 'figure-x', title: 'Rear axle from the side' };
const sideView: LiveAxle = { ...base, links, centreKnown: false, instantCentre: centreOf(links) };
const travelling: LiveAxle = {
  ...base,
  links,
  centreKnown: true,
  pinion: deg('θ_{p}', 3),
  travel: {
    bump: mm('b', 0.05),
    droop: mm('r', 0.05),
    atBump: [deg('θ_{p,b}', 0.97), mm('x_{b}', 0.0023)],
    atDroop: [deg('θ_{p,r}', 4.61), mm('x_{r}', 0.0026)],
  },
};

/** Joints 1 to 4 at ride height: open at the axle, filled at the body. */
const joints = (drawing: Element) =>
  elementsOf(drawing, 'circle')
    .filter((c) => numberOf(c, 'r') === 1.2 && c.properties['strokeDashArray'] === undefined)
    .slice(-4)
    .map((c) => [numberOf(c, 'cx'), numberOf(c, 'cy')] as const);

describe('a live axle from the side', () => {
  it('names the instant centre with its distances, and the joints', () => {
    const drawn = liveAxle(sideView);
    expectSound(drawn);
    for (const text of ['xIC = 1578 mm', 'zIC = 325.2 mm', '1', '2', '3', '4']) expect(textsOf(drawn)).toContain(text);
  });

  it('keeps the shape of the linkage, front to the left', () => {
    const [one, two, three, four] = joints(liveAxle(sideView));
    const scale = (one![0] - two![0]) / 0.6;
    expect(scale).toBeGreaterThan(0);
    expect((one![1] - two![1]) / scale).toBeCloseTo(0.04, 3);
    expect((one![1] - three![1]) / scale).toBeCloseTo(0.26, 3);
    expect((one![0] - four![0]) / scale).toBeCloseTo(0.43, 3);
  });

  it('points towards an instant centre that is far away, and says where it is', () => {
    const far: Links = { ...links, upper: { axle: { x: 0.03, z: 0.48 }, body: { x: 0.43, z: 0.5 } } };
    const drawn = liveAxle({ ...sideView, links: far, instantCentre: centreOf(far) });
    expectSound(drawn);
    expect(textsOf(drawn).join()).toMatch(/instant centre beyond the drawing: xIC = 15510 mm/);
  });

  it('shows both ends of travel, and what holds there', () => {
    const drawn = liveAxle(travelling);
    expectSound(drawn);
    for (const text of [
      'θp = 3°',
      'b = 50 mm',
      'r = 50 mm',
      'θp,b = 0.97°',
      'xb = 2.3 mm',
      'θp,r = 4.61°',
      'ride height',
    ])
      expect(textsOf(drawn)).toContain(text);
    const dashed = elementsOf(drawn, 'path').filter((p) => dashOf(p) === '1.6 1');
    expect(dashed.length).toBe(6);
  });

  it('draws the path that the linkage takes, enlarged as it says', () => {
    const drawn = liveAxle(travelling);
    const enlarged = Number(/drawn (\d+) times/.exec(textsOf(drawn).join())![1]);
    const path = elementsOf(drawn, 'path')
      .map((p) => pathPoints(String(p.properties['d'])))
      .find((p) => p.length === 25)!;
    const scale = (path[0]![1] - path[24]![1]) / 0.1;
    const top = axlePosition(links, 0.05);
    expect((path[12]![0] - path[24]![0]) / scale / enlarged).toBeCloseTo(top.shift, 4);
  });

  it('is the same from above and below for level arms of one length', () => {
    const level: Links = {
      lower: { axle: { x: 0, z: 0.2 }, body: { x: 0.5, z: 0.2 } },
      upper: { axle: { x: 0, z: 0.4 }, body: { x: 0.5, z: 0.4 } },
      centre: { x: 0, z: 0.3 },
    };
    const path = elementsOf(liveAxle({ ...travelling, links: level }), 'path')
      .map((p) => pathPoints(String(p.properties['d'])))
      .find((p) => p.length === 25)!;
    expect(path[0]![0]).toBeCloseTo(path[24]![0], 2);
  });

  it('stays within its frame for all arms that can be built', () => {
    const length = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);
    const arms = fc.record({
      z1: length(120, 300),
      x2: length(300, 1200),
      z2: length(150, 400),
      x3: length(-60, 60),
      z3: length(380, 550),
      x4: length(200, 900),
      z4: length(380, 600),
      z0: length(280, 360),
      behind: fc.boolean(),
    });
    fc.assert(
      fc.property(
        arms,
        length(0, 110),
        length(1, 110),
        fc.integer({ min: -8, max: 12 }),
        fc.boolean(),
        (a, bump, droop, slope, shafted) => {
          const s = a.behind ? -1 : 1;
          const of: Links = {
            lower: { axle: { x: 0, z: a.z1 }, body: { x: s * a.x2, z: a.z2 } },
            upper: { axle: { x: a.x3, z: a.z3 }, body: { x: s * a.x4, z: a.z4 } },
            centre: { x: 0, z: a.z0 },
          };
          fc.pre(reaches(of, bump) && reaches(of, -droop));
          expectSound(liveAxle({ ...sideView, links: of, instantCentre: centreOf(of) }));
          expectSound(
            liveAxle({
              ...travelling,
              links: of,
              pinion: deg('θ_{p}', slope),
              travel: { ...travelling.travel!, bump: mm('b', bump), droop: mm('r', droop) },
              ...(shafted ? { shaft: { front: { x: 1.4, z: 0.4 }, rear: { x: 0.28, z: a.z0 } } } : {}),
            }),
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

function reaches(of: Links, travel: number): boolean {
  try {
    axlePosition(of, travel);
    instantCentre(of);
    return true;
  } catch {
    return false;
  }
}
