import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { temporary } from '../history/throwaway.js';
import { sedge } from './demo.js';

interface Story {
  commits: { on: string; by: string; says: string; issue?: string }[];
}
interface Before {
  before: Record<string, { until: string; now: string; then: string }[]>;
}
interface Stood {
  asItStood: (path: string, text: string, day: string) => string | undefined;
  isTaken: (name: string, day: string) => boolean;
  paperOn: (name: string, day: string) => { date: string } | undefined;
}

// @ts-expect-error plain JavaScript
const { commits } = (await import('../../builds/make/history/story.mjs')) as Story;
// @ts-expect-error plain JavaScript
const { before } = (await import('../../builds/make/history/before.mjs')) as Before;
// @ts-expect-error plain JavaScript
const { asItStood, isTaken, paperOn } = (await import('../../builds/make/history/as-it-stood.mjs')) as Stood;

const texts = [
  'build.md',
  'limits.yaml',
  ...['notes', 'queries'].flatMap((part) => readdirSync(join(sedge, part)).map((file) => `${part}/${file}`)),
];
const dayOf = (issue: string): string => commits.find((c) => c.issue === issue)!.on.slice(0, 10);

/** The build as it was at the end of a day, in a folder of its own. */
async function onDay(day: string) {
  const folder = join(temporary(), 'sedge');
  for (const path of texts) {
    const text = asItStood(path, readFileSync(join(sedge, path), 'utf8'), day);
    if (text === undefined) continue;
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  for (const [part, there] of [
    ['photos', isTaken],
    ['papers', paperOn],
  ] as const) {
    for (const file of readdirSync(join(sedge, part)))
      if (there(file.slice(0, -4), day)) cpSync(join(sedge, part, file), join(folder, part, file));
  }
  const loaded = await load(folder);
  if (!('build' in loaded)) throw new Error(loaded.problems.map((p) => `${p.file}:${p.line} ${p.found}`).join('\n'));
  return {
    folder,
    outcome: (item: string) =>
      [...new Set(loaded.evaluation.findings.filter((f) => f.item === item).map((f) => f.outcome))].sort(),
  };
}

describe('the history of the demo', () => {
  it('changes only what stands in the notes, and leaves every file as it is at the end', () => {
    for (const path of texts)
      expect(asItStood(path, readFileSync(join(sedge, path), 'utf8'), dayOf('B')), path).toBe(
        readFileSync(join(sedge, path), 'utf8'),
      );
    for (const [path, changes] of Object.entries(before))
      for (const { now } of changes)
        expect(readFileSync(join(sedge, path), 'utf8').split(now).length, `${path}: ${now}`).toBe(2);
  });
  it('goes forward in time', () => {
    const times = commits.map((c) => Date.parse(c.on));
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });
  it.each([...new Set(commits.map((c) => c.on.slice(0, 10)))].filter((_, i) => i % 4 === 0))(
    'can be read as it stood on %s',
    async (day) => {
      await onDay(day);
    },
  );
  it('has a balance of the brakes that friction leaves open unladen in both issues, and a question that the second one settles', async () => {
    const a = await onDay(dayOf('A'));
    expect(new Set(a.outcome('brakes.front-first'))).toEqual(new Set(['inconclusive']));
    expect(a.outcome('query')).toEqual([]);
    const b = await onDay(dayOf('B'));
    expect(new Set(b.outcome('brakes.front-first'))).toEqual(new Set(['conforms', 'inconclusive']));
    expect(b.outcome('query')).toEqual(['answered']);
  });
});
