import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { environment, patience } from './environment.js';

/**
 * Settings of git that run a program, or decide who signed and what is compared. A repository that was received may set any of
 * them for itself; they are taken from the settings of whoever runs this, never from the repository's own.
 */
const decides =
  /^(?:gpg\.(?:.*\.)?program|gpg\.ssh\..*|gpg\.mintrustlevel|filter\..*|diff\.external|diff\..*\.(?:command|textconv|cachetextconv)|merge\..*\.driver|tar\..*\.(?:command|remote)|trailer\..*\.(?:command|cmd)|mailmap\..*|credential\..*|core\.(?:fsmonitor|hookspath|sshcommand|pager|editor|askpass|attributesfile|excludesfile|gitproxy|alternaterefscommand)|pager\..*|interactive\.difffilter|sequence\.editor|uploadpack\..*|url\..*)$/;

/** What holds where nobody sets it: git's own program, or nothing. */
const unset: Readonly<Record<string, string>> = {
  'gpg.program': 'gpg',
  'gpg.openpgp.program': 'gpg',
  'gpg.x509.program': 'gpgsm',
  'gpg.ssh.program': 'ssh-keygen',
  'gpg.mintrustlevel': 'undefined',
};

const known = new Map<string, readonly string[]>();

/**
 * For each such setting of the repository the one that holds in its place, as `name=value`.
 *
 * @param root where git runs; what was found there is kept until the repository's settings are written anew
 */
export function settingsInPlaceOfTheRepositorys(root: string): readonly string[] {
  const key = [root, process.env['GIT_CONFIG_GLOBAL'], writtenAt(join(root, '.git/config'))].join('\0');
  const found = known.get(key) ?? replaced(listed(root));
  known.set(key, found);
  return found;
}

function writtenAt(file: string): number | undefined {
  try {
    return statSync(file).mtimeMs;
  } catch {
    return undefined;
  }
}

interface Entry {
  scope: string;
  name: string;
  value: string;
}

/** For tests: what is to hold, given all settings in the order in which git reads them. */
export function replaced(entries: readonly Entry[]): string[] {
  const ofRepository = ({ scope }: Entry) => scope === 'local' || scope === 'worktree';
  const names = new Set(entries.filter((e) => ofRepository(e) && decides.test(lower(e.name))).map((e) => e.name));
  return [...names].map((name) => {
    const own = entries.filter((e) => !ofRepository(e) && lower(e.name) === lower(name)).at(-1)?.value;
    const value = own ?? unset[lower(name)] ?? (/\.required$/i.test(name) ? 'false' : '');
    return `${name}=${value}`;
  });
}

/** Names differ in their middle part by letter case, in the others they do not. */
const lower = (name: string): string => {
  const [first, last] = [name.indexOf('.'), name.lastIndexOf('.')];
  return first === last
    ? name.toLowerCase()
    : `${name.slice(0, first).toLowerCase()}${name.slice(first, last)}${name.slice(last).toLowerCase()}`;
};

/** All settings with the scope that each comes from; none where git cannot be asked, which the next question will say. */
function listed(root: string): Entry[] {
  const run = spawnSync('git', ['-C', root, 'config', '--list', '--show-scope', '-z'], {
    env: environment(false),
    encoding: 'utf8',
    timeout: 1000 * patience(),
    killSignal: 'SIGKILL',
    maxBuffer: 2 ** 26,
  });
  const fields = (run.stdout ?? '').split('\0');
  const entries: Entry[] = [];
  for (let i = 0; i + 1 < fields.length; i += 2) {
    const [name, ...value] = fields[i + 1]!.split('\n');
    entries.push({ scope: fields[i]!, name: name!, value: value.join('\n') });
  }
  return entries;
}
