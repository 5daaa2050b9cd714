import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Finding, ShownIn } from '../checks/engine/finding.js';
import { type Shown, shownBy } from '../checks/engine/shown.js';
import type { Note } from '../project/model.js';
import { proves } from '../project/proves.js';
import { anchor, joined, label, pointer } from './anchors.js';
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

/** All that shows an answer or piece of evidence: what `shown:` names, and photos and papers that prove it. */
export function evidenceOf(finding: Pick<Finding, 'note' | 'item' | 'proof'>, subject: Subject): Element[] {
  const note = subject.build.notes.find((n) => n.name === finding.note);
  if (!note) return [];
  const shown = note.data.answers?.[finding.item]?.shown;
  const naming = <E extends Parameters<typeof proves>[0]>(entries: readonly E[] | undefined) =>
    finding.proof ? [] : (entries ?? []).filter((e) => proves(e, finding.item));
  const pointers = [
    ...(shown ? shownPointers(shown, note, subject) : []),
    ...(finding.proof ?? []).flatMap((p) => p.by.flatMap((by) => pointerTo(by, subject))),
    ...naming(note.data.photos).flatMap((p) => pointersTo({ is: 'photo', note, file: p.file })),
    ...naming(note.data.papers).flatMap((p) => pointersTo({ is: 'paper', file: p.file })),
  ];
  return [...new Map(pointers.map((p) => [String(p.properties['href']), p])).values()];
}

function pointerTo({ is, note: name, file }: ShownIn, { build }: Subject): Element[] {
  const note = build.notes.find((n) => n.name === name);
  return note ? pointersTo(is === 'photo' ? { is, note, file } : { is, file }) : [];
}

/** Each part with what shows it, or that nothing does; nothing for what has no parts. */
export function partLines(finding: Pick<Finding, 'proof'>, subject: Subject): Element[] {
  const parts = (finding.proof ?? []).filter(({ part }) => part !== '');
  return parts.map(({ part, by }) =>
    h('span.below', [
      `${part.replaceAll('-', ' ')}: `,
      ...(by.length > 0 ? joined(by.flatMap((one) => pointerTo(one, subject))) : ['not shown']),
    ]),
  );
}
