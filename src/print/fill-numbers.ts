import { deflateSync } from 'node:zlib';
import { PDFDict, type PDFDocument, PDFName, type PDFPage, PDFRawStream } from '@cantoo/pdf-lib';
import { streamText } from './stream-text.js';
import { unicodeOf } from './to-unicode.js';

/**
 * Writes page numbers over their stand-ins in a printed document. The stand-in of `wanted[n]` is the number n with leading
 * zeros, in a font that draws nothing else, in a place with room for so many digits: a number stands at its right end, and
 * nothing else moves. Returns false, with the document as it was, if not every stand-in is found and can be written over.
 */
export function fillNumbers(pdf: PDFDocument, wanted: readonly number[], room: number): boolean {
  const isOfDigits = remembering((font: PDFDict) => [...unicodeOf(font).values()].every((text) => /^\d$/.test(text)));
  const pages = pdf.getPages().flatMap((page) =>
    fontsOf(page)
      .filter(([, font]) => isOfDigits(font))
      .map(([name, font]) => ({ page, name, font })),
  );
  return [...new Set(pages.map(({ font }) => font))].some((font) =>
    fillIn(
      font,
      pages.filter((page) => page.font === font),
      wanted,
      room,
    ),
  );
}

function fillIn(
  font: PDFDict,
  pages: readonly { page: PDFPage; name: string }[],
  wanted: readonly number[],
  room: number,
): boolean {
  const digitOf = unicodeOf(font);
  const codeOf = new Map([...digitOf].map(([code, digit]) => [digit, code.toString(16).padStart(4, '0')]));
  const found = new Set<number>();
  const written: { stream: PDFRawStream; text: string }[] = [];
  for (const { page, name } of pages) {
    const stream = page.node.Contents();
    if (!(stream instanceof PDFRawStream)) return false;
    const text = streamText(stream).replace(
      textIn(name),
      (whole, size: string, x: string, y: string, glyphs: string) => {
        const place = Number(
          [...glyphs.matchAll(/<(.{4})>/g)].map(([, code = '']) => digitOf.get(parseInt(code, 16))).join(''),
        );
        const shown = [...String(wanted[place] ?? '')];
        if (shown.length === 0 || shown.length > room || !shown.every((digit) => codeOf.has(digit))) return whole;
        found.add(place);
        const step = advance * Number(size);
        const left = Number(x) + (room - shown.length) * step;
        const set = shown.map(
          (digit, index) => `${index === 0 ? '' : `${short(step)} 0 Td `}<${codeOf.get(digit)}> Tj\n`,
        );
        return `BT\n/${name} ${size} Tf\n1 0 0 -1 ${short(left)} ${y} Tm\n${set.join('')}ET`;
      },
    );
    written.push({ stream, text });
  }
  if (found.size < wanted.length) return false;
  for (const { stream, text } of written) stream.updateContents(deflateSync(Buffer.from(text, 'latin1')));
  return true;
}

/** Width of a digit in the shipped text font, in em. */
const advance = 0.572;

const short = (value: number): string => String(Math.round(value * 1e5) / 1e5);

/** A text object (ISO 32000-1:2008, 9.4) in the named font, as browsers write it: upright, one glyph after the other. */
const textIn = (name: string): RegExp =>
  new RegExp(
    `BT\\s/${name} ([\\d.]+) Tf\\s1 0 0 -1 (-?[\\d.]+) (-?[\\d.]+) Tm\\s((?:(?:-?[\\d.]+ 0 Td )?<[0-9A-F]{4}> Tj\\s)+)ET`,
    'g',
  );

function fontsOf(page: PDFPage): [name: string, font: PDFDict][] {
  const fonts = page.node.Resources()?.lookupMaybe(PDFName.of('Font'), PDFDict);
  return (fonts?.keys() ?? []).map((name) => [name.decodeText(), fonts!.lookup(name, PDFDict)]);
}

function remembering<K extends object, V>(of: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, of(key));
    return known.get(key) as V;
  };
}
