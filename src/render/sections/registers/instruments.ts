import type { Element } from 'hast';
import { h } from 'hastscript';
import { measuredIn } from '../../../project/measured-in.js';
import { anchor, joined, label, pointer } from '../../anchors.js';
import type { Subject } from '../../subject.js';
import { below, table } from '../../table.js';

/** The instruments with their uncertainty and last check, and how many values of which note were taken with each. */
export function instrumentRegister({ build }: Subject): Element {
  const rows = (build.data.instruments ?? []).map((i) => {
    const uses = build.notes.flatMap((n) => {
      const count = measuredIn(n.data).filter((m) => m.with === i.id).length;
      return count > 0 ? [h('span', [pointer(anchor.note(n.name), label.note(n.name), false), ` (${count})`])] : [];
    });
    return [
      h('span', { id: anchor.instrument(i.id) }, h('code', i.id)),
      h('span', [i.what, ...(i.number ? [below(`number ${i.number}`)] : [])]),
      h('span', [
        i.uncertainty ? `± ${i.uncertainty.quantity.text}` : 'not stated',
        ...(i.resolution ? [below(`reads to ${i.resolution.quantity.text}`)] : []),
      ]),
      h('span', [i.checked ?? 'no check stated', ...(i['checked-by'] ? [below(i['checked-by'])] : [])]),
      uses.length > 0 ? h('span', joined(uses)) : '–',
    ];
  });
  const caption =
    'Instruments, their expanded uncertainty (k = 2), last check, and the number of values taken with each';
  const content =
    rows.length > 0
      ? table(
          'instruments',
          caption,
          [
            ['Name', 17],
            ['What', 26],
            ['Uncertainty', 15],
            ['Checked', 22],
            ['Used in', 20],
          ],
          rows,
          { id: 'instruments' },
        )
      : h('p', 'No instrument is declared.');
  return h('section', { id: anchor.section('instruments') }, [h('h2', 'Register of instruments'), content]);
}
