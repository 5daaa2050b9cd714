import type { Element, Root, RootContent } from 'hast';
import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { visible } from '../platform/visible.js';
import { pageDigits } from './page-digits.js';
import { documentId, isDraft, type Subject } from './subject.js';
import { templateText } from './texts.js';

/** The finished HTML: no script, nothing fetched. `fonts` is the style that declares them for this edition. */
export function htmlPage(main: Element, subject: Subject, fonts: string): string {
  const title = `${documentId(subject)}: ${subject.build.data.title}`;
  const style = [fonts, ...['document.css', 'narrow.css', 'print.css'].map(templateText), pageMargins(subject)].join(
    '\n',
  );
  return htmlOf([
    { type: 'doctype' } as never,
    h('html', { lang: 'en-AU', style: `--page-digits: ${pageDigits(main)}` }, [
      h('head', [
        h('meta', { charSet: 'utf-8' }),
        h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        h('meta', {
          httpEquiv: 'Content-Security-Policy',
          content: "default-src 'none'; img-src data: file:; style-src 'unsafe-inline'; font-src data: file:",
        }),
        h('title', title),
        h('style', style),
      ]),
      h('body', { className: isDraft(subject.identity) ? ['draft'] : [] }, [main]),
    ]),
  ]);
}

/** The same page for a browser that is only to print it: for a screen, too, it would lay out the whole of it. */
export const notForScreens = (html: string): string =>
  html.replace('</head>', '<style media="screen">body{display:none}</style></head>');

const stringifier = unified().use(rehypeStringify, { allowDangerousHtml: true, closeSelfClosing: false });

/** The tree as text. */
export function htmlOf(nodes: readonly RootContent[]): string {
  const root: Root = { type: 'root', children: [...nodes] };
  showUnseen(root);
  return stringifier.stringify(root);
}

/** What cannot be seen or turns the direction of writing is shown, wherever in the notes it came from. */
function showUnseen(page: Root): void {
  visit(page, (node) => {
    if (node.type === 'text') node.value = visible(node.value, '\n\t');
    if (node.type !== 'element') return;
    for (const [name, value] of Object.entries(node.properties))
      if (typeof value === 'string') node.properties[name] = visible(value);
  });
}

/** Margin boxes of the printed page: document, state, page n of N. */
function pageMargins(subject: Subject): string {
  const { identity, build } = subject;
  const text = (value: string) => `"${value.replace(/[^\p{L}\p{N} .,:;()/+–-]/gu, ' ').slice(0, 120)}"`;
  const state = isDraft(identity) ? 'DRAFT' : `issue ${identity.letter}`;
  const commit = identity.commit ? `commit ${identity.commit.slice(0, 8)}` : 'not in git';
  return `@page{@top-left{content:${text(documentId(subject))}}@top-right{content:${text(build.data.title)}}@bottom-left{content:${text(`${state}, ${commit}${build.data.invented ? ', invented example' : ''}`)}}@bottom-right{content:"page " counter(page) " of " counter(pages)}}`;
}
