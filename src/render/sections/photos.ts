import { h } from 'hastscript';
import type { Element } from 'hast';
import { posix } from 'node:path';
import type { PhotoEntry } from '../../build/common.js';
import type { Note } from '../../build/model.js';
import { anchor, noteNumber } from '../anchors.js';
import type { Subject } from '../subject.js';

export function photoLabel(note: Note, path: string): string {
  return `photo ${noteNumber(note.name)} ${posix.basename(path).replace(/\.[^.]*$/, '')}`;
}

/** A photo with its marks drawn over it, and a caption that says what, when and with what. */
export function photoFigure(photo: PhotoEntry, note: Note, subject: Subject): Element {
  const picture = subject.pictures.get(photo.file);
  const taken = picture?.takenAt ? `taken ${picture.takenAt.replace('T', ' ').slice(0, 16)}` : photo['taken-on'] ? `taken ${photo['taken-on']} (stated by the builder)` : 'capture time not known';
  const marks = photo.marks ?? [];
  const legend = marks.map((m, i) => `${i + 1} ${m.label}`).join(', ');
  return h('figure.photo', { id: anchor.photo(`${note.name}/${photo.file}`) }, [
    picture ? h('div.picture', [h('img', { src: picture.url, alt: photo.shows, width: picture.width, height: picture.height }), ...(marks.length > 0 ? [overlay(marks)] : [])]) : h('p.no-picture', 'The picture could not be prepared.'),
    h('figcaption', [h('b', `${photoLabel(note, photo.file).replace(/^p/, 'P')}. `), photo.shows, '. ', h('span.photo-facts', [photo.stage ? `Stage: ${photo.stage}; ` : '', taken, legend ? `; marks: ${legend}` : '', '.'])]),
  ]);
}

/** Numbered rings; black on white so that they read on any picture and without colour. */
function overlay(marks: NonNullable<PhotoEntry['marks']>): Element {
  return h(
    'span.marks-overlay',
    { ariaHidden: 'true' },
    marks.map((m, i) => h('span.mark', { style: `left:${(m.at[0] * 100).toFixed(1)}%;top:${(m.at[1] * 100).toFixed(1)}%` }, String(i + 1))),
  );
}
