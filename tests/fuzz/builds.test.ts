import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { findingsJson } from '../../src/app/results/findings-json.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import { makeBuild } from '../bench/input.js';
import { folderWith } from '../project/scratch.js';

/** Whole builds, changed at random: each is either read and composed, or refused with places inside its files; never both, never a crash. */

const runs = Number(process.env['FUZZ_RUNS'] ?? 30);
let tried = 0;
let read = 0;
afterAll(() => console.log(`builds tried: ${tried}, of which ${read} could be read and composed`));

/** The page without what a note says in words, which may well contain a "-0". */
const figuresIn = (page: string, words: readonly string[]): string =>
  words.reduce((rest, word) => rest.replaceAll(word, ''), page.replace(/<p>[^]*?<\/p>/g, ' ').replace(/<[^>]*>/g, ' '));

const pieces = [
  '',
  ' ',
  '\n',
  '-',
  ':',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  '&a',
  '*a',
  '|',
  '1e999',
  '-0',
  '0 mm',
  'NaN mm',
  '1e-12 m',
  '1e9 N',
  '2,5 mm',
  '± 5 %',
  'unknown',
  '[2.4, 2.5] mm',
  '<script>',
  '](',
  '`',
  '\u202e',
  '\u0000',
  '𝒳',
  'ride',
  '9999999999999999999 mm',
  '../..',
];
const change = fc.record({
  at: fc.integer({ min: 0, max: 9999 }),
  length: fc.integer({ min: 0, max: 12 }),
  with: fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 8, unit: 'binary' })),
});

it(
  'are read and composed, or refused with places inside their files',
  async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: 4 }),
        fc.array(change, { minLength: 1, maxLength: 4 }),
        async (which, changes) => {
          tried++;
          const folder = folderWith({});
          makeBuild(folder, 4);
          const files = [
            join(folder, 'build.md'),
            ...readdirSync(join(folder, 'notes')).map((n) => join(folder, 'notes', n)),
          ];
          const file = files[which]!;
          let text = readFileSync(file, 'utf8').slice(0, 3000);
          for (const c of changes) {
            const at = c.at % text.length;
            text = text.slice(0, at) + c.with + text.slice(at + c.length);
          }
          writeFileSync(file, text);
          const loaded = await load(folder, folder);
          if (!('build' in loaded)) {
            expect(loaded.problems.length).toBeGreaterThan(0);
            for (const p of loaded.problems) {
              const lines =
                p.line === 0 ? [] : readFileSync(join(folder, p.file), 'utf8').replace(/\r\n?/g, '\n').split('\n');
              expect(p.line).toBeLessThanOrEqual(lines.length);
              expect(p.found).not.toBe('');
            }
            return;
          }
          read++;
          const { build, rules, evaluation } = loaded;
          const subject = {
            build,
            rules,
            evaluation,
            as: 'submission' as const,
            pictures: new Map(),
            paperPages: new Map(),
            identity: { tool: 'gusset 0', date: '2026-01-01', dirty: [], inputs: '' },
          };
          const words = build.notes.map((note) => note.data.title);
          const page = htmlPage(compose(subject, new Map()), subject, '');
          expect(figuresIn(page, words)).not.toMatch(/\bNaN\b(?! mm)|\bInfinity\b|[\s(=]-0(?:\.0*)?\b(?![.\d])/);
          expect(JSON.stringify(findingsJson(build, evaluation))).not.toMatch(/NaN|Infinity|null/);
        },
      ),
      {
        numRuns: runs,
        interruptAfterTimeLimit: Number(process.env['FUZZ_SECONDS'] ?? 20) * 1000,
        markInterruptAsFailure: false,
      },
    );
  },
  24 * 3600 * 1000,
);
