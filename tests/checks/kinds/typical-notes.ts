import { z } from 'zod';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { type Evaluation, examine, type Rules } from '../../../src/checks/engine/examine.js';
import type { Kind } from '../../../src/checks/engine/kind.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { commonShape } from '../../../src/project/common.js';
import { fieldTree } from '../../../src/project/field-tree.js';
import type { Frontmatter, Plain } from '../../../src/project/frontmatter.js';
import { memory } from '../../../src/project/memory.js';
import type { Build, Note } from '../../../src/project/model.js';
import { readBuild } from '../../../src/project/read.js';
import { typicalData } from '../../../src/project/typical.js';
import { validate } from '../../../src/project/validate.js';

/** Notes to try changes on, read without files: those of the demo within the demo, and a typical one of each kind beside it. */

export type Raw = { [key: string]: Plain };

const codes = await loadCodes('AU');
export const demo = (() => {
  const { build, problems } = readBuild('builds/sedge', new Map([...kinds].map(([id, k]) => [id, k.shape])));
  if (!build) throw new Error(JSON.stringify(problems));
  return build;
})();

const frontOf = (data: Raw): Frontmatter => ({
  data,
  body: '',
  bodyLine: 1,
  locate: () => ({ line: 1, column: 1, endColumn: 1 }),
  sourceLine: () => '',
});

function noteOf(kind: Kind, raw: Raw, name = 'tried'): Note {
  const front = frontOf({ kind: kind.id, title: kind.title, ...raw });
  const file = `notes/${name}.md`;
  const schema = z.strictObject({ ...commonShape, ...kind.shape });
  const { value, problems } = validate(schema, front, file);
  if (!value) throw new Error(JSON.stringify(problems));
  return { name, path: file, file, kind: kind.id, data: value as Note['data'], front, text: '' };
}

/** A whole typical note of a kind. */
export const typicalNote = (kind: Kind): Note =>
  noteOf(kind, typicalData(fieldTree(kind.shape)) as Raw, `typical-${kind.id}`);

/** States for a note alone what the rest of the demo states. */
const stated = examine(demo, { codes, kinds, ownFigures: new Map(), ownItems: [] }).facts;
const restOf = (note: Note): Kind => {
  const own = kinds.get(note.kind)!.facts?.(note.data as never) ?? {};
  const facts = [...stated].filter(([name]) => own[name] === undefined).map(([name, { value }]) => [name, value]);
  return {
    id: 'rest',
    title: '',
    covers: '',
    shape: {},
    holdPoints: [],
    cautions: [],
    facts: () => Object.fromEntries(facts),
    evaluate: () => {},
  };
};
const restNote: Note = {
  name: 'rest',
  path: 'notes/rest.md',
  file: 'notes/rest.md',
  kind: 'rest',
  data: { kind: 'rest', title: 'The rest' } as never,
  front: frontOf({}),
  text: '',
};

/** A note of the demo's car alone, with the facts that its other notes state. */
export function examineAlone(note: Note, ownFigures: Rules['ownFigures'] = new Map(), recall = memory()): Evaluation {
  const build: Build = { ...demo, notes: [note, restNote] };
  return examine(
    build,
    { codes, kinds: new Map([...kinds, ['rest', restOf(note)]]), ownFigures, ownItems: [] },
    undefined,
    recall,
  );
}
