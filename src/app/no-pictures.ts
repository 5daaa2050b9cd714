import { open, stat } from 'node:fs/promises';
import { kindOf } from '../print/kind.js';
import { afresh } from '../project/memory.js';
import type { Build } from '../project/model.js';
import type { Problem } from '../project/problem.js';

/** As much of a file as tells what it holds. */
const head = 64;

/** Files that are named as photos and by their first bytes are no pictures, where they are named. With a memory, files as they were are not read again. */
export async function noPictures(build: Build, recall = afresh): Promise<Problem[]> {
  const named = [build, ...build.notes].flatMap((owner) =>
    (owner.data.photos ?? []).map(({ file }, i) => ({ owner, file, range: owner.front.locate(['photos', i, 'file']) })),
  );
  const problems: Problem[] = [];
  for (const { owner, file, range } of named) {
    const there = build.files.get(file);
    if (!there) continue;
    const { mtimeMs, size } = await stat(there.absolute);
    const kind = await recall(`picture ${file}`, `${mtimeMs} ${size}`, async () =>
      kindOf(await firstBytes(there.absolute)),
    );
    if ('picture' in kind) continue;
    problems.push({
      code: 'photo-broken',
      file: owner.file,
      ...range,
      source: owner.front.sourceLine(range.line),
      found: `\`${file}\` as a photo, which holds ${kind.other}`,
      expected: 'a picture',
      hint: kind.hint,
    });
  }
  return problems;
}

async function firstBytes(path: string): Promise<Uint8Array> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(head), 0, head, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}
