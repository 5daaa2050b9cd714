import { devNull } from 'node:os';

/** Settings that change what git prints or runs. Those that say who signs, and how, stay the user's. */
export const fixedSettings = [
  'core.quotepath=off',
  'color.ui=false',
  'i18n.logOutputEncoding=UTF-8',
  'log.showSignature=false',
  'log.showRoot=true',
  'log.follow=false',
  'core.fsmonitor=false',
  `core.hooksPath=${devNull}`,
  'protocol.allow=never',
  'advice.graftFileDeprecated=false',
];

/** A hook or an alias that starts us sets GIT_DIR and the like, which would point every question at another repository. */
const kept =
  /^GIT_(CONFIG_(GLOBAL|SYSTEM|NOSYSTEM|COUNT|KEY_\d+|VALUE_\d+)|AUTHOR_|COMMITTER_|EXEC_PATH|CEILING_DIRECTORIES|DISCOVERY_)/;

/** Environment of a git process whose output does not depend on the user's language, and that fetches and asks nothing. */
export function environment(magicPathspecs: boolean): NodeJS.ProcessEnv {
  const env: NodeJS.ProcessEnv = {};
  for (const [name, value] of Object.entries(process.env)) {
    if (!name.startsWith('GIT_') || kept.test(name)) env[name] = value;
  }
  return {
    ...env,
    LC_ALL: 'C',
    GIT_PAGER: 'cat',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    GIT_NO_LAZY_FETCH: '1',
    // Replacement objects and grafts would show another history than the one that was signed.
    GIT_NO_REPLACE_OBJECTS: '1',
    GIT_GRAFT_FILE: devNull,
    ...(magicPathspecs ? {} : { GIT_LITERAL_PATHSPECS: '1' }),
  };
}

/** In seconds: so long git may take before it counts as hanging. `GUSSET_GIT_SECONDS` gives another. */
export const patience = (): number => Number(process.env['GUSSET_GIT_SECONDS'] || 120);
