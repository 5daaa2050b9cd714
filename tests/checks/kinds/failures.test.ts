import { describe, expect, it } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { failures } from '../../../src/checks/kinds/parts/failures.js';

const items = new Map((await loadCodes()).codes.flatMap(({ items: of }) => of).map((item) => [item.id, item]));

it('knows every kind of work but the one that has no subject of its own', () => {
  expect(Object.keys(failures).sort()).toEqual([...kinds.keys()].filter((id) => id !== 'general').sort());
});

describe.each(Object.entries(failures))('what can fail in %s', (kind, known) => {
  it('is told with an effect, and once', () => {
    expect(known.length).toBeGreaterThanOrEqual(2);
    expect(new Set(known.map((f) => f.fails)).size).toBe(known.length);
    for (const { fails, effect } of known) expect(`${fails} ${effect}`).toMatch(/^\S.*[^.\s]$/);
  });

  it.each(known.map((f) => [f.fails, f]))(
    '%s: is guarded against by items that such a note raises',
    (_, { guards }) => {
      expect(guards.length).toBeGreaterThan(0);
      expect(new Set(guards).size).toBe(guards.length);
      const raised = guards.map((id) => items.get(id)?.['raised-by']);
      expect(guards.filter((id) => !items.has(id))).toEqual([]);
      expect(raised.some((by) => by!.includes(kind as never))).toBe(true);
    },
  );
});
