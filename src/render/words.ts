import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { targetOf } from '../project/links.js';
import type { Note } from '../project/model.js';
import type { Query } from '../project/queries.js';
import { anchor, label, noteNumber, pointer } from './anchors.js';
import { type ResolveLink, renderMarkdown } from './markdown.js';
import { photoLabel } from './sections/photos.js';
import type { Subject } from './subject.js';

/** The words of a note or query; links into the build become numbered pointers with pages. */
export function words(of: Pick<Note | Query, 'path' | 'front'>, subject: Subject, under: 2 | 3): ElementContent[] {
  const resolve: ResolveLink = (url) => {
    const target = targetOf(url, of, subject.build);
    switch (target.to) {
      case 'note':
        return { id: anchor.note(target.name), label: `note ${noteNumber(target.name)}` };
      case 'query':
        return { id: anchor.query(target.name), label: `query ${noteNumber(target.name)}` };
      case 'file': {
        const { path } = target;
        const { build } = subject;
        const owner = build.notes.find((n) => n.data.photos?.some((p) => p.file === path));
        if (owner) return { id: anchor.photo(`${owner.name}/${path}`), label: photoLabel(owner, path) };
        if (subject.pictures.has(path))
          return { id: anchor.photo(`build/${path}`), label: label.photo('vehicle', path) };
        if (path === 'build.md') return { id: anchor.section('identity'), label: 'identity of the vehicle' };
        return build.notes.some((n) => n.data.papers?.some((p) => p.file === path))
          ? { id: anchor.paper(path), label: label.paper(path) }
          : 'missing';
      }
      default:
        return target.to === 'web' ? 'outside' : 'missing';
    }
  };
  return renderMarkdown(of.front.body, {
    resolve,
    pointer: (id, name, text) => h('span', [`${text} (`, pointer(id, name), ')']),
    name: of.path,
    under,
  });
}
