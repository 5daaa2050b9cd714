import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { readPropertyClass } from '../../src/project/designations/property-class.js';
import type { Read } from '../../src/project/designations/reading.js';
import { readRim } from '../../src/project/designations/rim.js';
import { readSection } from '../../src/project/designations/section.js';
import { readSteel } from '../../src/project/designations/steel.js';
import { readThread } from '../../src/project/designations/thread.js';
import { readTyre } from '../../src/project/designations/tyre.js';
import { readFrontmatter } from '../../src/project/frontmatter.js';
import { readQuantity } from '../../src/units/quantity.js';
import { showQuantity } from '../../src/units/show.js';
import { readSlope } from '../../src/units/slope.js';

/** Texts made at random of pieces that people type, and of anything: never a crash, problems point inside the text, what is printed is read again as itself. */

const runs = Number(process.env['FUZZ_RUNS'] ?? 3000);
const limits = {
  numRuns: runs,
  interruptAfterTimeLimit: Number(process.env['FUZZ_SECONDS'] ?? 20) * 1000,
  markInterruptAsFailure: false,
};
const forever = 24 * 3600 * 1000;

const counts = new Map<string, { tried: number; read: number }>();
function counted(name: string, read: boolean): void {
  const count = counts.get(name) ?? { tried: 0, read: 0 };
  counts.set(name, { tried: count.tried + 1, read: count.read + Number(read) });
}
afterAll(() =>
  console.log(
    [...counts].map(([name, { tried, read }]) => `${name} tried: ${tried}, of which ${read} could be read`).join('\n'),
  ),
);

const changeOf = (pieces: readonly string[]) =>
  fc
    .record({
      at: fc.nat(60),
      cut: fc.nat(2),
      put: fc.oneof(fc.constant(''), fc.constantFrom(...pieces), fc.constantFrom(...'0123456789.')),
    })
    .map(
      ({ at, cut, put }) =>
        (text: string) =>
          text.slice(0, at % (text.length + 1)) + put + text.slice((at % (text.length + 1)) + cut),
    );

/** Anything at all; pieces in any order; texts that can be read, changed at a few places or not at all. */
const textOf = (pieces: readonly string[], readable: readonly string[]) =>
  fc.oneof(
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 80 }) },
    {
      weight: 5,
      arbitrary: fc
        .tuple(fc.constantFrom(...readable), fc.array(changeOf(pieces), { maxLength: 3 }))
        .map(([text, changes]) => changes.reduce((t, c) => c(t), text)),
    },
    {
      weight: 2,
      arbitrary: fc
        .array(
          fc.oneof(
            { weight: 8, arbitrary: fc.constantFrom(...pieces) },
            { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 2 }) },
          ),
          { minLength: 1, maxLength: 7 },
        )
        .map((p) => p.join('')),
    },
  );

const inside = (at: readonly [number, number], text: string) =>
  expect(0 <= at[0] && at[0] <= at[1] && at[1] <= text.length, `${at} within ${text.length}`).toBe(true);

const units = [
  'mm',
  'in',
  'm',
  'kg',
  'N·m',
  'ft·lbf',
  'kPa',
  'psi',
  'degC',
  'dB(A)',
  'deg',
  '%',
  '1',
  'rpm',
  'cm3',
  'kgf',
  'thou',
];
const amounts = [
  '0',
  '-0',
  '2.48',
  '2,5',
  '1e-12',
  '1e999',
  '9'.repeat(30),
  '.5',
  '3/4',
  '1-1/8',
  '1½',
  '4.5×10³',
  '[2.4, 2.5]',
  '[2.4, 2.5, 2.6]',
  '1:3',
  '±',
  '+/-',
  '± 0.1',
  '± 5 %',
  '(2 ± 1)',
  ' ',
  '−',
  '+',
  'e',
  '×10⁻³',
  '½',
  '١٢',
  '"',
  "'",
];

it(
  'quantities',
  () => {
    fc.assert(
      fc.property(
        textOf(
          [...amounts, ...units.map((u) => ` ${u}`), ...units],
          [
            '2.48 mm',
            '2.5 ± 0.1 mm',
            '3/4 in',
            '1-1/8 in',
            '90 ft·lbf',
            '[2.48, 2.51, 2.50] mm',
            '12.5 kN',
            '28 degC',
            '84 dB(A)',
            '41:11',
            '(95 ± 2) %',
            '3.70',
            '1.2e-3 m',
            '220 kPa',
            '32 psi',
            '4.5×10³ N·m',
            '600 rpm',
          ],
        ),
        fc.constantFrom(...units),
        (text, fits) => {
          const result = readQuantity(text, fits);
          counted('quantities', result.ok);
          if (!result.ok) {
            inside(result.problem.at, text);
            for (const part of [result.problem.found, result.problem.expected, result.problem.hint])
              expect(part).not.toBe('');
            return;
          }
          const { si, unit, expanded, halfDigit } = result.quantity;
          for (const x of [si, halfDigit, expanded ?? 0])
            expect([Number.isFinite(x), Object.is(x, -0)]).toEqual([true, false]);
          const shown = showQuantity(si, unit, expanded);
          expect(shown).not.toMatch(/NaN|Infinity|[eE][+-]|(?<![\d.⁻])[-−]0(?:\.0*)?(?![.\d])/);
          // Shown without a unit, a pure number is read again only where one is expected.
          const again = readQuantity(shown, unit === '1' ? '1' : fits);
          expect(again.ok, `${JSON.stringify(text)} is shown as ${shown}`).toBe(true);
          if (again.ok)
            expect(showQuantity(again.quantity.si, again.quantity.unit, again.quantity.expanded)).toBe(shown);
        },
      ),
      limits,
    );
  },
  forever,
);

