import { type Source, sheet } from '../sheet.js';
import { elasticity, elasticitySource } from '../steel.js';
import {
  round,
  solidArea,
  solidInertia,
  solidInputs,
  solidValidity,
  tubeArea,
  tubeInertia,
  tubeInputs,
  tubeValidity,
} from './round.js';

/**
 * Buckling load of a straight strut loaded along its axis: Euler above the transition slenderness, Johnson's parabola
 * at and below it.
 *
 * @param length between the centres of the pins; SI units throughout, or any consistent ones
 * @param fixity end-condition constant C: 1 for pins at both ends
 */
export function buckling(
  area: number,
  inertia: number,
  length: number,
  fixity: number,
  modulus: number,
  yieldStrength: number,
) {
  const gyration = Math.sqrt(inertia / area);
  const slenderness = length / gyration;
  const transition = Math.sqrt((2 * Math.PI ** 2 * fixity * modulus) / yieldStrength);
  const euler = (fixity * Math.PI ** 2 * modulus * inertia) / length ** 2;
  const johnson = area * (yieldStrength - ((yieldStrength * slenderness) / (2 * Math.PI)) ** 2 / (fixity * modulus));
  return { gyration, slenderness, transition, euler, johnson, critical: slenderness > transition ? euler : johnson };
}

const strutInputs = {
  length: { symbol: 'l', unit: 'mm', says: 'length between the centres of the end joints, at the longest setting' },
  fixity: {
    symbol: 'C',
    unit: '1',
    says: 'end-condition constant: 1 for a joint at each end that swings freely',
    usual: '1',
  },
  modulus: { symbol: 'E', says: 'modulus of elasticity', ...elasticity },
  yieldStrength: { symbol: 'S_y', unit: 'MPa', says: 'yield strength of the body, from its certificate' },
} as const;

const steps = {
  gyration: { symbol: 'k', unit: 'mm', says: 'radius of gyration', tex: '\\sqrt{\\frac{@inertia}{@area}}', step: true },
  slenderness: { symbol: '\\lambda', unit: '1', says: 'slenderness', tex: '\\frac{@length}{@gyration}', step: true },
  transition: {
    symbol: '\\lambda_1',
    unit: '1',
    says: 'slenderness at which Johnson’s parabola meets Euler’s curve',
    tex: '\\sqrt{\\frac{2 \\pi^2 \\cdot @fixity \\cdot @modulus}{@yieldStrength}}',
    step: true,
  },
  euler: {
    symbol: 'P_E',
    unit: 'kN',
    says: 'Euler load, which holds above the transition',
    tex: '\\frac{@fixity \\cdot \\pi^2 \\cdot @modulus \\cdot @inertia}{@length^2}',
    step: true,
  },
  johnson: {
    symbol: 'P_J',
    unit: 'kN',
    says: 'Johnson load, which holds up to the transition',
    tex: '@area \\left[@yieldStrength - \\left(\\frac{@yieldStrength \\cdot @slenderness}{2 \\pi}\\right)^{2} \\frac{1}{@fixity \\cdot @modulus}\\right]',
    step: true,
  },
  critical: {
    symbol: 'P_{cr}',
    unit: 'kN',
    says: 'buckling load',
    tex: '\\begin{cases} @euler & @slenderness > @transition \\\\ @johnson & \\text{otherwise} \\end{cases}',
  },
} as const;

const about = {
  method: 'Above the transition slenderness Euler’s load holds, up to it Johnson’s.',
  assumptions: [
    'Straight, loaded along the line between its end joints. A cranked link needs the sheet for a link with an offset.',
    'No factor of safety is contained; the load case states it.',
  ],
  sources: [
    { document: 'Shigley, Mechanical Engineering Design', clause: 'chapter 4, columns', basis: 'memory' },
    {
      document: 'Buckling load of a centrally loaded column, university design notes',
      edition: '1999',
      clause: 'choice between Euler and Johnson',
      basis: 'quoted',
    },
    elasticitySource,
  ] as readonly Source[],
  remark: 'A joint that swings in one plane only may hold the other plane partly; C = 1 is the safe choice for both.',
} as const;

const strutValidity = [
  {
    says: 'length, modulus and yield strength must be greater than zero',
    holds: (x: Strut) => x.length > 0 && x.modulus > 0 && x.yieldStrength > 0,
  },
  {
    says: 'the end-condition constant lies between 0.25 (one end free) and 4 (both ends built in)',
    holds: (x: Strut) => x.fixity >= 0.25 && x.fixity <= 4,
  },
] as const;

interface Strut {
  length: number;
  fixity: number;
  modulus: number;
  yieldStrength: number;
}

export const rodBuckling = sheet({
  id: 'rod-buckling',
  subject: 'links',
  title: 'Buckling of a solid rod',
  purpose: 'The compression at which a straight round bar with a joint at each end gives way sideways.',
  inputs: { ...solidInputs, ...strutInputs },
  results: { ...solidArea, ...solidInertia, ...steps },
  ...about,
  validity: [solidValidity, ...strutValidity],
  calculate: ({ diameter, length, fixity, modulus, yieldStrength }) => {
    const { area, inertia } = round(diameter);
    return { area, inertia, ...buckling(area, inertia, length, fixity, modulus, yieldStrength) };
  },
  examples: [
    {
      given: { diameter: '37.5 mm', length: '1500 mm', fixity: '1', modulus: '207 GPa', yieldStrength: '500 MPa' },
      gives: { transition: '90.4', critical: '88 kN' },
      source: {
        document: 'Shigley, Mechanical Engineering Design',
        clause: 'chapter 4, design of a round column: 22 kN with a design factor of 4, 1.5 m, pinned',
        basis: 'memory',
      },
    },
    {
      given: { diameter: '19.02 mm', length: '375 mm', fixity: '1', modulus: '207 GPa', yieldStrength: '500 MPa' },
      gives: { critical: '88.0 kN' },
      source: { document: 'Johnson’s parabola worked by hand, regression only', basis: 'derived' },
    },
  ],
});

export const tubeBuckling = sheet({
  id: 'tube-buckling',
  subject: 'links',
  title: 'Buckling of a tube',
  purpose: 'The compression at which a straight round tube with a joint at each end gives way sideways.',
  inputs: { ...tubeInputs, ...strutInputs },
  results: { ...tubeArea, ...tubeInertia, ...steps },
  ...about,
  validity: [
    tubeValidity,
    {
      says: 'a wall thinner than 1/50 of the diameter can buckle locally before the tube does',
      holds: (x) => x.wall >= x.diameter / 50,
    },
    ...strutValidity,
  ],
  calculate: ({ diameter, wall, length, fixity, modulus, yieldStrength }) => {
    const section = round(diameter, wall);
    return { ...section, ...buckling(section.area, section.inertia, length, fixity, modulus, yieldStrength) };
  },
  examples: [
    {
      given: {
        diameter: '32 mm',
        wall: '4 mm',
        length: '620 mm',
        fixity: '1',
        modulus: '207 GPa',
        yieldStrength: '350 MPa',
      },
      gives: { slenderness: '62.0', critical: '102.9 kN' },
      source: { document: 'Johnson’s parabola worked by hand, regression only', basis: 'derived' },
    },
  ],
});
