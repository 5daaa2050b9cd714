import { main } from '../../src/commands/main.js';

/** Runs a command as from a pipe, and gives what it said. */
export async function gusset(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const code = await main(args, {
    stdout: (t) => void (out += t),
    stderr: (t) => void (err += t),
    colour: false,
    interactive: false,
  });
  return { code, out, err };
}
