import { type GitFolder, git } from './run.js';
import { type SignatureFormat, signatureFormat } from './signature.js';
import type { Tag } from './tags.js';

/** The form of the signature that a tag carries, whether it fits or not; nothing where it carries none or is a bare name. */
export async function signatureOf(
  repo: GitFolder,
  tag: Pick<Tag, 'object' | 'annotated'>,
): Promise<SignatureFormat | undefined> {
  return tag.annotated
    ? signatureFormat((await git(repo, ['cat-file', 'tag', tag.object])).toString('utf8'))
    : undefined;
}
