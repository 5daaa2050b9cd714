import { describe, expect, it } from 'vitest';
import { examineNote } from '../kinds/bench.js';

describe('two notes that state one fact', () => {
  // Independent uncertainties of 3 and 4 kg are together 5 kg (JCGM 100:2008, 5.1.2), not 7.
  it.each([
    ['600 ± 3 kg', '605 ± 4 kg', undefined],
    ['600 ± 3 kg', '604.9 ± 4 kg', undefined],
    ['600 ± 3 kg', '605.1 ± 4 kg', 'contradicted'],
    ['600 ± 3 kg', '606 ± 4 kg', 'contradicted'],
    // A weighbridge is taken to be uncertain by 20 kg (common practice, no source): beyond it a larger ± helps no more.
    ['600 ± 3 kg', '620.2 ± 20 kg', undefined],
    ['600 ± 3 kg', '620.3 ± 20 kg', 'contradicted'],
    ['600 ± 3 kg', '620.3 ± 200 kg', 'contradicted'],
  ])('%s and %s: %s', async (one, other, outcome) => {
    const { findings } = await examineNote('mass', `now: { front: ${one}, rear: 500 kg }`, {
      notes: { '020-again.md': `kind: mass\nnow: { front: ${other} }` },
    });
    expect(findings.find((f) => f.item === 'agreement' && f.subject === 'mass_front')?.outcome).toBe(outcome);
  });
});
