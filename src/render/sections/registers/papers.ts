import { posix } from 'node:path';
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { PaperEntry } from '../../../project/common.js';
import type { Note } from '../../../project/model.js';
import { isPicture } from '../../../project/picture-name.js';
import { namesOf } from '../../../project/proves.js';
import { anchor, capitalised, joined, label, pointer } from '../../anchors.js';
import { nameFigures } from '../../figures.js';
import type { PaperPage, Subject } from '../../subject.js';
import { below, table } from '../../table.js';
import { judgementsOn, provenBy } from '../photos.js';

type Naming = { paper: PaperEntry; note: Note };

/** Receipts, data sheets, reports and procedures kept as files; each once, however many notes name it. */
export function paperRegister(subject: Subject, hashes: ReadonlyMap<string, string>): Element {
  const papers = new Map<string, Naming[]>();
  for (const note of subject.build.notes)
    for (const paper of note.data.papers ?? [])
      papers.set(paper.file, [...(papers.get(paper.file) ?? []), { paper, note }]);
  const rows = [...papers].map(([file, named]) => {
    const page = subject.paperPages.get(file);
    const of = [...new Set(named.flatMap(({ paper }) => paper.of ?? []))];
    const shows = named.flatMap(({ paper }) => namesOf(paper));
    const names = [...new Map(shows.map((n) => [[n.proof, ...n.parts].join(' '), n])).keys()];
    return [
      h('span', { id: anchor.paper(file) }, [
        capitalised(label.paper(file)),
        below(h('code', posix.basename(file))),
        ...(page && 'url' in page
          ? [below(pointer(anchor.firstPage(file), isPicture(file) ? 'its picture' : 'its first page'))]
          : []),
      ]),
      h('span', [
        shownBy(named),
        ...(of.length > 0 ? [below(`names ${of.join(', ')}`)] : []),
        ...(names.length > 0 ? [below('shows ', ...joined(provenBy({ proves: names }, subject)))] : []),
        ...named.flatMap(({ paper, note }) => judgementsOn('paper', note, paper, subject)),
      ]),
      h('span', joined(named.map(({ note }) => pointer(anchor.note(note.name), label.note(note.name))))),
      h('code.hash', hashes.get(file) ?? '–'),
    ];
  });
  const figures = [...papers].flatMap(([file, named]) =>
    pageFigure(file, shownBy(named), subject.paperPages.get(file)),
  );
  const asPictures = [...papers.keys()].some((file) => isPicture(file))
    ? ' A paper that is a picture is shown whole and is not attached: its file may tell where it was taken.'
    : '';
  const pictures =
    figures.length > 0
      ? [
          h('h3', 'First pages of the papers'),
          h(
            'p',
            `Each PDF paper can be recognised by its first page; the whole of it is attached to this PDF.${asPictures}`,
          ),
          h('div.photos.first-pages', figures),
        ]
      : [];
  const content =
    rows.length > 0
      ? [
          h('p', 'Papers that are text or PDF are attached to this PDF under their own names.'),
          table(
            'paper-register',
            'Papers, with the SHA-256 of each file',
            [
              ['Paper', 22],
              ['Shows', 34],
              ['Named in', 18],
              ['SHA-256', 26],
            ],
            rows,
            { id: 'papers' },
          ),
          ...pictures,
        ]
      : [h('p', 'No paper is named in the notes.')];
  return nameFigures(h('section', { id: anchor.section('papers') }, [h('h2', 'Register of papers'), ...content]));
}

const shownBy = (named: readonly Naming[]): string => [...new Set(named.map(({ paper }) => paper.shows))].join('; ');

/** The first page of a paper as a picture, or why there is none; nothing for a paper that was not drawn. */
function pageFigure(file: string, shows: string, page: PaperPage | undefined): Element[] {
  if (!page) return [];
  const figure = (shown: Element, says: string) => [
    h('figure.photo', { id: anchor.firstPage(file) }, [
      shown,
      h('figcaption', [h('b', `${capitalised(label.paper(file))}. `), `${shows}. `, h('span.photo-facts', says)]),
    ]),
  ];
  if ('reason' in page) return figure(h('p.no-picture', `No picture: ${page.reason}.`), '');
  const extent = isPicture(file)
    ? 'The paper as a picture'
    : page.pages === 1
      ? 'The only page'
      : `First page of ${page.pages}`;
  return figure(
    h('div.picture', h('img', { src: page.url, alt: `${extent}: ${shows}`, width: page.width, height: page.height })),
    `${extent}.`,
  );
}
