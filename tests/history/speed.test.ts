import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { readBlobs } from '../../src/history/git/blobs.js';
import { fileVersions } from '../../src/history/git/versions.js';
import { measuredText } from '../../src/history/measured.js';
import { valuesThroughTime } from '../../src/history/values.js';
import { history, note, type Snapshot, throwaway } from './throwaway.js';

/** 2,000 commits over 60 notes with 17 values each; every commit changes two values of one note. */
function longHistory(): Snapshot[] {
  const words = 'Cut, fitted, tacked and measured again before the next part covers it.\n'.repeat(12);
  const notes = Array.from({ length: 60 }, () => Array.from({ length: 17 }, (_, field) => `${field + 1}.0 mm`));
  return Array.from({ length: 2000 }, (_, index) => {
    const changed = notes[(index * 7) % 60] ?? [];
    if (index > 0)
      for (const field of [index % 17, (index * 5 + 1) % 17]) changed[field] = `${(index % 90) + 10}.${index % 10} mm`;
    const files = notes.flatMap((values, place) =>
      index > 0 && values !== changed
        ? []
        : [
            [
              `demo/notes/${String(place).padStart(3, '0')}.md`,
              note(
                {
                  kind: 'general',
                  title: `Note ${place}`,
                  ...Object.fromEntries(values.map((text, field) => [`value-${field}`, text])),
                },
                words,
              ),
            ],
          ],
    );
    return {
      parents: index === 0 ? [] : [index - 1],
      files: Object.fromEntries(files) as Record<string, string>,
      over: true,
    };
  });
}

it('reads 2,000 commits over 1,000 values in under 3 s of work', async () => {
  const repo = throwaway();
  history(repo, longHistory());
  const found = repo.place;

  const began = performance.now();
  const usedBefore = process.cpuUsage();
  const walked = await fileVersions(found, 'demo', { endings: ['.md'] });
  const afterWalk = performance.now();
  let parsed = 0;
  let parsing = 0;
  const parse = measuredText(new Map([...kinds].map(([id, kind]) => [id, kind.shape])));
  const all = await valuesThroughTime(
    walked,
    (text, path) => {
      const start = performance.now();
      parsed += 1;
      const fields = parse(text, path);
      parsing += performance.now() - start;
      return fields;
    },
    (ids) => readBlobs(found, ids),
  );
  const took = performance.now() - began;
  const { user, system } = process.cpuUsage(usedBefore);

  const plainBegan = performance.now();
  execFileSync('git', ['log', '-p', '--', 'demo'], { cwd: repo.dir, maxBuffer: Infinity });
  const plain = performance.now() - plainBegan;
  const events = all.fields.reduce((sum, { events: of }) => sum + of.length, 0);
  console.info(
    `${events} events of ${all.fields.length} values, ${parsed} notes parsed: ${took.toFixed(0)} ms (walk ${(afterWalk - began).toFixed(0)}, parsing ${parsing.toFixed(0)}); git log -p: ${plain.toFixed(0)} ms; ratio ${(took / plain).toFixed(1)}`,
  );

  expect(all.fields).toHaveLength(60 * 17);
  expect(parsed).toBeLessThanOrEqual(60 + 1999);
  // Time of the processor, since other work on the machine stretches the time of the clock.
  expect((user + system) / 1000).toBeLessThan(3000);
});
