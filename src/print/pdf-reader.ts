import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';

/** Where the library that reads PDFs lies; it runs in the browser, so that it is read as files and never imported. */
const folder = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));

export const readerVersion = (JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string })
  .version;

const types: Readonly<Record<string, string>> = {
  '.mjs': 'text/javascript',
  '.js': 'text/javascript',
  '.wasm': 'application/wasm',
};

/** A file of the library by the path that it is asked by; the fonts, character maps and decoders that a PDF may need among them. */
export async function readerFile(path: string): Promise<{ mime: string; bytes: Uint8Array } | undefined> {
  if (!/^\/(?:legacy\/build|standard_fonts|cmaps|wasm|iccs)\/[\w.-]+$/.test(path)) return undefined;
  const bytes = await readFile(join(folder, path)).catch(() => undefined);
  return bytes && { mime: types[extname(path)] ?? 'application/octet-stream', bytes };
}
