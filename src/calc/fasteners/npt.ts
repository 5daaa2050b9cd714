import { sheet } from '../sheet.js';

/** Threads for each inch, outside diameter of the pipe and length of hand engagement L1, in. */
const sizes = {
  '1/8-27 NPT': [27, 0.405, 0.1615],
  '1/4-18 NPT': [18, 0.54, 0.2278],
  '3/8-18 NPT': [18, 0.675, 0.24],
  '1/2-14 NPT': [14, 0.84, 0.32],
  '3/4-14 NPT': [14, 1.05, 0.339],
  '1-11.5 NPT': [11.5, 1.315, 0.4],
  '1-1/4-11.5 NPT': [11.5, 1.66, 0.42],
  '1-1/2-11.5 NPT': [11.5, 1.9, 0.42],
  '2-11.5 NPT': [11.5, 2.375, 0.436],
} as const;
type Size = keyof typeof sizes;
const inch = 0.0254;

export const pipeThread = sheet({
  id: 'pipe-thread-npt',
  subject: 'fasteners',
  title: 'Tapered pipe thread (NPT)',
  purpose:
    'Pitch diameters and lengths of a tapered pipe thread, to tell by measurement whether a thread is full and how deep a fitting goes.',
  inputs: {
    size: {
      symbol: 's',
      says: 'nominal size',
      choices: Object.fromEntries(Object.keys(sizes).map((s) => [s, s])) as Record<Size, string>,
    },
  },
  results: {
    pipe: { symbol: 'D', unit: 'in', says: 'outside diameter of the pipe', step: true },
    number: { symbol: "D'", unit: '1', says: 'that diameter as a number of inches', step: true },
    threads: { symbol: 'n', unit: '1/in', says: 'threads for each inch', step: true },
    hand: { symbol: 'L_1', unit: 'in', says: 'length of hand engagement', step: true },
    smallEnd: {
      symbol: 'E_0',
      unit: 'in',
      says: 'pitch diameter at the small end of the external thread',
      tex: '@pipe - \\frac{0.05 \\cdot @number + 1.1}{@threads}',
    },
    largeEnd: {
      symbol: 'E_1',
      unit: 'in',
      says: 'pitch diameter at the length of hand engagement',
      tex: '@smallEnd + \\frac{@hand}{16}',
    },
    effective: {
      symbol: 'L_2',
      unit: 'in',
      says: 'length of effective external thread',
      tex: '\\frac{0.80 \\cdot @number + 6.8}{@threads}',
    },
    height: { symbol: 'h', unit: 'in', says: 'height of the thread', tex: '\\frac{0.8}{@threads}' },
    vanish: { symbol: 'V', unit: 'in', says: 'length of vanishing threads', tex: '\\frac{3.47}{@threads}' },
  },
  method: 'Sizes from the table of the standard. Taper 1 in 16 on the diameter, flank angle 60°.',
  sources: [
    {
      document: 'ASME B1.20.1',
      clause: 'Table 2, as quoted in tables of pipe threads (diameters, lengths)',
      basis: 'quoted',
    },
    {
      document: 'ASME B1.20.1',
      clause: 'L1 to four places for 1/8 and 1/4, the whole row of 3/4, and the formulas',
      basis: 'memory',
    },
  ],
  validity: [{ says: 'name a size of the table', holds: (x) => x.size in sizes }],
  calculate: ({ size }) => {
    const [n, D, L1] = sizes[size];
    const smallEnd = D - (0.05 * D + 1.1) / n;
    const lengths = {
      pipe: D,
      hand: L1,
      smallEnd,
      largeEnd: smallEnd + L1 / 16,
      effective: (0.8 * D + 6.8) / n,
      height: 0.8 / n,
      vanish: 3.47 / n,
    };
    const inInches = Object.fromEntries(Object.entries(lengths).map(([name, x]) => [name, x * inch])) as typeof lengths;
    return { ...inInches, number: D, threads: n / inch };
  },
  remark:
    'A tapered thread seals on its flanks with sealant. It is not the British taper (55°): the two screw together for some turns and leak.',
  examples: [
    {
      given: { size: '1/4-18 NPT' },
      gives: { smallEnd: '0.47739 in', largeEnd: '0.49163 in', effective: '0.4018 in' },
      source: { document: 'Tables of pipe threads to ASME B1.20.1', basis: 'quoted' },
    },
  ],
});
