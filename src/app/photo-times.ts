import { open, stat } from 'node:fs/promises';
import type { TakenAt } from '../checks/engine/proofs.js';
import { afresh } from '../project/memory.js';
import type { Build } from '../project/model.js';

/** Metadata stand at the head of a photo; this much holds them. */
const head = 256 * 1024;

/** Capture times of the photos that notes name, as far as the files say. With a memory, files as they were are not read again. */
export async function photoTimes(build: Build, recall = afresh): Promise<TakenAt> {
  const paths = [...new Set(build.notes.flatMap((n) => (n.data.photos ?? []).map((p) => p.file)))];
  if (paths.length === 0) return new Map();
  const { readExif } = await import('../print/exif.js');
  const times = new Map<string, string>();
  for (const path of paths) {
    const file = build.files.get(path);
    if (!file) continue;
    const { mtimeMs, size } = await stat(file.absolute);
    const taken = await recall(
      `taken ${path}`,
      `${mtimeMs} ${size}`,
      async () => readExif(await start(file.absolute)).takenAt,
    );
    if (taken !== undefined) times.set(path, taken);
  }
  return times;
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
