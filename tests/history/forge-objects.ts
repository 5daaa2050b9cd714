import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { deflateSync } from 'node:zlib';

/** Where git keeps an object by itself: its first two digits are a folder. */
export const loose = (dir: string, id: string): string => join(dir, '.git/objects', id.slice(0, 2), id.slice(2));

/** Puts other bytes under the id of an object. */
export function replaceLoose(dir: string, id: string, type: string, content: string | Buffer): void {
  const file = loose(dir, id);
  mkdirSync(dirname(file), { recursive: true });
  rmSync(file, { force: true });
  const bytes = Buffer.from(content);
  writeFileSync(file, deflateSync(Buffer.concat([Buffer.from(`${type} ${bytes.length}\0`), bytes])));
}

/** Exchanges the places of two objects in the index of the only pack (gitformat-pack(5), version 2). */
export function swapInIndex(dir: string, one: string, other: string): void {
  const folder = join(dir, '.git/objects/pack');
  const file = join(folder, readdirSync(folder).find((name) => name.endsWith('.idx'))!);
  const index = readFileSync(file);
  const count = index.readUInt32BE(8 + 255 * 4);
  const ids = 8 + 256 * 4;
  const at = (id: string) => {
    for (let n = 0; n < count; n++)
      if (index.subarray(ids + n * 20, ids + n * 20 + 20).toString('hex') === id) return n;
    throw new Error(`${id} is not in the pack`);
  };
  const checks = ids + count * 20;
  const offsets = checks + count * 4;
  for (const table of [checks, offsets]) {
    const [a, b] = [table + at(one) * 4, table + at(other) * 4];
    const kept = index.readUInt32BE(a);
    index.writeUInt32BE(index.readUInt32BE(b), a);
    index.writeUInt32BE(kept, b);
  }
  createHash('sha1')
    .update(index.subarray(0, -20))
    .digest()
    .copy(index, index.length - 20);
  chmodSync(file, 0o644);
  writeFileSync(file, index);
}
