import { webcrypto } from 'node:crypto';

/** SHA-256 of the contents of a file, in hexadecimal, reckoned on another core while the program goes on. */
export const sha256Beside = async (bytes: Uint8Array): Promise<string> =>
  Buffer.from(await webcrypto.subtle.digest('SHA-256', bytes)).toString('hex');
