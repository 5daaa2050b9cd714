import { stageNames } from '../../project/common.js';
import { fieldTree, type Leaf, leaves } from '../../project/field-tree.js';
import type { Build, Note } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import type { Limit } from '../codes/limit.js';
import type { Evaluation, Rules } from '../engine/examine.js';
import type { Finding } from '../engine/finding.js';
import type { HoldPoint, Kind } from '../engine/kind.js';
import { partsOf } from '../engine/proofs.js';
import { type Asked, askedOf, type Planned } from './asked.js';
import { type Question, questionsOf } from './plan-questions.js';
import { servesOf } from './serves.js';

/** What is to be known, measured, shown and asked before anything is cut. */
export interface Plan {
  kinds: { id: string; title: string; notes: string[] }[];
  sections: PlanSection[];
  limits: PlanLimit[];
  /** Figures that have to be read in the own copy. */
  figures: { item: string; title: string; figure: string; kinds: string[] }[];
  leftOut: { item: string; title: string; because: string }[];
  sheets: { id: string; title: string; purpose: string; kinds: string[] }[];
  baseline: Baseline[];
  /** What is to be shown, in the order in which it is covered. */
  points: PlanPoint[];
  tests: { item: string; title: string; asks: string; form: 'test' | 'report'; kinds: string[] }[];
  questions: Question[];
}

type PlanPoint = Omit<HoldPoint, 'parts' | 'serves'> & Owner & { parts: readonly string[] };

interface Owner {
  kind: string;
  /** Absent where the kind was only named. */
  note?: string | undefined;
}

interface PlanSection {
  code: string;
  section: string;
  title: string;
  edition?: string | undefined;
  /** Modification codes that its items belong to. */
  codes: string[];
  items: number;
  kinds: string[];
}

export interface PlanLimit {
  item: string;
  title: string;
  asks: string;
  unit: string;
  kinds: string[];
  /** Absent where it depends on something that is not stated yet. */
  limit?: Limit | undefined;
  depends: string[];
  /** How planned or measured values stand against it already. */
  findings: Finding[];
}

export interface Baseline extends Owner {
  path: string;
  says: string;
  unit?: string | undefined;
  how?: string | undefined;
  typical?: string | undefined;
  /** The note has it already. */
  written: boolean;
}

/**
 * Pure: the plan of a build from its notes and from kinds that were named beside them.
 *
 * @param named kinds of which there is no note yet
 */
export function planOf(build: Build, rules: Rules, evaluation: Evaluation, named: readonly string[] = []): Plan {
  const items = [...rules.codes.items.values(), ...rules.ownItems];
  const of = (kind: Kind, note?: Note): Planned => ({
    kind,
    note,
    asked: settled(askedOf(kind, items, build, rules.ownFigures, note?.data), evaluation),
  });
  const noted = build.notes.map((note) => of(rules.kinds.get(note.kind)!, note));
  const known = new Set(build.notes.map((n) => n.kind));
  const planned = [
    ...noted,
    ...[...new Set(named)].filter((id) => !known.has(id)).map((id) => of(rules.kinds.get(id)!)),
  ];
  const kinds = [...new Map(planned.map((p) => [p.kind.id, p.kind])).values()];
  const all = merged(planned);
  const stays = all.filter((a) => a.leftOut === undefined);
  return {
    kinds: kinds.map((k) => ({
      id: k.id,
      title: k.title,
      notes: build.notes.filter((n) => n.kind === k.id).map((n) => n.name),
    })),
    sections: sectionsOf(stays, rules),
    limits: stays.flatMap((a) => limitOf(a, evaluation)),
    figures: stays.flatMap(({ item, kinds: by, resolved }) =>
      resolved?.is === 'figure' ? [{ item: item.id, title: item.title, figure: resolved.figure, kinds: by }] : [],
    ),
    leftOut: all.flatMap(({ item, leftOut }) =>
      leftOut === undefined ? [] : [{ item: item.id, title: item.title, because: leftOut }],
    ),
    sheets: sheetsOf(kinds),
    baseline: planned.flatMap(baselineOf),
    points: planned
      .flatMap(({ kind, note }) =>
        kind.holdPoints.map(
          ({ serves: _, ...point }): PlanPoint => ({
            ...point,
            parts: note ? partsOf(point, note.data) : typeof point.parts === 'object' ? point.parts : [],
            kind: kind.id,
            note: note?.name,
          }),
        ),
      )
      .sort(asCovered),
    tests: stays.flatMap(testOf),
    questions: questionsOf(
      build,
      planned,
      stays.map((a) => a.item),
      evaluation,
    ),
  };
}

