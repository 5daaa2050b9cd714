/** Where commands speak; tests hand in their own. */
export interface Io {
  stdout: (text: string) => void;
  stderr: (text: string) => void;
  /** Width of the terminal, when there is one. */
  columns?: number | undefined;
  colour: boolean;
  interactive: boolean;
  /** Settles when the user wants a command to end that would go on for ever. */
  ended?: Promise<unknown>;
}

/** Settles on Ctrl-C, or when the terminal or the system ends the command; a second time is not waited for. */
export function untilEnded(io: Io): Promise<unknown> {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  return (
    io.ended ?? Promise.race(signals.map((signal) => new Promise((resolve) => void process.once(signal, resolve))))
  );
}

export const exits = { clean: 0, findings: 1, usage: 2, machine: 3 } as const;
export type Exit = (typeof exits)[keyof typeof exits];

/** Whoever reads the output may have had enough (`| head`): then the command ends quietly. A disk that takes no more is told. */
function endWithOutput(): void {
  process.stderr.on('error', () => {});
  process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
    if (cause.code === 'EPIPE') process.exit(exits.clean);
    process.stderr.write(
      `the output could not be written: ${cause.message}\n  expected: a terminal, a pipe or a file on a disk with space left\n  to do: make space, or send it somewhere else\n`,
    );
    process.exit(exits.machine);
  });
}

export function terminal(): Io {
  endWithOutput();
  return {
    stdout: (text) => void process.stdout.write(text),
    stderr: (text) => void process.stderr.write(text),
    columns: process.stdout.isTTY ? process.stdout.columns : undefined,
    colour: process.stdout.isTTY === true && !process.env['NO_COLOR'] && !process.env['CI'],
    interactive: process.stdin.isTTY === true && process.stderr.isTTY === true && !process.env['CI'],
  };
}
