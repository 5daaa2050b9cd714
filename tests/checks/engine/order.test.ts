import { describe, expect, it } from 'vitest';
import { isOpen } from '../../../src/checks/engine/finding.js';
import { stageOrder } from '../../../src/checks/engine/order.js';
import { coveredOn, datedStages, follows } from '../../../src/checks/engine/stages.js';
import { type Stage, stageNames } from '../../../src/project/common.js';
import { noteOf } from './made.js';

const note = (stages: string) => noteOf('010-a', `title: Tried\nstages: { ${stages} }`);
const late = (stages: string) => stageOrder(note(stages));

/** What must lie behind each stage: common practice, no source. */
const behind: Record<Stage, string> = {
  'as-received': '',
  dismantled: 'as-received',
  cut: 'as-received',
  machined: 'as-received',
  tacked: 'as-received cut',
  welded: 'as-received cut tacked',
  assembled: 'as-received dismantled cut machined tacked welded',
  painted: 'as-received cut tacked welded',
  trimmed: 'as-received cut tacked welded painted',
  tested: 'as-received dismantled cut machined tacked welded assembled',
  finished: 'as-received dismantled cut machined tacked welded assembled painted trimmed tested',
};

describe('the order of stages', () => {
  it.each(stageNames)('%s', (stage) =>
    expect(stageNames.filter((earlier) => follows(stage, earlier)).toSorted()).toEqual(
      behind[stage].split(' ').filter(Boolean).toSorted(),
    ),
  );

  it('is kept by stages of one day and of days that rise', () => {
    expect(late('cut: 2026-03-10, tacked: 2026-03-10, welded: 2026-03-11')).toEqual([]);
    expect(late('painted: 2026-03-11, assembled: 2026-03-10')).toEqual([]);
    expect(stageOrder(noteOf('010-a'))).toEqual([]);
  });

  it('that is not kept is open, with both places', () => {
    const [found, ...more] = late('cut: 2026-03-10, tacked: 2026-03-09');
    expect(more).toEqual([]);
    expect(isOpen(found!)).toBe(true);
    expect(found).toMatchObject({
      id: '010-a/tacked/stage-order',
      note: '010-a',
      subject: 'tacked',
      item: 'stage-order',
      of: 'date',
      outcome: 'out-of-order',
      form: 'order',
      basis: 'own-copy',
      marks: [],
      title: 'Stages follow each other',
      says: '`tacked` is dated 2026-03-09, before `cut` on 2026-03-10',
      todo: 'correct the date that is wrong',
      place: { path: 'stages.tacked', line: 3 },
      related: { place: { path: 'stages.cut' }, says: '`cut` is dated here' },
    });
  });

  it.each([
    ['cut: 2026-03-12, tacked: 2026-03-11, welded: 2026-03-10', ['cut', 'cut']],
    ['cut: 2026-03-11, tacked: 2026-03-12, welded: 2026-03-10', ['tacked']],
    ['cut: 2026-03-12, tacked: 2026-03-12, welded: 2026-03-10', ['cut']],
  ])('%s: told against the latest, of one day the first', (stages, against) => {
    expect(late(stages).map((f) => f.related!.place.path.replace('stages.', ''))).toEqual(against);
  });
});

describe('when something was covered', () => {
  const covered = (stage: Stage, stages: string) => coveredOn(stage, note(stages));
  it('is when its own stage is dated, however early another was', () => {
    expect(covered('welded', 'painted: 2026-03-10, welded: 2026-03-12')).toEqual({ stage: 'welded', on: '2026-03-12' });
  });
  it('is else the earliest of those that only come after it', () => {
    expect(covered('welded', 'painted: 2026-03-14, assembled: 2026-03-12, trimmed: 2026-03-13')).toEqual({
      stage: 'assembled',
      on: '2026-03-12',
    });
    expect(covered('welded', 'trimmed: 2026-03-12, painted: 2026-03-14')).toEqual({
      stage: 'trimmed',
      on: '2026-03-12',
    });
    expect(covered('welded', 'assembled: 2026-03-12, painted: 2026-03-12')).toEqual({
      stage: 'assembled',
      on: '2026-03-12',
    });
  });
  it('is not by a test, but by a test where that was named', () => {
    expect(covered('painted', 'tested: 2026-03-12')).toBeUndefined();
    expect(covered('assembled', 'tested: 2026-03-12, finished: 2026-03-14')).toEqual({
      stage: 'finished',
      on: '2026-03-14',
    });
    expect(covered('tested', 'tested: 2026-03-12')).toEqual({ stage: 'tested', on: '2026-03-12' });
  });
  it('is not by what comes before it, nor where nothing is dated', () => {
    expect(covered('welded', 'cut: 2026-03-10, tacked: 2026-03-11')).toBeUndefined();
    expect(datedStages(noteOf('010-a'))).toEqual([]);
    expect(datedStages(note('welded: 2026-03-10, cut: '))).toEqual([{ stage: 'welded', on: '2026-03-10' }]);
  });
});
