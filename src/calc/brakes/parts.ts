/** The vehicle as the sheets of brake distribution see it, in one state of load. */
export const vehicleInputs = {
  frontMass: { symbol: 'm_f', unit: 'kg', says: 'mass on the front axle in the state of load looked at' },
  rearMass: { symbol: 'm_r', unit: 'kg', says: 'mass on the rear axle in the same state' },
  wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
  massHeight: { symbol: 'h', unit: 'mm', says: 'height of the centre of mass above the ground in the same state' },
} as const;

export const shareInput = {
  frontShare: { symbol: '\\varphi', unit: '%', says: 'front axle’s share of the braking force' },
} as const;

export const massSteps = {
  mass: { symbol: 'm', unit: 'kg', says: 'mass of the vehicle', tex: '@frontMass + @rearMass', step: true },
  gravity: { symbol: 'g', unit: 'm/s²', says: 'standard gravity, 9.80665 m/s²', step: true },
  weight: { symbol: 'W', unit: 'N', says: 'weight of the vehicle', tex: '@mass \\cdot @gravity', step: true },
  toRear: {
    symbol: 'b',
    unit: 'mm',
    says: 'centre of mass to the rear axle',
    tex: '@wheelbase \\cdot \\frac{@frontMass}{@mass}',
    step: true,
  },
  toFront: {
    symbol: 'a',
    unit: 'mm',
    says: 'centre of mass to the front axle',
    tex: '@wheelbase - @toRear',
    step: true,
  },
} as const;

export const crossingResult = {
  crossing: {
    symbol: 'z^*',
    unit: '1',
    says: 'braking rate above which the rear axle uses more adhesion than the front',
    tex: '\\frac{@frontShare \\cdot @wheelbase - @toRear}{@massHeight}',
  },
} as const;

export const vehicleValidity = [
  {
    says: 'masses, wheelbase and height of the centre of mass must be greater than zero',
    holds: (x: { frontMass: number; rearMass: number; wheelbase: number; massHeight: number }) =>
      x.frontMass > 0 && x.rearMass > 0 && x.wheelbase > 0 && x.massHeight > 0,
  },
] as const;

export const shareValidity = {
  says: 'the front share must lie between 0 and 100 %',
  holds: (x: { frontShare: number }) => x.frontShare >= 0 && x.frontShare <= 1,
} as const;

export const vehicleAssumptions: readonly string[] = [
  'Two axles, level road, steady deceleration; suspension movement, air drag and rolling resistance are left out.',
  'The front share is the same at every braking rate: no pressure-reducing valve acts. Where one acts, use the share at the braking rate looked at.',
];
