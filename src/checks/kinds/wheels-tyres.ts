import { tyreRating } from '../../calc/gearing/tyre-rating.js';
import type { SpeedSymbol } from '../../calc/gearing/tyre-tables.js';
import { rimEdges, trackChange } from '../../calc/gearing/wheel-place.js';
import { lengthDifference } from '../../calc/uncertainty/difference.js';
import { designDiameter } from '../../project/design-diameter.js';
import { treadCentres } from '../../project/facts.js';
import type { Measured } from '../../project/fields.js';
import { kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { examineLift } from './lift.js';
import { listedTyres } from './listed-tyres.js';
import { compareAgainst, hasNote } from './parts/against.js';
import { fromDesignation } from './parts/designated.js';
import { asPrescribed, makerLimit } from './parts/maker-window.js';
import { examineStops, quietAnswers, stopStates } from './parts/stop.js';
import { shape, type WheelsTyres } from './wheels-fields.js';

type Axle = 'front' | 'rear';
type State = 'was' | 'planned' | 'now';
const axles = ['front', 'rear'] as const;

/** Wheels and tyres of another size, offset or make. */
export const wheelsTyres = kind({
  id: 'wheels-tyres',
  title: 'Wheels and tyres',
  covers:
    'Wheels and tyres of another size, offset or make: sizes and ratings against the placard, track, diameter, nuts, guards and gaps.',
  shape,
  holdPoints: [
    {
      id: 'wheels-as-received',
      shows: 'Sidewalls, rim markings and the track measured on the wheels as it came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['sidewalls', 'rims', 'track'],
    },
    {
      id: 'rim-back',
      shows: 'Back of each rim with its marking and a rule for the offset, before it is mounted',
      level: 'record',
      during: 'dismantled',
      before: 'assembled',
      parts: ['front-left', 'front-right', 'rear-left', 'rear-right'],
      serves: 'wheels.rim-marking',
    },
    {
      id: 'full-lock',
      shows: 'Tyres at full left lock, full right lock and full bump with a gauge at the nearest place',
      level: 'witness',
      during: 'assembled',
      before: 'tested',
      parts: ['left-lock', 'right-lock', 'bump'],
    },
  ],
  cautions: ['stands', 'driving'],
  facts: (d) => ({
    tyre_diameter_front: fittedDiameter(d, 'front'),
    tyre_diameter_rear: fittedDiameter(d, 'rear'),
    track_front: trackOf(d, 'front'),
    track_rear: trackOf(d, 'rear'),
    original_track_front: d.front?.was?.track,
    original_track_rear: d.rear?.was?.track,
  }),
  answers: (d) => ({
    ...quietAnswers(d),
    'wheels.spacers': d.spacers && { answer: d.spacers, from: ['spacers'] },
    'wheels.construction': d.alike && { answer: d.alike, from: ['alike'] },
    'wheels.guards': d['within-guards'] && { answer: d['within-guards'], from: ['within-guards'] },
  }),
  states: (d) => ({ ...stopStates(d), axles: d.axles }),
  evaluate: ({ data }, work) => {
    const against = listedTyres(data, work);
    for (const axle of axles.filter((a) => ['both', a].includes(data.changed ?? 'both')))
      examineAxle(axle, data, against, work);
    const original = work.take(data['original-nut-engagement'], 'original-nut-engagement');
    compareAgainst(
      'wheels.nut-engagement',
      '',
      work.take(data['nut-engagement'], 'nut-engagement'),
      ['original_nut_engagement', original],
      work,
    );
    if (data['nut-torque'] || data['maker-nut-torque'])
      work.compare('fasteners.torque', 'wheel-nuts', work.take(data['nut-torque'], 'nut-torque'), {
        limit: asPrescribed(makerLimit(data['maker-nut-torque'], 'N*m')),
      });
    examineStops(data, work);
    if (!hasNote(work, 'rear-axle'))
      work.state('wheels.axle-offset', '', 'out', 'no note records another axle, so the wheels stand on their own', {
        path: [],
      });
  },
});

const wheelsOf = (data: WheelsTyres, axle: Axle, state: State) => data[axle]?.[state];
const stateOf = (data: WheelsTyres, axle: Axle): 'planned' | 'now' =>
  data[axle]?.now || !data[axle]?.planned ? 'now' : 'planned';
const fittedDiameter = (data: WheelsTyres, axle: Axle): Measured | undefined => {
  const fitted = wheelsOf(data, axle, stateOf(data, axle));
  return fitted?.diameter ?? (fitted?.tyre && designDiameter(fitted.tyre));
};
const trackOf = (data: WheelsTyres, axle: Axle): Measured | undefined =>
  wheelsOf(data, axle, stateOf(data, axle))?.track;

function examineAxle(axle: Axle, data: WheelsTyres, against: ReturnType<typeof listedTyres>, work: Work): void {
  const state = stateOf(data, axle);
  const wheels = wheelsOf(data, axle, state);
  for (const one of ['was', state] as const) sizeAgrees(axle, one, data, work);
  const lacks = (name: string) => work.lacks(axle, state, name);
  const diameter = diameterOf(axle, state, data, work);
  const [was, placard] = [diameterOf(axle, 'was', data, work), work.fact('original_tyre_diameter')];
  work.compare('wheels.diameter', axle, against('largest_tyre_diameter', diameter));
  work.compare('wheels.diameter-smaller', axle, against('smallest_tyre_diameter', diameter));
  work.compare(
    'wheels.diameter-step',
    axle,
    work
      .sheet(lengthDifference, `${axle}-diameter`, { before: isMissing(placard) ? was : placard, after: diameter })
      .get('share'),
  );

  const { tyre, rim } = wheels ?? {};
  work.compare(
    'wheels.tyre-width',
    axle,
    against('widest_tyre', tyre ? fromDesignation(tyre, tyre.width, 'mm') : lacks('tyre')),
  );
  work.compare('wheels.speed-rating', axle, ratingOf(tyre?.speed, 'km/h'));
  work.compare('wheels.load-rating', axle, against('placard_tyre_load', ratingOf(tyre?.load, 'kg')));
  if (tyre?.loadIndex !== undefined && tyre.speedSymbol !== undefined) {
    const top = work.fact('top_speed');
    work.sheet(tyreRating, axle, {
      loadIndex: fromDesignation(tyre, tyre.loadIndex, '1'),
      speedSymbol: tyre.speedSymbol.replace(/[()]/g, '') as SpeedSymbol,
      ...(isMissing(top) ? {} : { topSpeed: top }),
    });
  }
  work.compare(
    'wheels.rim-width',
    axle,
    against('least_rim_width', rim ? fromDesignation(rim, rim.width, 'in') : lacks('rim')),
  );
  examineTrack(axle, data, work);
  const gap = data[axle]?.['least-gap'];
  if (gap || !hasNote(work, 'clearance')) work.compare('clearance.tyres', axle, work.take(gap, axle, 'least-gap'));
  if (!hasNote(work, 'suspension')) {
    examineLift(
      axle,
      {
        heights: {
          before: work.take(data[axle]?.was?.['guard-height'], axle, 'was', 'guard-height'),
          after: work.take(wheels?.['guard-height'], axle, state, 'guard-height'),
        },
        diameters: { before: isMissing(was) && !isMissing(placard) ? placard : was, after: diameter },
        clearance: work.take(data[axle]?.was?.clearance, axle, 'was', 'clearance'),
      },
      work,
    );
  }

  function ratingOf(value: number | undefined, unit: string): Maybe {
    if (!tyre) return lacks('tyre');
    return value === undefined
      ? {
          missing: [
            {
              says: 'load index and speed symbol of the tyre',
              where: `${axle}.${state}.tyre`,
              how: 'write them behind the size: 205/65R15 94H',
              path: [axle, state, 'tyre'],
            },
          ],
        }
      : fromDesignation(tyre, value, unit);
  }
}

/** As measured, or else as the size says. */
function diameterOf(axle: Axle, state: State, data: WheelsTyres, work: Work): Maybe {
  const wheels = wheelsOf(data, axle, state);
  if (wheels?.diameter) return work.take(wheels.diameter, axle, state, 'diameter');
  return wheels?.tyre
    ? fromDesignation(wheels.tyre, wheels.tyre.overallDiameter, 'mm')
    : work.lacks(axle, state, 'tyre');
}

/** Common practice: what a tyre may measure beside its size, new to worn down, as a share of its diameter. */
const tyreShare = 0.03;

/** A diameter that was measured, and the one that the size on the sidewall stands for. */
function sizeAgrees(axle: Axle, state: State, data: WheelsTyres, work: Work): void {
  const wheels = wheelsOf(data, axle, state);
  if (!wheels?.diameter || !wheels.tyre?.overallDiameter) return;
  const bySize = fromDesignation(wheels.tyre, wheels.tyre.overallDiameter, 'mm');
  work.agree(
    `${axle}-${state}-diameter`,
    {
      says: `diameter of the ${axle} tyre`,
      unit: 'mm',
      method: { expanded: tyreShare * bySize.si, because: "the maker's tolerance and wear" },
    },
    bySize,
    work.take(wheels.diameter, axle, state, 'diameter'),
  );
}

/** Growth over the widest track of the maker, as measured; planned wheels are reckoned from their offset. */
function examineTrack(axle: Axle, data: WheelsTyres, work: Work): void {
  const state = stateOf(data, axle);
  const [was, wheels] = [wheelsOf(data, axle, 'was'), wheelsOf(data, axle, state)];
  const stated = work.fact(`original_track_${axle}`);
  const before = was?.track || isMissing(stated) ? work.take(was?.track, axle, 'was', 'track') : stated;
  const offsets = { oldOffset: offsetOf(axle, 'was', data, work), newOffset: offsetOf(axle, state, data, work) };
  const byOffset = work.sheet(trackChange, axle, {
    track: before,
    ...offsets,
    ...(wheels?.spacer ? { spacer: work.take(wheels.spacer, axle, state, 'spacer') } : {}),
  });
  if (was?.rim && wheels?.rim)
    work.sheet(rimEdges, axle, {
      oldWidth: fromDesignation(was.rim, was.rim.width, 'in'),
      newWidth: fromDesignation(wheels.rim, wheels.rim.width, 'in'),
      ...offsets,
    });
  const widest = data[axle]?.['widest-track'];
  const from = widest ? work.take(widest, axle, 'widest-track') : before;
  const reckoned = byOffset.get('now');
  if (wheels?.track && !(axle === 'rear' && hasNote(work, 'rear-axle')))
    work.agree(
      `${axle}-${state}-track`,
      {
        says: `${axle} track`,
        unit: 'mm',
        method: treadCentres,
      },
      work.take(wheels.track, axle, state, 'track'),
      reckoned,
    );
  const now = wheels?.track || isMissing(reckoned) ? work.take(wheels?.track, axle, state, 'track') : reckoned;
  work.compare(
    'wheels.track',
    axle,
    work.sheet(lengthDifference, `${axle}-track`, { before: from, after: now }).get('change'),
  );
}

function offsetOf(axle: Axle, state: State, data: WheelsTyres, work: Work): Maybe {
  const wheels = wheelsOf(data, axle, state);
  if (wheels?.offset) return work.take(wheels.offset, axle, state, 'offset');
  const rim = wheels?.rim;
  return rim?.offset === undefined ? work.lacks(axle, state, 'offset') : fromDesignation(rim, rim.offset, 'mm');
}
