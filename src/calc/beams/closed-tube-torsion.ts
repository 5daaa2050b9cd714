import { sheet } from '../sheet.js';
import { elasticitySource, shearModulus } from '../steel.js';

/** A closed tube under torque: shear flow, stress and twist. */
export const closedTubeTorsion = sheet({
  id: 'closed-tube-torsion',
  subject: 'beams',
  title: 'Torsion of a closed tube',
  purpose: 'Shear flow and stress in the wall of a closed tube or box, and its twist over a length.',
  inputs: {
    torque: { symbol: 'T', unit: 'N·m', says: 'torque' },
    length: { symbol: 'L', unit: 'mm', says: 'length that is twisted' },
    enclosed: { symbol: 'A_m', unit: 'mm²', says: 'area inside the middle line of the wall' },
    wall: { symbol: 't', unit: 'mm', says: 'thinnest wall' },
    torsionConstant: { symbol: 'J', unit: 'mm⁴', says: 'torsion constant' },
    shearModulus: { symbol: 'G', says: 'shear modulus', ...shearModulus },
  },
  results: {
    flow: {
      symbol: 'q',
      unit: 'N/mm',
      says: 'shear flow, the same all round: what a seam has to carry for each length',
      tex: '\\frac{@torque}{2 \\cdot @enclosed}',
    },
    stress: { symbol: '\\tau', unit: 'MPa', says: 'shear stress in the thinnest wall', tex: '\\frac{@flow}{@wall}' },
    twist: {
      symbol: '\\theta',
      unit: 'deg',
      says: 'twist over the length',
      tex: '\\frac{@torque \\cdot @length}{@shearModulus \\cdot @torsionConstant}',
    },
    stiffness: {
      symbol: 'K',
      unit: 'N·m/deg',
      says: 'torque for each degree of twist',
      tex: '\\frac{@shearModulus \\cdot @torsionConstant}{@length}',
    },
  },
  assumptions: [
    'Thin wall beside the width; closed along its whole length, seams included; ends free to warp. An opening or an open seam makes it many times softer.',
  ],
  sources: [
    {
      document: 'Bredt’s formulas, Roark’s Formulas for Stress and Strain',
      clause: 'torsion of thin-walled tubes',
      basis: 'memory',
    },
    elasticitySource,
  ],
  validity: [
    {
      says: 'torque, length, area, wall, torsion constant and G must be greater than zero',
      holds: (x) => Object.values(x).every((n) => n > 0),
    },
  ],
  calculate: (x) => {
    const flow = x.torque / (2 * x.enclosed);
    return {
      flow,
      stress: flow / x.wall,
      twist: (x.torque * x.length) / (x.shearModulus * x.torsionConstant),
      stiffness: (x.shearModulus * x.torsionConstant) / x.length,
    };
  },
  examples: [
    {
      given: {
        torque: '500 N·m',
        length: '1000 mm',
        enclosed: '2304 mm²',
        wall: '2 mm',
        torsionConstant: '221184 mm⁴',
        shearModulus: '80 GPa',
      },
      gives: { flow: '108.5 N/mm', stress: '54.25 MPa', twist: '1.6190 deg', stiffness: '308.83 N·m/deg' },
      source: {
        document: 'Square box 50 × 50 × 2 with sharp corners, worked by hand; regression only',
        basis: 'derived',
      },
    },
  ],
});
