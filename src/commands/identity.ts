import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import type { Build } from '../build/model.js';
import { isClean } from '../history/git/clean.js';
import { commitDate, headCommit } from '../history/git/commits.js';
import { openRepository } from '../history/git/repository.js';
import { issueTags } from '../history/git/tags.js';
import { verifyTag } from '../history/git/verify-tag.js';
import type { Identity } from '../render/subject.js';
import { tool } from './tool.js';

export interface InputHash {
  path: string;
  bytes: number;
  sha256: string;
}

/** SHA-256 of every file that the build is made of, in the order of their paths. */
export async function hashInputs(build: Build): Promise<InputHash[]> {
  const hashes: InputHash[] = [];
  for (const file of [...build.inputs].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const bytes = await readFile(file.absolute);
    hashes.push({ path: file.path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') });
  }
  return hashes;
}

/** Which state of the files is being printed, as far as git can tell. */
export async function identify(build: Build, inputs: readonly InputHash[]): Promise<Identity> {
  const digest = createHash('sha256').update(inputs.map((i) => `${i.sha256}  ${i.path}\n`).join('')).digest('hex');
  const repo = await openRepository(build.directory);
  if (repo.kind === 'none' || repo.empty || repo.bare) return { tool, date: await newestInput(build), dirty: [], inputs: digest };
  const commit = await headCommit(repo);
  if (commit === undefined) return { tool, date: await newestInput(build), dirty: [], inputs: digest };
  const [clean, date, tags] = await Promise.all([isClean(repo, repo.prefix), commitDate(repo, commit), issueTags(repo, build.name)]);
  const tag = tags.findLast((t) => t.commit === commit);
  return {
    tool,
    commit,
    date: date.slice(0, 10),
    dirty: clean.dirty.map((d) => d.path),
    inputs: digest,
    ...(tag ? { letter: tag.letter, tag: tag.name, signature: (await verifyTag(repo, tag.name)).says } : {}),
  };
}

async function newestInput(build: Build): Promise<string> {
  const times = await Promise.all(build.inputs.map(async (i) => (await stat(i.absolute)).mtimeMs));
  return new Date(Math.max(0, ...times)).toISOString().slice(0, 10);
}
