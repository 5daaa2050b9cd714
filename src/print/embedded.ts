import { PDFDict, type PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { MachineFailure } from '../platform/failure.js';
import { shippedFonts, unprintable } from '../platform/fonts.js';

/** The PostScript names, without the subset tag, of the fonts that the PDF carries. */
export function embeddedFonts(pdf: PDFDocument): string[] {
  const names = new Set<string>();
  for (const [, object] of pdf.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFDict) || object.get(PDFName.of('Type')) !== PDFName.of('Font')) continue;
    const name = object.lookupMaybe(PDFName.of('BaseFont'), PDFName);
    names.add(name ? name.decodeText().replace(/^[A-Z]{6}\+/, '') : 'a font without a name');
  }
  return [...names].sort();
}

/**
 * A browser prints a character that its fonts lack in some other font, as an empty box, or, with no font at all, not at all,
 * and says nothing. Throws MachineFailure in each of these cases.
 */
export function refuseForeignFonts(fonts: readonly string[], characters: string): void {
  const lacking = unprintable(characters);
  if (lacking.length > 0) {
    throw new MachineFailure({
      found: `no shipped font has ${lacking.slice(0, 8).map(named).join(', ')}${lacking.length > 8 ? ` and ${lacking.length - 8} more` : ''}`,
      expected: 'text in Latin, Greek or Cyrillic letters, with the usual signs',
      todo: 'write these characters in another way',
    });
  }
  const foreign = fonts.filter((font) => !shippedFonts.includes(font));
  if (foreign.length > 0) {
    throw new MachineFailure({
      found: `the printed page took ${foreign.join(', ')} for some of its text`,
      expected: 'only the shipped fonts, so that the page looks the same everywhere',
      todo: 'name the families of templates/fonts/fonts.css, and no others, in the style sheet',
    });
  }
  if (fonts.length === 0 && characters.trim() !== '') {
    throw new MachineFailure({
      found: 'the browser printed the page without its text',
      expected: 'text in the shipped fonts',
      todo: 'install any one font on this system (the browser draws no text where it finds none), and print again',
    });
  }
}

const named = (character: string): string =>
  `${character} (U+${(character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')})`;
