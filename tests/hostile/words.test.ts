import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '../../src/render/markdown.js';

const html = (text: string) =>
  unified()
    .use(rehypeStringify)
    .stringify({
      type: 'root',
      children: renderMarkdown(text, {
        resolve: (url) => (/^https?:|^mailto:/.test(url) ? 'outside' : 'missing'),
        pointer: (id, label, words) => h('a', { href: `#${id}` }, `${words} ${label}`),
        name: 'x',
        under: 2,
      }),
    });

describe('words of a note that mean harm', () => {
  it.each([
    ['a script', '<script>alert(1)</script>', /<script|alert/],
    ['a script in pieces', '<scr<script>ipt>alert(1)</scr</script>ipt>', /<script/],
    ['a handler', '<p onclick="alert(1)">x</p>', /onclick/i],
    ['a picture with a handler', '<img src=x onerror=alert(1)>', /<img|onerror/],
    ['a frame', '<iframe src="https://example.org"></iframe>', /<iframe/],
    ['an object', '<object data="x.svg"></object><embed src=x>', /<object|<embed/],
    ['a drawing with a script', '<svg><script>alert(1)</script></svg>', /<svg|<script/],
    ['mathematics with a link', '<math><mtext href="javascript:alert(1)">x</mtext></math>', /javascript:/],
    ['a style', '<style>body{background:url(https://example.org/x)}</style>', /<style|url\(/],
    ['a style attribute', '<p style="background:url(https://example.org/x)">x</p>', /style=|url\(/],
    ['a form', '<form action="https://example.org"><input name=q><button>go</button></form>', /<form|<button|action=/],
    ['a base', '<base href="https://example.org/">', /<base/],
    ['a refresh', '<meta http-equiv="refresh" content="0;url=https://example.org">', /<meta/],
    ['a script link', '[x](javascript:alert(1))', /javascript:/],
    [
      'a script link in disguise',
      '[x](JaVa\tScript:alert(1)) <a href="&#106;avascript:alert(1)">y</a>',
      /href="[^"]*script:/i,
    ],
    ['a data link', '[x](data:text/html,<script>alert(1)</script>)', /href="data:/],
    ['a file link', '[x](file:///etc/passwd)', /href="file:/],
    ['a picture from elsewhere', '![x](https://example.org/x.png)', /<img/],
    [
      'an id that stands for another',
      '<p id="section-cover" name="x" class="draft">x</p>',
      /id="section-cover"|class="draft"|name=/,
    ],
    ['a template', '<template><img src=x onerror=alert(1)></template>', /onerror/],
    ['comments', '<!-- --><script>1</script> --> <![CDATA[<script>1</script>]]>', /<script/],
  ])('%s', (_, text, never) => {
    expect(html(text)).not.toMatch(never);
  });

  it('keeps what a builder writes: text, tables, lists, code, quotes, links', () => {
    const kept = html(
      '# Head\n\nText with **weight** and `code`.\n\n| a | b |\n| - | - |\n| 1 | 2 |\n\n1. one\n\n> quoted\n\n[out](https://example.org/)',
    );
    for (const piece of [
      '<h3>Head</h3>',
      '<strong>weight</strong>',
      '<code>code</code>',
      '>2</td>',
      '<ol>',
      '<blockquote>',
      'href="https://example.org/"',
    ])
      expect(kept).toContain(piece);
  });
});
