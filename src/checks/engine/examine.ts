import type { Run } from '../../calc/run.js';
import type { Value } from '../../calc/value.js';
import {
  type FactName,
  facts,
  holdsThroughout,
  originalFacts,
  type Stated,
  statedInAnswer,
} from '../../project/facts.js';
import { afresh, type Recall } from '../../project/memory.js';
import type { Build, Note } from '../../project/model.js';
import { vehicleState } from '../../project/vehicle.js';
import type { CodeItem, Codes } from '../codes/codes.js';
import type { World } from '../codes/limits.js';
import type { Confirmed, OwnFigure } from '../codes/own-copy.js';
import { agreement, claimOf, disagreeing } from './agreement.js';
import { type Supposed, withEach } from './alternatives.js';
import { askItems } from './ask-items.js';
import { concede } from './concessions.js';
import { type Doubt, doubtsOf } from './doubts.js';
import { evaluateNote } from './evaluate-note.js';
import type { Finding } from './finding.js';
import { checkHoldPoints } from './hold-points.js';
import type { SettledTogether } from './inconclusive.js';
import { type DigestOf, type Given, judged, judgementsOf } from './judgements.js';
import type { Kind } from './kind.js';
import { stageOrder } from './order.js';
import type { TakenAt } from './proofs.js';
import { checkQueries } from './queries.js';
import { releases } from './releases.js';
import { settledTogether } from './settler-words.js';
import { followTrails } from './trails.js';
import { valueOf } from './values.js';
import { type Done, type Ground, nothingDone } from './work.js';

/** All that was found out about a build. */
export interface Evaluation {
  findings: Finding[];
  /** What is inconclusive, grouped by what would settle most of it. */
  settledTogether: readonly SettledTogether[];
  /** Judgements of the notes; those on findings stand there too. */
  judgements: readonly Given[];
  runs: Run[];
  /** Items of the codes that some note of the build raises, by id, with the notes that raise them. */
  raised: { item: CodeItem; notes: Note[] }[];
  /** Facts by name, with where each is stated. */
  facts: ReadonlyMap<FactName, Stated>;
  /** Facts by name that a sheet gives. */
  reckoned: ReadonlyMap<string, Value>;
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
  /** Digests of photos and documents, by which judgements know them; left out, none is known. */
  digestOf?: DigestOf | undefined;
}

/**
 * Checks a build. Pure: the same build, rules and capture times give the same findings in the same order. What rests on a fact
 * of which two statements do not agree is evaluated with each.
 *
 * @param takenAt capture times of photos by path, as far as the files say
 * @param recall keeps what was found on a note as long as nothing differs that it rests on
 */
export function examine(build: Build, rules: Rules, takenAt: TakenAt = new Map(), recall = afresh): Evaluation {
  const items = new Map([...rules.codes.items, ...rules.ownItems.map((i) => [i.id, i] as const)]);
  const stated = [...originalFacts(build), ...build.notes.flatMap((note) => factsOf(note, rules.kinds, items, build))];
  const known = latest(stated);
  const raised = raisedBy(build, items, rules.kinds);
  const gather = (supposed: Supposed, recalling: Recall) =>
    gatherFindings(build, { ...rules, items }, known, raised, supposed, takenAt, recalling);
  const first = gather(new Map(), recall);
  const disputed = disagreeing([...stated.map((s) => claimOf(s, build)), ...first.claims], build);
  const { findings, affected } = withEach(disputed, first.findings, (supposed) => gather(supposed, afresh).findings);
  findings.push(...build.notes.flatMap(stageOrder));
  findings.push(...releases(build, rules.kinds));
  findings.push(...agreement(disputed, affected, build));
  findings.push(...checkQueries(build, new Set(items.keys()), findings));
  const settled = followTrails(
    findings.map((f) => concede(f, build, rules.today)),
    rules.codes,
  );
  const judgements = judgementsOf(build, settled, rules.digestOf ?? (() => undefined));
  const found = inNoteOrder(judged(settled, judgements), build);
  return {
    findings: found,
    settledTogether: settledTogether(found, build, rules.kinds),
    judgements,
    runs: first.runs,
    raised,
    facts: known,
    reckoned: first.reckoned,
    doubts: doubtsOf(build, rules.kinds),
  };
}

type Raised = { item: CodeItem; notes: Note[] };

