import type { Element } from 'hast';
import type { Finding } from '../checks/engine/finding.js';
import { type Shown, shownBy } from '../checks/engine/shown.js';
import type { Note } from '../project/model.js';
import { anchor, label, pointer } from './anchors.js';
import type { Subject } from './subject.js';

/** Pointers to what a text such as `sheet crossmember, photo tube-wall` names. */
export function shownPointers(text: string, note: Note, subject: Subject): Element[] {
  const { build, evaluation } = subject;
  return shownBy(text, note, build, evaluation.runs).flatMap((s) => (s.is === 'lost' ? [] : pointersTo(s)));
}

function pointersTo(shown: Shown): Element[] {
  switch (shown.is) {
    case 'build':
      return [pointer(anchor.section('identity'), 'identity of the vehicle')];
    case 'note':
      return [pointer(anchor.note(shown.note.name), label.note(shown.note.name))];
    case 'photo':
      return [pointer(anchor.photo(`${shown.note.name}/${shown.file}`), label.photo(shown.note.name, shown.file))];
    case 'paper':
      return [pointer(anchor.paper(shown.file), label.paper(shown.file))];
    case 'sheets':
      if (shown.runs.length > most)
        return [
          pointer(
            anchor.sheets(noteOf(shown.runs[0]!)),
            `${shown.runs.length} sheets of ${label.note(noteOf(shown.runs[0]!))}`,
          ),
        ];
      return shown.runs.map((run) => pointer(anchor.sheet(run), label.sheet(run)));
  }
}
const most = 3;
const noteOf = (run: string): string => run.split('/')[0]!;

/** All that shows an answer or piece of evidence: what `shown:` names, and photos and papers that serve the item. */
export function evidenceOf(finding: Pick<Finding, 'note' | 'item'>, subject: Subject): Element[] {
  const note = subject.build.notes.find((n) => n.name === finding.note);
  if (!note) return [];
  const shown = note.data.answers?.[finding.item]?.shown;
  const serving = <E extends { file: string; serves?: string[] | undefined }>(entries: readonly E[] | undefined) =>
    (entries ?? []).filter((e) => e.serves?.includes(finding.item));
  const pointers = [
    ...(shown ? shownPointers(shown, note, subject) : []),
    ...serving(note.data.photos).flatMap((p) => pointersTo({ is: 'photo', note, file: p.file })),
    ...serving(note.data.papers).flatMap((p) => pointersTo({ is: 'paper', file: p.file })),
  ];
  return [...new Map(pointers.map((p) => [String(p.properties['href']), p])).values()];
}
