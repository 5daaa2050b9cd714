import matter from 'gray-matter';
import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, type ParsedNode, parseDocument } from 'yaml';
import { denseWords } from './dense-words.js';
import type { Problem, ProblemCode } from './problem.js';

/**
 * The only module that touches gray-matter. It is given engines that keep the text and run nothing, so that `---js`
 * frontmatter is refused; YAML is read with the failsafe schema (all scalars stay text) and with positions.
 */

export type Plain = string | Plain[] | { [key: string]: Plain | undefined };
export type Path = readonly (string | number)[];
export interface Range {
  line: number;
  column: number;
  endColumn: number;
}

export interface Frontmatter {
  /** A key without a value is there, with `undefined`: left out, but still a key that must be known. */
  data: { [key: string]: Plain | undefined };
  body: string;
  /** Line on which the body starts. */
  bodyLine: number;
  /** Range of the value at a path or, failing that, of the nearest key above it. */
  locate(path: Path, part?: 'key' | 'value'): Range;
  sourceLine(line: number): string;
}

const limits = { bytes: 256 * 1024, depth: 12, keys: 5_000, brackets: 50 };
const refuse = { parse: () => ({}), stringify: () => '' };
const engines = {
  yaml: { parse: (text: string) => ({ text }), stringify: () => '' },
  js: refuse,
  javascript: refuse,
  json: refuse,
};

/** Splits and reads a note. Problems carry the name of the file that was given. */
export function readFrontmatter(text: string, file: string): { value?: Frontmatter; problems: Problem[] } {
  const normal = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const lines = normal.split('\n');
  const fail = (code: ProblemCode, line: number, found: string, expected: string, hint?: string) => ({
    problems: [{ code, file, line, column: 1, found, expected, hint, source: lines[line - 1] }],
  });
  const language = matter.language(normal);
  if (!normal.startsWith('---')) {
    return fail(
      'frontmatter-missing',
      1,
      'no frontmatter',
      'a first line of `---` and then the measurements',
      'start the file with `---`, a `kind:` line and a closing `---`',
    );
  }
  if (language.raw.trim() !== '' && language.name !== 'yaml') {
    return fail(
      'frontmatter-language',
      1,
      `frontmatter marked as \`${language.name.slice(0, 40)}\``,
      'plain `---` (YAML); code in a note is never run',
      'remove the word after `---`',
    );
  }
  const split = matter(normal, { engines, language: 'yaml' });
  const source = ((split.data as { text?: string }).text ?? '').replace(/^\n/, '');
  const closed = lines.findIndex((line, i) => i > 0 && line.trimEnd() === '---');
  const astray = lines.findIndex((line, i) => i > 0 && (i < closed || closed === -1) && line.startsWith('---'));
  if (closed === -1) {
    return fail(
      'frontmatter-missing',
      1,
      'frontmatter that is not closed',
      'a line of `---` after the last measurement',
      'add a line with only `---`',
    );
  }
  if (astray !== -1) {
    return fail(
      'frontmatter-missing',
      astray + 1,
      'a line that begins with `---` and goes on',
      'a line of only `---` to close the frontmatter',
      'take the rest of the line away',
    );
  }
  if (source.length > limits.bytes) {
    return fail(
      'file-too-large',
      1,
      `frontmatter of ${Math.round(source.length / 1024)} KB`,
      `at most ${limits.bytes / 1024} KB`,
      'put long series in a table of the text below: `stops: { table: Brake stops }`',
    );
  }
  const body = lines.slice(closed + 1).join('\n');
  const dense = denseWords(body, file, closed + 2);
  if (dense) return { problems: [dense] };
  return readYaml(source, file, { firstLine: 2, lines, body, bodyLine: closed + 2 });
}

/** Reads a file that is YAML throughout. */
export function readYamlFile(text: string, file: string): { value?: Frontmatter; problems: Problem[] } {
  const normal = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  return readYaml(normal, file, { firstLine: 1, lines: normal.split('\n'), body: '', bodyLine: 1 });
}

