import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import type { DigestOf } from '../checks/engine/judgements.js';
import { afresh } from '../project/memory.js';
import type { Build } from '../project/model.js';

/** SHA-256 of the files that a build names, each read only when it is asked for. */
export function digestsIn(build: Build, recall = afresh): DigestOf {
  return (path) => {
    const file = build.files.get(path);
    if (!file) return undefined;
    const { mtimeMs, size } = statSync(file.absolute);
    return recall(`digest ${path}`, `${mtimeMs} ${size}`, () =>
      createHash('sha256').update(readFileSync(file.absolute)).digest('hex'),
    );
  };
}
