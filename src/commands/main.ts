import { tmpdir } from 'node:os';
import { refusedBySystem } from '../platform/failure.js';
import { didYouMean } from '../platform/near.js';
import type { Commands } from './terminal/command.js';
import { helpText, twoColumns } from './terminal/help.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { wrap } from './terminal/wrap.js';

/** Commands with what they are for; each is loaded only when it is asked for. */
export const commands: Commands = {
  start: { says: 'a new build folder', load: () => import('./start.js') },
  note: { says: 'the next note from the template of its kind', load: () => import('./note.js') },
  check: { says: 'findings in the terminal', load: () => import('./check.js') },
  plan: { says: 'before cutting: limits, baseline, hold points, questions', load: () => import('./plan.js') },
  calc: { says: 'one calculation sheet at the bench', load: () => import('./calc.js') },
  photos: { says: 'photos in from a phone', load: () => import('./photos.js') },
  view: { says: 'the document in a browser, following the files', load: () => import('./view.js') },
  print: { says: 'the document: HTML, PDF, findings and manifest', load: () => import('./print.js') },
  issue: { says: 'next issue letter: preconditions, print, manifest, tag', load: () => import('./issue.js') },
  history: {
    says: 'who changed which measured value when; what changed between two states',
    load: () => import('./history.js'),
  },
  verify: { says: 'does this document match the repository at its commit?', load: () => import('./verify.js') },
  completion: { says: 'a script with which a shell completes all this', load: () => import('./completion.js') },
};

function usage(width: number): string {
  return [
    'gusset <command> [options]',
    '',
    ...twoColumns(
      Object.entries(commands).map(([name, c]) => [name, c.says]),
      width,
    ),
    '',
    ...twoColumns(
      [
        ['gusset <command> --help', 'what a command takes, with examples'],
        ['gusset --version', 'name and version'],
      ],
      width,
    ),
    '',
    ...wrap(
      'Exit codes: 0 nothing against it; 1 findings against it, inconclusive, unconfirmed or missing; 2 notes that cannot be read or wrong usage; 3 something of the machine failed.',
      width,
      '',
    ),
    '',
  ].join('\n');
}

/** Arguments in, exit code out. */
export const main = (args: readonly string[], io: Io): Promise<Exit> =>
  obey(args, io).catch((error: unknown) => explain(error, args[0] ?? '', io));

async function obey(args: readonly string[], io: Io): Promise<Exit> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    io.stdout(usage(Math.min(io.columns ?? 100, 100)));
    return name === undefined ? exits.usage : exits.clean;
  }
  if (name === '--version') {
    const { tool } = await import('../platform/tool.js');
    io.stdout(`${tool}\n`);
    return exits.clean;
  }
  const entry = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!entry) {
    io.stderr(
      `found the command \`${name}\`, expected one of ${Object.keys(commands).join(', ')}; ${didYouMean(name, Object.keys(commands))}\n`,
    );
    return exits.usage;
  }
  const command = await entry.load();
  if (rest.includes('--help') || rest.includes('-h')) {
    io.stdout(helpText(command.form, io.columns));
    return exits.clean;
  }
  return command.run(rest, io, commands);
}

/** Wrong usage and failures of the machine are told in words; anything else is a fault of the program and shows its trace. */
function explain(error: unknown, command: string, io: Io): Exit {
  if (!(error instanceof Error)) return fault(String(error), io);
  const code = (error as { code?: string }).code ?? '';
  if (error.constructor.name === 'UsageError' || code.startsWith('ERR_PARSE_ARGS')) {
    io.stderr(`${error.message.replace(/\. To specify a positional.*$/s, '')}\nSee \`gusset ${command} --help\`.\n`);
    return exits.usage;
  }
  if (error.name === 'MachineFailure') {
    io.stderr(`${error.message}\n`);
    return exits.machine;
  }
  if (refusedBySystem(error)) {
    io.stderr(
      `${error.message}\n  expected: folders that can be read and written, with space left, the system's own for temporary files (${tmpdir()}) among them\n  to do: check space and permissions there, and give the command again; what was written before is still as it was\n`,
    );
    return exits.machine;
  }
  return fault(error.stack ?? error.message, io);
}

/** A fault of the program itself is never told as a finding. */
function fault(trace: string, io: Io): Exit {
  io.stderr(
    `Gusset itself failed, which is a fault of the program and not of the notes. Please report it with this trace:\n${trace}\n`,
  );
  return exits.machine;
}
