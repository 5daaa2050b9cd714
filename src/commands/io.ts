/** Where commands speak; tests hand in their own. */
export interface Io {
  stdout: (text: string) => void;
  stderr: (text: string) => void;
  /** Width of the terminal, when there is one. */
  columns?: number | undefined;
  colour: boolean;
  interactive: boolean;
}

export const exits = { clean: 0, findings: 1, usage: 2, machine: 3 } as const;
export type Exit = (typeof exits)[keyof typeof exits];

export function terminal(): Io {
  return {
    stdout: (text) => void process.stdout.write(text),
    stderr: (text) => void process.stderr.write(text),
    columns: process.stdout.isTTY ? process.stdout.columns : undefined,
    colour: process.stdout.isTTY === true && !process.env['NO_COLOR'] && !process.env['CI'],
    interactive: process.stdin.isTTY === true && process.stderr.isTTY === true && !process.env['CI'],
  };
}
