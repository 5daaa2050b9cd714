const certifier = ['R. Ansell, certifying engineer EX-114', '9 Sample Street'];

export const certifying = {
  'load-cases-letter': {
    from: certifier, title: 'Load cases and procedures', number: 'RA-25-017', date: '2025-02-12', ink: [0.15, 0.2, 0.4],
    body: [
      { facts: [['To', 'J. Okoro, Bench Two Garage'], ['About', 'TS-001, Tarrawin Sedge estate, chassis TWSEDGE84EX000417']] },
      { text: 'I have read the proposal. I would take the engine as LA1 and ask for the brakes, axle, suspension and tank with it. Please work to these loads:' },
      { table: { head: ['Case', 'Where', 'Load', 'Factor'], widths: [10, 52, 20, 18], rows: [['1', 'gearbox crossmember and brackets, vertical shock', '1.4 kN', '3'], ['2', 'side mounts, engine torque in first gear with the weight at rest', 'as reckoned', '2'], ['3', 'one lower link, braking and drive', '9.0 kN', '2']] } },
      { text: 'Weld procedures WP-07 and WP-08 are accepted with a coupon of each material pair. Stop before the final welds of the crossmember and of the axle brackets and let me see them. Measure twist before you cut. A lane change will be wanted, because the weight moves.' },
      { text: 'Luggage of 30 kg may be counted for the laden mass, as the load floor is marked.' },
      { signed: ['R. Ansell', 'EX-114 (invented)'] },
    ],
  },
  'axle-release': {
    from: certifier, title: 'Release of the axle brackets', number: 'RA-25-024', date: '2025-03-19', ink: [0.15, 0.2, 0.4],
    body: [
      { facts: [['To', 'J. Okoro, Bench Two Garage'], ['About', 'TS-001, hold point of note 070, brackets tacked']] },
      { text: 'The photograph of 18 March shows the left lower bracket tacked, and a plain bar through the ears that lines it up with the right one. The bar in the bearing seats lies inside the housing and cannot be seen, nor the slope of the pinion; M. Brandt states both in writing, and I take that for the photograph that I asked for. Weld the brackets by WP-08 with the bar in the bearing seats. Photograph the welds bare, and tell me by how much the housing has moved.' },
      { signed: ['R. Ansell', 'EX-114 (invented)'] },
    ],
  },
  'emissions-letter': {
    from: certifier, title: 'Emissions', number: 'RA-25-039', date: '2025-05-23', ink: [0.15, 0.2, 0.4],
    body: [
      { text: 'Vehicle and engine were built to the same emission rules, the engine with carburettor, canister and crankcase valve. With all of that equipment fitted and working I ask for no drive-cycle test.' },
      { text: 'At my visit the idle test gave 1.9 % carbon monoxide at 790 rpm, engine warm, on the garage\'s tester.' },
      { signed: ['R. Ansell', 'EX-114 (invented)'] },
    ],
  },
};
