import { sheet } from '../sheet.js';
import { instantCentre } from './linkage.js';
import { linkAssumptions, linkInputs, linksOf, linkValidity } from './parts.js';

/** Instant centre and anti-squat at ride height. */
export const axleSideView = sheet({
  id: 'axle-side-view',
  subject: 'axle',
  title: 'Instant centre and anti-squat of a live axle',
  purpose:
    'The point about which the axle turns in side view, the share of squat that the arms hold up under power, and how fast the pinion turns with travel.',
  inputs: {
    ...linkInputs,
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
    massHeight: { symbol: 'h', unit: 'mm', says: 'height of the centre of mass above the ground' },
  },
  results: {
    divisor: {
      symbol: 'D_0',
      unit: 'mm2',
      says: 'divisor of both coordinates; zero for parallel arms',
      tex: '(@lowerAxleX - @lowerBodyX)(@upperAxleZ - @upperBodyZ) - (@lowerAxleZ - @lowerBodyZ)(@upperAxleX - @upperBodyX)',
      step: true,
    },
    centreX: {
      symbol: 'x_{IC}',
      unit: 'mm',
      says: 'instant centre, forward of the axle centre',
      tex: '\\frac{(@lowerAxleX @lowerBodyZ - @lowerAxleZ @lowerBodyX)(@upperAxleX - @upperBodyX) - (@lowerAxleX - @lowerBodyX)(@upperAxleX @upperBodyZ - @upperAxleZ @upperBodyX)}{@divisor}',
    },
    centreZ: {
      symbol: 'z_{IC}',
      unit: 'mm',
      says: 'instant centre, above the ground',
      tex: '\\frac{(@lowerAxleX @lowerBodyZ - @lowerAxleZ @lowerBodyX)(@upperAxleZ - @upperBodyZ) - (@lowerAxleZ - @lowerBodyZ)(@upperAxleX @upperBodyZ - @upperAxleZ @upperBodyX)}{@divisor}',
    },
    antiSquat: {
      symbol: 'AS',
      unit: '%',
      says: 'anti-squat',
      tex: '\\frac{@centreZ / @centreX}{@massHeight / @wheelbase}',
    },
    rate: {
      symbol: "\\theta'",
      unit: 'deg/mm',
      says: 'turn of the pinion per travel up, nose up positive',
      tex: '-\\frac{1}{@centreX}',
    },
  },
  assumptions: [
    ...linkAssumptions,
    'The drive torque is reacted in the axle housing, as in a live axle with a shaft.',
    'The rear contact patch lies under the axle centre.',
  ],
  sources: [
    {
      document: 'Gillespie, Fundamentals of Vehicle Dynamics',
      clause: 'chapter 7, anti-squat of a solid drive axle',
      basis: 'memory',
    },
    {
      document: 'Page on adjustments of four-link and four-bar axles',
      clause: 'line of 100 % anti-squat: height of mass over wheelbase',
      basis: 'quoted',
    },
    { document: 'Crossing of two lines; turn about the instant centre', basis: 'derived' },
  ],
  validity: [
    linkValidity,
    {
      says: 'wheelbase and height of the centre of mass must be greater than zero',
      holds: (x) => x.wheelbase > 0 && x.massHeight > 0,
    },
  ],
  calculate: (x) => {
    const centre = instantCentre(linksOf(x));
    return {
      divisor:
        (x.lowerAxleX - x.lowerBodyX) * (x.upperAxleZ - x.upperBodyZ) -
        (x.lowerAxleZ - x.lowerBodyZ) * (x.upperAxleX - x.upperBodyX),
      centreX: centre.x,
      centreZ: centre.z,
      antiSquat: (centre.z / centre.x) * (x.wheelbase / x.massHeight),
      rate: -1 / centre.x,
    };
  },
  examples: [
    {
      given: {
        lowerAxleX: '0 mm',
        lowerAxleZ: '220 mm',
        lowerBodyX: '600 mm',
        lowerBodyZ: '260 mm',
        upperAxleX: '30 mm',
        upperAxleZ: '480 mm',
        upperBodyX: '430 mm',
        upperBodyZ: '440 mm',
        wheelbase: '2600 mm',
        massHeight: '560 mm',
      },
      gives: { centreX: '1578.0 mm', centreZ: '325.2 mm', antiSquat: '95.68 %', rate: '-0.03631 deg/mm' },
      source: { document: 'Worked by hand, regression only: no published numbers were found', basis: 'derived' },
    },
  ],
});
