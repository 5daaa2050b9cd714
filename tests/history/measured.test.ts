import { describe, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { measuredText } from '../../src/history/measured.js';
import { differenceOf, sameValue } from '../../src/history/written.js';

const parse = measuredText(new Map([...kinds].map(([id, kind]) => [id, kind.shape])));
const fields = (yaml: string, path = 'demo/notes/010-a.md') =>
  Object.fromEntries(parse(`---\n${yaml}\n---\n\nWords.\n`, path) ?? []);

const body = `kind: body-structure
title: Gearbox crossmember replaced
stages: { cut: 2026-03-10 }
pieces:
  - role: replacement
    id: crossmember
    was: { section: HAT 60x40x20x2.0, steel: unknown }
    now: { section: RHS 50x30x2.5 (EN 10219), wall: { value: 2.48 mm, with: caliper-1, on: 2026-03-12, photo: wall } }
    joined-to: [1.20 mm, 1.22 mm]
    welds:
      - { id: rail-left, type: fillet, leg: 3.2 mm, load-case: drop }
measured:
  body.clearance-exhaust: 25 mm`;

describe('the measured values of a note', () => {
  it('are told by field, list items by id, as they were written', () => {
    expect(fields(body)).toEqual({
      'pieces.crossmember.was.section': 'HAT 60x40x20x2.0',
      'pieces.crossmember.was.steel': 'unknown',
      'pieces.crossmember.now.section': 'RHS 50x30x2.5 (EN 10219)',
      'pieces.crossmember.now.wall': '2.48 mm',
      'pieces.crossmember.joined-to': '[1.20, 1.22] mm',
      'pieces.crossmember.welds.rail-left.leg': '3.2 mm',
      'measured.body.clearance-exhaust': '25 mm',
    });
  });

  it('of `build.md` are told too, by its own schema', () => {
    const vehicle =
      'title: A car\nvehicle: { make: Examplia, model: One, built: 1990-06, seats: 5 }\noriginal: { mass: 1120 kg, engine: 1.8 l four, final-drive: 3.70, tyre: 185/70R14 88S }\nload-cases: [{ id: drop, says: a drop, force: 1.4 kN }]';
    expect(fields(vehicle, 'demo/build.md')).toEqual({
      'vehicle.seats': '5',
      'original.mass': '1120 kg',
      'original.final-drive': '3.70',
      'original.tyre': '185/70R14 88S',
      'load-cases.drop.force': '1.4 kN',
    });
  });

  it('do not come and go when the note stops fitting its schema', () => {
    const broken = body
      .replace('3.2 mm', '3,2 mm')
      .replace('role: replacement', 'role: no such role\n    colour: red\n    gap: 12 thou');
    expect(fields(broken.replace('3,2 mm', "'3,2 mm'"))).toEqual({
      ...fields(body),
      'pieces.crossmember.welds.rail-left.leg': '3,2 mm',
      'pieces.crossmember.gap': '12 thou',
    });
  });

  it('of a kind that is not known any more are those that read as quantities with a unit', () => {
    const old =
      'kind: no-such-kind\ntitle: Old\ncount: 4\nslope: 2.5 deg nose up\nratio: 3.7\nwhen: 2024-01-02\nlengths: [{ id: a, long: { value: 1-1/8 in, with: tape } }, { long: 3 mm }]\ncode: LA1';
    expect(fields(old)).toEqual({ slope: '2.5 deg nose up', 'lengths.a.long': '1-1/8 in', 'lengths.2.long': '3 mm' });
  });

  it('are none in other Markdown; a note that cannot be read says why', () => {
    expect(fields('from: R. Ansell\ndate: 2026-03-02\nquestion: 3 mm', 'demo/queries/01-a.md')).toEqual({});
    expect(parse('# To do\n', 'demo/TODO.md')).toEqual(new Map());
    expect(() => parse('# To do\n', 'demo/notes/010-a.md')).toThrow('line 1: found no frontmatter');
    expect(() => fields('kind: [a')).toThrow(/^line 2: found/);
  });
});

describe('a change of value', () => {
  // 0.1 in is 2.54 mm exactly (NIST SP 811, B.8).
  it.each([
    ['2.5 mm', '0.1 in', '+0.04 mm'],
    ['0.1 in', '2.5 mm', '−0.001575 in'],
    ['2.5 mm', '0.25 cm', '0 mm'],
    ['20 °C', '25 °C', '+5 K'],
    ['3.2 deg down to the rear', '1 deg nose down', '−4.2 deg'],
    ['[1.20, 1.22] mm', '1.25 ± 0.01 mm', '+0.04 mm'],
    ['92 dB(A)', '90 dB(A)', '−2 dB(A)'],
    ['5', '6', '+1'],
  ])('from %s to %s is %s', (from, to, difference) => {
    expect(differenceOf(from, to)).toBe(difference);
  });

  it('has no difference where there are no two quantities of one kind', () => {
    for (const [from, to] of [
      ['2.5 mm', '2.5 kg'],
      ['RHS 50x30x2.5', 'RHS 50x30x3'],
      ['2 deg nose up', '2 deg toe in'],
      ['2.5 mm', undefined],
      [undefined, '2.5 mm'],
    ] as const) {
      expect(differenceOf(from, to)).toBeUndefined();
    }
  });

  it('is none in meaning where only the writing differs', () => {
    expect(sameValue('2.5 mm', '0.25 cm')).toBe(true);
    expect(sameValue('25.4 mm', '1 in')).toBe(true);
    expect(sameValue('2.5 mm', '2.5 ± 0.1 mm')).toBe(false);
    expect(sameValue('2.5 mm', '2.51 mm')).toBe(false);
    expect(sameValue('S355', 'S355')).toBe(false);
  });
});
