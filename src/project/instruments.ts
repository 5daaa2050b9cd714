import { didYouMean } from '../platform/near.js';
import type { Quantity } from '../units/quantity.js';
import { sameDimension, unit } from '../units/unit.js';
import type { Measured } from './fields.js';
import { measuredIn } from './measured-in.js';
import type { Build, Note } from './model.js';
import type { Problem } from './problem.js';
import type { Instrument } from './vehicle.js';

/** The instruments that `build.md` declares: what each makes uncertain, and whether its check is too long ago. */

/** Common practice, no source: how long a check holds where no interval is stated, and what a check that is older does to U. */
export const lateCheck = { months: 12, factor: 2, basis: 'practice' } as const;

export function instrumentOf(measured: Measured, build: Pick<Build, 'data'>): Instrument | undefined {
  return measured.with === undefined ? undefined : build.data.instruments?.find((i) => i.id === measured.with);
}

/**
 * Expanded uncertainty (k = 2) in SI units that the instrument brings to a reading. Half its smallest step counts beside
 * what is stated for it. Undefined where nothing is stated for it that fits what was measured, as of a tape for a ratio.
 */
export function uncertaintyOf(instrument: Instrument, measured: Measured): number | undefined {
  const stated = inReading(instrument.uncertainty?.quantity, measured.quantity);
  if (stated === undefined) return undefined;
  const step = inReading(instrument.resolution?.quantity, measured.quantity) ?? 0;
  const factor = outOfDate(instrument, measured.on) ? lateCheck.factor : 1;
  return Math.hypot(stated, step / 2) * factor;
}

/** An uncertainty or a step for this reading: `2 %` is of the reading, and of a reading in per cent no less than two of these. */
function inReading(of: Quantity | undefined, reading: Quantity): number | undefined {
  if (!of) return undefined;
  const zero = unit(of.unit).offset?.toNumber() ?? 0;
  const size = Math.abs(of.si - zero);
  const same = sameDimension(of.dimension, reading.dimension);
  if (of.unit !== '%') return same ? size : undefined;
  return shareHasMeaning(reading) ? Math.max(size * Math.abs(reading.si), same ? size : 0) : undefined;
}

/** A share of a temperature or of a level says nothing. */
const shareHasMeaning = ({ unit: written, dimension }: Quantity): boolean =>
  unit(written).offset === undefined && dimension.level === undefined;

/** Whether the check of an instrument was too long before the day of a measurement. Without both days it is not known. */
export function outOfDate({ checked, interval }: Instrument, on: string | undefined): boolean {
  if (checked === undefined || on === undefined) return false;
  const months = interval === undefined ? lateCheck.months : monthsOf(interval);
  const due = new Date(`${checked}T00:00:00Z`);
  const day = due.getUTCDate();
  due.setUTCMonth(due.getUTCMonth() + months, 1);
  const last = new Date(Date.UTC(due.getUTCFullYear(), due.getUTCMonth() + 1, 0)).getUTCDate();
  due.setUTCDate(Math.min(day, last));
  return on > due.toISOString().slice(0, 10);
}

function monthsOf(interval: string): number {
  const [number, word] = interval.split(' ');
  return Number(number) * (word!.startsWith('year') ? 12 : 1);
}

type Owner = Pick<Note, 'front'> & { data: object };

/** Values that name an instrument that `build.md` does not declare, or one whose share of the reading says nothing there. */
export function instrumentProblems(owners: readonly Owner[], data: Build['data']): Problem[] {
  const instruments = data.instruments ?? [];
  const ids = instruments.map((i) => i.id);
  return owners.flatMap((owner) =>
    measuredIn(owner.data).flatMap((measured): Problem[] => {
      const id = measured.with;
      if (id === undefined) return [];
      const { file, line, column, endColumn } = measured.withAt ?? measured.at;
      const place = { file, line, column, endColumn, source: owner.front.sourceLine(line) };
      const instrument = instruments.find((i) => i.id === id);
      if (!instrument)
        return [
          {
            code: 'reference-missing',
            ...place,
            found: `the instrument \`${id.slice(0, 60)}\`, which \`build.md\` does not declare`,
            expected: 'the id of an instrument under `instruments:` in `build.md`',
            hint: ids.length > 0 ? didYouMean(id, ids) : 'declare it there with its uncertainty and its last check',
          },
        ];
      const share = instrument.uncertainty?.quantity;
      if (share?.unit !== '%' || shareHasMeaning(measured.quantity)) return [];
      return [
        {
          code: 'quantity',
          ...place,
          found: `\`${id}\`, whose uncertainty in \`build.md\` is ${share.text} of the reading`,
          expected: `an uncertainty in ${measured.quantity.dimension.level ? 'dB' : 'K'}, since a share of such a reading says nothing`,
          hint: `state it in \`build.md\` as \`uncertainty: … ${measured.quantity.dimension.level ? 'dB' : 'K'}\``,
        },
      ];
    }),
  );
}
