import fc from 'fast-check';
import type { SectionShape } from '../../../src/calc/sections/index.js';

/** Sections of every kind that can be made, m. */
const mm = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100_000);
const bend = fc.option(mm(0, 5), { nil: undefined }).map((r) => (r === undefined ? {} : { bend: r }));
const loss = fc.constantFrom({}, { loss: 0.0003 });

export const anyShape: fc.Arbitrary<SectionShape> = fc
  .oneof(
    fc.record({ kind: fc.constant('flat' as const), width: mm(10, 200), thickness: mm(1, 10) }),
    fc.record({ kind: fc.constant('round-bar' as const), diameter: mm(6, 80) }),
    fc.record({
      kind: fc.constant('rhs' as const),
      depth: mm(25, 200),
      width: mm(25, 200),
      wall: mm(1, 4),
      corners: fc.constantFrom('en-10219' as const, 'as-nzs-1163' as const),
    }),
    fc.record({ kind: fc.constant('chs' as const), diameter: mm(20, 200), wall: mm(1, 6) }),
    fc.record({
      kind: fc.constant('angle' as const),
      depth: mm(25, 150),
      width: mm(25, 150),
      thickness: mm(3, 8),
      root: mm(0, 10),
      toe: mm(0, 2.6),
    }),
    fc.record({
      kind: fc.constant('channel' as const),
      depth: mm(70, 250),
      width: mm(35, 90),
      web: mm(3, 8),
      flange: mm(5, 15),
      root: mm(0, 12),
    }),
    fc.record({
      kind: fc.constant('top-hat' as const),
      crown: mm(25, 120),
      depth: mm(25, 120),
      flange: mm(10, 40),
      wall: mm(0.7, 4),
    }),
    fc.record({ kind: fc.constant('u' as const), depth: mm(30, 150), width: mm(20, 90), wall: mm(0.7, 4) }),
    fc.record({
      kind: fc.constant('lipped-u' as const),
      depth: mm(60, 150),
      width: mm(30, 90),
      lip: mm(12, 25),
      wall: mm(0.7, 4),
    }),
    fc.record({
      kind: fc.constant('box' as const),
      depth: mm(25, 150),
      width: mm(25, 150),
      flange: mm(1, 6),
      web: mm(1, 6),
    }),
  )
  .chain((shape) =>
    fc.tuple(bend, loss).map(([r, l]) => ({ ...shape, ...(pressed.has(shape.kind) ? r : {}), ...l }) as SectionShape),
  );

const pressed = new Set(['top-hat', 'u', 'lipped-u']);
