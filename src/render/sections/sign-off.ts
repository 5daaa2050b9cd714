import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor } from '../anchors.js';
import { documentId, type Subject } from '../subject.js';

/** Blank fields for those who sign; nothing is filled in here. */
export function signOff(subject: Subject): Element {
  const { certifier } = subject.build.data;
  const proposal = subject.as === 'proposal';
  const builder = ['Name', 'Signature', 'Date'];
  const engineer = [
    'Name of the certifying engineer',
    'Signatory or licence number',
    ...(proposal ? ['Hold points to be witnessed'] : []),
    'Calculation sheets checked',
    'Findings and concessions accepted',
    'Conditions',
    ...(proposal ? [] : ['Certificate number']),
    'Signature',
    'Date',
  ];
  return h('section.sign-off.opens', { id: anchor.section('sign-off') }, [
    h('h2', 'Sign-off'),
    h(
      'p',
      `Of ${documentId(subject)}. Filled in by hand; Gusset writes nothing into these fields and certifies nothing.`,
    ),
    blanks(
      proposal ? 'The builder: the work will be done as proposed' : 'The builder: the notes say what was done',
      builder,
    ),
    blanks(proposal ? 'The certifying engineer, on the proposal' : 'The certifying engineer', engineer),
    ...(certifier
      ? [h('p.quiet', `Prepared for ${[certifier.name, certifier.number].filter(Boolean).join(', ')}.`)]
      : []),
  ]);
}

function blanks(caption: string, names: readonly string[]): Element {
  return h('table.sign', [
    h('caption', caption),
    h(
      'tbody',
      names.map((name) => h('tr', [h('th', { scope: 'row' }, name), h('td.blank')])),
    ),
  ]);
}
