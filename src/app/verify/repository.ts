import { createHash } from 'node:crypto';
import { readBlobs } from '../../history/git/blobs.js';
import { resolveCommit } from '../../history/git/commits.js';
import { openRepository, type Repository } from '../../history/git/repository.js';
import { checkChain } from '../../history/git/sound.js';
import { tagName } from '../../history/git/tag-name.js';
import { tagNamed } from '../../history/git/tags.js';
import { verifyTag } from '../../history/git/verify-tag.js';
import type { Manifest } from '../../history/manifest.js';
import { vouchedBy } from '../../history/tag-message.js';
import { MachineFailure } from '../../platform/failure.js';
import { committedFiles } from '../repository/inputs.js';
import { type Checked, differs, listed, matches, none, unchecked } from './checked.js';
import { sha256Of, type VerifiedDocument } from './document.js';

/** The repository that holds the commit of a document, found in one of the folders, or why there is none at hand. */
export async function repositoryOf(
  { commit, folder }: Manifest,
  places: readonly string[],
): Promise<Repository | string> {
  if (commit === undefined || folder === undefined)
    return 'the document was printed from files outside a git repository';
  let why = '';
  for (const place of places) {
    const repo = await openRepository(place);
    if (repo.kind === 'none') why ||= repo.reason;
    else if ((await resolveCommit(repo, commit)) === undefined)
      why = `the repository at ${repo.root} does not hold the commit ${commit.slice(0, 12)}; fetch it`;
    else return { ...repo, prefix: folder };
  }
  return why;
}

/** Every input against the contents that its commit holds. */
export async function checkInputs(document: VerifiedDocument, repo: Repository): Promise<Checked> {
  try {
    await checkChain(repo, document.manifest.commit!, repo.prefix);
    return await compareInputs(document, repo);
  } catch (cause) {
    if (!(cause instanceof MachineFailure)) throw cause;
    return differs('inputs', 'the repository does not hold what its ids say, or cannot be read', [cause.found]);
  }
}

async function compareInputs({ manifest }: VerifiedDocument, repo: Repository): Promise<Checked> {
  const held = await committedFiles(repo, manifest.commit!);
  const against = manifest.inputs
    .filter(({ path }) => !held.has(path))
    .map(({ path }) => `${path} is not in the commit`);
  const wanted = manifest.inputs.filter(({ path }) => held.has(path));
  let next = 0;
  for await (const blob of readBlobs(
    repo,
    wanted.map(({ path }) => held.get(path)!),
  )) {
    const { path, sha256 } = wanted[next++]!;
    if (blob.state !== 'read') against.push(`${path} cannot be read: its contents are not in this clone`);
    else if (createHash('sha256').update(blob.data).digest('hex') !== sha256)
      against.push(`${path} has other contents in the commit`);
  }
  const dirty =
    manifest.dirty.length > 0
      ? `; it is a draft: ${manifest.dirty.length} file(s) differed from the commit when it was printed`
      : '';
  return listed(
    'inputs',
    `${manifest.inputs.length} files are in commit ${manifest.commit!.slice(0, 12)} as the document lists them`,
    `files are not in commit ${manifest.commit!.slice(0, 12)} as the document lists them${dirty}`,
    against,
  );
}

/**
 * The tag of the issue: it stands on the commit and vouches for this very file and for what lies beside it; then its signature.
 *
 * @param beside text of the manifest beside the document, where there is one
 */
export async function checkTag(
  { manifest, sha256 }: VerifiedDocument,
  repo: Repository,
  beside?: string,
): Promise<Checked[]> {
  if (manifest.tag === undefined) return [none('tag', 'the document is a draft: no tag vouches for it')];
  const tag = await tagNamed(repo, manifest.tag);
  if (!tag) return [unchecked('tag', `there is no tag ${manifest.tag} here: fetch the tags (\`git fetch --tags\`)`)];
  const against = [
    ...(tag.annotated ? [] : ['it is a bare name, which anybody can move without a trace']),
    ...(manifest.issue !== undefined && manifest.tag === tagName(manifest.id ?? manifest.build, manifest.issue)
      ? []
      : [`it is not the tag of issue ${manifest.issue ?? ''} of ${manifest.id ?? manifest.build}`]),
    ...(tag.commit === manifest.commit
      ? []
      : [
          `it stands on ${tag.commit?.slice(0, 12) ?? 'no commit'}, the document names ${manifest.commit?.slice(0, 12)}`,
        ]),
  ];
  const vouched = vouchedBy(tag.message);
  if (against.length === 0 && !vouched)
    return [
      unchecked('tag', `${manifest.tag} stands on the commit of the document and names no printed file`),
      await signature(manifest, repo),
    ];
  if (vouched && vouched.pdf !== sha256)
    against.push('it names a printed file with another digest: this is not the file that was issued');
  if (vouched?.manifest !== undefined && beside !== undefined && vouched.manifest !== sha256Of(Buffer.from(beside)))
    against.push(
      'it names another manifest than the one beside the document: the files there are not those that were issued',
    );
  return [
    listed(
      'tag',
      `${manifest.tag} stands on the commit of the document and names this very file by its digest`,
      `${manifest.tag} does not vouch for this document`,
      against,
    ),
    ...(beside !== undefined && vouched && vouched.manifest === undefined
      ? [
          unchecked(
            'beside',
            'the tag names the printed file only: nothing that is signed vouches for the other files beside it',
          ),
        ]
      : []),
    await signature(manifest, repo),
  ];
}

async function signature({ tag, signed }: Manifest, repo: Repository): Promise<Checked> {
  const verdict = await verifyTag(repo, tag!);
  switch (verdict.state) {
    case 'good':
      return matches('signature', verdict.says);
    case 'unsigned':
      return signed === true
        ? differs('signature', `the document says that its tag is signed. ${verdict.says}`)
        : none('signature', verdict.says);
    case 'unknown-key':
    case 'cannot-verify':
      return unchecked('signature', verdict.says);
    default:
      return differs('signature', verdict.says);
  }
}
