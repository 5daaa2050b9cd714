import { readQuantity } from '../units/quantity.js';
import { designDiameter } from './design-diameter.js';
import type { Measured } from './fields.js';
import { placeOfField } from './find-field.js';
import type { Build, Note } from './model.js';

interface Fact {
  unit: string;
  says: string;
  /** Where it is stated. */
  where: string;
  /** By how much two statements may differ beyond what is written at them, SI, expanded (k = 2). */
  method?: Method;
}
export interface Method {
  expanded: number;
  because: string;
}

/** Common practice: how well tread centres are found with a tape, and the offset of a rim is known. */
export const treadCentres: Method = { expanded: 0.005, because: 'finding the tread centres and the offset of rims' };

/**
 * Facts that more than one sheet or limit reads. Each is stated once: for the vehicle as it came in `build.md`, for the
 * new state in the note that changes it. Names are those that expressions use.
 */
export const facts = {
  original_mass: { unit: 'kg', says: 'tare of the original model', where: '`original: { mass: … }` in build.md' },
  original_capacity: {
    unit: 'cm3',
    says: 'swept volume of the original engine',
    where: '`original: { capacity: … }` in build.md',
  },
  largest_option_capacity: {
    unit: 'cm3',
    says: 'swept volume of the largest engine offered for the model',
    where: '`original: { largest-capacity: … }` in build.md',
  },
  original_power: {
    unit: 'kW',
    says: 'rated power of the original engine',
    where: '`original: { power: … }` in build.md',
  },
  original_torque: {
    unit: 'N*m',
    says: 'rated torque of the original engine',
    where: '`original: { torque: … }` in build.md',
  },
  gvm: { unit: 'kg', says: 'gross vehicle mass', where: '`original: { gvm: … }` in build.md' },
  wheelbase: { unit: 'mm', says: 'wheelbase', where: '`original: { wheelbase: … }` in build.md' },
  seats: { unit: '1', says: 'seats', where: '`vehicle: { seats: … }` in build.md' },
  top_speed: { unit: 'km/h', says: 'top speed', where: '`original: { top-speed: … }` in build.md' },
  original_track_front: {
    unit: 'mm',
    says: 'front track as it came',
    method: treadCentres,
    where: '`original: { track-front: … }` in build.md',
  },
  original_track_rear: {
    unit: 'mm',
    says: 'rear track as it came',
    method: treadCentres,
    where: '`original: { track-rear: … }` in build.md',
  },
  engine_capacity: { unit: 'cm3', says: 'swept volume of the engine fitted', where: 'the engine note' },
  engine_power: { unit: 'kW', says: 'rated power of the engine fitted', where: 'the engine note' },
  engine_torque: { unit: 'N*m', says: 'highest torque of the engine fitted', where: 'the engine note' },
  engine_speed: { unit: 'rpm', says: 'highest engine speed', where: 'the engine note' },
  engine_mass: { unit: 'kg', says: 'mass of the engine fitted', where: 'the engine note' },
  engine_bore: { unit: 'mm', says: 'bore of the engine fitted', where: 'the engine note' },
  engine_stroke: { unit: 'mm', says: 'stroke of the engine fitted', where: 'the engine note' },
  engine_movement: {
    unit: 'mm',
    says: 'movement of engine and gearbox on their mounts under torque',
    where: 'the mounts note',
  },
  first_gear: { unit: '1', says: 'first gear ratio', where: 'the gearbox note' },
  top_gear: { unit: '1', says: 'ratio of the highest gear', where: 'the gearbox note' },
  final_drive: {
    unit: '1',
    says: 'final drive ratio',
    where: 'the rear-axle note, or `original: { final-drive: … }` in build.md',
  },
  original_final_drive: {
    unit: '1',
    says: 'final drive ratio as it came',
    where: '`original: { final-drive: … }` in build.md',
  },
  mass_front: { unit: 'kg', says: 'mass on the front axle', where: 'the mass note' },
  mass_rear: { unit: 'kg', says: 'mass on the rear axle', where: 'the mass note' },
  original_mass_front: {
    unit: 'kg',
    says: 'mass on the front axle as received',
    where: '`was: { front: … }` of the mass note',
  },
  original_mass_rear: {
    unit: 'kg',
    says: 'mass on the rear axle as received',
    where: '`was: { rear: … }` of the mass note',
  },
  laden_mass_front: {
    unit: 'kg',
    says: 'mass on the front axle, laden',
    where: '`laden: { front: … }` of the mass note',
  },
  laden_mass_rear: {
    unit: 'kg',
    says: 'mass on the rear axle, laden',
    where: '`laden: { rear: … }` of the mass note',
  },
  cg_height: { unit: 'mm', says: 'height of the centre of mass', where: 'the mass note' },
  original_cg_height: {
    unit: 'mm',
    says: 'height of the centre of mass as received',
    where: '`was: { raises: … }` of the mass note',
  },
  towed_mass: { unit: 'kg', says: 'mass of the trailer that it tows', where: '`vehicle: { tows: … }` in build.md' },
  unladen_mass: { unit: 'kg', says: 'mass of the car without oil, coolant, fuel and persons', where: 'the mass note' },
  oil_coolant_mass: { unit: 'kg', says: 'mass of oil and coolant', where: 'the mass note' },
  full_fuel_mass: { unit: 'kg', says: 'mass of a full tank of fuel', where: 'the mass note' },
  tyre_diameter_front: {
    unit: 'mm',
    says: 'overall diameter of the front tyre fitted',
    where: 'the wheels-tyres note',
  },
  tyre_diameter_rear: { unit: 'mm', says: 'overall diameter of the rear tyre fitted', where: 'the wheels-tyres note' },
  original_tyre_diameter: {
    unit: 'mm',
    says: 'overall diameter of the tyre on the placard',
    where: '`original: { tyre: … }` in build.md',
  },
  track_front: { unit: 'mm', says: 'front track', where: 'the wheels-tyres note', method: treadCentres },
  track_rear: { unit: 'mm', says: 'rear track', where: 'the wheels-tyres note', method: treadCentres },
} as const satisfies Readonly<Record<string, Fact>>;
export type FactName = keyof typeof facts;

