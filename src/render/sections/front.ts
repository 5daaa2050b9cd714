import type { Element } from 'hast';
import { h } from 'hastscript';
import { countsByClass, type Finding, type FindingClass, findingClasses } from '../../checks/engine/finding.js';
import { type CautionName, cautions } from '../../checks/engine/kind.js';
import { shortClassLabels, signOf } from '../../checks/engine/outcome-words.js';
import { anchor, capitalised, noteNumber, pointer } from '../anchors.js';
import type { Subject } from '../subject.js';
import { type Column, table } from '../table.js';
import { fixedText } from '../texts.js';

/** Contents with page numbers in print. */
export function contents(entries: readonly { id: string; title: string; level: 1 | 2 }[]): Element {
  return h('nav.contents', { id: anchor.section('contents'), ariaLabel: 'Contents' }, [
    h('h2', 'Contents'),
    h(
      'ol',
      entries.map((e) =>
        h(
          `li.level-${e.level}`,
          h('a', { href: `#${e.id}` }, [
            h('span.contents-title', e.title),
            h('span.leader', { ariaHidden: 'true' }),
            h('span.ref-number', h('span.page-of', { dataTarget: e.id })),
          ]),
        ),
      ),
    ),
  ]);
}

/** What was modified and how each note stands; concessions are counted apart. */
export function summary(subject: Subject): Element {
  const { build, evaluation, rules } = subject;
  const own = (note: string) => evaluation.findings.filter((f) => f.note === note);
  const conceded = (findings: readonly Finding[]) => findings.filter((f) => f.concession).length || '–';
  const used = findingClasses.filter((of) => evaluation.findings.some((f) => f.of === of));
  const columns: Column[] = [
    ['Note', 8],
    ['Modification', 19],
    ['Kind', 11],
    ...used.map((of): Column => [capitalised(shortClassLabels[of]), 54 / used.length]),
    ['With concession', 8],
  ];
  const counts = (findings: readonly Finding[]) => [
    ...used.map((of) => countsOf(of, findings)),
    String(conceded(findings)),
  ];
  const rows = build.notes.map((n) => [
    pointer(anchor.note(n.name), noteNumber(n.name)),
    n.data.title,
    rules.kinds.get(n.kind)!.title,
    ...counts(own(n.name)),
  ]);
  if (own('build').length > 0)
    rows.push(['–', 'The build as a whole: build.md, questions', '–', ...counts(own('build'))]);
  return h('section', { id: anchor.section('summary') }, [
    h('h2', 'Summary of modifications'),
    table('summary', 'Modifications and how their findings stand', columns, rows, { id: 'summary' }),
  ]);
}

/** How the findings of one class came out: each count after its sign. */
function countsOf(of: FindingClass, findings: readonly Finding[]): string {
  const own = countsByClass(findings).find((c) => c.of === of);
  const told = own?.counts.filter(({ count }) => count > 0) ?? [];
  return told.length === 0 ? '–' : told.map(({ outcome, count }) => `${signOf(outcome)}\u00a0${count}`).join('  ');
}

export function howToRead(): Element {
  return h('section.opens.how-to-read', { id: anchor.section('how-to-read') }, [
    h('h2', 'How to read this document'),
    ...fixedText('how-to-read.md'),
  ]);
}

/** The usual care of a workshop, as far as the kinds of work of this build call for it. */
export function generalCautions({ build, rules }: Subject): Element {
  const used = new Set<CautionName>(build.notes.flatMap((n) => rules.kinds.get(n.kind)!.cautions));
  return h('section', { id: anchor.section('cautions') }, [
    h('h2', 'Cautions'),
    h(
      'p',
      'The work described here can hurt people. What follows is the usual care of a workshop; local rules and licensed practice come before it.',
    ),
    h(
      'ul.caution-list',
      [...used].map((c) => h('li', cautions[c])),
    ),
  ]);
}
