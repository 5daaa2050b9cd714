import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { type MarkdownOptions, renderMarkdown, textOf } from '../../src/render/markdown.js';
import { all } from './document.js';

const options: MarkdownOptions = {
  resolve: (url) =>
    url.startsWith('http') ? 'outside' : url === 'there.md' ? { id: 'note-there', label: 'note 040' } : 'missing',
  pointer: (id, label, text) => h('a', { href: `#${id}` }, `${text} (${label})`),
  name: 'notes/010 a.md',
  under: 2,
};
const rendered = (text: string, more: Partial<MarkdownOptions> = {}) =>
  h('div', renderMarkdown(text, { ...options, ...more }) as Element[]);
const names = (tree: Element, tag: RegExp) => all(tree, (e) => tag.test(e.tagName)).map((e) => e.tagName);

describe('the words of a note', () => {
  it.each([
    ['# a\n## b\n### c', ['h3', 'h4', 'h5']],
    ['## a\n#### b\n## c', ['h3', 'h4', 'h3']],
    ['#### a\n# b\n## c', ['h3', 'h3', 'h4']],
    ['# a\n## b\n### c\n#### d\n##### e\n###### f', ['h3', 'h4', 'h5', 'h6', 'h6', 'h6']],
  ])('leave no level of headings out: %j', (text, wanted) => {
    expect(names(rendered(text), /^h\d$/)).toEqual(wanted);
  });

  it('keep footnotes, with ids of their own note and links that land', () => {
    const tree = rendered('Said[^1].\n\n[^1]: Why.');
    const ids = all(tree, (e) => e.properties['id'] !== undefined).map((e) => String(e.properties['id']));
    const links = all(tree, (e) => e.tagName === 'a').map((e) => String(e.properties['href']).slice(1));
    expect(links).toHaveLength(2);
    expect(links.filter((l) => !ids.includes(l))).toEqual([]);
    expect(ids.filter((id) => !id.startsWith('words-notes/010~20a.md/'))).toEqual([]);
    expect(textOf(tree)).toContain('Why.');
  });

  it('point to the note that a link names, keep outside links, and keep the text of what leads nowhere', () => {
    const tree = rendered('[here](there.md) [out](https://example.org) [lost](gone.md) [in](#nowhere)');
    expect(all(tree, (e) => e.tagName === 'a').map((e) => [e.properties['href'], textOf(e)])).toEqual([
      ['#note-there', 'here (note 040)'],
      ['https://example.org', 'out'],
    ]);
    expect(textOf(tree)).toContain('lost in');
  });

  it('cannot take an id of the document, nor run or style anything', () => {
    const tree = rendered(
      '<section id="section-cover" class="cover" style="position:fixed" onclick="x()">a</section><script>alert(1)</script><a href="javascript:x()">b</a>',
    );
    const html = JSON.stringify(tree satisfies Element | Root);
    expect(html).not.toMatch(/onclick|style|javascript|script|"cover"|"section-cover"/i);
    expect(textOf(tree)).toContain('a');
  });

  it('say whether a task was done, and name the columns of tables', () => {
    const tree = rendered('- [x] cut\n- [ ] painted\n\n| place | gap |\n| --- | ---: |\n| left | 0.4 mm |');
    expect(textOf(tree)).toMatch(/☑ done: cut[^]*☐ not done: painted/);
    expect(names(tree, /^input$/)).toEqual([]);
    expect(all(tree, (e) => e.tagName === 'th').map((e) => e.properties['scope'])).toEqual(['col', 'col']);
    expect(
      all(tree, (e) => e.tagName === 'td').map((e) => [
        e.properties['dataLabel'],
        e.properties['style'],
        e.properties['align'],
      ]),
    ).toEqual([
      ['place', undefined, undefined],
      ['gap', 'text-align:right', undefined],
    ]);
  });
});
