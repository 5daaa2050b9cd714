/** What closes a finding, passes a value or vouches for a document. `npm run mutate`; the table is in DEVELOPERS.md, its floors beside this. */
export default {
  mutate: [
    'src/checks/engine/{agreement,alternatives,answers,certifier,concessions,evidence,finding,held-against,hold-points,judgements,least-favourable,order,proofs,releases,stages,told,trails,values,verdict}.ts',
    'src/checks/codes/limits.ts',
    'src/calc/propagate.ts',
    'src/app/verify/{alone,beside,findings}.ts',
    'src/print/page-digests.ts',
  ],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
  plugins: ['@stryker-mutator/vitest-runner'],
  coverageAnalysis: 'perTest',
  ignorePatterns: ['dist', 'out', 'builds', '.cache', 'templates/pictures'],
  // Words that a person reads are held by other tests, not by these.
  mutator: { excludedMutations: ['StringLiteral'] },
  reporters: ['clear-text', 'json', 'progress'],
  jsonReporter: { fileName: 'out/mutation/report.json' },
  clearTextReporter: { allowColor: false, logTests: false },
  tempDirName: 'out/mutation/sandbox',
  concurrency: 2,
  timeoutMS: 10_000,
};
