import type { Source } from '../sheet.js';

/** Inputs, steps and words that the sheets of joint angles share. */

const slope = (symbol: string, of: string) =>
  ({ symbol, unit: 'deg', says: `slope of ${of}, down to the rear positive (nose of a pinion up)` }) as const;
const plan = (symbol: string, of: string) =>
  ({
    symbol,
    unit: 'deg',
    says: `plan angle of ${of}, running to the left going rearwards positive`,
    usual: '0 deg',
  }) as const;

export const gearboxInputs = {
  gearboxSlope: slope('v_0', 'the gearbox output'),
  gearboxPlan: plan('h_0', 'the gearbox output'),
} as const;

export const pinionInputs = {
  pinionSlope: slope('v_p', 'the pinion shaft'),
  pinionPlan: plan('h_p', 'the pinion shaft'),
} as const;

export const speedInput = {
  speed: { symbol: '\\omega', unit: 'rpm', says: 'highest speed of the shaft' },
} as const;

export const slopeOf = slope;

export const lengthOf = (symbol: string, of: string) =>
  ({ symbol, unit: 'mm', says: `length of ${of} between the centres of its joints` }) as const;

export const offsetOf = (symbol: string, of: string) =>
  ({
    symbol,
    unit: 'mm',
    says: `how far the rear joint of ${of} lies to the left of its front joint (negative: to the right)`,
    usual: '0 mm',
  }) as const;

export const twistOf = (symbol: string, of: string) =>
  ({
    symbol,
    unit: 'deg',
    says: `turn of the rear yoke of ${of} against its front yoke, clockwise seen from the front; 0 where both lie in one plane`,
    usual: '0 deg',
  }) as const;

export const planStep = (symbol: string, of: string, names: { slope: string; length: string; offset: string }) =>
  ({
    symbol,
    unit: 'deg',
    says: `plan angle of ${of}`,
    tex: `\\arctan\\frac{@${names.offset} \\sqrt{1 + \\tan^2 @${names.slope}}}{\\sqrt{@${names.length}^2 - @${names.offset}^2}}`,
    step: true,
  }) as const;

/** Angle between two axes from the slopes and plan angles of both. */
export function jointStep<const S extends string>(
  symbol: S,
  says: string,
  a: { slope: string; plan: string },
  b: { slope: string; plan: string },
) {
  const root = ({ slope, plan }: { slope: string; plan: string }) => `\\sqrt{1 + \\tan^2 @${plan} + \\tan^2 @${slope}}`;
  const product = `1 + \\tan @${a.plan} \\tan @${b.plan} + \\tan @${a.slope} \\tan @${b.slope}`;
  return { symbol, unit: 'deg', says, tex: `\\arccos\\frac{${product}}{${root(a)} \\cdot ${root(b)}}` } as const;
}

export const planeStep = (symbol: string, of: string) =>
  ({
    symbol,
    unit: 'deg',
    says: `plane in which ${of} bends: 0 upright, 90° level, clockwise as seen from the front`,
    step: true,
  }) as const;

/** What a joint counts with where joints follow one another. */
export const halfStep = (symbol: string, angle: string) =>
  ({
    symbol,
    unit: '1',
    says: 'square of the tangent of half that angle',
    tex: `\\left(\\tan \\frac{@${angle}}{2}\\right)^2`,
    step: true,
  }) as const;

export const equivalentSays = 'one joint at this angle, exactly, would give the same speed variation';

export const fluctuationResult = {
  symbol: 'U',
  unit: '%',
  says: 'speed variation at the pinion, exactly: greatest less smallest over mean',
  tex: '\\sin @equivalent \\cdot \\tan @equivalent',
} as const;

export const torsionalResult = {
  symbol: '\\alpha_t',
  unit: 'rad/s²',
  says: 'torsional acceleration at the pinion, second order',
  tex: '@speed^2 \\cdot @equivalent^2',
} as const;

export const chainAssumptions: readonly string[] = [
  'Cross-and-bearing joints; a constant-velocity joint adds nothing.',
  'Equivalent angle and speed variation are exact. Accelerations are in the second-order form ω²θ², in which their limits are stated: exactly they are half a per cent greater at 10° and 2.6 % at 20°.',
];

export const jointAssumptions: readonly string[] = [
  'Slopes and plan angles are those seen in side view and in plan. An inclinometer on a shaft that runs out of line reads slightly less; at 4° out of line and 3° slope the difference is under 0.01°.',
  'The ride height and load state of all readings are the same. Wind-up of the axle under torque is not contained.',
];

export const drivelineSources: readonly Source[] = [
  {
    document: 'SAE AE-7, Universal Joint and Driveshaft Design Manual',
    clause: 'joint angles in two views, equivalent angle, torsional and inertia excitation',
    basis: 'memory',
  },
  {
    document: 'Technical annex on universal drivelines of a maker of cardan shafts',
    clause: '3.2, 3.3: sign of the joints by fork position',
    basis: 'quoted',
  },
  {
    document:
      'Vector geometry; relation of the turns of a Cardan joint, tan φ2 = tan φ1/cos θ, composed joint after joint for any phase, and confirmed by turning a chain of joints step by step',
    basis: 'derived',
  },
];

const STEEPEST = (30 * Math.PI) / 180 + 1e-9;

/** No driveline is steeper; a larger number is a slip, such as an angle read from the upright. */
export const angleValidity = <const K extends string>(...names: readonly K[]) => ({
  says: 'slopes and plan angles must lie within 30 degrees',
  holds: (x: Readonly<Record<K, number>>) => names.every((name) => Math.abs(x[name]) <= STEEPEST),
});
