import type { Value } from '../../calc/value.js';
import { numberOf, textOf } from '../../project/memory.js';
import type { Build, Note } from '../../project/model.js';
import type { Kind } from './kind.js';
import { type Done, type Ground, nothingDone, workOn } from './work.js';

/** What the evaluation of a note found, and every question it asked of the rest of the build, with the answer it got. */
interface Evaluated extends Done {
  reckoned: readonly (readonly [string, Value])[];
  asked: ReadonlyMap<string, { ask: (ground: Ground) => unknown; told: string }>;
}

/**
 * Evaluates one note, or takes what was found the last time: when its own text, build.md and the limits are the same, and
 * the rest of the build answers everything that was asked then as it did.
 */
export function evaluateNote(note: Note, kind: Kind, ground: Ground, done: Done): void {
  const { build } = ground;
  const named = [...(note.data.photos ?? []), ...(note.data.papers ?? [])].map((entry) => entry.file);
  const from = textOf([kind.id, [note.front, build.front, ...build.limits.map((l) => l.front)].map(numberOf), named]);
  const kept = ground.recall<{ last?: Evaluated }>(`evaluation of ${note.file}`, from, () => ({}));
  if (!kept.last || [...kept.last.asked.values()].some(({ ask, told }) => textOf(ask(ground)) !== told))
    kept.last = evaluateAnew(note, kind, ground, done);
  done.findings.push(...kept.last.findings);
  done.runs.push(...kept.last.runs);
  done.told.push(...kept.last.told);
  done.claims.push(...kept.last.claims);
  for (const [name, value] of kept.last.reckoned) ground.reckoned.set(name, value);
}

function evaluateAnew(note: Note, kind: Kind, ground: Ground, done: Done): Evaluated {
  const asked: Evaluated['asked'] & Map<string, unknown> = new Map();
  const before = new Map(ground.reckoned);
  const isOwn = (name: string) => ground.reckoned.get(name) !== before.get(name);
  const ask = <T>(what: string, question: (of: Ground) => T): T => {
    const answer = question(ground);
    if (!asked.has(what)) asked.set(what, { ask: question, told: textOf(answer) });
    return answer;
  };
  const value = (name: string, question: (of: Ground) => Value | undefined) =>
    isOwn(name) ? question(ground) : ask(`value ${name}`, question);
  const outer = ground.world(note);
  const listening: Ground = {
    ...ground,
    build: listeningTo(ground.build, ask),
    fact: (name) => value(name, (of) => of.fact(name)),
    hasNote: (kind) => ask(`note of kind ${kind}`, (of) => of.hasNote(kind)),
    world: () => ({
      ...outer,
      value: (name) => value(name, (of) => of.world(note).value(name)),
      state: (name) => ask(`state ${name}`, (of) => of.world(note).state(name)),
    }),
  };
  const own: Done = { ...nothingDone(), runs: [...done.runs] };
  kind.evaluate(note as never, workOn(note, kind, listening, own));
  return {
    ...own,
    runs: own.runs.slice(done.runs.length),
    reckoned: [...ground.reckoned].filter(([name]) => isOwn(name)),
    asked,
  };
}

/** Whoever looks at other notes and files rests on all of them. */
function listeningTo(build: Build, ask: <T>(what: string, question: (of: Ground) => T) => T): Build {
  const all = (of: Ground) => [
    of.build.notes.map((n) => [n.name, numberOf(n.front)]),
    of.build.queries.map((q) => [q.name, numberOf(q.front)]),
    [...of.build.files.keys()],
  ];
  const listening = { ...build };
  for (const part of ['notes', 'queries', 'files', 'inputs'] as const) {
    Object.defineProperty(listening, part, {
      get: () => {
        ask('everything', all);
        return build[part];
      },
    });
  }
  return listening;
}
