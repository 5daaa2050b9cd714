import { h } from 'hastscript';
import type { Element } from 'hast';
import { isOpen, outcomes, type Finding } from '../../checks/finding.js';
import { anchor, noteNumber, pageOnly, pointer } from '../anchors.js';
import { signs } from '../../checks/outcome-words.js';
import { outcomeMark } from '../outcome.js';
import { bySeriousness } from '../../checks/seriousness.js';
import type { Subject } from '../subject.js';
import { table } from '../table.js';

/** Contents with page numbers in print. */
export function contents(entries: readonly { id: string; title: string; level: 1 | 2 }[]): Element {
  return h('nav.contents', { id: anchor.section('contents'), ariaLabel: 'Contents' }, [
    h('h2', 'Contents'),
    h('ol', entries.map((e) => h(`li.level-${e.level}`, [h('a', { href: `#${e.id}` }, h('span.contents-title', e.title)), h('span.leader', { ariaHidden: 'true' }), pageOnly(e.id)]))),
  ]);
}

/** What was modified and how each note stands. */
export function summary(subject: Subject): Element {
  const { build, evaluation, rules } = subject;
  const count = (note: string, outcome: Finding['outcome']) => evaluation.findings.filter((f) => f.note === note && f.outcome === outcome).length;
  return h('section', { id: anchor.section('summary') }, [
    h('h2', 'Summary of modifications'),
    table(
      'summary',
      'Modifications and how their findings stand',
      ['Note', 'Modification', 'Kind', ...outcomes.map((o) => signs[o])],
      build.notes.map((n) => [pointer(anchor.note(n.name), noteNumber(n.name)), n.data.title, rules.kinds.get(n.kind)!.title, ...outcomes.map((o) => String(count(n.name, o)))]),
    ),
  ]);
}

/** All that is left to do or to decide. */
export function openItems(subject: Subject): Element {
  const open = subject.evaluation.findings.filter(isOpen).sort(bySeriousness);
  return h('section', { id: anchor.section('open') }, [
    h('h2', 'Open items'),
    open.length === 0
      ? h('p', 'No finding is open.')
      : table('open', 'Findings that are open, most serious first', ['Finding', 'Outcome', 'Why', 'What to do'], open.map((f) => [findingPointer(f), outcomeMark(f), f.says, f.concession ? `concession ${f.concession.word.replace('-', ' ')}: ${f.concession.because}` : (f.todo ?? '')])),
  ]);
}

export function findingPointer(f: Finding): Element {
  return h('span', [pointer(anchor.finding(f.id), `${noteNumber(f.note)}${f.subject ? ` ${f.subject}` : ''}: ${f.title}`)]);
}

/** The checklist of the codes: every item that a note raises, its answer, and where it is shown. */
export function checklist(subject: Subject): Element {
  const { evaluation, rules } = subject;
  const sections = rules.codes.codes.flatMap((code) =>
    Object.entries(code.sections).map(([letter, section]) => ({ code, letter, section, items: evaluation.raised.filter(({ item }) => item.code === code.code && item.section === letter) })),
  );
  return h('section', { id: anchor.section('checklist') }, [
    h('h2', 'Code checklist'),
    ...sections
      .filter((s) => s.items.length > 0)
      .flatMap(({ code, letter, section, items }) => [
        h('h3', `${code.title}: ${letter}, ${section.title}`),
        h('p.edition', `Edition: ${section.edition ?? 'as stated at each item; check that it is current'}.`),
        table(
          'checklist',
          `Items of ${letter}`,
          ['Item', 'Asks', 'Outcome', 'Shown in'],
          items.map(({ item }) => {
            const findings = evaluation.findings.filter((f) => f.item === item.id);
            const leads = [...rules.codes.leadsTo(item.id).map((l) => `leads to ${l.item.id}`), ...rules.codes.ledFrom(item.id).map((l) => `from ${l.item.id}`)];
            return [
              h('span', { id: anchor.item(item.id) }, [item.title, h('br'), h('code', item.id)]),
              h('span', [item.asks, ...(leads.length > 0 ? [h('br'), h('i.trail', leads.join('; '))] : [])]),
              h('span', findings.length > 0 ? findings.flatMap((f) => [outcomeMark(f), h('br')]).slice(0, -1) : [outcomeMark({ outcome: 'missing', form: item.kind, marks: [] })]),
              h('span', findings.flatMap((f) => [pointer(anchor.finding(f.id), `note ${noteNumber(f.note)}${f.subject ? ` ${f.subject}` : ''}`), h('br')]).slice(0, -1)),
            ];
          }),
        ),
      ]),
  ]);
}
