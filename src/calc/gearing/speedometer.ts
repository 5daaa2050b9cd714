import { sheet } from '../sheet.js';

const KMH = 1 / 3.6;

/** Indicated against true speed, and the band that the rule of the vehicle's date allows. */
export const speedometerError = sheet({
  id: 'speedometer-error',
  subject: 'gearing',
  title: 'Speedometer error',
  purpose:
    'Error of a speedometer at one true speed, beside the band that the rule for the vehicle’s date of manufacture allows.',
  inputs: {
    indicated: { symbol: 'V_1', unit: 'km/h', says: 'indicated speed' },
    trueSpeed: {
      symbol: 'V_2',
      unit: 'km/h',
      says: 'true speed, from timing over a measured distance or from satellite positions',
    },
    rule: {
      symbol: 'rule',
      says: 'rule that fits the date of the vehicle',
      choices: {
        'from-2006':
          'ADR 18/03 (new models from 1 July 2006, all from 1 July 2007) and UN R39: never low, high by at most a tenth and 4 km/h',
        'before-2006': 'earlier issues of ADR 18: within 10 % of the true speed above 40 km/h',
      },
    },
  },
  results: {
    error: {
      symbol: 'e',
      unit: 'km/h',
      says: 'error: positive where the speedometer reads high',
      tex: '@indicated - @trueSpeed',
    },
    relative: { symbol: 'e_r', unit: '%', says: 'error against true speed', tex: '\\frac{@error}{@trueSpeed}' },
    lowest: { symbol: 'e_{min}', unit: 'km/h', says: 'least error that the rule allows' },
    highest: { symbol: 'e_{max}', unit: 'km/h', says: 'greatest error that the rule allows' },
  },
  method: 'From 2006 the error lies between 0 and V₂/10 + 4 km/h; before that between −V₂/10 and +V₂/10.',
  sources: [
    { document: 'UN Regulation No. 39', clause: '5.3', basis: 'quoted' },
    { document: 'Australian Design Rule 18/03', clause: 'dates of application', basis: 'published' },
    { document: 'Australian Design Rule 18, issues before 18/03', clause: '10 % above 40 km/h', basis: 'memory' },
  ],
  validity: [
    {
      says: 'the true speed must be at least 40 km/h, the lowest at which the rules test',
      holds: (x) => x.trueSpeed >= 40 * KMH - 1e-9,
    },
    { says: 'the indicated speed must not be negative', holds: (x) => x.indicated >= 0 },
  ],
  calculate: ({ indicated, trueSpeed, rule }) => {
    const error = indicated - trueSpeed;
    const tenth = trueSpeed / 10;
    const [lowest, highest] = rule === 'from-2006' ? [0, tenth + 4 * KMH] : [-tenth, tenth];
    return { error, relative: error / trueSpeed, lowest, highest };
  },
  examples: [
    {
      given: { indicated: '103 km/h', trueSpeed: '90 km/h', rule: 'from-2006' },
      gives: { error: '13 km/h', highest: '13 km/h', lowest: '0 km/h' },
      source: {
        document: 'UN Regulation No. 39, 5.3, as tabled by a motoring magazine (true 90 km/h may show 103)',
        basis: 'quoted',
      },
    },
  ],
});

/** What other tyres or another ratio do to a speedometer that was right, or whose error was known, before. */
export const speedometerChange = sheet({
  id: 'speedometer-change',
  subject: 'gearing',
  title: 'Speedometer after a change of tyre or ratio',
  purpose: 'Indicated speed after other tyres or another ratio behind the speedometer drive, from the reading before.',
  inputs: {
    oldCircumference: { symbol: 'C_o', unit: 'mm', says: 'rolling circumference before' },
    newCircumference: { symbol: 'C_n', unit: 'mm', says: 'rolling circumference now' },
    oldRatio: {
      symbol: 'i_o',
      unit: '1',
      says: 'ratio behind the speedometer drive before (final drive, times the speedometer gears if they changed)',
      usual: '1',
    },
    newRatio: { symbol: 'i_n', unit: '1', says: 'the same ratio now', usual: '1' },
    before: { symbol: 'q_o', unit: '1', says: 'indicated over true speed before the change', usual: '1' },
    trueSpeed: { symbol: 'V_2', unit: 'km/h', says: 'true speed at which the reading is wanted', usual: '100 km/h' },
  },
  results: {
    factor: {
      symbol: 'q',
      unit: '1',
      says: 'indicated over true speed now',
      tex: '@before \\cdot \\frac{@oldCircumference \\cdot @newRatio}{@newCircumference \\cdot @oldRatio}',
    },
    indicated: { symbol: 'V_1', unit: 'km/h', says: 'indicated speed now', tex: '@factor \\cdot @trueSpeed' },
    error: {
      symbol: 'e',
      unit: 'km/h',
      says: 'error now: positive where the speedometer reads high',
      tex: '@indicated - @trueSpeed',
    },
  },
  assumptions: ['The speedometer is driven from the gearbox output and counts tailshaft turns.'],
  sources: [{ document: 'Kinematics of a rolling wheel', basis: 'derived' }],
  validity: [
    {
      says: 'circumferences, ratios, the factor before and the speed must be greater than zero',
      holds: (x) =>
        [x.oldCircumference, x.newCircumference, x.oldRatio, x.newRatio, x.before, x.trueSpeed].every((n) => n > 0),
    },
  ],
  calculate: ({ oldCircumference, newCircumference, oldRatio, newRatio, before, trueSpeed }) => {
    const factor = (before * oldCircumference * newRatio) / (newCircumference * oldRatio);
    return { factor, indicated: factor * trueSpeed, error: (factor - 1) * trueSpeed };
  },
  remark: 'The speedometer gears themselves: more teeth on the driven gear make it read lower.',
  examples: [
    {
      given: {
        oldCircumference: '2234 mm',
        newCircumference: '2204 mm',
        oldRatio: '1',
        newRatio: '1',
        before: '1',
        trueSpeed: '100 km/h',
      },
      gives: { factor: '1.0136', error: '1.36 km/h' },
      source: { document: 'Ratio of circumferences, worked by hand', basis: 'derived' },
    },
  ],
});
