import { readFileSync } from 'node:fs';
import type { ElementContent } from 'hast';
import { packageFile } from '../platform/package-file.js';
import { renderMarkdown } from './markdown.js';

/** Fixed texts and the style sheet of the document, from `templates/document/`. */
const folder = packageFile('templates/document/');

export const templateText = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

export function fixedText(name: string): ElementContent[] {
  const pointer = () => {
    throw new Error('fixed texts have no links');
  };
  return renderMarkdown(templateText(name), { resolve: () => 'missing', pointer, name: 'fixed', under: 2 });
}
