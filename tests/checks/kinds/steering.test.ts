import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const sa = { vehicle: { registration: 'SA' } };
const qld = { vehicle: { registration: 'QLD' } };

describe('joints of the shaft', () => {
  const joint = (angle: string, window = 'maker-angle: { greatest: 30 deg, from: sheet of the maker }') =>
    `joints: [{ id: upper, ${angle === '' ? '' : `angle: ${angle}, `}${window} }]`;
  it.each([
    ['30.0 ± 0.2 deg', 'unclear'],
    ['29.7 ± 0.2 deg', 'met'],
    ['30.3 ± 0.2 deg', 'against'],
    ['', 'missing'],
  ])('an angle of %s against 30 deg of its maker is %s', async (angle, outcome) => {
    const { one } = await examineNote('steering', joint(angle));
    expect(one('steering.shaft-angles', 'upper')).toMatchObject({ result: outcome });
    if (outcome !== 'missing')
      expect(one('steering.shaft-angles', 'upper')).toMatchObject({
        basis: 'maker',
        limit: { document: 'sheet of the maker' },
      });
  });

  it('gives no outcome on an angle without the maker’s figure, and says which to read', async () => {
    const { one } = await examineNote('steering', 'joints: [{ id: upper, angle: 20 deg }]');
    expect(one('steering.shaft-angles', 'upper')).toMatchObject({
      result: 'unconfirmed',
      todo: expect.stringContaining('from its maker') as string,
    });
  });

  it('refuses an angle in mm and an unknown key, and takes no window without its paper', async () => {
    expect(problemsOf('steering', joint('12 mm'))).toMatchObject([{ code: 'quantity' }]);
    const bench = await examineNote('steering', joint('12 deg', 'maker-angle: { greatest: 30 deg }'));
    expect(bench.one('steering.shaft-angles').result).toBe('unconfirmed');
    expect(problemsOf('steering', 'rim-plai: 12 mm')).toMatchObject([
      { code: 'key-unknown', hint: expect.stringContaining('rim-play') as string },
    ]);
  });
});

describe('even turning of the shaft', () => {
  const pair = (second: string) =>
    `joints:\n  - { id: upper, angle: 20.0 ± 0.1 deg }\n  - { id: lower, angle: 20.0 ± 0.1 deg${second} }`;
  const variation = async (second: string) => {
    const { runs } = await examineNote('steering', pair(second));
    return runs.find((r) => r.sheet.id === 'joints-in-series')!.results!['fluctuation']!.si;
  };

  it('two joints of 20 degrees cancel in phase and leave 24.95 % a quarter turn out (exact relation of the turns)', async () => {
    expect(await variation(', plane: 0 ± 0.1 deg, forks: 0 ± 0.1 deg')).toBeCloseTo(0, 6);
    expect(await variation(', plane: 0 ± 0.1 deg, forks: 90 ± 0.1 deg')).toBeCloseTo(0.2495, 4);
    expect(await variation(', plane: 90 ± 0.1 deg, forks: 90 ± 0.1 deg')).toBeCloseTo(0, 6);
  });

  it.each([
    ['plane: 0 deg, forks: 0 deg', undefined, /^speed varies by .* recorded, not judged$/],
    ['plane: 90 deg, forks: 90 deg', undefined, /recorded, not judged$/],
    ['plane: 0 deg, forks: 90 deg', 'for the certifier', /the joints add to each other/],
    ['plane: 90 deg, forks: 0 deg', 'for the certifier', /the joints add to each other/],
  ])('is told, and put to the certifier where the joints add to each other: %s', async (turned, waits, says) => {
    const found = (await examineNote('steering', pair(`, ${turned}`))).one('steering.uniformity');
    expect(found).toMatchObject({ of: 'answer', outcome: 'answered', says: expect.stringMatching(says) as string });
    expect(found.waits).toBe(waits);
  });

  it('one joint alone, and one beside a straight one, add nothing to each other', async () => {
    for (const joints of [
      '[{ id: only, angle: 18 deg }]',
      '[{ id: a, angle: 18 deg }, { id: b, angle: 0 deg, plane: 0 deg, forks: 90 deg }]',
    ])
      expect((await examineNote('steering', `joints: ${joints}`)).result('steering.uniformity')).toBe('met');
  });

  it('one joint passes its variation on in full: 3.062 % at 10 degrees', async () => {
    const { runs } = await examineNote('steering', 'joints: [{ id: only, angle: 10.0 ± 0.1 deg }]');
    expect(runs[0]!.results!['fluctuation']!.si).toBeCloseTo(0.03062, 5);
  });

  it('asks for planes and forks of the second joint, and takes an answer in words instead', async () => {
    const { one } = await examineNote('steering', pair(''));
    expect(one('steering.uniformity')).toMatchObject({
      result: 'missing',
      todo: expect.stringMatching(/joints\.lower\.plane .*joints\.lower\.forks/) as string,
    });
    const told = `${pair('')}\nanswers: { steering.uniformity: joints and shaft of one car, unaltered }`;
    expect((await examineNote('steering', told)).one('steering.uniformity').outcome).toBe('answered');
    expect(problemsOf('steering', pair(', forks: 3 mm'))).toMatchObject([{ code: 'quantity' }]);
  });

  it('takes no least angle of the maker for the greatest, and no greatest engagement for the least', async () => {
    const { result } = await examineNote(
      'steering',
      'joints: [{ id: upper, angle: 40 deg, maker-angle: { least: 5 deg, from: sheet of the maker }, engaged: 3 mm, maker-engaged: { greatest: 30 mm, from: sheet of the maker } }]',
    );
    expect([result('steering.shaft-angles', 'upper'), result('steering.shaft-engagement', 'upper')]).toEqual([
      'unconfirmed',
      'unconfirmed',
    ]);
  });
});

