import type { Element, RootContent } from 'hast';

/**
 * How many digits the number of the last page will have, for the room that a style sheet keeps for page numbers: known before
 * anything is laid out, so reckoned from what stands in the document, and rather a little too many pages than too few.
 */
export function pageDigits(main: Element): number {
  const held = { characters: 0, pictures: 0, chapters: 0 };
  const add = (node: RootContent): void => {
    if (node.type === 'text') held.characters += node.value.length;
    else if (node.type === 'raw') held.characters += node.value.replace(/<[^>]*>/g, '').length;
    else if (node.type === 'element') {
      if (node.tagName === 'img') held.pictures += 1;
      if (node.tagName === 'h2') held.chapters += 1;
      node.children.forEach(add);
    }
  };
  add(main);
  const pages = held.characters / 3000 + held.pictures / 4 + held.chapters / 2;
  return String(Math.ceil(1.1 * pages)).length;
}
