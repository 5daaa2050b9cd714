import type { HoldPoint, Kind } from '../../checks/engine/kind.js';
import { type Field, fieldTree } from '../../project/field-tree.js';
import { wrap } from '../terminal/wrap.js';

/** So many fields are named; the note has them all. */
const most = 8;

const levels: Readonly<Record<HoldPoint['level'], string>> = {
  record: '',
  witness: ' (the certifier is invited)',
  hold: ' (work stops until the certifier releases it)',
};

/** What must be measured and shown before the work covers it, earliest first. */
export function measureFirst(kind: Kind, width: number): string {
  const first = kind.holdPoints.filter((p) => p.during === 'as-received');
  const later = kind.holdPoints.filter((p) => p.during !== 'as-received');
  const was = asReceived(fieldTree(kind.shape));
  const list = (items: readonly string[]) =>
    items.flatMap((item) => wrap(item, width, '    ').map((line, i) => (i === 0 ? `  - ${line.trimStart()}` : line)));
  const more = was.length > most ? [`and ${was.length - most} more, which the note names`] : [];
  const parts: [string, readonly string[]][] = [
    [
      'Before anything is taken apart, for it cannot be measured later',
      [...first.map((p) => p.shows + levels[p.level]), ...was.slice(0, most).map(fieldText), ...more],
    ],
    [
      'Before the next stage covers it',
      later.map((p) => `${p.during}, before ${p.before}: ${p.shows}${levels[p.level]}`),
    ],
  ];
  return parts.flatMap(([title, items]) => (items.length > 0 ? [title, ...list(items), ''] : [])).join('\n') + '\n';
}

/** Measured fields of blocks that tell how it was. */
function asReceived(fields: readonly Field[], under = false): Field[] {
  return fields.flatMap((field) => {
    const inside = under || field.key === 'was' || field.key === 'as-received';
    if (field.is !== 'value') return asReceived(field.fields, inside);
    return (inside || /-was$/.test(field.key)) && (field.meta.form === 'quantity' || field.meta.form === 'slope')
      ? [field]
      : [];
  });
}

const fieldText = ({ meta, key }: Field): string => `${meta.says ?? key}${meta.how ? `: ${meta.how}` : ''}`;
