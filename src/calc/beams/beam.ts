import { sheet } from '../sheet.js';
import { elasticity, elasticitySource } from '../steel.js';

const member = {
  force: { symbol: 'F', unit: 'kN', says: 'load' },
  secondMoment: { symbol: 'I', unit: 'mm⁴', says: 'second moment of area about the axis of bending' },
  modulus: { symbol: 'Z', unit: 'mm³', says: 'elastic modulus about the axis of bending' },
  elasticity: { symbol: 'E', says: 'modulus of elasticity', ...elasticity },
} as const;
const stress = {
  symbol: '\\sigma',
  unit: 'MPa',
  says: 'greatest bending stress',
  tex: '\\frac{@moment}{@modulus}',
} as const;
const sources = [
  { document: 'Bernoulli beam; Roark’s Formulas for Stress and Strain', clause: 'table of beams', basis: 'memory' },
  elasticitySource,
] as const;
const small =
  'Small deflections; the beam does not tip sideways; shear deflection is left out, which matters when the span is under ten depths.';
const positive = {
  says: 'load, lengths, second moment, modulus and E must be greater than zero',
  holds: (x: Readonly<Record<string, number>>) => Object.values(x).every((n) => n > 0),
};

/** A member pinned at both ends with a load in the middle. */
export const beamCentreLoad = sheet({
  id: 'beam-centre-load',
  subject: 'beams',
  title: 'Member on two supports, load in the middle',
  purpose:
    'Bending moment, stress and deflection of a crossmember or bracket that rests on two supports and is loaded in the middle.',
  inputs: { ...member, span: { symbol: 'L', unit: 'mm', says: 'distance between the supports' } },
  results: {
    moment: {
      symbol: 'M',
      unit: 'N·m',
      says: 'greatest bending moment, under the load',
      tex: '\\frac{@force \\cdot @span}{4}',
    },
    stress,
    deflection: {
      symbol: '\\delta',
      unit: 'mm',
      says: 'deflection under the load',
      tex: '\\frac{@force \\cdot @span^3}{48 \\cdot @elasticity \\cdot @secondMoment}',
    },
  },
  assumptions: [
    'Ends free to turn, which is on the safe side for moment and deflection at mid-span: welded ends hold more, but load the rails.',
    small,
  ],
  sources,
  validity: [positive],
  calculate: ({ force, span, secondMoment: I, modulus: Z, elasticity: E }) => {
    const moment = (force * span) / 4;
    return { moment, stress: moment / Z, deflection: (force * span ** 3) / (48 * E * I) };
  },
  examples: [
    {
      given: {
        force: '2000 N',
        span: '1000 mm',
        secondMoment: '27.04 cm⁴',
        modulus: '10.82 cm³',
        elasticity: '210 GPa',
      },
      gives: { moment: '500 N·m', deflection: '0.7338 mm', stress: '46.21 MPa' },
      source: { document: 'Worked from the formulas with EN 10219 50 × 50 × 5; regression only', basis: 'derived' },
    },
  ],
});

/** The same with the load anywhere between the supports. */
export const beamLoadAnywhere = sheet({
  id: 'beam-load-anywhere',
  subject: 'beams',
  title: 'Member on two supports, load anywhere between',
  purpose:
    'Support forces, bending moment, stress and deflection under the load, for a gearbox mount or seat foot that does not sit in the middle.',
  inputs: {
    ...member,
    left: { symbol: 'a', unit: 'mm', says: 'distance of the load from the left support' },
    right: { symbol: 'b', unit: 'mm', says: 'distance of the load from the right support' },
  },
  results: {
    leftForce: {
      symbol: 'R_a',
      unit: 'kN',
      says: 'force on the left support',
      tex: '\\frac{@force \\cdot @right}{@left + @right}',
    },
    rightForce: {
      symbol: 'R_b',
      unit: 'kN',
      says: 'force on the right support',
      tex: '\\frac{@force \\cdot @left}{@left + @right}',
    },
    moment: {
      symbol: 'M',
      unit: 'N·m',
      says: 'greatest bending moment, under the load',
      tex: '\\frac{@force \\cdot @left \\cdot @right}{@left + @right}',
    },
    stress,
    deflection: {
      symbol: '\\delta',
      unit: 'mm',
      says: 'deflection under the load',
      tex: '\\frac{@force \\cdot @left^2 \\cdot @right^2}{3 \\cdot @elasticity \\cdot @secondMoment \\cdot (@left + @right)}',
    },
  },
  assumptions: ['Ends free to turn.', small],
  sources,
  validity: [positive],
  calculate: ({ force, left: a, right: b, secondMoment: I, modulus: Z, elasticity: E }) => {
    const moment = (force * a * b) / (a + b);
    return {
      leftForce: (force * b) / (a + b),
      rightForce: (force * a) / (a + b),
      moment,
      stress: moment / Z,
      deflection: (force * a ** 2 * b ** 2) / (3 * E * I * (a + b)),
    };
  },
  examples: [
    {
      given: {
        force: '2000 N',
        left: '250 mm',
        right: '750 mm',
        secondMoment: '27.04 cm⁴',
        modulus: '10.82 cm³',
        elasticity: '210 GPa',
      },
      gives: {
        leftForce: '1500 N',
        rightForce: '500 N',
        moment: '375 N·m',
        stress: '34.66 MPa',
        deflection: '0.4127 mm',
      },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
  ],
});

/** A bracket held at one end. */
export const cantilever = sheet({
  id: 'beam-cantilever',
  subject: 'beams',
  title: 'Bracket held at one end, load at the other',
  purpose: 'Bending moment at the root, stress and deflection of a bracket that stands out from its weld or bolts.',
  inputs: { ...member, reach: { symbol: 'L', unit: 'mm', says: 'distance of the load from the root' } },
  results: {
    moment: { symbol: 'M', unit: 'N·m', says: 'bending moment at the root', tex: '@force \\cdot @reach' },
    stress,
    deflection: {
      symbol: '\\delta',
      unit: 'mm',
      says: 'deflection under the load',
      tex: '\\frac{@force \\cdot @reach^3}{3 \\cdot @elasticity \\cdot @secondMoment}',
    },
  },
  assumptions: [
    'The root does not turn. Thin sheet at the root gives way, and the tip then moves much further.',
    small,
  ],
  sources,
  validity: [positive],
  calculate: ({ force, reach, secondMoment: I, modulus: Z, elasticity: E }) => {
    const moment = force * reach;
    return { moment, stress: moment / Z, deflection: (force * reach ** 3) / (3 * E * I) };
  },
  examples: [
    {
      given: {
        force: '1000 N',
        reach: '200 mm',
        secondMoment: '11.30 cm⁴',
        modulus: '4.52 cm³',
        elasticity: '210 GPa',
      },
      gives: { moment: '200 N·m', stress: '44.25 MPa', deflection: '0.1124 mm' },
      source: { document: 'Worked from the formulas with EN 10219 50 × 30 × 2.5; regression only', basis: 'derived' },
    },
  ],
});
