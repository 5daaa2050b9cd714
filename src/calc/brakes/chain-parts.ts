/** From line pressure to the deceleration of the vehicle: inputs, steps and arithmetic that both brake chains share. */

const end = (where: 'front' | 'rear', i: string) =>
  ({
    pistons: { symbol: `n_${i}`, unit: '1', says: `${where} brake: pistons that press on one side (a drum: 1)` },
    piston: { symbol: `d_${i}`, unit: 'mm', says: `${where} brake: diameter of a piston or wheel cylinder` },
    factor: {
      symbol: `C^*_${i}`,
      unit: '1',
      says: `${where} brake factor: twice the pad friction for a disc, the maker’s factor for a drum`,
    },
    radius: {
      symbol: `r_{e${i}}`,
      unit: 'mm',
      says: `${where} brake: effective radius, middle of the pad on a disc, radius of the drum`,
    },
    rolling: { symbol: `R_${i}`, unit: 'mm', says: `${where} tyre: rolling radius` },
  }) as const;
const front = end('front', 'f');
const rear = end('rear', 'r');

export const wheelInputs = {
  frontPistons: front.pistons,
  frontPiston: front.piston,
  frontFactor: front.factor,
  frontRadius: front.radius,
  frontRolling: front.rolling,
  rearPistons: rear.pistons,
  rearPiston: rear.piston,
  rearFactor: rear.factor,
  rearRadius: rear.radius,
  rearRolling: rear.rolling,
  mass: { symbol: 'm', unit: 'kg', says: 'mass of the vehicle in the state of load looked at' },
} as const;

const steps = (where: 'front' | 'rear', i: string) =>
  ({
    area: {
      symbol: `A_${i}`,
      unit: 'mm2',
      says: `${where} piston area of one side`,
      tex: `\\frac{\\pi}{4} \\cdot @${where}Pistons \\cdot @${where}Piston^2`,
      step: true,
    },
    torque: {
      symbol: `T_${i}`,
      unit: 'N·m',
      says: `torque of one ${where} brake`,
      tex: `@${where}Factor \\cdot @${where}Pressure \\cdot @${where}Area \\cdot @${where}Radius`,
      step: true,
    },
    force: {
      symbol: `F_${i}`,
      unit: 'N',
      says: `braking force of the ${where} axle`,
      tex: `\\frac{2 \\cdot @${where}Torque}{@${where}Rolling}`,
    },
  }) as const;
const frontSteps = steps('front', 'f');
const rearSteps = steps('rear', 'r');

export const wheelResults = {
  frontArea: frontSteps.area,
  rearArea: rearSteps.area,
  frontTorque: frontSteps.torque,
  rearTorque: rearSteps.torque,
  frontForce: frontSteps.force,
  rearForce: rearSteps.force,
  share: {
    symbol: '\\varphi',
    unit: '%',
    says: 'front axle’s share of the braking force',
    tex: '\\frac{@frontForce}{@frontForce + @rearForce}',
  },
  deceleration: {
    symbol: 'd',
    unit: 'm/s²',
    says: 'deceleration, as long as no wheel locks',
    tex: '\\frac{@frontForce + @rearForce}{@mass}',
  },
} as const;

export type Wheels = { readonly [K in keyof typeof wheelInputs]: number };

export function wheels(
  x: Wheels,
  frontPressure: number,
  rearPressure: number,
): { readonly [K in keyof typeof wheelResults]: number } {
  const area = (pistons: number, piston: number) => (Math.PI / 4) * pistons * piston ** 2;
  const [frontArea, rearArea] = [area(x.frontPistons, x.frontPiston), area(x.rearPistons, x.rearPiston)];
  const frontTorque = x.frontFactor * frontPressure * frontArea * x.frontRadius;
  const rearTorque = x.rearFactor * rearPressure * rearArea * x.rearRadius;
  const [frontForce, rearForce] = [(2 * frontTorque) / x.frontRolling, (2 * rearTorque) / x.rearRolling];
  const sum = frontForce + rearForce;
  return {
    frontArea,
    rearArea,
    frontTorque,
    rearTorque,
    frontForce,
    rearForce,
    share: frontForce / sum,
    deceleration: sum / x.mass,
  };
}

export const pedalInputs = {
  pedalForce: { symbol: 'F_p', unit: 'N', says: 'force of the foot on the pedal' },
  pedalRatio: {
    symbol: 'i_p',
    unit: '1',
    says: 'pedal ratio: pivot to pad over pivot to pushrod, square to each force',
  },
  efficiency: {
    symbol: '\\eta',
    unit: '1',
    says: 'efficiency from pedal to pressure, found with a line-pressure gauge (1 leaves all losses out)',
  },
} as const;

export const rodResult = {
  rod: {
    symbol: 'F_i',
    unit: 'N',
    says: 'force of the pedal on its pushrod',
    tex: '@pedalForce \\cdot @pedalRatio \\cdot @efficiency',
    step: true,
  },
} as const;

export const wheelValidity = [
  {
    says: 'pistons, brake factors, radii and mass must be greater than zero',
    holds: (x: Wheels) => Object.keys(wheelInputs).every((name) => x[name as keyof Wheels] > 0),
  },
  {
    says: 'the number of pistons on one side is a whole number',
    holds: (x: Wheels) => Number.isInteger(x.frontPistons) && Number.isInteger(x.rearPistons),
  },
] as const;

export const pedalValidity = {
  says: 'pedal force and ratio must be greater than zero, and the efficiency at most 1',
  holds: (x: { pedalForce: number; pedalRatio: number; efficiency: number }) =>
    x.pedalForce > 0 && x.pedalRatio > 0 && x.efficiency > 0 && x.efficiency <= 1,
} as const;

export const chainSources = [
  {
    document: 'Help page of a multibody program on schematic disc brakes',
    clause: 'pedal, pressure, clamp force and torque',
    basis: 'quoted',
  },
  {
    document: 'Limpert, Brake Design and Safety',
    edition: '3rd ed., 2011',
    clause: 'chapter 5, hydraulic brakes',
    basis: 'memory',
  },
] as const;

export const chainAssumptions: readonly string[] = [
  'Both brakes of an axle are alike. The pressure at which pads and shoes begin to touch is left out, so that small pedal forces come out high.',
  'Pads cold and bedded in; friction falls with heat.',
];
