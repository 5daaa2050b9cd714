import { z } from 'zod';
import { readTyre } from './designations/tyre.js';
import { anyQuantity, choice, count, designation, idOf, list, named, onDay, quantity, text } from './fields.js';

/** The frontmatter of `build.md`: the vehicle as it came, the people, the instruments, the load cases. */

const required = (says: string) => z.string().min(1).meta({ form: 'text', says });

export const categories = {
  MA: 'passenger car',
  MB: 'forward-control passenger vehicle',
  MC: 'off-road passenger vehicle',
  NA: 'light goods vehicle',
  NB1: 'medium goods vehicle up to 4.5 t GVM',
} as const;

export const jurisdictions = {
  ACT: 'Australian Capital Territory',
  NSW: 'New South Wales',
  NT: 'Northern Territory',
  QLD: 'Queensland',
  SA: 'South Australia',
  TAS: 'Tasmania',
  VIC: 'Victoria',
  WA: 'Western Australia',
} as const;

const vehicle = z.strictObject({
  make: required('make'),
  model: required('model'),
  body: text('body', 'estate, five doors'),
  built: z.string().regex(/^\d{4}-\d{2}(?:-\d{2})?$/).meta({ form: 'day', says: 'month or day of build, from the plate' }),
  category: choice(categories, 'category under the vehicle standards'),
  vin: text('VIN or chassis number, as stamped'),
  registration: choice(jurisdictions, 'state or territory of registration'),
  seats: count('seats'),
  'engine-number': text('engine number of the original engine'),
});

/** The vehicle before the work: facts that many sheets read. */
const original = z.strictObject({
  mass: quantity('kg', 'tare of the original model as the code defines it'),
  'mass-source': text('where the mass comes from'),
  gvm: named('kg', 'gross vehicle mass'),
  engine: text('original engine', '2.0 l four-cylinder'),
  capacity: quantity('cm3', 'swept volume of the original engine'),
  'largest-capacity': quantity('cm3', 'swept volume of the largest engine offered for the model'),
  power: quantity('kW', 'rated power of the original engine'),
  torque: quantity('N*m', 'rated torque of the original engine'),
  induction: choice({ na: 'naturally aspirated', forced: 'turbocharged or supercharged' }, 'induction'),
  wheelbase: quantity('mm', 'wheelbase'),
  'track-front': quantity('mm', 'front track'),
  'track-rear': quantity('mm', 'rear track'),
  'final-drive': quantity('1', 'final drive ratio'),
  tyre: designation(readTyre, 'tyre size on the placard', '185/70R14 88S'),
  'largest-tyre': designation(readTyre, 'largest tyre the maker lists', '195/70R14 91S'),
  'top-speed': quantity('km/h', 'top speed'),
});

const person = { name: z.string(), role: z.string(), contact: z.string().optional() };

export const instrumentShape = {
  what: z.string(),
  uncertainty: anyQuantity('expanded uncertainty (k = 2) of one reading'),
  resolution: anyQuantity('smallest step it shows'),
  checked: onDay('day of the last check or calibration'),
  'checked-by': text('who checked it, or against what'),
  number: text('serial number'),
};

const loadCase = {
  says: z.string().meta({ form: 'text', says: 'what load this is and where it comes from' }),
  force: named('N', 'force'),
  moment: named('N*m', 'moment'),
  factor: named('1', 'factor applied to the load'),
  'agreed-with': text('certifier who agreed to it'),
  'agreed-on': onDay('day on which it was agreed'),
  source: text('document or calculation it comes from'),
};

export const buildSchema = z.strictObject({
  title: z.string().min(3),
  document: text('document number', 'WB-01'),
  invented: z.enum(['yes']).optional().meta({ says: 'marks an invented example on every page' }),
  workshop: text('workshop, with contact'),
  vehicle,
  original: original.optional(),
  people: z.array(z.strictObject({ id: z.string().regex(/^[A-Za-z]{1,6}$/), ...person })).optional(),
  certifier: z.strictObject({ name: z.string(), number: z.string().optional(), contact: z.string().optional() }).optional(),
  codes: z.array(z.string()).optional().meta({ says: 'modification codes in scope' }),
  'new-engine-number': text('engine number of the engine fitted, and where it came from'),
  instruments: list(instrumentShape, 'instruments'),
  'load-cases': list(loadCase, 'load cases'),
  'signs-design': text('who signs for the design'),
  'signs-work': text('who signs for the carrying out'),
  photos: z.array(z.strictObject({ id: idOf.optional(), file: z.string(), shows: z.string() })).optional(),
});
export type BuildData = z.infer<typeof buildSchema>;
export type LoadCase = NonNullable<BuildData['load-cases']>[number];
export type Instrument = NonNullable<BuildData['instruments']>[number];
