import type { Source } from '../../calc/sheet.js';

/** Pitches in mm by nominal diameter in mm: the coarse one first, then the fine ones. */
export const metricPitches: Readonly<Record<string, readonly [coarse: string, ...fine: string[]]>> = {
  '1.6': ['0.35', '0.2'],
  '2': ['0.4', '0.25'],
  '2.5': ['0.45', '0.35'],
  '3': ['0.5', '0.35'],
  '3.5': ['0.6', '0.35'],
  '4': ['0.7', '0.5'],
  '5': ['0.8', '0.5'],
  '6': ['1', '0.75'],
  '7': ['1', '0.75'],
  '8': ['1.25', '1', '0.75'],
  '9': ['1.25', '1', '0.75'],
  '10': ['1.5', '1.25', '1', '0.75'],
  '11': ['1.5', '1', '0.75'],
  '12': ['1.75', '1.5', '1.25', '1'],
  '14': ['2', '1.5', '1.25', '1'],
  '16': ['2', '1.5', '1'],
  '18': ['2.5', '2', '1.5', '1'],
  '20': ['2.5', '2', '1.5', '1'],
  '22': ['2.5', '2', '1.5', '1'],
  '24': ['3', '2', '1.5', '1'],
  '27': ['3', '2', '1.5', '1'],
  '30': ['3.5', '3', '2', '1.5', '1'],
  '33': ['3.5', '3', '2', '1.5'],
  '36': ['4', '3', '2', '1.5'],
  '39': ['4', '3', '2', '1.5'],
  '42': ['4.5', '4', '3', '2', '1.5'],
  '45': ['4.5', '4', '3', '2', '1.5'],
  '48': ['5', '4', '3', '2', '1.5'],
  '52': ['5', '4', '3', '2', '1.5'],
  '56': ['5.5', '4', '3', '2', '1.5'],
  '60': ['5.5', '4', '3', '2', '1.5'],
  '64': ['6', '4', '3', '2', '1.5'],
};

/** Coarse pitches and the usual fine ones were read in a table of ISO 261; the rarer fine ones are recalled. */
export const metricSource: Source = {
  document: 'ISO 261, as quoted in a chart of thread pitches M1.6 to M64',
  basis: 'quoted',
};

/** Threads for each inch by size. Sizes with # are gauge numbers: D = 0.060 in + 0.013 in · number. */
export const unified: Readonly<Record<'UNC' | 'UNF' | 'UNEF', Readonly<Record<string, string>>>> = {
  UNC: {
    '#1': '64',
    '#2': '56',
    '#3': '48',
    '#4': '40',
    '#5': '40',
    '#6': '32',
    '#8': '32',
    '#10': '24',
    '#12': '24',
    '1/4': '20',
    '5/16': '18',
    '3/8': '16',
    '7/16': '14',
    '1/2': '13',
    '9/16': '12',
    '5/8': '11',
    '3/4': '10',
    '7/8': '9',
    '1': '8',
    '1-1/8': '7',
    '1-1/4': '7',
    '1-3/8': '6',
    '1-1/2': '6',
    '1-3/4': '5',
    '2': '4.5',
  },
  UNF: {
    '#0': '80',
    '#1': '72',
    '#2': '64',
    '#3': '56',
    '#4': '48',
    '#5': '44',
    '#6': '40',
    '#8': '36',
    '#10': '32',
    '#12': '28',
    '1/4': '28',
    '5/16': '24',
    '3/8': '24',
    '7/16': '20',
    '1/2': '20',
    '9/16': '18',
    '5/8': '18',
    '3/4': '16',
    '7/8': '14',
    '1': '12',
    '1-1/8': '12',
    '1-1/4': '12',
    '1-3/8': '12',
    '1-1/2': '12',
  },
  UNEF: {
    '#12': '32',
    '1/4': '32',
    '5/16': '32',
    '3/8': '32',
    '7/16': '28',
    '1/2': '28',
    '9/16': '24',
    '5/8': '24',
    '11/16': '24',
    '3/4': '20',
    '13/16': '20',
    '7/8': '20',
    '15/16': '20',
    '1': '20',
  },
};

/**
 * Read in charts of Unified threads. One in circulation marks 1-14 as UNF; in ASME B1.1 the fine thread of 1 in has 12
 * threads for each inch and 1-14 is a special (UNS).
 */
export const unifiedSource: Source = { document: 'ASME B1.1, as quoted in charts of Unified threads', basis: 'quoted' };

/** Threads for each inch and outside diameter of the pipe in inches, by nominal size. */
export const pipe: Readonly<Record<string, readonly [n: string, D: string]>> = {
  '1/16': ['27', '0.3125'],
  '1/8': ['27', '0.405'],
  '1/4': ['18', '0.540'],
  '3/8': ['18', '0.675'],
  '1/2': ['14', '0.840'],
  '3/4': ['14', '1.050'],
  '1': ['11.5', '1.315'],
  '1-1/4': ['11.5', '1.660'],
  '1-1/2': ['11.5', '1.900'],
  '2': ['11.5', '2.375'],
};

/** Read in tables of pipe threads but for 1/16 and 3/4, which are recalled. */
export const pipeSource: Source = { document: 'ASME B1.20.1, as quoted in tables of pipe threads', basis: 'quoted' };
