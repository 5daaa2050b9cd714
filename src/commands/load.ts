import { checkLinks } from '../build/links.js';
import type { Build } from '../build/model.js';
import { inReadingOrder, type Problem } from '../build/problem.js';
import { readBuild, type KindShapes } from '../build/read.js';
import { loadCodes, type CodeItem } from '../checks/codes.js';
import type { Rules } from '../checks/examine.js';
import { kinds } from '../checks/kinds/index.js';
import { readLimits } from '../checks/own-copy.js';
import { queryProblems } from '../checks/queries.js';

/** What each kind of note measures. */
export const shapes: KindShapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));

/** A build with the rules that hold for it, or all that keeps it from being read. Files are shown relative to `from`. */
export async function load(folder: string, from = process.cwd()): Promise<{ build: Build; rules: Rules; problems: [] } | { problems: Problem[] }> {
  const codes = await loadCodes('AU');
  const read = readBuild(folder, shapes, from);
  if (!read.build) return { problems: read.problems };
  const limits = readLimits(read.build.limits, new Set(codes.items.keys()));
  const items = new Set([...codes.items.keys(), ...limits.items.map((i) => i.id)]);
  const problems = inReadingOrder([...limits.problems, ...checkLinks(read.build), ...queryProblems(read.build, items)]);
  if (problems.length > 0) return { problems };
  const own = limits.items.map((item): CodeItem => ({ ...item, code: 'own', country: '' }));
  return { build: read.build, rules: { codes, kinds, ownFigures: limits.figures, ownItems: own }, problems: [] };
}
