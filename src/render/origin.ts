import { h } from 'hastscript';
import type { Element } from 'hast';
import type { Value } from '../calc/value.js';
import { anchor, noteNumber, pointer } from './anchors.js';
import type { Subject } from './subject.js';

/** Where a value comes from, as a pointer into the document where there is one. */
export function originOf(value: Value, subject: Subject): Element {
  const { origin } = value;
  const assumed = value.assumed.size > 0 ? ['; uncertainty assumed: half the last digit'] : [];
  switch (origin.kind) {
    case 'note': {
      const note = subject.build.notes.find((n) => n.file === origin.place.file);
      const from = note ? pointer(anchor.note(note.name), `note ${noteNumber(note.name)}`, false) : pointer(anchor.section('identity'), 'build.md', false);
      return h('span', [h('code', origin.place.path), ', ', from, ...assumed]);
    }
    case 'sheet':
      return h('span', [pointer(anchor.sheet(origin.run), `sheet ${origin.run}`, false), `, ${origin.result}`, ...assumed]);
    case 'given':
      return h('span', origin.text || 'constant');
    case 'usual':
      return h('span', `usual value, assumed: ${origin.text}`);
  }
}
