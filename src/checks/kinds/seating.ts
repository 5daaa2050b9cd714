import type { Answer } from '../../project/common.js';
import { type Data, kind } from '../engine/kind.js';
import type { Derived } from '../engine/told.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { anchoragesAnswer, examineAnchorages } from './parts/anchorages.js';
import { product } from './parts/maybe.js';
import { examineTorques } from './parts/torques.js';
import { shape } from './seating-fields.js';

type Seating = Data<typeof shape>;
type Seat = NonNullable<Seating['seats']>[number];
type Belt = NonNullable<Seating['belts']>[number];

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
  raises: (item, d) => {
    const lap = d.belts?.map((b) => b.belt === 'lap') ?? [];
    if (item === loadOf('lap')) return lap.includes(true);
    if (item === loadOf('lap-and-torso')) return lap.length === 0 || lap.includes(false);
    return !aboutSeats.has(item) || (d.seats?.length ?? 0) > 0;
  },
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
    'seating.plate-centred': centred(d),
    'seating.material': ofSeats(d, (s) => s.through),
    'seating.child-points': childPoints(d),
  }),
  states: (d) => ({
    'seats-changed': d.seats?.length
      ? d.seats.some((s) => s.change !== undefined && isChanged(s))
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
    for (const seat of data.seats ?? []) if (isChanged(seat)) examineSeat(seat, work);
    anchorageLoads(data, work);
    examineTorques(data.torques, work);
  },
});

/** Common practice, no source: more than a cushion and a tape are uncertain by. */
const settled = 0.02;

/** A seat that is not where it was, by word or by the height of its cushion; without a word it may be. */
function isChanged(seat: Seat): boolean {
  const [was, now] = [seat['height-was']?.quantity.si, seat['height-now']?.quantity.si];
  const moved = was !== undefined && now !== undefined && Math.abs(now - was) > settled * (1 + 1e-9);
  return seat.change !== 'removed' && (seat.change !== 'kept' || moved);
}

/** `front-left: 4 × M8x1.25 10.9; rear: …` where every item of the list has the word. */
function stated<T extends { id: string }>(
  all: readonly T[] | undefined,
  word: (one: T) => string | undefined,
): Answer | undefined {
  const told = (all ?? []).map((one) => ({ id: one.id, says: word(one) }));
  return told.length > 0 && told.every((t) => t.says)
    ? { answer: told.map((t) => `${t.id}: ${t.says}`).join('; ') }
    : undefined;
}

/** Seats that are as they were need no word. */
function ofSeats({ seats }: Seating, word: (seat: Seat) => string | undefined): Answer | undefined {
  const changed = seats?.filter(isChanged);
  return seats?.length && changed?.length === 0
    ? { answer: 'no seat was exchanged, moved or added' }
    : stated(changed, word);
}

function plateText({ plate, through }: Seat): string | undefined {
  if (through === 'original') return "the maker's own anchorage, no plate added";
  if (!plate?.length || !plate.width || !plate.thickness || !plate.material || !plate.against) return undefined;
  const [long, wide] = [plate.length.quantity, plate.width.quantity];
  const size = `${long.text} by ${wide.text}, ${plate.thickness.quantity.text} thick`;
  return `${size}, ${Math.round(long.si * wide.si * 1e6)} mm2 in contact, ${plate.material}, against ${plate.against}`;
}

/** Whether each bolt goes through the middle of its plate; the maker's own anchorages have none. */
function centred({ seats }: Seating): Derived | undefined {
  const plated = seats?.filter((s) => isChanged(s) && s.through !== 'original');
  if (!seats?.length || !plated) return undefined;
  if (plated.length === 0)
    return { answer: 'not applicable', because: 'no plate was added under an anchorage', from: ['seats'] };
  const off = plated.filter((s) => s.plate?.centred === 'no').map((s) => s.id);
  if (off.length > 0) return { answer: 'no', because: off.join(', '), from: ['seats', off[0]!, 'plate', 'centred'] };
  return plated.every((s) => s.plate?.centred) ? { answer: 'yes', from: ['seats'] } : undefined;
}

const plateItems = ['seating.plate-area', 'seating.plate-thickness'] as const;
const aboutSeats: ReadonlySet<string> = new Set(['seating.bolt-number', 'seating.plate-centred', ...plateItems]);

/** Bolts and plates of a seat against the figures of the builder's copy. */
function examineSeat({ id, bolts, plate, through }: Seat, work: Work): void {
  work.compare('seating.bolt-number', id, work.take(bolts, 'seats', id, 'bolts'));
  const take = (name: 'length' | 'width' | 'thickness') => work.take(plate?.[name], 'seats', id, 'plate', name);
  const sizes: Record<(typeof plateItems)[number], Maybe> = {
    'seating.plate-area': inContact(take('length'), take('width')),
    'seating.plate-thickness': take('thickness'),
  };
  for (const item of plateItems)
    if (through === 'original')
      work.state(item, id, 'out', "the maker's own anchorage, no plate added", { path: ['seats', id, 'through'] });
    else work.compare(item, id, sizes[item]);
}

function inContact(length: Maybe, width: Maybe): Maybe {
  const area = product(length, width);
  return isMissing(area) ? area : { ...area, unit: 'mm^2' };
}

function onSeat({ belts }: Seating): Derived | undefined {
  const on = belts?.filter((b) => b['on-seat'] === 'yes').map((b) => b.id) ?? [];
  if (on.length > 0) return { answer: 'yes', because: on.join(', '), from: ['belts'] };
  return belts?.length && belts.every((b) => b['on-seat']) ? { answer: 'no', from: ['belts'] } : undefined;
}

function childPoints({ 'child-points': points }: Seating): Derived | undefined {
  const not = points?.filter((p) => p.usable === 'no').map((p) => p.id) ?? [];
  if (not.length > 0) return { answer: 'no', because: not.join(', '), from: ['child-points'] };
  return points?.length && points.every((p) => p.usable)
    ? { answer: 'yes', because: points.map((p) => p.id).join(', '), from: ['child-points'] }
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

/** The item that holds the load of an anchorage of such a belt: lap only has a figure of its own. */
const loadOf = (belt: Belt['belt']) => (belt === 'lap' ? 'seating.anchorage-load-lap' : 'seating.anchorage-load');

/** An added anchorage is shown to hold its load; what that load is depends on the belt. */
function anchorageLoads({ belts }: Seating, work: Work): void {
  const proved = (belts ?? []).filter((b) => b['proof-load']);
  if (proved.length === 0)
    return work.compare(loadOf(belts?.[0]?.belt), '', work.lacks('belts', belts?.[0]?.id ?? '…', 'proof-load'));
  for (const { id, belt, 'proof-load': proof } of proved) {
    const load = work.take(proof, 'belts', id, 'proof-load');
    if (belt === 'harness' && !isMissing(load))
      work.state(loadOf(belt), id, 'unconfirmed', 'what the anchorages of a harness must hold is not in the figures', {
        of: 'requirement',
        measured: load,
        todo: 'agree the load with the certifier',
        path: ['belts', id, 'belt'],
      });
    else
      work.compare(loadOf(belt), id, belt ? load : work.lacks('belts', id, 'belt'), {
        states: { 'anchorage-added': 'yes' },
      });
  }
}
