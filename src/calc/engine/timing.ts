import { sheet } from '../sheet.js';

/** True top dead centre from a positive stop. */
export const topDeadCentre = sheet({
  id: 'top-dead-centre',
  subject: 'engine',
  title: 'Top dead centre from a positive stop',
  purpose:
    'Where true top dead centre stands on the degree wheel or damper scale, from the two readings at which the piston touches a stop.',
  inputs: {
    before: {
      symbol: '\\alpha_b',
      unit: 'deg',
      says: 'reading before the scale’s zero (BTDC side) at which the piston touches the stop, written positive',
    },
    after: {
      symbol: '\\alpha_a',
      unit: 'deg',
      says: 'reading after the scale’s zero (ATDC side) at which the piston touches the stop, written positive',
    },
  },
  results: {
    offset: {
      symbol: '\\delta',
      unit: 'deg',
      says: 'place of true top dead centre on the scale: positive reads before the zero (BTDC side), negative reads after it (ATDC side)',
      tex: '\\frac{@before - @after}{2}',
    },
    stop: {
      symbol: '\\alpha_s',
      unit: 'deg',
      says: 'crank angle between stop and true top dead centre, the same on both sides',
      tex: '\\frac{@before + @after}{2}',
    },
  },
  assumptions: [
    'The stop touches at the same height on both sides, and the pin is not offset so far that the half angles differ by more than the reading error.',
  ],
  sources: [{ document: 'Symmetry of the crank drive about top dead centre; positive-stop method', basis: 'practice' }],
  validity: [
    {
      says: 'both readings must be from 0° to 180°, each written positive',
      holds: (x) => [x.before, x.after].every((a) => a >= 0 && a <= Math.PI),
    },
    { says: 'the stop must hold the piston clear of top dead centre', holds: (x) => x.before + x.after > 0 },
  ],
  calculate: ({ before, after }) => ({ offset: (before - after) / 2, stop: (before + after) / 2 }),
  remark:
    'True top dead centre lies towards the larger reading. Turn the wheel or move the pointer until both readings are the same, then measure again.',
  examples: [
    {
      given: { before: '21.5 deg', after: '18.5 deg' },
      gives: { offset: '1.5 deg', stop: '20.0 deg' },
      source: { document: 'Midpoint of two readings, worked by hand', basis: 'derived' },
    },
  ],
});

/** Length on the rim of a damper for a crank angle. */
export const damperScale = sheet({
  id: 'damper-scale',
  subject: 'engine',
  title: 'Degree scale of a damper',
  purpose: 'Length along the rim of a vibration damper or pulley that stands for a crank angle.',
  inputs: {
    diameter: { symbol: 'D', unit: 'mm', says: 'diameter of the rim on which the mark is made' },
    angle: { symbol: '\\varphi', unit: 'deg', says: 'crank angle to be marked', usual: '10 deg' },
  },
  results: {
    perDegree: {
      symbol: 'l_1',
      unit: 'mm/deg',
      says: 'length for each degree',
      tex: '\\frac{\\pi \\cdot @diameter}{360 \\text{ deg}}',
    },
    length: { symbol: 'l', unit: 'mm', says: 'length along the rim for the angle', tex: '@perDegree \\cdot @angle' },
  },
  method: 'The circumference stands for 360 degrees.',
  assumptions: ['The length is laid along the rim (a tape), not across it (a divider).'],
  sources: [{ document: 'Arc length', basis: 'derived' }],
  validity: [
    { says: 'the diameter must be greater than zero', holds: (x) => x.diameter > 0 },
    { says: 'the angle must be from 0° to 360°', holds: (x) => x.angle >= 0 && x.angle <= 2 * Math.PI },
  ],
  calculate: ({ diameter, angle }) => ({ perDegree: diameter / 2, length: (diameter / 2) * angle }),
  examples: [
    {
      given: { diameter: '165.1 mm', angle: '36 deg' },
      gives: { perDegree: '1.4408 mm/deg', length: '51.868 mm' },
      source: { document: 'Arc length, worked by hand', basis: 'derived' },
    },
  ],
});