/** What the notes already say decides too: an item that applies to no subject of theirs is left out. */
function settled(asked: readonly Asked[], { findings }: Evaluation): Asked[] {
  return asked.map((a) => {
    const found = findings.filter((f) => f.item === a.item.id);
    return a.leftOut === undefined && found.length > 0 && found.every((f) => f.outcome === 'not-applicable')
      ? { ...a, leftOut: found[0]!.says }
      : a;
  });
}

type Merged = Asked & { kinds: string[] };

/** Each item once, with the kinds that raise it. */
function merged(planned: readonly Planned[]): Merged[] {
  const all = new Map<string, Merged>();
  for (const { kind, asked } of planned) {
    for (const a of asked) {
      const before = all.get(a.item.id);
      all.set(a.item.id, {
        ...a,
        leftOut: before && before.leftOut === undefined ? undefined : a.leftOut,
        kinds: [...new Set([...(before?.kinds ?? []), kind.id])],
      });
    }
  }
  return [...all.values()];
}

function sectionsOf(asked: readonly Merged[], rules: Rules): PlanSection[] {
  return rules.codes.codes.flatMap((code) =>
    Object.entries(code.sections).flatMap(([section, { title, edition }]): PlanSection[] => {
      const within = asked.filter(({ item }) => item.code === code.code && item.section === section);
      if (within.length === 0) return [];
      const codes = new Set(within.flatMap(({ item }) => item.codes ?? []));
      return [
        {
          code: code.title,
          section,
          title,
          edition,
          codes: [...codes].sort(),
          items: within.length,
          kinds: [...new Set(within.flatMap((a) => a.kinds))],
        },
      ];
    }),
  );
}

function limitOf({ item, kinds, resolved }: Merged, { findings }: Evaluation): PlanLimit[] {
  if (item.kind !== 'limit' && item.kind !== 'test') return [];
  const own = findings.filter((f) => f.item === item.id);
  const limit = own.find((f) => f.limit)?.limit ?? (resolved?.is === 'limit' ? resolved.limit : undefined);
  if (!limit && resolved?.is === 'figure') return [];
  return [
    {
      item: item.id,
      title: item.title,
      asks: item.asks,
      unit: item.unit,
      kinds,
      limit,
      depends: limit || resolved?.is !== 'unstated' ? [] : resolved.names,
      findings: own.filter((f) => f.measured),
    },
  ];
}

function sheetsOf(kinds: readonly Kind[]): Plan['sheets'] {
  const used = new Map<string, Plan['sheets'][number]>();
  for (const kind of kinds)
    for (const [id, { title, purpose }] of servesOf(kind).sheets)
      used.set(id, { id, title, purpose, kinds: [...(used.get(id)?.kinds ?? []), kind.id] });
  return [...used.values()];
}

/** Fields for the car as it came: nobody can measure them once it is taken apart. */
function baselineOf({ kind, note }: Planned): Baseline[] {
  return leaves(fieldTree(kind.shape))
    .filter(isBaseline)
    .map(({ path, field: { meta } }) => ({
      kind: kind.id,
      note: note?.name,
      path: path.join('.'),
      says: meta.says ?? path.join(' '),
      unit: meta.unit,
      how: meta.how,
      typical: meta.typical,
      written: holds(note?.data, path),
    }));
}

const asItCame = /\bas (?:received|it came|they came)\b|\bbefore (?:anything was taken apart|dismantling|the work)\b/;

function isBaseline({ path, field: { meta } }: Leaf): boolean {
  if (!['quantity', 'slope', 'designation'].includes(meta.form ?? '')) return false;
  return path.some((key) => key === 'was' || /^(?:original|was)-|-was$/.test(key)) || asItCame.test(meta.says ?? '');
}

/** Whether something stands at a path; of a list, in any of its items. */
function holds(value: unknown, [key, ...rest]: readonly string[]): boolean {
  if (key === undefined) return value !== undefined;
  if (key === '[]') return Array.isArray(value) && value.some((item) => holds(item, rest));
  return typeof value === 'object' && value !== null && holds((value as Record<string, unknown>)[key], rest);
}

const levels = ['hold', 'witness', 'record'];

function asCovered(a: PlanPoint, b: PlanPoint): number {
  const at = (p: PlanPoint) =>
    stageNames.indexOf(p.before) * 100 + stageNames.indexOf(p.during) * 5 + levels.indexOf(p.level);
  return at(a) - at(b);
}

function testOf({ item, kinds }: Merged): Plan['tests'] {
  const form = item.kind === 'test' ? 'test' : isReport(item) ? 'report' : undefined;
  return form ? [{ item: item.id, title: item.title, asks: item.asks, form, kinds }] : [];
}

/** Evidence that only somebody else's paper can give. */
const isReport = (item: CodeItem): boolean => item.kind === 'evidence' && item.evidence.every((e) => e === 'paper');
