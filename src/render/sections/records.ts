import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Finding } from '../../checks/engine/finding.js';
import type { stages } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import { anchor, joined, label, pointer } from '../anchors.js';
import { inline } from '../inline.js';
import { itemCode } from '../item.js';
import { outcomeMark } from '../outcome.js';
import { evidenceOf, partLines } from '../shown.js';
import type { Subject } from '../subject.js';
import { below, table } from '../table.js';
import { todo } from './findings.js';

const levels = {
  record: 'record',
  witness: 'witness: the certifier is invited',
  hold: 'hold: work stops until released',
} as const;

/** Evidence that must be made before the next stage covers it, and dates that must follow each other. */
export function recordsTable(note: Note, findings: readonly Finding[], subject: Subject): Element[] {
  const points = subject.rules.kinds.get(note.kind)!.holdPoints;
  const rows = findings.map((f) => {
    const point = f.point ? points.find((p) => p.id === f.point) : undefined;
    const visit = subject.build.notes.find((n) => n.file === f.place.file && n !== note);
    const parts = partLines(f, subject);
    const shown = evidenceOf(f, subject);
    return [
      h('span', { id: anchor.finding(f.id) }, [
        h('b', f.title),
        below(point ? levels[point.level] : h('code', f.subject)),
        ...(f.item === 'hold-point' || !point ? [] : [below(itemCode(f.item, subject))]),
      ]),
      point ? `${short(point.during)}, before it is ${short(point.before)}` : '–',
      h('span', [
        ...(parts.length > 0
          ? parts
          : shown.length > 0
            ? joined(shown)
            : [visit ? pointer(anchor.note(visit.name), label.note(visit.name)) : '–']),
        below(...inline(f.says)),
      ]),
      h('span', [outcomeMark(f), ...todo(f)]),
    ];
  });
  return rows.length === 0
    ? []
    : [
        table(
          'records',
          'Made before it was covered',
          [
            ['What', 27],
            ['When', 18],
            ['Shown by', 28],
            ['Outcome', 27],
          ],
          rows,
          { id: `${note.name}/records` },
        ),
      ];
}

const short = (stage: keyof typeof stages): string => stage.replace('-', ' ');
