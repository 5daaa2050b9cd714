import { readFile } from 'node:fs/promises';
import { posix } from 'node:path';
import { blobId } from '../../history/git/blob-id.js';
import type { Repository } from '../../history/git/repository.js';
import { blobAt, fileAt, treeAt } from '../../history/git/tree.js';
import { changed } from '../../platform/changed.js';
import { several } from '../../platform/several.js';
import { sha256Beside } from '../../platform/sha256.js';
import type { Build, BuildFile } from '../../project/model.js';
import { workshopLimits } from './build-at.js';

export interface InputHash {
  /** Relative to the build's folder. */
  path: string;
  bytes: number;
  sha256: string;
}

/** A file that the build is made of. */
export interface Input extends InputHash {
  absolute: string;
  /** Id of its contents in git, or the one that git would give. */
  blob: string;
  /** Contents of what is text; photos are too large to keep. */
  text?: Buffer;
}

/** A commit, and what git says differs from it in the folder (paths from the root of the repository). */
export interface Against {
  repo: Repository;
  commit: string;
  changed: ReadonlySet<string>;
}

/**
 * Every file that the build is made of, in the order of their paths, and those whose contents no commit holds. A note
 * that git calls unchanged has the contents of the commit: in the folder it may lie with other line ends, and no more.
 */
export async function readInputs(build: Build, against?: Against): Promise<{ inputs: Input[]; uncommitted: string[] }> {
  const held = against ? await committedFiles(against.repo, against.commit) : new Map<string, string>();
  const files = [...build.inputs].sort((a, b) => (a.path < b.path ? -1 : 1));
  const inputs = await several(files, (file) => read(file, held.get(file.path), against));
  return { inputs, uncommitted: inputs.filter((i) => held.get(i.path) !== i.blob).map((i) => i.path) };
}

async function read(file: BuildFile, held: string | undefined, against: Against | undefined): Promise<Input> {
  const isText = /\.(?:md|yaml|csv|txt)$/i.test(file.path);
  const lying = await readFile(file.absolute);
  if (file.text !== undefined && new TextDecoder().decode(lying) !== file.text) throw changed(file.path);
  const id = await blobId(lying, against?.repo.objectFormat ?? 'sha1');
  if (!against || !isText || held === undefined || held === id) return described(file, lying, id, isText);
  const path = posix.join(against.repo.prefix, file.path);
  const committed = against.changed.has(path) ? undefined : await fileAt(against.repo, against.commit, path);
  return committed && sameLines(committed, lying)
    ? described(file, committed, held, isText)
    : described(file, lying, id, isText);
}

/** What a filter takes out of a note as git commits it (`ident`, one's own) is in no commit, though git calls the note unchanged. */
const sameLines = (a: Buffer, b: Buffer): boolean => withoutReturns(a) === withoutReturns(b);
const withoutReturns = (bytes: Buffer): string => bytes.toString('latin1').replaceAll('\r\n', '\n');

async function described({ path, absolute }: BuildFile, content: Buffer, blob: string, keep: boolean): Promise<Input> {
  return {
    path,
    absolute,
    bytes: content.length,
    sha256: await sha256Beside(content),
    blob,
    ...(keep ? { text: content } : {}),
  };
}

/** Ids of the contents of a build's files, and of the workshop's limits beside it, at a commit; by path within the build. */
export async function committedFiles(repo: Repository, commit: string): Promise<Map<string, string>> {
  const [tree, beside] = await Promise.all([
    treeAt(repo, commit, repo.prefix),
    repo.prefix === '' ? undefined : blobAt(repo, commit, workshopLimits(repo.prefix)),
  ]);
  const files = [...tree].flatMap(([path, { kind, blob }]): [string, string][] =>
    kind === 'file' ? [[path, blob]] : [],
  );
  return new Map(beside === undefined ? files : [...files, ['../limits.yaml', beside]]);
}
