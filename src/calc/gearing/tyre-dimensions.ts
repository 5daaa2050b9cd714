import { sheet } from '../sheet.js';

const MM = 1e-3;
const INCH = 25.4;

/** Overall diameter and rolling circumference from the size on the sidewall. */
export const tyreDimensions = sheet({
  id: 'tyre-dimensions',
  subject: 'gearing',
  title: 'Tyre dimensions from the size designation',
  purpose:
    'Design overall diameter of a tyre of metric size, by the rounding rule of the tyre standards, and its rolling circumference.',
  inputs: {
    width: { symbol: 'S', unit: 'mm', says: 'nominal section width, the first number of the size' },
    aspect: {
      symbol: 'R_a',
      unit: '%',
      says: 'nominal aspect ratio, the second number of the size (65 % in 205/65R15)',
    },
    rim: { symbol: 'd_c', unit: 'in', says: 'rim diameter code (15 in for 205/65R15)' },
    rolling: {
      symbol: 'f',
      unit: '1',
      says: 'rolling circumference over overall diameter; 3.05 for radial tyres',
      usual: '3.05',
    },
  },
  results: {
    rimDiameter: {
      symbol: 'd',
      unit: 'mm',
      says: 'nominal rim diameter of the code, rounded to whole millimetres',
      step: true,
    },
    sectionHeight: {
      symbol: 'H',
      unit: 'mm',
      says: 'section height, rounded to whole millimetres',
      tex: '\\operatorname{round}(@width \\cdot @aspect)',
      step: true,
    },
    overallDiameter: {
      symbol: 'D',
      unit: 'mm',
      says: 'design overall diameter',
      tex: '@rimDiameter + 2 @sectionHeight',
    },
    circumference: {
      symbol: 'C_R',
      unit: 'mm',
      says: 'rolling circumference',
      tex: '@rolling \\cdot @overallDiameter',
    },
  },
  method:
    'Rim code and section height are rounded to whole millimetres before they are added, as the standards do. Unrounded values differ by up to 1 mm.',
  assumptions: [
    'A tyre on the road differs from its design size by wear, pressure, load and its maker. Measure where a millimetre matters.',
  ],
  sources: [
    { document: 'UN Regulation No. 30', clause: '6.1.2', basis: 'memory' },
    { document: 'ETRTO Standards Manual', clause: 'rolling circumference 3.05 D of radial tyres', basis: 'memory' },
  ],
  validity: [
    { says: 'the section width must be from 100 mm to 400 mm', holds: (x) => x.width >= 0.1 && x.width <= 0.4 },
    { says: 'the aspect ratio must be from 20 % to 100 %', holds: (x) => x.aspect >= 0.2 && x.aspect <= 1 },
    {
      says: 'the rim code must be a whole number from 10 to 30',
      holds: (x) => Math.abs(code(x.rim) * INCH * MM - x.rim) < 1e-9 && code(x.rim) >= 10 && code(x.rim) <= 30,
    },
    { says: 'the rolling factor must be from 2.9 to 3.15', holds: (x) => x.rolling >= 2.9 && x.rolling <= 3.15 },
  ],
  calculate: ({ width, aspect, rim, rolling }) => {
    const rimDiameter = Math.round(code(rim) * INCH) * MM;
    const sectionHeight = roundHalfUp((width * aspect) / MM) * MM;
    const overallDiameter = rimDiameter + 2 * sectionHeight;
    return { rimDiameter, sectionHeight, overallDiameter, circumference: rolling * overallDiameter };
  },
  examples: [
    {
      given: { width: '205 mm', aspect: '55 %', rim: '16 in', rolling: '3.05' },
      gives: { overallDiameter: '632 mm' },
      source: { document: 'ETRTO Standards Manual, table of car tyres', basis: 'memory' },
    },
    {
      given: { width: '235 mm', aspect: '75 %', rim: '15 in', rolling: '3.05' },
      gives: { overallDiameter: '733 mm' },
      source: { document: 'ETRTO Standards Manual, table of car tyres', basis: 'memory' },
    },
  ],
});

function code(rim: number): number {
  return Math.round(rim / MM / INCH);
}

/** Halves go up; the tiny lift takes binary fractions such as 112.49999999999999 for 112.5. */
function roundHalfUp(x: number): number {
  return Math.floor(x + 0.5 + 1e-9);
}
