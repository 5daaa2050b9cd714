import { z } from 'zod';
import { choice, list, quantity, text, yesNo } from '../../project/fields.js';
import { makerFigures } from './parts/maker-window.js';

const fromGround =
  'tape from the level floor, tyres at pressure, car at the stated load and ride height, left and right';

const lampPlace = (when: string) =>
  z
    .strictObject({
      lower: quantity('mm', `lower edge of the lit surface above the ground, ${when}`, {
        measuredAs: 'ride-height',
        how: fromGround,
        typical: '610 mm',
      }),
      upper: quantity('mm', `upper edge of the lit surface above the ground, ${when}`, {
        measuredAs: 'ride-height',
        how: fromGround,
        typical: '740 mm',
      }),
      'from-side': quantity('mm', `outer edge of the lit surface to the widest point of the car, ${when}`, {
        how: 'straight edge along the side of the body, tape across',
        typical: '95 mm',
        usual: [0, 900],
      }),
    })
    .optional()
    .meta({ form: 'block', says: `place of the lamp, ${when}` });

export const shape = {
  lamps: list(
    {
      lamp: choice(
        {
          dipped: 'dipped beam',
          main: 'main beam',
          front: 'front position lamp',
          turn: 'turn signal',
          rear: 'rear lamp',
          stop: 'stop lamp',
          'stop-high': 'high stop lamp',
          reflector: 'reflector',
          reversing: 'reversing lamp',
          plate: 'number plate lamp',
          fog: 'fog lamp',
        },
        'which lamp',
      ),
      side: text('which side', 'left'),
      was: lampPlace('as received'),
      now: lampPlace('now'),
      works: yesNo('does it light in its colour, and only when it should'),
    },
    'lamps and reflectors, each an item of its own',
  ),
  aim: z
    .strictObject({
      left: quantity('%', 'downward aim of the left dipped beam', {
        measuredAs: 'aim',
        range: 'signed',
        how: 'drop of the cut-off on a wall, divided by the distance to it: 10 m, level floor, load of the hand book',
        typical: '1.1 %',
        usual: [0, 5],
      }),
      right: quantity('%', 'downward aim of the right dipped beam', {
        measuredAs: 'aim',
        range: 'signed',
        how: 'the same way',
        typical: '1.2 %',
        usual: [0, 5],
      }),
      'after-ride-height': yesNo('was it set after the ride height'),
      maker: makerFigures('%', 'downward aim', [0, 5], 'signed'),
    })
    .optional()
    .meta({ form: 'block', says: 'aim of the dipped beams' }),
  guards: list(
    {
      wheel: text('which wheel', 'front left'),
      radius: quantity('mm', 'smallest radius of the edge that can be touched', {
        places: 'smallest',
        measuredAs: 'radius',
        how: 'radius gauge, smallest of five places',
        typical: '3.5 mm',
        usual: [0.4, 34],
      }),
      uncovered: quantity('mm', 'width of tread that stands out from under the guard, seen from above', {
        places: 'largest',
        measuredAs: 'rule',
        how: 'plumb line at the edge of the guard over the wheel centre, wheels straight ahead; 0 mm where all is covered',
        typical: '0 mm',
        usual: [0, 60],
      }),
      ahead: quantity('deg', 'how far the guard reaches ahead of the vertical through the wheel centre', {
        measuredAs: 'angle',
        range: 'signed',
        how: 'inclinometer on a batten from the wheel centre to the edge',
        typical: '25 deg',
        usual: [0, 90],
      }),
      behind: quantity('deg', 'how far its rear edge stays above the level of the wheel centre (negative: below it)', {
        measuredAs: 'angle',
        range: 'signed',
        how: 'the same way',
        typical: '-10 deg',
        usual: [0, 90],
      }),
    },
    'mudguards, one item a wheel',
  ),
  bumpers: list(
    {
      end: choice({ front: 'front', rear: 'rear' }, 'which bumper'),
      'height-was': quantity('mm', 'lower edge above the ground as received', {
        measuredAs: 'ride-height',
        how: fromGround,
        typical: '395 mm',
      }),
      'height-now': quantity('mm', 'lower edge above the ground now', {
        measuredAs: 'ride-height',
        how: fromGround,
        typical: '370 mm',
      }),
      ends: quantity('mm', 'smallest radius of its corners and ends', {
        places: 'smallest',
        measuredAs: 'radius',
        how: 'radius gauge',
        typical: '6 mm',
        usual: [0.65, 59],
      }),
      kept: yesNo('is it the one of the model, or as strong, on the maker’s mounts'),
    },
    'bumpers',
  ),
  edges: list(
    {
      place: text('which edge, panel, scoop, pin or hinge', 'lip of the bonnet scoop'),
      radius: quantity('mm', 'smallest radius that can be touched', {
        places: 'smallest',
        measuredAs: 'radius',
        how: 'radius gauge',
        typical: '4 mm',
        usual: [0.45, 39],
      }),
      'stands-out': quantity('mm', 'how far it stands out from the panel', {
        measuredAs: 'rule',
        how: 'straight edge and depth gauge',
        typical: '28 mm',
        usual: [0, 270],
      }),
    },
    'edges and fixings that were added outside',
  ),
  'width-was': quantity('mm', 'overall width without mirrors, as received', {
    how: 'plumb lines at the widest points of both sides, tape across the floor',
    typical: '1662 mm',
    usual: [1200, 2600],
  }),
  'width-now': quantity('mm', 'overall width without mirrors, now', {
    how: 'the same way',
    typical: '1662 mm',
    usual: [1200, 2600],
  }),
  'bonnet-opens': choice(
    {
      front: 'at the front, hinged at the windscreen',
      rear: 'at the windscreen, hinged at the front',
      side: 'at the side',
    },
    'where the bonnet opens',
  ),
  'second-latch': yesNo('has the bonnet a second latch that holds it when the first lets go'),
  'latch-gap': quantity('mm', 'how far the front edge of the bonnet can be lifted on the second latch alone', {
    measuredAs: 'rule',
    how: 'first latch released, pull up by hand, tape',
    typical: '25 mm',
  }),
  'bonnet-pins': yesNo('are there bonnet pins that stand out'),
  scoop: choice(
    { none: 'none', safe: 'shape and material that do little injury', sharp: 'with edges or hard corners' },
    'scoop on the bonnet',
  ),
  'chassis-number': choice(
    {
      untouched: 'panel untouched',
      agreed: 'moved or repaired with the word of the authority',
      other: 'touched without it',
    },
    'panel with the chassis number',
  ),
  'street-rod': yesNo('is it registered as a street rod'),
};
