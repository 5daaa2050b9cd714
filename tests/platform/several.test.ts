import { setTimeout as after } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { several } from '../../src/platform/several.js';

it('gives results in the order of the items, does each once, and no more than four at a time', async () => {
  let [running, most] = [0, 0];
  const seen: number[] = [];
  const results = await several([30, 1, 20, 2, 10, 3, 0, 4], async (wait) => {
    seen.push(wait);
    most = Math.max(most, ++running);
    await after(wait);
    running -= 1;
    return wait * 2;
  });
  expect(results).toEqual([60, 2, 40, 4, 20, 6, 0, 8]);
  expect(seen).toHaveLength(8);
  expect(most).toBeLessThanOrEqual(4);
  expect(await several([], async () => 1)).toEqual([]);
});

it('fails as its work fails', async () => {
  await expect(several([1, 2, 3], async (n) => (n === 2 ? Promise.reject(new Error('second')) : n))).rejects.toThrow(
    'second',
  );
});
