/** Something in a file that keeps it from being read as it was meant. Problems are collected, never thrown. */
export interface Problem {
  code: ProblemCode;
  /** Path as the user would write it, relative to where the command was given. */
  file: string;
  /** 1-based; 0 when the problem is the file itself. */
  line: number;
  column: number;
  endColumn?: number | undefined;
  found: string;
  expected: string;
  hint?: string | undefined;
  /** The line as it stands in the file, for the caret. */
  source?: string | undefined;
}

const problemCodes = [
  'build-missing',
  'build-empty',
  'file-unreadable',
  'file-unread',
  'file-too-large',
  'file-encoding',
  'file-unread',
  'frontmatter-missing',
  'frontmatter-language',
  'yaml',
  'yaml-alias',
  'yaml-depth',
  'key-unknown',
  'key-spelling',
  'obsolete',
  'format',
  'kind-unknown',
  'value',
  'quantity',
  'designation',
  'id-duplicate',
  'name-duplicate',
  'reference-missing',
  'path-outside',
  'photo-missing',
  'photo-broken',
  'paper-missing',
  'paper-refused',
  'link-missing',
  'character',
  'expression',
] as const;
export type ProblemCode = (typeof problemCodes)[number];

/** In the order in which a reader of the files meets them. */
export function inReadingOrder(problems: readonly Problem[]): Problem[] {
  return [...problems].sort(
    (a, b) => a.file.localeCompare(b.file) || a.line - b.line || a.column - b.column || a.code.localeCompare(b.code),
  );
}
