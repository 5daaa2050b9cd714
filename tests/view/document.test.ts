import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { afresh, memory, type Recall } from '../../src/project/memory.js';
import type { Subject } from '../../src/render/subject.js';
import { documentOf } from '../../src/view/document.js';
import { type Shown, updateFrom } from '../../src/view/preview.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

function setUp() {
  const build = folderWith({
    ...workshop,
    'queries/01-wall.md':
      '---\nfrom: R. Ansell\ndate: 2026-03-01\nabout: 020\nquestion: Which wall?\nstate: open\n---\n',
  });
  const edit = (path: string, from: string, to: string) => {
    const before = readFileSync(join(build, path), 'utf8');
    expect(before, path).toContain(from);
    writeFileSync(join(build, path), before.replace(from, to));
  };
  const document = async (recall: Recall) => {
    const loaded = await load(build, build, recall);
    if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
    const subject: Subject = {
      ...loaded,
      as: 'submission',
      pictures: new Map(),
      paperPages: new Map(),
      identity: { tool: 'test', date: '2026-03-05', dirty: [], inputs: '' },
    };
    return documentOf(subject, new Map(), recall);
  };
  return { build, edit, document };
}

it('is after every edit what it is when it is made afresh', { timeout: 240_000 }, async () => {
  const { build, edit, document } = setUp();
  const recall = memory();
  const edits: [string, () => void][] = [
    ['nothing', () => {}],
    ['words', () => edit('notes/020-crossmember.md', 'did not fit', 'was too short')],
    ['a value', () => edit('notes/020-crossmember.md', '2.48 mm', '2.44 mm')],
    ['a title that others point to', () => edit('notes/030-driveline.md', 'title: Shaft', 'title: Tailshaft')],
    ['a fact that another note reads', () => edit('notes/010-engine.md', '6200 rpm', '7400 rpm')],
    ['a person', () => edit('build.md', 'J. Okoro', 'K. Okoro')],
    ['a load case', () => edit('build.md', 'force: 1.4 kN', 'force: 2.8 kN')],
    [
      'a query',
      () =>
        edit(
          'queries/01-wall.md',
          'state: open',
          'answer: The new one.\nanswered-by: JO\nanswered-on: 2026-12-01\nstate: answered',
        ),
    ],
    [
      'the own copy',
      () =>
        writeFileSync(
          join(build, 'limits.yaml'),
          'figures:\n  - { item: body.thickness-ratio, max: "3", edition: "3", clause: "2.1", read-by: JO, on: 2026-03-14 }\n',
        ),
    ],
    ['a note goes', () => renameSync(join(build, 'notes/025-gearbox.md'), join(build, 'notes/026-gearbox.md'))],
  ];
  for (const [what, change] of edits) {
    change();
    expect(await document(recall), what).toEqual(await document(afresh));
  }
});

it('tells a page only the parts that differ', { timeout: 120_000 }, async () => {
  const { edit, document } = setUp();
  const recall = memory();
  const shown = async (version: string): Promise<Shown> => ({
    version,
    document: await document(recall),
    problems: [],
    saved: [],
  });
  const before = await shown('1');
  edit('notes/020-crossmember.md', 'did not fit', 'was too short');
  const now = await shown('2');
  expect(Object.keys(updateFrom(before, now).parts)).toEqual(['note-020-crossmember']);
  expect(Object.keys(updateFrom(undefined, now).parts)).toEqual(now.document!.parts.map((p) => p.id));
});
