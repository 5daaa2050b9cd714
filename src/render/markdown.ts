import type { Root, Element, ElementContent } from 'hast';
import rehypeRaw from 'rehype-raw';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';

/** From a note's words to safe hast. What a link of the note points to is decided by `resolve`. */
export type ResolveLink = (url: string) => { id: string; label: string } | 'outside' | 'missing';

const schema: typeof defaultSchema = {
  ...defaultSchema,
  clobberPrefix: 'words-',
  tagNames: (defaultSchema.tagNames ?? []).filter((t) => !['picture', 'source', 'input', 'img'].includes(t)).concat('input'),
  attributes: { ...defaultSchema.attributes, '*': (defaultSchema.attributes?.['*'] ?? []).filter((a) => typeof a !== 'string' || !['style', 'id', 'name', 'className'].includes(a)) },
  strip: ['script', 'style', 'template'],
  protocols: { href: ['http', 'https', 'mailto'] },
};

const parser = unified().use(remarkParse).use(remarkGfm);
const toSafe = unified().use(remarkRehype, { allowDangerousHtml: true }).use(rehypeRaw).use(rehypeSanitize, schema);

export function parseMarkdown(text: string) {
  return parser.parse(text);
}

/** Headings of the note start below the chapter's own. Images become pointers to the photos that the note shows. */
export function renderMarkdown(text: string, resolve: ResolveLink, pointer: (id: string, label: string, text: string) => Element): ElementContent[] {
  const tree = parser.parse(text);
  visit(tree, 'image', (node, index, parent) => {
    if (!parent || index === undefined) return;
    parent.children[index] = { type: 'link', url: node.url, children: [{ type: 'text', value: node.alt || node.url }], position: node.position } as never;
  });
  const safe = toSafe.runSync(tree) as Root;
  visit(safe, 'element', (node, index, parent) => {
    const heading = /^h([1-6])$/.exec(node.tagName);
    if (heading) node.tagName = `h${Math.min(6, Number(heading[1]) + 2)}`;
    if (node.tagName !== 'a' || !parent || index === undefined) return;
    const url = typeof node.properties['href'] === 'string' ? node.properties['href'] : '';
    if (url.startsWith('#')) return;
    const target = resolve(url);
    if (target === 'outside') {
      node.properties['rel'] = ['noreferrer'];
      return;
    }
    if (target === 'missing') {
      parent.children[index] = { type: 'element', tagName: 'span', properties: {}, children: node.children };
      return;
    }
    parent.children[index] = pointer(target.id, target.label, textOf(node));
  });
  return safe.children as ElementContent[];
}

export function textOf(node: { children?: unknown[]; value?: string }): string {
  if (typeof node.value === 'string') return node.value;
  return (node.children ?? []).map((c) => textOf(c as never)).join('');
}
