import type { Element } from 'hast';
import { h } from 'hastscript';
import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Plan, planOf } from '../../src/checks/plan/plan.js';
import { anchor } from '../../src/render/anchors.js';
import { textOf } from '../../src/render/markdown.js';
import { htmlPage } from '../../src/render/page.js';
import { planSections } from '../../src/render/sections/plan.js';
import type { Subject } from '../../src/render/subject.js';
import { all, loaded, subjectOf, treeOf } from './document.js';

let subject: Subject;
let plan: Plan;
let sections: Element[];
beforeAll(async () => {
  const build = await loaded();
  subject = await subjectOf(build, 'proposal');
  plan = planOf(build.build, build.rules, build.evaluation, ['mass', 'seating']);
  sections = planSections(plan, subject);
});

const ids = (tree: Element) =>
  all(tree, (e) => e.properties['id'] !== undefined).map((e) => String(e.properties['id']));
const within = (name: string) => sections.find((s) => s.properties['id'] === anchor.section(name))!;

it('stands in the proposal with ids of its own, whose pointers land in the document', () => {
  const tree = treeOf(subject);
  const own = sections.flatMap(ids);
  expect(ids(tree).length).toBe(new Set(ids(tree)).size);
  expect(ids(tree)).toEqual(expect.arrayContaining([anchor.section('plan'), anchor.section('measuring-card')]));
  const known = new Set([...own, ...ids(tree)]);
  const targets = sections
    .flatMap((s) => all(s, (e) => e.tagName === 'a'))
    .map((e) => String(e.properties['href']).slice(1));
  expect(targets.length).toBeGreaterThan(5);
  expect(targets.filter((t) => !known.has(t))).toEqual([]);
});

describe('the measuring card', () => {
  it('has three blanks for each reading that is not in the notes yet', () => {
    const rows = all(
      within('measuring-card'),
      (e) => e.tagName === 'tr' && all(e, (c) => c.tagName === 'td' && textOf(c) === '').length >= 5,
    );
    expect(rows).toHaveLength(plan.baseline.filter((b) => !b.written).length);
    expect(rows.length).toBeGreaterThan(10);
  });

  it('puts what is shown before welding ahead of what is shown before paint', () => {
    const text = textOf(within('measuring-card'));
    expect(text.indexOf('Before it is welded')).toBeGreaterThan(-1);
    expect(text.indexOf('Before it is welded')).toBeLessThan(text.indexOf('Before it is painted'));
    for (const point of plan.points) expect(text).toContain(point.shows);
  });
});

it('shows every limit with its basis, and every question with room for an answer', () => {
  const text = textOf(within('plan'));
  for (const limit of plan.limits) expect(text).toContain(limit.title);
  const rows = all(within('plan-questions'), (e) => e.tagName === 'tbody').flatMap((body) =>
    all(body, (e) => e.tagName === 'tr'),
  );
  expect(rows).toHaveLength(plan.questions.length);
  for (const row of rows) expect(textOf(row.children.at(-1) as Element)).toBe('');
});

it('is valid HTML', async () => {
  const page = htmlPage(h('main', [h('h1', 'Plan'), ...sections]), subject, '');
  const report = await new HtmlValidate({
    extends: ['html-validate:recommended'],
    // Whatever serialises a tree leaves these to taste; columns have their widths inline.
    rules: {
      'attribute-boolean-style': 'off',
      'attr-quotes': 'off',
      'no-trailing-whitespace': 'off',
      'void-style': 'off',
      'doctype-style': 'off',
      'long-title': 'off',
      'no-inline-style': 'off',
    },
  }).validateString(page);
  expect(
    report.results
      .flatMap((r) => r.messages)
      .filter((m) => m.severity > 1)
      .map((m) => `${m.ruleId}: ${m.message}`),
  ).toEqual([]);
});