describe('limits of the states', () => {
  it.each([
    // Replacement wheel 330 mm or more (page of the South Australian government on steering modifications).
    ['330.0 ± 1 mm', 'unclear'],
    ['332.0 ± 1 mm', 'met'],
    ['328.0 ± 1 mm', 'against'],
  ])('a wheel of %s is %s in South Australia', async (wheel, outcome) => {
    expect((await examineNote('steering', `wheel-diameter: ${wheel}`, sa)).result('steering.wheel-diameter')).toBe(
      outcome,
    );
    expect((await examineNote('steering', `wheel-diameter: ${wheel}`, qld)).result('steering.wheel-diameter')).toBe(
      'out',
    );
  });

  it.each([
    // Over 3 mm rejects, where the maker names no figure (vehicle inspection guidelines of Queensland, steering).
    ['3.0 ± 0.1 mm', '', 'unclear'],
    ['2.8 ± 0.1 mm', '', 'met'],
    ['3.2 ± 0.1 mm', '', 'against'],
    ['1.2 ± 0.1 mm', ', maker-play: { greatest: 1.0 mm, from: manual of the maker }', 'against'],
  ])('a joint with %s of play%s is %s in Queensland', async (play, maker, outcome) => {
    expect(
      (await examineNote('steering', `ends: [{ id: left, play: ${play}${maker} }]`, qld)).result(
        'steering.free-play',
        'left',
      ),
    ).toBe(outcome);
  });

  it('tells from the ends whether all are locked', async () => {
    const ends = (second: string) => `ends: [{ id: left, locked: pin }, { id: right, ${second} }]`;
    expect((await examineNote('steering', ends('locked: nut'), qld)).result('steering.ends-locked')).toBe('met');
    expect((await examineNote('steering', ends('locked: none'), qld)).one('steering.ends-locked')).toMatchObject({
      result: 'against',
      says: expect.stringContaining('right') as string,
    });
    expect((await examineNote('steering', ends('play: 0.2 mm'), qld)).result('steering.ends-locked')).toBe('missing');
  });
});

