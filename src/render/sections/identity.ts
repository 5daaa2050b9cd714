import type { Element } from 'hast';
import { h } from 'hastscript';
import { spread, type Value } from '../../calc/value.js';
import { valueOf } from '../../checks/engine/values.js';
import { type FactName, originalFacts } from '../../project/facts.js';
import type { Measured } from '../../project/fields.js';
import { categories, jurisdictions } from '../../project/vehicle.js';
import { showQuantity } from '../../units/show.js';
import { anchor, capitalised, label } from '../anchors.js';
import { nameFigures } from '../figures.js';
import { fieldPointer, originOf } from '../origin.js';
import { documentId, type Subject } from '../subject.js';
import { below, table } from '../table.js';
import { takenText } from './photos.js';

/** Identity page: the vehicle, who made the document and for whom, ratings before and after, load cases, people. */
export function identityPage(subject: Subject): Element {
  const { build, identity } = subject;
  const { vehicle, original } = build.data;
  const rows: [string, string | undefined][] = [
    ['Make and model', `${vehicle.make} ${vehicle.model}`],
    ['Body', vehicle.body],
    ['Built', vehicle.built],
    ['Category', vehicle.category && `${vehicle.category}, ${categories[vehicle.category]}`],
    ['VIN or chassis number', vehicle.vin],
    ['Registered in', vehicle.registration && jurisdictions[vehicle.registration]],
    [
      'Original engine',
      [original?.engine, vehicle['engine-number'] && `number ${vehicle['engine-number']}`].filter(Boolean).join(', ') ||
        undefined,
    ],
    ['Engine fitted', build.data['new-engine-number']],
    ['Tyre on the placard', original?.tyre?.written],
    ['Where the original mass comes from', original?.['mass-source']],
  ];
  const document: [string, string | undefined][] = [
    ['Document', documentId(subject)],
    ['Date and commit', [identity.date, identity.commit && `commit ${identity.commit}`].filter(Boolean).join(', ')],
    ['Prepared and measured by', build.data.workshop],
    [
      'For',
      build.data.certifier &&
        [build.data.certifier.name, build.data.certifier.number, build.data.certifier.contact]
          .filter(Boolean)
          .join(', '),
    ],
    ['Modification codes in scope', build.data.codes?.join(', ')],
    ['Signs for the design', build.data['signs-design']],
    ['Signs for the carrying out', build.data['signs-work']],
  ];
  const people = build.data.people ?? [];
  return nameFigures(
    h('section.opens', { id: anchor.section('identity') }, [
      h('h2', 'Identity of the vehicle'),
      h(
        'p',
        'All that follows relates only to the vehicle described here. This document is to be reproduced only in full.',
      ),
      ...viewsOf(subject),
      table('identity', 'The vehicle', ['', ''], stated(rows), { id: 'vehicle' }),
      ratings(subject),
      table('identity', 'The document, and who signs', ['', ''], stated(document), { id: 'document' }),
      ...(people.length > 0
        ? [
            table(
              'people',
              'People',
              [
                ['Initials', 15],
                ['Name', 40],
                ['Role', 45],
              ],
              people.map((p) => [p.id, p.name, [p.role, p.contact].filter(Boolean).join(', ')]),
              { id: 'people' },
            ),
          ]
        : []),
      ...loadCases(subject),
    ]),
  );
}

const stated = (rows: readonly [string, string | undefined][]) =>
  rows.map(([name, value]) => [name, value ?? h('span.quiet', 'not stated')]);

