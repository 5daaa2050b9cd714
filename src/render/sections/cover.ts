import type { Element } from 'hast';
import { h } from 'hastscript';
import { countsByClass } from '../../checks/engine/finding.js';
import { classLabels, outcomeLabel, signOf } from '../../checks/engine/outcome-words.js';
import { anchor } from '../anchors.js';
import { documentId, isDraft, type Subject } from '../subject.js';

/** Cover: what the document is, of which state of the files, and how the findings stand. */
export function cover(subject: Subject): Element {
  const { build, identity, evaluation } = subject;
  const { vehicle } = build.data;
  return h('section.cover', { id: anchor.section('cover') }, [
    h('div.cover-head', [
      h('p.cover-kind', subject.as === 'proposal' ? 'Proposal for modification' : 'Modification submission'),
      h('h1', build.data.title),
      h('p.cover-vehicle', [
        `${vehicle.make} ${vehicle.model}, built ${vehicle.built}`,
        ...(vehicle.vin ? [h('br'), `VIN or chassis number ${vehicle.vin}`] : []),
      ]),
      ...(build.data.invented
        ? [h('p.invented', 'Invented example: vehicle, people, measurements and pictures are made up.')]
        : []),
    ]),
    h('div.cover-state', [
      h('p.list-title', subject.as === 'proposal' ? 'How the planned values stand' : 'How the findings stand'),
      h(
        'dl.cover-counts',
        countsByClass(evaluation.findings).flatMap(({ of, counts }) => [
          h('dt', classLabels[of]),
          h(
            'dd',
            counts
              .filter(({ count }) => count > 0)
              .map(({ outcome, count }) =>
                h('span', [
                  h('b', String(count)),
                  ' ',
                  h('span.sign', { ariaHidden: 'true' }, signOf(outcome)),
                  ` ${outcomeLabel(outcome)}`,
                ]),
              ),
          ),
        ]),
      ),
      h(
        'p.cover-word',
        'This document prepares evidence. It does not certify: the certifying engineer and the registration authority decide.',
      ),
    ]),
    h('dl.title-block', [
      ...fact('Document', documentId(subject)),
      ...(subject.changes ? fact(isDraft(identity) ? 'Follows' : 'Replaces', subject.changes.from.label) : []),
      ...fact('Date', identity.date),
      ...fact('Prepared by', build.data.workshop ?? 'not stated'),
      ...fact(
        'For',
        build.data.certifier
          ? [build.data.certifier.name, build.data.certifier.number].filter(Boolean).join(', ')
          : 'certifying engineer, not yet named',
      ),
      ...fact('Modification codes in scope', build.data.codes?.join(', ') ?? 'not stated'),
      ...fact('State of the files', stateOf(subject)),
      ...(isDraft(identity) ? fact('Draft', draftReason(subject)) : []),
    ]),
  ]);
}

function stateOf({ identity }: Subject): string {
  if (!identity.commit) return 'outside a git repository, so no history can be shown';
  const tag = identity.tag ? `, tag ${identity.tag}${identity.signature ? ` (${identity.signature})` : ''}` : '';
  return `commit ${identity.commit.slice(0, 12)}${tag}`;
}

function draftReason({ identity }: Subject): string {
  if (!identity.commit) return 'not issued: the files are not in a git repository';
  if (identity.dirty.length > 0)
    return `not issued: files differ from the commit: ${identity.dirty.slice(0, 3).join(', ')}${identity.dirty.length > 3 ? ` and ${identity.dirty.length - 3} more, listed at the end` : ''}`;
  return 'not issued: this commit carries no issue letter';
}

const fact = (name: string, value: string) => [h('div', [h('dt', name), h('dd', value)])];
