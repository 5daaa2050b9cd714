import { h } from 'hastscript';
import type { ElementContent } from 'hast';
import { posix } from 'node:path';
import { targetOf } from '../build/links.js';
import type { Note, Query } from '../build/model.js';
import { anchor, noteNumber, pointer } from './anchors.js';
import { renderMarkdown, type ResolveLink } from './markdown.js';
import { photoLabel } from './sections/photos.js';
import type { Subject } from './subject.js';

/** The words of a note or query; links into the build become numbered pointers with pages. */
export function words(of: Pick<Note | Query, 'path' | 'front'>, subject: Subject): ElementContent[] {
  const resolve: ResolveLink = (url) => {
    const target = targetOf(url, of, subject.build);
    switch (target.to) {
      case 'note':
        return { id: anchor.note(target.name), label: `note ${noteNumber(target.name)}` };
      case 'query':
        return { id: anchor.query(target.name), label: `query ${noteNumber(target.name)}` };
      case 'file': {
        const owner = subject.build.notes.find((n) => n.data.photos?.some((p) => p.file === target.path));
        if (owner) return { id: anchor.photo(`${owner.name}/${target.path}`), label: photoLabel(owner, target.path) };
        return { id: anchor.paper(target.path), label: posix.basename(target.path) };
      }
      default:
        return target.to === 'web' ? 'outside' : 'missing';
    }
  };
  return renderMarkdown(of.front.body, resolve, (id, label, text) => h('span', [`${text} (`, pointer(id, label), ')']));
}
