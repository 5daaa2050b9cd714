const bridge = ['Example Shire Weighbridge', 'Depot Road'];
const track = ['Flat Creek Test Ground', 'Sample Plains'];
const garage = ['Bench Two Garage', '4 Example Lane'];

const ticket = (number, date, front, rear, state) => ({
  from: bridge, title: 'Weighbridge ticket', number, date, ink: [0.25, 0.25, 0.25],
  body: [
    { facts: [['Vehicle', 'Tarrawin Sedge estate, chassis TWSEDGE84EX000417'], ['State', state]] },
    { table: { head: ['', 'Mass'], widths: [60, 40], rows: [['Front axle on the deck', `${front} kg`], ['Rear axle on the deck', `${rear} kg`], ['Both axles on the deck', `${front + rear} kg`]] } },
    { text: 'Steps of 5 kg. Last verified 2024-10-15.' },
    { signed: ['G. Lund', 'weighbridge keeper (invented)'] },
  ],
});

const noiseTest = (number, date, meter, readings, says) => ({
  from: garage, title: 'Stationary noise', number, date,
  body: [
    { facts: [['Place', 'sealed yard, nothing within 8 m, dry, wind under 2 m/s'], ['Meter', meter], ['Microphone', '500 mm from the edge of the outlet, 45 degrees to its direction, 268 mm above the ground'], ['Engine speed', '3900 rpm held, then let go; 5200 rpm at rated power'], ['Background', '54.5 dB(A)'], ['Present', 'J. Okoro, L. Fenn']] },
    { table: { head: ['Reading', '1', '2', '3'], widths: [40, 20, 20, 20], rows: [['Highest level while held and let go, dB(A)', ...readings]] } },
    { text: says },
    { signed: ['J. Okoro', 'Bench Two Garage (invented)'] },
  ],
});

const columns = { head: ['No.', 'Test', 'Load', 'Speed', 'Pedal', 'Mean', 'Peak'], widths: [7, 31, 16, 13, 11, 11, 11] };

const brakeTest = (number, date, { state, friction, weather, stops, found, more = [] }) => ({
  from: track, title: 'Brake test', number, date, ink: [0.4, 0.2, 0.1],
  body: [
    { facts: [['Vehicle', 'Tarrawin Sedge estate, chassis TWSEDGE84EX000417'], ['State', state], ['Load', 'light: driver and observer, 1378 kg; laden: with ballast, 1612 kg'], ['Surface', `sealed, level within 0.5 %, dry, friction ${friction} by sled on the day`], ['Weather', weather], ['Instruments', 'decelerometer G-556, pedal gauge, satellite logger; calibrated 2025-04-11'], ['Driver, observer', 'L. Fenn, R. Ansell'], ['Tyres', '195/60R15 88H, 220 kPa cold, laden 240 kPa at the rear, cold at each stop']] },
    { table: { ...columns, rows: stops } },
    { text: `Decelerations in m/s2, means fully developed. No stop was left out. The car kept its line in all stops; ${found}. Parking brake: held five minutes on 20.5 %, facing up and facing down.` },
    ...more,
    { signed: ['L. Fenn', 'test driver (invented)'] },
  ],
});

/** Cylinders of 22.2 mm, as the axle came. */
const firstStops = [
  ['1', 'smooth stop', 'light', '31.2 km/h', '110 N', '5.1', '5.4'], ['2', 'service brake', 'light', '80.3 km/h', '156 N', '7.2', '7.4'],
  ['3', 'service brake', 'laden', '81.1 km/h', '186 N', '7.3', '7.7'], ['4', 'service brake', 'laden', '80.7 km/h', '192 N', '7.5', '7.8'],
  ['5', 'front circuit open', 'laden', '80.9 km/h', '255 N', '3.5', '3.6'], ['6', 'rear circuit open', 'laden', '80.2 km/h', '172 N', '4.4', '4.7'],
  ['7', 'front circuit open', 'light', '81.0 km/h', '188 N', '3.0', '3.2'], ['8', 'rear circuit open', 'light', '80.6 km/h', '158 N', '4.8', '5.0'],
];

/** Cylinders of 19.05 mm. */
const brakeStops = [
  ['1', 'smooth stop', 'light', '30.4 km/h', '118 N', '4.9', '5.3'], ['2', 'service brake', 'light', '80.6 km/h', '157 N', '6.6', '6.9'],
  ['3', 'service brake', 'laden', '80.2 km/h', '191 N', '6.8', '7.1'], ['4', 'service brake', 'laden', '80.4 km/h', '202 N', '7.2', '7.5'],
  ['5', 'front circuit open', 'laden', '80.1 km/h', '470 N', '3.2', '3.5'], ['6', 'rear circuit open', 'laden', '80.5 km/h', '177 N', '4.6', '4.8'],
  ['7', 'front circuit open', 'light', '80.3 km/h', '262 N', '3.1', '3.2'], ['8', 'rear circuit open', 'light', '80.2 km/h', '165 N', '5.0', '5.2'],
];

