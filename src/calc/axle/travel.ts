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
  travelInputs,
  travelValidity,
} from './parts.js';

/** Pinion angle and axle path from ride height to both ends of travel. */
export const axleTravel = sheet({
  id: 'axle-travel',
  subject: 'axle',
  title: 'Pinion angle and axle path through travel',
  purpose: 'How the slope of the pinion and the place of the axle change from ride height to full bump and full droop.',
  inputs: {
    ...linkInputs,
    ...centreInput,
    pinionSlope: { symbol: '\\theta_p', unit: 'deg', says: 'slope of the pinion at ride height, nose up positive' },
    ...travelInputs,
  },
  results: {
    bumpTurn: {
      symbol: '\\Delta\\theta_b',
      unit: 'deg',
      says: 'turn of the axle at full bump, nose up positive',
      step: true,
    },
    droopTurn: {
      symbol: '\\Delta\\theta_r',
      unit: 'deg',
      says: 'turn of the axle at full droop, nose up positive',
      step: true,
    },
    bumpPinion: {
      symbol: '\\theta_{p,b}',
      unit: 'deg',
      says: 'slope of the pinion at full bump, nose up positive',
      tex: '@pinionSlope + @bumpTurn',
    },
    droopPinion: {
      symbol: '\\theta_{p,r}',
      unit: 'deg',
      says: 'slope of the pinion at full droop, nose up positive',
      tex: '@pinionSlope + @droopTurn',
    },
    bumpShift: {
      symbol: 'x_b',
      unit: 'mm',
      says: 'movement of the axle centre along the car at full bump, forward positive',
    },
    droopShift: {
      symbol: 'x_r',
      unit: 'mm',
      says: 'movement of the axle centre along the car at full droop, forward positive',
    },
  },
  method: closureMethod,
  assumptions: linkAssumptions,
  sources: [closureSource],
  validity: [linkValidity, travelValidity],
  calculate: (x) => {
    const links = linksOf(x);
    const [up, down] = [axlePosition(links, x.bump), axlePosition(links, -x.droop)];
    return {
      bumpTurn: up.rotation,
      droopTurn: down.rotation,
      bumpPinion: x.pinionSlope + up.rotation,
      droopPinion: x.pinionSlope + down.rotation,
      bumpShift: up.shift,
      droopShift: down.shift,
    };
  },
  remark:
    'A pinion that points well down at ride height (about 5° nose down) is one the trade rejects: common practice, no source.',
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
        pinionSlope: '3.0 deg',
        bump: '50 mm',
        droop: '50 mm',
      },
      gives: {
        bumpTurn: '-2.030 deg',
        droopTurn: '1.612 deg',
        bumpShift: '2.295 mm',
        droopShift: '2.623 mm',
        bumpPinion: '0.970 deg',
      },
      source: {
        document: 'Worked independently of this program, regression only: no published numbers were found',
        basis: 'derived',
      },
    },
  ],
});
