import type { z } from 'zod';
import type { Place } from '../../calc/value.js';
import type { FieldMeta } from '../../project/fields.js';
import { metaAt } from '../../project/find-field.js';
import { measuredIn } from '../../project/measured-in.js';
import { commonOf } from '../../project/measurement-classes.js';
import type { Build } from '../../project/model.js';
import { buildSchema } from '../../project/vehicle.js';
import { improbable } from '../../units/improbable.js';
import { readQuantity } from '../../units/quantity.js';
import { showQuantity } from '../../units/show.js';
import { toSI } from '../../units/unit.js';
import type { Kind } from './kind.js';

/** A value that was probably not meant as it stands. Nothing rests on a doubt: findings take the value as written. */
export interface Doubt {
  /** Name of the note, or `build`. */
  note: string;
  place: Place;
  found: string;
  expected: string;
  hint: string;
}

/** Values of the build that are usual for their field only with another unit or the point at another place. */
export function doubtsOf(build: Build, kinds: ReadonlyMap<string, Kind>): Doubt[] {
  return [
    ...inData('build', build.data, buildSchema.shape),
    ...build.notes.flatMap((note) => inData(note.name, note.data, kinds.get(note.kind)?.shape ?? {})),
  ];
}

const inData = (note: string, data: object, shape: z.ZodRawShape): Doubt[] =>
  measuredIn(data).flatMap((measured) => {
    const usual = usualOf(metaAt(shape, measured.at.path.split('.')));
    const slip = usual && improbable(measured.quantity, usual.si);
    if (!slip) return [];
    const value = showQuantity(slip.si, measured.quantity.unit);
    return [
      {
        note,
        place: measured.at,
        found: measured.quantity.text,
        expected: usual.says,
        hint:
          slip.unit === undefined
            ? `perhaps ${slip.says}; it would be ${value}`
            : `did you mean ${slip.unit}? (${slip.says})`,
      },
    ];
  });

interface Usual {
  si: readonly [number, number];
  says: string;
}

/** How far parts of one sort lie from the typical one, by common practice, no source. */
const SPREAD = 6;

const known = new Map<string, Usual | undefined>();

/** What is usual for a field: as it says, else as for all of its class, else near its typical value. */
export function usualOf({ unit, typical, usual, measuredAs }: Partial<FieldMeta>): Usual | undefined {
  if (unit === undefined || usual === 'any') return undefined;
  const range = usual ?? commonOf(measuredAs, unit);
  const key = JSON.stringify([unit, typical, range]);
  if (!known.has(key)) known.set(key, range ? stated(range, unit) : near(typical, unit));
  return known.get(key);
}

function stated([least, most]: readonly [number, number], unit: string): Usual {
  const [from, to] = [showQuantity(toSI(least, unit), unit), showQuantity(toSI(most, unit), unit)];
  return {
    si: [toSI(least, unit), toSI(most, unit)],
    says: least === 0 ? `${to} at most` : `something from ${from} to ${to}`,
  };
}

function near(typical: string | undefined, unit: string): Usual | undefined {
  const read = typical === undefined ? undefined : readQuantity(typical, unit);
  if (!read?.ok || read.quantity.si <= 0) return undefined;
  const { si, unit: written } = read.quantity;
  return { si: [si / SPREAD, si * SPREAD], says: `something near ${showQuantity(si, written)}` };
}