/** Which fact of the vehicle as modified stands beside which of the vehicle as it came. */
const pairs: readonly [says: string, was: FactName | undefined, now: FactName | undefined][] = [
  ['Tare of the original model', 'original_mass', undefined],
  ['Gross vehicle mass', 'gvm', undefined],
  ['Swept volume', 'original_capacity', 'engine_capacity'],
  ['Largest engine offered for the model', 'largest_option_capacity', undefined],
  ['Power', 'original_power', 'engine_power'],
  ['Torque', 'original_torque', 'engine_torque'],
  ['Highest engine speed', undefined, 'engine_speed'],
  ['Mass of the engine fitted', undefined, 'engine_mass'],
  ['Final drive', 'final_drive', 'final_drive'],
  ['Wheelbase', 'wheelbase', undefined],
  ['Front track', 'original_track_front', 'track_front'],
  ['Rear track', 'original_track_rear', 'track_rear'],
  ['Seats', 'seats', undefined],
  ['Top speed', 'top_speed', undefined],
];

/** Ratings as the vehicle came and as modified, each stated in one place. */
function ratings(subject: Subject): Element {
  const { build, evaluation } = subject;
  const original = new Map(originalFacts(build).map((s) => [s.name, s.value]));
  const modified = (name: FactName | undefined) => {
    const found = name && evaluation.facts.get(name);
    return found?.note ? found.value : undefined;
  };
  /** A fact that no note states but a sheet gives. */
  const reckoned = (name: FactName | undefined) =>
    name && !modified(name) ? evaluation.reckoned.get(name) : undefined;
  const rows = pairs.flatMap(([says, was, now]) => {
    const [before, after, given] = [was && original.get(was), modified(now), reckoned(now)];
    return before || after || given
      ? [
          [
            says,
            before ? shown(before, subject) : '–',
            after
              ? h('span', [shown(after, subject), below(fieldPointer(after.at, subject))])
              : given
                ? h('span', [shownValue(given), below(originOf(given, subject))])
                : '–',
          ],
        ]
      : [];
  });
  return table(
    'ratings',
    'Ratings and sizes; each is stated once and read by every sheet that needs it',
    [
      ['What', 40],
      ['As it came', 28],
      ['As modified', 32],
    ],
    rows,
    { id: 'ratings' },
  );
}

const shown = (measured: Measured, { build }: Subject): string => shownValue(valueOf(measured, build));

function shownValue(value: Value): string {
  return showQuantity(value.si, value.unit, value.assumed.size > 0 ? 0 : spread(value));
}

function loadCases(subject: Subject): Element[] {
  const cases = subject.build.data['load-cases'] ?? [];
  if (cases.length === 0)
    return [h('p', 'No load case is stated; capacities are therefore given alone and count as no pass.')];
  const rows = cases.map((c) => [
    h('code', c.id),
    [c.says, c.source].filter(Boolean).join('; '),
    [c.force, c.moment].flatMap((m) => (m ? [shown(m, subject)] : [])).join(', ') || '–',
    c.factor ? shown(c.factor, subject) : '1',
    c['agreed-with'] && c['agreed-on'] ? `${c['agreed-with']}, ${c['agreed-on']}` : 'not yet agreed',
  ]);
  return [
    table(
      'load-cases',
      'Load cases',
      [
        ['Name', 18],
        ['What it is', 38],
        ['Load', 12],
        ['Factor', 9],
        ['Agreed with, on', 23],
      ],
      rows,
      { id: 'load-cases' },
    ),
  ];
}

/** Pictures of the whole vehicle that `build.md` names. */
function viewsOf(subject: Subject): Element[] {
  const views = (subject.build.data.photos ?? []).flatMap((photo) => {
    const picture = subject.pictures.get(photo.file);
    return picture
      ? [
          h('figure.photo', { id: anchor.photo(`build/${photo.file}`) }, [
            h('img', { src: picture.url, alt: photo.shows, width: picture.width, height: picture.height }),
            h('figcaption', [
              h('b', `${capitalised(label.photo('vehicle', photo.file))}. `),
              `${photo.shows}. `,
              h('span.photo-facts', `${takenText({}, picture)}.`),
            ]),
          ]),
        ]
      : [];
  });
  return views.length > 0 ? [h('div.photos.views', views)] : [];
}
