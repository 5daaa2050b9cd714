import type { z } from 'zod';
import type { InputValues } from '../../calc/inputs.js';
import { type Run, run as workThrough } from '../../calc/run.js';
import { utilisation } from '../../calc/sections/utilisation.js';
import type { Inputs, Results, Sheet } from '../../calc/sheet.js';
import { withUsual } from '../../calc/usual.js';
import { spread, type Value } from '../../calc/value.js';
import { type FactName, factIn, facts } from '../../project/facts.js';
import type { Measured } from '../../project/fields.js';
import { metaAt, type NamedPath, placeOfField } from '../../project/find-field.js';
import { type Recall, textOf } from '../../project/memory.js';
import { type Build, type Note, placeIn } from '../../project/model.js';
import type { LoadCase } from '../../project/vehicle.js';
import { showQuantity } from '../../units/show.js';
import type { Item } from '../codes/item.js';
import type { Basis } from '../codes/limit.js';
import { lacksSide, type Resolved, resolveAcross, sidesOf, type World } from '../codes/limits.js';
import { type About, agreeIn, disagreement, type FactClaim } from './agreement.js';
import type { CompareOptions } from './compare-options.js';
import { type Finding, type FindingClass, outcomeOf, type Result, resultOf } from './finding.js';
import { leastFavourable, outcomeWith, placesMark } from './least-favourable.js';
import { isMissing, type Maybe, type Missing } from './maybe.js';
import { placeOfValue } from './place-of-value.js';
import { hangsOn } from './range.js';
import { settlers } from './settling.js';
import { lacks, type MaybeInputs } from './sheet-inputs.js';
import type { Told } from './told.js';
import { uncertaintyMarks } from './values.js';
import { decide, marksOf } from './verdict.js';
import {
  acrossSays,
  factName,
  factWhere,
  nextStep,
  notCounted,
  notMeasured,
  onlyIfSays,
  repeat,
  sentence,
} from './words.js';

export type { CompareOptions, Settled } from './compare-options.js';
export { isMissing, type Maybe, type Missing } from './maybe.js';

/** A sheet that was worked through, or what it lacks. */
interface Worked<R extends Results> {
  run?: Run;
  get: (result: keyof R & string) => Maybe;
}

/** What the evaluation of one note has at hand, and where it puts what it finds. */
export interface Work {
  build: Build;
  note: Note;
  /** A measured field as a value, or what is missing. */
  take: (measured: Measured | undefined, ...path: string[]) => Maybe;
  /** A fact that is stated once in the build, of the vehicle as modified or as received. */
  fact: (name: FactName, state?: 'as-received' | 'as-modified') => Maybe;
  /** A field that is no number and was not filled in. */
  lacks: (...path: string[]) => Missing;
  loadCase: (id: string | undefined) => LoadCase | undefined;
  /** Whether the build has a note of this kind. */
  hasNote: (kind: string) => boolean;
  sheet: <I extends Inputs, R extends Results>(
    sheet: Sheet<I, R>,
    subject: string,
    inputs: MaybeInputs<I>,
  ) => Worked<R>;
  /** Compares a number with the limit that the item sets for this vehicle. */
  compare: (item: string, subject: string, value: Maybe, options?: CompareOptions) => void;
  /** Gives a reckoned value a name: a fact for the whole build, or one for limits of this note, such as `critical_speed`. */
  publish: (name: string, value: Maybe) => void;
  /** Compares the demand of a load case with a capacity; without a load case the capacity is shown alone and is no pass. */
  demandAgainst: (item: string, subject: string, of: DemandOf) => void;
  /** Says outright what came of an item; for what is no comparison of a number with a limit. */
  state: (
    item: string,
    subject: string,
    result: Result,
    says: string,
    options?: Partial<Finding> & { path?: NamedPath },
  ) => void;
  /** Whether the builder answered what no fact decides. */
  isAnswered: (item: string) => boolean;
  /** How this note's own check came out, where it was made before. */
  cameOut: (item: string, subject: string) => Result | undefined;
  /** An answer that follows from facts, of whichever note: it goes before what is answered. */
  derive: (item: string, told: Omit<Told, 'item' | 'note' | 'place'> & { from: NamedPath | InBuild }) => void;
  /** Holds two values of one thing against each other: stated, or calculated from other fields. */
  agree: (subject: string, about: About, first: Maybe, second: Maybe) => void;
}

