import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor } from '../../anchors.js';
import { itemCode } from '../../item.js';
import type { Subject } from '../../subject.js';
import { table } from '../../table.js';

/** Figures that stand before the built-in ones: who read which, in which edition, on which day. */
export function ownFigureRegister(subject: Subject): Element[] {
  const { ownFigures } = subject.rules;
  if (ownFigures.size === 0) return [];
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
    [f.document, f.edition, f.clause].filter(Boolean).join(', '),
    f['read-by'],
    f.on,
  ]);
  return [
    h('section', { id: anchor.section('own-figures') }, [
      h('h2', 'Figures read in the own copy'),
      table(
        'own-figures',
        'Each stands before the figure that this program has',
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
