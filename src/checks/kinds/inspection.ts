import { spread, type Value } from '../../calc/value.js';
import { stages } from '../../project/common.js';
import type { Measured } from '../../project/fields.js';
import { anyQuantity, choice, list, onDay, quantity, text, yesNo } from '../../project/fields.js';
import { measuredIn } from '../../project/measured-in.js';
import type { Note } from '../../project/model.js';
import { jurisdictions } from '../../project/vehicle.js';
import { showQuantity } from '../../units/show.js';
import { differenceUnit, sameDimension, unit } from '../../units/unit.js';
import { alike } from '../engine/alike.js';
import { type Data, kind } from '../engine/kind.js';
import { usualUncertaintyOf } from '../engine/values.js';
import { isMissing, type Work } from '../engine/work.js';
import { difference } from './parts/maybe.js';

const shape = {
  on: onDay('day of the visit'),
  who: text('certifier who came', 'R. Ansell'),
  number: text('signatory or licence number', 'EX-114'),
  stage: choice(stages, 'stage of the work that was seen'),
  seen: text('what was open to view', 'gearbox crossmember tacked, rails bare, engine out'),
  'not-seen': text('what was covered already or not looked at'),
  said: text('what was said and decided', 'crossmember may be welded; the twist test is to be repeated'),
  confirmed: yesNo('has the certifier confirmed this record'),
  'build-date-from': text('where month and year of build were read', 'plate on the left pillar'),
  'other-procedure': text(
    'another procedure than that of the code, with the reasons that the certifier accepted; or none',
    'none',
  ),
  'standards-kept': yesNo('was each standard that the work touches read in full, and does the car still meet it'),
  editions: list(
    {
      section: text('section of the code, or other text', 'LA'),
      edition: text('its version and date', 'version 2.0, January 2011'),
      checked: onDay('day on which it was last checked to be current'),
    },
    'editions used, one item a section',
  ),
  released: list(
    {
      note: text('note that the hold point belongs to, by name or number', '020-crossmember'),
      point: text('id of the hold point', 'tacked'),
      released: yesNo('did the certifier release it'),
      on: onDay('day of the release, where it came after the visit, such as by letter'),
      words: text('in the words of the certifier, with conditions', 'weld as tacked'),
    },
    'hold points that were shown',
  ),
  open: list(
    {
      says: text('what is still to be done or shown', 'repeat the twist test with the doors off'),
      until: text('by when, or before which stage', 'before paint'),
      settled: yesNo('is it settled'),
      by: text('where that is shown', 'note 090'),
    },
    'points that the certifier left open',
  ),
  agreed: list(
    {
      says: text('load case, procedure or concession that was agreed', 'load case crossmember-drop, factor 3'),
      shown: text('letter or page that says so', 'letter of 2026-02-10'),
    },
    'what was agreed at the visit',
  ),
  readings: list(
    {
      what: text('what was measured again, and where', 'wall of the new crossmember, middle'),
      note: text('note that the first reading stands in', '020-crossmember'),
      builder: anyQuantity('reading of the note', { typical: '2.48 ± 0.03 mm' }),
      certifier: anyQuantity('reading of the certifier', {
        how: 'own instrument, same place, without knowing the first',
        typical: '2.50 ± 0.03 mm',
      }),
    },
    'readings that the certifier took again',
  ),
  odometer: quantity('km', 'odometer at the visit', { typical: '184212 km', usual: [0, 1500000] }),
  'ride-height-front': quantity('mm', 'ride height in front at the visit', {
    measuredAs: 'ride-height',
    how: 'tape from wheel centre to guard, mean of left and right',
    typical: '352 mm',
  }),
  'ride-height-rear': quantity('mm', 'ride height at the rear at the visit', {
    measuredAs: 'ride-height',
    how: 'tape from wheel centre to guard, mean of left and right',
    typical: '360 mm',
  }),
  duration: quantity('h', 'how long the visit took', { typical: '1.5 h', usual: [0.2, 14] }),
};
type Inspection = Data<typeof shape>;

