import { describe, expect, it } from 'vitest';
import { expanded } from '../../../src/calc/value.js';
import { type Finding, isOpen } from '../../../src/checks/engine/finding.js';
import { valueOf } from '../../../src/checks/engine/values.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import type { Measured } from '../../../src/project/fields.js';
import { measuredIn } from '../../../src/project/measured-in.js';
import { memory } from '../../../src/project/memory.js';
import type { Note } from '../../../src/project/model.js';
import { demo, examineAlone, typicalNote } from './typical-notes.js';

/**
 * Whoever knows less can show less: a larger uncertainty of anything that was measured turns no open outcome into one that
 * is not. Regression only: the law follows from the guarded rule (JCGM 106:2012, 8.3.2).
 */

const rounds = Number(process.env['ROUNDS'] ?? 3);
const factor = 3;

function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Change = (measured: Measured) => Measured;

/** The note with its measured values changed. */
function changed(note: Note, change: Change): Note {
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    if ('quantity' in value && 'at' in value) return change(value as Measured);
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, walk(inner)]));
  };
  return { ...note, data: walk(note.data) as Note['data'], front: { ...note.front } };
}

const uncertaintyOf = (measured: Measured) => expanded(valueOf(measured, demo));

function shifted(measured: Measured, by: number): Measured {
  const { quantity } = measured;
  if (quantity.si + by <= 0 && quantity.si > 0) return measured;
  const readings = quantity.readings?.map((one) => one + by);
  return {
    ...measured,
    quantity: { ...quantity, si: quantity.si + by, exact: quantity.exact.plus(by), ...(readings && { readings }) },
  };
}

/** What was measured, with an uncertainty so many times as large. The ± of a torque that a manual asks for is its window. */
function lessCertain(measured: Measured): Measured {
  if (/\.asked-(?:torque|angle)$/.test(measured.at.path)) return measured;
  const { quantity } = measured;
  const { readings, spread } = quantity;
  const u = uncertaintyOf({ ...measured, quantity: { ...quantity, spread: 0 } });
  if (u === 0) return measured;
  return {
    ...measured,
    quantity: {
      ...quantity,
      expanded: factor * u,
      ...(readings && { eachStated: readings.map(() => factor * u) }),
      ...(spread !== undefined && { spread: factor * spread }),
    },
  };
}

const outcomesOf = (findings: readonly Finding[]) =>
  new Map(findings.filter((f) => f.of !== 'proof' && f.of !== 'date' && f.item !== 'agreement').map((f) => [f.id, f]));

interface Passed {
  note: string;
  says: string;
}
function tried(note: Note, round: number): Passed[] {
  const random = seeded(round * 1000 + note.name.length);
  const recall = memory();
  const place = (m: Measured) => `${m.at.path}`;
  const stirred = changed(note, (m) => shifted(m, random() < 0.35 ? (random() * 5 - 2.5) * uncertaintyOf(m) : 0));
  const before = outcomesOf(examineAlone(stirred, new Map(), recall).findings);
  const all = measuredIn(stirred.data).map(place);
  const chosen = new Set(round % 3 === 0 ? all : all.filter(() => random() < (round % 3 === 1 ? 0.5 : 0.1)));
  const after = outcomesOf(
    examineAlone(
      changed(stirred, (m) => (chosen.has(place(m)) ? lessCertain(m) : m)),
      new Map(),
      recall,
    ).findings,
  );
  return [...before.values()].flatMap((was) => {
    const now = after.get(was.id);
    return isOpen(was) && (now === undefined || !isOpen(now))
      ? [
          {
            note: note.name,
            says: `${was.id} (${was.of}): ${was.outcome}${was.waits ? ' waits' : ''} "${was.says.slice(0, 200)}" -> ${now?.outcome} "${now?.says.slice(0, 200)}"`,
          },
        ]
      : [];
  });
}

/** What is typical of every field of a rear axle makes simulations of minutes; the demo's has the same fields. */
const typical = [...kinds.values()].filter(({ id }) => id !== 'rear-axle').map(typicalNote);
const notes = [...demo.notes, ...typical];
describe('a larger uncertainty passes nothing', () => {
  it.each(notes.map((note) => [note.name, note] as const))('%s', (_, note) => {
    const passed = Array.from({ length: rounds }, (_, round) => tried(note, round)).flat();
    expect([...new Set(passed.map((p) => p.says))]).toEqual([]);
  });
});