function readYaml(
  source: string,
  file: string,
  at: { firstLine: number; lines: string[]; body: string; bodyLine: number },
) {
  const deep = tooDeep(source);
  if (deep !== undefined) {
    const line = source.slice(0, deep).split('\n').length + at.firstLine - 1;
    return {
      problems: [
        {
          code: 'yaml-depth' as const,
          file,
          line,
          column: 1,
          found: `brackets nested more than ${limits.brackets} deep`,
          expected: `at most ${limits.depth} levels`,
          source: at.lines[line - 1]?.slice(0, 200),
        },
      ],
    };
  }
  const counter = new LineCounter();
  const document = parseDocument(source, {
    schema: 'failsafe',
    lineCounter: counter,
    prettyErrors: false,
    strict: true,
    uniqueKeys: false,
  });
  const problems: Problem[] = [];
  const ranges = new Map<string, { key?: Range; value?: Range }>();
  const rangeOf = (from: number, to: number): Range => {
    const start = counter.linePos(from);
    const end = counter.linePos(Math.max(from, to));
    const width = at.lines[start.line + at.firstLine - 2]?.length ?? 0;
    // After a bracket that closes nothing, the reader of YAML counts beyond the end of the line.
    const column = Math.min(start.col, width + 1);
    const endColumn = end.line === start.line ? Math.min(end.col, width + 1) : width + 1;
    return { line: start.line + at.firstLine - 1, column, endColumn: Math.max(endColumn, column) };
  };
  const report = (code: ProblemCode, range: Range, found: string, expected: string, hint?: string) =>
    problems.push({ code, file, ...range, found, expected, hint, source: at.lines[range.line - 1] });

  for (const error of [...document.errors, ...document.warnings]) {
    const range = rangeOf(error.pos[0], error.pos[1]);
    report(
      'yaml',
      range,
      error.message.split('\n')[0]!.replace(/\.$/, ''),
      'readable YAML',
      yamlHint(at.lines[range.line - 1] ?? ''),
    );
  }
  let keys = 0;
  const plain = (node: ParsedNode | Node | null | undefined, path: string[]): Plain | undefined => {
    const range = node?.range ? rangeOf(node.range[0], node.range[1]) : { line: at.firstLine, column: 1, endColumn: 1 };
    ranges.set(path.join('\0'), { ...ranges.get(path.join('\0')), value: range });
    if (isAlias(node)) {
      report('yaml-alias', range, 'an alias', 'the value itself', 'write the value out; aliases are not read');
      return undefined;
    }
    if (path.length > limits.depth) {
      report('yaml-depth', range, 'values nested too deeply', `at most ${limits.depth} levels`);
      return undefined;
    }
    if (isScalar(node)) return String(node.value ?? '').trim();
    if (isSeq(node)) {
      return node.items.flatMap((item, i) => {
        const value = plain(item as Node, [...path, String(i)]);
        return value === undefined ? [] : [value];
      });
    }
    if (isMap(node)) {
      const entries: [string, Plain | undefined][] = [];
      const seen = new Set<string>();
      for (const pair of node.items) {
        if (++keys > limits.keys) break;
        const key = isScalar(pair.key) ? String(pair.key.value ?? '') : '';
        const keyNode = pair.key as Node | null;
        const below = [...path, key];
        if (keyNode?.range && seen.has(key))
          report(
            'yaml',
            rangeOf(keyNode.range[0], keyNode.range[1]),
            `the key \`${key.slice(0, 60)}\` a second time`,
            'each key once',
            'keep one of the two',
          );
        seen.add(key);
        if (keyNode?.range) ranges.set(below.join('\0'), { key: rangeOf(keyNode.range[0], keyNode.range[1]) });
        const value = plain(pair.value as Node | null, below);
        entries.push([key, value === '' ? undefined : value]);
      }
      return Object.fromEntries(entries);
    }
    return '';
  };
  const data = plain(document.contents, []);
  if (keys > limits.keys) {
    report(
      'file-too-large',
      { line: at.firstLine, column: 1, endColumn: 1 },
      `more than ${limits.keys} keys`,
      `at most ${limits.keys} keys in one file`,
    );
  }
  if (problems.length > 0) return { problems };
  if (data !== '' && (typeof data !== 'object' || Array.isArray(data))) {
    report('yaml', { line: at.firstLine, column: 1, endColumn: 1 }, 'no keys', 'lines such as `kind: engine`');
    return { problems };
  }
  const locate = (path: Path, part: 'key' | 'value' = 'value'): Range => {
    for (let n = path.length; n > 0; n--) {
      const known = ranges.get(path.slice(0, n).map(String).join('\0'));
      if (known)
        return (n === path.length && part === 'value' ? (known.value ?? known.key) : (known.key ?? known.value))!;
    }
    return { line: 1, column: 1, endColumn: 1 };
  };
  const value: Frontmatter = {
    data: data === '' || data === undefined ? {} : data,
    body: at.body,
    bodyLine: at.bodyLine,
    locate,
    sourceLine: (line) => at.lines[line - 1] ?? '',
  };
  return { value, problems };
}

/** Where brackets are nested deeper than any note needs, so that no reader of YAML has to find out by running out of stack. */
function tooDeep(source: string): number | undefined {
  let depth = 0;
  for (let i = 0; i < source.length; i++) {
    const c = source[i];
    if (c === '[' || c === '{') depth++;
    else if (c === ']' || c === '}') depth--;
    if (depth > limits.brackets) return i;
  }
  return undefined;
}

function yamlHint(line: string): string {
  if (/:\s*\[[^\]]*\]\s*\S/.test(line)) return "put a list of readings in quotes: '[2.48, 2.51, 2.50] mm'";
  if (/\t/.test(line)) return 'indent with spaces, not tabs';
  if (/:\s*["'`@%&*!|>]/.test(line)) return 'put the value in single quotes';
  return 'check the indentation, and put values with `: ` or `#` in quotes';
}