/** A visit of the certifier. */
export const inspection = kind({
  id: 'inspection',
  title: 'Inspection',
  covers:
    'A visit of the certifier: day, who, what was seen and not seen, hold points released, points left open, what was agreed, editions used, and readings taken again.',
  shape,
  holdPoints: [
    {
      id: 'work-as-inspected',
      shows: 'The work as it stood at the visit',
      level: 'record',
      during: 'assembled',
      before: 'painted',
      serves: 'inspection.shown',
    },
    {
      id: 'readings-again',
      shows: 'Instruments of the certifier on the work',
      level: 'record',
      during: 'assembled',
      before: 'painted',
    },
  ],
  cautions: ['stands'],
  answers: (d) => ({
    'vehicle.editions': editions(d),
    'vehicle.standards-kept': d['standards-kept'] && { answer: d['standards-kept'], from: ['standards-kept'] },
    'inspection.who':
      d.on && d.who && d.stage && d.seen
        ? {
            answer: `${[d.who, d.number].filter(Boolean).join(', ')} on ${d.on}, ${stages[d.stage]}: ${d.seen}${d['not-seen'] ? `; not seen: ${d['not-seen']}` : ''}`,
          }
        : undefined,
    'inspection.released': releasedAnswer(d),
    'inspection.other-procedure': d['other-procedure'] ? { answer: d['other-procedure'] } : undefined,
    'inspection.record':
      d.confirmed === 'yes' && d.said ? { answer: 'confirmed by the certifier', shown: 'note' } : undefined,
    'inspection.agreement':
      d.agreed?.length && d.agreed.every((a) => a.says && a.shown)
        ? { answer: d.agreed.map((a) => `${a.says} (${a.shown})`).join('; '), shown: 'note' }
        : undefined,
  }),
  evaluate: ({ data }, work) => {
    const { vehicle } = work.build.data;
    if (vehicle.registration)
      work.derive('vehicle.state', {
        answer: vehicle.registration,
        because: 'as build.md states',
        from: { inBuild: ['vehicle', 'registration'] },
        excludes: (said) => namesAnother(said, vehicle.registration!),
      });
    if (data['build-date-from'])
      work.derive('vehicle.build-date', {
        answer: vehicle.built,
        because: `as build.md states, read on: ${data['build-date-from']}`,
        from: ['build-date-from'],
        excludes: (said) => namesAnotherDay(said, vehicle.built),
      });
    openPoints(data, work);
    for (const reading of data.readings ?? []) readAgain(reading, work);
  },
});

/** Whether words name another state or territory and not this one. */
function namesAnother(said: string, own: keyof typeof jurisdictions): boolean {
  const named = Object.entries(jurisdictions).filter(
    ([short, long]) => said.split(/[^A-Za-z]+/).includes(short) || said.toLowerCase().includes(long.toLowerCase()),
  );
  return named.length > 0 && !named.some(([short]) => short === own);
}

/** Whether words name a month or year, and none that fits this one. */
function namesAnotherDay(said: string, built: string): boolean {
  const named = said.match(/\b(?:19|20)\d{2}(?:-\d{2}){0,2}\b/g) ?? [];
  return named.length > 0 && !named.some((day) => built.startsWith(day) || day.startsWith(built));
}

function editions({ editions: used }: Inspection) {
  return used?.length && used.every((e) => e.section && e.edition && e.checked)
    ? { answer: used.map((e) => `${e.section}: ${e.edition}, checked ${e.checked}`).join('; ') }
    : undefined;
}

function releasedAnswer({ released }: Inspection) {
  const named = (all: typeof released) =>
    (all ?? []).map((r) => `${r.note ?? ''} ${r.point ?? r.id}`.trim()).join(', ');
  const held = released?.filter((r) => r.released === 'no') ?? [];
  if (held.length > 0) return { answer: 'no', because: named(held), from: ['released'] };
  return released?.length && released.every((r) => r.released)
    ? { answer: 'yes', because: named(released), from: ['released'] }
    : undefined;
}

