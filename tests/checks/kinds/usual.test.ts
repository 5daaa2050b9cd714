import { describe, expect, it } from 'vitest';
import { usualOf } from '../../../src/checks/engine/doubts.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { fieldTree, leaves } from '../../../src/project/field-tree.js';
import { rangeOf } from '../../../src/project/measurement-classes.js';
import { buildSchema } from '../../../src/project/vehicle.js';
import { Decimal } from '../../../src/units/decimal.js';
import { improbable } from '../../../src/units/improbable.js';
import { readQuantity } from '../../../src/units/quantity.js';
import { readSlope } from '../../../src/units/slope.js';
import { unit } from '../../../src/units/unit.js';

/** The usual ranges are common practice, no source. What is tested is that a slip of the point shows in each of them. */

const shapes = [['build', buildSchema.shape] as const, ...[...kinds].map(([id, kind]) => [id, kind.shape] as const)];
const measured = shapes.flatMap(([kind, shape]) =>
  leaves(fieldTree(shape))
    .filter(({ field }) => field.meta.form === 'quantity' || field.meta.form === 'slope')
    .map(({ path, field }) => ({ name: `${kind}: ${path.join('.')}`, meta: field.meta })),
);
type Exceptions = Readonly<Record<string, readonly RegExp[]>>;

/** Of these no size tells anything. */
const withoutRange: Exceptions = {
  'whole numbers have no point': [
    /seats|pistons|bolts$|cylinders$|threads-showing$|fault-codes|cones$|suspension: .*coils$/,
  ],
  'of whatever quantity it is': [
    /^build: instruments/,
    /^general: measurements.*(was|value|least|greatest)$/,
    /^inspection: readings/,
  ],
  'load cases are of any size, as agreed with the certifier': [/^build: load-cases.*(force|moment)$/],
};

/** With the point one place too far left these are still values that occur. */
const smallOccurs: Exceptions = {
  'it is counted from level, straight or true, and may be none': [
    /^alignment: .*(toe|camber|caster)(\.least|\.greatest)?$/,
    /^alignment: (thrust|bump-steer.*travel)$/,
    /^driveline: (offset|twist|stations.*)$/,
    /^rear-axle: (.*pinion|gearbox|.*forward|(lower|upper)-change|(own|fitted)-offset|spacer)$/,
    /^engine-assembly: compression\.(deck|crown)$/,
    /^exhaust: outlet\.(slope|past-joint|past-side|above-cab)$/,
    /^lights-and-body: (aim.*|guards.*(ahead|behind|uncovered)|lamps.*from-side|edges.*stands-out)$/,
    /^steering: joints.*(angle|plane|forks)$/,
    /^retained-systems: (steering-sensor|crankcase-pressure).*(was|now)$/,
    /^wheels-tyres: .*(offset|spacer)$/,
    /^cooling: ambient$/,
    /^mass: parts.*place$/,
  ],
  'less of it is better, down to none': [
    /^alignment: joint-play$/,
    /^body-structure: .*loss$/,
    /^brakes: .*run-out$/,
    /^electrical: (circuits.*drop|drain)$/,
    /^gearbox: (bore|face)-runout$/,
    /^rear-axle: bend$/,
    /^steering: (.*rim-play|ends.*play)$/,
    /^test: (twist|bending).*(front|rear|left|right)$/,
    /^test: emissions.idle-co$/,
  ],
  'it grows from nothing, or small and large ones stand in one list': [
    /^inspection: odometer$/,
    /^mass: .*\.(fuel|persons)$/,
    /^mass: (parts|places).*mass$/,
    /torques\..*torque$/,
    /^engine-assembly: joints.*torque$/,
    /^engine-assembly: clearances.*value$/,
    /^electrical: circuits.*(current|fuse)$/,
  ],
  'from carburettor to direct injection': [/^fuel-system: pressure(-test\.(pressure|after))?$/],
};

