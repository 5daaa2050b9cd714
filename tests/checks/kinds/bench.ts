import { loadCodes } from '../../../src/checks/codes/codes.js';
import { readLimits } from '../../../src/checks/codes/own-copy.js';
import { type Evaluation, examine } from '../../../src/checks/engine/examine.js';
import { type Finding, type Result, resultOf } from '../../../src/checks/engine/finding.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import type { Problem } from '../../../src/project/problem.js';
import { readBuild } from '../../../src/project/read.js';
import { folderWith } from '../../project/scratch.js';

/** What stands around the note that is tried: lines of frontmatter, and further files of the build. */
export interface Around {
  /** Lines under `vehicle:`, such as `registration: SA`; a later one stands before those that are usual here. */
  vehicle?: Readonly<Record<string, string>>;
  /** Lines under `original:`. */
  original?: Readonly<Record<string, string>>;
  /** Further frontmatter of `build.md`, such as `load-cases:` with its items. */
  more?: string;
  /** Further notes by file name, without the dashes of the frontmatter. */
  notes?: Readonly<Record<string, string>>;
  /** Photos and papers by path; their content does not matter. */
  files?: readonly string[];
  /** Text of `limits.yaml`. */
  limits?: string;
}

/** A finding with how it came out, whatever its class calls it. */
type Found = Finding & { result: Result };

export interface Bench extends Omit<Evaluation, 'findings'> {
  findings: Found[];
  /** The findings of one item, of all notes, in their order. */
  all: (item: string, subject?: string) => Found[];
  /** The one finding of an item; more or fewer than one are an error of the test. */
  one: (item: string, subject?: string) => Found;
  /** How it came out, whatever its class calls it; what waits for the certifier is unclear. */
  result: (item: string, subject?: string) => Result;
}

const lines = (of: Readonly<Record<string, string>>) =>
  Object.entries(of)
    .map(([key, value]) => `  ${key}: ${value}`)
    .join('\n');
const usualVehicle = { make: 'Examplia', model: 'One', built: '1984-05', category: 'MA', registration: 'VIC' };

/** Reads the note through the real reader, and checks it with the shipped codes. */
export async function examineNote(kind: string, frontmatter: string, around: Around = {}): Promise<Bench> {
  const { build, problems } = tryNote(kind, frontmatter, around);
  if (!build)
    throw new Error(
      problems.map((p) => `${p.file}:${p.line}:${p.column} found ${p.found}, expected ${p.expected}`).join('\n'),
    );
  const codes = await loadCodes('AU');
  const limits = readLimits(build.limits, new Set(codes.items.keys()));
  const ownItems = limits.items.map((item) => ({ ...item, code: 'own', country: '' }));
  const evaluation = examine(build, { codes, kinds, ownFigures: limits.figures, ownItems });
  const findings = evaluation.findings.map(
    (f): Found => ({ ...f, result: f.waits === undefined ? resultOf(f.outcome) : 'unclear' }),
  );
  const all = (item: string, subject?: string) =>
    findings.filter((f) => f.item === item && (subject === undefined || f.subject === subject));
  const one = (item: string, subject?: string) => {
    const found = all(item, subject);
    if (found.length !== 1)
      throw new Error(
        `${found.length} findings on ${item} ${subject ?? ''}, expected one; subjects: ${all(item)
          .map((f) => f.subject)
          .join(', ')}`,
      );
    return found[0]!;
  };
  return { ...evaluation, findings, all, one, result: (item, subject) => one(item, subject).result };
}

/** The problems of a note that cannot be read. */
export function problemsOf(kind: string, frontmatter: string, around: Around = {}): Problem[] {
  return tryNote(kind, frontmatter, around).problems;
}

function tryNote(
  kind: string,
  frontmatter: string,
  { vehicle, original, more = '', notes = {}, files = [], limits }: Around,
) {
  const build = `---\ntitle: A car made up for tests\nvehicle:\n${lines({ ...usualVehicle, ...vehicle })}\noriginal:\n${lines({ mass: '1100 kg', ...original })}\ncertifier: { name: R. Ansell (invented) }\n${more}\n---\n`;
  const folder = folderWith({
    'build.md': build,
    'notes/010-tried.md': `---\nkind: ${kind}\ntitle: The note that is tried\n${frontmatter}\n---\n\nWords.\n`,
    ...Object.fromEntries(
      Object.entries(notes).map(([name, text]) => [
        `notes/${name}`,
        `---\ntitle: Another note\n${text}\n---\n\nWords.\n`,
      ]),
    ),
    ...Object.fromEntries(files.map((path) => [path, 'content'])),
    ...(limits === undefined ? {} : { 'limits.yaml': limits }),
  });
  return readBuild(folder, new Map([...kinds].map(([id, k]) => [id, k.shape])), folder);
}
