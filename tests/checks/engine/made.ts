import { z } from 'zod';
import { type Finding, findingClasses, outcomesByClass } from '../../../src/checks/engine/finding.js';
import { commonShape } from '../../../src/project/common.js';
import { readFrontmatter } from '../../../src/project/frontmatter.js';
import type { Build, Note } from '../../../src/project/model.js';

/** Notes, builds and findings that are made up, without a folder and without the kinds of note. */

const noteSchema = z.looseObject({ ...commonShape, kind: z.string().optional(), title: z.string().optional() });

function read(text: string, file: string) {
  const { value, problems } = readFrontmatter(`---\n${text}\n---\n`, file);
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

/** A note of which the frontmatter is given; the keys that all kinds have are read, all others stay as typed. */
export function noteOf(name: string, text = 'title: Tried', kind = 'mounts'): Note {
  const file = `notes/${name}.md`;
  const front = read(text, file);
  const data = noteSchema.parse(front.data) as unknown as Note['data'];
  return { name, path: file, file, kind, data, front, text };
}

/** A build of these notes; the frontmatter of `build.md` stays as typed. */
export function buildOf(notes: readonly Note[], text = 'title: A car'): Build {
  const front = read(text, 'build.md');
  return { name: 'made', file: 'build.md', text, data: front.data, front, notes } as unknown as Build;
}

export const certified = 'certifier: { name: R. Ansell }';

const classOf = (outcome: Finding['outcome']) =>
  findingClasses.find((of) => (Object.values(outcomesByClass[of]) as string[]).includes(outcome))!;

/** A finding with a stable id, in the first class that knows its outcome. */
export function findingOf(over: Partial<Finding> & Pick<Finding, 'outcome'>): Finding {
  const { note = '010-a', subject = '', item = 'some.item' } = over;
  return {
    id: [note, subject, item].filter(Boolean).join('/'),
    note,
    subject,
    item,
    title: `Title of ${item}`,
    of: classOf(over.outcome),
    form: 'limit',
    basis: 'own-copy',
    says: `says of ${item}`,
    marks: [],
    place: { file: `notes/${note}.md`, line: 1, column: 1, path: '' },
    ...over,
  };
}
