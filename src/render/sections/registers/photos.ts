import type { Element } from 'hast';
import { h } from 'hastscript';
import { namesOf } from '../../../project/proves.js';
import { anchor, joined, label, pointer } from '../../anchors.js';
import type { Subject } from '../../subject.js';
import { below, table } from '../../table.js';
import { photoLabel, provenBy, takenText } from '../photos.js';

/** Every photo with its time, its stage, what it is evidence for, and the digest of the file that the builder keeps. */
export function photoRegister(subject: Subject): Element {
  const views = (subject.build.data.photos ?? []).flatMap((photo) => {
    const picture = subject.pictures.get(photo.file);
    return picture
      ? [
          [
            pointer(anchor.photo(`build/${photo.file}`), label.photo('vehicle', photo.file)),
            photo.shows,
            takenText({}, picture).replace(/^taken /, ''),
            h('code.hash', picture.sha256),
          ],
        ]
      : [];
  });
  const ofNotes = subject.build.notes.flatMap((note) =>
    (note.data.photos ?? []).map((photo) => {
      const picture = subject.pictures.get(photo.file);
      return [
        pointer(anchor.photo(`${note.name}/${photo.file}`), photoLabel(note, photo.file)),
        h('span', [
          photo.shows,
          ...(namesOf(photo).length > 0 ? [below('shows ', ...joined(provenBy(photo, subject)))] : []),
        ]),
        h('span', [
          takenText(photo, picture).replace(/^taken /, ''),
          ...(photo.stage ? [below(`stage ${photo.stage.replace('-', ' ')}`)] : []),
        ]),
        h('code.hash', picture?.sha256 ?? '–'),
      ];
    }),
  );
  const rows = [...views, ...ofNotes];
  const content =
    rows.length > 0
      ? table(
          'photo-register',
          'Photos, with the SHA-256 of the file that the builder keeps',
          [
            ['Photo', 22],
            ['Shows', 34],
            ['Taken', 18],
            ['SHA-256', 26],
          ],
          rows,
          { id: 'photos' },
        )
      : h('p', 'No photo is named in the notes.');
  return h('section', { id: anchor.section('photos') }, [h('h2', 'Register of photos'), content]);
}
