import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor } from '../../anchors.js';
import { itemCode } from '../../item.js';
import type { Subject } from '../../subject.js';
import { table } from '../../table.js';

/** What was read in the own copy or agreed by letter: figures, and items that stand so there; by whom, on which day. */
export function ownFigureRegister(subject: Subject): Element[] {
  const { ownFigures, confirmed } = subject.rules;
  if (ownFigures.size === 0 && !confirmed?.size) return [];
  const rows = [...ownFigures.values()].map((f) => [
    itemCode(f.item, subject),
    [
      f.min && `at least ${f.min}`,
      f.above && `more than ${f.above}`,
      f.max && `at most ${f.max}`,
      f.below && `less than ${f.below}`,
    ]
      .filter(Boolean)
      .join(' and '),
    f.letter ? `letter ${f.letter}` : [f.document, f.edition, f.clause].filter(Boolean).join(', '),
    f['agreed-with'] ? `agreed with ${f['agreed-with']}` : f['read-by'],
    f.on,
  ]);
  for (const c of confirmed?.values() ?? [])
    rows.push([
      itemCode(c.item, subject),
      'stands so',
      [c.document, c.edition, c.clause].filter(Boolean).join(', '),
      c['read-by'],
      c.on,
    ]);
  return [
    h('section', { id: anchor.section('own-figures') }, [
      h('h2', 'Figures read in the own copy'),
      table(
        'own-figures',
        'Each stands before what this program has',
        [
          ['Item', 28],
          ['Figure', 24],
          ['Edition and clause', 24],
          ['Read by', 12],
          ['On', 12],
        ],
        rows,
        { id: 'own-figures' },
      ),
    ]),
  ];
}
