/** Who committed what when; each takes in what its author had written by then. */
export const people = {
  JO: { name: 'J. Okoro (invented)', email: 'okoro@bench-two.example' },
  MB: { name: 'M. Brandt (invented)', email: 'brandt@bench-two.example' },
  LF: { name: 'L. Fenn (invented)', email: 'fenn@bench-two.example' },
};

export const commits = [
  { on: '2025-02-03T17:40:00+11:00', by: 'JO', says: 'The car as it came: weights, heights, track, alignment, noise' },
  { on: '2025-02-04T16:10:00+11:00', by: 'LF', says: 'Speedometer as it came' },
  { on: '2025-02-05T17:10:00+11:00', by: 'MB', says: 'Twist of the body with the four still in; exhaust, axle and crossmember as they came' },
  { on: '2025-02-05T17:50:00+11:00', by: 'JO', says: 'Engine bay, tank and column as they came' },
  { on: '2025-02-07T19:05:00+11:00', by: 'JO', says: 'Figures typed in from our own copies' },
  { on: '2025-02-12T20:15:00+11:00', by: 'JO', says: 'Load cases as the certifier wrote them' },
  { on: '2025-02-27T18:30:00+11:00', by: 'MB', says: 'Both coupons broken and sliced' },
  { on: '2025-03-12T19:20:00+11:00', by: 'JO', says: 'Engine measured, put together and run' },
  { on: '2025-03-13T17:45:00+11:00', by: 'JO', says: 'Visit of the certifier: crossmember and mount brackets released' },
  { on: '2025-03-14T18:10:00+11:00', by: 'MB', says: 'Crossmember welded' },
  { on: '2025-03-21T17:30:00+11:00', by: 'MB', says: 'Axle brackets welded after the letter of the 19th, crossmember painted' },
  { on: '2025-04-02T19:00:00+11:00', by: 'JO', says: 'Engine and gearbox stand in the car' },
  { on: '2025-04-10T18:40:00+10:00', by: 'MB', says: 'Axle on its links: the pinion is too low' },
  { on: '2025-04-10T19:10:00+10:00', by: 'JO', says: 'Shaft and links, first readings: joints differ by 1.8 degrees' },
  { on: '2025-04-24T18:00:00+10:00', by: 'MB', says: 'Exhaust welded and hung' },
  { on: '2025-04-26T16:30:00+10:00', by: 'JO', says: 'Fuel, cooling and wiring in and tried' },
  { on: '2025-05-08T17:20:00+10:00', by: 'MB', says: 'Pinion raised by two turns of both lower links' },
  { on: '2025-05-08T18:50:00+10:00', by: 'JO', says: 'Joint angles, ride height, wheels, sweep and steering measured' },
  { on: '2025-05-12T15:00:00+10:00', by: 'JO', says: 'Weighed, and the centre of mass found' },
  { on: '2025-05-13T17:00:00+10:00', by: 'MB', says: 'Twist again, with the six in' },
  { on: '2025-05-16T16:20:00+10:00', by: 'LF', says: 'Brake test' },
  { on: '2025-05-16T18:00:00+10:00', by: 'JO', says: 'Brakes as released and tested' },
  { on: '2025-05-19T17:15:00+10:00', by: 'JO', says: 'Noise with our own meter: too near the limit to say' },
  { on: '2025-05-22T17:40:00+10:00', by: 'LF', says: 'Speedometer, road test and lane change' },
  { on: '2025-05-26T19:30:00+10:00', by: 'MB', says: 'Axle, exhaust and body finished' },
  { on: '2025-05-26T20:00:00+10:00', by: 'JO', says: 'Aligned, lamps aimed, visit of the certifier: ready for the first issue', issue: 'A' },
  { on: '2025-06-11T09:30:00+10:00', by: 'JO', says: 'Two questions of the certifier on issue A' },
  { on: '2025-06-14T11:00:00+10:00', by: 'JO', says: 'Hoop of the shaft: place, bolts and a sketch' },
  { on: '2025-06-16T17:10:00+10:00', by: 'MB', says: 'Axle: wheel cylinders of 19.05 mm' },
  { on: '2025-06-16T18:00:00+10:00', by: 'JO', says: 'Rear cylinders of 19.05 mm, so that the front locks first' },
  { on: '2025-06-18T16:00:00+10:00', by: 'JO', says: 'Noise measured again with a class 1 meter' },
  { on: '2025-06-20T16:45:00+10:00', by: 'LF', says: 'Brake test again, with the small cylinders' },
  { on: '2025-06-21T10:20:00+10:00', by: 'JO', says: 'Answer to the question on the rear cylinders' },
  { on: '2025-06-25T18:00:00+10:00', by: 'JO', says: 'Both questions closed', issue: 'B' },
];

/** The day of the letter that closes the questions. */
export const closed = '2025-06-25';

/** Days on which a note was written up, where that is not its last stage before the end. */
export const recorded = {
  'notes/020-engine-assembly.md': '2025-03-12',
  'notes/050-crossmember.md': '2025-03-14',
  'notes/060-driveline.md': '2025-04-10',
  'notes/090-suspension.md': '2025-05-08',
  'notes/120-steering.md': '2025-05-08',
  'notes/140-wheels-tyres.md': '2025-05-08',
  'notes/180-electrical.md': '2025-04-26',
  'notes/210-inspection-tacked.md': '2025-03-13',
  'notes/212-inspection-brakes.md': '2025-05-16',
  'notes/215-inspection-finished.md': '2025-05-26',
  'notes/220-test-noise.md': '2025-05-19',
  'notes/230-test-brakes.md': '2025-05-16',
};
