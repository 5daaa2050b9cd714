import type { Element } from 'hast';
import { h } from 'hastscript';
import { judgementText } from '../../checks/engine/judgements.js';
import { shownBy } from '../../checks/engine/shown.js';
import type { PhotoEntry } from '../../project/common.js';
import { measuredIn } from '../../project/measured-in.js';
import type { Note } from '../../project/model.js';
import { namesOf } from '../../project/proves.js';
import { anchor, capitalised, joined, label } from '../anchors.js';
import { itemCode } from '../item.js';
import type { Picture, Subject } from '../subject.js';

export const photoLabel = (note: Note, path: string): string => label.photo(note.name, path);

/** The photos of a note, two beside each other; a panorama takes the whole width, so does a single one with marks. */
export function photoFigures(note: Note, subject: Subject): Element {
  const photos = note.data.photos ?? [];
  return h(
    'div.photos',
    photos.map((photo) => photoFigure(photo, note, subject, photos.length === 1)),
  );
}

const panorama = 1.9;

/** A photo with its marks drawn over it, and a caption that says what, when, in which stage and with what. */
function photoFigure(photo: PhotoEntry, note: Note, subject: Subject, single: boolean): Element {
  const picture = subject.pictures.get(photo.file);
  const marks = photo.marks ?? [];
  const wide = picture !== undefined && (picture.width / picture.height > panorama || (single && marks.length > 0));
  const legend = marks.map((m, i) => `${i + 1} ${m.label}`);
  const alt = legend.length > 0 ? `${photo.shows}. Marked: ${legend.join('; ')}` : photo.shows;
  return h(wide ? 'figure.photo.wide' : 'figure.photo', { id: anchor.photo(`${note.name}/${photo.file}`) }, [
    picture
      ? h('div.picture', [
          h('img', { src: picture.url, alt, width: picture.width, height: picture.height }),
          ...(marks.length > 0 ? [overlay(marks)] : []),
        ])
      : h('p.no-picture', 'The picture could not be prepared.'),
    h('figcaption', [
      h('b', `${capitalised(photoLabel(note, photo.file))}. `),
      `${photo.shows}. `,
      ...(legend.length > 0 ? [h('span.legend', `${legend.join(', ')}. `)] : []),
      h('span.photo-facts', [
        ...joined(
          [
            ...(photo.stage ? [`stage ${photo.stage.replace('-', ' ')}`] : []),
            takenText(photo, picture),
            ...instruments(photo, note, subject),
          ],
          '; ',
        ),
        ...proven(photo, subject),
        '.',
      ]),
      ...judgementsOn('photo', note, photo, subject),
    ]),
  ]);
}

export function takenText(photo: Pick<PhotoEntry, 'taken-on'>, picture: Pick<Picture, 'takenAt'> | undefined): string {
  if (picture?.takenAt) return `taken ${picture.takenAt.replace('T', ' ').slice(0, 16)}`;
  return photo['taken-on'] ? `taken ${photo['taken-on']} as the builder states` : 'capture time not known';
}

/** Instruments with which the values were taken that name this photo. */
function instruments(photo: PhotoEntry, note: Note, { build }: Subject): string[] {
  const named = measuredIn(note.data).filter(
    (m) =>
      m.with !== undefined &&
      m.photo !== undefined &&
      shownBy(`photo ${m.photo}`, note, build, []).some((s) => s.is === 'photo' && s.file === photo.file),
  );
  return [...new Set(named.map((m) => `with ${m.with}`))];
}

function proven(photo: PhotoEntry, subject: Subject): (Element | string)[] {
  const names = provenBy(photo, subject);
  return names.length > 0 ? ['; shows ', ...joined(names)] : [];
}

/** Hold points and items that a photo or document names, with the parts that it shows of each. */
export function provenBy(entry: Parameters<typeof namesOf>[0], subject: Subject): (Element | string)[] {
  const { items } = subject.rules.codes;
  const isItem = (id: string) => items.has(id) || subject.rules.ownItems.some((i) => i.id === id);
  return namesOf(entry).map(({ proof, parts }) =>
    h('span', [
      isItem(proof) ? itemCode(proof, subject) : proof.replaceAll('-', ' '),
      ...(parts.length > 0 ? [` (${parts.join(', ').replaceAll('-', ' ')})`] : []),
    ]),
  );
}

/** What was judged of a photo or a paper. */
export function judgementsOn(
  is: 'photo' | 'paper',
  note: Note,
  { file }: Pick<PhotoEntry, 'file'>,
  { evaluation }: Subject,
): Element[] {
  return evaluation.judgements.flatMap(({ about, judgement }) =>
    about.is === is && about.note === note.name && about.file === file
      ? [h('span.below', `${capitalised(judgementText(judgement))}.`)]
      : [],
  );
}

/** Numbered rings; black on white so that they read on any picture and without colour. */
function overlay(marks: NonNullable<PhotoEntry['marks']>): Element {
  return h(
    'span.marks-overlay',
    { ariaHidden: 'true' },
    marks.map((m, i) =>
      h(
        'span.mark',
        { style: `left:${(m.at[0] * 100).toFixed(1)}%;top:${(m.at[1] * 100).toFixed(1)}%` },
        String(i + 1),
      ),
    ),
  );
}