/** What the first issue rests on: the tests before the rear cylinders and the sound level meter were exchanged. */
export const firstReports = {
  'noise-report': noiseTest('TS-001/N1', '2025-05-19', 'class 2, S-2310, calibrated 2025-01-20; calibrator 94.0 dB before and after', ['89.4', '89.1', '89.2'], 'A better meter will be hired if the certifier asks for it.'),
  'brake-report': brakeTest('FC-25-058', '2025-05-16', { state: 'wheel cylinders of 22.2 mm in the rear drums, as the axle came', friction: '0.87', weather: 'dry, no wind, 13 degrees', stops: firstStops, found: 'in stop 2 the rear wheels were heard to lock first' }),
};

export const reports = {
  'weighbridge-before': ticket('20913', '2025-02-03', 595, 530, 'full tank, spare wheel and jack, nobody in it'),
  'weighbridge-after': ticket('21877', '2025-05-12', 675, 565, 'full tank, spare wheel and jack, nobody in it'),
  'noise-report': noiseTest('TS-001/N2', '2025-06-18', 'class 1, S-0871, calibrated 2025-04-11; calibrator 94.0 dB before, 94.1 dB after', ['88.9', '89.2', '89.0'], 'On 2025-05-19 the class 2 meter S-2310 had given 89.4, 89.1 and 89.2 dB(A), which its uncertainty left undecided. The class 1 meter was hired for that reason.'),
  'brake-report': brakeTest('FC-25-078', '2025-06-20', { state: 'wheel cylinders of 19.05 mm in the rear drums', friction: '0.88', weather: 'dry, light wind, 16 degrees', stops: brakeStops, found: 'no wheel locked', more: [{ head: 'The test of 2025-05-16, FC-25-058, wheel cylinders of 22.2 mm', table: { ...columns, rows: firstStops } }] }),
  'lane-change-report': {
    from: track, title: 'Double lane change', number: 'FC-25-064', date: '2025-05-22', ink: [0.4, 0.2, 0.1],
    body: [
      { facts: [['Vehicle', 'Tarrawin Sedge estate, 1648 mm wide without mirrors'], ['Load', 'driver, ballast to 1612 kg; tyres 220 kPa in front, 240 at the rear'], ['Track', 'sealed, dry, 21 degrees, wind 2 m/s; gates set by tape for the width of the car'], ['Driver', 'L. Fenn, under R. Ansell']] },
      { table: { head: ['Run', 'Speed at entry', 'Cones touched'], widths: [20, 40, 40], rows: [['1', '72.1 km/h', '0'], ['2', '77.4 km/h', '0'], ['3', '80.6 km/h', '0'], ['4', '80.2 km/h', '0']] } },
      { text: 'The car answers without delay and comes back straight. It leans more than it did before at the rear, not unpleasantly. No wheel lifted. I had confidence in it in every run.' },
      { signed: ['L. Fenn', 'test driver (invented)'] },
    ],
  },
  'alignment-sheet': {
    from: garage, title: 'Alignment', number: 'TS-001/A1', date: '2025-05-26',
    body: [
      { facts: [['Gauge', 'four-wheel gauge A-114, checked 2025-04-28'], ['State', 'kerb, full tank, 366 mm front, 352 mm rear, 220 kPa']] },
      { table: { head: ['Wheel', 'Toe', 'Camber', 'Caster'], widths: [34, 22, 22, 22], rows: [['Front left', '0.05 toe in', '-0.45', '3.4'], ['Front right', '0.06 toe in', '-0.55', '3.5'], ['Rear left', '0.04 toe in', '-0.05', ''], ['Rear right', '0.03 toe in', '-0.05', '']] } },
      { text: 'All in degrees. Camber top in and toe out are negative.' },
      { head: 'Figures of the maker, front, for this car and the 2.6 l', table: { head: ['', 'Least', 'Greatest'], widths: [50, 25, 25], rows: [['Toe, both wheels together', '0.00', '0.30'], ['Camber', '-1.0', '0.0'], ['Caster', '2.5', '4.5'], ['Change of toe over the middle two thirds of travel', '', '0.30']] } },
      { head: 'Figures of the maker, rear axle of the larger saloon', table: { head: ['', 'Least', 'Greatest'], widths: [50, 25, 25], rows: [['Toe, both wheels together', '-0.10', '0.25'], ['Camber', '-0.5', '0.5'], ['Direction of the axle (thrust), either way', '', '0.15']] } },
      { signed: ['J. Okoro', 'Bench Two Garage (invented)'] },
    ],
  },
};
