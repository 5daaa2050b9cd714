import { describe, expect, it } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { examineNote } from '../kinds/bench.js';

/** A photo beside a no shows nothing that is asked for: the builder says that it does not. */
const { items } = await loadCodes('AU');
const asked = [...items.values()].flatMap((item) =>
  item.kind === 'evidence' && item['raised-where'] === undefined ? [{ item, kind: item['raised-by'][0]! }] : [],
);
const proofs = async (id: string, kind: string, answer: string) => {
  const is = items.get(id)!;
  const file = is.kind === 'evidence' && is.evidence.includes('photo') ? 'photos' : 'papers';
  const bench = await examineNote(
    kind,
    `${file}:\n  - { file: a.jpg, shows: what is seen, proves: ["${id} all"]${file === 'papers' ? ', dated: 2026-03-20' : ''} }\nanswers: { ${id}: "${answer}" }`,
    { files: [`${file}/a.jpg`] },
  );
  return bench.all(id).map((f) => f.outcome);
};

describe('a no beside a photo or document', () => {
  it('of every item that asks for one is not taken for seen, whatever is said after it', {
    timeout: 120_000,
  }, async () => {
    const seen: string[] = [];
    let shown = 0;
    for (const { item, kind } of asked) {
      if ((await proofs(item.id, kind, 'no, the marking is missing')).includes('seen')) seen.push(item.id);
      if ((await proofs(item.id, kind, 'yes')).includes('seen')) shown += 1;
    }
    expect(seen).toEqual([]);
    expect(shown).toBeGreaterThan(asked.length / 2);
  });

  const [first] = asked.filter(({ item }) => item.kind === 'evidence' && item.evidence.includes('photo'));
  it.each(['no', 'No', 'no: it is ground off', 'No. It is ground off', 'not yet', 'missing', 'none'])(
    '`%s`: not shown, and the words are printed',
    async (answer) => {
      expect(await proofs(first!.item.id, first!.kind, answer)).toEqual(['not-shown']);
    },
  );

  it.each(['yes', 'no leaks, see the photo', 'nothing loose', 'both sides'])('`%s` is no no', async (answer) => {
    expect(await proofs(first!.item.id, first!.kind, answer)).toEqual(['seen']);
  });
});

it.each([
  ['yes', 'seen'],
  ['no, the gauge was not in', 'not-shown'],
])('a hold point that serves an item: answered `%s` it is %s', async (answer, outcome) => {
  const bench = await examineNote(
    'general',
    `stages: { assembled: 2026-03-10 }\nphotos:\n  - { file: a.jpg, shows: what is seen, stage: assembled, taken-on: 2026-03-10, proves: [general.shown] }\nanswers: { general.shown: "${answer}" }`,
    { files: ['photos/a.jpg'] },
  );
  expect(bench.findings.filter((f) => f.point === 'measured').map((f) => [f.item, f.outcome])).toEqual([
    ['general.shown', outcome],
  ]);
});
