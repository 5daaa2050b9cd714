import { sheet } from '../sheet.js';
import {
  LOAD_INDICES,
  loadCapacity,
  loadShareAt,
  type SpeedSymbol,
  speedSymbols,
  tyreTableSource,
} from './tyre-tables.js';

const KMH = 1 / 3.6;
const symbols = Object.fromEntries(
  Object.entries(speedSymbols).map(([symbol, speed]) => [symbol, `up to ${speed} km/h`]),
) as Record<SpeedSymbol, string>;

/** What the load index and the speed symbol on a sidewall stand for. */
export const tyreRating = sheet({
  id: 'tyre-rating',
  subject: 'gearing',
  title: 'Load and speed rating of a tyre',
  purpose:
    'Load capacity and greatest speed that the service description of a tyre stands for, and what is left of the load at the vehicle’s top speed.',
  inputs: {
    loadIndex: { symbol: 'LI', unit: '1', says: 'load index (94 in 94H)' },
    speedSymbol: { symbol: 'SS', says: 'speed symbol (H in 94H)', choices: symbols },
    topSpeed: { symbol: 'v', unit: 'km/h', says: 'top speed of the vehicle', usual: '180 km/h' },
  },
  results: {
    capacity: { symbol: 'm_{LI}', unit: 'kg', says: 'load capacity of one tyre' },
    speed: { symbol: 'v_{SS}', unit: 'km/h', says: 'greatest speed of the tyre' },
    share: { symbol: 'k_v', unit: '%', says: 'share of the load capacity left at the top speed', step: true },
    capacityAtSpeed: {
      symbol: 'm_v',
      unit: 'kg',
      says: 'load capacity at the top speed',
      tex: '@share \\cdot @capacity',
    },
  },
  method:
    'Read from the tables. Up to 210 km/h the whole load is carried; above that the load of symbols V, W and Y falls in a straight line.',
  sources: [tyreTableSource],
  validity: [
    {
      says: `the load index must be a whole number from ${LOAD_INDICES.first} to ${LOAD_INDICES.last}`,
      holds: (x) => Number.isInteger(x.loadIndex) && loadCapacity(x.loadIndex) !== undefined,
    },
    {
      says: 'the top speed must not be above the speed of the symbol',
      holds: (x) => loadShareAt(x.speedSymbol, kmh(x.topSpeed)) !== undefined,
    },
  ],
  calculate: ({ loadIndex, speedSymbol, topSpeed }) => {
    const capacity = loadCapacity(loadIndex) ?? NaN;
    const share = loadShareAt(speedSymbol, kmh(topSpeed)) ?? NaN;
    return { capacity, speed: speedSymbols[speedSymbol] * KMH, share, capacityAtSpeed: share * capacity };
  },
  remark: 'The load rating holds at the pressure that the tyre’s maker gives for it.',
  examples: [
    {
      given: { loadIndex: '91', speedSymbol: 'V', topSpeed: '240 km/h' },
      gives: { capacity: '615 kg', speed: '240 km/h', share: '91 %', capacityAtSpeed: '560 kg' },
      source: tyreTableSource,
    },
  ],
});

function kmh(speed: number): number {
  return Math.round(speed * 3.6 * 1e9) / 1e9;
}
