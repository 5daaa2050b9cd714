import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { examine } from '../../src/checks/engine/examine.js';
import { anchor } from '../../src/render/anchors.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import { gusset } from '../commands/run.js';
import { buildFile, folderWith } from '../project/scratch.js';

const floor = `---
kind: body-structure
title: Floor let in
structure-cut: no
pieces:
  - { id: floor, role: bracket, joined-to: 1.20 mm, now: { section: FL 100x3, steel: S355, wall: 3.0 mm } }
---

Let in, as asked in [the query](../queries/01-thickness.md).
`;
const query = (lines: string, words = '') =>
  `---\nfrom: R. Ansell (invented)\ndate: 2026-03-02\nquestion: How thick is the floor?\n${lines}---\n\n${words}\n`;
const build = (queries: Record<string, string>, note = floor) =>
  folderWith({
    'build.md': buildFile,
    'notes/010-floor.md': note,
    ...Object.fromEntries(Object.entries(queries).map(([name, text]) => [`queries/${name}.md`, text])),
  });
const thickness = { '01-thickness': query('about: 010-floor\nstate: open\n') };

const asked = async (queries: Record<string, string>) => {
  const { out } = await gusset('check', build(queries, floor.replace(/, as asked.*\n/, '.\n')), '--format', 'json');
  return JSON.parse(out).findings.filter((f: { item: string }) => f.item === 'query');
};
const problems = async (queries: Record<string, string>) =>
  (await gusset('check', build({ ...thickness, ...queries }))).err;

describe('a query in `check`', () => {
  it('is open until answered, for the certifier until closed, and recorded once closed', async () => {
    const found = await asked({
      '01-a': query('about: 010-floor\nstate: open\n'),
      '02-b': query('about: 010\nanswer: 3 mm.\nanswered-by: JO\nanswered-on: 2026-03-04\nstate: answered\n'),
      '03-c': query(
        'about: body.thickness-ratio\nanswer: 3 mm.\nanswered-by: JO\nanswered-on: 2026-03-04\nstate: closed\n',
      ),
    });
    expect(found.map((f: { id: string; outcome: string; waits?: string }) => [f.id, f.outcome, f.waits])).toEqual([
      ['build/01-a/query', 'unanswered', undefined],
      ['build/02-b/query', 'answered', 'for the certifier'],
      ['build/03-c/query', 'answered', undefined],
    ]);
    expect(found[0]).toMatchObject({
      form: 'answer',
      note: 'build',
      todo: 'answer it in queries/01-a.md',
      says: 'asked on 2026-03-02: How thick is the floor?',
      location: { line: 6 },
    });
    expect(found[1].says).toContain('Answered on 2026-03-04: 3 mm.');
    expect(found[2].todo).toBeUndefined();
  });

  it('about a finding names it, and says so once that finding is gone', async () => {
    const found = await asked({
      '01-a': query(
        'about: [010-floor/floor/body.thickness-ratio, 010-floor/roof/body.thickness-ratio]\nstate: open\n',
      ),
    });
    expect(found[0].marks).toEqual(['no finding 010-floor/roof/body.thickness-ratio any more']);
  });
});

describe('a query that cannot be read', () => {
  it.each([
    [
      'about nothing there',
      'about: 010-flor\nstate: open\n',
      /02-b\.md:5:8: found `010-flor`.*\n[^]*did you mean `010-floor`/,
    ],
    [
      'about a finding of no note',
      'about: [010-floor, 090-roof/floor/body.thickness-ratio]\nstate: open\n',
      /02-b\.md:5:20: found `090-roof/,
    ],
    [
      'answered without an answer',
      'about: 010-floor\nstate: answered\n',
      /02-b\.md:6:8: found the state `answered` without an answer/,
    ],
    [
      'in a state there is not',
      'about: 010-floor\nstate: done\n',
      /02-b\.md:6:8: found `done`, expected one of `open`, `answered`, `closed`/,
    ],
    ['about nothing', 'state: open\n', /02-b\.md:.*found no `about`/],
    [
      'closed by nobody',
      'about: 010-floor\nstate: closed\nanswer: 3 mm.\n',
      /02-b\.md:6:8: found the state `closed` with an answer that does not say whose it is/,
    ],
    [
      'closed on no day',
      'about: 010-floor\nstate: closed\nanswer: 3 mm.\nanswered-by: JO\n',
      /02-b\.md:6:8: found the state `closed` with an answer that does not say of which day it is/,
    ],
    [
      'answered before it was asked',
      'about: 010-floor\nstate: closed\nanswer: 3 mm.\nanswered-by: JO\nanswered-on: 2026-03-01\n',
      /02-b\.md:6:8: found an answer of 2026-03-01 to a question of 2026-03-02/,
    ],
    ['asked on no day', 'about: 010-floor\nstate: open\nanswered-on: 2026-02-31\n', /02-b\.md:7:14/],
  ])('is told where it stands: %s', async (_, lines, told) => {
    expect(await problems({ '02-b': query(lines) })).toMatch(told);
  });

  it('and links of its words are followed like those of a note', async () => {
    expect(
      await problems({ '02-b': query('about: 010-floor\nstate: open\n', 'See [it](../notes/090-roof.md).') }),
    ).toMatch(/02-b\.md:9:5: found a link to `\.\.\/notes\/090-roof\.md`/);
  });
});

describe('the register of queries', () => {
  const page = async (queries: Record<string, string>) => {
    const loaded = await load(build(queries));
    if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
    const evaluation = examine(loaded.build, loaded.rules);
    const identity = { tool: 'test', date: '2026-03-05', dirty: [], inputs: '' };
    const subject = {
      build: loaded.build,
      rules: loaded.rules,
      evaluation,
      as: 'submission' as const,
      pictures: new Map(),
      paperPages: new Map(),
      identity,
    };
    return htmlPage(compose(subject, new Map()), subject, '');
  };

  it('links to note, item and finding, and the note links back', async () => {
    const html = await page({
      ...thickness,
      '02-more': query(
        'about: [body.thickness-ratio, 010-floor/floor/body.thickness-ratio]\nanswer: 3 mm & more.\nanswered-by: JO\nanswered-on: 2026-03-04\nstate: answered\n',
        'Seen in [the note](../notes/010-floor.md).',
      ),
    });
    const register = /<section id="section-queries">[^]*?id="section-sign-off"/.exec(html)?.[0] ?? '';
    for (const id of [
      anchor.note('010-floor'),
      anchor.item('body.thickness-ratio'),
      anchor.finding('010-floor/floor/body.thickness-ratio'),
    ]) {
      expect(register).toContain(`href="#${id}"`);
      expect(html).toContain(`id="${id}"`);
    }
    expect(register).toContain('3 mm &#x26; more.');
    const chapter = html.slice(html.indexOf(`id="${anchor.note('010-floor')}"`), html.indexOf('id="section-photos"'));
    expect(chapter.match(/(?<=href="#)query-[\w-]+/g)).toEqual(
      ['01-thickness', '01-thickness', '02-more'].map(anchor.query),
    );
  });

  it('holds every id that the open items point to', async () => {
    const html = await page(thickness);
    const targets = [...html.matchAll(/data-target="([^"]+)"/g)].map(([, id]) => id);
    expect(targets).toContain(anchor.finding('build/01-thickness/query'));
    expect(targets.filter((id) => !html.includes(`id="${id}"`))).toEqual([]);
  });
});
