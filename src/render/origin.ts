import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Place, Value } from '../calc/value.js';
import { anchor, joined, label, noteNumber, pointer } from './anchors.js';
import { grouped } from './grouped.js';
import type { Subject } from './subject.js';

/** Where a value comes from, as a pointer into the document where there is one. */
export function originOf(value: Value, subject: Subject): Element {
  const { origin } = value;
  const assumed = value.assumed.size > 0 && origin.kind === 'note' ? ['; U assumed'] : [];
  switch (origin.kind) {
    case 'note':
      return h('span', [fieldPointer(origin.place, subject), ...assumed]);
    case 'sheet':
      return pointer(anchor.sheet(origin.run), `${label.sheet(origin.run)}, ${origin.result}`, false);
    case 'given':
      return h('span', origin.text || 'constant');
    case 'usual':
      return h('span', `usual value, assumed: ${origin.text}`);
  }
}

/** A pointer to the row in which a measured field stands; within its own note, `from`, by its last name. */
export function fieldPointer(place: Pick<Place, 'file' | 'path'>, subject: Subject, from?: string): Element {
  const note = subject.build.notes.find((n) => n.file === place.file);
  if (note && note.name === from)
    return h('a.ref', { href: `#${anchor.value(note.name, place.path)}` }, h('code', place.path.split('.').at(-1)!));
  const [id, where] = note
    ? [anchor.value(note.name, place.path), noteNumber(note.name)]
    : [anchor.section('identity'), 'build.md'];
  return h('a.ref', { href: `#${id}` }, [`${where} `, h('code', place.path)]);
}

/** Pointers to measured fields; those of one block of one note stand together behind it: `050 welds.left: leg, length`. */
export function fieldPointers(places: readonly Pick<Place, 'file' | 'path'>[], subject: Subject): Element[] {
  const blockOf = ({ path }: Pick<Place, 'path'>) => path.split('.').slice(0, -1).join('.');
  return grouped(places, (place) => `${place.file}\n${blockOf(place)}`).map((block) => {
    if (block.length === 1) return fieldPointer(block[0], subject);
    const whole = block.map((place) => fieldPointer(place, subject));
    const links = block.map((place, i) =>
      h('a.ref', { href: whole[i]!.properties['href'] }, h('code', place.path.split('.').at(-1)!)),
    );
    const note = subject.build.notes.find((n) => n.file === block[0].file);
    return h('span', [
      `${note ? noteNumber(note.name) : 'build.md'} `,
      ...(blockOf(block[0]) === '' ? [] : [h('code', blockOf(block[0])), ': ']),
      ...joined(links, ', '),
    ]);
  });
}

/** `builds/x/notes/030-driveline.md#shaft.length` is `030 shaft.length` for people. */
export function fieldOf(source: string): string {
  const [file, path] = source.split('#');
  if (path === undefined) return source;
  return `${noteNumber(file!.split('/').at(-1)!.replace(/\.md$/, ''))} ${path}`;
}
