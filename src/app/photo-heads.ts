import { open, stat } from 'node:fs/promises';
import type { TakenAt } from '../checks/engine/proofs.js';
import { kindOf } from '../print/kind.js';
import { afresh } from '../project/memory.js';
import type { Build } from '../project/model.js';
import type { Problem } from '../project/problem.js';

/** Metadata stand at the head of a photo; this much holds them. */
const head = 256 * 1024;

/**
 * Capture times of the photos that are named, as far as the files say, and a problem for each that holds no picture: what it is
 * called proves nothing. With a memory, files as they were are not read again.
 */
export async function photoHeads(build: Build, recall = afresh): Promise<{ takenAt: TakenAt; problems: Problem[] }> {
  const named = [build, ...build.notes].flatMap((owner) =>
    (owner.data.photos ?? []).map((photo, i) => ({ owner, i, path: photo.file })),
  );
  const takenAt = new Map<string, string>();
  const problems: Problem[] = [];
  if (named.length === 0) return { takenAt, problems };
  const { readExif } = await import('../print/exif.js');
  const other = new Map<string, { found: string; hint: string }>();
  for (const path of new Set(named.map((n) => n.path))) {
    const file = build.files.get(path);
    if (!file) continue;
    const { mtimeMs, size } = await stat(file.absolute);
    const seen = await recall(`head ${path}`, `${mtimeMs} ${size}`, async () => {
      const bytes = await start(file.absolute);
      const kind = kindOf(bytes);
      return 'other' in kind ? { other: kind } : { taken: readExif(bytes).takenAt };
    });
    if (seen.other) other.set(path, { found: seen.other.other, hint: seen.other.hint });
    else if (seen.taken !== undefined) takenAt.set(path, seen.taken);
  }
  for (const { owner, i, path } of named) {
    const seen = other.get(path);
    if (!seen) continue;
    const range = owner.front.locate(['photos', i, 'file']);
    problems.push({
      code: 'photo-broken',
      file: owner.file,
      ...range,
      source: owner.front.sourceLine(range.line),
      found: `\`${path}\`, which holds ${seen.found}`,
      expected: 'a picture that can be shown',
      hint: seen.hint,
    });
  }
  return { takenAt, problems };
}

async function start(path: string): Promise<Uint8Array> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(head), 0, head, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}
