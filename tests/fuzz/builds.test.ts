import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { loadCodes } from '../../src/checks/codes/codes.js';
import { memory } from '../../src/project/memory.js';
import { folderWith } from '../project/scratch.js';
import { type Block, base, closed, type Files, isBlock, opened, prepare, put } from './bases.js';
import { anyMutation, type Known, learn, type Mutation, mutations } from './mutations.js';
import { breachesOfAccepted, breachesOfRefusal, earnedByUncertainty } from './oracles.js';
import { random } from './random.js';

/**
 * Whole builds, changed at random within the forms of their fields and outside of them: each is read, examined and composed, or
 * refused with places inside its files; never both, never a crash. `npm run fuzz` looks for new cases with the seed of the
 * moment; FUZZ_SEED takes a seed up again. What fails is cut down to the changes that it needs and told.
 */

const seconds = Number(process.env['FUZZ_SECONDS'] ?? 10);
const runs = Number(process.env['FUZZ_RUNS'] ?? 40);
const long = process.env['FUZZ_RUNS'] !== undefined;
const first = Number(process.env['FUZZ_SEED'] ?? (long ? Date.now() % 1e9 : 20260314));

interface Change {
  name: string;
  mutation: Mutation;
  seed: number;
}
interface Told {
  accepted: boolean;
  breaches: readonly string[];
  codes: readonly string[];
}

/** Where a breach is the same one in another place. */
const sort = (breach: string): string =>
  breach
    .split('\n')[0]!
    .replace(/[\d.]+/g, '0')
    .replace(/`[^`]*`/g, '`…`')
    .slice(0, 70);

it(
  'are read and composed, or refused with places inside their files',
  async () => {
    const folder = folderWith({});
    prepare(folder);
    const codes = await loadCodes('AU');
    const recall = memory();
    const counts = { tried: 0, accepted: 0, refused: 0, composed: 0, slowest: 0, slowestSeed: 0 };
    const taken = new Map<string, [tried: number, accepted: number]>();
    const refusals = new Map<string, number>();
    const failures = new Map<string, string>();

    const judge = async (files: Files, seed: number): Promise<Told> => {
      put(files, folder);
      const r = random(seed ^ 0x5bd1e995);
      try {
        const loaded = await load(folder, folder);
        if (!('build' in loaded))
          return {
            accepted: false,
            breaches: breachesOfRefusal(loaded.problems, folder),
            codes: loaded.problems.map((p) => p.code),
          };
        const composed = r.chance(0.4);
        if (composed) counts.composed++;
        const breaches = await breachesOfAccepted(loaded, folder, files, { recall, composed });
        const worse = r.chance(0.3) && coarser(files);
        if (worse) {
          put(worse, folder);
          const later = await load(folder, folder);
          if ('build' in later) breaches.push(...earnedByUncertainty(loaded, later));
        }
        return { accepted: true, breaches, codes: [] };
      } catch (error) {
        const { stack, message } = error as Error;
        const where = /\/(src\/[^)\n]*)/.exec(stack ?? '')?.[1] ?? '';
        return { accepted: false, breaches: [`thrown at ${where}: ${message}`], codes: [] };
      }
    };

    const before = (seed: number): Files => base(random(seed));
    const changed = async (seed: number, changes: readonly Change[]): Promise<Files> => {
      const files = before(seed);
      let findings: Known['findings'] = [];
      if (changes.some((c) => c.name === 'concession' || c.name === 'judgement')) {
        put(files, folder);
        const loaded = await load(folder, folder);
        if ('build' in loaded) ({ findings } = loaded.evaluation);
      }
      for (const { mutation, seed: own } of changes) mutation(random(own), files, { codes, findings });
      return files;
    };

    for (let n = 0; n < 8; n++) learn(before(n));
    const started = Date.now();
    for (let n = 0; n < runs && Date.now() - started < seconds * 1000; n++) {
      const seed = first + n;
      const r = random(seed ^ 0x9e3779b9);
      const changes = Array.from({ length: 1 + r.below(3) }, () => ({ ...anyMutation(r), seed: r.below(2 ** 31) }));
      const from = Date.now();
      const told = await judge(await changed(seed, changes), seed);
      const took = Date.now() - from;
      counts.tried++;
      counts[told.accepted ? 'accepted' : 'refused']++;
      if (took > counts.slowest) [counts.slowest, counts.slowestSeed] = [took, seed];
      for (const { name } of changes) {
        const [t, a] = taken.get(name) ?? [0, 0];
        taken.set(name, [t + 1, a + Number(told.accepted)]);
      }
      for (const code of new Set(told.codes)) refusals.set(code, (refusals.get(code) ?? 0) + 1);
      for (const breach of told.breaches) {
        if (failures.has(sort(breach))) continue;
        failures.set(sort(breach), '');
        let needed = changes;
        for (const one of changes) {
          const fewer = needed.filter((c) => c !== one);
          const still = (await judge(await changed(seed, fewer), seed)).breaches.some((b) => sort(b) === sort(breach));
          if (still) needed = fewer;
        }
        const files = await changed(seed, needed);
        failures.set(sort(breach), `seed ${seed}, ${needed.map((c) => c.name).join(', ') || 'as it was'}: ${breach}`);
        const kept = process.env['FUZZ_KEEP'];
        if (kept !== undefined) keep(join(kept, String(seed)), files, [breach]);
      }
    }
    const share = (counts.accepted / counts.tried) * 100;
    console.log(
      `builds tried: ${counts.tried} from seed ${first}, accepted ${counts.accepted} (${share.toFixed(0)} %), refused ${counts.refused}, composed ${counts.composed}, slowest ${counts.slowest} ms (seed ${counts.slowestSeed})`,
    );
    if (long)
      console.log(
        `accepted by change: ${mutations.map(([name]) => `${name} ${taken.get(name)?.[1] ?? 0}/${taken.get(name)?.[0] ?? 0}`).join(', ')}\nrefused for: ${[...refusals].map(([code, count]) => `${code} ${count}`).join(', ')}`,
      );
    expect([...failures.values()]).toEqual([]);
    expect(share).toBeGreaterThan(100 / 3);
  },
  24 * 3600 * 1000,
);

/** The same build with each instrument, and each stated ±, three times as uncertain. */
function coarser(files: Files): Files | undefined {
  const build = opened(files.get('build.md') ?? '', 'build.md');
  const instruments = build?.data['instruments'];
  if (!build || !Array.isArray(instruments)) return undefined;
  const worse = instruments.map((one) => {
    const [, number, unit] = isBlock(one) ? (/^([\d.]+) (.*)$/.exec(String(one['uncertainty'])) ?? []) : [];
    return number === undefined ? one : { ...(one as Block), uncertainty: `${Number(number) * 3} ${unit}` };
  });
  const thrice = ([path, text]: [string, string]): [string, string] =>
    path.startsWith('notes/')
      ? [path, text.replace(/± (\d+(?:\.\d+)?)/gu, (_, u: string) => `± ${Number(u) * 3}`)]
      : [path, text];
  return new Map([...files].map(thrice)).set(
    'build.md',
    closed({ ...build, data: { ...build.data, instruments: worse } }, 'build.md'),
  );
}

function keep(folder: string, files: Files, breaches: readonly string[]): void {
  mkdirSync(folder, { recursive: true });
  for (const [path, text] of [...files, ['breaches.txt', breaches.join('\n')] as const]) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}