/** What the notes and items give where some facts are supposed to have a value, whatever else is stated. */
function gatherFindings(
  build: Build,
  rules: Rules & { items: ReadonlyMap<string, CodeItem> },
  facts: ReadonlyMap<FactName, Stated>,
  raised: readonly Raised[],
  supposed: Supposed,
  takenAt: TakenAt,
  recall: Recall,
): Done & { reckoned: ReadonlyMap<string, Value> } {
  const reckoned = new Map<string, Value>();
  const value = (name: string): Value | undefined => {
    const known = supposed.get(name as FactName) ?? reckoned.get(name);
    if (known) return known;
    const fact = facts.get(name as FactName);
    return fact && valueOf(fact.value, build);
  };
  const ground: Ground = {
    build,
    items: rules.items,
    fact: value,
    reckoned,
    valueOf: (m) => valueOf(m, build),
    world: (note) => worldOf(build, note, rules, value),
    hasNote: (kind) => build.notes.some((note) => note.kind === kind),
    recall,
  };
  const done = nothingDone();
  for (const { note, kind } of reckoningFirst(build.notes, rules.kinds)) evaluateNote(note, kind, ground, done);
  const held = checkHoldPoints(build.notes, rules.kinds, ground, takenAt, (note, item) =>
    raises(rules.kinds.get(note.kind)!, item, note.data, build),
  );
  askItems(raised, build, rules.kinds, ground, done, held.served);
  done.findings.push(...held.findings);
  return { ...done, reckoned };
}

function raisedBy(build: Build, items: ReadonlyMap<string, CodeItem>, kinds: Rules['kinds']): Raised[] {
  const raised = new Map<string, Raised>();
  for (const note of build.notes) {
    for (const item of items.values()) {
      if (!raises(kinds.get(note.kind)!, item, note.data, build)) continue;
      raised.set(item.id, { item, notes: [...(raised.get(item.id)?.notes ?? []), note] });
    }
  }
  return [...raised.values()];
}

/** Whether a note of this kind, with this data, asks for the item; what only some vehicles are asked, of these alone. */
export function raises(kind: Kind, item: CodeItem, data: Note['data'], build: Build | undefined): boolean {
  const touched = (item['raised-where'] ?? []).every((word) => build && vehicleState(build.data, word) === 'yes');
  return touched && item['raised-by'].includes(kind.id as never) && (kind.raises?.(item.id, data as never) ?? true);
}

/** Kinds that reckon facts come before those that may read them, otherwise in the order of the notes. */
function reckoningFirst(notes: readonly Note[], kinds: ReadonlyMap<string, Kind>): { note: Note; kind: Kind }[] {
  const all = notes.map((note) => ({ note, kind: kinds.get(note.kind)! }));
  return [...all.filter(({ kind }) => kind.reckons), ...all.filter(({ kind }) => !kind.reckons)];
}

/** Facts that a note states: in fields, and in answers to items that ask for one. */
function factsOf(note: Note, kinds: Rules['kinds'], items: ReadonlyMap<string, CodeItem>, build: Build): Stated[] {
  const named = kinds.get(note.kind)?.facts?.(note.data as never) ?? {};
  const inFields = Object.entries(named).flatMap(([name, value]) =>
    value ? [{ name: name as FactName, value, note }] : [],
  );
  const inAnswers = Object.keys(note.data.answers ?? {}).flatMap((id) => {
    const item = items.get(id);
    if (item?.kind !== 'answer' || item.states === undefined || !(item.states in facts)) return [];
    const stated = statedInAnswer(item.states as FactName, id, note, build);
    return stated ? [stated] : [];
  });
  return [...inFields, ...inAnswers];
}

/** A note that renews a fact stands before `build.md`; otherwise the first statement. That they agree is checked apart. */
function latest(stated: readonly Stated[]): Map<FactName, Stated> {
  const found = new Map<FactName, Stated>();
  for (const s of stated) {
    const known = found.get(s.name);
    if (!known || (!known.note && s.note && !holdsThroughout(s.name))) found.set(s.name, s);
  }
  return found;
}

function worldOf(build: Build, note: Note, rules: Rules, value: World['value']): World {
  const { vehicle } = build.data;
  const own = rules.kinds.get(note.kind)?.states?.(note.data as never) ?? {};
  const others = build.notes.map((n) => rules.kinds.get(n.kind)?.states?.(n.data as never) ?? {});
  return {
    jurisdiction: vehicle.registration,
    category: vehicle.category,
    built: vehicle.built,
    state: (name) => own[name] ?? others.find((o) => o[name] !== undefined)?.[name] ?? vehicleState(build.data, name),
    value,
    ownFigures: rules.ownFigures,
  };
}

function inNoteOrder(findings: readonly Finding[], build: Build): Finding[] {
  const order = new Map(build.notes.map((n, i) => [n.name, i]));
  const at = (f: Finding) => order.get(f.note) ?? -1;
  return [...findings].sort((a, b) => at(a) - at(b));
}
