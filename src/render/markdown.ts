import type { Element, ElementContent, Root } from 'hast';
import rehypeRaw from 'rehype-raw';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { anchor } from './anchors.js';

/** From a note's words to safe hast. What a link of the note points to is decided by `resolve`. */
export type ResolveLink = (url: string) => { id: string; label: string } | 'outside' | 'missing';

export interface MarkdownOptions {
  resolve: ResolveLink;
  /** What stands in place of a link into the document. */
  pointer: (id: string, label: string, text: string) => Element;
  /** Of the text; stands before each of its ids, such as those of footnotes: ids are unique in the whole document. */
  name: string;
  /** Level of the heading that the words stand under. */
  under: 2 | 3;
}

const kept = [
  'abbr',
  'align',
  'ariaDescribedBy',
  'colSpan',
  'dateTime',
  'dir',
  'id',
  'lang',
  'rowSpan',
  'scope',
  'start',
  'title',
];
const schemaFor = (prefix: string): typeof defaultSchema => ({
  ...defaultSchema,
  clobberPrefix: prefix,
  tagNames: (defaultSchema.tagNames ?? []).filter(
    (t) => !['picture', 'source', 'img', 'tt', 'strike', 'details', 'summary'].includes(t),
  ),
  attributes: {
    ...defaultSchema.attributes,
    input: [...(defaultSchema.attributes?.['input'] ?? []), 'checked'],
    '*': kept,
  },
  strip: ['script', 'style', 'template'],
  protocols: { href: ['http', 'https', 'mailto'] },
});

const parser = unified().use(remarkParse).use(remarkGfm);

/** Headings of the words stand below that of the chapter. Images become pointers to the photos that they show. */
export function renderMarkdown(text: string, { resolve, pointer, name, under }: MarkdownOptions): ElementContent[] {
  const tree = parser.parse(text);
  visit(tree, ['image', 'imageReference'], (node, index, parent) => {
    if (!parent || index === undefined) return;
    if (node.type === 'imageReference')
      parent.children[index] = {
        ...node,
        type: 'linkReference',
        children: [{ type: 'text', value: node.alt ?? '' }],
      } as never;
    if (node.type !== 'image') return;
    parent.children[index] = {
      type: 'link',
      url: node.url,
      children: [{ type: 'text', value: node.alt || node.url }],
      position: node.position,
    } as never;
  });
  const prefix = anchor.words(name);
  const toSafe = unified()
    .use(remarkRehype, { allowDangerousHtml: true, clobberPrefix: '' })
    .use(rehypeRaw)
    .use(rehypeSanitize, schemaFor(prefix));
  const safe = toSafe.runSync(tree) as Root;
  levelHeadings(safe, under);
  completeTables(safe);
  spellCheckboxes(safe);
  pointLinks(safe, prefix, resolve, pointer);
  return safe.children as ElementContent[];
}

/** No level is left out, whichever the writer began with. */
function levelHeadings(tree: Root, under: number): void {
  const open: number[] = [];
  visit(tree, 'element', (node) => {
    const written = Number(/^h([1-6])$/.exec(node.tagName)?.[1]);
    if (!written) return;
    while (open.length > 0 && open.at(-1)! >= written) open.pop();
    open.push(written);
    node.tagName = `h${Math.min(6, under + open.length)}`;
  });
}

/** Heads with their scope, cells with the head of their column for narrow screens, alignment as a style. */
function completeTables(tree: Root): void {
  visit(tree, 'element', (node) => {
    if (node.tagName !== 'table') return;
    const heads: string[] = [];
    visit(node, 'element', (cell, _index, row) => {
      if (cell.tagName === 'th') {
        cell.properties['scope'] ??= 'col';
        heads.push(textOf(cell));
      }
      const at = cell.tagName === 'td' ? (row?.children ?? []).filter((c) => c.type === 'element').indexOf(cell) : -1;
      if (heads[at]) cell.properties['dataLabel'] = heads[at];
      const { align, ...rest } = cell.properties;
      if (align) cell.properties = { ...rest, style: `text-align:${String(align).replace(/[^a-z]/g, '')}` };
    });
  });
}

/** A box that can be ticked has no place in a document: it is told whether it was. */
function spellCheckboxes(tree: Root): void {
  visit(tree, 'element', (node, index, parent) => {
    if (node.tagName !== 'input' || !parent || index === undefined) return;
    parent.children[index] = { type: 'text', value: node.properties['checked'] ? '☑ done:' : '☐ not done:' };
  });
}

function pointLinks(tree: Root, prefix: string, resolve: ResolveLink, pointer: MarkdownOptions['pointer']): void {
  const ids = new Set<string>();
  visit(tree, 'element', (node) => void ids.add(String(node.properties['id'] ?? '')));
  visit(tree, 'element', (node, index, parent) => {
    if (node.tagName !== 'a' || !parent || index === undefined) return;
    const url = typeof node.properties['href'] === 'string' ? node.properties['href'] : '';
    const within = url.startsWith('#') && ids.has(prefix + url.slice(1)) ? `#${prefix}${url.slice(1)}` : undefined;
    if (within) return void (node.properties['href'] = within);
    const target = url.startsWith('#') ? 'missing' : resolve(url);
    if (target === 'outside') node.properties['rel'] = ['noreferrer'];
    else if (target === 'missing')
      parent.children[index] = { type: 'element', tagName: 'span', properties: {}, children: node.children };
    else parent.children[index] = pointer(target.id, target.label, textOf(node));
  });
}

export function textOf(node: { children?: unknown[]; value?: string }): string {
  if (typeof node.value === 'string') return node.value;
  return (node.children ?? []).map((c) => textOf(c as never)).join('');
}