/** A point stays open until the note says where it was settled. */
function openPoints({ open }: Inspection, work: Work): void {
  for (const point of open ?? []) {
    const says = point.says ?? point.id;
    if (point.settled === 'yes' && point.by)
      work.state('inspection.open-points', point.id, 'met', `${says}: settled, ${point.by}`, {
        answer: 'yes',
        path: ['open', point.id],
      });
    else
      work.state(
        'inspection.open-points',
        point.id,
        'missing',
        `${says}${point.until ? ` (${point.until})` : ''}: ${point.settled === 'yes' ? 'said to be settled, but not where that is shown' : 'open'}`,
        {
          todo:
            point.settled === 'yes'
              ? 'say under `by:` where it is shown'
              : 'settle it, then say under `settled:` whether it is and under `by:` where that is shown',
          path: ['open', point.id],
        },
      );
  }
}

/** Notes are named in full or by their number. */
const isNamed = (note: Note, name: string): boolean => note.name === name || /^\d+/.exec(note.name)?.[0] === name;

/** Whether a value of a note, or one of its readings, is this one. */
const isReading = ({ quantity, places = [] }: Measured, { si, unit: of }: Value): boolean =>
  sameDimension(quantity.dimension, unit(of).dimension) &&
  [quantity, ...places]
    .flatMap((one) => [one.si, ...(one.readings ?? [])])
    .some((one) => Math.abs(one - si) <= 1e-9 * Math.max(1e-9, Math.abs(si)));

/** Two readings of one thing agree within what two usual instruments of its class may read apart: common practice, no source. */
function readAgain(reading: NonNullable<Inspection['readings']>[number], work: Work): void {
  const { id } = reading;
  const [first, again] = [
    work.take(reading.builder, 'readings', id, 'builder'),
    work.take(reading.certifier, 'readings', id, 'certifier'),
  ];
  const about = `${reading.what ?? id}${reading.note ? ` (note ${reading.note})` : ''}`;
  const path = ['readings', id];
  if (isMissing(first) || isMissing(again))
    return work.state('inspection.readings-agree', id, 'missing', `${about}: not measured both times`, {
      todo: `fill in readings.${id}.${isMissing(first) ? 'builder' : 'certifier'}`,
      path,
    });
  if (!sameDimension(unit(first.unit).dimension, unit(again.unit).dimension))
    return work.state(
      'inspection.readings-agree',
      id,
      'missing',
      `${about}: ${first.unit} and ${again.unit} cannot be compared`,
      { todo: 'write both in units of one kind', path },
    );
  const source = reading.note === undefined ? undefined : work.build.notes.find((n) => isNamed(n, reading.note!));
  if (!source || !measuredIn(source.data).some((m) => isReading(m, first)))
    return work.state(
      'inspection.readings-agree',
      id,
      'missing',
      `${about}: ${source ? `no reading of ${showQuantity(first.si, first.unit, spread(first))} stands in ${source.name}` : 'it does not say in which note the first reading stands'}`,
      {
        todo: source
          ? `write what stands in ${source.name}, or correct it there`
          : `name the note under readings.${id}.note`,
        path,
      },
    );
  const apart = difference(again, first);
  if (isMissing(apart)) return;
  const tolerance = Math.hypot(...[reading.builder, reading.certifier].map((m) => usualUncertaintyOf(m!)));
  const result = alike(apart, tolerance);
  const shown = [first, again].map((v) => showQuantity(v.si, first.unit, spread(v)));
  const within = showQuantity(tolerance, differenceUnit(first.unit));
  const says = {
    met: `they agree within ${within}`,
    against: `they do not agree within ${within}`,
    unclear: `both are too uncertain to show that they agree within ${within}`,
  };
  const todo = {
    met: undefined,
    against: 'find out which is right, correct it in the note and look at what rests on it',
    unclear: 'state the instruments or what each reading is uncertain by, or read both again with a finer instrument',
  };
  work.state(
    'inspection.readings-agree',
    id,
    result,
    `${about}: ${shown[0]} in the note, ${shown[1]} read again; ${says[result]}`,
    {
      ...(result === 'unclear' ? {} : { answer: result === 'met' ? 'yes' : 'no' }),
      measured: again,
      todo: todo[result],
      path,
    },
  );
}
