import pc from 'picocolors';
import type { Finding } from '../../checks/engine/finding.js';
import { outcomeWord } from '../../checks/engine/outcome-words.js';
import type { Changes } from '../../history/compare/compare.js';
import { type BuildHistory, isChanged, type ValueChange } from '../../history/history.js';
import { shown, who } from '../../history/who.js';
import { tool } from '../../platform/tool.js';
import { boundText, restsText } from '../../render/limit-text.js';
import { wrap } from '../terminal/wrap.js';

/** The history for a terminal. What came from git is shown with everything made visible that could play tricks. */
export function historyText(
  build: string,
  history: BuildHistory,
  options: { everything: boolean; width: number; colour: boolean },
): string {
  const paint = pc.createColors(options.colour);
  const listed = history.fields.filter((f) => options.everything || isChanged(f));
  const once = history.fields.length - history.fields.filter(isChanged).length;
  const lines = listed.flatMap((f) => [
    paint.bold(`${shown(f.note)}  ${shown(f.field)}${f.present ? '' : '  (no longer there)'}`),
    ...f.events.flatMap((event) => [
      ...wrap(
        `${event.date.slice(0, 16).replace('T', ' ')}  ${changeText(event)}  ${who(event.author)}: ${shown(event.subject)}  ${event.commit.slice(0, 8)}`,
        options.width,
        '  ',
      ),
      ...remarks(event).flatMap((remark) => wrap(remark, options.width, '      ')),
    ]),
    '',
  ]);
  const unread = history.unread.map(
    ({ commit, path, reason }) => `${commit.slice(0, 8)} ${shown(path)} could not be read: ${shown(reason)}`,
  );
  const late = history.fields.flatMap((f) => f.events).filter((e) => e.late).length;
  return [
    ...lines,
    `${shown(build)}: ${history.fields.length} values, ${once} of them entered once, ${history.fields.length - once} changed since${late > 0 ? `, ${late} change(s) after the work had covered what was measured` : ''}.`,
    ...unread.flatMap((text) => wrap(text, options.width, '')),
    ...history.limits.flatMap((text) => wrap(text, options.width, '')),
    'Names and dates are what each computer said; git proves only that nothing before a signed tag was altered since.',
    '',
  ].join('\n');
}

/** `2.48 mm → 0.1 in (+0.06 mm)`. */
function changeText({
  from,
  to,
  difference,
  rewritten,
}: Pick<ValueChange, 'from' | 'to' | 'difference' | 'rewritten'>): string {
  if (from === undefined) return `entered ${shown(to ?? '')}`;
  if (to === undefined) return `${shown(from)} taken out`;
  const by = rewritten ? 'the same value' : difference;
  return `${shown(from)} → ${shown(to)}${by === undefined ? '' : ` (${by})`}`;
}

/** What must be known beside a change. */
function remarks({ late, sides, boundary, unread }: ValueChange): string[] {
  return [
    ...(late ? [`! dated after \`${late.stage}\` on ${late.on} covered what it measures`] : []),
    ...(sides
      ? [`! settled in a merge of ${sides.map((side) => (side === undefined ? 'nothing' : shown(side))).join(' and ')}`]
      : []),
    ...(unread
      ? [`! the note could not be read in ${unread.map((c) => c.slice(0, 8)).join(', ')}: it may have changed there`]
      : []),
    ...(boundary ? ['! this clone begins here: it may be older, and somebody else’s'] : []),
  ];
}

/** What changed between two states, for a terminal. */
export function changesText(changes: Changes, width: number): string {
  const outcome = (f: Finding | undefined) =>
    f ? `${outcomeWord(f)}${f.concession ? `, concession ${f.concession.word}` : ''}` : 'none';
  const limit = (l: Changes['limits'][number]['from']) =>
    l ? `${boundText(l)}. ${restsText(l)}` : 'no confirmed figure';
  const parts: [string, string[]][] = [
    ['Notes', changes.notes.map((n) => `${n.path} ${n.change}${n.from === undefined ? '' : ` from ${n.from}`}`)],
    ['Measured values', changes.values.map((v) => `${v.note} ${v.field}: ${changeText(v)}`)],
    ['Outcomes', changes.outcomes.map((o) => `${o.id}, ${o.title}: ${outcome(o.from)} → ${outcome(o.to)}`)],
    ['Limits and editions', changes.limits.map((l) => `${l.item}, ${l.title}: ${limit(l.from)} → ${limit(l.to)}`)],
    ['Photos', changes.photos.map(fileText)],
    ['Papers', changes.papers.map(fileText)],
    [
      'Queries',
      changes.queries.map((q) => `${q.name}: ${q.from ?? 'not asked'} → ${q.to ?? 'taken out'}. ${q.question}`),
    ],
  ];
  const told = parts.filter(([, lines]) => lines.length > 0);
  return [
    `From ${changes.from.label} (${changes.from.commit.slice(0, 8)}) to ${changes.to.label} (${changes.to.commit.slice(0, 8)}), both examined with the rules of this version:`,
    '',
    ...(changes.from.madeWith !== undefined && changes.from.madeWith !== tool
      ? [
          ...wrap(
            `${changes.from.label} was made with ${shown(changes.from.madeWith)}: figures that come with the program may have changed since, which does not show here.`,
            width,
            '',
          ),
          '',
        ]
      : []),
    ...told.flatMap(([title, lines]) => [title, ...lines.flatMap((line) => wrap(shown(line), width, '  ')), '']),
    ...(told.length === 0 ? ['Nothing that is measured, found or shown has changed.', ''] : []),
    ...changes.untold.flatMap((text) => wrap(shown(text), width, '')),
    '',
  ].join('\n');
}

/** `photos/a.jpg replaced by another picture under the same name`. */
function fileText({ path, change, from, shows, showed }: Changes['photos'][number]): string {
  const said = {
    added: 'added',
    removed: 'taken out',
    replaced: 'replaced by another content under the same name',
    renamed: `renamed from ${from ?? ''}`,
    'described otherwise': 'described otherwise',
  }[change];
  const caption = showed === undefined ? (shows ? `: ${shows}` : '') : `: “${showed}” → “${shows ?? ''}”`;
  return `${path} ${said}${caption}`;
}
