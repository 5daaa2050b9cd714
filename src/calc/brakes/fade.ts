import { sheet } from '../sheet.js';

/** What repeated stops leave of the deceleration. */
export const brakeFade = sheet({
  id: 'brake-fade',
  subject: 'brakes',
  title: 'Deceleration left after repeated stops',
  purpose: 'How much of the cold deceleration hot brakes still give at the same pedal force and from the same speed.',
  inputs: {
    cold: { symbol: 'd_c', unit: 'm/s²', says: 'mean deceleration of the first stop, cold' },
    hot: { symbol: 'd_h', unit: 'm/s²', says: 'mean deceleration of the last of the repeated stops' },
  },
  results: {
    share: { symbol: 'f', unit: '%', says: 'share of the cold deceleration that is left', tex: '\\frac{@hot}{@cold}' },
  },
  sources: [
    {
      document: 'UN Regulation 13-H',
      clause: 'Annex 3, type-I test: hot performance against that of the cold test',
      basis: 'memory',
    },
  ],
  validity: [{ says: 'both decelerations must be greater than zero', holds: (x) => x.cold > 0 && x.hot > 0 }],
  calculate: ({ cold, hot }) => ({ share: hot / cold }),
  examples: [
    {
      given: { cold: '6.4 m/s²', hot: '4.8 m/s²' },
      gives: { share: '75 %' },
      source: { document: 'A ratio worked by hand, regression only', basis: 'derived' },
    },
  ],
});
