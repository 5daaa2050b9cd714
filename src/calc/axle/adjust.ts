import { sheet } from '../sheet.js';
import { axlePosition } from './linkage.js';
import {
  centreInput,
  closureMethod,
  closureSource,
  linkAssumptions,
  linkInputs,
  linksOf,
  linkValidity,
} from './parts.js';

/** What longer or shorter arms do to the pinion at ride height. */
export const linkLengthChange = sheet({
  id: 'link-length-change',
  subject: 'axle',
  title: 'Effect of a change of link length on the pinion',
  purpose:
    'How far the pinion and the axle move at ride height when the arms are made longer or shorter, and what one turn of an adjuster does.',
  inputs: {
    ...linkInputs,
    ...centreInput,
    lowerChange: {
      symbol: '\\Delta l_l',
      unit: 'mm',
      says: 'change of length of both lower arms, longer positive',
      usual: '0 mm',
    },
    upperChange: {
      symbol: '\\Delta l_u',
      unit: 'mm',
      says: 'change of length of both upper arms, longer positive',
      usual: '0 mm',
    },
    perTurn: { symbol: '\\Delta l_1', unit: 'mm', says: 'change of length for one turn of the adjuster' },
  },
  results: {
    turn: { symbol: '\\Delta\\theta', unit: 'deg', says: 'change of the pinion’s slope, nose up positive' },
    shift: { symbol: '\\Delta x', unit: 'mm', says: 'movement of the axle centre, forward positive' },
    lowerTurn: {
      symbol: '\\Delta\\theta_l',
      unit: 'deg',
      says: 'change of the pinion’s slope for one turn longer of both lower adjusters',
    },
    upperTurn: {
      symbol: '\\Delta\\theta_u',
      unit: 'deg',
      says: 'change of the pinion’s slope for one turn longer of both upper adjusters',
    },
    lowerTurns: {
      symbol: 'N_l',
      unit: '1',
      says: 'turns of the lower adjusters',
      tex: '\\frac{@lowerChange}{@perTurn}',
    },
    upperTurns: {
      symbol: 'N_u',
      unit: '1',
      says: 'turns of the upper adjusters',
      tex: '\\frac{@upperChange}{@perTurn}',
    },
  },
  method: closureMethod,
  assumptions: [
    ...linkAssumptions,
    'Left and right arms are changed alike; otherwise the axle steers. The ride height is set again afterwards.',
  ],
  sources: [closureSource],
  validity: [
    linkValidity,
    { says: 'the change of length per turn must be greater than zero', holds: (x) => x.perTurn > 0 },
  ],
  calculate: (x) => {
    const links = linksOf(x);
    const { rotation, shift } = axlePosition(links, 0, { lower: x.lowerChange, upper: x.upperChange });
    return {
      turn: rotation,
      shift,
      lowerTurn: axlePosition(links, 0, { lower: x.perTurn }).rotation,
      upperTurn: axlePosition(links, 0, { upper: x.perTurn }).rotation,
      lowerTurns: x.lowerChange / x.perTurn,
      upperTurns: x.upperChange / x.perTurn,
    };
  },
  remark:
    'Longer upper arms tip the nose of the pinion up, longer lower arms tip it down, where the arms run forward from the axle.',
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
        centreZ: '320 mm',
        lowerChange: '3 mm',
        perTurn: '3 mm',
      },
      gives: { turn: '-0.6554 deg', shift: '-1.863 mm', lowerTurn: '-0.6554 deg', lowerTurns: '1.0' },
      source: {
        document: 'Worked independently of this program, regression only: no published numbers were found',
        basis: 'derived',
      },
    },
  ],
});
