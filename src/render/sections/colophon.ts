import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor } from '../anchors.js';
import { isDraft, type Subject } from '../subject.js';
import { table } from '../table.js';

/** How the document was made, from which state of the files, and its end. */
export function colophon(subject: Subject): Element {
  const { identity } = subject;
  const rows: [string, string | Element][] = [
    ['Made with', identity.tool],
    ...(subject.browser ? [['Printed by', subject.browser] as [string, string]] : []),
    ['Fonts', 'Noto Sans, Noto Sans Mono, Noto Sans Math and Noto Sans Symbols 2, under the SIL Open Font License 1.1'],
    ['Commit', identity.commit ?? 'none: not in a git repository'],
    ['Files changed since', identity.dirty.length === 0 ? 'none' : identity.dirty.join(', ')],
    ['Issue', isDraft(identity) ? 'draft, not issued' : `${identity.letter}, tag ${identity.tag}`],
    ['Signature of the tag', identity.signature ?? 'none'],
    ['SHA-256 over all inputs', h('code.hash', identity.inputs)],
  ];
  return h('section.colophon', { id: anchor.section('colophon') }, [
    h('h2', 'How this document was made'),
    table('colophon', 'Origin of this document', ['', ''], rows, { id: 'origin' }),
    h(
      'p',
      'The findings as data and the list of all inputs with their digests are attached to the PDF. A signature of the tag proves who signed which bytes; the dates are as they were declared, unless a time stamp says otherwise.',
    ),
    h(
      'p',
      'Keep this PDF as it was received, with the issues before it and the repository, for as long as the vehicle is in use or local rules ask: saved again by another program it may lose its attachments, and is no longer the file that was signed.',
    ),
    h('p.end-mark', '— end of document —'),
  ]);
}
