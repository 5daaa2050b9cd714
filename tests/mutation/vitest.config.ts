import { defineConfig } from 'vitest/config';

/** The tests that a mutation run repeats for every mutant: of units alone, with no process, no browser and no `chdir`. */
export default defineConfig({
  test: {
    include: [
      'tests/checks/engine/!(doubts).test.ts',
      'tests/checks/codes/{figures,expression,own-copy,asked}.test.ts',
      'tests/checks/kinds/inspection.test.ts',
      'tests/calc/{propagation,propagate}.test.ts',
      'tests/app/verify/{alone,beside,findings}.test.ts',
      'tests/print/page-digests.test.ts',
    ],
    setupFiles: ['tests/one-seed.ts'],
    testTimeout: 20_000,
  },
});
