import { open, unlink } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * All that comes out of a stream, as one piece. What has come so far waits in a file of `folder` that has no name any more, so
 * that no more than one copy of a long document is in memory.
 */
export async function collected(stream: ReadableStream<Uint8Array>, folder: string): Promise<Buffer> {
  const path = join(folder, `.${process.pid}-${count++}.coming`);
  const file = await open(path, 'wx+');
  try {
    await unlink(path);
    let length = 0;
    for await (const piece of stream) {
      await file.writeFile(piece);
      length += piece.length;
    }
    const bytes = Buffer.allocUnsafe(length);
    for (let at = 0; at < length; ) {
      const { bytesRead } = await file.read(bytes, at, Math.min(length - at, 2 ** 30), at);
      if (bytesRead === 0) throw new Error(`of ${length} bytes that were written only ${at} could be read back`);
      at += bytesRead;
    }
    return bytes;
  } finally {
    await file.close();
  }
}

let count = 0;
