import type { Run } from '../../calc/run.js';
import type { Value } from '../../calc/value.js';
import { type FactName, originalFacts, type Stated } from '../../project/facts.js';
import { afresh } from '../../project/memory.js';
import type { Build, Note } from '../../project/model.js';
import type { CodeItem, Codes } from '../codes/codes.js';
import type { World } from '../codes/limits.js';
import type { Confirmed, OwnFigure } from '../codes/own-copy.js';
import { agreement } from './agreement.js';
import { askItems } from './ask-items.js';
import { concede } from './concessions.js';
import { type Doubt, doubtsOf } from './doubts.js';
import { evaluateNote } from './evaluate-note.js';
import type { Finding } from './finding.js';
import type { Kind } from './kind.js';
import { checkOrder, type TakenAt } from './order.js';
import { checkQueries } from './queries.js';
import { releases } from './releases.js';
import { followTrails } from './trails.js';
import { valueOf } from './values.js';
import type { Done, Ground } from './work.js';

/** All that was found out about a build. */
export interface Evaluation {
  findings: Finding[];
  runs: Run[];
  /** Items of the codes that some note of the build raises, by id, with the notes that raise them. */
  raised: { item: CodeItem; notes: Note[] }[];
  /** Facts by name, with where each is stated. */
  facts: ReadonlyMap<FactName, Stated>;
  /** Values that were probably not meant as they stand; no finding rests on them. */
  doubts: readonly Doubt[];
}

export interface Rules {
  codes: Codes;
  kinds: ReadonlyMap<string, Kind>;
  ownFigures: ReadonlyMap<string, OwnFigure>;
  ownItems: readonly CodeItem[];
  /** Questions and proofs that stand so in the own copy, for the register; `ownItems` has them as confirmed. */
  confirmed?: ReadonlyMap<string, Confirmed> | undefined;
  /** The day on which the build is checked, as `2026-03-14`; left out, no day is too late. */
  today?: string | undefined;
}

/**
 * Checks a build. Pure: the same build, rules and capture times give the same findings in the same order.
 *
 * @param takenAt capture times of photos by path, as far as the files say
 * @param recall keeps what was found on a note as long as nothing differs that it rests on
 */
export function examine(build: Build, rules: Rules, takenAt: TakenAt = new Map(), recall = afresh): Evaluation {
  const items = new Map([...rules.codes.items, ...rules.ownItems.map((i) => [i.id, i] as const)]);
  const stated = [...originalFacts(build), ...build.notes.flatMap((note) => factsOf(note, rules.kinds))];
  const facts = latest(stated);
  const reckoned = new Map<string, Value>();
  const value = (name: string): Value | undefined => {
    if (reckoned.has(name)) return reckoned.get(name);
    const fact = facts.get(name as FactName);
    return fact && valueOf(fact.value, build);
  };
  const ground: Ground = {
    build,
    items,
    fact: value,
    reckoned,
    valueOf: (m) => valueOf(m, build),
    world: (note) => worldOf(build, note, rules, value),
    hasNote: (kind) => build.notes.some((note) => note.kind === kind),
    recall,
  };
  const done: Done = { findings: [], runs: [] };
  const raised = new Map<string, { item: CodeItem; notes: Note[] }>();
  for (const { note, kind } of reckoningFirst(build.notes, rules.kinds)) evaluateNote(note, kind, ground, done);
  for (const note of build.notes) {
    for (const item of items.values()) {
      if (!raises(rules.kinds.get(note.kind)!, item, note.data)) continue;
      raised.set(item.id, { item, notes: [...(raised.get(item.id)?.notes ?? []), note] });
    }
  }
  const all = [...raised.values()];
  done.findings.push(...askItems(all, build, rules.kinds, ground, done));
  done.findings.push(...build.notes.flatMap((note) => checkOrder(note, rules.kinds.get(note.kind)!, takenAt)));
  done.findings.push(...releases(build, rules.kinds));
  done.findings.push(...agreement(stated, build));
  done.findings.push(...checkQueries(build, new Set(items.keys()), done.findings));
  return {
    findings: inNoteOrder(
      followTrails(
        done.findings.map((f) => concede(f, build, rules.today)),
        rules.codes,
      ),
      build,
    ),
    runs: done.runs,
    raised: all,
    facts,
    doubts: doubtsOf(build, rules.kinds),
  };
}

/** Whether a note of this kind, with this data, asks for the item. */
export function raises(kind: Kind, item: CodeItem, data: Note['data']): boolean {
  return item['raised-by'].includes(kind.id as never) && (kind.raises?.(item.id, data as never) ?? true);
}

/** Kinds that reckon facts come before those that may read them, otherwise in the order of the notes. */
function reckoningFirst(notes: readonly Note[], kinds: ReadonlyMap<string, Kind>): { note: Note; kind: Kind }[] {
  const all = notes.map((note) => ({ note, kind: kinds.get(note.kind)! }));
  return [...all.filter(({ kind }) => kind.reckons), ...all.filter(({ kind }) => !kind.reckons)];
}

function factsOf(note: Note, kinds: ReadonlyMap<string, Kind>): Stated[] {
  const named = kinds.get(note.kind)?.facts?.(note.data as never) ?? {};
  return Object.entries(named).flatMap(([name, value]) => (value ? [{ name: name as FactName, value, note }] : []));
}

/** A note that changes a fact stands before `build.md`; of two notes, the first. That they agree is checked apart. */
function latest(stated: readonly Stated[]): Map<FactName, Stated> {
  const facts = new Map<FactName, Stated>();
  for (const s of stated) {
    const known = facts.get(s.name);
    if (!known || (!known.note && s.note)) facts.set(s.name, s);
  }
  return facts;
}

function worldOf(build: Build, note: Note, rules: Rules, value: World['value']): World {
  const { vehicle, original } = build.data;
  const own = rules.kinds.get(note.kind)?.states?.(note.data as never) ?? {};
  const others = build.notes.map((n) => rules.kinds.get(n.kind)?.states?.(n.data as never) ?? {});
  return {
    jurisdiction: vehicle.registration,
    category: vehicle.category,
    built: vehicle.built,
    state: (name) =>
      own[name] ??
      others.find((o) => o[name] !== undefined)?.[name] ??
      (name === 'induction' ? original?.induction : undefined),
    value,
    ownFigures: rules.ownFigures,
  };
}

function inNoteOrder(findings: readonly Finding[], build: Build): Finding[] {
  const order = new Map(build.notes.map((n, i) => [n.name, i]));
  const at = (f: Finding) => order.get(f.note) ?? -1;
  return [...findings].sort((a, b) => at(a) - at(b));
}