/** A field of `build.md`. */
interface InBuild {
  inBuild: NamedPath;
}

interface DemandOf {
  demand: Maybe | undefined;
  capacity: Maybe;
  loadCase: LoadCase | undefined;
  /** The name that the note gives for its load case. */
  named: string | undefined;
  /** The demand has the factor of the load case in it. */
  factored?: boolean;
  /** What must stand beside the outcome. */
  marks?: readonly string[];
}

export interface Ground {
  build: Build;
  items: ReadonlyMap<string, Item>;
  fact: (name: FactName) => Value | undefined;
  /** Facts that a sheet gives, because nobody states them outright. */
  reckoned: Map<string, Value>;
  valueOf: (measured: Measured) => Value;
  world: (note: Note) => World;
  hasNote: (kind: string) => boolean;
  recall: Recall;
}

export interface Done {
  findings: Finding[];
  runs: Run[];
  told: Told[];
  /** Facts that notes calculated. */
  claims: FactClaim[];
}

export const nothingDone = (): Done => ({ findings: [], runs: [], told: [], claims: [] });

/** The context for one note. Findings and runs are added to `done`. */
export function workOn(note: Note, kind: { id: string; shape: z.ZodRawShape }, ground: Ground, done: Done): Work {
  const { build } = ground;
  const published = new Map<string, Value>();
  const outer = ground.world(note);
  const world: World = { ...outer, value: (name) => published.get(name) ?? outer.value(name) };
  const item = (id: string): Item => {
    const found = ground.items.get(id);
    if (!found) throw new Error(`kind ${kind.id} names an item that no code has: ${id}`);
    return found;
  };
  const add = (
    id: string,
    subject: string,
    rest: Omit<Finding, 'id' | 'note' | 'subject' | 'item' | 'title' | 'form'>,
  ) =>
    done.findings.push({
      id: [note.name, subject, id].filter(Boolean).join('/'),
      note: note.name,
      subject,
      item: id,
      title: item(id).title,
      form: item(id).kind,
      ...rest,
    });
  const missing = (path: NamedPath): Missing => {
    const { says, how, unit, typical } = metaAt(kind.shape, path);
    const example = typical ?? (unit === undefined ? undefined : `… ${unit}`);
    return {
      missing: [
        {
          says: says ?? path.at(-1) ?? '',
          where: path.join('.'),
          how: how ?? (example && `write \`${path.at(-1)}: ${example}\``),
          path,
        },
      ],
    };
  };

  const work: Work = {
    build,
    note,
    take: (measured, ...path) => (measured ? ground.valueOf(measured) : missing(path)),
    lacks: (...path) => missing(path),
    fact: (asked, state = 'as-modified') => {
      const name = factIn(state, asked);
      return ground.fact(name) ?? { missing: [{ says: facts[name].says, where: facts[name].where, path: [] }] };
    },
    loadCase: (id) => build.data['load-cases']?.find((c) => c.id === id),
    hasNote: ground.hasNote,
    publish: (name, value) => {
      if (isMissing(value)) return;
      if (!(name in facts)) return void published.set(name, value);
      ground.reckoned.set(name, value);
      const place = placeOfValue(value, note, done.runs);
      done.claims.push({ name: name as FactName, value, note: note.name, place });
    },
    isAnswered: (id) => note.data.answers?.[id] !== undefined,
    cameOut: (id, subject) => {
      const found = done.findings.findLast((f) => f.note === note.name && f.item === id && f.subject === subject);
      return found && resultOf(found.outcome);
    },
    derive: (item, { from, ...told }) =>
      void done.told.push({
        item,
        note: note.name,
        place: 'inBuild' in from ? placeIn(build, from.inBuild) : placeOfField(note, from),
        ...told,
      }),
    agree: (subject, about, first, second) => {
      if (isMissing(first) || isMissing(second) || agreeIn(build, first, second, about.method?.expanded)) return;
      const claim = (value: Value) => ({ value, note: note.name, place: placeOfValue(value, note, done.runs) });
      done.findings.push(disagreement(subject, about, claim(first), claim(second)));
    },
    sheet: (sheet, subject, inputs) => {
      const id = [note.name, subject, sheet.id].filter(Boolean).join('/');
      const lacking = lacks(sheet.inputs, inputs);
      if (lacking.missing.length > 0 || lacking.reason) return { get: () => lacking };
      const plain = sheet as unknown as Sheet;
      const full = withUsual(plain, inputs as InputValues);
      const run = ground.recall(
        `sheet ${id}`,
        () => textOf(full),
        () => workThrough(id, plain, full),
      );
      done.runs.push(run);
      return { run, get: (result) => run.results?.[result] ?? { missing: [], reason: run.outOfRange, run: id } };
    },
    compare: (id, subject, value, options = {}) => {
      const { todo, marks: more = [], states = {} } = options;
      const found = item(id);
      if (found.kind !== 'limit' && found.kind !== 'test') throw new Error(`${id} is no limit`);
      const classOf = (basis: Basis): FindingClass =>
        options.element ? 'element' : basis === 'practice' ? 'practice' : 'requirement';
      const own = classOf(found.rests.basis);
      const rests = { of: own, basis: found.rests.basis, marks: [] as string[] };
      const mayHold: readonly Resolved[] =
        options.limit && !world.ownFigures.has(id)
          ? [{ is: 'limit', limit: options.limit }]
          : resolveAcross(found, { ...world, state: (name) => states[name] ?? world.state(name) });
      const resolved = mayHold[0]!;
      const place = placeOfValue(value, note, done.runs);
      if (resolved.is === 'not-applicable')
        return void add(id, subject, { ...rests, outcome: 'not-applicable', says: resolved.reason, place });
      if (isMissing(value)) {
        const { result, ...missed } = notMeasured(value);
        return void add(id, subject, { ...rests, outcome: outcomeOf(own, result), ...missed, place });
      }
      const run = value.origin.kind === 'sheet' ? value.origin.run : undefined;
      const showing = (one: Value) => showQuantity(one.si, options.limit?.unit ?? found.unit, spread(one));
      const shown = (value.places ?? [value]).map(showing).join(', ');
      if (resolved.is === 'unstated')
        return void add(id, subject, {
          ...rests,
          outcome: outcomeOf(own, 'missing'),
          measured: value,
          run,
          says: `measured ${shown}; which limit applies depends on ${resolved.names.map(factName).join(', ')}`,
          todo: `state ${resolved.names.map(factWhere).join(' and ')}`,
          place,
        });
      if (resolved.is === 'figure')
        return void add(id, subject, {
          ...rests,
          of: 'requirement',
          outcome: 'limit-not-confirmed',
          measured: value,
          run,
          says: `measured ${shown}; limit not confirmed${options.invalid?.length ? `, and ${notCounted(options.invalid)}` : ''}`,
          todo: `read in your copy: ${resolved.figure}; type it into limits.yaml with clause and edition (item ${id})`,
          place,
        });
      const limit = { ...resolved.limit, rule: resolved.limit.rule ?? found.rule };
      const governing = leastFavourable(value, limit);
      const decision = decide(governing, limit);
      const { margin } = decision;
      const hangs = options.range && hangsOn(decision, options.range, governing, limit);
      const compared = hangs === undefined ? decision.result : 'unclear';
      const across = mayHold.length > 1 && mayHold.some((other) => outcomeWith(other, value) !== decision.result);
      const invalid = options.invalid?.length ? options.invalid : undefined;
      const settled = across ? undefined : options.settle?.(limit, invalid ? 'unclear' : compared);
      const half = compared !== 'against' && lacksSide(limit, sidesOf(found, options.limit));
      const of = settled?.of ?? (half ? 'requirement' : classOf(limit.basis));
      const plain =
        half || (across && of === 'requirement')
          ? 'unconfirmed'
          : options.proposed && compared !== 'against'
            ? 'missing'
            : compared;
      const result = settled?.result ?? (invalid ? 'unclear' : plain);
      const instead = [
        ...(invalid ? [notCounted(invalid)] : []),
        ...(settled ? [settled.says] : []),
        ...(hangs === undefined ? [] : [hangs]),
        ...(half ? [`${limit.document} states no ${half} value, so that it does not limit it`] : []),
      ];
      const marks = [
        ...more,
        ...placesMark(value, limit.unit),
        ...marksOf(limit),
        ...(limit.recommended ? ['recommendation'] : []),
        ...uncertaintyMarks(governing, build),
      ];
      add(id, subject, {
        of,
        outcome: outcomeOf(of, result),
        ...(result === 'unclear'
          ? {
              onlyIf: onlyIfSays(limit, decision, instead),
              settledBy: settlers(governing, limit, { invalid, range: hangs && options.range?.by, test: settled?.by }),
            }
          : {}),
        measured: governing,
        limit,
        basis: limit.basis,
        margin: across ? undefined : margin,
        run,
        marks,
        says: across && !invalid ? acrossSays(shown, mayHold) : sentence(showing(governing), limit, decision, instead),
        todo:
          todo ??
          settled?.todo ??
          (half
            ? `find the ${half} value in ${limit.document} and state it too`
            : invalid
              ? repeat
              : hangs === undefined
                ? nextStep(result, limit, id)
                : options.range?.todo),
        place: placeOfValue(governing, note, done.runs),
      });
    },
    demandAgainst: (id, subject, { demand, capacity, loadCase, named, factored, marks = [] }) => {
      if (!loadCase || demand === undefined) {
        if (isMissing(capacity)) return work.compare(id, subject, capacity, { element: true });
        const shown = showQuantity(capacity.si, capacity.unit, spread(capacity));
        const why =
          named !== undefined && !loadCase ? `no load case \`${named}\` in build.md` : 'no load case is named';
        const run = capacity.origin.kind === 'sheet' ? capacity.origin.run : undefined;
        return work.state(id, subject, 'missing', `capacity only: ${shown}; ${why}`, {
          of: 'element',
          measured: capacity,
          run,
          marks: ['capacity only', ...marks],
          todo: 'agree a load case with the certifier, state it in build.md and name it with `load-case:`',
          path: subject ? [subject] : [],
        });
      }
      const factor = factored
        ? { factor: inTheDemand }
        : loadCase.factor
          ? { factor: ground.valueOf(loadCase.factor) }
          : {};
      const worked = work.sheet(utilisation, [subject, id.split('.').at(-1)].filter(Boolean).join('-'), {
        demand,
        capacity,
        ...factor,
      });
      const agreed = loadCase['agreed-with'] !== undefined && loadCase['agreed-on'] !== undefined;
      work.compare(id, subject, worked.get('utilisation'), {
        element: true,
        marks,
        ...(agreed
          ? {}
          : {
              proposed: true,
              marks: [...marks, 'proposed: load case not yet agreed with the certifier'],
              todo: 'have the load case agreed, and state in build.md with whom and when (`agreed-with:`, `agreed-on:`)',
            }),
      });
    },
    state: (id, subject, result, says, options = {}) => {
      const { path, ...rest } = options;
      const of = rest.of ?? (result === 'unconfirmed' ? 'requirement' : classOfItem(item(id)));
      if (result === 'met' && (of === 'requirement' || of === 'practice') && rest.measured === undefined)
        throw new Error(`${id} cannot be met without a value`);
      const waiting = of === 'answer' && result === 'unclear';
      add(id, subject, {
        of,
        outcome: outcomeOf(of, waiting ? 'met' : result),
        ...(waiting ? { waits: 'for the certifier' } : {}),
        basis: item(id).rests.basis,
        marks: marksOf({ basis: item(id).rests.basis, status: item(id).rests.status }),
        says,
        place: placeOfField(note, path ?? []),
        ...rest,
      });
    },
  };
  return work;
}

/** The factor of a demand that was reckoned with it. */
const inTheDemand: Value = {
  si: 1,
  unit: '1',
  parts: new Map(),
  assumed: new Set(),
  origin: { kind: 'given', text: 'already in the demand' },
};

/** What a finding on an item is about, where no number is compared. */
function classOfItem({ kind, rests }: Item): FindingClass {
  if (kind === 'answer') return 'answer';
  if (kind === 'evidence') return 'proof';
  return rests.basis === 'practice' ? 'practice' : 'requirement';
}