/** Where the same thing of the vehicle as it came is named apart from that of the vehicle as modified. */
const asReceived: Partial<Record<FactName, FactName>> = {
  engine_capacity: 'original_capacity',
  engine_power: 'original_power',
  engine_torque: 'original_torque',
  final_drive: 'original_final_drive',
  mass_front: 'original_mass_front',
  mass_rear: 'original_mass_rear',
  cg_height: 'original_cg_height',
  tyre_diameter_front: 'original_tyre_diameter',
  tyre_diameter_rear: 'original_tyre_diameter',
  track_front: 'original_track_front',
  track_rear: 'original_track_rear',
};

/** The name of a fact in a state of the vehicle. What the work does not change has one name in both. */
export const factIn = (state: 'as-received' | 'as-modified', name: FactName): FactName =>
  state === 'as-received' ? (asReceived[name] ?? name) : name;

export interface Stated {
  name: FactName;
  value: Measured;
  /** Note that states it; absent for `build.md`. */
  note?: Note;
}

/** Facts of the vehicle as it came. */
export function originalFacts(build: Build): Stated[] {
  const o = build.data.original;
  const named: Partial<Record<FactName, Measured | undefined>> = {
    original_mass: o?.mass,
    original_capacity: o?.capacity,
    largest_option_capacity: o?.['largest-capacity'],
    original_power: o?.power,
    original_torque: o?.torque,
    gvm: o?.gvm,
    wheelbase: o?.wheelbase,
    seats: build.data.vehicle.seats,
    top_speed: o?.['top-speed'],
    original_track_front: o?.['track-front'],
    original_track_rear: o?.['track-rear'],
    original_tyre_diameter: o?.tyre && designDiameter(o.tyre),
    final_drive: o?.['final-drive'],
    original_final_drive: o?.['final-drive'],
    towed_mass: build.data.vehicle.tows,
  };
  return Object.entries(named).flatMap(([name, value]) => (value ? [{ name: name as FactName, value }] : []));
}

/** Facts of which a note states the new one, while `build.md` states that of the vehicle as it came. */
const renewed: ReadonlySet<FactName> = new Set<FactName>(['final_drive']);

/** Whether a statement of `build.md` is of the same thing as one of a note. */
export const holdsThroughout = (name: FactName): boolean => !renewed.has(name);

/**
 * A quantity in the words of an answer (`1240 kg, tare of the heaviest saloon`), as a statement of the note. Of several the
 * one that is nearest to what `build.md` states.
 */
export function statedInAnswer(name: FactName, item: string, note: Note, build: Build): Stated | undefined {
  const words = (note.data.answers?.[item]?.answer ?? '').slice(0, 300).split(/\s+/);
  const found = words.flatMap((_, from) => {
    const read = [4, 3, 2, 1]
      .map((many) =>
        readQuantity(
          words
            .slice(from, from + many)
            .join(' ')
            .replace(/[.,;:)]+$/, ''),
          facts[name].unit,
        ),
      )
      .find((r) => r.ok);
    return read?.ok ? [read.quantity] : [];
  });
  const known = originalFacts(build).find((s) => s.name === name)?.value.quantity.si;
  const [quantity] =
    known === undefined ? found : found.toSorted((a, b) => Math.abs(a.si - known) - Math.abs(b.si - known));
  return quantity && { name, note, value: { quantity, as: 'paper', at: placeOfField(note, ['answers', item]) } };
}
