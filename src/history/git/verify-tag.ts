import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { shown, who } from '../who.js';
import { withAllowedSigners } from './allowed-signers.js';
import type { Repository } from './repository.js';
import { gitFails, line, type Ran, tryGit } from './run.js';
import { pgpVerdict, type SignatureFormat, type SignatureState, sshVerdict, type Verdict } from './signature.js';
import { type Tag, tagNamed } from './tags.js';
import { wordsFor } from './verdict-words.js';

export interface TagVerdict {
  signed: boolean;
  /**
   * `good`: intact, by a key that a list or keyring gives to somebody; `bad`: altered, or under another name than was
   * signed; `unknown-key`: whose key it is cannot be told; `not-allowed`: the key is not on the list, withdrawn or
   * out of date; `cannot-verify`: what is needed to verify is not there.
   */
  state: SignatureState | 'unsigned';
  /** Safe for display. */
  signer?: string;
  /** Fingerprint or id of the key. */
  key?: string;
  format?: SignatureFormat;
  /** In words: what this proves, and what it does not. */
  says: string;
}

type Place = Pick<Repository, 'root' | 'prefix'>;

/** Verifies an annotated tag by its name. Throws if there is no such tag. */
export async function verifyTag(repo: Place, name: string): Promise<TagVerdict> {
  const tag = await tagNamed(repo, name);
  if (tag === undefined) throw new Error(`There is no tag ${shown(name)}. \`git tag\` lists those there are.`);
  const unsigned = (says: string): TagVerdict => ({ signed: false, state: 'unsigned', says });
  if (!tag.annotated)
    return unsigned(
      'This tag is a bare name for a commit. It carries no date, no name and no signature, and can be moved without a trace: it proves nothing.',
    );
  const format = tag.signature;
  if (format === undefined) {
    return unsigned(
      `This tag is not signed. It says that ${who(tag.tagger)} made it on ${tag.date}, but anybody who can write to the repository can write that: it proves neither who nor when.`,
    );
  }
  if (tag.ownName !== tag.name) {
    const says = `The tag object is signed for the name "${shown(tag.ownName)}" and was put under "${shown(tag.name)}". Do not rely on it.`;
    return { signed: true, state: 'bad', format, says };
  }
  const { verdict, source } = await judged(repo, tag, format);
  return {
    signed: true,
    state: verdict.state,
    ...(verdict.signer === undefined ? {} : { signer: shown(verdict.signer) }),
    ...(verdict.key === undefined ? {} : { key: shown(verdict.key) }),
    format,
    says: wordsFor(verdict, tag, source),
  };
}

async function judged(repo: Place, tag: Tag, format: SignatureFormat): Promise<{ verdict: Verdict; source: string }> {
  return withTagAlone(repo, tag, (objects) => {
    const verify = (settings: string[]) => tryGit(repo, ['verify-tag', '--raw', tag.object], { settings, objects });
    return verdictOf(repo, format, verify);
  });
}

/** Lends a store of objects that holds the tag as it was read, and nothing else: of two under one id git takes either. */
async function withTagAlone<T>(repo: Place, { raw, object }: Tag, use: (objects: string) => Promise<T>): Promise<T> {
  const objects = await mkdtemp(join(tmpdir(), 'gusset-tag-'));
  try {
    const written = await tryGit(repo, ['hash-object', '-t', 'tag', '-w', '--stdin', '--literally'], {
      input: raw!,
      objects,
    });
    if (line(written.out) !== object) throw gitFails('`git hash-object` gave another id to a tag than it has');
    return await use(objects);
  } finally {
    await rm(objects, { recursive: true, force: true });
  }
}

async function verdictOf(
  repo: Place,
  format: SignatureFormat,
  verify: (settings: string[]) => Promise<Ran>,
): Promise<{ verdict: Verdict; source: string }> {
  if (format === 'x509')
    return { verdict: { state: 'cannot-verify', because: 'X.509 signatures are not read here' }, source: '' };
  if (format === 'openpgp') return { verdict: pgpVerdict(await verify([])), source: 'your keyring' };
  return withAllowedSigners(repo, async (list, file) => {
    // A program set in a repository's own settings could call anything good.
    const settings = [`gpg.ssh.allowedSignersFile=${file}`, 'gpg.ssh.program=ssh-keygen'];
    const listed = list.origin !== 'none';
    const verdict = sshVerdict(await verify(settings), listed);
    if (verdict.state !== 'bad') return { verdict, source: list.name };
    // git words a withdrawn key like an altered tag.
    const without = sshVerdict(await verify([...settings, 'gpg.ssh.revocationFile=']), listed);
    if (without.state === 'bad' || without.state === 'cannot-verify') return { verdict, source: list.name };
    return {
      verdict: { ...without, state: 'not-allowed', because: 'the key is on your list of withdrawn keys' },
      source: list.name,
    };
  });
}
