import { z } from 'zod';
import { categories } from '../../calc/welds/as4100.js';
import { choice, list, onDay, quantity, slopeAbout, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { makerFigures } from './parts/maker-window.js';
import { workedField } from './parts/stop.js';
import { couponsField } from './parts/thin-weld.js';
import { torquesField } from './parts/torques.js';
import { joinedFields } from './parts/weld.js';

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });
const sideView =
  'car level at ride height; plumb line from the centre of the bolt to the floor, tape along the floor from the axle’s own line, and straight up';

const point = (says: string) =>
  block(
    {
      forward: quantity('mm', `${says}: forward of the axle centre, behind it with a minus`, {
        measuredAs: 'length',
        range: 'signed',
        how: sideView,
        typical: '600 mm',
        usual: [0, 3500],
      }),
      height: quantity('mm', `${says}: above the ground`, { how: sideView, typical: '260 mm' }),
    },
    says,
  );
const arm = (which: string) =>
  block(
    { axle: point(`${which} arm, bolt at the axle`), body: point(`${which} arm, bolt at the body`) },
    `the ${which} arms, in side view`,
  );

const axle = (state: string) =>
  block(
    {
      ratio: quantity('1', `final drive ratio ${state}`, {
        measuredAs: 'paper',
        how: 'teeth of ring gear and pinion, or the tag; check: turns of the shaft for ten turns of both wheels',
        typical: '41:11',
        usual: [2, 8],
      }),
      faces: quantity('mm', `width between the faces on which the wheels sit ${state}`, {
        how: 'straightedges on both faces, tape between them ahead of the axle and behind it, mean',
        typical: '1362 mm',
        usual: [1000, 2000],
      }),
      track: quantity('mm', `track ${state}, tread centre to tread centre`, {
        how: 'unladen on level ground, car rolled; tape at hub height ahead of the axle and behind it, mean, three times',
        typical: '1408 mm',
        usual: [1000, 2000],
      }),
      pinion: slopeAbout('pitch', `slope of the pinion at ride height ${state}`, {
        how: 'inclinometer on the machined face of the flange, zeroed on the level floor; three times',
        typical: '3.6 deg nose up',
      }),
      'diagonal-left': quantity('mm', `left fixed point of the body to the right end of the axle ${state}`, {
        how: 'tape or trammel from a hole that the maker uses as a datum; the same hole of both sides',
        typical: '1846 mm',
      }),
      'diagonal-right': quantity('mm', `right fixed point of the body to the left end of the axle ${state}`, {
        typical: '1845 mm',
      }),
      'side-left': quantity('mm', `left fixed point of the body to the left end of the axle ${state}`, {
        how: 'tape or trammel, parallel to the centre line',
        typical: '1120 mm',
      }),
      'side-right': quantity('mm', `right fixed point of the body to the right end of the axle ${state}`, {
        typical: '1121 mm',
      }),
      'edge-left': quantity('mm', `left wheel face to a plumb line from the left guard ${state}`, {
        how: 'plumb line from the edge of the guard, at hub height',
        typical: '62 mm',
        usual: [6.5, 400],
      }),
      'edge-right': quantity('mm', `right wheel face to a plumb line from the right guard ${state}`, {
        typical: '61 mm',
        usual: [6.5, 400],
      }),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    },
    `the axle ${state}`,
  );

