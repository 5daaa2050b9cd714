import type { Run } from '../../../calc/run.js';
import { brakeDistribution, type LoadState } from '../brake-distribution.js';
import { type Drawers, partsOf, si, size } from './values.js';

/** Runs of one note with one installed share belong into one drawing, whatever braking rate each was worked at. */
const together = (run: Run, runs: readonly Run[]) =>
  runs.filter(
    (r) =>
      r.sheet.id === run.sheet.id &&
      r.results &&
      partsOf(r).note === partsOf(run).note &&
      si(r, 'frontShare') === si(run, 'frontShare'),
  );

function stateOf(run: Run): LoadState {
  const wheelbase = si(run, 'wheelbase');
  return {
    says: partsOf(run).subject.replaceAll('-', ' ') || 'as entered',
    toRear: si(run, 'toRear') / wheelbase,
    height: si(run, 'massHeight') / wheelbase,
    crossing: size(run, 'crossing'),
  };
}

/** Each state of load once: the runs of one vehicle at several braking rates give the same curve. */
function statesOf(runs: readonly Run[]): LoadState[] {
  const states = new Map(
    runs
      .map(stateOf)
      .reverse()
      .map((s) => [`${s.toRear}/${s.height}`, s]),
  );
  return [...states.values()].reverse();
}

export const brakeDrawers: Drawers = {
  'brake-distribution': (run, runs) => {
    const group = together(run, runs);
    if (group.length > 0 && group[0] !== run) return undefined;
    return {
      caption: 'Installed brake distribution against the ideal one.',
      draw: (name, title) =>
        brakeDistribution({
          name,
          title,
          frontShare: size(run, 'frontShare'),
          states: statesOf(group.length > 0 ? group : [run]),
        }),
    };
  },
};
