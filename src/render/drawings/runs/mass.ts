import type { Run } from '../../../calc/run.js';
import { axleLoads, type BarGroup } from '../axle-loads.js';
import type { Size } from '../words.js';
import { type Drawers, partsOf, si, size } from './values.js';

const bars = (run: Run, says: string, ...of: [string, string, boolean?][]): BarGroup => ({
  says,
  bars: of.map(([word, name, before]) => ({ says: word, before, size: size(run, name) })),
});
/** Distance of the centre of mass behind the front axle, whose change the sheet gives. */
const centre = (run: Run, symbol: string, front: string, rear: string): Size => ({
  symbol,
  si: (si(run, 'wheelbase') * si(run, rear)) / (si(run, front) + si(run, rear)),
  unit: size(run, 'wheelbase').unit,
});
/** Which weighing, in words. */
const states: Readonly<Record<string, string>> = {
  was: ' as received',
  now: ' as built',
  laden: ' laden',
  planned: ' as planned',
};
const stateOf = (run: Run) => states[partsOf(run).subject] ?? '';

/** Weighings before and after the work stand in one drawing; each by itself is then left out. */
const comparedElsewhere = (run: Run, runs: readonly Run[]) =>
  runs.some((r) => r.sheet.id === 'axle-load-change' && r.results && partsOf(r).note === partsOf(run).note) &&
  ['was', 'now'].includes(partsOf(run).subject);

export const massDrawers: Drawers = {
  'axle-load-change': (run) => ({
    caption: 'Axle loads as received and as built.',
    draw: (name, title) =>
      axleLoads({
        name,
        title,
        groups: [
          bars(run, 'Front axle', ['as received', 'frontBefore', true], ['as built', 'frontAfter']),
          bars(run, 'Rear axle', ['as received', 'rearBefore', true], ['as built', 'rearAfter']),
        ],
        base: {
          wheelbase: size(run, 'wheelbase'),
          centres: [
            { says: 'as received', before: true, behindFront: centre(run, 'a_{o}', 'frontBefore', 'rearBefore') },
            { says: 'as built', behindFront: centre(run, 'a_{n}', 'frontAfter', 'rearAfter') },
          ],
        },
      }),
  }),
  'mass-added': (run) => ({
    caption: `Axle loads${stateOf(run)}, with the parts added and taken out.`,
    draw: (name, title) =>
      axleLoads({
        name,
        title,
        groups: [
          bars(run, 'Front axle', ['before', 'front', true], ['after', 'frontAfter']),
          bars(run, 'Rear axle', ['before', 'rear', true], ['after', 'rearAfter']),
        ],
        base: {
          wheelbase: size(run, 'wheelbase'),
          centres: [{ says: 'after', behindFront: size(run, 'behindFront') }],
        },
      }),
  }),
  'axle-masses': (run, runs) =>
    comparedElsewhere(run, runs)
      ? undefined
      : {
          caption: `Axle loads${stateOf(run)} and the place of the centre of mass.`,
          draw: (name, title) =>
            axleLoads({
              name,
              title,
              groups: [bars(run, 'Mass on the axles', ['front', 'front'], ['rear', 'rear'])],
              base: {
                wheelbase: size(run, 'wheelbase'),
                centres: [{ says: '', behindFront: size(run, 'behindFront') }],
              },
            }),
        },
  'corner-masses': (run) => ({
    caption: `Masses under the four wheels${stateOf(run)} and the place of the centre of mass.`,
    draw: (name, title) =>
      axleLoads({
        name,
        title,
        groups: [
          bars(run, 'Front axle', ['left', 'frontLeft'], ['right', 'frontRight']),
          bars(run, 'Rear axle', ['left', 'rearLeft'], ['right', 'rearRight']),
        ],
        base: { wheelbase: size(run, 'wheelbase'), centres: [{ says: '', behindFront: size(run, 'behindFront') }] },
      }),
  }),
  'axle-loads': (run) => ({
    caption: `Loads of the ${partsOf(run).subject || 'axle'}${partsOf(run).subject ? ' axle' : ''} against their ratings.`,
    draw: (name, title) =>
      axleLoads({
        name,
        title,
        groups: [
          { ...bars(run, 'Axle', ['both wheels', 'axle']), rating: size(run, 'axleRating') },
          { ...bars(run, 'Tyres', ['left', 'left'], ['right', 'right']), rating: size(run, 'tyreRating') },
        ],
      }),
  }),
};
