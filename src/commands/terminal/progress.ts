import type { Io } from './io.js';

/** One line on the terminal that says how far the work is; silent when nobody watches. */
export function progressLine(io: Io): { say: (text: string) => void; end: () => void } {
  if (!io.interactive) return { say: () => {}, end: () => {} };
  let shown = false;
  return {
    say: (text) => {
      shown = true;
      io.stderr(`\r\u001b[2K${text}`);
    },
    end: () => {
      if (shown) io.stderr('\r\u001b[2K');
      shown = false;
    },
  };
}
