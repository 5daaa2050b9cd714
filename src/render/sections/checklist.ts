import type { Element } from 'hast';
import { h } from 'hastscript';
import type { CodeItem } from '../../checks/codes/codes.js';
import { type Finding, outcomes } from '../../checks/engine/finding.js';
import { outcomeLabel, signOf } from '../../checks/engine/outcome-words.js';
import { anchor, capitalised, joined, label, pointer } from '../anchors.js';
import { grouped } from '../grouped.js';
import { comparison, itemCode, restsOf } from '../item.js';
import { restsText } from '../limit-text.js';
import { outcomeMark } from '../outcome.js';
import { evidenceOf } from '../shown.js';
import type { Subject } from '../subject.js';
import { below, table } from '../table.js';

interface Part {
  title: string;
  edition?: string | undefined;
  id: string;
  items: CodeItem[];
}

/** The checklist of the codes: every item that a note raises, its outcome, and where it is shown. */
export function checklist(subject: Subject): Element {
  const { evaluation, rules } = subject;
  const raised = evaluation.raised.map((r) => r.item);
  const parts = [
    ...rules.codes.codes.flatMap((code) =>
      Object.entries(code.sections).map(
        ([letter, section]): Part => ({
          id: `${code.code}/${letter}`,
          title: Object.keys(code.sections).length > 1 ? `${code.title}: ${section.title}` : code.title,
          edition: section.edition,
          items: raised.filter((i) => i.code === code.code && i.section === letter),
        }),
      ),
    ),
    { id: 'own', title: 'Items of the builder’s own', items: raised.filter((i) => i.code === 'own') },
  ];
  const asked = parts.filter((p) => p.items.some((item) => !isOut(item, subject)));
  return h('section.opens', { id: anchor.section('checklist') }, [
    h('h2', 'Code checklist'),
    h(
      'p',
      'Every item that a note of this build raises. What it asks is told in our own words; the text itself decides. Check that each edition is current. Items that do not apply stand below each part with the reason.',
    ),
    ...asked.flatMap((p) => partOf(p, subject)),
    ...outside(
      parts.filter((p) => p.items.length > 0 && !asked.includes(p)),
      subject,
    ),
  ]);
}

const findingsOf = (item: CodeItem, { evaluation }: Subject): Finding[] =>
  evaluation.findings.filter((f) => f.item === item.id);
const isOut = (item: CodeItem, subject: Subject): boolean =>
  findingsOf(item, subject).length > 0 && findingsOf(item, subject).every((f) => f.outcome === 'not-applicable');

function partOf(part: Part, subject: Subject): Element[] {
  const of = (item: CodeItem) => findingsOf(item, subject);
  const out = part.items.filter((i) => isOut(i, subject));
  return [
    h('h3', part.title),
    ...(part.edition ? [h('p.edition', `Edition: ${part.edition}.`)] : []),
    table(
      'checklist',
      'Items that apply',
      [
        ['Item and what it asks', 60],
        ['Outcome', 20],
        ['Shown in', 20],
      ],
      part.items.filter((i) => !out.includes(i)).map((item) => rowOf(item, of(item), subject)),
      { id: part.id },
    ),
    ...(out.length > 0
      ? [
          h('div.not-applicable', [
            h('p', [
              h('span.sign', { ariaHidden: 'true' }, signOf('not-applicable')),
              ` ${outcomeLabel('not-applicable')}:`,
            ]),
            h('ul', outOf(out, of)),
          ]),
        ]
      : []),
  ];
}

/** Codes none of whose items applies, such as those of other states, together. */
function outside(parts: readonly Part[], subject: Subject): Element[] {
  if (parts.length === 0) return [];
  return [
    h('h3', 'Codes none of whose items applies'),
    h(
      'div.not-applicable',
      h(
        'ul',
        parts.map((p) =>
          h('li', [
            h('b', p.title),
            h(
              'ul',
              outOf(p.items, (item) => findingsOf(item, subject)),
            ),
          ]),
        ),
      ),
    ),
  ];
}

function rowOf(item: CodeItem, findings: readonly Finding[], subject: Subject): Element[] {
  const { codes } = subject.rules;
  const trail = [
    ...codes.leadsTo(item.id).map((l) => ['leads to ', itemCode(l.item.id, subject)]),
    ...codes.ledFrom(item.id).map((l) => ['from ', itemCode(l.item.id, subject)]),
  ];
  return [
    h('div', { id: anchor.item(item.id) }, [
      h('b', item.title),
      ' ',
      h('code', item.id),
      h('div', item.asks),
      below(restsText(restsOf(item.rests))),
      ...comparison(item),
      ...(trail.length > 0
        ? [
            below(
              ...joined(
                trail.map((t) => h('span', t)),
                '; ',
              ),
            ),
          ]
        : []),
    ]),
    outcomesOf(item, findings),
    h('span', joined(shownIn(findings, subject), '; ')),
  ];
}

/** One outcome with its marks; of several findings how many came out how, the marks once. */
function outcomesOf(item: CodeItem, findings: readonly Finding[]): Element {
  const [first, ...more] = findings;
  if (!first)
    return outcomeMark({
      outcome: item.kind === 'answer' ? 'unanswered' : item.kind === 'evidence' ? 'not-shown' : 'not-measured',
      marks: [],
    });
  if (more.length === 0) return outcomeMark(first);
  const alike = outcomes.flatMap((o) => {
    const of = findings.filter((f) => f.outcome === o);
    return of.length > 0 ? [{ of, marks: [...new Set(of.flatMap((f) => f.marks))] }] : [];
  });
  const out = findings.filter((f) => f.outcome === 'not-applicable');
  return h('span', [
    ...joined(
      alike.map(({ of, marks }) =>
        h('span', [`${of.length} × `, outcomeMark({ ...of[0]!, marks, concession: undefined })]),
      ),
      h('br'),
    ),
    ...out.map((f) => h('span.below', { id: anchor.finding(f.id) }, `${f.subject}: ${f.says}`)),
  ]);
}

/** The place of the finding in its note, once a note, and what shows it. */
function shownIn(findings: readonly Finding[], subject: Subject): Element[] {
  const first = new Map<string, Finding>();
  for (const f of findings) if (!first.has(f.note) && f.outcome !== 'not-applicable') first.set(f.note, f);
  const places = [...first.values()].map((f) =>
    pointer(anchor.finding(f.id), f.note === 'build' ? 'queries' : label.note(f.note)),
  );
  return [...places, ...findings.flatMap((f) => evidenceOf(f, subject))];
}

/** What does not apply, by the reason. */
function outOf(items: readonly CodeItem[], of: (item: CodeItem) => readonly Finding[]): Element[] {
  const reason = (item: CodeItem) => [...new Set(of(item).map((f) => f.says))].join('; ');
  return grouped(items, reason).map((alike) =>
    h('li', [
      `${capitalised(reason(alike[0]))}: `,
      ...joined(
        alike.map((item) =>
          h('span', { id: anchor.item(item.id) }, [
            item.title,
            ' ',
            h('code', item.id),
            ...of(item).map((f) => h('span', { id: anchor.finding(f.id) })),
          ]),
        ),
      ),
    ]),
  );
}
