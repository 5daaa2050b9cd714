import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Baseline, Plan, PlanLimit } from '../../checks/plan/plan.js';
import { type Stage, stages } from '../../project/common.js';
import { anchor, label, pointer } from '../anchors.js';
import { inline } from '../inline.js';
import { boundText, restsText } from '../limit-text.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { below, type Row, table } from '../table.js';

/** What a proposal says beyond the notes: what will hold, what will be measured and shown when, and what is asked. */
export function planSections(plan: Plan, subject: Subject): Element[] {
  return [planned(plan, subject), questions(plan, subject), card(plan, subject)];
}

/** The note as a pointer, or the kind where there is no note yet. */
const owner = (of: { kind: string; note?: string | undefined }, subject: Subject): Element | string =>
  of.note === undefined
    ? subject.rules.kinds.get(of.kind)!.title
    : pointer(anchor.note(of.note), label.note(of.note), false);

const kindsOf = (ids: readonly string[], subject: Subject): string =>
  ids.map((id) => subject.rules.kinds.get(id)!.title).join(', ');

function planned(plan: Plan, subject: Subject): Element {
  const part = (title: string, rows: readonly Row[], made: () => Element, none: string) => [
    h('h3', title),
    rows.length > 0 ? made() : h('p', none),
  ];
  const sections = plan.sections.map((s) => [
    `${s.section}, ${s.title}`,
    h('span', [
      s.code,
      below(s.edition ? `${s.edition}; check that it is current` : 'edition: as stated at each item'),
    ]),
    s.codes.join(', ') || '–',
    kindsOf(s.kinds, subject),
    String(s.items),
  ]);
  const limits = plan.limits.map((l) => [h('span', [l.title, below(h('code', l.item))]), limitCell(l), standing(l)]);
  const figures = plan.figures.map((f) => [f.title, f.figure, h('code', f.item)]);
  const sheets = plan.sheets.map((s) => [s.title, s.purpose, kindsOf(s.kinds, subject)]);
  const tests = plan.tests.map((t) => [
    h('span', [t.title, below(h('code', t.item))]),
    t.asks,
    t.form === 'test' ? 'test' : 'report',
  ]);
  return h('section.opens', { id: anchor.section('plan') }, [
    h('h2', 'Plan of the work'),
    ...part(
      'Sections and modification codes',
      sections,
      () =>
        table(
          'plan-sections',
          'What the work touches',
          [
            ['Section', 24],
            ['Code and edition', 32],
            ['Modification codes', 16],
            ['Because of', 20],
            ['Items', 8],
          ],
          sections,
          { id: 'plan-sections' },
        ),
      'None is touched.',
    ),
    ...part(
      'Limits',
      limits,
      () =>
        table(
          'plan-limits',
          'Limits that hold, and how planned values stand',
          [
            ['Limit of', 27],
            ['Figure and basis', 40],
            ['Planned', 33],
          ],
          limits,
          { id: 'plan-limits' },
        ),
      'None that is decided yet.',
    ),
    ...part(
      'Figures still to be read in the own copy',
      figures,
      () =>
        table(
          'plan-figures',
          'Read before cutting and typed into limits.yaml',
          [
            ['Limit of', 30],
            ['Figure', 44],
            ['Item', 26],
          ],
          figures,
          { id: 'plan-figures' },
        ),
      'None.',
    ),
    ...part(
      'Calculations to prepare',
      sheets,
      () =>
        table(
          'plan-sheets',
          'Sheets that these kinds of work use',
          [
            ['Sheet', 30],
            ['What it answers', 50],
            ['For', 20],
          ],
          sheets,
          { id: 'plan-sheets' },
        ),
      'None.',
    ),
    ...part(
      'Tests and reports to book',
      tests,
      () =>
        table(
          'plan-tests',
          'Tests and reports that others make or watch',
          [
            ['Test or report', 30],
            ['What it asks', 58],
            ['Form', 12],
          ],
          tests,
          { id: 'plan-tests' },
        ),
      'None.',
    ),
  ]);
}

