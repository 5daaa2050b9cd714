import { readFile, rm, writeFile } from 'node:fs/promises';
import { packageFile } from '../../platform/package-file.js';
import { assemble, type Compiled, compiledFile, readFiles, sha256 } from './codes.js';

/** Build step: keeps the codes of practice as they were read and validated, beside the compiled program. */
const directory = packageFile('src/checks/codes/');
await rm(compiledFile, { force: true });
const files = await readFiles(directory.pathname);
assemble(files);
const entries = files.map(
  async ({ file, code }) => [file, { sha256: sha256(await readFile(new URL(file, directory), 'utf8')), code }] as const,
);
const compiled: Compiled = Object.fromEntries(await Promise.all(entries));
await writeFile(compiledFile, JSON.stringify(compiled));
