import { designDiameter } from './design-diameter.js';
import type { Measured } from './fields.js';
import type { Build, Note } from './model.js';

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
    where: '`original: { track-front: … }` in build.md',
  },
  original_track_rear: {
    unit: 'mm',
    says: 'rear track as it came',
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
  cg_height: { unit: 'mm', says: 'height of the centre of mass', where: 'the mass note' },
  original_cg_height: {
    unit: 'mm',
    says: 'height of the centre of mass as received',
    where: '`was: { raises: … }` of the mass note',
  },
  unladen_mass: { unit: 'kg', says: 'mass of the car without oil, coolant, fuel and persons', where: 'the mass note' },
  oil_coolant_mass: { unit: 'kg', says: 'mass of oil and coolant', where: 'the mass note' },
  full_fuel_mass: { unit: 'kg', says: 'mass of a full tank of fuel', where: 'the mass note' },
  tyre_diameter: {
    unit: 'mm',
    says: 'overall diameter of the tyre fitted on the driven axle',
    where: 'the wheels-tyres note',
  },
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
  track_front: { unit: 'mm', says: 'front track', where: 'the wheels-tyres note' },
  track_rear: { unit: 'mm', says: 'rear track', where: 'the wheels-tyres note' },
} as const;
export type FactName = keyof typeof facts;

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
  };
  return Object.entries(named).flatMap(([name, value]) => (value ? [{ name: name as FactName, value }] : []));
}
