import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A folder as an output of the program: files, and the manifest that lists them. */
export function written(folder: string, files: Readonly<Record<string, string>>): void {
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, 'manifest.json'), manifestOf(files));
}

export const manifestOf = (files: Readonly<Record<string, string>>): string =>
  JSON.stringify({
    form: 'gusset-manifest/2',
    outputs: Object.entries(files).map(([path, text]) => ({
      path,
      bytes: Buffer.byteLength(text),
      sha256: createHash('sha256').update(text).digest('hex'),
    })),
  });
