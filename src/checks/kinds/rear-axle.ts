import { trackChange } from '../../calc/gearing/wheel-place.js';
import { lengthDifference } from '../../calc/uncertainty/difference.js';
import { treadCentres } from '../../project/facts.js';
import { kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { hasNote } from './parts/against.js';
import { examineSideView, tellPinion } from './parts/axle-view.js';
import { makerLimit } from './parts/maker-window.js';
import { difference } from './parts/maybe.js';
import { examineStops, quietAnswers, stopStates } from './parts/stop.js';
import { examineTorques, torqueAnswers } from './parts/torques.js';
import { asksWelds, examineFillet } from './parts/weld.js';
import { type RearAxle, shape } from './rear-axle-fields.js';

const eachWeld = (d: RearAxle) => (d.welds ?? []).map((w) => w.id);

/** Another rear axle, or the original one altered. */
export const rearAxle = kind({
  id: 'rear-axle',
  title: 'Rear axle',
  covers:
    'Another rear axle, or the original one with another ratio, width or brackets: what it is, where it sits, how it moves on its links, what was welded to it.',
  shape,
  holdPoints: [
    {
      id: 'axle-as-received',
      shows: 'Original axle in place with pinion slope, diagonals and track, before it was taken out',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['pinion-slope', 'diagonals', 'track'],
    },
    {
      id: 'axle-identity',
      shows: 'Number or tag of the axle fitted, teeth of the final drive, width between the wheel faces',
      level: 'record',
      during: 'dismantled',
      before: 'assembled',
      parts: ['number', 'final-drive', 'width'],
      serves: 'axle.identity number final-drive width',
    },
    {
      id: 'brackets-tacked',
      shows: 'Brackets tacked on the housing, pinion at its slope, axle square at ride height',
      level: 'hold',
      during: 'tacked',
      before: 'welded',
      parts: ['brackets', 'pinion', 'square'],
      serves: 'axle.brackets-shown',
    },
    {
      id: 'housing-welds-bare',
      shows: 'Welds on the housing bare, with the alignment bar or straightedges in place',
      level: 'witness',
      during: 'welded',
      before: 'painted',
      parts: eachWeld,
      serves: 'axle.brackets-shown',
    },
  ],
  holds: asks,
  cautions: ['stands', 'welding', 'structure', 'steering', 'brakes', 'spinning'],
  facts: (d) => ({
    final_drive: (d.now ?? d.planned)?.ratio,
    original_final_drive: d.was?.ratio,
    track_rear: (d.now ?? d.planned)?.track,
    original_track_rear: d.was?.track,
  }),
  answers: (d) => ({
    ...quietAnswers(d),
    ...torqueAnswers(d.torques),
    'axle.differential': d.differential && {
      answer: d.differential === 'locked' ? 'no' : 'yes',
      because: d.differential,
      from: ['differential'],
    },
    'axle.brakes': d.brakes ? { answer: d.brakes } : undefined,
    'axle.housing-welds': d.welder && d.straightening ? { answer: `${d.welder}; ${d.straightening}` } : undefined,
    'gearbox.speedometer': d['speedometer-checked'] && {
      answer: d['speedometer-checked'],
      from: ['speedometer-checked'],
    },
    'axle.square': squareMeasured(d) ? { answer: 'diagonals and sides', shown: 'note' } : undefined,
  }),
  states: (d) => ({
    ...stopStates(d),
    'final-drive-opened': d['final-drive-opened'],
    'axle-welded': d.welds?.length ? 'yes' : d.welded,
  }),
  raises: asks,
  evaluate: ({ data }, work) => {
    const pinion = take('pinion', data, work);
    tellPinion(pinion, stateOf(data), work);
    const located = data['located-by'] ?? (data.lower || data.upper ? 'links' : undefined);
    if (located === 'links') examineSideView(data, pinion, work);
    examineSquare(data, work);
    examineTrack(data, work);
    if (!data.welds?.length) work.compare('axle.bracket-load', '', work.lacks('welds'));
    for (const weld of data.welds ?? [])
      examineFillet('axle.bracket-load', weld, weld.id, ['welds', weld.id], { coupons: data.coupons }, work);
    const against = (
      item: string,
      name: 'bend' | 'backlash' | 'preload' | 'load',
      unit: string,
      window: Parameters<typeof makerLimit>[0],
    ) => work.compare(item, '', work.take(data[name], name), { limit: makerLimit(window, unit) });
    against('axle.straight', 'bend', 'mm', data['maker-bend']);
    against('axle.backlash', 'backlash', 'mm', data['maker-backlash']);
    against('axle.preload', 'preload', 'N*m', data['maker-preload']);
    against('axle.shafts', 'load', 'kg', data.rating);
    examineTorques(data.torques, work);
    examineStops(data, work);
  },
});

const thin = ['body.weld-procedure', 'body.weld-test', 'body.crack-test'];
function asks(what: string, data: RearAxle): boolean {
  return asksWelds(
    what,
    data,
    (data.welds ?? []).map((weld) => ({ weld, beside: [] })),
    thin,
  );
}

type Name =
  | 'pinion'
  | 'track'
  | 'faces'
  | 'diagonal-left'
  | 'diagonal-right'
  | 'side-left'
  | 'side-right'
  | 'edge-left'
  | 'edge-right';
const stateOf = (data: RearAxle) => (data.now || !data.planned ? 'now' : 'planned');

function take(name: Name, data: RearAxle, work: Work, state: 'was' | 'now' | 'planned' = stateOf(data)): Maybe {
  return work.take(data[state]?.[name], state, name);
}

const pairs = [
  ['diagonals', 'diagonal-left', 'diagonal-right'],
  ['sides', 'side-left', 'side-right'],
  ['centred', 'edge-left', 'edge-right'],
] as const;

/** Diagonals alike say square, sides alike say not skewed, edges alike say centred. */
function examineSquare(data: RearAxle, work: Work): void {
  for (const [subject, left, right] of pairs) {
    const apart = work
      .sheet(lengthDifference, subject, { before: take(left, data, work), after: take(right, data, work) })
      .get('apart');
    work.compare('axle.square-difference', subject, apart, { limit: makerLimit(data['maker-square'], 'mm') });
  }
}

function squareMeasured({ now }: RearAxle): boolean {
  return (
    now !== undefined &&
    (['diagonal-left', 'diagonal-right', 'side-left', 'side-right'] as const).every((name) => now[name] !== undefined)
  );
}

/** The track that follows from faces and offsets beside the one that was measured, and the offset against the axle's own wheels. */
function examineTrack(data: RearAxle, work: Work): void {
  const stated = work.fact('original_track_rear');
  const before = data.was?.track || isMissing(stated) ? take('track', data, work, 'was') : stated;
  const faces =
    data.was?.faces && data[stateOf(data)]?.faces
      ? { faces: difference(take('faces', data, work), take('faces', data, work, 'was')) }
      : { faces: undefined };
  const spacer = data.spacer ? { spacer: work.take(data.spacer, 'spacer') } : {};
  const offsets = {
    oldOffset: work.take(data['own-offset'], 'own-offset'),
    newOffset: work.take(data['fitted-offset'], 'fitted-offset'),
  };
  const worked = work.sheet(trackChange, '', { track: before, ...offsets, ...spacer, ...faces });
  work.compare('wheels.axle-offset', '', worked.get('perSide'));
  if (faces.faces)
    work.agree(
      'track',
      { says: 'rear track', unit: 'mm', method: treadCentres },
      take('track', data, work),
      worked.get('now'),
    );
  const measured = take('track', data, work);
  if (isMissing(measured) && hasNote(work, 'wheels-tyres')) return;
  const after = faces.faces ? wider(measured, worked.get('now')) : measured;
  work.compare('wheels.track', 'rear', work.sheet(lengthDifference, 'track', { before, after }).get('change'));
}

/** Of a track that was measured and the one that faces and offsets give, the wider. */
function wider(measured: Maybe, reckoned: Maybe): Maybe {
  return isMissing(measured) || isMissing(reckoned) || reckoned.si <= measured.si ? measured : reckoned;
}
