import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

describe('what stops a note on links', () => {
  it('a part that was worked on, whatever an answer of the same note says', async () => {
    const { one } = await examineNote('suspension-link', 'worked: rechromed\nanswers: { links.forged-worked: no }');
    expect(one('links.forged-worked')).toMatchObject({
      result: 'contradicted',
      stop: true,
      related: { place: { line: 4 } },
    });
    expect(one('links.weld-report-flaws').result).toBe('missing');
  });

  it('a rod end bolted from one side, and nothing where both are in order', async () => {
    expect((await examineNote('suspension-link', 'single-shear: yes')).one('links.rod-end-shear')).toMatchObject({
      result: 'against',
      stop: true,
    });
    const { result: outcome } = await examineNote('suspension-link', 'worked: none\nsingle-shear: no');
    expect([outcome('links.forged-worked'), outcome('links.rod-end-shear')]).toEqual(['met', 'met']);
  });

  it('leads exchanged suspension to the brakes, and only that', async () => {
    expect(
      (await examineNote('suspension-link', 'suspension-exchanged: yes')).result('brakes.suspension-exchanged'),
    ).toBe('missing');
    expect(
      (await examineNote('suspension-link', 'suspension-exchanged: no')).result('brakes.suspension-exchanged'),
    ).toBe('out');
    expect((await examineNote('suspension-link', '')).one('brakes.suspension-exchanged')).toMatchObject({
      result: 'missing',
      todo: 'state suspension-exchanged',
    });
  });
});