it(
  'slopes',
  () => {
    fc.assert(
      fc.property(
        textOf(
          [
            ...amounts,
            ' deg',
            '°',
            ' down to the rear',
            ' nose up',
            ' nose down',
            ' level',
            ' mm/m',
            ' down',
            ' to the left',
          ],
          [
            '3.2 deg down to the rear',
            '2 deg nose up',
            '1.5 ± 0.1 ° nose down',
            '0 deg',
            'level',
            '[2.9, 3.0] deg down to the rear',
          ],
        ),
        (text) => {
          const result = readSlope(text);
          counted('slopes', result.ok);
          if (!result.ok) inside(result.problem.at, text);
          else expect([Number.isFinite(result.quantity.si), Object.is(result.quantity.si, -0)]).toEqual([true, false]);
        },
      ),
      limits,
    );
  },
  forever,
);

const plain = (data: unknown): string =>
  JSON.stringify(data, (_, x: unknown) =>
    typeof x === 'number' && (!Number.isFinite(x) || Object.is(x, -0)) ? 'NaN' : x,
  );

const pieces = [
  'M',
  '12',
  '1.75',
  'x',
  '×',
  '3/4',
  '-16',
  ' UNF',
  ' UNC',
  ' LH',
  '1/4-18 NPT',
  'RHS ',
  '50x30x2.5',
  ' (EN 10219)',
  'CHS ',
  '48.3x3.2',
  'HAT ',
  '60x40x20x2.0',
  'FL ',
  '60x2',
  'EA ',
  'PFC ',
  '100x50',
  '205/',
  '65',
  'R15',
  ' 94H',
  '6J',
  'x15',
  ' ET25',
  ' ET-10',
  '8.8',
  'SAE ',
  '5',
  'S355',
  'C350L0',
  'unknown',
  '-',
  '/',
  '.',
  ' ',
  '0',
  '9'.repeat(20),
  '-0',
  '1e9',
  '½',
];
const designations: readonly (readonly [
  name: string,
  read: (text: string) => Read<{ text: string }>,
  readable: readonly string[],
])[] = [
  [
    'threads',
    readThread,
    ['M12x1.75', 'M8', 'M10x1.25 LH', '3/4-16 UNF', '3/4-16 UNF LH', '1/4-18 NPT', '5/16-18 UNC'],
  ],
  ['property classes', readPropertyClass, ['8.8', '10.9', '12.9', 'SAE 5', 'SAE 8', 'A2-70']],
  ['tyres', readTyre, ['205/65R15 94H', '185/70R14 88S', '195R14C 106/104R', '175/70 R13']],
  ['rims', readRim, ['6Jx15 ET25', '5.5Jx14', '7 x 16 ET-10', '6 1/2Jx15 H2 ET38']],
  [
    'sections',
    readSection,
    [
      'RHS 50x30x2.5 (EN 10219)',
      'CHS 48.3x3.2 (AS/NZS 1163)',
      'FL 60x2',
      'EA 50x50x5',
      'PFC 100x50',
      'HAT 60x40x20x2.0',
      'SHS 40x40x3 (EN 10219)',
    ],
  ],
  ['steels', readSteel, ['S355', 'S235', 'C350L0', 'unknown', 'E235+N', '4130']],
];

it.each(designations)(
  'designations: %s',
  (name, read, readable) => {
    fc.assert(
      fc.property(textOf(pieces, readable), (text) => {
        const result = read(text);
        counted(name, result.ok);
        if (!result.ok) {
          inside(result.problem.at, text);
          return;
        }
        expect(plain(result)).not.toMatch(/NaN|Infinity|:-0[,}]|:null/);
        // Everything but the tolerance of a thread, which does not name its size, is read again from the printed spelling.
        expect(plain(read(result.text))).toBe(plain({ ...result, tolerance: undefined }));
      }),
      limits,
    );
  },
  forever,
);

it(
  'frontmatter',
  () => {
    const yaml = [
      '---\n',
      'kind: engine\n',
      'title: x\n',
      '  - id: a\n',
      'a: [',
      ']',
      '{',
      '}',
      ': ',
      '- ',
      '"',
      "'",
      '\n',
      '\t',
      '|',
      '>',
      '&a ',
      '*a',
      '!!js/function ',
      '#',
      '__proto__: 1\n',
      '\u0000',
      '\uFEFF',
      '\r\n',
      '? ',
      '%YAML 1.2\n',
      '...\n',
    ];
    fc.assert(
      fc.property(
        textOf(yaml, [
          'kind: engine\ntitle: Engine\nbore: { value: 86.0 mm, with: caliper-1 }\npieces:\n  - { id: a, wall: 2.5 mm }\n',
        ]),
        fc.boolean(),
        (text, framed) => {
          const file = framed ? `---\n${text}\n---\nWords.\n` : text;
          const { value, problems } = readFrontmatter(file, 'x.md');
          counted('frontmatter', problems.length === 0);
          expect(value !== undefined || problems.length > 0).toBe(true);
          const lines = file.replace(/\r\n?/g, '\n').split('\n').length;
          for (const p of problems)
            expect(p.line >= 1 && p.line <= lines && p.column >= 1 && p.found !== '', JSON.stringify(p)).toBe(true);
        },
      ),
      limits,
    );
  },
  forever,
);
