import type { Element } from 'hast';
import { visitParents } from 'unist-util-visit-parents';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Loaded } from '../../src/app/load.js';
import { examine } from '../../src/checks/engine/examine.js';
import { anchor } from '../../src/render/anchors.js';
import { textOf } from '../../src/render/markdown.js';
import type { Subject } from '../../src/render/subject.js';
import { all, loaded, subjectOf, treeOf } from './document.js';

let build: Loaded;
beforeAll(async () => {
  build = await loaded();
});

const ids = (tree: Element) =>
  all(tree, (e) => e.properties['id'] !== undefined).map((e) => String(e.properties['id']));
const targets = (tree: Element) =>
  all(tree, (e) => e.tagName === 'a' && String(e.properties['href'] ?? '').startsWith('#')).map((e) =>
    String(e.properties['href']).slice(1),
  );
const classes = (e: Element) => (e.properties['className'] as string[] | undefined) ?? [];

describe.each(['submission', 'proposal'] as const)('the tree of a %s', (as) => {
  let subject: Subject;
  let tree: Element;
  beforeAll(async () => {
    subject = await subjectOf(build, as);
    tree = treeOf(subject);
  });

  it('counts every finding once in the summary', () => {
    const [summary] = all(tree, (e) => e.properties['id'] === anchor.table('summary'));
    const counted = all(summary!, (e) => e.tagName === 'td').flatMap((cell) =>
      [...textOf(cell).matchAll(/[✓✗●≈?○–]\u00a0(\d+)/g)].map((m) => Number(m[1])),
    );
    expect(counted.reduce((sum, n) => sum + n, 0)).toBe(subject.evaluation.findings.length);
  });

  it('has every id once', () => {
    const known = ids(tree);
    expect(known.filter((id, i) => known.indexOf(id) !== i)).toEqual([]);
    expect(known.filter((id) => /\s/.test(id))).toEqual([]);
  });

  it('lands every link into itself, and asks pages only of what is linked', () => {
    const known = new Set(ids(tree));
    const linked = new Set(targets(tree));
    const asked = all(tree, (e) => e.properties['dataTarget'] !== undefined).map((e) =>
      String(e.properties['dataTarget']),
    );
    expect(linked.size).toBeGreaterThan(150);
    expect([...linked].filter((t) => !known.has(t))).toEqual([]);
    expect(asked.filter((t) => !linked.has(t))).toEqual([]);
  });

  it('holds each finding, each sheet and each photo in one place', () => {
    const known = ids(tree);
    expect(build.evaluation.findings.filter((f) => !known.includes(anchor.finding(f.id))).map((f) => f.id)).toEqual([]);
    expect(build.evaluation.runs.filter((r) => !known.includes(anchor.sheet(r.id))).map((r) => r.id)).toEqual([]);
    const photos = build.build.notes.flatMap((n) =>
      (n.data.photos ?? []).map((p) => anchor.photo(`${n.name}/${p.file}`)),
    );
    expect(photos).toHaveLength(4);
    expect(photos.filter((p) => !known.includes(p))).toEqual([]);
  });

  it('leaves no level of headings out', () => {
    const levels = all(tree, (e) => /^h[1-6]$/.test(e.tagName)).map((e) => Number(e.tagName[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, i) => level > (levels[i - 1] ?? 0) + 1)).toEqual([]);
  });

  it('says in words what pictures, drawings and formulas show', () => {
    for (const img of all(tree, (e) => e.tagName === 'img')) expect(String(img.properties['alt'])).toMatch(/\p{L}{3}/u);
    for (const svg of all(tree, (e) => e.tagName === 'svg')) {
      const [title, desc] = svg.children as Element[];
      expect([title!.tagName, desc!.tagName]).toEqual(['title', 'desc']);
      expect(textOf(desc!).length).toBeGreaterThan(20);
    }
    const formulas = all(tree, (e) => classes(e).includes('math'));
    expect(formulas.length).toBeGreaterThan(100);
    for (const f of formulas) expect(String(f.properties['ariaLabel'])).toMatch(/^[^\\@{}]+$/);
  });

  it('shows the first page of each paper once, named as in the register, or tells why not', () => {
    const register = all(tree, (e) => e.properties['id'] === 'section-papers')[0]!;
    const figures = all(register, (e) => e.tagName === 'figure');
    expect(figures.map(textOf)).toEqual([
      'Paper receipt. receipt of the engine; receipt of the tube. First page of 3.',
      'No picture: the file is no whole PDF.Paper tube certificate. mill certificate of the tube. ',
    ]);
    expect(all(register, (e) => e.tagName === 'img').map((e) => e.properties['alt'])).toEqual([
      'First page of 3: receipt of the engine; receipt of the tube',
    ]);
  });

  it('gives each table a caption and each head cell a scope', () => {
    const ofWords = all(tree, (e) => classes(e).includes('words')).flatMap((e) =>
      all(e, (inner) => inner.tagName === 'table'),
    );
    expect(ofWords).toHaveLength(1);
    const bare = all(tree, (e) => e.tagName === 'table' && !all(e, (inner) => inner.tagName === 'caption').length);
    expect(bare).toEqual(ofWords);
    expect(all(tree, (e) => e.tagName === 'th' && e.properties['scope'] === undefined).map(textOf)).toEqual([]);
  });

  it('puts sign and word of an outcome together, and what weakens it beside them', () => {
    const marks = all(tree, (e) => classes(e).includes('outcome'));
    expect(marks.length).toBeGreaterThan(60);
    for (const mark of marks) expect(textOf(mark)).toMatch(/^[✓✗●≈?○–] \p{L}{2}/u);
    const weakened = build.evaluation.findings.filter(
      (f) => f.marks.includes('confirm against your copy') && f.form === 'limit' && f.measured,
    );
    expect(weakened.length).toBeGreaterThan(5);
    const rows = new Map<string, Element>();
    visitParents(tree, 'element', (e, parents) => {
      const row = parents.findLast((p) => (p as Element).tagName === 'tr');
      if (row && e.properties['id']) rows.set(String(e.properties['id']), row as Element);
    });
    for (const f of weakened) expect(textOf(rows.get(anchor.finding(f.id))!)).toContain('confirm');
  });
});

describe('names', () => {
  it('stay when a note before is taken away', async () => {
    const notes = build.build.notes.slice(1);
    const less = {
      ...build,
      build: { ...build.build, notes },
      evaluation: examine({ ...build.build, notes }, build.rules, build.takenAt),
    };
    const [before, after] = [ids(treeOf(await subjectOf(build))), ids(treeOf(await subjectOf(less)))];
    const of020 = (id: string) => /^(?:note|sheet|photo|figure|table|value)-020/.test(id);
    expect(after.filter(of020)).toEqual(before.filter(of020));
    expect(after.filter(of020).length).toBeGreaterThan(40);
  });

  it('never give two things one id', () => {
    const names = [
      'a_b.jpg',
      'a-b.jpg',
      'a b.jpg',
      'a%20b.jpg',
      'a~20b.jpg',
      'ä.jpg',
      'A-B.jpg',
      'a/b.jpg',
      'a%2Fb.jpg',
    ];
    expect(new Set(names.map(anchor.photo)).size).toBe(names.length);
    for (const id of names.map(anchor.photo)) expect(id).toMatch(/^[!-~]+$/);
  });
});
