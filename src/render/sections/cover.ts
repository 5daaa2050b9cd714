import { h } from 'hastscript';
import type { Element } from 'hast';
import { anchor } from '../anchors.js';
import { documentId, isDraft, type Subject } from '../subject.js';
import { table } from '../table.js';
import { expanded } from '../../calc/value.js';
import { valueOf } from '../../checks/values.js';
import { showQuantity } from '../../units/show.js';
import { jurisdictions, categories } from '../../build/vehicle.js';
import { outcomes } from '../../checks/finding.js';
import { outcomeSays, signs } from '../../checks/outcome-words.js';

/** Cover: what the document is, of which state of the files, and how the findings stand. */
export function cover(subject: Subject): Element {
  const { build, identity, evaluation } = subject;
  const count = (o: (typeof outcomes)[number]) => evaluation.findings.filter((f) => f.outcome === o).length;
  const kind = subject.as === 'proposal' ? 'Proposal for modification' : 'Modification submission';
  return h('section.cover', { id: anchor.section('cover') }, [
    h('p.cover-kind', kind),
    h('h1', build.data.title),
    h('p.cover-vehicle', `${build.data.vehicle.make} ${build.data.vehicle.model}, built ${build.data.vehicle.built}`),
    ...(build.data.invented ? [h('p.invented', 'Invented example: vehicle, people, measurements and pictures are made up.')] : []),
    h('dl.cover-facts', [
      ...fact('Document', documentId(subject)),
      ...fact('State of the files', stateOf(subject)),
      ...fact('Date', identity.date),
      ...fact('Prepared by', build.data.workshop ?? 'not stated'),
      ...fact('For', build.data.certifier ? [build.data.certifier.name, build.data.certifier.number].filter(Boolean).join(', ') : 'certifying engineer, not yet named'),
      ...fact('Modification codes in scope', build.data.codes?.join(', ') ?? 'not stated'),
    ]),
    h('ul.cover-counts', outcomes.map((o) => h('li', [h('b', String(count(o))), ` ${signs[o]} ${outcomeSays[o]}`]))),
    h('p.cover-word', 'This document prepares evidence. It does not certify: the certifying engineer and the registration authority decide.'),
    ...(isDraft(identity) ? [h('p.draft-says', draftReason(subject))] : []),
  ]);
}

function stateOf({ identity }: Subject): string {
  if (!identity.commit) return 'files outside a git repository, so no history can be shown';
  const tag = identity.tag ? `, tag ${identity.tag}${identity.signature ? ` (${identity.signature})` : ''}` : '';
  return `commit ${identity.commit.slice(0, 12)}${tag}${identity.dirty.length > 0 ? `, with ${identity.dirty.length} file(s) changed since` : ''}`;
}

function draftReason({ identity }: Subject): string {
  if (!identity.commit) return 'DRAFT: the files are not in a git repository.';
  if (identity.dirty.length > 0) return `DRAFT: files differ from the commit: ${identity.dirty.slice(0, 8).join(', ')}${identity.dirty.length > 8 ? ' and more' : ''}.`;
  return 'DRAFT: this commit has not been issued.';
}

const fact = (name: string, value: string) => [h('dt', name), h('dd', value)];

/** Identity page: the vehicle as it came, engines, ratings, who signs, load cases. */
export function identityPage(subject: Subject): Element {
  const { build } = subject;
  const { vehicle, original } = build.data;
  const shown = (m: NonNullable<typeof original>['mass']) => {
    if (!m) return undefined;
    const v = valueOf(m, build);
    return showQuantity(v.si, v.unit, v.assumed.size > 0 ? 0 : expanded(v));
  };
  const rows: [string, string | undefined][] = [
    ['Make and model', `${vehicle.make} ${vehicle.model}`],
    ['Body', vehicle.body],
    ['Built', vehicle.built],
    ['Category', vehicle.category && `${vehicle.category}, ${categories[vehicle.category]}`],
    ['VIN or chassis number', vehicle.vin],
    ['Registered in', vehicle.registration && jurisdictions[vehicle.registration]],
    ['Original engine', [original?.engine, vehicle['engine-number'] && `number ${vehicle['engine-number']}`].filter(Boolean).join(', ') || undefined],
    ['Engine fitted', build.data['new-engine-number']],
    ['Original tare', shown(original?.mass) && `${shown(original?.mass)}${original?.['mass-source'] ? ` (${original['mass-source']})` : ''}`],
    ['Gross vehicle mass', shown(original?.gvm)],
    ['Original swept volume', shown(original?.capacity)],
    ['Largest engine offered', shown(original?.['largest-capacity'])],
    ['Original power and torque', [shown(original?.power), shown(original?.torque)].filter(Boolean).join(', ') || undefined],
    ['Wheelbase', shown(original?.wheelbase)],
    ['Track, front and rear', [shown(original?.['track-front']), shown(original?.['track-rear'])].filter(Boolean).join(', ') || undefined],
    ['Tyre on the placard', original?.tyre?.written],
    ['Signs for the design', build.data['signs-design']],
    ['Signs for the carrying out', build.data['signs-work']],
  ];
  const cases = build.data['load-cases'] ?? [];
  return h('section', { id: anchor.section('identity') }, [
    h('h2', 'Identity of the vehicle'),
    table('identity', 'The vehicle and its original state', ['', ''], rows.map(([name, value]) => [name, value ?? '—  not stated'])),
    ...(build.data.people?.length ? [table('people', 'People', ['Initials', 'Name', 'Role'], build.data.people.map((p) => [p.id, p.name, p.role]))] : []),
    ...(cases.length > 0
      ? [
          table(
            'load-cases',
            'Load cases',
            ['Name', 'What it is', 'Load', 'Factor', 'Agreed'],
            cases.map((c) => [c.id, [c.says, c.source].filter(Boolean).join('; '), [shown(c.force), shown(c.moment)].filter(Boolean).join(', ') || '—', shown(c.factor) ?? '1', c['agreed-with'] ? `${c['agreed-with']}, ${c['agreed-on'] ?? 'no date'}` : 'not yet agreed']),
          ),
        ]
      : [h('p', 'No load case is stated; capacities are therefore given alone and count as no pass.')]),
  ]);
}
