const bench = ['Bench Two Garage', '4 Example Lane'];
const mill = ['Orrel Tube Mill', 'Works 2, Sample Road'];
const lab = ['Quoin Materials Laboratory', '17 Example Street'];

export const welding = {
  'mill-certificate': {
    from: mill, title: 'Inspection certificate', number: 'OTM-25-01187', date: '2025-01-22', ink: [0.5, 0.25, 0.1],
    body: [
      { facts: [['Purchaser', 'Bench Two Garage'], ['Document', 'specific inspection, type 3.1'], ['Product', 'cold formed welded structural hollow sections'], ['Steel and standard', 'S355J2H, EN 10219']] },
      { table: { head: ['Item', 'Section', 'Heat', 'Length', 'Mass'], widths: [8, 30, 20, 15, 15], rows: [['1', 'RHS 50 x 30 x 2.5', '7714-22', '2.0 m', '5.4 kg'], ['2', 'RHS 50 x 30 x 3.0', '7714-25', '1.0 m', '3.2 kg'], ['3', 'CHS 32 x 4.0', '7698-03', '1.5 m', '4.1 kg'], ['4', 'FL 100 x 3.0 (EN 10025)', '7690-41', '1.0 m', '2.4 kg']] } },
      { head: 'Mechanical tests', table: { head: ['Item', 'Yield strength', 'Tensile strength', 'Elongation'], widths: [10, 30, 30, 30], rows: [['1', '418 MPa', '521 MPa', '27 %'], ['2', '411 MPa', '517 MPa', '28 %'], ['3', '426 MPa', '533 MPa', '26 %'], ['4', '392 MPa', '508 MPa', '29 %']] } },
      { head: 'Chemical analysis, mass %', table: { head: ['Item', 'C', 'Si', 'Mn', 'P', 'S', 'CEV'], widths: [10, 15, 15, 15, 15, 15, 15], rows: [['1', '0.13', '0.02', '1.16', '0.012', '0.006', '0.34'], ['2', '0.13', '0.02', '1.18', '0.011', '0.006', '0.34'], ['3', '0.14', '0.18', '1.21', '0.013', '0.007', '0.36'], ['4', '0.12', '0.02', '1.09', '0.014', '0.008', '0.32']] } },
      { signed: ['P. Hale', 'works inspector (invented)'] },
    ],
  },
  'weld-procedure': {
    from: bench, title: 'Weld procedures WP-07 and WP-08', number: 'WP-07/08, issue 2', date: '2025-02-10',
    body: [
      { text: 'WP-07 is for fillets between tube or plate of 2.5 to 5 mm and sheet of 1.2 to 3 mm; WP-08 for fillets on tube and plate from 3 mm. Category GP throughout. Sent to the certifier with the proposal.' },
      { table: { head: ['', 'WP-07', 'WP-08'], widths: [30, 35, 35], rows: [['Process', 'GMAW, short arc', 'GMAW, short arc'], ['Wire', '0.8 mm, class 49 (490 MPa)', '1.0 mm, class 49 (490 MPa)'], ['Gas', 'argon with 18 % CO2, 12 l/min', 'argon with 18 % CO2, 14 l/min'], ['Current, voltage', '75 to 95 A, 16 to 17 V', '120 to 145 A, 18 to 19 V'], ['Preparation', 'both sides bright for 25 mm, zinc and sealer off, gap under 0.5 mm', 'bright for 25 mm, gap under 0.5 mm'], ['Position', 'flat and horizontal', 'flat and horizontal, housing turned'], ['Runs', '25 to 40 mm, opposite sides in turn, hand warm before the next', '50 mm, opposite sides in turn, bar in the bearing seats'], ['Preheat', 'none', 'housing 80 degrees'], ['Inspection', 'by eye, leg gauge at three places, coupon', 'by eye, leg gauge, dye on both ends of each weld']] } },
      { head: 'Before striking an arc', text: 'Tank and lines out or drained and flushed, battery and control units disconnected, trim and looms out of the heat, extinguisher and a second person at hand. Primer for welding through only between the laps.' },
      { signed: ['M. Brandt', 'welder (invented)'] },
    ],
  },
  'welder-qualification': {
    from: lab, title: 'Qualification of a welder', number: 'QML-W-3390', date: '2024-08-06', ink: [0.1, 0.35, 0.3],
    body: [
      { facts: [['Welder', 'M. Brandt (invented)'], ['Standard', 'AS/NZS 1554.1, category GP and SP'], ['Process', 'GMAW, short arc'], ['Range', 'fillets, 1.0 to 12 mm, flat, horizontal, vertical up; plate and hollow sections'], ['Test pieces', 'fillet break and macro, 1.5 and 8 mm, both accepted'], ['Valid until', '2026-08-06 while the welder stays in practice']] },
      { signed: ['E. Marr', 'examiner (invented)'] },
    ],
  },
  'weld-coupon': {
    from: lab, title: 'Test of two welding coupons', number: 'QML-25-0214', date: '2025-02-27', ink: [0.1, 0.35, 0.3],
    body: [
      { facts: [['For', 'Bench Two Garage, procedures WP-07 and WP-08'], ['Coupon No. 1', 'WP-07: tube RHS 50 x 30 x 2.5 on sheet DC01, 1.5 mm, two fillets of 120 mm, welded by M. Brandt on 2025-02-18'], ['Coupon No. 2', 'WP-08: plate S355, 5 mm, on a piece of axle tube, 5.5 mm, two fillets of 120 mm, welded by M. Brandt on 2025-02-18'], ['Received', '2025-02-20']] },
      { head: 'Coupon No. 1', table: { head: ['Test', 'Asked', 'Found', 'Result'], widths: [26, 30, 30, 14], rows: [['By eye', 'no crack, undercut under 0.3 mm', 'no crack, undercut 0.1 mm at one end', 'accepted'], ['Leg, slices A, B, C', '3.0 mm or more', '3.1, 3.3, 3.2 mm', 'accepted'], ['Throat, slices A, B, C', '2.1 mm or more', '2.3, 2.4, 2.3 mm', 'accepted'], ['Penetration into the corner', 'reaches the corner', 'reaches it in all slices', 'accepted'], ['Sheet left under the weld', 'not burnt through', '1.1 mm at the thinnest', 'accepted'], ['Fillet break', 'no lack of fusion over 5 % of the length', 'one spot of 2 mm in 120 mm', 'accepted']] } },
      { head: 'Coupon No. 2', table: { head: ['Test', 'Asked', 'Found', 'Result'], widths: [26, 30, 30, 14], rows: [['By eye', 'no crack, undercut under 0.5 mm', 'no crack, no undercut', 'accepted'], ['Leg, slices A, B, C', '5.0 mm or more', '5.2, 5.1, 5.3 mm', 'accepted'], ['Penetration into the corner', 'reaches the corner', 'reaches it in all slices', 'accepted'], ['Hardness of the tube, HV 10', '350 at most', '214 to 268', 'accepted'], ['Fillet break', 'no lack of fusion over 5 % of the length', 'none', 'accepted']] } },
      { text: 'The slices were ground, etched in nital and kept for two years. The results hold for the coupons tested.' },
      { signed: ['E. Marr', 'examiner (invented)'] },
    ],
  },
  'hoop-sketch': {
    from: bench, title: 'Hoop round the tailshaft', number: 'TS-001/S3', date: '2025-06-14',
    body: [
      { text: 'Flat steel 50 by 5, S275, bent round a former, ears welded by M. Brandt by WP-08. Four bolts M8, class 8.8, through the 3 mm doubler of the tunnel, which lies from 140 to 240 mm behind the centre of the front joint, washers of 24 mm above, self-locking nuts. 200 mm behind the centre of the front joint; the shaft passes at least 18 mm from it everywhere.' },
      {
        sketch: {
          height: 250,
          circles: [[130, 120, 45], [130, 120, 71], [130, 120, 77]],
          lines: [[20, 202, 240, 202], [20, 206, 240, 206], [53, 202, 53, 120], [207, 202, 207, 120], [30, 198, 53, 198], [207, 198, 230, 198], [38, 190, 38, 216], [222, 190, 222, 216], [130, 20, 130, 230, true], [20, 120, 240, 120, true], [300, 200, 460, 200], [300, 120, 460, 108], [300, 90, 460, 78], [300, 105, 460, 93, true], [366, 200, 366, 60], [392, 200, 392, 60], [366, 60, 392, 60], [310, 40, 379, 40, true], [310, 34, 310, 110, true], [379, 34, 379, 60, true]],
          words: [[96, 8, 'section through the hoop'], [58, 214, 'doubler 3 mm'], [196, 56, 'FL 50 x 5'], [106, 126, 'shaft 76.2'], [228, 222, 'M8'], [326, 8, 'side view'], [334, 44, '200'], [300, 206, 'tunnel'], [400, 64, 'hoop']],
        },
      },
      { signed: ['J. Okoro', 'Bench Two Garage (invented)'] },
    ],
  },
};
