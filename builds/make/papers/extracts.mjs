const maker = ['Tarrawin Motor Works', 'Technical Publications'];
const ink = [0.45, 0.1, 0.1];
const window = (rows) => ({ table: { head: ['', 'Least', 'Greatest', 'Page'], widths: [52, 16, 16, 16], rows } });

/** Extracts of manuals and sheets that a single figure or two were taken from. */
export const extracts = {
  'steering-manual': {
    from: maker, title: 'Steering, larger saloon, manual (extract)', number: 'TP-10-S', date: '1983-03-01', ink,
    body: [
      window([['Working angle of a joint of the shaft', '', '30°', '10-4'], ['Shaft in the joint', '18 mm', '', '10-4'], ['Clamp bolt, M8 class 10.9, new nut', '22 N·m', '34 N·m', '10-4'], ['Play at the rim', '', '20 mm', '10-6'], ['Play of tie rod ends and idler', '', '0.50 mm', '10-6']]),
      { text: 'Forks of the intermediate shaft in one plane. A shaft out of a vehicle that was hit in front is not used again.' },
    ],
  },
  'shaft-crack-test': {
    from: ['Farfield Shaft Shop', '22 Sample Street'], title: 'Crack test with dye', number: 'LSS-1204', date: '2025-04-16', ink: [0.2, 0.35, 0.2],
    body: [
      { facts: [['Part', 'intermediate steering shaft 12-114, two joints, stripped and cleaned'], ['Method', 'red dye, ten minutes, white developer, looked at after ten and twenty minutes'], ['Where', 'forks, groove of the clamp bolts, tube with its weld']] },
      { text: 'No indication. The trunnions have no play that can be felt.' },
      { signed: ['S. Wray', 'for the shop (invented)'] },
    ],
  },
  'body-data': {
    from: maker, title: 'Body repair data, Sedge and larger saloon (extract)', number: 'TP-1-B', date: '1983-06-01', ink,
    body: [
      { head: 'B-14  Exhaust, gap to', ...window([['Fuel tank, shielded', '60 mm', '', 'B-14'], ['Brake pipe, shielded', '40 mm', '', 'B-14'], ['Floor, shielded', '25 mm', '', 'B-14'], ['Axle at full bump', '15 mm', '', 'B-14'], ['Rubber of a mount, shielded', '40 mm', '', 'B-14']]) },
      { head: 'B-16 and B-22', ...window([['Loom to the exhaust manifold', '50 mm', '', 'B-16'], ['Rear axle, difference of the diagonals', '', '5 mm', 'B-22']]) },
      { text: 'Sheet of floor, rails and crossmember: DC01 (B-3). Rubber of mounts: 90 °C at most, see the data of the mounts.' },
    ],
  },
  'hand-book': {
    from: maker, title: 'Hand book, Sedge (extract)', number: 'TP-0-H', date: '1984-02-01', ink,
    body: [window([['Dipped beam, below the level of the lamp', '1.0 %', '1.5 %', '61']])],
  },
  'wire-table': {
    from: ['Lumley Wire', 'Data sheets'], title: 'Wire for vehicles, 1.5 mm²', number: 'LW-15', date: '2023-05-01', ink: [0.3, 0.15, 0.4],
    body: [{ facts: [['Current in a loom, 60 °C', '16 A at most'], ['Drop in a feed of 12 V', '0.5 V at most'], ['Resistance', '13.3 mΩ/m at 20 °C']] }],
  },
  'wiring-sketch': {
    from: ['Bench Two Garage', '4 Example Lane'], title: 'Wires added to the maker\'s diagram 8-12', number: 'TS-001/S2', date: '2025-04-26',
    body: [
      { text: 'The diagram of the 3.0 l holds for all else. Added: feed of the heated choke and the carburettor valve, 1.5 mm² red, 3.4 m, fuse 10 A 160 mm from the ignition terminal of the fuse box; main cable 25 mm² to the battery of 60 Ah.' },
      {
        sketch: {
          height: 150,
          lines: [[20, 110, 90, 110], [20, 70, 90, 70], [20, 110, 20, 70], [90, 110, 90, 70], [90, 90, 150, 90], [150, 97, 190, 97], [150, 83, 190, 83], [150, 97, 150, 83], [190, 97, 190, 83], [190, 90, 330, 90], [330, 90, 330, 120], [330, 90, 330, 60], [330, 120, 360, 120], [330, 60, 360, 60], [360, 132, 450, 132], [360, 108, 450, 108], [360, 132, 360, 108], [450, 132, 450, 108], [360, 72, 450, 72], [360, 48, 450, 48], [360, 72, 360, 48], [450, 72, 450, 48]],
          words: [[26, 86, 'fuse box 15'], [152, 102, 'fuse 10 A'], [100, 96, '160 mm'], [222, 96, '1.5 red'], [366, 116, 'heated choke'], [366, 56, 'carburettor valve']],
        },
      },
      { signed: ['J. Okoro', 'Bench Two Garage (invented)'] },
    ],
  },
  'ring-sheet': {
    from: ['Marl Piston Rings', 'Sheet in the packet'], title: 'Ring set 87 mm, six cylinders', number: 'MR-87-6', date: '2024-09-01', ink: [0.3, 0.15, 0.4],
    body: [{ facts: [['Top ring, least end gap', '0.0040 of the bore'], ['Second ring, least end gap', '0.0050 of the bore'], ['Bore', 'as honed, 87.00 to 87.05 mm']] }],
  },
  'engine-parts-receipt': {
    from: ['Bramble Engine Parts', '31 Example Street'], title: 'Receipt', number: '11852', date: '2025-02-28', ink: [0.35, 0.3, 0.1],
    body: [
      { table: { head: ['Part', 'Number', 'Price'], widths: [50, 30, 20], rows: [['Main and big end shells, standard', '6-E-031, 6-E-032', '210.00'], ['Ring set 87 mm', 'MR-87-6', '165.00'], ['Rod bolts M9, set of 12', '6-E-044', '96.00'], ['Head bolts M11, set of 14', '6-E-061', '88.00'], ['Flywheel bolts', '6-E-071', '38.00'], ['Gasket set', '6-E-090', '140.00'], ['Oil pump', '6-E-102', '185.00'], ['Water pump', '6-E-110', '120.00']] } },
      { signed: ['N. Tarn', 'for the shop (invented)'] },
    ],
  },
};
