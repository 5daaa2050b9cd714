import { afterAll, describe, expect, it } from 'vitest';
import { kinds } from '../../../../src/checks/kinds/index.js';
import { differing, examined, fieldsOf, firstOf, moved, rawOf, type Witness, witnessesOf } from './witness.js';

/**
 * Every field of every kind decides: a value of it is moved in a note, and the outcome of the item named beside it changes. A
 * field that changes none says for whom it is recorded. Those of which neither is shown yet are listed, and count.
 */

const counts = { decide: 0, recorded: 0, unproven: 0 };

describe.each([...kinds.values()].map((kind) => [kind.id, kind] as const))('in %s', (id, kind) => {
  const { notes, fields, unproven = [] } = witnessesOf(id);
  const all = fieldsOf(kind);
  const named = new Set(all.flatMap(({ names }) => names));

  it('no witness is of a field that is gone', () => {
    expect(Object.keys(fields).filter((name) => !named.has(name))).toEqual([]);
  });
  const moves = all.flatMap(({ leaf, names }): [string, Witness][] => {
    const name = names.find((n) => fields[n]);
    if (leaf.field.meta.recordedFor === undefined && name !== undefined) return [[name, fields[name]!]];
    return [];
  });
  it('every field has a witness or a reader, or is listed as unproven', () => {
    const neither = all.filter(
      ({ leaf, names }) => leaf.field.meta.recordedFor === undefined && !names.some((n) => fields[n]),
    );
    counts.recorded += all.filter(({ leaf }) => leaf.field.meta.recordedFor !== undefined).length;
    counts.unproven += neither.length;
    expect(neither.map(({ names }) => names[0]).sort()).toEqual([...unproven].sort());
  });
  it('a field that has a reader only has no witness', () => {
    const both = all.filter(
      ({ leaf, names }) => leaf.field.meta.recordedFor !== undefined && names.some((n) => fields[n]),
    );
    expect(both.map(({ names }) => names[0])).toEqual([]);
  });
  it.each(moves)('%s changes an outcome', async (name, { in: base, at = firstOf(name), to, tells }) => {
    const { note, ...around } = notes[base]!;
    const [before, after] = await Promise.all([
      examined(id, rawOf(note), around),
      examined(id, moved(rawOf(note), at, to), around),
    ]);
    expect(differing(before, after)).toContain(tells);
    counts.decide++;
  });
});

afterAll(() => {
  const all = counts.decide + counts.recorded + counts.unproven;
  console.log(
    `${counts.decide} of ${all} fields decide an outcome; ${counts.recorded} are recorded only, ${counts.unproven} unproven`,
  );
  expect(counts.recorded / all).toBeLessThanOrEqual(0.1);
});
