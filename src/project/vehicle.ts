import { z } from 'zod';
import { judgementSchema } from './common.js';
import { readTyre } from './designations/tyre.js';
import { anyQuantity, choice, count, designation, idOf, list, named, onDay, quantity, text, yesNo } from './fields.js';
import { format } from './format.js';

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
  built: z
    .string()
    .regex(/^\d{4}-\d{2}(?:-\d{2})?$/)
    .meta({ form: 'day', says: 'month or day of build, from the plate', typical: '1984-05' }),
  category: choice(categories, 'category under the vehicle standards'),
  'derivative-of-passenger-car': yesNo('van, utility or off-road vehicle: is it a derivative of a passenger car'),
  'derivative-from': text('where that stands', "maker's brochure of the model, 1984"),
  vin: text('VIN or chassis number, as stamped'),
  registration: choice(jurisdictions, 'state or territory of registration'),
  seats: count('seats', { typical: '5' }),
  tows: named('kg', 'mass of the trailer, where it is to tow one', { typical: '900 kg', usual: [100, 4500] }),
  'engine-number': text('engine number of the original engine'),
});

/** Words of `build.md` that decide which items apply. A word that needs a source counts only with it. */
export function vehicleState({ vehicle, original }: Pick<BuildData, 'vehicle' | 'original'>, name: string) {
  if (name === 'induction') return original?.induction;
  if (name === 'tows') return vehicle.tows ? 'yes' : 'no';
  if (name === 'derivative-of-passenger-car') return vehicle['derivative-from'] ? vehicle[name] : undefined;
  return undefined;
}

/** How they are asked for. */
export const vehicleStateWhere: Readonly<Record<string, string>> = {
  'derivative-of-passenger-car':
    'in build.md whether it is a derivative of a passenger car, and where that stands (`vehicle: { derivative-of-passenger-car: …, derivative-from: … }`)',
};

/** The vehicle before the work: facts that many sheets read. */
const original = z.strictObject({
  mass: named('kg', 'tare of the original model as the code defines it', { typical: '1120 kg', usual: [400, 3500] }),
  'mass-source': text('where the mass comes from', "maker's data for the heaviest variant"),
  gvm: named('kg', 'gross vehicle mass', { typical: '1620 kg', usual: [600, 4500] }),
  engine: text('original engine', '2.0 l four-cylinder'),
  capacity: quantity('cm3', 'swept volume of the original engine', {
    measuredAs: 'paper',
    typical: '1796 cm3',
    usual: [300, 9000],
  }),
  'largest-capacity': quantity('cm3', 'swept volume of the largest engine offered for the model', {
    measuredAs: 'paper',
    typical: '2285 cm3',
    usual: [300, 9000],
  }),
  power: quantity('kW', 'rated power of the original engine', {
    measuredAs: 'paper',
    typical: '66 kW',
    usual: [15, 600],
  }),
  torque: quantity('N*m', 'rated torque of the original engine', {
    measuredAs: 'paper',
    typical: '142 N·m',
    usual: [30, 1200],
  }),
  induction: choice({ na: 'naturally aspirated', forced: 'turbocharged or supercharged' }, 'induction'),
  wheelbase: quantity('mm', 'wheelbase', { measuredAs: 'paper', typical: '2640 mm', usual: [1700, 4200] }),
  'track-front': quantity('mm', 'front track', { measuredAs: 'paper', typical: '1395 mm', usual: [1000, 2000] }),
  'track-rear': quantity('mm', 'rear track', { measuredAs: 'paper', typical: '1400 mm', usual: [1000, 2000] }),
  'final-drive': quantity('1', 'final drive ratio', { measuredAs: 'paper', typical: '3.70', usual: [2, 8] }),
  tyre: designation(readTyre, 'tyre size on the placard', '185/70R14 88S'),
  'largest-tyre': designation(readTyre, 'largest tyre the maker lists', '195/70R14 91S'),
  'top-speed': quantity('km/h', 'top speed', { measuredAs: 'paper', typical: '160 km/h', usual: [80, 350] }),
});

const person = {
  name: z.string().meta({ says: 'name' }),
  role: z.string().meta({ says: 'what the person does here', typical: 'builder' }),
  contact: z.string().optional().meta({ says: 'telephone or address' }),
};

