import { weighted } from '../../calc/propagate.js';
import { expanded } from '../../calc/value.js';
import { facts, type Stated } from '../../project/facts.js';
import type { Build } from '../../project/model.js';
import { showQuantity } from '../../units/show.js';
import type { Finding } from './finding.js';
import { valueOf } from './values.js';

/** One fact, one place: two notes that state the same fact must agree within what both are uncertain by. */
export function agreement(stated: readonly Stated[], build: Build): Finding[] {
  const first = new Map<string, Stated>();
  return stated.flatMap((s): Finding[] => {
    if (!s.note) return [];
    const other = first.get(s.name);
    if (!other) {
      first.set(s.name, s);
      return [];
    }
    const [a, b] = [valueOf(other.value, build), valueOf(s.value, build)];
    const apart = Math.abs(a.si - b.si);
    const agree = apart <= expanded(weighted([1, a], [-1, b])) * (1 + 1e-9);
    if (agree) return [];
    const { unit, says } = facts[s.name];
    const shown = (v: typeof a) => showQuantity(v.si, unit, expanded(v));
    return [
      {
        id: `${s.note.name}/${s.name}/agreement`,
        note: s.note.name,
        subject: s.name,
        item: 'agreement',
        title: `Notes agree on the ${says}`,
        of: 'answer',
        outcome: 'contradicted',
        form: 'agreement',
        basis: 'own-copy',
        marks: [],
        measured: b,
        says: `stated as ${shown(b)} here and as ${shown(a)} in ${other.note!.name}: they differ by ${showQuantity(apart, unit)}`,
        todo: 'find out which is right and state it once',
        place: s.value.at,
        related: { place: other.value.at, says: `stated as ${shown(a)} here` },
      },
    ];
  });
}
