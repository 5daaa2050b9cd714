import type { Element } from 'hast';
import { h } from 'hastscript';
import { planOf } from '../checks/plan/plan.js';
import { textOf } from './markdown.js';
import { changesSection } from './sections/changes.js';
import { chapter } from './sections/chapter.js';
import { checklist } from './sections/checklist.js';
import { colophon } from './sections/colophon.js';
import { cover } from './sections/cover.js';
import { failureRegister } from './sections/failures.js';
import { contents, generalCautions, howToRead, summary } from './sections/front.js';
import { historySection } from './sections/history.js';
import { identityPage } from './sections/identity.js';
import { openItems } from './sections/open-items.js';
import { planSections } from './sections/plan.js';
import { queryRegister } from './sections/queries.js';
import { concessionRegister } from './sections/registers/concessions.js';
import { instrumentRegister } from './sections/registers/instruments.js';
import { matrix } from './sections/registers/matrix.js';
import { ownFigureRegister } from './sections/registers/own-figures.js';
import { paperRegister } from './sections/registers/papers.js';
import { photoRegister } from './sections/registers/photos.js';
import { sourceRegister } from './sections/registers/sources.js';
import { signOff } from './sections/sign-off.js';
import type { Subject } from './subject.js';

/**
 * The document as a tree: front matter, checklist, one chapter a note, registers, sign-off, colophon. `chapterOf` may give
 * a chapter that is known to have stayed as it was.
 */
export function compose(subject: Subject, hashes: ReadonlyMap<string, string>, chapterOf = chapter): Element {
  const planned =
    subject.as === 'proposal' ? planSections(planOf(subject.build, subject.rules, subject.evaluation), subject) : [];
  const before = [
    ...(subject.changes ? [changesSection(subject.changes, subject)] : []),
    identityPage(subject),
    summary(subject),
    openItems(subject),
    howToRead(),
    generalCautions(subject),
    failureRegister(subject),
    checklist(subject),
    ...planned,
  ];
  const chapters = subject.build.notes.map((note) => chapterOf(note, subject));
  const registers = [
    matrix(subject),
    photoRegister(subject),
    paperRegister(subject, hashes),
    instrumentRegister(subject),
    sourceRegister(subject),
    ...ownFigureRegister(subject),
    concessionRegister(subject),
  ];
  const after = [
    ...registers,
    queryRegister(subject),
    ...(subject.history ? [historySection(subject.history, subject)] : []),
    signOff(subject),
    colophon(subject),
  ];
  const parts = [...before, ...chapters, ...after];
  const entries = parts.map((p) => ({
    id: String(p.properties['id']),
    title: titleOf(p),
    level: chapters.includes(p) ? (2 as const) : (1 as const),
  }));
  return h('main', [cover(subject), contents(entries), ...parts]);
}

function titleOf(section: Element): string {
  const heading = section.children.find((c) => c.type === 'element' && c.tagName === 'h2');
  return heading ? textOf(heading) : '';
}
