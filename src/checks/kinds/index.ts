import type { Kind } from '../engine/kind.js';
import { alignment } from './alignment.js';
import { bodyStructure } from './body-structure.js';
import { brakes } from './brakes.js';
import { clearance } from './clearance.js';
import { cooling } from './cooling.js';
import { driveline } from './driveline.js';
import { electrical } from './electrical.js';
import { engine } from './engine.js';
import { engineAssembly } from './engine-assembly.js';
import { exhaust } from './exhaust.js';
import { fuelSystem } from './fuel-system.js';
import { gearbox } from './gearbox.js';
import { general } from './general.js';
import { inspection } from './inspection.js';
import { lightsAndBody } from './lights-and-body.js';
import { mass } from './mass.js';
import { mounts } from './mounts.js';
import { rearAxle } from './rear-axle.js';
import { retainedSystems } from './retained-systems.js';
import { seating } from './seating.js';
import { steering } from './steering.js';
import { suspension } from './suspension.js';
import { suspensionLink } from './suspension-link.js';
import { test } from './test.js';
import { wheelsTyres } from './wheels-tyres.js';

/** The only register of kinds, in alphabetical order. */
export const kinds: ReadonlyMap<string, Kind> = new Map(
  [
    alignment,
    bodyStructure,
    brakes,
    clearance,
    cooling,
    driveline,
    electrical,
    engine,
    engineAssembly,
    exhaust,
    fuelSystem,
    gearbox,
    general,
    inspection,
    lightsAndBody,
    mass,
    mounts,
    rearAxle,
    retainedSystems,
    seating,
    steering,
    suspension,
    suspensionLink,
    test,
    wheelsTyres,
  ].map((kind) => [kind.id, kind]),
);