/** With the point one place too far right these are still values that occur. */
const largeOccurs: Exceptions = {
  'the typical value is nothing': [
    /^driveline: twist$/,
    /^rear-axle: spacer$/,
    /^wheels-tyres: .*spacer$/,
    /^steering: joints.*(plane|forks)$/,
    /^mass: .*persons$/,
    /^lights-and-body: guards.*uncovered$/,
  ],
  'small and large ones stand in one list': [
    /^electrical: circuits.*(size|current|fuse)$/,
    /^engine-assembly: clearances.*value$/,
    /^mass: parts.*place$/,
  ],
  'the gauge stands at the held end or at the loaded one': [/^test: twist.*rear-(left|right)$/],
  'from carburettor to direct injection': [
    /^fuel-system: (pressure(-test\.(pressure|after))?|lines.*pressure-rating)$/,
  ],
};

const isExcepted = (name: string, from: Exceptions) =>
  Object.values(from)
    .flat()
    .some((pattern) => pattern.test(name));

type Meta = (typeof measured)[number]['meta'];

/** Whether the value is refused, in doubt or taken without a word. */
function told(meta: Meta, text: string): 'refused' | 'doubt' | 'nothing' {
  const read = meta.form === 'slope' ? readSlope(text) : readQuantity(text, meta.unit!);
  if (!read.ok) throw new Error(`${text}: ${read.problem.found}`);
  const { si, readings = [si] } = read.quantity;
  if (readings.some((x) => Math.abs(x) > rangeOf(meta.measuredAs)[1])) return 'refused';
  const usual = usualOf(meta);
  return usual && improbable(read.quantity, usual.si) ? 'doubt' : 'nothing';
}

/** The text with the point of each number moved; of a ratio such as 41:11 that of the first. */
function moved(text: string, by: number): string {
  let first = true;
  return text.replaceAll(/(?<![\p{L}\d.])\d+(?:\.\d+)?/gu, (number) => {
    if (!first && text.includes(':')) return number;
    first = false;
    return new Decimal(number).times(by).toString();
  });
}

describe('every measured field has a usual range, in which a slip of the point shows', () => {
  it('has one, or a reason for none', () => {
    const without = measured.filter(({ meta }) => !usualOf(meta)).map(({ name }) => name);
    expect(without.filter((name) => !isExcepted(name, withoutRange))).toEqual([]);
    expect(measured.length - without.length).toBeGreaterThan(700);
  });

  const typical = measured.flatMap(({ name, meta }) =>
    meta.typical !== undefined && usualOf(meta) ? [{ name, meta, typical: meta.typical }] : [],
  );

  it('the typical value gives no doubt', () => {
    expect(typical.filter(({ meta, typical }) => told(meta, typical) !== 'nothing').map(({ name }) => name)).toEqual(
      [],
    );
  });

  it.each([
    ['right', 10, largeOccurs],
    ['left', 0.1, smallOccurs],
  ] as const)(
    'the typical value with its point one place too far %s is in doubt, or there is a reason',
    (_, by, excepted) => {
      const silent = typical.filter(({ meta, typical }) => told(meta, moved(typical, by)) === 'nothing');
      const names = silent.map(({ name }) => name);
      expect(names.filter((name) => !isExcepted(name, excepted))).toEqual([]);
      const idle = Object.values(excepted)
        .flat()
        .filter((pattern) => !names.some((name) => pattern.test(name)));
      expect(idle).toEqual([]);
      const needless = typical
        .map(({ name }) => name)
        .filter((name) => !names.includes(name) && isExcepted(name, excepted));
      expect(needless).toEqual([]);
    },
  );

  it('both ends of a range are usual, and ten times the largest is a slip', () => {
    const wrong = measured.flatMap(({ name, meta }) => {
      const usual = usualOf(meta);
      if (!usual || meta.form === 'slope') return [];
      const { factor, offset } = unit(meta.unit!);
      const written = (si: number, by = 1) =>
        `${new Decimal(si)
          .minus(offset ?? 0)
          .div(factor)
          .times(by)
          .toSignificantDigits(12)
          .toString()} ${meta.unit === '1' ? '' : meta.unit}`.trim();
      const [least, most] = usual.si;
      return [
        [written(least), 'nothing'],
        [written(most), 'nothing'],
        [written(most, 10), 'doubt'],
      ]
        .filter(([text, expected]) => ![expected, 'refused'].includes(told(meta, text!)))
        .map(([text]) => `${name} ${text}`);
    });
    expect(wrong).toEqual([]);
  });
});
