import { sheet } from '../sheet.js';

/** Swept volume of the engine. */
export const engineCapacity = sheet({
  id: 'engine-capacity',
  subject: 'engine',
  title: 'Engine capacity',
  purpose: 'Swept volume of all cylinders from bore and stroke, as the capacity rule and the identity page need it.',
  inputs: {
    bore: { symbol: 'B', unit: 'mm', says: 'bore as measured, after any reboring' },
    stroke: { symbol: 'S', unit: 'mm', says: 'stroke of the crankshaft fitted' },
    cylinders: { symbol: 'n', unit: '1', says: 'number of cylinders' },
  },
  results: {
    perCylinder: {
      symbol: 'V_{cyl}',
      unit: 'cm3',
      says: 'swept volume of one cylinder',
      tex: '\\frac{\\pi}{4} \\cdot @bore^2 \\cdot @stroke',
      step: true,
    },
    capacity: { symbol: 'V', unit: 'cm3', says: 'engine capacity', tex: '@perCylinder \\cdot @cylinders' },
  },
  assumptions: [
    'All cylinders have the same bore and stroke.',
    'Reciprocating pistons; rotary engines follow a rule of equivalence of their own.',
  ],
  sources: [{ document: 'Volume of a cylinder', basis: 'derived' }],
  validity: [
    { says: 'bore and stroke must be greater than zero', holds: (x) => x.bore > 0 && x.stroke > 0 },
    {
      says: 'the number of cylinders must be a whole number from 1 to 16',
      holds: (x) => Number.isInteger(x.cylinders) && x.cylinders >= 1 && x.cylinders <= 16,
    },
  ],
  calculate: ({ bore, stroke, cylinders }) => {
    const perCylinder = (Math.PI / 4) * bore ** 2 * stroke;
    return { perCylinder, capacity: perCylinder * cylinders };
  },
  examples: [
    {
      given: { bore: '86.0 mm', stroke: '86.0 mm', cylinders: '4' },
      gives: { perCylinder: '499.6 cm3', capacity: '1998.2 cm3' },
      source: { document: 'Volume of a cylinder, worked by hand', basis: 'derived' },
    },
  ],
});

/** Capacity per mass of the original vehicle: the number that a code's table of factors is compared with. */
export const capacityFactor = sheet({
  id: 'capacity-factor',
  subject: 'engine',
  title: 'Engine capacity against original mass',
  purpose:
    'Capacity for each kilogram of the original vehicle, the number that a table of capacity factors bounds. The bound itself is a limit of the code, not of this sheet.',
  inputs: {
    capacity: { symbol: 'V', unit: 'cm3', says: 'capacity of the engine fitted' },
    originalMass: {
      symbol: 'm_o',
      unit: 'kg',
      says: 'mass of the original vehicle as the code defines it (tare of the unmodified model)',
    },
  },
  results: {
    factor: {
      symbol: 'q',
      unit: 'cm3/kg',
      says: 'capacity for each kilogram',
      tex: '\\frac{@capacity}{@originalMass}',
    },
  },
  sources: [
    {
      document: 'National Code of Practice for Light Vehicle Construction and Modification (VSB 14), Section LA',
      edition: 'version 2.0',
      clause: '2.13, Table LA1',
      basis: 'quoted',
    },
  ],
  validity: [
    { says: 'capacity and mass must be greater than zero', holds: (x) => x.capacity > 0 && x.originalMass > 0 },
  ],
  calculate: ({ capacity, originalMass }) => ({ factor: capacity / originalMass }),
  remark: 'A kerb mass from a brochure is not a tare mass. State which it is and where it comes from.',
  examples: [
    {
      given: { capacity: '2964.5 cm3', originalMass: '1078 kg' },
      gives: { factor: '2.750 cm3/kg' },
      source: {
        document: 'VSB 14 clause 2.13 worked in a vehicle club’s discussion (1078 kg × 2.75 = 2964.5 cm3)',
        basis: 'quoted',
      },
    },
  ],
});
