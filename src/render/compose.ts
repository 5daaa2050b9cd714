import { h } from 'hastscript';
import type { Element } from 'hast';
import { cautions, type CautionName } from '../checks/kind.js';
import { anchor } from './anchors.js';
import { chapter } from './sections/chapter.js';
import { cover, identityPage } from './sections/cover.js';
import { checklist, contents, openItems, summary } from './sections/lists.js';
import { queryRegister } from './sections/queries.js';
import { colophon, instrumentRegister, paperRegister, photoRegister, signOff, sourceRegister } from './sections/registers.js';
import type { Subject } from './subject.js';
import { fixedText } from './texts.js';

/** The document as a tree: front matter, checklist, one chapter a note, registers, sign-off, colophon. */
export function compose(subject: Subject, hashes: ReadonlyMap<string, string>): Element {
  const before = [identityPage(subject), howToRead(), generalCautions(subject), summary(subject), openItems(subject), checklist(subject)];
  const chapters = subject.build.notes.map((note) => chapter(note, subject));
  const after = [photoRegister(subject), paperRegister(subject, hashes), instrumentRegister(subject), sourceRegister(subject), queryRegister(subject), signOff(subject), colophon(subject)];
  const parts = [...before, ...chapters, ...after];
  const entries = parts.map((p) => ({ id: String(p.properties['id']), title: titleOf(p), level: chapters.includes(p) ? (2 as const) : (1 as const) }));
  return h('main', [cover(subject), contents(entries), ...parts]);
}

function howToRead(): Element {
  return h('section', { id: anchor.section('how-to-read') }, [h('h2', 'How to read this document'), ...fixedText('how-to-read.md')]);
}

function generalCautions(subject: Subject): Element {
  const used = new Set<CautionName>(subject.build.notes.flatMap((n) => subject.rules.kinds.get(n.kind)!.cautions));
  return h('section', { id: anchor.section('cautions') }, [
    h('h2', 'Cautions'),
    h('p', 'The work described here can hurt people. What follows is the usual care of a workshop; local rules and licensed practice come before it.'),
    h('ul', [...used].map((c) => h('li', cautions[c]))),
  ]);
}

function titleOf(section: Element): string {
  const heading = section.children.find((c) => c.type === 'element' && c.tagName === 'h2') as Element | undefined;
  const text = heading?.children.map((c) => (c.type === 'text' ? c.value : '')).join('') ?? '';
  return text;
}
