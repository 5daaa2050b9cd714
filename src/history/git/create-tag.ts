import { objectId } from './object-id.js';
import { failure, fields, type GitFolder, git, tryGit } from './run.js';
import { signatureOf } from './tag-signature.js';
import { type Tag, tagNamed } from './tags.js';

export interface NewTag {
  name: string;
  message: string;
  /** Full id. */
  commit: string;
  sign: 'if-set-up' | 'require' | 'no';
}

/** True if git's settings name a key to sign with, or ask for signatures. Of two settings of one name the last counts. */
export async function signingSetUp(repo: GitFolder): Promise<boolean> {
  const ran = await tryGit(repo, [
    'config',
    '--null',
    '--get-regexp',
    '^(user\\.signingkey|gpg\\.ssh\\.defaultkeycommand|tag\\.gpgsign|tag\\.forcesignannotated)$',
  ]);
  const entries = fields(ran.out).map((entry): [string, string] => {
    const [name = '', value = 'true'] = entry.split('\n');
    return [name, value];
  });
  return [...new Map(entries).values()].some((value) => value !== '' && !/^(false|no|off|0)$/i.test(value));
}

/**
 * Makes an annotated tag; the message goes through standard input. Throws, each time with the way out, if there is
 * such a tag, if the name is none, if nobody is set up as tagger, or if a signature is wanted and cannot be made: a
 * tag never goes unsigned where git is set up to sign.
 */
export async function createTag(
  repo: GitFolder,
  { name, message, commit, sign }: NewTag,
): Promise<Tag & { signed: boolean }> {
  const setUp = sign === 'no' ? false : await signingSetUp(repo);
  if (sign === 'require' && !setUp) {
    throw new Error(
      'A signed tag is wanted, but git is not set up to sign. Set user.signingkey (and gpg.format to ssh for an SSH key).',
    );
  }
  await checkName(repo, name);
  if (message.includes('\0') || /^-----BEGIN /m.test(message)) {
    throw new Error(
      'The message of a tag must have no NUL and no line that begins with "-----BEGIN ": it would be taken for a signature.',
    );
  }
  const ran = await tryGit(
    repo,
    ['tag', setUp ? '--sign' : '--annotate', '--cleanup=verbatim', '--file=-', '--', name, objectId(commit)],
    {
      input: `${message.trimEnd()}\n`,
      settings: setUp ? [] : ['tag.gpgSign=false', 'tag.forceSignAnnotated=false'],
    },
  );
  if (ran.code !== 0) throw refused(name, setUp, failure(`The tag ${name} could not be made`, ran));
  const made = await tagNamed(repo, name);
  if (made === undefined)
    throw new Error(`git reported the tag ${name} as made, but it is not there. Run \`git fsck\`.`);
  if (setUp && (await signatureOf(repo, made)) === undefined) {
    // Some versions of git make the tag all the same, without a signature, when the signing program fails.
    await removeTag(repo, made);
    throw refused(name, true, failure(`The tag ${name} could not be made`, ran));
  }
  return { ...made, signed: setUp };
}

/** Takes back a tag that was just made; leaves it where it was meanwhile made to stand for something else. */
export async function removeTag(repo: GitFolder, tag: Pick<Tag, 'name' | 'object'>): Promise<void> {
  await git(repo, ['update-ref', '-d', `refs/tags/${tag.name}`, tag.object]);
}

async function checkName(repo: GitFolder, name: string): Promise<void> {
  const valid =
    !name.startsWith('-') &&
    !name.includes('\0') &&
    (await tryGit(repo, ['check-ref-format', `refs/tags/${name}`])).code === 0;
  if (!valid) throw new Error(`"${name}" is no name for a tag. Use letters, digits and hyphens.`);
  if (await tagNamed(repo, name))
    throw new Error(`There is a tag ${name} already. An issue is never made twice: take the next letter.`);
}

function refused(name: string, signing: boolean, error: Error): Error {
  if (/tell me who you are|empty ident|no email was given|unable to auto-detect/i.test(error.message)) {
    return new Error(`The tag ${name} needs a tagger. Set user.name and user.email with \`git config\`.`, {
      cause: error,
    });
  }
  if (signing) {
    return new Error(
      `${error.message.replace(/\.?$/, '.')} git is set up to sign, and the signature failed: mend the key or the agent, or ask for an unsigned tag.`,
      { cause: error },
    );
  }
  return error;
}
