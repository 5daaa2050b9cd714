import { createWriteStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** A file that a page links to, and its type. */
export interface LinkedFile {
  path: string;
  mime: string;
}

/**
 * Writes a page with every file that it links to inside it. One file is in memory at a time, however many there are.
 *
 * @param files by the address with which the page names them
 */
export async function writeSelfContained(
  target: string,
  html: string,
  files: ReadonlyMap<string, LinkedFile>,
): Promise<void> {
  await pipeline(Readable.from(pieces(html, files)), createWriteStream(target));
}

async function* pieces(html: string, files: ReadonlyMap<string, LinkedFile>): AsyncGenerator<string> {
  let from = 0;
  for (const { index, 0: url } of html.matchAll(/file:\/\/[^"')\s]+/g)) {
    const file = files.get(url);
    if (!file) continue;
    yield html.slice(from, index);
    yield `data:${file.mime};base64,${(await readFile(file.path)).toString('base64')}`;
    from = index + url.length;
  }
  yield html.slice(from);
}
