import { onTestFinished } from 'vitest';
import { main } from '../../src/commands/main.js';

/** A command that goes on until it is ended, with what it has said so far. */
export function running(...args: string[]) {
  let [out, err, all] = ['', '', ''];
  let end = () => {};
  const ended = new Promise<void>((resolve) => (end = resolve));
  const code = main(args, {
    stdout: (t) => void ((out += t), (all += t)),
    stderr: (t) => void ((err += t), (all += t)),
    colour: false,
    interactive: false,
    ended,
  });
  const finish = async () => {
    end();
    return code;
  };
  onTestFinished(async () => void (await finish()));
  return {
    finish,
    out: () => out,
    err: () => err,
    /** Both, in the order in which it was said. */
    all: () => all,
    /** Waits until what it has said since `from` matches. */
    said: (pattern: RegExp, from = 0) =>
      until(
        () => pattern.exec(all.slice(from)),
        () => `${String(pattern)} in:\n${all.slice(from)}`,
      ),
  };
}

export async function until<T>(
  look: () => T | null | undefined | false | Promise<T | null | undefined | false>,
  what: () => string,
  patience = 40_000,
): Promise<T> {
  const from = Date.now();
  for (;;) {
    const found = await look();
    if (found) return found;
    if (Date.now() - from > patience) throw new Error(`waited in vain for ${what()}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
