import { type Source, sheet } from '../sheet.js';

const weighed = {
  weighed: { symbol: 'm_w', unit: 'kg', says: 'mass at the weighing' },
  fuel: { symbol: 'm_f', unit: 'kg', says: 'fuel in the tank at the weighing' },
  persons: { symbol: 'm_p', unit: 'kg', says: 'persons and loose load in the car at the weighing', usual: '0 kg' },
} as const;

const sum: Source = { document: 'Sum of masses', basis: 'derived' };

/** Mass without oil, coolant, fuel and persons. */
export const unladenMass = sheet({
  id: 'unladen-mass',
  subject: 'mass',
  title: 'Unladen mass',
  purpose: 'Mass of the car without oil, coolant, fuel and persons, from a weighing with what was in it.',
  inputs: {
    ...weighed,
    fluids: { symbol: 'm_o', unit: 'kg', says: 'oil and coolant' },
  },
  results: {
    unladen: { symbol: 'm_u', unit: 'kg', says: 'unladen mass', tex: '@weighed - @fuel - @fluids - @persons' },
  },
  sources: [
    sum,
    {
      document: 'Brake assessment manual, New South Wales',
      edition: 'v1.0, October 2013',
      clause: 'appendix 1: what is counted to the test mass',
      basis: 'published',
    },
  ],
  validity: [
    { says: 'masses must not be negative', holds: (x) => Math.min(x.fuel, x.persons, x.fluids) >= 0 },
    { says: 'the car must weigh more than what is in it', holds: (x) => x.weighed > x.fuel + x.fluids + x.persons },
  ],
  calculate: ({ weighed: all, fuel, fluids, persons }) => ({ unladen: all - fuel - fluids - persons }),
  examples: [
    {
      given: { weighed: '1262 kg', fuel: '38 kg', fluids: '12 kg', persons: '0 kg' },
      gives: { unladen: '1212 kg' },
      source: { document: 'Worked by hand', basis: 'derived' },
    },
  ],
});

/** Mass with full tank, a person in each seat and luggage. */
export const ladenMass = sheet({
  id: 'laden-mass',
  subject: 'mass',
  title: 'Laden mass',
  purpose:
    'Mass with a full tank, a person in each seat and the luggage that is stated, from a weighing with less in it.',
  inputs: {
    ...weighed,
    fullFuel: { symbol: 'm_{f,full}', unit: 'kg', says: 'a full tank of fuel' },
    seats: { symbol: 'n', unit: '1', says: 'seats' },
    person: { symbol: 'm_1', unit: 'kg', says: 'one person', usual: '68 kg' },
    luggage: { symbol: 'm_l', unit: 'kg', says: 'luggage', usual: '0 kg' },
  },
  results: {
    kerb: {
      symbol: 'm_k',
      unit: 'kg',
      says: 'mass with full tank and nobody in it',
      tex: '@weighed - @fuel - @persons + @fullFuel',
      step: true,
    },
    laden: { symbol: 'm', unit: 'kg', says: 'laden mass', tex: '@kerb + @seats \\cdot @person + @luggage' },
  },
  sources: [sum, { document: 'MR810, guide on torsion and bending tests, South Australia', basis: 'published' }],
  assumptions: ['68 kg a person is the figure of the guide; it is typed over where another holds.'],
  validity: [
    {
      says: 'masses must not be negative',
      holds: (x) => Math.min(x.fuel, x.persons, x.fullFuel, x.person, x.luggage) >= 0,
    },
    { says: 'the car must weigh more than what is in it', holds: (x) => x.weighed > x.fuel + x.persons },
    { says: 'there must be at least one seat', holds: (x) => x.seats >= 1 },
  ],
  calculate: ({ weighed: all, fuel, persons, fullFuel, seats, person, luggage }) => {
    const kerb = all - fuel - persons + fullFuel;
    return { kerb, laden: kerb + seats * person + luggage };
  },
  examples: [
    {
      given: { weighed: '1262 kg', fuel: '38 kg', fullFuel: '41 kg', seats: '5', luggage: '50 kg' },
      gives: { kerb: '1265 kg', laden: '1655 kg' },
      source: { document: 'Worked by hand', basis: 'derived' },
    },
  ],
});
