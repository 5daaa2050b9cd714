import { OutOfRange } from '../sheet.js';

/** Standard acceleration of free fall in m/s². */
export const g = 9.80665;

/** A two-axle vehicle at rest in one state of load: masses on its axles in kg, lengths in m. */
export interface Vehicle {
  frontMass: number;
  rearMass: number;
  wheelbase: number;
  massHeight: number;
}

/** Mass, weight in N, and distances of the centre of mass from the front and the rear axle. */
export function centreOfMass({ frontMass, rearMass, wheelbase }: Vehicle) {
  const mass = frontMass + rearMass;
  return {
    mass,
    gravity: g,
    weight: mass * g,
    toFront: (wheelbase * rearMass) / mass,
    toRear: (wheelbase * frontMass) / mass,
  };
}

/** Loads on both axles in N at a braking rate z (deceleration over g). @throws OutOfRange where the rear axle lifts */
export function axleLoads(vehicle: Vehicle, rate: number): { front: number; rear: number } {
  const { weight, toFront, toRear } = centreOfMass(vehicle);
  const shifted = rate * vehicle.massHeight;
  const rear = (weight * (toFront - shifted)) / vehicle.wheelbase;
  if (rear <= 0) throw new OutOfRange('at this braking rate the rear axle would lift off the ground');
  return { front: (weight * (toRear + shifted)) / vehicle.wheelbase, rear };
}

/**
 * Adhesion that each axle uses at a braking rate, for a fixed front share of the braking force.
 *
 * @throws OutOfRange where the rear axle lifts
 */
export function adhesionUsed(vehicle: Vehicle, frontShare: number, rate: number): { front: number; rear: number } {
  const loads = axleLoads(vehicle, rate);
  const force = rate * (vehicle.frontMass + vehicle.rearMass) * g;
  return { front: (frontShare * force) / loads.front, rear: ((1 - frontShare) * force) / loads.rear };
}

/** Front share that makes both axles use the same adhesion at a braking rate. @throws OutOfRange where the rear axle lifts */
export function idealFrontShare(vehicle: Vehicle, rate: number): number {
  return axleLoads(vehicle, rate).front / ((vehicle.frontMass + vehicle.rearMass) * g);
}

/** Braking rate at which a fixed front share is ideal; below it the front axle uses more adhesion, above it the rear. */
export function crossingRate(vehicle: Vehicle, frontShare: number): number {
  return (frontShare * vehicle.wheelbase - centreOfMass(vehicle).toRear) / vehicle.massHeight;
}

/** Braking rates at which the front and the rear axle use a given adhesion; infinite for one that never does. */
export function ratesAtAdhesion(
  vehicle: Vehicle,
  frontShare: number,
  adhesion: number,
): { front: number; rear: number } {
  const { toFront, toRear } = centreOfMass(vehicle);
  const shifted = adhesion * vehicle.massHeight;
  const room = frontShare * vehicle.wheelbase - shifted;
  return {
    front: room > 0 ? (adhesion * toRear) / room : Infinity,
    rear: (adhesion * toFront) / ((1 - frontShare) * vehicle.wheelbase + shifted),
  };
}
