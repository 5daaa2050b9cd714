import { type Example, OutOfRange, type Source, sheet } from '../sheet.js';
import { classes, coarse, fine, type LoadRow } from './iso898.js';

const threads = (rows: readonly LoadRow[]) =>
  Object.fromEntries(rows.map((r) => [r.thread, `${r.thread}, stress area ${r.area} mm²`]));
const classChoices = Object.fromEntries(classes.map((c) => [c, `property class ${c}`])) as Record<
  (typeof classes)[number],
  string
>;

function boltLoads(
  id: string,
  title: string,
  rows: readonly LoadRow[],
  source: Source,
  examples: readonly [Example, ...Example[]],
) {
  return sheet({
    id,
    subject: 'fasteners',
    title,
    purpose: 'Minimum ultimate tensile load and proof load of a bolt, screw or stud, as the standard lists them.',
    inputs: {
      thread: { symbol: 'd \\times P', says: 'thread', choices: threads(rows) },
      class: { symbol: 'c', says: 'property class, from the marking on the head', choices: classChoices },
    },
    results: {
      area: { symbol: 'A_s', unit: 'mm²', says: 'nominal stress area, as listed', step: true },
      proof: { symbol: 'F_p', unit: 'kN', says: 'proof load' },
      ultimate: { symbol: 'F_m', unit: 'kN', says: 'minimum ultimate tensile load' },
    },
    method:
      'Read from the table of the standard. Its loads are rounded each on its own and differ by up to 0.6 % from stress area times stress.',
    assumptions: [
      'Plain or electroplated bolts; hot-dip galvanised ones with enlarged threads carry less (ISO 10684).',
      'The nut or the tapped hole is as strong as the bolt; the length of engagement has a sheet of its own.',
    ],
    sources: [source],
    validity: [{ says: 'name a thread of the table', holds: (x) => rows.some((r) => r.thread === x.thread) }],
    calculate: (x) => {
      const row = rows.find((r) => r.thread === x.thread)!;
      const column = classes.indexOf(x.class);
      const [proof, ultimate] = [row.proof[column], row.ultimate[column]];
      if (proof === undefined || ultimate === undefined)
        throw new OutOfRange(`the standard lists no class ${x.class} for ${x.thread}`);
      return { area: row.area * 1e-6, proof, ultimate };
    },
    examples,
  });
}

const iso898 = (clause: string, basis: Source['basis']): Source => ({
  document: 'ISO 898-1',
  edition: '2013',
  clause,
  basis,
});

export const boltLoadsCoarse = boltLoads(
  'bolt-loads-coarse',
  'Loads of a metric bolt, coarse thread',
  coarse,
  iso898('Tables 4 and 5', 'quoted'),
  [
    {
      given: { thread: 'M12x1.75', class: '8.8' },
      gives: { area: '84.3 mm²', proof: '48.9 kN', ultimate: '67.4 kN' },
      source: {
        document:
          'ISO metric thread proof loads and minimum ultimate tensile loads (EN ISO 898-1), tables of two fastener suppliers',
        basis: 'quoted',
      },
    },
  ],
);

export const boltLoadsFine = boltLoads(
  'bolt-loads-fine',
  'Loads of a metric bolt, fine thread',
  fine,
  iso898('Tables 6 and 7', 'memory'),
  [
    {
      given: { thread: 'M12x1.25', class: '10.9' },
      gives: { area: '92.1 mm²', proof: '76.4 kN', ultimate: '95.8 kN' },
      source: iso898('Tables 6 and 7', 'memory'),
    },
  ],
);
