import type { Element } from 'hast';
import { numberOf, type Recall, textOf } from '../project/memory.js';
import type { Note } from '../project/model.js';
import { compose } from '../render/compose.js';
import { htmlOf } from '../render/page.js';
import { chapter } from '../render/sections/chapter.js';
import { documentId, isDraft, type Subject } from '../render/subject.js';
import type { Document, Part } from './preview.js';

/**
 * The document in parts. Chapters stand as they were as long as their note, what was found on it, and what any chapter
 * may point to are the same: they are most of the work.
 */
export function documentOf(subject: Subject, hashes: ReadonlyMap<string, string>, recall: Recall): Document {
  const around = numberOf(recall('what chapters point to', textOf(surroundings(subject)), () => ({})));
  const chapterOf = (note: Note) =>
    recall(`chapter ${note.path}`, textOf([around, ownOf(note, subject)]), () => chapter(note, subject));
  const main = compose(subject, hashes, chapterOf);
  const parts = main.children
    .filter((child): child is Element => child.type === 'element')
    .map((element): Part => ({ id: String(element.properties['id']), html: htmlIn(element, recall) }));
  return { title: `${documentId(subject)}: ${subject.build.data.title}`, draft: isDraft(subject.identity), parts };
}

function htmlIn(element: Element, recall: Recall): string {
  return recall(`html ${String(element.properties['id'])}`, String(numberOf(element)), () => htmlOf([element]));
}

/** What a chapter is made of itself. */
function ownOf(note: Note, { evaluation }: Subject): unknown {
  return [
    numberOf(note.front),
    evaluation.findings.filter((f) => f.note === note.name),
    evaluation.runs.filter((r) => r.id.startsWith(`${note.name}/`)).map(numberOf),
  ];
}

/** What chapters name and point to beyond themselves. */
function surroundings({ build, evaluation, pictures, as }: Subject): unknown {
  return [
    as,
    [build.front, ...build.limits.map((l) => l.front), ...build.queries.map((q) => q.front)].map(numberOf),
    build.notes.map((n) => [n.name, n.kind, n.data.title, n.data.photos, n.data.papers]),
    evaluation.findings.map((f) => [f.id, f.title]),
    evaluation.runs.map((r) => r.id),
    evaluation.raised.map((r) => r.item.id),
    [...build.files.keys()],
    [...pictures],
  ];
}
