import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export interface Step {
  by: { name: string; email: string };
  /** ISO 8601, as both dates of the commit. */
  on: string;
  says: string;
  /** Old path to new path; done before files are written. */
  moves?: Readonly<Record<string, string>>;
  /** Contents by path; `null` removes the file. */
  files?: Readonly<Record<string, string | Uint8Array | null>>;
}

/**
 * Adds a commit for each step to the repository in `directory`, and makes that repository first where there is none.
 * The same steps give the same ids. Gives the ids of the commits.
 */
export function makeHistory(directory: string, steps: readonly Step[]): string[] {
  mkdirSync(directory, { recursive: true });
  const git = (args: string[], step?: Step): string =>
    execFileSync('git', args, {
      cwd: directory,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...(step && names(step)) },
    }).trim();
  if (!existsSync(join(directory, '.git'))) git(['init', '--quiet', '--initial-branch=main']);
  return steps.map((step) => {
    for (const [from, to] of Object.entries(step.moves ?? {})) {
      mkdirSync(dirname(join(directory, to)), { recursive: true });
      renameSync(join(directory, from), join(directory, to));
    }
    for (const [path, content] of Object.entries(step.files ?? {})) {
      const file = join(directory, path);
      mkdirSync(dirname(file), { recursive: true });
      if (content === null) rmSync(file);
      else writeFileSync(file, content);
    }
    git(['add', '--all']);
    git(
      [
        '-c',
        'commit.gpgSign=false',
        '-c',
        'core.hooksPath=/dev/null',
        'commit',
        '--quiet',
        '--allow-empty',
        '--message',
        step.says,
      ],
      step,
    );
    return git(['rev-parse', 'HEAD']);
  });
}

function names({ by, on }: Step): Record<string, string> {
  return {
    GIT_AUTHOR_NAME: by.name,
    GIT_AUTHOR_EMAIL: by.email,
    GIT_AUTHOR_DATE: on,
    GIT_COMMITTER_NAME: by.name,
    GIT_COMMITTER_EMAIL: by.email,
    GIT_COMMITTER_DATE: on,
  };
}
