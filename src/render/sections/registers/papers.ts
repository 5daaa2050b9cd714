import { h } from 'hastscript';
import type { Element } from 'hast';
import { posix } from 'node:path';
import type { PaperEntry } from '../../../build/common.js';
import type { Note } from '../../../build/model.js';
import { anchor, capitalised, joined, label, pointer } from '../../anchors.js';
import { itemCode } from '../../item.js';
import type { Subject } from '../../subject.js';
import { below, table } from '../../table.js';

/** Receipts, data sheets, reports and procedures kept as files; each once, however many notes name it. */
export function paperRegister(subject: Subject, hashes: ReadonlyMap<string, string>): Element {
  const papers = new Map<string, { paper: PaperEntry; note: Note }[]>();
  for (const note of subject.build.notes) for (const paper of note.data.papers ?? []) papers.set(paper.file, [...(papers.get(paper.file) ?? []), { paper, note }]);
  const rows = [...papers].map(([file, named]) => {
    const serves = [...new Set(named.flatMap(({ paper }) => paper.serves ?? []))];
    return [
      h('span', { id: anchor.paper(file) }, [capitalised(label.paper(file)), below(h('code', posix.basename(file)))]),
      h('span', [[...new Set(named.map(({ paper }) => paper.shows))].join('; '), ...(serves.length > 0 ? [below('for ', ...joined(serves.map((id) => itemCode(id, subject))))] : [])]),
      h('span', joined(named.map(({ note }) => pointer(anchor.note(note.name), label.note(note.name))))),
      h('code.hash', hashes.get(file) ?? '–'),
    ];
  });
  const content = rows.length > 0 ? [h('p', 'Papers that are text or PDF are attached to this PDF under their own names.'), table('paper-register', 'Papers, with the SHA-256 of each file', [['Paper', 22], ['Shows', 34], ['Named in', 18], ['SHA-256', 26]], rows, { id: 'papers' })] : [h('p', 'No paper is named in the notes.')];
  return h('section', { id: anchor.section('papers') }, [h('h2', 'Register of papers'), ...content]);
}
