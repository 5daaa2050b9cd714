import { readFileSync } from 'node:fs';
import { h } from 'hastscript';
import { fontFaces } from '../platform/fonts.js';
import { packageFile } from '../platform/package-file.js';
import { htmlOf } from '../render/page.js';
import { templateText } from '../render/texts.js';
import type { Shown } from './preview.js';

const folder = packageFile('templates/view/');

/** The scripts of the preview itself; the document has none. */
export const scripts = new Set(['view.js', 'become.js']);
export const script = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
export const style = (): string =>
  [
    fontFaces('/fonts/'),
    ...['document.css', 'narrow.css', 'print.css'].map(templateText),
    readFileSync(new URL('view.css', folder), 'utf8'),
  ].join('\n');

/** The page that a browser loads first. Whatever comes later is told through `/events`. */
export function shell({ version, document }: Shown, build: string): string {
  const { title = build, draft = true, parts = [] } = document ?? {};
  return htmlOf([
    { type: 'doctype' } as never,
    h('html', { lang: 'en-AU', dataVersion: version }, [
      h('head', [
        h('meta', { charSet: 'utf-8' }),
        h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        h('title', title),
        h('link', { rel: 'stylesheet', href: '/view.css' }),
        h('script', { type: 'module', src: '/view.js' }),
      ]),
      h('body', { className: draft ? ['draft'] : [] }, [
        h(
          'main',
          parts.map((part) => ({ type: 'raw', value: part.html }) as never),
        ),
        h('aside', { id: 'view', ariaLabel: 'Preview' }, [
          h('section', { id: 'view-problems', role: 'alert', hidden: true }),
          h('p', { id: 'view-state', role: 'status' }, `Preview of ${build}. It follows the files as they are saved.`),
        ]),
      ]),
    ]),
  ]);
}
