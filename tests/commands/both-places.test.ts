import { expect, it } from 'vitest';
import { findingLines } from '../../src/commands/text/finding-text.js';
import { examineNote } from '../checks/kinds/bench.js';

it('a contradiction names both places in the terminal', async () => {
  const note = 'capacity: 2400 cm3\nanswers: { engine.original-mass: 900 kg }';
  const { one } = await examineNote('engine', note, { original: { mass: '1240 kg' } });
  const lines = findingLines(one('agreement', 'original_mass'), { width: 200, colour: false });
  expect(lines.at(-1)).toMatch(/010-tried\.md:\d+:\d+, against .*build\.md:\d+:\d+ {2}agreement$/);
});
