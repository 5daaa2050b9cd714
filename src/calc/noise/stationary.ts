import { sheet } from '../sheet.js';

const RPM = (2 * Math.PI) / 60;

/** Engine speed for the stationary exhaust noise test. */
export const stationarySpeed = sheet({
  id: 'stationary-test-speed',
  subject: 'noise',
  title: 'Engine speed for the stationary noise test',
  purpose: 'Engine speed at which the stationary exhaust noise is measured, from the speed of rated power.',
  inputs: {
    rated: { symbol: 'S', unit: 'rpm', says: 'engine speed at rated (greatest) power' },
    attainable: {
      symbol: 'S_{max}',
      unit: 'rpm',
      says: 'highest speed the engine reaches standing, where something holds it below the test speed',
      optional: true,
    },
  },
  results: {
    wanted: { symbol: 'n_w', unit: 'rpm', says: 'test speed by rated speed', step: true },
    speed: { symbol: 'n', unit: 'rpm', says: 'test speed' },
  },
  method:
    '75 % of the rated speed up to 5000 rpm, 3750 rpm up to 7500 rpm, 50 % above; the three meet at their edges. Where the engine cannot reach it, 5 % below what it reaches.',
  sources: [
    { document: 'UN Regulation No. 51, stationary test; ISO 5130', edition: 'ISO 5130:2007', basis: 'memory' },
    {
      document: 'Note to the stationary signatures of Australian Design Rule 83/00 (5 % below the attainable speed)',
      basis: 'quoted',
    },
  ],
  validity: [
    {
      says: 'the rated speed must be from 1000 rpm to 20000 rpm',
      holds: (x) => x.rated >= 1000 * RPM && x.rated <= 20000 * RPM,
    },
    {
      says: 'the attainable speed must be greater than zero',
      holds: (x) => x.attainable === undefined || x.attainable > 0,
    },
  ],
  calculate: ({ rated, attainable }) => {
    const wanted = Math.max(Math.min(0.75 * rated, 3750 * RPM), 0.5 * rated);
    return { wanted, speed: attainable !== undefined && attainable < wanted ? 0.95 * attainable : wanted };
  },
  remark: 'Older rules test at 75 % of rated speed whatever it is. The procedure in force for the vehicle decides.',
  examples: [
    {
      given: { rated: '4800 rpm' },
      gives: { speed: '3600 rpm' },
      source: { document: 'UN Regulation No. 51, worked by hand', basis: 'derived' },
    },
    {
      given: { rated: '6200 rpm' },
      gives: { speed: '3750 rpm' },
      source: { document: 'UN Regulation No. 51, worked by hand', basis: 'derived' },
    },
  ],
});
