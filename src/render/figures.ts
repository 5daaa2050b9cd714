import type { Element } from 'hast';
import { visit } from 'unist-util-visit';

/** Names every figure of a section after its caption: a figure without a name is announced, and tagged in print, as nothing. */
export function nameFigures(section: Element): Element {
  visit(section, 'element', (figure) => {
    const caption =
      figure.tagName === 'figure'
        ? figure.children.find((c) => c.type === 'element' && c.tagName === 'figcaption')
        : undefined;
    if (caption?.type !== 'element') return;
    const id = `${String(figure.properties['id'])}-caption`;
    caption.properties['id'] = id;
    figure.properties['ariaLabelledBy'] = [id];
  });
  return section;
}
