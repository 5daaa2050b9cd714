import { PDFArray, PDFDict, type PDFDocument, PDFName, type PDFPage, PDFRawStream } from '@cantoo/pdf-lib';
import { streamText } from '../../print/stream-text.js';
import { toUnicode } from '../../print/to-unicode.js';

/**
 * The text of each page, in the order in which it is drawn, for comparing what two prints say. Reads what a browser
 * prints: codes of two bytes with a map to Unicode (ISO 32000-1, 9.10). Text that is drawn as a picture is not seen.
 */
export function textOfPages(pdf: PDFDocument): string[] {
  const forms: Forms = new Map();
  return pdf.getPages().map((page) => textOf(page, forms));
}

/** Texts of forms: one that draws another twice, which draws another twice, and so on, is read through once. */
type Forms = Map<PDFRawStream, string>;
/** In characters: more does not fit on a page. */
const mostOnPage = 2 ** 22;

function textOf(page: PDFPage, forms: Forms): string {
  const contents = page.node.Contents();
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((ref) => page.doc.context.lookup(ref)) : [contents];
  const content = streams.map(streamText).join('\n');
  return drawn(content, page.node.Resources(), forms);
}

/** Literal strings, dictionaries, hexadecimal strings, arrays, names, and numbers or operators (ISO 32000-1, 7.8.2). */
const token = /%[^\r\n]*|\((?:\\[^]|[^\\()])*\)|<<|>>|<[0-9A-Fa-f\s]*>|[[\]]|\/[^\s()<>[\]{}/%]*|[^\s()<>[\]{}/%]+/g;

function drawn(content: string, resources: PDFDict | undefined, forms: Forms): string {
  const fonts = resources?.lookupMaybe(PDFName.of('Font'), PDFDict);
  let read = toUnicode(undefined);
  let text = '';
  let line = '';
  const operands: string[] = [];
  for (const [word] of content.matchAll(token)) {
    if (/^[A-Za-z'"*]+\d?\*?$/.test(word)) {
      if (word === 'Tf') read = toUnicode(fonts?.lookupMaybe(PDFName.of((operands.at(-2) ?? '').slice(1)), PDFDict));
      if (word === 'Tm') {
        const height = operands.at(-1) ?? '';
        if (height !== line && text !== '') text += ' ';
        line = height;
      }
      if (word === 'Tj' || word === 'TJ')
        for (const operand of operands) if (operand.startsWith('<') && operand !== '<<') text += read(operand);
      if (word === 'Do') text += drawnForm(operands.at(-1) ?? '', resources, forms);
      if (text.length > mostOnPage) throw new RangeError('it says more than fits on a page');
      operands.length = 0;
    } else operands.push(word);
  }
  return text;
}

/** A form is content with resources of its own, drawn where it is named; a picture has no text. */
function drawnForm(name: string, resources: PDFDict | undefined, forms: Forms): string {
  const form = resources?.lookupMaybe(PDFName.of('XObject'), PDFDict)?.lookup(PDFName.of(name.slice(1)));
  if (!(form instanceof PDFRawStream) || form.dict.get(PDFName.of('Subtype')) !== PDFName.of('Form')) return '';
  const known = forms.get(form);
  if (known !== undefined) return known;
  const text = drawn(streamText(form), form.dict.lookupMaybe(PDFName.of('Resources'), PDFDict), forms);
  forms.set(form, text);
  return text;
}
