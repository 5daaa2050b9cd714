const certifier = ['R. Ansell, certifying engineer EX-114', '9 Sample Street'];

/** A letter to the workshop, in the certifier's words. */
const letter = (number, date, title, about, ...texts) => ({
  from: certifier, title, number, date, ink: [0.15, 0.2, 0.4],
  body: [{ facts: [['To', 'J. Okoro, Bench Two Garage'], ['About', `TS-001, ${about}`]] }, ...texts.map((text) => ({ text })), { signed: ['R. Ansell', 'EX-114 (invented)'] }],
});

/** What the certifier said at visits and about the issues, in writing. */
export const letters = {
  'visit-letter': letter('RA-25-022', '2025-03-13', 'Visit of 13 March', 'crossmember and mount brackets, tacked',
    'I released the crossmember and the mount brackets to be welded as tacked.',
    'Crossmember: 1.30 downwards and 0.18 along the car, on top of the rails and 76 mm further back. For a gearbox mount I accept that. It is not shown to be equivalent along the car, and need not be; measure the twist again when it is in. The ends on 1.5 mm sheet I accept by the coupon.',
    'Tunnel plate: the ratio may stand as measured, with its ends round and plug welds; no thicker anywhere else.'),
  'concessions-letter': letter('RA-25-040', '2025-05-23', 'Visit of 23 May', 'three concessions',
    'Left front tyre to strut: 13 mm, less than the 25 asked for. Tyre and strut hang on one knuckle and there is no mark after 180 km. Accepted.',
    'Lane change and road test were not made with the car as it came. Nothing is compared with it. Accepted.',
    'Tyres at full lock and bump were not photographed; the readings of the sweep stand for it. Accepted.',
    'Luggage: send me a photograph of the mark of 30 kg on the load floor before the car is registered.'),
  'queries-letter': letter('RA-25-044', '2025-06-11', 'Two questions on issue A', 'issue A of the document',
    'One: issue A shows the rear locking first above a braking rate of 0.53, empty. What do you do about it? If a part of the hydraulics is exchanged, my release of 16 May ends.',
    'Two: how is the hoop round the tailshaft held, and how far is it from the front joint?'),
  'closing-letter': letter('RA-25-047', '2025-06-25', 'Both questions closed', 'my letter RA-25-044',
    'One: the numbers and the second test settle it.',
    'Two: the sketch of 14 June settles it.'),
};
