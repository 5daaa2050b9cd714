import { OutOfRange, sheet } from '../sheet.js';

interface Station {
  travel: number;
  toe: number;
}

/** Greatest less smallest toe between two travels, with the toe at both ends by straight lines between stations. */
export function changeWithin(stations: readonly Station[], from: number, to: number): number {
  const toes = [
    toeAt(stations, from),
    toeAt(stations, to),
    ...stations.filter((s) => s.travel > from && s.travel < to).map((s) => s.toe),
  ];
  return Math.max(...toes) - Math.min(...toes);
}

function toeAt(stations: readonly Station[], travel: number): number {
  const next = stations.findIndex((s) => s.travel >= travel);
  const [a, b] = [stations[Math.max(0, next - 1)]!, stations[next === -1 ? stations.length - 1 : next]!];
  return a.travel === b.travel ? b.toe : a.toe + ((b.toe - a.toe) * (travel - a.travel)) / (b.travel - a.travel);
}

/** Bump steer: what the travel of a wheel does to its toe. */
export const toeChange = sheet({
  id: 'toe-change',
  subject: 'suspension',
  title: 'Change of toe through travel',
  purpose:
    'How much one wheel turns in and out while it moves up and down with the steering held: over the middle two thirds of the travel, and over all of it.',
  inputs: {
    stations: {
      symbol: 'j',
      says: 'stations through travel, in any order',
      columns: {
        travel: { symbol: 's_j', unit: 'mm', says: 'travel of the wheel from ride height, up positive' },
        toe: { symbol: '\\delta_j', unit: 'deg', says: 'toe of this wheel, in positive' },
      },
    },
  },
  results: {
    from: { symbol: 's_1', unit: 'mm', says: 'lower end of the middle two thirds', step: true },
    to: { symbol: 's_2', unit: 'mm', says: 'upper end of the middle two thirds', step: true },
    change: { symbol: '\\Delta\\delta', unit: 'deg', says: 'greatest change of toe over the middle two thirds' },
    whole: { symbol: '\\Delta\\delta_w', unit: 'deg', says: 'greatest change of toe over the whole travel measured' },
  },
  method:
    'The middle two thirds leave out a sixth of the measured travel at each end. Between stations the toe is taken along a straight line; the change is the greatest toe less the smallest.',
  assumptions: ['The steering is held in the middle, the body stands still and the spring is out or slack.'],
  sources: [
    {
      document: 'Page of a consultancy on one-off cars, which measures over two thirds of the travel',
      basis: 'quoted',
    },
    { document: 'Interpolation along straight lines', basis: 'derived' },
  ],
  validity: [
    {
      says: 'at least three stations of different travel are needed: droop, ride height and bump',
      holds: (x) => new Set(x.stations.map((s) => s.travel)).size >= 3,
    },
  ],
  calculate: ({ stations }) => {
    const sorted = stations.toSorted((a, b) => a.travel - b.travel);
    const [lowest, highest] = [sorted[0]!.travel, sorted.at(-1)!.travel];
    if (sorted.some((s, i) => i > 0 && s.travel === sorted[i - 1]!.travel))
      throw new OutOfRange('two stations have the same travel: give their mean as readings of one station');
    const [from, to] = [lowest + (highest - lowest) / 6, highest - (highest - lowest) / 6];
    return { from, to, change: changeWithin(sorted, from, to), whole: changeWithin(sorted, lowest, highest) };
  },
  examples: [
    {
      given: {
        stations: [
          { travel: '-60 mm', toe: '-0.30 deg' },
          { travel: '-30 mm', toe: '-0.05 deg' },
          { travel: '0 mm', toe: '0.10 deg' },
          { travel: '30 mm', toe: '0.12 deg' },
          { travel: '60 mm', toe: '0.00 deg' },
        ],
      },
      gives: { from: '-40 mm', to: '40 mm', change: '0.253 deg', whole: '0.42 deg' },
      source: {
        document: 'Straight lines between stations, worked by hand, regression only: toe at −40 mm is −0.1333°',
        basis: 'derived',
      },
    },
  ],
});
