import { h } from 'hastscript';
import type { Element } from 'hast';
import type { Place, Value } from '../calc/value.js';
import { anchor, label, noteNumber, pointer } from './anchors.js';
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

/** A pointer to the row in which a measured field stands. */
export function fieldPointer(place: Pick<Place, 'file' | 'path'>, subject: Subject): Element {
  const note = subject.build.notes.find((n) => n.file === place.file);
  const [id, where] = note ? [anchor.value(note.name, place.path), noteNumber(note.name)] : [anchor.section('identity'), 'build.md'];
  return h('a.ref', { href: `#${id}` }, [`${where} `, h('code', place.path)]);
}

/** `builds/x/notes/030-driveline.md#shaft.length` is `030 shaft.length` for people. */
export function fieldOf(source: string): string {
  const [file, path] = source.split('#');
  if (path === undefined) return source;
  return `${noteNumber(file!.split('/').at(-1)!.replace(/\.md$/, ''))} ${path}`;
}
