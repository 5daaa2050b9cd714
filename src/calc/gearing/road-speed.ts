import { sheet } from '../sheet.js';

/** Road speed from engine speed and gearing. */
export const roadSpeed = sheet({
  id: 'road-speed',
  subject: 'gearing',
  title: 'Road speed from engine speed',
  purpose:
    'Road speed in one gear at one engine speed, without slip of tyre, clutch or converter; solved backwards it gives the engine speed at a road speed.',
  inputs: {
    engineSpeed: { symbol: 'n', unit: 'rpm', says: 'engine speed' },
    gear: { symbol: 'i_G', unit: '1', says: 'ratio of the gear, engine turns for one turn of the tailshaft' },
    finalDrive: { symbol: 'i_A', unit: '1', says: 'ratio of the final drive' },
    circumference: {
      symbol: 'C_R',
      unit: 'mm',
      says: 'rolling circumference of the driven tyres, the way rolled in one turn',
    },
  },
  results: {
    wheelSpeed: {
      symbol: 'n_W',
      unit: 'rpm',
      says: 'speed of the driven wheels',
      tex: '\\frac{@engineSpeed}{@gear \\cdot @finalDrive}',
      step: true,
    },
    speed: {
      symbol: 'v',
      unit: 'km/h',
      says: 'road speed',
      tex: '\\frac{@wheelSpeed \\cdot @circumference}{1 \\text{ rev}}',
    },
  },
  method: 'In one turn (rev) the wheel rolls one circumference.',
  assumptions: ['No slip.'],
  sources: [{ document: 'Kinematics of a rolling wheel', basis: 'derived' }],
  validity: [
    { says: 'engine speed must not be negative', holds: (x) => x.engineSpeed >= 0 },
    {
      says: 'ratios and circumference must be greater than zero',
      holds: (x) => x.gear > 0 && x.finalDrive > 0 && x.circumference > 0,
    },
  ],
  calculate: ({ engineSpeed, gear, finalDrive, circumference }) => {
    const wheelSpeed = engineSpeed / (gear * finalDrive);
    return { wheelSpeed, speed: (wheelSpeed / (2 * Math.PI)) * circumference };
  },
  examples: [
    {
      given: { engineSpeed: '2200 rpm', gear: '0.70', finalDrive: '3.73', circumference: '87.965 in' },
      gives: { speed: '70 mph' },
      source: {
        document: 'Equations that may help, light-truck owners’ page 73-87.com',
        clause: 'example 1, tyre radius 14 in, fourth gear',
        basis: 'published',
      },
    },
    {
      given: { engineSpeed: '2200 rpm', gear: '1', finalDrive: '3.73', circumference: '87.965 in' },
      gives: { speed: '49 mph' },
      source: {
        document: 'Equations that may help, light-truck owners’ page 73-87.com',
        clause: 'example 1, tyre radius 14 in, third gear',
        basis: 'published',
      },
    },
  ],
});
