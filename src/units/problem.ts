/** Why a text could not be read. The codes are closed, so that others can tell one from another. */
const quantityCodes = [
  'empty',
  'number',
  'decimal-comma',
  'range',
  'unit-missing',
  'unit-unknown',
  'dimension',
  'uncertainty',
  'readings',
  'direction',
  'designation',
] as const;

export interface QuantityProblem {
  code: (typeof quantityCodes)[number];
  found: string;
  expected: string;
  hint: string;
  /** Offsets in the text, start included and end excluded. */
  at: readonly [start: number, end: number];
}

/** What was found, for a message: short, and in quotes. */
export function quoted(text: string): string {
  const short = text.length > 40 ? `${text.slice(0, 39)}…` : text;
  return `“${short}”`;
}
