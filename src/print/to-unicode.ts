import { type PDFDict, PDFName } from '@cantoo/pdf-lib';
import { streamText } from './stream-text.js';

const known = new WeakMap<PDFDict, (hex: string) => string>();

/** Reads strings of two-byte codes, `<0035 0034>`, in a font by its map to Unicode; what it does not map shows as its code. */
export function toUnicode(font: PDFDict | undefined): (hex: string) => string {
  if (!font) return (hex) => codes(hex).map(unmapped).join('');
  const reader = known.get(font) ?? readerOf(unicodeOf(font));
  known.set(font, reader);
  return reader;
}

const readerOf =
  (map: ReadonlyMap<number, string>) =>
  (hex: string): string =>
    codes(hex)
      .map((code) => map.get(code) ?? unmapped(code))
      .join('');

const codes = (hex: string): number[] =>
  (hex.replace(/[^0-9A-Fa-f]/g, '').match(/.{4}/g) ?? []).map((four) => parseInt(four, 16));

const unmapped = (code: number): string => `‹${code.toString(16)}›`;

/** What each code of a font says, by its map to Unicode; empty for a font without one. */
export const unicodeOf = (font: PDFDict): Map<number, string> =>
  mapOf(streamText(font.lookup(PDFName.of('ToUnicode'))));

/** Codes have two bytes; a map of all of them in a file of ours is far shorter. */
const mostCodes = 2 ** 16;
const longest = 2 ** 18;

/** `bfchar` gives one code its text, `bfrange` a run of codes either counted on from the first text or each its own. */
function mapOf(cmap: string): Map<number, string> {
  const map = new Map<number, string>();
  if (cmap.length > longest) throw new RangeError('a font says of more codes what they mean than there are');
  let steps = 0;
  for (const [, block = ''] of cmap.matchAll(/beginbfchar([^]*?)endbfchar/g)) {
    for (const [, code = '', text = ''] of block.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g))
      map.set(parseInt(code, 16), utf16(text));
  }
  for (const [, block = ''] of cmap.matchAll(/beginbfrange([^]*?)endbfrange/g)) {
    for (const [, first = '', last = '', text = '', list = ''] of block.matchAll(
      /<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(?:<([0-9A-Fa-f]+)>|\[([^\]]*)\])/g,
    )) {
      const texts = [...list.matchAll(/<([0-9A-Fa-f]+)>/g)].map(([, one = '']) => utf16(one));
      const [start, end] = [parseInt(first, 16), Math.min(parseInt(last, 16), mostCodes - 1)];
      steps += Math.max(0, end - start);
      if (steps > mostCodes) throw new RangeError('a font says more than once what its codes mean');
      for (let code = start; code <= end; code += 1) map.set(code, texts[code - start] ?? counted(text, code - start));
    }
  }
  return map;
}

function counted(hex: string, by: number): string {
  const units = hex.match(/.{4}/g) ?? [];
  const last = (parseInt(units.at(-1) ?? '0', 16) + by).toString(16).padStart(4, '0');
  return utf16([...units.slice(0, -1), last].join(''));
}

const utf16 = (hex: string): string =>
  String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((four) => parseInt(four, 16)));
