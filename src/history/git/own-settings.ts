/**
 * Settings that can have git run a program, or decide who signed, come from whoever runs Gusset (system, global, or given
 * in the environment) and never from the repository, which may be somebody else's.
 */

/** Where the settings of whoever runs it come from; `local` and `worktree` are the repository's. */
const own = new Set(['system', 'global', 'command']);

/** Names of settings, with section and last part in lower case, as git lists them. */
const guarded = [
  /^gpg\.(?:.+\.)?(?:program|allowedsignersfile|revocationfile|defaultkeycommand|mintrustlevel)$/,
  /^(?:filter|credential|protocol|pager|alias|uploadpack|url|lfs)\./,
  /^core\.(?:fsmonitor|hookspath|sshcommand|gitproxy|pager|editor|askpass|attributesfile|alternaterefscommand)$/,
  /^(?:diff|merge|mergetool|difftool)\..+\.(?:command|textconv|cachetextconv|driver|cmd|path)$/,
  /^diff\.(?:external|orderfile)$/,
  /^remote\..+\.(?:uploadpack|receivepack|vcs|proxy)$/,
  /^submodule\.(?:recurse|.+\.(?:update|recurse))$/,
  /^sequence\.editor$/,
];

/** What git takes where nobody set anything; for all others an empty value is none. */
const usual: Readonly<Record<string, string>> = {
  'gpg.program': 'gpg',
  'gpg.openpgp.program': 'gpg',
  'gpg.x509.program': 'gpgsm',
  'gpg.ssh.program': 'ssh-keygen',
  'gpg.mintrustlevel': 'undefined',
};

/** Two names of one setting, of which git takes whichever comes last. */
const sameAs: Readonly<Record<string, string>> = {
  'gpg.program': 'gpg.openpgp.program',
  'gpg.openpgp.program': 'gpg.program',
};

/** Reads `git config --list -z --show-scope`; gives the settings, name and value, that win over the repository's. */
export function ownSettings(listing: string): [name: string, value: string][] {
  const parts = listing.split('\0');
  const mine = new Map<string, string>();
  const theirs = new Set<string>();
  for (let at = 0; at + 1 < parts.length; at += 2) {
    const [scope, entry] = [parts[at]!, parts[at + 1]!];
    const end = entry.indexOf('\n');
    // A name alone is a switch that is on.
    const [name, value] = end === -1 ? [entry, 'true'] : [entry.slice(0, end), entry.slice(end + 1)];
    if (!guarded.some((pattern) => pattern.test(name))) continue;
    for (const one of [name, sameAs[name] ?? name]) {
      if (own.has(scope)) mine.set(one, value);
      else theirs.add(one);
    }
  }
  return [...theirs].map((name) => [name, mine.get(name) ?? usual[name] ?? '']);
}
