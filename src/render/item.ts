import type { Element } from 'hast';
import { h } from 'hastscript';
import type { CodeItem } from '../checks/codes/codes.js';
import type { Item } from '../checks/codes/item.js';
import type { Rests } from '../checks/codes/limit.js';
import { anchor } from './anchors.js';
import { restsText } from './limit-text.js';
import type { Subject } from './subject.js';

/** The id of an item, pointing at its row in the checklist where it has one. */
export function itemCode(id: string, { evaluation }: Subject): Element {
  const listed = evaluation.raised.some(({ item }) => item.id === id);
  return listed ? h('a.ref', { href: `#${anchor.item(id)}` }, h('code', id)) : h('code', id);
}

type Written = Item['rests'];

export const restsOf = (rests: Written): Rests => ({
  document: rests.document,
  edition: rests.edition,
  clause: rests.clause,
  basis: rests.basis,
  status: rests.status,
  readIn: rests['read-in'],
  readBy: rests['read-by'],
  on: rests.on,
});

/** Figures of other texts, for the reader; nothing is judged by them. */
export function comparison(item: Pick<CodeItem, 'compare'> | undefined): Element[] {
  if (!item?.compare?.length) return [];
  return [
    h('span.below.comparison', [
      h('i', 'For comparison, not judged: '),
      item.compare.map((c) => `${c.says} – ${restsText(restsOf(c.rests))}`).join('; '),
      '.',
    ]),
  ];
}
