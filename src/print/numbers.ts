import { MachineFailure } from '../platform/failure.js';
import { pagesOfDestinations } from './destinations.js';
import { fillNumbers } from './fill-numbers.js';
import { type OpenPage, writeNumbers, writeStandIns } from './page.js';
import { type PrintedPdf, readPrinted } from './printed-pdf.js';

type PageNumbers = ReadonlyMap<string, number>;

/** A PDF whose printed page numbers are true, after so many prints. */
export interface Numbered {
  printed: PrintedPdf;
  pageOf: Map<string, number>;
  passes: number;
}

const mostPrints = 4;

/**
 * Prints with stand-ins for the page numbers and writes the numbers over them. Where the browser set them in a way that does
 * not allow that, prints until every number is the one where its target came to stand. Throws MachineFailure for a target
 * that no link points to (the PDF has no place for it), and if the numbers still move after four prints.
 */
export async function printWithNumbers(open: OpenPage): Promise<Numbered> {
  const { asked } = open.content;
  const room = await writeStandIns(open.page);
  let { printed, pageOf } = await print(open);
  if (
    asked.length === 0 ||
    fillNumbers(
      printed.pdf,
      asked.map((id) => pageOf.get(id)!),
      room,
    )
  )
    return { printed, pageOf, passes: 1 };
  for (let prints = 2; prints <= mostPrints; prints += 1) {
    const numbers: PageNumbers = pageOf;
    await writeNumbers(open.page, numbers);
    ({ printed, pageOf } = await print(open));
    if (asked.every((id) => pageOf.get(id) === numbers.get(id))) return { printed, pageOf, passes: prints };
  }
  throw new MachineFailure({
    found: `page numbers still moved after ${mostPrints} prints`,
    expected: 'numbers that stay when they are filled in',
    todo: 'give the places of page numbers a fixed width in the style sheet',
  });
}

async function print(open: OpenPage): Promise<{ printed: PrintedPdf; pageOf: Map<string, number> }> {
  const printed = await readPrinted(await open.print());
  open.check();
  const pageOf = pagesOfDestinations(printed.pdf);
  refuseUnknown(open.content.asked, pageOf);
  return { printed, pageOf };
}

function refuseUnknown(asked: readonly string[], known: PageNumbers): void {
  const unknown = [...new Set(asked)].filter((id) => !known.has(id));
  if (unknown.length === 0) return;
  throw new MachineFailure({
    found: `no page number for ${unknown.slice(0, 5).join(', ')}${unknown.length > 5 ? ` and ${unknown.length - 5} more` : ''}`,
    expected: 'an element with that id that a link of the document points to',
    todo: 'link to it, or do not ask its page number',
  });
}
