import { originalFacts } from '../../project/facts.js';
import type { Build, Note } from '../../project/model.js';
import { vehicleState } from '../../project/vehicle.js';
import type { CodeItem } from '../codes/codes.js';
import { mayApply, type Resolved, resolve, type World } from '../codes/limits.js';
import type { OwnFigure } from '../codes/own-copy.js';
import { raises } from '../engine/examine.js';
import type { Kind } from '../engine/kind.js';
import { valueOf } from '../engine/values.js';

/** What the codes ask of a kind of note, before there is one: by what `build.md` says of the car. */
export interface Asked {
  item: CodeItem;
  /** Why it does not apply to this car. */
  leftOut?: string | undefined;
  /** The limit, as far as `build.md` decides it. */
  resolved?: Resolved | undefined;
}

/** A note of the build, or a kind that was only named. */
export interface Planned {
  kind: Kind;
  note?: Note | undefined;
  asked: Asked[];
}

/** Without a build every item stays in. `data` is that of a note, where there is one. */
export function askedOf(
  kind: Kind,
  items: Iterable<CodeItem>,
  build: Build | undefined,
  ownFigures: ReadonlyMap<string, OwnFigure> = new Map(),
  data: Partial<Note['data']> = {},
): Asked[] {
  const raised = [...items].filter((item) => raises(kind, item, data as Note['data'], build));
  if (!build) return raised.map((item) => ({ item }));
  const world = worldOf(build, ownFigures, kind.states?.(data as never) ?? {});
  return raised.map((item) => {
    const test = mayApply(item.applies, world);
    if ('holds' in test && !test.holds) return { item, leftOut: test.reason };
    if (item.kind !== 'limit' && item.kind !== 'test') return { item };
    const resolved = resolve(item, world);
    return resolved.is === 'not-applicable' ? { item, leftOut: resolved.reason } : { item, resolved };
  });
}

function worldOf(
  build: Build,
  ownFigures: ReadonlyMap<string, OwnFigure>,
  states: Readonly<Record<string, string | undefined>>,
): World {
  const { vehicle } = build.data;
  const facts = new Map<string, ReturnType<typeof valueOf>>(
    originalFacts(build).map((f) => [f.name, valueOf(f.value, build)]),
  );
  return {
    jurisdiction: vehicle.registration,
    category: vehicle.category,
    built: vehicle.built,
    state: (name) => states[name] ?? vehicleState(build.data, name),
    value: (name) => facts.get(name),
    ownFigures,
  };
}
