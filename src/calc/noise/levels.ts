import { sheet } from '../sheet.js';
import { energy, level } from './level.js';

const readings = {
  symbol: 'levels',
  says: 'one row a reading',
  columns: { level: { symbol: 'L_i', unit: 'dB(A)', says: 'sound level read' } },
} as const;

/** Mean of several readings by energy. */
export const energyMean = sheet({
  id: 'energy-mean',
  subject: 'noise',
  title: 'Energy mean of sound levels',
  purpose: 'Mean of several readings of one sound by their energy, and how far the readings lie apart.',
  inputs: { levels: readings },
  results: {
    mean: {
      symbol: 'L',
      unit: 'dB(A)',
      says: 'energy mean',
      tex: '10 \\lg\\left(\\frac{1}{n} \\sum 10^{L_i/10}\\right)',
    },
    spread: {
      symbol: '\\Delta L',
      unit: 'dB(A)',
      says: 'highest less lowest reading',
      tex: '\\max_i L_i - \\min_i L_i',
    },
  },
  method: 'Levels are turned into energies, averaged, and turned back.',
  sources: [
    {
      document: 'Städtebauliche Lärmfibel (Ministry of Economic Affairs, Baden-Württemberg)',
      clause: '2.4.2',
      basis: 'published',
    },
  ],
  validity: [{ says: 'at least one reading must be given', holds: (x) => x.levels.length > 0 }],
  calculate: ({ levels }) => {
    const all = levels.map((r) => r.level);
    const total = all.reduce((sum, l) => sum + energy(l), 0);
    return { mean: level(total / all.length), spread: Math.max(...all) - Math.min(...all) };
  },
  remark:
    'Some procedures take the highest reading or the arithmetic mean instead. The procedure decides which number counts.',
  examples: [
    {
      given: { levels: [{ level: '96 dB(A)' }, { level: '100 dB(A)' }, { level: '90 dB(A)' }, { level: '97 dB(A)' }] },
      gives: { mean: '97 dB(A)', spread: '10 dB(A)' },
      source: { document: 'Manipulation with decibels, lecture notes', clause: 'example 2', basis: 'published' },
    },
  ],
});

/** Level of several sources together. */
export const levelSum = sheet({
  id: 'level-sum',
  subject: 'noise',
  title: 'Sum of sound levels',
  purpose: 'Level of several independent sounds together, each measured alone at the same place.',
  inputs: { levels: readings },
  results: { sum: { symbol: 'L', unit: 'dB(A)', says: 'level of all together', tex: '10 \\lg \\sum 10^{L_i/10}' } },
  method: 'Levels are turned into energies, added, and turned back.',
  assumptions: ['The sounds are independent, not tones of the same frequency.'],
  sources: [
    {
      document: 'Städtebauliche Lärmfibel (Ministry of Economic Affairs, Baden-Württemberg)',
      clause: '2.4.2',
      basis: 'published',
    },
  ],
  validity: [{ says: 'at least one level must be given', holds: (x) => x.levels.length > 0 }],
  calculate: ({ levels }) => ({ sum: level(levels.reduce((total, r) => total + energy(r.level), 0)) }),
  examples: [
    {
      given: { levels: [{ level: '35 dB(A)' }, { level: '40 dB(A)' }, { level: '45 dB(A)' }] },
      gives: { sum: '46.5 dB(A)' },
      source: { document: 'Städtebauliche Lärmfibel', clause: '2.4.2, worked example', basis: 'published' },
    },
    {
      given: { levels: [{ level: '90 dB(A)' }, { level: '95 dB(A)' }, { level: '88 dB(A)' }] },
      gives: { sum: '96.8 dB(A)' },
      source: { document: 'Manipulation with decibels, lecture notes', clause: 'example 1', basis: 'published' },
    },
  ],
});

/** Level of a source without the background. */
export const backgroundCorrection = sheet({
  id: 'background-correction',
  subject: 'noise',
  title: 'Sound level without background',
  purpose: 'Level of the source alone from the level with the source running and that of the background.',
  inputs: {
    measured: { symbol: 'L_m', unit: 'dB(A)', says: 'level with the source running' },
    background: { symbol: 'L_b', unit: 'dB(A)', says: 'level of the background at the same place' },
  },
  results: {
    above: { symbol: '\\Delta L', unit: 'dB(A)', says: 'level above the background', tex: '@measured - @background' },
    source: {
      symbol: 'L',
      unit: 'dB(A)',
      says: 'level of the source alone',
      tex: '10 \\lg\\left(10^{@measured/10} - 10^{@background/10}\\right)',
    },
  },
  method: 'Levels are turned into energies, subtracted, and turned back.',
  sources: [
    { document: 'Subtraction of sound energies', basis: 'derived' },
    {
      document: 'Manipulation with decibels, lecture notes',
      clause: 'background at least 3 dB below',
      basis: 'published',
    },
  ],
  validity: [
    { says: 'the level must stand at least 3 dB above the background', holds: (x) => x.measured - x.background >= 3 },
  ],
  calculate: ({ measured, background }) => ({
    above: measured - background,
    source: level(energy(measured) - energy(background)),
  }),
  remark:
    'Stationary exhaust tests ask for a background well below the reading (10 dB is usual) so that nothing has to be taken off.',
  examples: [
    {
      given: { measured: '90 dB(A)', background: '80 dB(A)' },
      gives: { above: '10 dB(A)', source: '89.54 dB(A)' },
      source: { document: 'Subtraction of sound energies, worked by hand', basis: 'derived' },
    },
  ],
});
