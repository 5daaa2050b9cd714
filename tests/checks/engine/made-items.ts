import type { CodeItem } from '../../../src/checks/codes/codes.js';
import type { World } from '../../../src/checks/codes/limits.js';
import { type Answers, answerItem } from '../../../src/checks/engine/answers.js';
import { isOpen } from '../../../src/checks/engine/finding.js';
import type { Derived, Told } from '../../../src/checks/engine/told.js';
import type { Note } from '../../../src/project/model.js';
import { noteOf } from './made.js';

const world = (over: Partial<World> = {}): World => ({
  jurisdiction: 'VIC',
  category: 'MA',
  built: '1990-06',
  state: () => undefined,
  value: () => undefined,
  ownFigures: new Map(),
  ...over,
});
export const asks = (over: object = {}) =>
  ({
    id: 'some.item',
    kind: 'answer',
    wants: 'yes',
    title: 'Some item',
    rests: { document: 'a text', basis: 'published', status: 'in-force' },
    ...over,
  }) as unknown as CodeItem & { kind: 'answer' | 'evidence' };
export const proof = (over: object = {}) => asks({ kind: 'evidence', evidence: ['photo'], ...over });

interface Case {
  item?: object;
  notes?: readonly Note[];
  others?: readonly Note[];
  told?: readonly Partial<Told>[];
  /** What follows from the fields of each note. */
  derived?: Readonly<Record<string, Derived>>;
  worlds?: Readonly<Record<string, Partial<World>>>;
  parts?: readonly string[];
}
export function found({
  item,
  notes = [noteOf('010-a')],
  others = [],
  told = [],
  derived = {},
  worlds = {},
  parts,
}: Case) {
  const of = (item ?? asks()) as CodeItem & { kind: 'answer' | 'evidence' };
  const answers = (note: Note): Answers => ({
    given: note.data.answers ?? {},
    derived: derived[note.name] ? { 'some.item': derived[note.name] } : {},
  });
  const facts = told.map((t) => ({
    item: 'some.item',
    because: 'measured',
    place: { file: 'build.md', line: 9, column: 1, path: 'fact' },
    ...t,
  }));
  const finding = answerItem(
    of,
    { notes, others, answers, told: facts },
    { world: (n) => world(worlds[n.name]) },
    parts,
  );
  return { ...finding, open: isOpen(finding) };
}
export const answering = (answer: string, name = '010-a') => noteOf(name, `answers: { some.item: ${answer} }`);
export const answered = (answer: string, item: object = {}) => found({ item: asks(item), notes: [answering(answer)] });
