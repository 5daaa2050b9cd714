import type { Inputs, QuantityInput, Results, Sheet } from '../sheet.js';
import { threeJoints } from './three-joints.js';
import { twoJoints } from './two-joints.js';

/** Joint angles of a one-piece shaft by geometry alone: the same sheet before the speed of the shaft is known. */
export const twoJointAngles = withoutSpeed(twoJoints, ['torsional', 'inertiaDrive', 'inertiaCoast']);

/** Joint angles of a two-piece shaft by geometry alone. */
export const threeJointAngles = withoutSpeed(threeJoints, [
  'torsional',
  'driveFront',
  'driveRear',
  'coastRear',
  'coastFront',
]);

/** A sheet without its speed and the results that need it. @param gone results in which the speed plays a part */
function withoutSpeed<I extends Inputs & { speed: QuantityInput }, R extends Results, const K extends keyof R & string>(
  of: Sheet<I, R>,
  gone: readonly K[],
): Sheet<Omit<I, 'speed'>, Omit<R, K>> {
  const plain = of as unknown as Sheet;
  // No result that is left depends on it.
  const turning = (x: object) => ({ ...x, speed: 1 }) as never;
  const kept = <T>(from: Readonly<Record<string, T>>, out: readonly string[]) =>
    Object.fromEntries(Object.entries(from).filter(([name]) => !out.includes(name)));
  return {
    ...plain,
    purpose: 'The angles at which the joints work, and what they leave of each other’s speed variation.',
    inputs: kept(plain.inputs, ['speed']),
    results: kept(plain.results, gone),
    validity: plain.validity.map(({ says, holds }) => ({ says, holds: (x: object) => holds(turning(x)) })),
    calculate: (x: object) => kept(plain.calculate(turning(x)), gone),
    examples: plain.examples.map((example) => ({
      ...example,
      given: kept(example.given, ['speed']),
      gives: kept(example.gives, gone),
    })),
  } as unknown as Sheet<Omit<I, 'speed'>, Omit<R, K>>;
}
