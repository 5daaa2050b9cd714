import { h } from 'hastscript';
import type { Element } from 'hast';
import { posix } from 'node:path';
import { basisSays } from '../../checks/limit.js';
import { restsText } from '../limit-text.js';
import { anchor, noteNumber, pointer } from '../anchors.js';
import { isDraft, type Subject } from '../subject.js';
import { table } from '../table.js';
import { measuredIn } from './chapter.js';
import { photoLabel } from './photos.js';
import { sourceSays } from './sheet.js';

export function photoRegister(subject: Subject): Element {
  const rows = subject.build.notes.flatMap((note) =>
    (note.data.photos ?? []).map((photo) => {
      const picture = subject.pictures.get(photo.file);
      return [pointer(anchor.photo(`${note.name}/${photo.file}`), photoLabel(note, photo.file)), photo.shows, picture?.takenAt?.replace('T', ' ') ?? photo['taken-on'] ?? 'not known', h('code.hash', picture?.sha256 ?? '')];
    }),
  );
  return h('section', { id: anchor.section('photos') }, [h('h2', 'Register of photos'), rows.length > 0 ? table('photo-register', 'Photos with the SHA-256 of the file that the builder keeps', ['Photo', 'Shows', 'Taken', 'SHA-256'], rows) : h('p', 'No photos.')]);
}

export function paperRegister(subject: Subject, hashes: ReadonlyMap<string, string>): Element {
  const rows = subject.build.notes.flatMap((note) =>
    (note.data.papers ?? []).map((paper) => [
      h('span', { id: anchor.paper(paper.file) }, posix.basename(paper.file)),
      paper.shows,
      pointer(anchor.note(note.name), `note ${noteNumber(note.name)}`),
      h('code.hash', hashes.get(paper.file) ?? ''),
    ]),
  );
  return h('section', { id: anchor.section('papers') }, [h('h2', 'Register of papers'), rows.length > 0 ? table('paper-register', 'Papers with the SHA-256 of each file', ['File', 'Shows', 'Named in', 'SHA-256'], rows) : h('p', 'No papers.')]);
}

export function instrumentRegister(subject: Subject): Element {
  const used = subject.build.data.instruments ?? [];
  const uses = (id: string) => subject.build.notes.filter((n) => measuredIn(n.data).some((m) => m.with === id));
  const rows = used.map((i) => [
    h('code', i.id),
    [i.what, i.number && `number ${i.number}`].filter(Boolean).join(', '),
    i.uncertainty ? `± ${i.uncertainty.quantity.text}` : 'not stated',
    i.checked ? `${i.checked}${i['checked-by'] ? `, ${i['checked-by']}` : ''}` : 'no check stated',
    h('span', uses(i.id).flatMap((n) => [pointer(anchor.note(n.name), `note ${noteNumber(n.name)}`, false), ' '])),
  ]);
  return h('section', { id: anchor.section('instruments') }, [h('h2', 'Register of instruments'), rows.length > 0 ? table('instruments', 'Instruments, their expanded uncertainty (k = 2) and last check', ['Name', 'What', 'Uncertainty', 'Checked', 'Used in'], rows) : h('p', 'No instruments are declared.')]);
}

/** Every text that a limit or a sheet of this document rests on. */
export function sourceRegister(subject: Subject): Element {
  const { evaluation } = subject;
  const limits = evaluation.findings.flatMap((f) => (f.limit ? [restsText(f.limit)] : []));
  const items = evaluation.raised.map(({ item }) => restsText({ document: item.rests.document, edition: item.rests.edition, clause: item.rests.clause, basis: item.rests.basis, status: item.rests.status }));
  const sheets = evaluation.runs.flatMap((r) => r.sheet.sources.map(sourceSays));
  const listed = (texts: string[]) => h('ul', [...new Set(texts)].sort().map((t) => h('li', t)));
  return h('section', { id: anchor.section('sources') }, [
    h('h2', 'Sources and editions'),
    h('p', `Bases: ${Object.entries(basisSays).map(([b, says]) => `${b.replace('-', ' ')}: ${says}`).join('; ')}.`),
    h('h3', 'Limits and items of the codes'),
    listed([...limits, ...items]),
    h('h3', 'Calculation sheets'),
    sheets.length > 0 ? listed(sheets) : h('p', 'No sheet was used.'),
  ]);
}

export function signOff(subject: Subject): Element {
  const blank = (label: string) => h('tr', [h('th', { scope: 'row' }, label), h('td.blank', ' ')]);
  const who = subject.build.data.certifier;
  return h('section.sign-off', { id: anchor.section('sign-off') }, [
    h('h2', 'Sign-off'),
    h('p', 'For the certifying engineer. Gusset fills in nothing on this page.'),
    h('table.sign', [
      h('caption', 'To be filled in by hand'),
      h('tbody', [blank('Name of the certifying engineer'), blank('Signatory or licence number'), blank('Findings and concessions accepted, by number'), blank('Conditions'), blank('Certificate number'), blank('Signature'), blank('Date')]),
    ]),
    ...(who ? [h('p.quiet', `Prepared for ${[who.name, who.number].filter(Boolean).join(', ')}.`)] : []),
  ]);
}

export function colophon(subject: Subject): Element {
  const { identity } = subject;
  const rows = [
    ['Made with', identity.tool],
    ['Commit', identity.commit ?? 'none: not in a git repository'],
    ['Files changed since', identity.dirty.length === 0 ? 'none' : identity.dirty.join(', ')],
    ['Issue', isDraft(identity) ? 'draft, not issued' : `${identity.letter}, tag ${identity.tag}`],
    ['SHA-256 over all inputs', identity.inputs],
  ];
  return h('section', { id: anchor.section('colophon') }, [h('h2', 'How this document was made'), table('colophon', 'Origin of this document', ['', ''], rows), h('p.end-mark', '— end of document —')]);
}
