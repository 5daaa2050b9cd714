import { type Source, sheet } from '../sheet.js';

const common = {
  load: { symbol: 'F', unit: 'kN', says: 'force across the bolt' },
  diameter: {
    symbol: 'd',
    unit: 'mm',
    says: 'diameter of the bolt where it shears and bends: the shank, or the thread root if the thread reaches there',
  },
} as const;
const strength = {
  strength: { symbol: 'S_p', unit: 'MPa', says: 'proof strength of the bolt, from its property class' },
} as const;

const shearSteps = (planes: 1 | 2) =>
  ({
    area: { symbol: 'A', unit: 'mm2', says: 'area of the bolt', tex: '\\frac{\\pi}{4} \\cdot @diameter^2', step: true },
    shear: {
      symbol: '\\tau',
      unit: 'MPa',
      says: 'shear stress',
      tex: planes === 1 ? '\\frac{@load}{@area}' : '\\frac{@load}{2 \\cdot @area}',
    },
  }) as const;

const bendSteps = {
  bending: {
    symbol: '\\sigma_b',
    unit: 'MPa',
    says: 'bending stress',
    tex: '\\frac{32 \\cdot @moment}{\\pi \\cdot @diameter^3}',
  },
  stress: {
    symbol: '\\sigma_v',
    unit: 'MPa',
    says: 'both together, by von Mises',
    tex: '\\sqrt{@bending^2 + 3 \\cdot @shear^2}',
  },
  used: { symbol: 'u', unit: '%', says: 'share of the proof strength', tex: '\\frac{@stress}{@strength}' },
} as const;

const assumptions: readonly string[] = [
  'The bolt is a loose pin: what a tight joint carries by friction is left out, which is on the safe side for strength but not a licence to leave it loose.',
  'Shear is spread evenly over the area and is taken to act together with the greatest bending, which is on the safe side.',
];
const stresses: Source = {
  document: 'Strength of materials: mean shear, bending of a round bar, von Mises',
  basis: 'derived',
};

interface Bolt {
  load: number;
  diameter: number;
  strength: number;
}
const boltValidity = {
  says: 'force, diameter and proof strength must be greater than zero',
  holds: (x: Bolt) => x.load > 0 && x.diameter > 0 && x.strength > 0,
} as const;

function bolt(x: Bolt, planes: 1 | 2, moment: number) {
  const area = (Math.PI / 4) * x.diameter ** 2;
  const shear = x.load / (planes * area);
  const bending = (32 * moment) / (Math.PI * x.diameter ** 3);
  const stress = Math.hypot(bending, Math.sqrt(3) * shear);
  return { area, shear, moment, bending, stress, used: stress / x.strength };
}

export const boltDouble = sheet({
  id: 'link-bolt-double',
  subject: 'links',
  title: 'Bolt of a link in double shear',
  purpose: 'Shear and bending of the bolt that holds a link between two plates.',
  inputs: {
    ...common,
    plate: { symbol: 'a', unit: 'mm', says: 'thickness of each plate of the bracket' },
    gap: { symbol: 'c', unit: 'mm', says: 'gap or spacer between a plate and the link’s eye, each side' },
    eye: { symbol: 'b', unit: 'mm', says: 'width of the link’s eye, ball or inner sleeve' },
    ...strength,
  },
  results: {
    ...shearSteps(2),
    moment: {
      symbol: 'M',
      unit: 'N·m',
      says: 'bending moment in the middle',
      tex: '\\frac{@load}{8} \\left(@eye + 4 \\cdot @gap + 2 \\cdot @plate\\right)',
    },
    ...bendSteps,
  },
  assumptions: [...assumptions, 'The force is spread evenly over the eye and over both plates.'],
  sources: [
    {
      document: 'EN 1993-1-8',
      edition: '2005',
      clause: '3.13 and figure 3.11, bending moment in a pin',
      basis: 'memory',
    },
    stresses,
  ],
  validity: [
    boltValidity,
    {
      says: 'plate and eye must have a thickness, and the gap must not be negative',
      holds: (x) => x.plate > 0 && x.eye > 0 && x.gap >= 0,
    },
  ],
  calculate: (x) => bolt(x, 2, (x.load / 8) * (x.eye + 4 * x.gap + 2 * x.plate)),
  remark:
    'Bending often governs. A sleeve clamped tight between the plates carries the moment and takes it off the bolt.',
  examples: [
    {
      given: { load: '20 kN', diameter: '16 mm', plate: '5 mm', gap: '2 mm', eye: '40 mm', strength: '580 MPa' },
      gives: { shear: '49.7 MPa', moment: '145 N·m', bending: '361 MPa', stress: '371 MPa' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

export const boltSingle = sheet({
  id: 'link-bolt-single',
  subject: 'links',
  title: 'Bolt of a link in single shear',
  purpose: 'Shear and bending of a bolt that stands out of one plate and carries a link’s end.',
  inputs: {
    ...common,
    arm: { symbol: 'e', unit: 'mm', says: 'face of the plate to the middle of the ball or eye' },
    ...strength,
  },
  results: {
    ...shearSteps(1),
    moment: { symbol: 'M', unit: 'N·m', says: 'bending moment at the face of the plate', tex: '@load \\cdot @arm' },
    ...bendSteps,
  },
  assumptions: [
    ...assumptions,
    'The plate holds the bolt as if built in; a thin plate gives way and must be shown to hold the moment too.',
  ],
  sources: [stresses],
  validity: [boltValidity, { says: 'the arm must be greater than zero', holds: (x) => x.arm > 0 }],
  calculate: (x) => bolt(x, 1, x.load * x.arm),
  remark: 'Rod ends in single shear without a load case are a matter for the certifier, whatever this sheet shows.',
  examples: [
    {
      given: { load: '8 kN', diameter: '16 mm', arm: '15 mm', strength: '830 MPa' },
      gives: { shear: '39.8 MPa', moment: '120 N·m', bending: '298 MPa', stress: '306 MPa' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
