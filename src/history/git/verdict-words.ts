import { shown, who } from '../who.js';
import type { Verdict } from './signature.js';
import type { Tag } from './tags.js';

/** What a verdict on a signed tag proves and what it does not; `source` names the list or keyring that was used. */
export function wordsFor(verdict: Verdict, tag: Tag, source: string): string {
  const key = shown(verdict.key ?? 'unknown');
  const because = verdict.because === undefined ? '' : `: ${shown(verdict.because)}`;
  switch (verdict.state) {
    case 'good':
      return [
        `Signed with the key ${key}, which ${shown(source)} gives to ${shown(verdict.signer ?? 'nobody named')}.`,
        ...(differs(verdict, tag) ? [`The tag names another as its tagger: ${who(tag.tagger)}.`] : []),
        `It proves that the holder of this key signed this tag, its message and commit ${tag.commit ?? tag.object}, and with the commit, through git's ${tag.object.length === 64 ? 'SHA-256' : 'SHA-1'} ids, every file in it.`,
        ...(/in this repository$/.test(source)
          ? ['That list can be changed by whoever can commit: compare the key with one you had from the signer.']
          : []),
        `It does not prove when: ${tag.date} is what the signer's computer said. Nor does it prove that what was written is true.`,
      ].join(' ');
    case 'bad':
      return 'The signature does not fit this tag: tag or signature were altered after signing. Do not rely on it; fetch the tag again from whoever issued it.';
    case 'unknown-key':
      return `Signed with the key ${key}, but nothing here says whose it is (looked in: ${shown(source)}), so it proves nothing about who signed. Get the public key from the signer by another way, and add it.`;
    case 'not-allowed':
      return `Signed with the key ${key}, but ${verdict.because === undefined ? `that key is not on ${shown(source)}, or was not at the date of the tag` : shown(verdict.because)}. The tag is as it was signed; that it was signed by somebody entitled to is not proved.`;
    case 'cannot-verify':
      return `Signed, but the signature cannot be verified here${because}. It proves nothing until it is: install what is missing (ssh-keygen for SSH, GnuPG for OpenPGP) and verify again.`;
  }
}

function differs(verdict: Verdict, tag: Tag): boolean {
  return (
    verdict.signer !== undefined &&
    tag.tagger.email !== '' &&
    !verdict.signer.toLowerCase().includes(tag.tagger.email.toLowerCase())
  );
}
