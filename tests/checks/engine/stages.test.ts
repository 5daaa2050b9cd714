import { describe, expect, it } from 'vitest';
import { follows } from '../../../src/checks/engine/stages.js';
import { stageNames } from '../../../src/project/common.js';
import { type Bench, examineNote } from '../kinds/bench.js';

const pointOf = ({ findings }: Bench, point: string) => findings.find((f) => f.point === point)!.says;
const late = async (stages: string) =>
  (await examineNote('mounts', `stages: { ${stages} }`)).all('stage-order').map((f) => [f.subject, f.says]);

describe('order of stages, common practice with no source', () => {
  it('paint and assembly are free against each other', async () => {
    expect(await late('painted: 2026-03-10, assembled: 2026-03-12')).toEqual([]);
    expect(await late('assembled: 2026-03-10, painted: 2026-03-12')).toEqual([]);
  });

  it.each([
    ['as-received', 'cut'],
    ['cut', 'tacked'],
    ['tacked', 'welded'],
    ['cut', 'welded'],
    ['welded', 'painted'],
    ['welded', 'assembled'],
    ['painted', 'trimmed'],
    ['assembled', 'tested'],
    ['as-received', 'finished'],
    ['tested', 'finished'],
    ['painted', 'finished'],
  ])('%s comes before %s', async (first, second) => {
    expect(await late(`${first}: 2026-03-10, ${second}: 2026-03-12`)).toEqual([]);
    expect(await late(`${first}: 2026-03-10, ${second}: 2026-03-10`)).toEqual([]);
    expect(await late(`${first}: 2026-03-12, ${second}: 2026-03-10`)).toEqual([
      [second, `\`${second}\` is dated 2026-03-10, before \`${first}\` on 2026-03-12`],
    ]);
  });

  it('names the latest of several that should lie behind', async () => {
    expect(await late('cut: 2026-03-11, tacked: 2026-03-12, welded: 2026-03-10')).toEqual([
      ['welded', '`welded` is dated 2026-03-10, before `tacked` on 2026-03-12'],
    ]);
  });

  it('is an order: nothing follows itself, all follow as-received, finished follows all', () => {
    for (const a of stageNames) {
      expect(follows(a, a)).toBe(false);
      if (a !== 'as-received') expect(follows(a, 'as-received')).toBe(true);
      if (a !== 'finished') expect(follows('finished', a), a).toBe(true);
      for (const b of stageNames) expect(follows(a, b) && follows(b, a)).toBe(false);
    }
  });
});

describe('what covers', () => {
  const welds = async (stages: string) => pointOf(await examineNote('mounts', `stages: { ${stages} }`), 'mount-welds');
  const fitted = async (stages: string) =>
    pointOf(await examineNote('mounts', `stages: { ${stages} }`), 'mounts-fitted');
  it('is the stage itself or one that only comes after it; a test does not cover', async () => {
    expect(await welds('painted: 2026-03-12')).toContain('`painted` since 2026-03-12');
    expect(await welds('trimmed: 2026-03-14, finished: 2026-03-16')).toContain('`trimmed` since 2026-03-14');
    expect(await welds('assembled: 2026-03-12, tested: 2026-03-13')).toContain('still to be recorded');
    expect(await fitted('painted: 2026-03-12')).toContain('still to be recorded');
    const identity = await examineNote('rear-axle', 'stages: { tested: 2026-03-13 }');
    expect(pointOf(identity, 'axle-identity')).toContain('still to be recorded');
    expect(await fitted('finished: 2026-03-16')).toContain('`finished` since');
  });
});
