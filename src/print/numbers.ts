import { PDFDocument } from '@cantoo/pdf-lib';
import { pagesOfDestinations } from './destinations.js';
import { MachineFailure } from './failure.js';
import { fillNumbers, onlyLinks, type OpenPage } from './page.js';

type PageNumbers = ReadonlyMap<string, number>;

/** A PDF whose printed page numbers are true, after so many prints. */
export interface Numbered {
  pdf: PDFDocument;
  pageOf: Map<string, number>;
  passes: number;
}

const mostPrints = 3;

/**
 * Prints until every page number that the page tells is the one where its target came to stand. Without numbers to begin
 * with, a print of the links alone finds them. Throws MachineFailure for a target that no link points to (the PDF has
 * no place for it), and if the numbers still move after three prints.
 */
export async function printWithNumbers(open: OpenPage, remembered?: PageNumbers): Promise<Numbered> {
  const { asked } = open.content;
  const drafted = remembered === undefined && asked.length > 0;
  let numbers = drafted ? await draftNumbers(open) : (remembered ?? new Map<string, number>());
  for (let prints = 1; prints <= mostPrints; prints += 1) {
    await fillNumbers(open.page, numbers);
    const pdf = await load(await open.print({ tagged: true }));
    open.check();
    const pageOf = pagesOfDestinations(pdf);
    refuseUnknown(asked, pageOf);
    if (asked.every((id) => pageOf.get(id) === numbers.get(id))) return { pdf, pageOf, passes: prints + (drafted ? 1 : 0) };
    numbers = pageOf;
  }
  throw new MachineFailure({
    found: `page numbers still moved after ${mostPrints} prints`,
    expected: 'numbers that stay when they are filled in',
    todo: 'give the places of page numbers a fixed width in the style sheet',
  });
}

/** Numbers from a print of nothing but the links, which costs little. */
async function draftNumbers(open: OpenPage): Promise<PageNumbers> {
  await fillNumbers(open.page, new Map());
  await onlyLinks(open.page, true);
  const numbers = pagesOfDestinations(await load(await open.print({ tagged: false })));
  await onlyLinks(open.page, false);
  refuseUnknown(open.content.asked, numbers);
  return numbers;
}

const load = (bytes: Uint8Array): Promise<PDFDocument> => PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity });

function refuseUnknown(asked: readonly string[], known: PageNumbers): void {
  const unknown = asked.filter((id) => !known.has(id));
  if (unknown.length === 0) return;
  throw new MachineFailure({
    found: `no page number for ${unknown.slice(0, 5).join(', ')}${unknown.length > 5 ? ` and ${unknown.length - 5} more` : ''}`,
    expected: 'an element with that id that a link of the document points to',
    todo: 'link to it, or do not ask its page number',
  });
}
