import pc from 'picocolors';
import type { Baseline, Plan, PlanLimit } from '../../checks/plan/plan.js';
import { visible } from '../../platform/visible.js';
import { stages } from '../../project/common.js';
import type { Build } from '../../project/model.js';
import { boundText, restsText } from '../../render/limit-text.js';
import { wrap } from '../terminal/wrap.js';
import { outcomeText } from './finding-text.js';

export interface PlanTextOptions {
  width: number;
  colour: boolean;
}

/** The plan in the order in which it is used: what is touched, what holds, what to measure and show, what to ask. */
export function planText(build: Build, plan: Plan, options: PlanTextOptions): string {
  const paint = pc.createColors(options.colour);
  const part = (title: string, lines: readonly string[], none: string) => [
    paint.bold(title),
    '',
    ...(lines.length > 0 ? lines : [`  ${none}`]),
    '',
  ];
  const entry = (head: string, ...rest: readonly string[]) => [
    ...hanging(visible(head), options.width, '  ', '    '),
    ...rest.filter(Boolean).flatMap((line) => wrap(visible(line), options.width, '    ')),
  ];
  return [
    paint.bold(`Plan: ${visible(build.data.title)}`),
    '',
    ...part(
      'Kinds of note',
      plan.kinds.flatMap((k) => entry(`${k.id}: ${k.notes.length > 0 ? k.notes.join(', ') : 'named, no note yet'}`)),
      'none',
    ),
    ...part(
      'Sections and modification codes touched',
      plan.sections.flatMap((s) =>
        entry(
          `${s.section} ${s.title}: ${s.items} item(s)`,
          `${s.code}${s.edition ? `, ${s.edition}; check that it is current` : ''}`,
          s.codes.length > 0 ? `codes: ${s.codes.join(', ')}` : '',
        ),
      ),
      'none',
    ),
    ...part(
      'Limits',
      plan.limits.flatMap((l) => [
        ...entry(`${l.title}: ${limitWords(l)}`, l.limit ? restsText(l.limit) : '', l.item),
        ...l.findings.flatMap((f) =>
          wrap(
            `${outcomeText(f, paint)}  ${visible([f.subject, f.says].filter(Boolean).join(': '))}`,
            options.width,
            '      ',
          ),
        ),
      ]),
      'none that build.md decides',
    ),
    ...part(
      'Figures to read in the own copy',
      plan.figures.flatMap((f) => entry(f.title, f.figure, `type it into limits.yaml as item ${f.item}`)),
      'none',
    ),
    ...part(
      'Calculations to prepare',
      plan.sheets.flatMap((s) => entry(`${s.title} (${s.id})`, s.purpose)),
      'none',
    ),
    ...part(
      'Baseline: measure as received, before anything is taken apart',
      plan.baseline.flatMap((b) =>
        entry(
          `${b.written ? '[x]' : '[ ]'} ${b.note ?? b.kind}: ${b.says}`,
          b.how ? `how: ${b.how}` : '',
          `${fieldWords(b)}`,
        ),
      ),
      'none',
    ),
    ...part(
      'Measuring card: show before it is covered',
      plan.points.flatMap((p) =>
        entry(
          `[ ] before \`${p.before}\`, ${p.level}: ${p.shows}${p.parts.length > 1 ? ` (${p.parts.join(', ')})` : ''}`,
          `${p.note ?? p.kind} ${p.id}, in the stage \`${p.during}\`${stages[p.during] === p.during ? '' : ` (${stages[p.during]})`}`,
        ),
      ),
      'none',
    ),
    ...part(
      'Tests and reports to book',
      plan.tests.flatMap((t) => entry(t.title, t.asks, t.item)),
      'none',
    ),
    ...part(
      'Questions for the certifier',
      plan.questions.flatMap((q) => entry(`${q.of}: ${q.asks}`, q.item ?? '')),
      'none',
    ),
    ...part(
      'Left out, because it does not apply',
      plan.leftOut.flatMap((l) => entry(`${l.title}: ${l.because}`, l.item)),
      'nothing',
    ),
    ...wrap(
      'Gusset certifies nothing: the certifying engineer and the registration authority decide.',
      options.width,
      '',
    ),
    '',
  ].join('\n');
}

function limitWords({ limit, depends }: PlanLimit): string {
  if (limit) return boundText(limit);
  return depends.length > 0
    ? `depends on ${depends.map((d) => d.replaceAll('_', ' ')).join(', ')}`
    : 'stated by the note itself';
}

const fieldWords = (b: Baseline): string =>
  `field ${b.path}${b.unit && b.unit !== '1' ? `, in ${b.unit}` : ''}${b.typical ? `, such as ${b.typical}` : ''}`;

/** Like `wrap`, with a deeper indent from the second line on. */
function hanging(text: string, width: number, first: string, rest: string): string[] {
  return wrap(text, width - (rest.length - first.length), first).map((line, i) =>
    i === 0 ? line : rest + line.trimStart(),
  );
}