describe('collapse, gaps and torques', () => {
  it('holds the way of collapse against what it was', async () => {
    const way = async (now: string) =>
      (await examineNote('steering', `original-collapse: 95 ± 1 mm\ncollapse: ${now}`)).result('steering.collapse-way');
    expect([await way('95 ± 1 mm'), await way('100 ± 1 mm'), await way('90 ± 1 mm')]).toEqual([
      'unclear',
      'met',
      'against',
    ]);
    expect((await examineNote('steering', 'collapse: 95 mm')).one('steering.collapse-way')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('before dismantling') as string,
    });
  });

  it('recommends 10 mm to fixed parts (LS v2.1, code LS3, quoted by a forum), and leaves it to a clearance note', async () => {
    const gap = async (least: string) =>
      (await examineNote('steering', `least-gap: ${least}`)).one('clearance.members', 'steering');
    expect((await gap('10.0 ± 0.5 mm')).result).toBe('met');
    expect((await gap('10.1 ± 0.5 mm')).result).toBe('met');
    expect(await gap('9.9 ± 0.5 mm')).toMatchObject({ result: 'against', limit: { recommended: true } });
  });

  it('holds torques against the maker’s window, and takes them as the record of tightening', async () => {
    const { one } = await examineNote(
      'steering',
      'torques: [{ id: pinch, torque: 28 ± 1 N·m, maker: { least: 25 N·m, greatest: 31 N·m, from: manual of the maker } }]',
    );
    expect(one('fasteners.torque', 'pinch')).toMatchObject({ result: 'met', basis: 'maker' });
    expect(one('fasteners.torque-record')).toMatchObject({ result: 'met' });
  });
});

describe('what the fields say to answers', () => {
  it.each([
    ['kept', '', 'answered'],
    ['moved', '', 'unanswered'],
    ['moved', 'answers: { steering.conversion: moved to the right }', 'contradicted'],
    ['moved', 'answers: { steering.conversion: moved to the right under LS1 and LS2 }', 'answered'],
  ])('steering %s with %s is %s', async (side, answers, outcome) => {
    expect((await examineNote('steering', `side: ${side}\n${answers}`)).one('steering.conversion').outcome).toBe(
      outcome,
    );
  });

  it.each([
    ['clamp bolt in the groove, self-locking nut', 'answered'],
    ['none', 'contradicted'],
    ['not locked yet', 'contradicted'],
  ])('a joint held by %s leaves fasteners locked: %s', async (held, outcome) => {
    const note = `joints: [{ id: upper, held: "${held}" }]\nanswers: { fasteners.locking: yes }`;
    expect((await examineNote('steering', note)).one('fasteners.locking').outcome).toBe(outcome);
  });

  it.each([
    ['', []],
    [', engaged: 24.0 ± 0.1 mm', ['met']],
    [', engaged: 20.0 ± 0.1 mm', ['unclear']],
    [', engaged: 19.0 ± 0.1 mm', ['against']],
  ])('an end%s in its rod is %s against the least of the copy', async (engaged, results) => {
    const limits =
      "figures: [{ item: links.engagement, min: 20 mm, edition: '1', clause: '1', read-by: JO, on: 2026-01-01 }]\n";
    const note = `ends: [{ id: left${engaged} }]`;
    expect((await examineNote('steering', note, { limits })).all('links.engagement').map((f) => f.result)).toEqual(
      results,
    );
    expect((await examineNote('steering', note)).all('links.engagement').map((f) => f.result)).toEqual(
      results.map(() => 'unconfirmed'),
    );
  });
});

