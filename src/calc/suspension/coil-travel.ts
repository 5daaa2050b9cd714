import { sheet } from '../sheet.js';

/** Whether a coil spring stays in its seats at full droop and open at full bump. */
export const coilTravel = sheet({
  id: 'coil-travel',
  subject: 'suspension',
  title: 'Coil spring at the ends of travel',
  purpose:
    'How far the spring is from being coil-bound at full bump, and how much it is still pressed together at full droop.',
  inputs: {
    free: { symbol: 'l_0', unit: 'mm', says: 'free length' },
    ride: { symbol: 'l_r', unit: 'mm', says: 'length in the car at ride height, seat to seat' },
    motion: { symbol: 'i', unit: '1', says: 'movement of the spring for one of the wheel' },
    bump: { symbol: 'b', unit: 'mm', says: 'travel of the wheel up from ride height, to the stop fully pressed' },
    droop: { symbol: 'r', unit: 'mm', says: 'travel of the wheel down from ride height, to its limit' },
    wire: { symbol: 'd', unit: 'mm', says: 'diameter of the wire' },
    coils: { symbol: 'n_t', unit: '1', says: 'all coils, those on the seats among them' },
    ends: {
      symbol: 'ends',
      says: 'ends of the spring',
      choices: {
        ground: 'laid on and ground flat',
        plain: 'not ground: cut square, or run out as a pigtail or tangent',
      },
      usual: 'plain',
    },
  },
  results: {
    atBump: { symbol: 'l_b', unit: 'mm', says: 'length at full bump', tex: '@ride - @motion \\cdot @bump', step: true },
    atDroop: {
      symbol: 'l_d',
      unit: 'mm',
      says: 'room between the seats at full droop',
      tex: '@ride + @motion \\cdot @droop',
      step: true,
    },
    solid: { symbol: 'l_s', unit: 'mm', says: 'length when the coils touch', step: true },
    open: { symbol: 's_b', unit: 'mm', says: 'way left at full bump before the coils touch', tex: '@atBump - @solid' },
    seated: {
      symbol: 's_d',
      unit: 'mm',
      says: 'way by which the spring is still pressed together at full droop',
      tex: '@free - @atDroop',
    },
  },
  method:
    'Coils that touch stand as high as all wires on top of each other, with one wire more where the ends are not ground.',
  assumptions: [
    'The spring moves evenly with the wheel. Where the movement ratio changes through travel, measure the seats at bump and droop.',
    'Coils of one diameter: those of a barrel or cone lie partly inside each other.',
  ],
  sources: [
    {
      document: "Shigley's Mechanical Engineering Design",
      clause: 'chapter 10, lengths of springs by their ends',
      basis: 'memory',
    },
    { document: 'Geometry', basis: 'derived' },
  ],
  validity: [
    {
      says: 'lengths, movement ratio, wire and coils must be greater than zero',
      holds: (x) => Math.min(x.free, x.ride, x.motion, x.wire, x.coils) > 0,
    },
    { says: 'bump and droop are given as positive travel', holds: (x) => x.bump >= 0 && x.droop >= 0 },
    { says: 'a spring that carries the car is shorter than its free length', holds: (x) => x.ride < x.free },
  ],
  calculate: ({ free, ride, motion, bump, droop, wire, coils, ends }) => {
    const atBump = ride - motion * bump;
    const atDroop = ride + motion * droop;
    const solid = wire * (coils + (ends === 'ground' ? 0 : 1));
    return { atBump, atDroop, solid, open: atBump - solid, seated: free - atDroop };
  },
  remark:
    'A spring that is loose at full droop can leave its seat. One that binds stops the wheel with its coils instead of the bump stop.',
  examples: [
    {
      given: {
        free: '340 mm',
        ride: '225 mm',
        motion: '0.9',
        bump: '70 mm',
        droop: '80 mm',
        wire: '12.5 mm',
        coils: '8',
        ends: 'plain',
      },
      gives: { atBump: '162.0 mm', atDroop: '297.0 mm', solid: '112.5 mm', open: '49.5 mm', seated: '43.0 mm' },
      source: { document: 'Geometry, worked by hand, regression only', basis: 'derived' },
    },
  ],
});
