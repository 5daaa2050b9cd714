import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { packageFile } from '../../platform/package-file.js';
import type { Frontmatter, Path } from '../../project/frontmatter.js';
import type { Problem } from '../../project/problem.js';
import type { Code, Fact, Item, NoteKind } from './item.js';
import type { Basis } from './limit.js';

/** An item with the code that it stands in. */
export type CodeItem = Item & { code: string; country: string };

interface Link {
  item: CodeItem;
  because: string;
  basis: Basis;
}

export interface Codes {
  codes: readonly Code[];
  items: ReadonlyMap<string, CodeItem>;
  /** Facts that the codes use beside those that every build has. */
  facts: ReadonlyMap<string, Fact>;
  raisedBy(kind: NoteKind): readonly CodeItem[];
  leadsTo(id: string): readonly Link[];
  ledFrom(id: string): readonly Link[];
}

/** A code of practice that cannot be used; every problem says where. */
export class CodeError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => `${p.file}:${p.line}:${p.column} found ${p.found}, expected ${p.expected}`).join('\n'));
    this.problems = problems;
  }
}

interface ReadFile {
  file: string;
  code: Code;
  front?: Frontmatter | undefined;
}

/** What the build step keeps of each file, so that reading YAML is left to files that have changed since. */
export type Compiled = Readonly<Record<string, { sha256: string; code: Code }>>;

const folder = 'src/checks/codes';
export const compiledFile = packageFile('dist/checks/codes.json');

let loading: Promise<ReadFile[]> | undefined;

/**
 * The codes of practice that are shipped, of one country (`AU`) or of all.
 *
 * @throws CodeError with file, line and column of every problem
 */
export async function loadCodes(country?: string): Promise<Codes> {
  loading ??= readFiles(fileURLToPath(packageFile(folder)));
  const files = await loading;
  return assemble(country === undefined ? files : files.filter(({ code }) => code.country === country));
}

/** Reads a folder of codes in the order of the file names; what is compiled is taken as it is. @throws CodeError */
export async function readFiles(directory: string, compiledAt: URL = compiledFile): Promise<ReadFile[]> {
  const [names, compiled] = await Promise.all([readdir(directory), readCompiled(compiledAt)]);
  const files = names.filter((name) => name.endsWith('.yaml')).sort();
  const read = await Promise.all(
    files.map(async (name) => {
      const text = await readFile(`${directory}/${name}`, 'utf8');
      const known = compiled[name];
      if (known?.sha256 === sha256(text)) return { file: name, code: known.code, problems: [] };
      const { readCode } = await import('./read-code.js');
      return { file: name, ...readCode(text, `${folder}/${name}`) };
    }),
  );
  const problems = read.flatMap((r) => r.problems);
  if (problems.length > 0) throw new CodeError(problems);
  return read.map(({ problems: _, ...r }) => r as ReadFile);
}

async function readCompiled(at: URL): Promise<Compiled> {
  const text = await readFile(at, 'utf8').catch(() => '{}');
  return JSON.parse(text) as Compiled;
}

export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** Joins codes: ids are unique over all of them, and every link lands. @throws CodeError */
export function assemble(files: readonly ReadFile[]): Codes {
  const items = new Map<string, CodeItem>();
  const facts = new Map<string, Fact>();
  const links: { from: string; to: string; because: string; basis: Basis; at: () => Problem }[] = [];
  const problems: Problem[] = [];
  for (const { file, code, front } of files) {
    for (const [name, fact] of Object.entries(code.facts ?? {})) {
      const other = facts.get(name);
      if (other && (other.unit !== fact.unit || other.says !== fact.says))
        problems.push(
          problemAt(file, front, ['facts', name], `a second meaning of \`${name}\``, 'one meaning for each name'),
        );
      facts.set(name, fact);
    }
    code.items.forEach((item, i) => {
      if (items.has(item.id))
        problems.push(
          problemAt(file, front, ['items', i, 'id'], `a second \`${item.id}\``, 'an id that no other item has'),
        );
      items.set(item.id, { ...within(item, code.jurisdiction), code: code.code, country: code.country });
      item['leads-to']?.forEach(({ item: to, because, basis }, j) => {
        const at = () =>
          problemAt(file, front, ['items', i, 'leads-to', j, 'item'], `a link to \`${to}\``, 'the id of an item');
        links.push({ from: item.id, to, because, basis, at });
      });
    });
  }
  problems.push(...links.filter((link) => !items.has(link.to)).map((link) => link.at()));
  if (problems.length > 0) throw new CodeError(problems);
  const all = [...items.values()];
  const follow = (id: string, here: 'from' | 'to', there: 'from' | 'to'): Link[] =>
    links
      .filter((link) => link[here] === id)
      .map((link) => ({ item: items.get(link[there])!, because: link.because, basis: link.basis }));
  return {
    codes: files.map((f) => f.code),
    items,
    facts,
    raisedBy: (kind) => all.filter((item) => item['raised-by'].includes(kind)),
    leadsTo: (id) => follow(id, 'from', 'to'),
    ledFrom: (id) => follow(id, 'to', 'from'),
  };
}

/** An item of a state's rules applies in that state, unless it says more narrowly where. */
function within(item: Item, jurisdiction: string | undefined): Item {
  if (jurisdiction === undefined || item.applies?.jurisdictions) return item;
  return { ...item, applies: { ...item.applies, jurisdictions: [jurisdiction] } };
}

function problemAt(name: string, front: Frontmatter | undefined, path: Path, found: string, expected: string): Problem {
  const range = front?.locate(path) ?? { line: 0, column: 0 };
  return { code: 'value', file: `${folder}/${name}`, ...range, found, expected };
}
