const maker = ['Tarrawin Motor Works', 'Technical Publications'];
const springs = ['Cobbin Springs', '8 Example Court'];
const ends = ['Ferrand Joint Company', 'Data sheets'];
const shafts = ['Farfield Shaft Shop', '22 Sample Street'];
const trader = ['Second Gear Dismantlers', 'Lot 9, Example Industrial Estate'];

export const makers = {
  'engine-receipt': {
    from: trader, title: 'Receipt', number: '40771', date: '2025-01-30', ink: [0.35, 0.3, 0.1],
    body: [
      { facts: [['Sold to', 'Bench Two Garage'], ['From vehicle', 'Tarrawin saloon 3.0, built 1983-09, chassis TWSALOON83DX002216, written off 2024-11, hit at the rear'], ['Counter', '131 208 km']] },
      { table: { head: ['Part', 'Number', 'Price'], widths: [50, 30, 20], rows: [['Engine, six cylinders, complete with carburettor and emission equipment', 'TW30-771920', '900.00'], ['Gearbox, five-speed, with clutch housing', '30412', '350.00'], ['Rear axle, 41:12, with drums', 'TWA-7-44091', '300.00'], ['Intermediate steering shaft with two joints', '12-114', '40.00']] } },
      { text: 'Paid by transfer. Parts taken from the vehicle named above and from no other.' },
      { signed: ['D. Pell', 'for the dismantlers (invented)'] },
    ],
  },
  'engine-manual': {
    from: maker, title: 'Engine manual, six-cylinder engines (extract)', number: 'TP-6-3.0', date: '1983-03-01', ink: [0.45, 0.1, 0.1],
    body: [
      { head: 'General', table: { head: ['', 'Least', 'Greatest', 'Page'], widths: [52, 16, 16, 16], rows: [['Compression ratio', '9.0', '9.5', '6-3'], ['Cranking pressure, warm', '1050 kPa', '1350 kPa', '6-4'], ['Oil pressure, hot, idle', '100 kPa', '', '6-5'], ['Oil pressure, hot, 3000 rpm', '300 kPa', '550 kPa', '6-5'], ['Fuel pressure at the carburettor', '20 kPa', '32 kPa', '6-60'], ['Thermostat begins to open', '80 °C', '84 °C', '6-52'], ['Radiator cap opens', '95 kPa', '110 kPa', '6-52'], ['Coolant, settled', '', '102 °C', '6-52'], ['Crankcase pressure, warm idle', '-1.0 kPa', '0 kPa', '6-58'], ['Charging voltage', '13.5 V', '14.6 V', '8-2']] } },
      { head: '6-12 to 6-28  Clearances', table: { head: ['', 'Least', 'Greatest', 'Page'], widths: [52, 16, 16, 16], rows: [['Main bearings', '0.025 mm', '0.060 mm', '6-12'], ['End float', '0.05 mm', '0.25 mm', '6-12'], ['Big ends', '0.025 mm', '0.055 mm', '6-14'], ['Piston in bore', '0.030 mm', '0.070 mm', '6-20'], ['Head, out of flat along its length', '', '0.10 mm', '6-28'], ['Timing mark from top dead centre', '', '1.0°', '6-40']] } },
      { head: '6-31 to 6-45  Torques', table: { head: ['Joint', 'Steps', 'Fasteners', 'Page'], widths: [28, 36, 24, 12], rows: [['Main caps, M12', '50 ± 5, 95 ± 5 N·m, oiled, from the middle', 'may be used again', '6-31'], ['Rods, M9', '30 ± 3, 48 ± 3 N·m, oiled', 'new', '6-32'], ['Head, M11', '40 ± 4, 70 ± 4 N·m, 90 ± 5°, oiled', 'new, not tightened again', '6-34'], ['Flywheel, M12x1.25', '105 ± 8 N·m, thread lock', 'new', '6-36'], ['Damper, M16', '160 ± 10 N·m, oiled', 'may be used again', '6-36'], ['Mount bracket to block, M10', '48 to 62 N·m', 'class 10.9', '6-45']] } },
      { head: 'Rings', text: 'Least end gap as on the sheet in the packet of the ring maker: top 0.0040, second 0.0050 of the bore.' },
    ],
  },
  'gearbox-data': {
    from: maker, title: 'Five-speed gearbox G5L, data', number: 'TP-7-G5L', date: '1983-03-01', ink: [0.45, 0.1, 0.1],
    body: [
      { table: { head: ['1st', '2nd', '3rd', '4th', '5th', 'reverse'], widths: [1, 1, 1, 1, 1, 1], rows: [['3.54', '2.03', '1.36', '1.00', '0.82', '3.37']] } },
      { facts: [['Greatest input torque', '300 N·m'], ['Lubricant', 'GL-4 75W-90, 1.9 l; not GL-5'], ['Run-out of the housing bore', '0.20 mm total at most'], ['Run-out of the housing face', '0.15 mm total at most'], ['Input shaft in its spigot bearing', '12 mm at least'], ['Speedometer drive', 'worm of 7, pinions of 17 to 21 teeth'], ['Mass, dry, with housing', '39 kg']] },
    ],
  },
  'axle-manual': {
    from: maker, title: 'Rear axle 7, manual (extract)', number: 'TP-9-A7', date: '1983-03-01', ink: [0.45, 0.1, 0.1],
    body: [
      { facts: [['Greatest load (p. 2)', '930 kg'], ['Ratio', '41:12'], ['Width over wheel faces', '1370 mm'], ['Line of the housing (p. 9)', 'out by no more than 0.5 mm over its length'], ['Upper arms to body and axle (p. 12)', 'M12 class 10.9, 85 to 105 N·m'], ['Drums', '228 mm, no larger than 229.5 mm'], ['Wheel cylinders', '22.2 mm; option for light bodies 19.05 mm'], ['Brake factor', '2.3'], ['Oil', '1.4 l']] },
    ],
  },
  'mount-data': {
    from: maker, title: 'Engine mounts, data', number: 'TP-6-M', date: '1983-03-01', ink: [0.45, 0.1, 0.1],
    body: [
      { table: { head: ['Part', 'Place', 'Load pressed', 'Load lifted', 'Hardness'], widths: [20, 34, 18, 16, 12], rows: [['6-M-221', 'side mounts, 2.6 and 3.0 l', '9.0 kN', '4.5 kN', '58'], ['7-M-104', 'gearbox, five-speed', '6.0 kN', '2.5 kN', '55']] } },
      { text: 'Rubber to subframe, and plate of the gearbox mount: M10 class 8.8, 35 to 50 N·m, self-locking nuts. The cup closes over its plate when the rubber parts. Rubber no warmer than 90 °C.' },
    ],
  },
  'spring-data': {
    from: springs, title: 'Test sheet of springs', number: 'CS-25-114', date: '2025-03-19', ink: [0.1, 0.3, 0.45],
    body: [
      { table: { head: ['', '114-F, front', '114-R, rear'], widths: [40, 30, 30], rows: [['Wire', '12.6 mm', '12.4 mm'], ['Outside diameter', '128 mm', '124 mm'], ['Coils, active', '8, 6.5', '8, 6.5'], ['Free length', '331 mm', '327 mm'], ['Rate, measured', '25.2 N/mm', '26.2 N/mm'], ['Load at 208 mm / 236 mm', '3100 N', '2384 N'], ['Solid length', '113 mm', '112 mm'], ['Steel', 'EN 10270-1 class SH, shot peened, painted', 'the same']] } },
      { text: 'Damper bolts, lower: 70 to 90 N·m. Springs are marked on their last coil.' },
      { signed: ['T. Cobb', 'test bench (invented)'] },
    ],
  },
  'rod-end-data': {
    from: ends, title: 'Rod ends FJ-16, data', number: 'FJ-DS-16', date: '2024-06-01', ink: [0.3, 0.15, 0.4],
    body: [
      { facts: [['Thread', 'M16x1.5, right or left hand, class 8.8, 52 mm long'], ['Static radial load', '62 kN'], ['Least engagement', '24 mm, 1.5 times the thread'], ['Greatest misalignment', '17 degrees either way'], ['Bolt', 'M16 class 10.9, 140 to 170 N·m, double shear only'], ['Locknut', '70 N·m, eye square to its bolt']] },
    ],
  },
  'shaft-balance': {
    from: shafts, title: 'Balance sheet of a tailshaft', number: 'LSS-1190', date: '2025-04-04', ink: [0.2, 0.35, 0.2],
    body: [
      { facts: [['Shaft', 'one-piece, tube 76.2 x 1.65 mm, 1096 mm between joint centres, slip yoke in front'], ['Straightness', '0.18 mm total run-out in the middle'], ['Balanced at', '3600 rpm, both ends']] },
      { table: { head: ['End', 'Before', 'After', 'Asked'], widths: [25, 25, 25, 25], rows: [['Front', '310 g·mm', '24 g·mm', '60 g·mm'], ['Rear', '275 g·mm', '31 g·mm', '60 g·mm']] } },
      { signed: ['S. Wray', 'balancer (invented)'] },
    ],
  },
  'brake-parts': {
    from: maker, title: 'Front brake, larger saloon, parts and data', number: 'TP-5-F', date: '1983-03-01', ink: [0.45, 0.1, 0.1],
    body: [
      { table: { head: ['Part', 'Number', 'Dimension'], widths: [40, 30, 30], rows: [['Disc, vented', '5-F-260', '260 x 22 mm, 20.4 mm at least, run-out 0.10 mm at most'], ['Calliper, floating', '5-F-054', 'one piston, 54.0 mm'], ['Pads', '5-F-P3', 'friction 0.38 cold, bedded in'], ['Master cylinder, tandem', '5-M-222', '22.2 mm, stroke 34 mm'], ['Booster', '5-B-8', 'ratio 3.5, adds 2600 N at most'], ['Hose', '5-H-11', 'SAE J1401, 340 mm']] } },
      { text: 'Pedal, pressed hard with the engine running: 50 mm or more to the floor. Calliper bolts M12 class 10.9, 85 to 105 N·m.' },
    ],
  },
};
