import { spread } from '../../calc/value.js';
import { anyQuantity, choice, list, onDay, text, yesNo } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { sameDimension } from '../../units/unit.js';
import { exactBound, type Limit } from '../codes/limit.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Work } from '../engine/work.js';
import { boltsField, examineEngagement } from './parts/engagement.js';

const shape = {
  purpose: text(
    'what is measured, where, in which state, and which decision rests on it',
    'run-out of the pinion flange, mounted, before the shaft goes in',
  ),
  section: text('section of the code that the work belongs to, or none as the certifier sees it', 'LB'),
  'measured-again': yesNo('was it measured again on its own, by another person or with another instrument'),
  measurements: list(
    {
      what: text('what it is', 'run-out of the pinion flange'),
      was: anyQuantity('value as received', { typical: '0.05 mm' }),
      value: anyQuantity('value now', {
        how: 'say under `with:` which instrument; three readings or places in one list, each of which is judged',
        typical: '[0.04, 0.05, 0.04] mm',
      }),
      least: anyQuantity('least value allowed', { typical: '0.00 mm' }),
      greatest: anyQuantity('greatest value allowed', { typical: '0.08 mm' }),
      excluded: yesNo('is the limit itself not allowed any more (less than, more than)'),
      document: text('document that the limit stands in', "maker's workshop manual"),
      edition: text('its edition or date', '1983'),
      clause: text('clause, page or table', 'page 4-12'),
      basis: choice(
        { 'own-copy': 'a rule, read in the own copy', maker: 'figure of the maker of vehicle or part' },
        'what the limit rests on',
      ),
      'read-by': text('who read it', 'JO'),
      'read-on': onDay('day on which it was read'),
    },
    'measurements with their own limits, each an item of its own',
  ),
  bolts: boltsField,
};
type General = Data<typeof shape>;
type Measurement = NonNullable<General['measurements']>[number];

/** Any measurement with a limit of its own. */
export const general = kind({
  id: 'general',
  title: 'General measurement',
  covers:
    'Any measurement for which there is no kind of its own, with the limit and its source stated in the note: a rule read in the own copy, or a figure of a maker.',
  shape,
  holdPoints: [
    {
      id: 'as-received',
      shows: 'The place of the measurement as it came, with a scale',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'measured',
      shows: 'The instrument on the part, with its display',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      serves: 'general.shown',
    },
  ],
  cautions: ['stands'],
  raises: (item, d) => item !== 'fasteners.engagement' || d.bolts !== undefined,
  answers: (d) => ({
    'general.purpose': d.purpose ? { answer: d.purpose } : undefined,
    'general.section': d.section ? { answer: d.section } : undefined,
    'general.repeatable': d['measured-again'] && { answer: d['measured-again'], from: ['measured-again'] },
    'general.source': sourced(d)
      ? { answer: d.measurements!.map((m) => `${m.what ?? m.id}: ${sourceOf(m)}`).join('; ') }
      : undefined,
    'general.readings':
      d.measurements?.length && d.measurements.every((m) => m.value)
        ? { answer: 'in this note', shown: 'note' }
        : undefined,
    'general.limit-paper': sourced(d) ? { answer: 'clause and edition are noted', shown: 'note' } : undefined,
  }),
  evaluate: ({ data }, work) => {
    const all = data.measurements ?? [];
    if (all.length === 0) work.compare('general.limit', '', work.lacks('measurements'));
    for (const one of all) compareOne(one, work);
    if (data.bolts?.length) examineEngagement(data.bolts, work);
  },
});

/** What a reader needs to find the limit again. */
const needs = {
  'own-copy': ['document', 'edition', 'clause', 'read-by', 'read-on'],
  maker: ['document', 'clause'],
} as const;
const lackingOf = (m: Measurement): readonly string[] =>
  m.basis ? needs[m.basis].filter((name) => !m[name]) : ['basis'];
const sourceOf = (m: Measurement) =>
  [m.document, m.edition, m.clause].filter(Boolean).join(', ') +
  (m['read-by'] ? `, read by ${m['read-by']}${m['read-on'] ? ` on ${m['read-on']}` : ''}` : '');
const sourced = ({ measurements }: General) =>
  (measurements?.length ?? 0) > 0 && measurements!.every((m) => lackingOf(m).length === 0);

function compareOne(one: Measurement, work: Work): void {
  const path = ['measurements', one.id];
  const value = work.take(one.value, ...path, 'value');
  if (isMissing(value)) return work.compare('general.limit', one.id, value);
  const shown = `measured ${showQuantity(value.si, value.unit, spread(value))}`;
  const say = (outcome: 'missing' | 'unconfirmed', says: string, todo: string) =>
    work.state('general.limit', one.id, outcome, `${shown}; ${says}`, { measured: value, todo, path });
  const bounds = [one.least, one.greatest].filter((b) => b !== undefined);
  if (bounds.length === 0)
    return say(
      'missing',
      'no limit is stated',
      `state \`least:\` or \`greatest:\` under measurements.${one.id}, with the document that it stands in`,
    );
  const stray = bounds.find((b) => !sameDimension(b.quantity.dimension, one.value!.quantity.dimension));
  if (stray)
    return say(
      'missing',
      `the limit is in ${stray.quantity.unit}, which cannot be compared`,
      `write limit and value in units of one kind`,
    );
  const lacking = lackingOf(one);
  if (lacking.length > 0)
    return say(
      'unconfirmed',
      'the limit is stated without its whole source',
      `fill in ${lacking.map((name) => `measurements.${one.id}.${name}`).join('; ')}`,
    );
  work.compare('general.limit', one.id, value, { limit: limitOf(one, value.unit) });
}

function limitOf(one: Measurement, unit: string): Limit {
  return {
    min: one.least && exactBound(one.least.quantity.si, one.excluded === 'yes'),
    max: one.greatest && exactBound(one.greatest.quantity.si, one.excluded === 'yes'),
    unit,
    document: one.document!,
    edition: one.edition,
    clause: one.clause,
    basis: one.basis!,
    readBy: one['read-by'],
    on: one['read-on'],
  };
}