describe('what stops the note', () => {
  it.each(['welded', 'heated', 'rechromed'])('a forged part that was %s', async (worked) => {
    const { one, all } = await examineNote('steering', `worked: ${worked}\nanswers: { links.forged-worked: no }`);
    expect(one('links.forged-worked')).toMatchObject({
      result: 'contradicted',
      stop: true,
      place: { line: 5 },
      related: { place: { line: 4 } },
    });
    expect(
      [
        'material',
        'filler',
        'preparation',
        'procedure',
        'welder',
        'preheat',
        'heat-treatment',
        'hardness',
        'flaws',
      ].map((part) => all(`links.weld-report-${part}`).map((f) => f.result)),
    ).toEqual(Array(9).fill(['missing']));
  });

  it('is not hidden by another note that has nothing to say against it', async () => {
    const notes = { '005-links.md': 'kind: suspension-link\nworked: none\nanswers: { links.forged-worked: no }' };
    const { one } = await examineNote('steering', 'worked: welded', { notes });
    expect(one('links.forged-worked')).toMatchObject({ result: 'against', stop: true, note: '010-tried' });
    expect(one('links.weld-report-hardness')).toMatchObject({ result: 'missing' });
  });

  it('nor is an answer against it that another note gives', async () => {
    const notes = { '020-links.md': 'kind: suspension-link\nanswers: { links.rod-end-shear: no }' };
    const { one } = await examineNote('steering', 'single-shear: no', { notes });
    expect(one('links.rod-end-shear')).toMatchObject({ result: 'against', stop: true, note: '020-links' });
  });

  it('a rod end in single shear, and an airbag that was taken out', async () => {
    const { one } = await examineNote('steering', 'single-shear: yes\nairbag: removed');
    expect(one('links.rod-end-shear')).toMatchObject({ result: 'against', stop: true });
    expect(one('seating.airbags-kept')).toMatchObject({ result: 'against', stop: true });
  });

  it('nothing, where no part was worked', async () => {
    const { one, findings } = await examineNote('steering', 'worked: none');
    expect(one('links.forged-worked')).toMatchObject({ result: 'met' });
    expect(findings.filter((f) => f.item.startsWith('links.weld-report')).map((f) => f.result)).toEqual(
      Array(9).fill('out'),
    );
  });
});

const typical = `
parts: intermediate shaft with two joints made new
side: kept
joints:
  - { id: upper, angle: 18.5 deg, maker-angle: { greatest: 30 deg, from: sheet of the joint }, engaged: 22.0 mm, maker-engaged: { least: 19 mm, from: sheet of the joint }, held: clamp bolt in the groove }
  - { id: lower, angle: 21.0 deg, plane: 0 deg, forks: 0 deg, maker-angle: { greatest: 30 deg, from: sheet of the joint }, engaged: 21.5 mm, maker-engaged: { least: 19 mm, from: sheet of the joint } }
original-collapse: 95 mm
collapse: 110 mm
wheel-diameter: 380 mm
rim-play: 8 mm
maker-rim-play: { greatest: 25 mm, from: manual of the maker }
ends:
  - { id: left, play: 0.2 mm, maker-play: { greatest: 0.5 mm, from: manual of the maker }, locked: pin }
  - { id: right, play: 0.2 mm, maker-play: { greatest: 0.5 mm, from: manual of the maker }, locked: pin }
least-gap: 14 mm
free-travel: yes
worked: none
single-shear: no
torques: [{ id: pinch, torque: 28 N·m, maker: { least: 25 N·m, greatest: 31 N·m, from: manual of the maker } }]`;

describe('the note as a whole', () => {
  it('a typical note has nothing against it', async () => {
    const { findings } = await examineNote('steering', typical, qld);
    expect(findings.filter((f) => ['against', 'unclear', 'unconfirmed'].includes(f.result)).map((f) => f.id)).toEqual(
      [],
    );
    expect(findings.filter((f) => f.form === 'limit' && f.result === 'missing').map((f) => f.item)).toEqual([
      'alignment.bump-steer',
    ]);
  });

  it('an empty note says what is missing', async () => {
    const { findings } = await examineNote('steering', '', sa);
    expect(findings.filter((f) => f.result === 'missing').length).toBeGreaterThan(10);
    expect(findings.filter((f) => f.result === 'met' || f.result === 'against')).toEqual([]);
  });
});
