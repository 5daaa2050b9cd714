import fc from 'fast-check';

/**
 * The same random cases in every run, so that a change is judged by what it changed. `npm run fuzz` looks for new ones, with
 * a seed of the day that it prints where something fails; FUZZ_SEED takes that seed up again.
 */
const { FUZZ_RUNS, FUZZ_SEED } = process.env;
if (FUZZ_SEED !== undefined || FUZZ_RUNS === undefined) fc.configureGlobal({ seed: Number(FUZZ_SEED ?? 20260314) });