export const shape = {
  axle: text('what axle was fitted, and out of what', 'invented: live axle of a larger saloon, cut for width').meta({
    recordedFor: 'whoever compares the axle with its papers',
  }),
  number: text('number or tag as found on it').meta({
    recordedFor: 'whoever compares it with the tag on the axle',
  }),
  differential: choice({ open: 'open', 'limited-slip': 'limited slip', locked: 'locked or spool' }, 'differential'),
  was: axle('as it came'),
  planned: axle('as planned'),
  now: axle('as fitted'),
  'maker-square': makerFigures('mm', 'difference between left and right', [0, 25]),
  'located-by': choice(
    { links: 'lower and upper links', leaf: 'leaf springs', other: 'otherwise' },
    'what locates the axle',
  ),
  lower: arm('lower'),
  upper: arm('upper'),
  'centre-height': quantity('mm', 'axle centre above the ground', {
    how: 'tape from the floor to the middle of the hub',
    typical: '305 mm',
  }),
  bump: quantity('mm', 'travel of the axle up from ride height, to the stop', {
    how: 'springs out, axle raised level on jacks until the stop is pressed',
    typical: '82 mm',
  }),
  droop: quantity('mm', 'travel of the axle down from ride height, to its limit', {
    how: 'axle lowered until damper, strap or hose ends it',
    typical: '90 mm',
  }),
  'gearbox-joint': point('joint at the gearbox'),
  'pinion-joint': point('joint at the pinion'),
  gearbox: slopeAbout('pitch', 'slope of the gearbox output', {
    how: 'inclinometer on a machined face',
    typical: '3.4 deg down to the rear',
  }),
  'own-offset': quantity('mm', 'offset of the wheels that the axle came with', {
    measuredAs: 'paper',
    range: 'signed',
    how: 'as marked on them, or by straightedge and depth gauge',
    typical: '38 mm',
    usual: [0, 150],
  }),
  'fitted-offset': quantity('mm', 'offset of the wheels fitted', {
    measuredAs: 'paper',
    range: 'signed',
    typical: '30 mm',
    usual: [0, 150],
  }),
  spacer: quantity('mm', 'spacer at each wheel', { measuredAs: 'thickness', typical: '0 mm', usual: [0, 60] }),
  welded: yesNo('was anything welded to the housing'),
  welds: list(
    {
      leg: quantity('mm', 'leg of the fillet, the shorter one', {
        places: 'smallest',
        measuredAs: 'weld-leg',
        how: 'fillet gauge, the smallest of three places',
        typical: '5 mm',
        usual: [1, 20],
      }),
      length: quantity('mm', 'length of full-size weld without its ends', {
        how: 'tape along the weld',
        typical: '160 mm',
        usual: [17, 1500],
      }),
      thickness: quantity('mm', 'thickness of the thinner part joined', {
        places: 'smallest',
        how: 'caliper before welding',
        typical: '5.0 mm',
        usual: [0.6, 25],
      }),
      ...joinedFields,
      category: choice(categories, 'weld category'),
      metal: quantity('MPa', 'nominal tensile strength of the weld metal', {
        how: 'class on the packet of the consumable',
        typical: '490 MPa',
        usual: [300, 1100],
      }),
      'load-case': text('load case in build.md', 'link-pull'),
    },
    'fillet welds of brackets on the housing',
  ),
  coupons: couponsField,
  welder: text('who welded on the housing, by which procedure', 'MB, GMAW, procedure kept as a paper'),
  straightening: text(
    'how the tube was kept straight',
    'alignment bar in the bearing seats, short runs on opposite sides, cooled between',
  ),
  bend: quantity('mm', 'how far the housing is out of line after welding', {
    places: 'largest',
    measuredAs: 'dial',
    how: 'alignment bar through the bearing seats, or straightedges on both flanges: difference of their distances ahead and behind, and above and below; the greatest',
    typical: '0.3 mm',
    usual: [0, 2.9],
  }),
  'maker-bend': makerFigures('mm', 'line of the housing', [0, 2.9]),
  'final-drive-opened': yesNo('was the final drive taken apart'),
  backlash: quantity('mm', 'backlash of ring gear and pinion, the least of all', {
    places: 'smallest',
    measuredAs: 'dial',
    how: 'dial gauge square to a tooth of the ring gear, four places',
    typical: '0.14 mm',
    usual: [0.02, 1.3],
  }),
  'maker-backlash': makerFigures('mm', 'backlash', [0.02, 1.3]),
  preload: quantity('N*m', 'torque that turns the pinion on its bearings', {
    how: 'beam or dial torque wrench, turning slowly, without the carrier',
    typical: '1.6 N·m',
    usual: [0.2, 15],
  }),
  'maker-preload': makerFigures('N*m', 'preload of the pinion', [0.2, 15]),
  load: quantity('kg', 'load on the axle at gross vehicle mass', {
    how: 'weighed laden, or from the mass note',
    typical: '760 kg',
  }),
  rating: makerFigures('kg', 'load of the axle', [150, 4000]),
  brakes: text('which brakes it came with, which it has now, and what was done about balance, parking brake and lines'),
  'speedometer-checked': yesNo('was the speedometer checked or corrected after the ratio changed'),
  worked: workedField,
  torques: torquesField,
};
export type RearAxle = Data<typeof shape>;
