import { expect, it } from 'vitest';
import { examineNote } from '../kinds/bench.js';

it('a proof that hold points of two notes ask for stands once with each, whichever third note shows the rest', async () => {
  const stage = 'stages: { dismantled: 2026-03-02 }';
  const { findings } = await examineNote('engine', stage, {
    notes: {
      '030-other.md': `kind: engine\n${stage}`,
      '040-more.md': 'kind: general\nphotos: [{ file: a.jpg, shows: the number, proves: [engine.identity number] }]',
    },
    files: ['photos/a.jpg'],
  });
  const ids = findings.map((f) => f.id);
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  expect(findings.filter((f) => f.item === 'engine.identity').length).toBeGreaterThan(1);
});
