import { linksOf } from '../../../calc/axle/parts.js';
import type { Run } from '../../../calc/run.js';
import { liveAxle } from '../live-axle.js';
import { type Drawers, si, size, sizes } from './values.js';

const coordinates = [
  'lowerAxleX',
  'lowerAxleZ',
  'lowerBodyX',
  'lowerBodyZ',
  'upperAxleX',
  'upperAxleZ',
  'upperBodyX',
  'upperBodyZ',
] as const;

const linksIn = (run: Run, centreZ = 0) =>
  linksOf({
    ...(Object.fromEntries(coordinates.map((c) => [c, si(run, c)])) as Record<(typeof coordinates)[number], number>),
    centreZ,
  });

const travelOf = (run: Run, atBump: readonly string[], atDroop: readonly string[]) => ({
  bump: size(run, 'bump'),
  droop: size(run, 'droop'),
  atBump: sizes(run, ...atBump),
  atDroop: sizes(run, ...atDroop),
});

export const axleDrawers: Drawers = {
  'axle-side-view': (run) => ({
    caption: 'Arms of the rear axle at ride height with the instant centre.',
    draw: (name, title) =>
      liveAxle({
        name,
        title,
        links: linksIn(run),
        centreKnown: false,
        instantCentre: { x: size(run, 'centreX'), z: size(run, 'centreZ') },
        results: sizes(run, 'antiSquat', 'rate'),
      }),
  }),
  'axle-travel': (run) => ({
    caption: 'Rear axle at ride height, full bump and full droop, and the path of its centre.',
    draw: (name, title) =>
      liveAxle({
        name,
        title,
        links: linksIn(run, si(run, 'centreZ')),
        centreKnown: true,
        pinion: size(run, 'pinionSlope'),
        travel: travelOf(run, ['bumpPinion', 'bumpShift'], ['droopPinion', 'droopShift']),
      }),
  }),
  'axle-shaft-travel': (run) => ({
    caption: 'Rear axle and shaft at ride height, full bump and full droop.',
    draw: (name, title) =>
      liveAxle({
        name,
        title,
        links: linksIn(run, si(run, 'centreZ')),
        centreKnown: true,
        pinion: size(run, 'pinionSlope'),
        shaft: {
          front: { x: si(run, 'frontX'), z: si(run, 'frontZ') },
          rear: { x: si(run, 'rearX'), z: si(run, 'rearZ') },
        },
        travel: travelOf(run, ['joint1Bump', 'joint2Bump'], ['joint1Droop', 'joint2Droop']),
        results: sizes(run, 'joint1Ride', 'joint2Ride', 'lengthRide', 'lengthLongest', 'lengthShortest'),
      }),
  }),
};