/** What an instrument makes uncertain, greater than zero. */
const ofInstrument = (says: string, meta: { typical: string }) =>
  anyQuantity(says, { ...meta, measuredAs: 'named', range: 'above zero' });

const instrumentShape = {
  what: z.string().meta({ says: 'what it is', typical: 'digital caliper, 150 mm' }),
  uncertainty: ofInstrument('expanded uncertainty (k = 2) of one reading; in % it is a share of the reading', {
    typical: '0.03 mm',
  }),
  resolution: ofInstrument('smallest step it shows', { typical: '0.01 mm' }),
  checked: onDay('day of the last check or calibration'),
  interval: z
    .string()
    .regex(/^[1-9]\d{0,2} (?:months?|years?)$/)
    .optional()
    .meta({
      form: 'text',
      says: 'how long that check holds; a reading taken later counts with twice the uncertainty',
      typical: '12 months',
    }),
  'checked-by': text('who checked it, or against what'),
  number: text('serial number'),
};

const loadCase = {
  says: z.string().meta({ form: 'text', says: 'what load this is and where it comes from' }),
  force: named('N', 'force', { typical: '1.4 kN', usual: 'any' }),
  moment: named('N*m', 'moment', { typical: '250 N·m', usual: 'any' }),
  factor: named('1', 'factor applied to the load', { typical: '3', usual: [0.5, 20] }),
  'agreed-with': text('certifier who agreed to it'),
  'agreed-on': onDay('day on which it was agreed'),
  source: text('document or calculation it comes from'),
};

export const buildSchema = z.strictObject({
  title: z.string().min(3),
  format: z
    .string()
    .regex(/^[1-9]\d*$/, 'a whole number')
    .optional()
    .meta({
      form: 'text',
      says: 'format that the notes of this build are written in; `gusset note <build> --update` raises it',
      typical: String(format),
    }),
  id: z
    .string()
    .regex(/^[^/\\\p{Cc}]{1,100}$/u, 'a name without slashes')
    .optional()
    .meta({
      form: 'text',
      says: 'under which the issues of this build are found, whatever its folder is called; `gusset start` makes it, it is not to be changed',
      typical: 'wagon-3fa9c1',
    }),
  document: text('document number', 'WB-01'),
  invented: z.enum(['yes']).optional().meta({ says: 'marks an invented example on every page', typical: 'yes' }),
  workshop: text('workshop, with contact'),
  vehicle: vehicle.meta({ says: 'the vehicle' }),
  original: original.optional().meta({ says: 'the vehicle before the work: facts that limits and sheets read' }),
  people: z
    .array(
      z.strictObject({
        id: z
          .string()
          .regex(/^[A-Za-z]{1,6}$/)
          .meta({ says: 'initials, which notes name under `by`', typical: 'JO' }),
        ...person,
      }),
    )
    .optional()
    .meta({ says: 'who works on it' }),
  certifier: z
    .strictObject({
      name: person.name,
      number: z.string().optional().meta({ says: 'number of the licence' }),
      contact: person.contact,
    })
    .optional()
    .meta({ says: 'the certifying engineer' }),
  codes: z.array(z.string()).optional().meta({ says: 'modification codes in scope, as a list such as [LA1, LB1]' }),
  'new-engine-number': text('engine number of the engine fitted, and where it came from'),
  instruments: list(
    instrumentShape,
    'instruments, which notes name under `with`; no reading counts as surer than its instrument',
  ),
  'load-cases': list(loadCase, 'loads that capacities are compared with, as agreed with the certifier'),
  'signs-design': text('who signs for the design'),
  'signs-work': text('who signs for the carrying out'),
  photos: z
    .array(
      z.strictObject({
        id: idOf.optional(),
        file: z.string().meta({ says: 'file in photos/', typical: 'as-received.jpg' }),
        shows: z.string().meta({ says: 'what it shows', typical: 'the car as it came, from the left' }),
      }),
    )
    .optional()
    .meta({ says: 'photos of the whole vehicle' }),
  judgements: z
    .array(judgementSchema)
    .optional()
    .meta({ says: 'judgements of findings, photos and documents of any note' }),
});
export type BuildData = z.infer<typeof buildSchema>;
export type Instrument = NonNullable<BuildData['instruments']>[number];
export type LoadCase = NonNullable<BuildData['load-cases']>[number];
