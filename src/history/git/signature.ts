import type { Ran } from './run.js';

export type SignatureFormat = 'ssh' | 'openpgp' | 'x509';

export type SignatureState = 'good' | 'bad' | 'unknown-key' | 'not-allowed' | 'cannot-verify';

/** What a verifying program found. */
export interface Verdict {
  state: SignatureState;
  /** Whose key it is, by the list or keyring that was used; not made safe for display. */
  signer?: string;
  /** Fingerprint or id of the key. */
  key?: string;
  /** What stands against it, as part of a sentence. */
  because?: string;
}

const beginnings: readonly (readonly [string, SignatureFormat])[] = [
  ['-----BEGIN SSH SIGNATURE-----', 'ssh'],
  ['-----BEGIN PGP SIGNATURE-----', 'openpgp'],
  ['-----BEGIN PGP MESSAGE-----', 'openpgp'],
  ['-----BEGIN SIGNED MESSAGE-----', 'x509'],
];

/** The form of the signature at the end of a tag object; nothing if it carries none. */
export function signatureFormat(tagObject: string): SignatureFormat | undefined {
  const lines = tagObject.split('\n');
  return beginnings.find(([beginning]) => lines.includes(beginning))?.[1];
}

/** The message of a tag up to the line at which its signature begins. */
export function withoutSignature(message: string): string {
  const lines = message.split('\n');
  const end = lines.findIndex((line) => signatureFormat(line) !== undefined);
  return (end === -1 ? lines : lines.slice(0, end)).join('\n');
}

/** Reads what git prints of an SSH signature. `listed` says whether there was a list of allowed signers at all. */
export function sshVerdict({ code, err: printed }: Pick<Ran, 'code' | 'err'>, listed: boolean): Verdict {
  const known = /^Good "git" signature for (.+) with (\S+ key \S+)$/m.exec(printed);
  if (known !== null && code === 0) return { state: 'good', signer: known[1] ?? '', key: known[2] ?? '' };
  const intact = /^Good "git" signature with (\S+ key \S+)$/m.exec(printed);
  if (intact !== null) return { state: listed ? 'not-allowed' : 'unknown-key', key: intact[1] ?? '' };
  if (/could not verify|incorrect signature|couldn't parse/i.test(printed)) return { state: 'bad' };
  return { state: 'cannot-verify', because: firstLine(printed) };
}

/** Reads the status lines of GnuPG (its DETAILS file). */
export function pgpVerdict({ code, err: printed }: Pick<Ran, 'code' | 'err'>): Verdict {
  const status = new Map<string, string>();
  for (const [, name = '', rest = ''] of printed.matchAll(/^\[GNUPG:\] ([A-Z_]+) ?(.*)$/gm)) status.set(name, rest);
  const about = (name: string): Pick<Verdict, 'signer' | 'key'> => {
    const [key = '', ...signer] = (status.get(name) ?? '').split(' ');
    return {
      key: status.get('VALIDSIG')?.split(' ', 1)[0] ?? key,
      ...(signer.length === 0 ? {} : { signer: signer.join(' ') }),
    };
  };
  if (status.has('BADSIG')) return { state: 'bad', ...about('BADSIG') };
  if (status.has('NO_PUBKEY')) return { state: 'unknown-key', key: status.get('NO_PUBKEY') ?? '' };
  if (status.has('REVKEYSIG'))
    return { state: 'not-allowed', ...about('REVKEYSIG'), because: 'the key was withdrawn by its owner' };
  if (status.has('EXPKEYSIG')) return { state: 'not-allowed', ...about('EXPKEYSIG'), because: 'the key has expired' };
  if (status.has('EXPSIG')) return { state: 'not-allowed', ...about('EXPSIG'), because: 'the signature has expired' };
  if (!status.has('GOODSIG')) return { state: 'cannot-verify', because: firstLine(printed) };
  const trusted = ['TRUST_ULTIMATE', 'TRUST_FULLY', 'TRUST_MARGINAL'].some((name) => status.has(name));
  return trusted && code === 0
    ? { state: 'good', ...about('GOODSIG') }
    : { state: 'not-allowed', ...about('GOODSIG'), because: 'nobody you trust has confirmed whose key it is' };
}

function firstLine(printed: string): string {
  return (
    printed
      .split('\n')
      .find((text) => text.trim() !== '')
      ?.replace(/^(error|fatal): /, '') ?? 'git gave no reason'
  );
}
