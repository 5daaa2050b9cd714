import type { Answer } from '../../project/common.js';
import { type Data, kind } from '../engine/kind.js';
import type { Derived } from '../engine/told.js';
import type { Work } from '../engine/work.js';
import { anchoragesAnswer, examineAnchorages } from './parts/anchorages.js';
import { examineTorques } from './parts/torques.js';
import { shape } from './seating-fields.js';

type Seating = Data<typeof shape>;
type Seat = NonNullable<Seating['seats']>[number];

const eachPoint = (d: Seating) => [
  ...new Set(['seats', 'belts', ...[...(d.anchorages ?? []), ...(d['child-points'] ?? [])].map((p) => p.id)]),
];
const eachSeat = (d: Seating) =>
  (d.seats ?? []).filter((s) => s.change !== 'removed').flatMap((s) => [`${s.id}-side`, `${s.id}-front`]);

/** Seats, belts and child restraint points. */
export const seating = kind({
  id: 'seating',
  title: 'Seating and belts',
  covers:
    'Seats exchanged, moved or added, with their bolts and plates; belts and their anchorages; child restraint points; airbags.',
  shape,
  holdPoints: [
    {
      id: 'seating-as-received',
      shows: 'Seats, belts, every anchorage and child restraint point with a tape to a fixed point',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: eachPoint,
    },
    {
      id: 'anchorage-tacked',
      shows: 'New brackets or plates in place before they are welded',
      level: 'hold',
      during: 'tacked',
      before: 'welded',
    },
    {
      id: 'plates-from-below',
      shows: 'Plates, bolts and welds of each anchorage from below, bare',
      level: 'witness',
      during: 'assembled',
      before: 'painted',
      parts: (d) => (d.anchorages ?? []).map((a) => a.id),
      serves: 'seating.plates-shown',
    },
    {
      id: 'belts-in-use',
      shows: 'A person in each seat with the belt on, from the side and from the front',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: eachSeat,
      serves: 'seating.in-place',
    },
  ],
  cautions: ['restraints', 'welding', 'electrical'],
  answers: (d) => ({
    'seating.code': d.code ? { answer: d.code } : undefined,
    'seating.anchorages-kept': anchoragesAnswer(d.anchorages),
    'seating.airbags-kept':
      d.airbags === 'none'
        ? { answer: 'not applicable', because: 'the car was built without airbags and tensioners', from: ['airbags'] }
        : d.airbags && { answer: d.airbags, from: ['airbags'] },
    'seating.belt-on-seat': onSeat(d),
    'seating.bolts': ofSeats(
      d,
      (s) => s.bolts && s.thread && s.class && `${s.bolts.quantity.text} × ${s.thread.written} ${s.class.written}`,
    ),
    'seating.backing-plates': ofSeats(d, plateText),
    'seating.material': ofSeats(d, (s) => s.through),
    'seating.child-points': childPoints(d),
  }),
  states: (d) => ({
    'seats-changed': d.seats?.length
      ? d.seats.some((s) => s.change === 'replaced' || s.change === 'added' || s.change === 'moved')
        ? 'yes'
        : d.seats.every((s) => s.change)
          ? 'no'
          : undefined
      : undefined,
    'anchorage-added': d.anchorages?.length
      ? d.anchorages.some((a) => a.state && a.state !== 'kept')
        ? 'yes'
        : d.anchorages.every((a) => a.state)
          ? 'no'
          : undefined
      : undefined,
  }),
  evaluate: ({ data }, work) => {
    examineAnchorages(data.anchorages, work);
    airbags(data, work);
    anchorageLoads(data, work);
    examineTorques(data.torques, work);
  },
});

/** `front left: 4 × M8x1.25 10.9; rear: …` where every item of the list has the word. */
function stated<T extends { id: string; place?: string | undefined }>(
  all: readonly T[] | undefined,
  word: (one: T) => string | undefined,
): Answer | undefined {
  const told = (all ?? []).map((one) => ({ place: one.place ?? one.id, says: word(one) }));
  return told.length > 0 && told.every((t) => t.says)
    ? { answer: told.map((t) => `${t.place}: ${t.says}`).join('; ') }
    : undefined;
}

/** Seats that are as they were need no word. */
function ofSeats({ seats }: Seating, word: (seat: Seat) => string | undefined): Answer | undefined {
  const changed = seats?.filter((s) => s.change !== 'kept' && s.change !== 'removed');
  return seats?.length && changed?.length === 0
    ? { answer: 'no seat was exchanged, moved or added' }
    : stated(changed, word);
}

function plateText({ plate, through }: Seat): string | undefined {
  if (through === 'original') return "the maker's own anchorage, no plate added";
  if (!plate?.length || !plate.width || !plate.thickness) return undefined;
  const [long, wide] = [plate.length.quantity, plate.width.quantity];
  const rest = [
    plate.material,
    plate.corner && `corners ${plate.corner.quantity.text}`,
    plate.against && `against ${plate.against}`,
    plate.centred === 'no' && 'bolt not in the middle',
  ];
  return [
    `${long.text} by ${wide.text}, ${plate.thickness.quantity.text} thick, ${Math.round(long.si * wide.si * 1e6)} mm2 in contact`,
    ...rest,
  ]
    .filter(Boolean)
    .join(', ');
}

function onSeat({ belts }: Seating): Derived | undefined {
  const on = belts?.filter((b) => b['on-seat'] === 'yes').map((b) => b.place ?? b.id) ?? [];
  if (on.length > 0) return { answer: 'yes', because: on.join(', '), from: ['belts'] };
  return belts?.length && belts.every((b) => b['on-seat']) ? { answer: 'no', from: ['belts'] } : undefined;
}

function childPoints({ 'child-points': points }: Seating): Derived | undefined {
  const not = points?.filter((p) => p.usable === 'no').map((p) => p.place ?? p.id) ?? [];
  if (not.length > 0) return { answer: 'no', because: not.join(', '), from: ['child-points'] };
  return points?.length && points.every((p) => p.usable)
    ? { answer: 'yes', because: points.map((p) => p.place ?? p.id).join(', '), from: ['child-points'] }
    : undefined;
}

function airbags({ airbags: state }: Seating, work: Work): void {
  if (state !== 'no') return;
  work.state(
    'seating.airbags-kept',
    '',
    'against',
    'an airbag or tensioner is disabled, moved or left out: this stops the note until the certifier has decided',
    { stop: true, answer: 'no', todo: 'stop work on it and put it to the certifier', path: ['airbags'] },
  );
}

/** An added anchorage is shown to hold its load; what that load is depends on the belt. */
function anchorageLoads({ belts }: Seating, work: Work): void {
  const proved = (belts ?? []).filter((b) => b['proof-load']);
  if (proved.length === 0)
    return work.compare('seating.anchorage-load', '', work.lacks('belts', belts?.[0]?.id ?? '…', 'proof-load'));
  for (const belt of proved)
    work.compare('seating.anchorage-load', belt.id, work.take(belt['proof-load'], 'belts', belt.id, 'proof-load'), {
      states: { belt: belt.belt, 'anchorage-added': 'yes' },
    });
}