const limitCell = ({ limit, depends }: PlanLimit): Element | string => {
  if (limit) return h('span', [boundText(limit), h('span.below.rests', restsText(limit))]);
  return depends.length > 0
    ? `depends on ${depends.map((d) => d.replaceAll('_', ' ')).join(', ')}`
    : 'stated by the note itself';
};

const standing = ({ findings }: PlanLimit): Element | string =>
  findings.length === 0
    ? 'no planned value'
    : h(
        'ul.plain',
        findings.map((f) =>
          h('li', [pointer(anchor.finding(f.id), f.subject || label.note(f.note), false), ' ', outcomeMark(f)]),
        ),
      );

function questions(plan: Plan, subject: Subject): Element {
  const rows = plan.questions.map((q) => [
    q.of,
    h('span', [...inline(q.asks), ...(q.item ? [below(h('code', q.item))] : [])]),
    '',
  ]);
  return h('section.opens', { id: anchor.section('plan-questions') }, [
    h('h2', 'Questions for the certifier'),
    rows.length > 0
      ? table(
          'card',
          `To be settled before work begins${subject.build.data.certifier ? `, by ${subject.build.data.certifier.name}` : ''}`,
          [
            ['About', 18],
            ['Question', 52],
            ['Answer, by, on', 30],
          ],
          rows,
          { id: 'plan-questions' },
        )
      : h('p', 'None is open.'),
  ]);
}

/** A page to take to the car: ruled fields for what is measured as received, and for what is shown before it is covered. */
function card(plan: Plan, subject: Subject): Element {
  const readings = plan.baseline.filter((b) => !b.written);
  return h('section.opens.measuring-card', { id: anchor.section('measuring-card') }, [
    h('h2', 'Measuring card'),
    h(
      'p',
      'Filled in by hand at the car, then typed into the notes. Take each reading three times; name the instrument as in build.md.',
    ),
    h('h3', 'As received, before anything is taken apart'),
    readings.length > 0
      ? table(
          'card',
          'Baseline: it cannot be measured later',
          [
            ['What and how', 40],
            ['Unit', 8],
            ['1', 10],
            ['2', 10],
            ['3', 10],
            ['With', 11],
            ['By, on', 11],
          ],
          grouped(readings, subject),
          { id: 'card-baseline' },
        )
      : h('p', 'Every field for the car as received is filled in.'),
    h('h3', 'Before it is covered'),
    plan.points.length > 0
      ? table(
          'card',
          'Hold points in the order in which they are covered',
          [
            ['What is shown', 38],
            ['When', 24],
            ['Level', 10],
            ['Photo', 10],
            ['Shown to, on', 18],
          ],
          points(plan, subject),
          { id: 'card-points' },
        )
      : h('p', 'None.'),
  ]);
}

/** Readings under the note or kind that they belong to. */
function grouped(baseline: readonly Baseline[], subject: Subject): Row[] {
  const owners = new Map(baseline.map((b) => [b.note ?? b.kind, b]));
  return [...owners].flatMap(([name, first]): Row[] => [
    { group: h('b', owner(first, subject)) },
    ...baseline
      .filter((b) => (b.note ?? b.kind) === name)
      .map((b) => [
        h('span', [b.says, ...(b.how ? [below(b.how)] : []), below(h('code', b.path))]),
        b.unit === '1' ? '–' : (b.unit ?? ''),
        '',
        '',
        '',
        '',
        '',
      ]),
  ]);
}

const levels = { record: 'record', witness: 'witness', hold: 'HOLD' } as const;

function points(plan: Plan, subject: Subject): Row[] {
  const covering = [...new Set(plan.points.map((p) => p.before))];
  return covering.flatMap((before): Row[] => [
    { group: h('b', `Before it is ${before}`) },
    ...plan.points
      .filter((p) => p.before === before)
      .map((p) => [
        h('span', [
          p.shows,
          below(owner(p, subject), ', ', h('code', p.id), p.parts.length > 1 ? `: ${p.parts.join(', ')}` : ''),
        ]),
        stageWords(p.during),
        h(p.level === 'hold' ? 'b' : 'span', levels[p.level]),
        '',
        '',
      ]),
  ]);
}

const stageWords = (stage: Stage): string =>
  stages[stage].startsWith(stage) ? stages[stage] : `${stage}: ${stages[stage]}`;
