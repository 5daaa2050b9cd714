import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor } from '../../anchors.js';
import { outcomeMark } from '../../outcome.js';
import type { Subject } from '../../subject.js';
import { below, table } from '../../table.js';
import { findingPointer } from '../open-items.js';

/** Justifications of what does not conform, with the certifier's word. Outcomes stay what they are. */
export function concessionRegister({ evaluation }: Subject): Element {
  const conceded = evaluation.findings.filter((f) => f.concession);
  const rows = conceded.map((f) => {
    const { word, because, condition, by, on } = f.concession!;
    return [
      findingPointer(f),
      outcomeMark({ ...f, concession: undefined }),
      because,
      h('span', [h('b', word.replace('-', ' ')), ...(condition ? [below(condition)] : [])]),
      [by, on].filter(Boolean).join(', ') || '–',
    ];
  });
  const content =
    rows.length > 0
      ? table(
          'concessions',
          `Concessions: ${conceded.length}; outcomes stay what they are`,
          [
            ['Finding', 26],
            ['Outcome', 18],
            ['Because', 26],
            ['Word', 15],
            ['By, on', 15],
          ],
          rows,
          { id: 'concessions' },
        )
      : h('p', 'No concession is asked for.');
  return h('section', { id: anchor.section('concessions') }, [h('h2', 'Concessions'), content]);
}
