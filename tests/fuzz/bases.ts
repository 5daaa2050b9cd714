import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse, stringify } from 'yaml';
import { kinds } from '../../src/checks/kinds/index.js';
import { commonShape } from '../../src/project/common.js';
import { fieldTree } from '../../src/project/field-tree.js';
import { typicalData } from '../../src/project/typical.js';
import { buildSchema } from '../../src/project/vehicle.js';
import type { Random } from './random.js';

/** Builds to begin with: some notes of the demo, or notes of any kinds filled in as their schema says. */

/** Text of each file of a build, by its path. */
export type Files = Map<string, string>;
export type Tree = string | Tree[] | { [key: string]: Tree };
export type Block = { [key: string]: Tree };

const demo = 'builds/sedge';
const read = (path: string) => readFileSync(join(demo, path), 'utf8');
const names = (folder: string) => readdirSync(join(demo, folder)).sort();

export const photos = names('photos');
export const papers = names('papers');

/** A folder with the photos and papers of the demo, which no case changes. */
export function prepare(folder: string): void {
  for (const part of ['photos', 'papers']) cpSync(join(demo, part), join(folder, part), { recursive: true });
}

/** Puts the files of a case in place of those of the one before. */
export function put(files: Files, folder: string): void {
  for (const part of ['notes', 'queries', 'limits.yaml', 'build.md'])
    rmSync(join(folder, part), { recursive: true, force: true });
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

export const isBlock = (x: Tree | undefined): x is Block => typeof x === 'object' && x !== null && !Array.isArray(x);

/** Frontmatter as data, and the words; undefined where it cannot be read as YAML. */
export function opened(text: string, path: string): { data: Block; words: string } | undefined {
  const [front, words] = path.endsWith('.yaml')
    ? [text, '']
    : (/^---\n([^]*?)\n---\n([^]*)$/.exec(text)?.slice(1) ?? ['', '']);
  try {
    const data = tidy(parse(front!, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' }));
    return isBlock(data) ? { data, words: words! } : undefined;
  } catch {
    return undefined;
  }
}

const tidy = (x: unknown): Tree => {
  if (Array.isArray(x)) return x.map(tidy);
  if (typeof x === 'object' && x !== null)
    return Object.fromEntries(Object.entries(x).map(([key, value]) => [key, tidy(value)]));
  return String(x ?? '');
};

export function closed({ data, words }: { data: Block; words: string }, path: string): string {
  const front = stringify(data, { schema: 'failsafe', lineWidth: 0 });
  return path.endsWith('.yaml') ? front : `---\n${front}---\n${words}`;
}

export function base(r: Random): Files {
  return r.chance(0.5) ? someOfDemo(r) : filled(r);
}

/** The demo with some of its notes; what points to the others is left out. */
function someOfDemo(r: Random): Files {
  const all = names('notes');
  const from = r.below(all.length);
  const taken = all.slice(from, from + 1 + r.below(4));
  const other = (text: string) =>
    [...text.matchAll(/(\d{3})-[a-z0-9-]+\.md|\bnotes? (\d{3})\b/g)].some(
      ([, file, note]) => !taken.some((name) => name.startsWith(`${file ?? note}-`)),
    );
  const texts = taken.map((name) => read(`notes/${name}`)).join('\n');
  const leadsNowhere = (shown: string) =>
    other(shown) ||
    shown.includes('sheet ') ||
    [...shown.matchAll(/(?:photo|paper) ([a-z0-9-]+)/g)].some(
      ([, name]) => !new RegExp(`(?:id: |file: )${name}\\b`).test(texts),
    );
  const prune = (x: Tree): Tree => {
    if (Array.isArray(x)) return x.filter((one) => typeof one !== 'string' || !other(one)).map(prune);
    if (!isBlock(x)) return x;
    return Object.fromEntries(
      Object.entries(x)
        .filter(([key, value]) => !(key === 'shown' && typeof value === 'string' && leadsNowhere(value)))
        .map(([key, value]) => [key, prune(value)]),
    );
  };
  const files: Files = new Map([
    ['build.md', read('build.md')],
    ['limits.yaml', read('limits.yaml')],
  ]);
  for (const name of taken) {
    const path = `notes/${name}`;
    const { data, words } = opened(read(path), path)!;
    const kept = words
      .split('\n\n')
      .map((part) => part.replace(/\[([^\]]*)\]\(([^)]*)\)/g, (link, says, to) => (other(to) ? says : link)));
    files.set(path, closed({ data: prune(data) as Block, words: kept.join('\n\n') }, path));
  }
  for (const name of names('queries')) {
    const path = `queries/${name}`;
    const text = read(path);
    if (!other(text.replace(/about: (\[?)(\d{3})-[a-z-]*/g, 'about: $1note $2'))) files.set(path, text);
  }
  return files;
}

/** Notes of a few kinds, each with most of its fields filled in as its schema says, some left out. */
function filled(r: Random): Files {
  const thinned = (x: Tree, depth = 0): Tree => {
    if (Array.isArray(x)) return x.map((one) => thinned(one, depth + 1));
    if (!isBlock(x)) return x;
    return Object.fromEntries(
      Object.entries(x)
        .filter(([key]) => ['id', 'title', 'from'].includes(key) || !r.chance(0.15))
        .map(([key, value]) => [key, thinned(value, depth + 1)]),
    );
  };
  const build = opened(read('build.md'), 'build.md')!;
  const original = build.data['original'];
  if (r.chance(0.3) && isBlock(original)) build.data['original'] = thinned(original);
  const files: Files = new Map([['build.md', closed(build, 'build.md')]]);
  if (r.chance(0.5)) files.set('limits.yaml', read('limits.yaml'));
  const count = 1 + r.below(4);
  for (let n = 1; n <= count; n++) {
    const kind = r.one([...kinds.values()]);
    const path = `notes/${n}00-${kind.id}.md`;
    const { 'load-state': state, by, started } = commonShape;
    const whole = typicalData(fieldTree({ by, started, 'load-state': state, ...kind.shape })) as Tree;
    const data = thinned(whole) as Block;
    const loads = JSON.stringify(data).replaceAll('"load-case":"as described"', '"load-case":"link-pull"');
    files.set(
      path,
      closed(
        { data: { kind: kind.id, title: `A ${kind.id}`, ...(JSON.parse(loads) as Block) }, words: 'As described.\n' },
        path,
      ),
    );
  }
  return files;
}

/** Fields of each file's frontmatter. */
export function shapeOf(path: string, data: Block) {
  if (path === 'build.md') return buildSchema.shape;
  const kind = kinds.get(String(data['kind']));
  return kind ? { ...commonShape, ...kind.shape } : commonShape;
}