/** A link of S355 with a thread of 2 mm pitch at both ends, one of them left-hand. */
const link = (id: string, over: Record<string, string> = {}) => {
  const fields = {
    length: '600 ± 0.5 mm',
    longest: '608 mm',
    diameter: '30.0 ± 0.1 mm',
    steel: 'S355',
    'thread-a': 'M20x2.0',
    'thread-b': 'M20x2.0 LH',
    'thread-class': '"8.8"',
    'engaged-a': '32 ± 0.3 mm',
    'engaged-b': '32 ± 0.3 mm',
    'least-engagement': '25 mm',
    'least-engagement-from': 'sheet of the rod end',
    ...over,
  };
  const written = Object.entries(fields).filter(([, value]) => value !== '');
  return `  - { id: ${id}, ${written.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
};
const links = (...all: string[]) => `links:\n${all.join('\n')}`;

describe('thread engaged at the longest setting', () => {
  it.each([
    ['32 ± 0.3 mm', '42 ± 0.3 mm', 'met'],
    ['32 ± 0.3 mm', '32 ± 0.3 mm', 'met'],
    ['32 ± 0.3 mm', '31.5 ± 0.3 mm', 'met'],
    ['32 ± 0.3 mm', '31.3 ± 0.3 mm', 'unclear'],
    ['26 ± 0.3 mm', '20 ± 0.3 mm', 'against'],
  ])('with %s engaged now, and %s when it is screwed home, is %s', async (engaged, home, outcome) => {
    const one = link('panhard', { 'engaged-a': engaged, 'engaged-b': engaged, 'home-a': home, 'home-b': home });
    const { result } = await examineNote('suspension-link', links(one));
    expect([result('links.engagement', 'panhard-a'), result('links.engagement', 'panhard-b')]).toEqual([
      outcome,
      outcome,
    ]);
  });

  // One turn of the body moves 4 mm and draws each end out by 2 mm: 8 mm longer leaves 32 − 4 = 28 mm (geometry of a screw).
  it.each([
    ['608', 28, 'met'],
    ['613', 25.5, 'met'],
    ['613.4', 25.3, 'unclear'],
    ['614', 25, 'unclear'],
    ['616', 24, 'against'],
  ])('%s mm leaves %d mm of 25: %s at both ends', async (longest, left, outcome) => {
    const { one } = await examineNote('suspension-link', links(link('panhard', { longest: `${longest} mm` })));
    for (const subject of ['panhard-a', 'panhard-b']) {
      expect(one('links.engagement', subject)).toMatchObject({ result: outcome, basis: 'maker' });
      expect(one('links.engagement', subject).measured!.si).toBeCloseTo(left / 1000, 9);
    }
  });

  it('is asked for, and is against it already where the thread is too short now', async () => {
    const { one } = await examineNote(
      'suspension-link',
      links(link('panhard', { longest: '', 'engaged-b': '20 ± 0.3 mm' })),
    );
    expect(one('links.engagement', 'panhard-a')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('longest') as string,
    });
    expect(one('links.engagement', 'panhard-b').result).toBe('against');
  });

  it('a link set longer than its longest setting does not conform', async () => {
    const { one } = await examineNote('suspension-link', links(link('panhard', { longest: '595 mm' })));
    expect(one('links.engagement', 'panhard-a')).toMatchObject({
      outcome: 'does-not-conform',
      says: expect.stringContaining('longer than its longest setting') as string,
    });
  });

  it('a single threaded end, and ends of one hand, make the whole change alone', async () => {
    const single = links(link('panhard', { 'thread-b': '', 'engaged-b': '' }));
    const { one, all } = await examineNote('suspension-link', single);
    expect(one('links.engagement', 'panhard-a').measured!.si).toBeCloseTo(0.024, 9);
    expect(all('links.engagement', 'panhard-b')).toEqual([]);
    const alike = await examineNote('suspension-link', links(link('panhard', { 'thread-b': 'M20x2.0' })));
    expect(alike.one('links.engagement', 'panhard-b').measured!.si).toBeCloseTo(0.024, 9);
  });

  it('nor does one whose longest setting is too uncertain to show it', async () => {
    const { result } = await examineNote('suspension-link', links(link('panhard', { longest: '595 ± 20 mm' })));
    expect(result('links.engagement', 'panhard-a')).toBe('unclear');
  });

  it('refuses a longest setting in another unit', () => {
    expect(problemsOf('suspension-link', links(link('panhard', { longest: '608 kg' })))).toMatchObject([
      { code: 'quantity' },
    ]);
  });
});

describe('thread B of another size', () => {
  const other = (over: Record<string, string> = {}) =>
    examineNote('suspension-link', links(link('panhard', { 'thread-b': 'M16x1.5 LH', ...over })));

  it('counts with its own pitch and its own least engagement', async () => {
    const { one } = await other();
    // 8 mm in turns of 2.0 + 1.5 mm: end A gives 4.57 mm, end B 3.43 mm.
    expect(one('links.engagement', 'panhard-a').measured!.si).toBeCloseTo(0.032 - (0.008 * 2) / 3.5, 9);
    expect(one('links.engagement', 'panhard-b')).toMatchObject({
      result: 'unconfirmed',
      measured: { si: expect.closeTo(0.032 - (0.008 * 1.5) / 3.5, 9) as number },
    });
    expect((await other({ 'least-engagement-b': '20 mm' })).result('links.engagement', 'panhard-b')).toBe('met');
  });

  it('is what the pull goes by where it is the weaker end', async () => {
    const alike = await examineNote('suspension-link', links(link('panhard')));
    const { one } = await other();
    // Stress areas of M20x2 (258 mm²) and M16x1.5 (167 mm²), and proof strength of class 8.8, 600 MPa above and 580 MPa up
    // to 16 mm: ISO 898-1, memory.
    expect(alike.one('links.tension', 'panhard').measured!.si).toBeCloseTo(600e6 * 258e-6, -3);
    expect(one('links.tension', 'panhard').measured!.si).toBeCloseTo(580e6 * 167e-6, -3);
  });
});

describe('a pair of links', () => {
  const pair = (right: Record<string, string> = {}, ids: [string, string] = ['lower-left', 'lower-right']) =>
    examineNote('suspension-link', links(link(ids[0]), link(ids[1], right)));

  it.each([
    // Both read to ± 0.5 mm: together ± 0.707 mm, against 3 mm (common practice, no source).
    ['600.0 ± 0.5 mm', 'within-usual-practice'],
    ['602.29 ± 0.5 mm', 'within-usual-practice'],
    ['602.30 ± 0.5 mm', 'inconclusive'],
    ['596.0 ± 0.5 mm', 'outside-usual-practice'],
    ['596.0 ± 5 mm', 'inconclusive'],
    ['600.0 ± 5 mm', 'inconclusive'],
  ])('of 600.0 ± 0.5 and %s is %s', async (length, outcome) => {
    const { one } = await pair({ length });
    expect(one('links.pair', 'lower-left-lower-right-length')).toMatchObject({
      of: 'practice',
      outcome,
      limit: { recommended: true },
    });
  });

  it('with other settings of the threads is told', async () => {
    const { result } = await pair({ 'engaged-a': '36 ± 0.3 mm' });
    expect(result('links.pair', 'lower-left-lower-right-engaged')).toBe('against');
    expect(result('links.pair', 'lower-left-lower-right-length')).toBe('met');
  });

  it.each([
    ['thread-b', 'M16x1.5 LH'],
    ['thread-a', 'M20x1.5'],
    ['thread-class', '"10.9"'],
    ['steel', 'S235'],
    ['longest', '612 mm'],
  ])('with another %s is told, and contradicts a yes', async (field, value) => {
    const { one } = await pair({ [field]: value });
    expect(one('links.pair-alike')).toMatchObject({
      result: 'against',
      says: expect.stringContaining(`${field}: lower-left`) as string,
    });
    const note = links(link('lower-left'), link('lower-right', { [field]: value }));
    const answered = await examineNote('suspension-link', `${note}\nanswers: { links.pair-alike: yes }`);
    expect(answered.one('links.pair-alike').outcome).toBe('contradicted');
  });

  it('is alike where all of it is, and asked where a side does not say', async () => {
    expect((await pair()).one('links.pair-alike')).toMatchObject({ outcome: 'answered' });
    expect((await pair({ steel: '' })).result('links.pair-alike')).toBe('missing');
    const unknown = links(link('left', { steel: 'unknown' }), link('right', { steel: 'unknown' }));
    expect((await examineNote('suspension-link', unknown)).result('links.pair-alike')).toBe('missing');
    expect((await pair({ length: '' })).result('links.pair', 'lower-left-lower-right-length')).toBe('missing');
  });

  it('is known by id or place, and by nothing else', async () => {
    expect((await pair({}, ['left', 'right'])).all('links.pair')).toHaveLength(2);
    expect((await pair({}, ['rear-l', 'rear-r'])).all('links.pair')).toHaveLength(2);
    const places = links(link('one', { place: '"rear lower, left"' }), link('two', { place: '"rear lower, right"' }));
    expect((await examineNote('suspension-link', places)).all('links.pair')).toHaveLength(2);
    const apart = await pair({}, ['upper-left', 'lower-right']);
    expect(apart.all('links.pair').map((f) => f.result)).toEqual(['out']);
    expect(apart.result('links.pair-alike')).toBe('out');
  });

  it('is held against the difference that the certifier agreed to', async () => {
    const limits =
      'figures:\n  - { item: links.pair, max: 5 mm, min: -5 mm, clause: letter, edition: "2026", read-by: JO, on: 2026-01-10 }\n';
    const note = links(link('left'), link('right', { length: '603 ± 0.5 mm' }));
    const { one } = await examineNote('suspension-link', note, { limits });
    expect(one('links.pair', 'left-right-length')).toMatchObject({ result: 'met', basis: 'own-copy' });
  });
});
