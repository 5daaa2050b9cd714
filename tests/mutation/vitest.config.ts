import { defineConfig } from 'vitest/config';

/**
 * The tests that a mutation run repeats for every mutant: of units alone, with no process, no browser, no `chdir`, and
 * without all kinds of note, which take longer to load than most tests run.
 */
export default defineConfig({
  test: {
    include: [
      'tests/checks/engine/{agree,answer-facts,answer-item,certifier,concessions,evidence,finding,held,held-against,judged,naming,order,releases,told,trails,values,verdict,with-each}.test.ts',
      'tests/checks/codes/limits.test.ts',
      'tests/calc/propagate.test.ts',
      'tests/app/verify/{alone,beside,findings}.test.ts',
      'tests/print/page-digests.test.ts',
    ],
    setupFiles: ['tests/one-seed.ts'],
    testTimeout: 20_000,
  },
});
