import { z } from 'zod';
import { list, named, onDay, quantity, text } from '../../project/fields.js';

/** What is read at a weighing. The same form serves as received, as built and laden, so that they can be compared. */

const scales =
  'scales of one height under all four wheels on a level floor, brakes off, car rolled back and forth before each of three readings';
const axle = (which: string, typical: string) =>
  quantity('kg', `mass on the ${which} axle`, {
    how: 'weighbridge or two scales, the same floor for both axles, three readings',
    typical,
    usual: [150, 2500],
  });
const corner = (which: string, typical: string) =>
  quantity('kg', `mass under the ${which} wheel, instead of the axle`, {
    measuredAs: 'wheel-load',
    how: scales,
    typical,
    usual: [70, 1300],
  });

const weighing = (front: string, rear: string) => ({
  front: axle('front', front),
  rear: axle('rear', rear),
  'front-left': corner('left front', '345.5 kg'),
  'front-right': corner('right front', '340.0 kg'),
  'rear-left': corner('left rear', '287.5 kg'),
  'rear-right': corner('right rear', '289.0 kg'),
  load: text(
    'fuel, fluids, spare wheel, tools and persons at this weighing',
    'tank full, oil and coolant full, spare wheel and jack in, nobody in the car',
  ),
  on: onDay('day of the weighing'),
  by: text('who read the scales', 'JO'),
});

const height = {
  fuel: quantity('kg', 'fuel in the tank at this weighing', {
    measuredAs: 'part-mass',
    how: 'litres from the pump times 0.74 kg/L for petrol or 0.83 kg/L for diesel, after filling or draining',
    typical: '38 kg',
  }),
  persons: quantity('kg', 'persons and loose load in the car at this weighing', {
    measuredAs: 'paper',
    how: '0 kg where nobody sat in it',
    typical: '0 kg',
  }),
  raises: list(
    {
      raise: quantity('mm', 'how far the rear wheel centres stood above the front ones', {
        how: 'tape from the floor to each wheel centre; a fifth of the wheelbase or more',
        typical: '620 mm',
      }),
      front: quantity('kg', 'mass on the front axle with the rear raised', {
        how: 'suspension locked at ride height with solid struts, brakes off, gearbox in neutral, wheels chocked beside the scales; three readings',
        typical: '[719.5, 720.0, 719.5] kg',
      }),
    },
    'weighings with the rear axle raised, for the height of the centre of mass',
  ),
};

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });

export const shape = {
  was: block(
    { ...weighing('[612.0, 612.5, 612.0] kg', '[568.0, 567.5, 568.0] kg'), ...height },
    'the weighing as received, before anything was taken apart',
  ),
  now: block(
    { ...weighing('[685.5, 686.0, 685.5] kg', '[576.5, 576.0, 576.5] kg'), ...height },
    'the weighing as built, in the same state of load',
  ),
  laden: block(
    weighing('748 kg', '862 kg'),
    'a weighing with a full tank, a person of 68 kg or ballast in each seat and the luggage',
  ),
  parts: list(
    {
      mass: quantity('kg', 'mass of the part; negative where it is taken out', {
        range: 'signed',
        how: 'hanging scale or bathroom scale',
        typical: '62 kg',
      }),
      place: quantity('mm', 'distance of its centre of mass behind the front axle; negative ahead of it', {
        measuredAs: 'length',
        range: 'signed',
        how: 'tape along the sill from a plumb line at the wheel centre',
        typical: '-120 mm',
        usual: 'any',
      }),
    },
    'before the work: parts to be put in and taken out, added to the weighing as received',
  ),
  places: list(
    {
      mass: quantity('kg', 'persons or luggage at this place', {
        measuredAs: 'paper',
        how: '68 kg a person',
        typical: '136 kg',
      }),
      place: quantity('mm', 'distance behind the front axle', {
        measuredAs: 'length',
        range: 'signed',
        how: 'tape along the sill; of a seated person about 100 mm ahead of the seat back',
        typical: '1280 mm',
      }),
    },
    'where the laden car was not weighed: persons and luggage by their places, added to the weighing as built',
  ),
  'wheel-centre-front': quantity('mm', 'height of the front wheel centres above the floor, level', {
    how: 'tape, mean of left and right',
    typical: '290 mm',
  }),
  'wheel-centre-rear': quantity('mm', 'height of the rear wheel centres above the floor, level', {
    how: 'tape, mean of left and right',
    typical: '292 mm',
  }),
  'cg-height': quantity('mm', 'height of the centre of mass, where a report states it and it was not measured here', {
    measuredAs: 'cg-height',
    how: 'figure of the report, kept as a paper',
    typical: '545 mm',
  }),
  'oil-coolant': quantity('kg', 'oil and coolant in engine, gearbox, axle and radiator', {
    how: 'litres filled in, times 0.88 kg/L for oil and 1.05 kg/L for coolant',
    typical: '14 kg',
  }),
  'full-fuel': quantity('kg', 'fuel in a full tank', {
    how: 'litres of the tank, times 0.74 kg/L for petrol or 0.83 kg/L for diesel',
    typical: '41 kg',
  }),
  'fuel-place': quantity('mm', 'distance of the middle of the tank behind the front axle', {
    how: 'tape along the sill from a plumb line at the wheel centre',
    typical: '2850 mm',
  }),
  luggage: quantity('kg', 'luggage that the laden mass counts', {
    measuredAs: 'paper',
    how: "maker's payload, or what was agreed with the certifier",
    typical: '50 kg',
  }),
  ratings: block(
    {
      front: named('kg', 'greatest load of the front axle', { how: "maker's plate or manual", typical: '800 kg' }),
      rear: named('kg', 'greatest load of the rear axle', { how: "maker's plate or manual", typical: '920 kg' }),
      'front-tyre': named('kg', 'load that one front tyre carries at its pressure', {
        how: 'load index on the tyre',
        typical: '560 kg',
      }),
      'rear-tyre': named('kg', 'load that one rear tyre carries at its pressure', {
        how: 'load index on the tyre',
        typical: '560 kg',
      }),
      from: text(
        'plate or document that states the axle loads, kept as a photo or paper',
        "maker's plate on the left pillar",
      ),
    },
    'what axles and tyres may carry',
  ),
  'scales-checked': onDay('day on which the scales were last checked against known masses'),
};
