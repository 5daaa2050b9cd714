import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { packageFile } from './package-file.js';
import type { LinkedFile } from './self-contained.js';

/** Where the shipped fonts and their `fonts.css` lie. */
export const fontsDirectory = fileURLToPath(packageFile('templates/fonts/'));

/** PostScript names of the shipped fonts, as a PDF names them: a document's PDF carries these and no others. */
export const shippedFonts: readonly string[] = [
  'NotoSans-Regular',
  'NotoSans-Italic',
  'NotoSans-Bold',
  'NotoSans-BoldItalic',
  'NotoSansMono-Regular',
  'NotoSansMono-Bold',
  'NotoSansMath-Regular',
  'NotoSansSymbols2-Regular',
];

/**
 * The style sheet that declares the shipped fonts, with the custom properties `--font-text`, `--font-mono` and
 * `--font-math`. The files are named by URLs under `where`, a folder's file or relative URL ending in `/`.
 */
export function fontFaces(where: string): string {
  return readFileSync(`${fontsDirectory}fonts.css`, 'utf8').replace(
    /url\('([^']+)'\)/g,
    (_, file: string) => `url('${where}${file}')`,
  );
}

/** The files of the fonts by those URLs. */
export function fontFiles(where: string): Map<string, LinkedFile> {
  const names = [...fontFaces('').matchAll(/url\('([^']+)'\)/g)].map((m) => m[1]!);
  return new Map(names.map((file) => [where + file, { path: fontsDirectory + file, mime: 'font/woff2' }]));
}

/** The characters of `text` that no shipped font holds, each once, in order of appearance. */
export function unprintable(text: string): string[] {
  const ranges = coveredRanges();
  return [...new Set(text)].filter((character) => {
    const code = character.codePointAt(0) as number;
    return !invisible.test(character) && !ranges.some(([first, last]) => first <= code && code <= last);
  });
}

/** White space, controls and variation selectors need no glyph. */
const invisible = /^[\s\p{Cc}\uFE0E\uFE0F]$/u;

let ranges: [first: number, last: number][] | undefined;

function coveredRanges(): [first: number, last: number][] {
  const declared = () =>
    [...fontFaces('').matchAll(/U\+([0-9A-F]+)(?:-([0-9A-F]+))?/g)].map(
      ([, first = '', last = first]): [number, number] => [parseInt(first, 16), parseInt(last, 16)],
    );
  return (ranges ??= declared());
}
