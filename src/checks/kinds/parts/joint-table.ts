import { combine } from '../../../calc/propagate.js';
import { toSI } from '../../../units/unit.js';
import { type Basis, boundOf, type Limit, weakest } from '../../codes/limit.js';
import { isMissing, type Maybe } from '../../engine/work.js';

/** Largest angle of a joint by the speed of its shaft, as the table prints it; the quickest first. */
const rows: readonly { rpm: number; degrees: number; basis: Basis }[] = [
  { rpm: 5000, degrees: 3.2, basis: 'quoted' },
  { rpm: 4500, degrees: 3.7, basis: 'quoted' },
  { rpm: 4000, degrees: 4.2, basis: 'quoted' },
  { rpm: 3500, degrees: 5.0, basis: 'quoted' },
  { rpm: 3000, degrees: 5.8, basis: 'memory' },
  { rpm: 2500, degrees: 7.0, basis: 'memory' },
  { rpm: 2000, degrees: 8.7, basis: 'memory' },
  { rpm: 1500, degrees: 11.5, basis: 'memory' },
];

/** Degrees at a speed in rpm, linear between rows; a slower shaft than the table prints takes its last row. */
function at(rpm: number): { degrees: number; basis: Basis } {
  const quicker = rows.findLast((row) => row.rpm >= rpm) ?? rows[0]!;
  const slower = rows.find((row) => row.rpm <= rpm);
  if (!slower || slower === quicker) return quicker;
  const share = (rpm - slower.rpm) / (quicker.rpm - slower.rpm);
  return {
    degrees: slower.degrees + share * (quicker.degrees - slower.degrees),
    basis: weakest(quicker.basis, slower.basis),
  };
}

/**
 * The largest angle of a joint at the speed of its shaft. Between two rows the weaker basis of both holds. A speed above
 * the table has no limit here.
 *
 * @param speed in rad/s
 * @returns in rad, with the uncertainty that the speed brings; `undefined` where the speed is missing or above the table
 */
export function jointAngleLimit(speed: Maybe): Limit | undefined {
  if (isMissing(speed)) return undefined;
  const perRpm = toSI(1, 'rpm');
  // A row is met on its speed, whatever the sixteenth digit of the conversion.
  const inRpm = (si: number): number => Number((si / perRpm).toPrecision(12));
  const rpm = inRpm(speed.si);
  if (rpm > rows[0]!.rpm) return undefined;
  const { basis } = at(rpm);
  return {
    max: boundOf(combine([speed], (si) => toSI(at(inRpm(si)).degrees, 'deg'))),
    unit: 'deg',
    document: 'Table of the largest joint angle by shaft speed, published by a joint maker who is not named here',
    clause: `at ${Math.round(rpm)} rpm, linear between the rows printed every 500 rpm`,
    ...(basis === 'quoted' ? { readIn: 'a guidance page on operating angles that prints the table' } : {}),
    basis,
  };
}
