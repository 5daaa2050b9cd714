import { z } from 'zod';
import { list, onDay, quantity, slopeAbout, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { makerFigures, makerWindow } from './parts/maker-window.js';
import { workedField } from './parts/stop.js';

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });
const before =
  'car at its ride height and load, tyres at running pressure, rolled forward two metres; steering wheel centred and held';

const wheel = (state: string) =>
  block(
    {
      toe: slopeAbout('toe', `toe of this wheel ${state}, against the centre line of the car`, {
        how: `${before}; alignment gauge, run-out of the rim compensated, three times; from millimetres: difference over the rim diameter, times 57.3`,
        typical: '0.08 deg toe in',
      }),
      camber: slopeAbout('camber', `camber ${state}`, {
        how: `${before}; camber gauge on the hub or on the machined face of the rim`,
        typical: '0.5 deg top in',
      }),
      caster: slopeAbout('caster', `caster ${state}, steered wheels only`, {
        how: 'turn plates, wheel swung 20 deg each way, brake applied; difference of camber by the chart of the gauge',
        typical: '4.5 deg top to the rear',
      }),
      height: quantity('mm', `ride height at which it was taken ${state}`, {
        measuredAs: 'ride-height',
        how: 'wheel centre to guard edge, tape',
        typical: '362 mm',
      }),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    },
    `the wheel ${state}`,
  );

const windows = <S extends z.ZodRawShape>(which: string, more: S) =>
  block(
    {
      toe: makerWindow(`toe of the ${which} axle, both wheels together`, (says) =>
        slopeAbout('toe', says, { typical: '0.1 deg toe in' }),
      ),
      camber: makerWindow(`camber of a ${which} wheel`, (says) =>
        slopeAbout('camber', says, { typical: '1.0 deg top in' }),
      ),
      ...more,
    },
    `what the maker allows at the ${which}`,
  );
const caster = {
  caster: makerWindow('caster of a front wheel', (says) =>
    slopeAbout('caster', says, { typical: '4.0 deg top to the rear' }),
  ),
};

export const shape = {
  wheels: list(
    { was: wheel('as it came'), planned: wheel('as planned'), now: wheel('now') },
    'the four wheels: `front-left`, `front-right`, `rear-left`, `rear-right`',
  ),
  'not-taken-before': text('why the alignment as it came was not taken', 'front end was bent when the car came in'),
  maker: block(
    { front: windows('front', caster), rear: windows('rear', {}) },
    'figures of the maker of the suspension or axle that is fitted',
  ),
  thrust: slopeAbout(
    'plan',
    'direction in which the rear axle points, where the gauge shows it; otherwise it follows from its two wheels',
    {
      measuredAs: 'toe',
      how: `${before}; four-wheel gauge, or strings parallel to the centre line`,
      typical: '0.05 deg to the left',
      usual: [0, 0.45],
    },
  ),
  'maker-thrust': makerFigures('deg', 'thrust angle, either way', [0, 1], 'signed'),
  'bump-steer': list(
    {
      stations: list(
        {
          travel: quantity('mm', 'travel of the wheel from ride height, up; down with a minus', {
            range: 'signed',
            how: 'spring out, steering locked in the middle, body on stands; height of the hub by scale, steps of 10 mm',
            typical: '-40 mm',
            usual: [0, 200],
          }),
          toe: slopeAbout('toe', 'toe of this wheel there', {
            how: 'plate on the hub and two dial gauges, or laser and scale',
            typical: '0.20 deg toe out',
            usual: [0, 1.5],
          }),
        },
        'stations from droop to bump, ride height among them',
      ),
      maker: makerFigures('deg', 'change of toe over the middle two thirds of the travel', [0, 1.5], 'signed'),
    },
    'change of toe through travel, an item for each wheel: `front-left`, `front-right`, …',
  ),
  'joint-play': quantity('mm', 'greatest free play of a steering joint, found before the alignment', {
    places: 'largest',
    measuredAs: 'dial',
    how: 'dial gauge across the joint, wheel rocked by hand',
    typical: '0.2 mm',
    usual: [0, 1.5],
  }),
  equipment: text('gauge or machine that was used, with its number', 'four-wheel gauge, number A-114'),
  'equipment-checked': onDay('day of its last check or calibration'),
  'equipment-check': text('how and by whom it was checked', 'by its maker, certificate kept'),
  'wheel-centred': yesNo('is the steering wheel level when the car runs straight').meta({
    recordedFor: 'the certifier, beside the picture of the steering wheel',
  }),
  worked: workedField,
};
export type Alignment = Data<typeof shape>;
