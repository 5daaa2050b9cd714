import { fstatSync, writeSync } from 'node:fs';
import { MachineFailure, wordsOf } from '../../platform/failure.js';
import { endBy } from '../../platform/interrupt.js';

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

export function terminal(): Io {
  return {
    stdout: speaker(process.stdout, 1),
    stderr: speaker(process.stderr, 2),
    columns: process.stdout.isTTY ? process.stdout.columns : undefined,
    colour: process.stdout.isTTY === true && !process.env['NO_COLOR'] && !process.env['CI'],
    interactive: process.stdin.isTTY === true && process.stderr.isTTY === true && !process.env['CI'],
  };
}

const unwritten = (cause: unknown) =>
  new MachineFailure({
    found: `the output could not be written: ${wordsOf(cause)}`,
    expected: 'a terminal, a pipe or a file on a disk with space left',
    todo: 'make space, or send it somewhere else',
    cause,
  });

/** Writes all of a text, or throws MachineFailure where the disk takes no more; whoever reads no more from a pipe ends the command quietly. */
function speaker(stream: NodeJS.WriteStream, descriptor: 1 | 2): (text: string) => void {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return endBy('SIGPIPE');
    if (stream !== process.stderr) process.stderr.write(`${unwritten(error).message}\n`);
    process.exit(exits.machine);
  });
  const state = fstatSync(descriptor);
  if (!state.isFile() && (stream.isTTY || !state.isCharacterDevice())) return (text) => void stream.write(text);
  // A disk that is nearly full takes a part of a text without a word.
  return (text) => {
    try {
      for (let left = Buffer.from(text); left.length > 0; ) left = left.subarray(writeSync(descriptor, left));
    } catch (cause) {
      throw unwritten(cause);
    }
  };
}
