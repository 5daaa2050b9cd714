import { describe, expect, it } from 'vitest';
import { type Around, type Bench, examineNote, problemsOf } from './bench.js';

const K = 'body-structure';
const hat = 'HAT 60x40x20';
const piece = (fields: string) => `pieces: [{ id: rail, ${fields} }]`;
const replaced = (was: string, now: string, more = '') =>
  piece(`role: replacement, was: { ${was} }, now: { ${now} }${more}`);
const open = 'closed-by: none';
const pointsOf = (findings: Bench['findings']) =>
  findings.flatMap((f) => (f.point === undefined || f.item === 'hold-point-release' ? [] : [f.point]));
/** Of a hat with one wall all stiffnesses go nearly as the wall; of axial stiffness exactly so. */
const axial = async (note: string, around?: Around) =>
  (await examineNote(K, note, around)).one('body.equivalence-stiffness', 'rail-axial');

describe('the original counts as its maker made it', () => {
  const now = `section: ${hat}x0.7, steel: DC01, ${open}, wall: 0.70 ± 0.005 mm`;
  it.each([
    ['as made', ''],
    ['with loss, which made 0.70 mm pass against 0.8 mm', ', loss: 0.3 mm'],
    ['measured where it has wasted', ', wall: 0.50 mm'],
    ['measured where it has wasted, with the loss too', ', wall: 0.50 mm, loss: 0.3 mm'],
    ['measured at several places', ', wall: "[0.79, 0.50, 0.52] mm"'],
  ])('%s', async (_, more) => {
    expect((await axial(replaced(`section: ${hat}x0.8, steel: DC01, ${open}${more}`, now))).result).toBe('against');
  });

  it('and thicker where it was measured so', async () => {
    const was = (wall: string) => `section: ${hat}x0.7, steel: DC01, ${open}, wall: ${wall}`;
    expect((await axial(replaced(was('"[0.65, 0.90] mm"'), now))).result).toBe('against');
    const stout = now.replace('0.70 ± 0.005 mm', '1.10 ± 0.005 mm');
    expect((await axial(replaced(was('"[0.65, 0.90] mm"'), stout))).result).toBe('met');
  });

  it('loss of the new metal still counts against it', async () => {
    const was = `section: ${hat}x0.8, steel: DC01, ${open}`;
    const second = `section: ${hat}x1.0, steel: DC01, ${open}`;
    expect((await axial(replaced(was, second))).result).toBe('met');
    expect((await axial(replaced(was, `${second}, loss: 0.30 ± 0.01 mm`))).result).toBe('against');
  });
});

describe('kept metal counts its thinnest place', () => {
  const at = async (joined: string, more = '') =>
    (
      await examineNote(
        K,
        piece(`role: doubler, now: { section: FL 100x3.0, steel: S355, wall: 3.00 ± 0.01 mm }, ${joined}${more}`),
      )
    ).one('body.thickness-ratio', 'rail');
  // Common practice, no source: 2.5 times as thick at most. 3.0 / 1.2 = 2.5.
  it.each([
    ['joined-to: 1.25 ± 0.01 mm', 'met'],
    ['joined-to: "[1.30 ± 0.01, 1.25 ± 0.01, 1.30 ± 0.01] mm"', 'met'],
    ['joined-to: 1.20 ± 0.01 mm', 'unclear'],
    ['joined-to: "[1.50 ± 0.01, 1.10 ± 0.01, 1.50 ± 0.01] mm"', 'against'],
    ['was: { section: FL 100x1.5, steel: DC01 }', 'met'],
    ['was: { section: FL 100x1.5, steel: DC01, loss: 0.4 ± 0.01 mm }', 'against'],
    ['was: { section: FL 100x1.5, steel: DC01, wall: "[1.48, 1.05] mm" }', 'against'],
  ])('%s: %s', async (joined, outcome) => {
    expect((await at(joined)).result).toBe(outcome);
  });

  it('refuses a mass', () => {
    expect(problemsOf(K, piece('joined-to: 1 kg'))).toMatchObject([{ code: 'quantity' }]);
  });
});

describe('strength of an original whose steel is not known', () => {
  // Both flats of 100 mm: the ratio is thickness times yield strength of new over old. Mild sheet before 1980, common practice.
  const of = async (was: string, now: string, around?: Around, more = '') =>
    (
      await examineNote(K, replaced(`section: FL 100x2.0, ${was}`, `section: FL 100x2.0, steel: ${now}`, more), around)
    ).one('body.equivalence-strength', 'rail-axial');
  const old: Around = { vehicle: { built: '1972-05' } };
  const floor = ', part: floor';

  it.each([
    ['S355', 'met'],
    ['4130 (280/400 MPa)', 'met'],
    ['4130 (279/400 MPa)', 'unclear'],
    ['4130 (140/400 MPa)', 'unclear'],
    ['4130 (139/400 MPa)', 'against'],
  ])('a floor of 1972 against %s: %s', async (steel, outcome) => {
    expect((await of('steel: unknown', steel, old, floor)).result).toBe(outcome);
  });

  it('says up to which strength of the original it is equivalent', async () => {
    expect(await of('steel: unknown', '4130 (200/400 MPa)', old, floor)).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining('equivalent only if the original yields at most 200 MPa') as string,
      todo: expect.stringContaining('tested') as string,
      marks: expect.arrayContaining([
        'original taken to yield between 140 MPa and 280 MPa: Common practice of the trade, no source',
      ]) as string[],
    });
  });

  it('a newer car and a part that may be pressed hot ask for more', async () => {
    const at = async (built: string, part: string) =>
      (await of('steel: unknown', 'S355', { vehicle: { built } }, part)).result;
    expect(await at('1979-12', ', part: rail')).toBe('met');
    expect(await at('1980-01', ', part: rail')).toBe('unclear');
    expect(await at('2012-01', ', part: panel')).toBe('unclear');
    expect(await at('1972-05', '')).toBe('met');
    expect(await at('1984-05', '')).toBe('unclear');
  });

  it('a named grade counts with its greatest yield strength too, a certificate with its own', async () => {
    // EN 10130 [memory]: DC01 yields at 280 MPa at most.
    expect((await of('steel: DC01', '4130 (279/400 MPa)')).result).toBe('unclear');
    expect((await of('steel: DC01', '4130 (280/400 MPa)')).result).toBe('met');
    expect((await of('steel: S235', '4130 (300/400 MPa)')).result).toBe('unclear');
    expect((await of('steel: 4130 (300/400 MPa)', '4130 (300/400 MPa)')).result).toBe('met');
    expect((await of('steel: 4130 (301/400 MPa)', '4130 (300/400 MPa)')).result).toBe('against');
  });

  it('a hardness reading decides where there is one', async () => {
    // ISO 18265: 100 HV is 320 MPa in tension, with 10 % up to 352 MPa.
    const soft = 'steel: unknown, hardness: 100 ± 0.0001, hardness-scale: HV';
    const modern: Around = { vehicle: { built: '2012-01' } };
    expect((await of('steel: unknown', 'S355', modern, ', part: sill')).result).toBe('unclear');
    expect((await of(soft, 'S355', modern, ', part: sill')).result).toBe('met');
    expect((await of(soft.replace('100 ±', '120 ±'), 'S355', modern, ', part: sill')).result).toBe('unclear');
    expect((await of(soft.replace('100 ±', '20 ±'), 'S355', modern)).says).toContain('80 to 550 HV');
    expect((await of(soft.replace(', hardness-scale: HV', ''), 'S355', modern)).todo).toContain('hardness-scale');
  });

  it('is said to be known by hardness only, and waits for the certifier', async () => {
    const note = (was: string) => replaced(`section: FL 100x2.0, ${was}`, 'section: FL 100x2.0, steel: S355');
    const known = async (was: string) => (await examineNote(K, note(was))).result('body.steel-known');
    expect(await known('steel: DC01')).toBe('met');
    expect(await known('steel: unknown')).toBe('missing');
    expect(await known('steel: unknown, hardness: 100, hardness-scale: HV')).toBe('unclear');
  });
});

describe('a doubler replaces nothing', () => {
  const plate = (more: string) =>
    piece(`role: doubler, was: { section: FL 100x1.2, steel: DC01 }, now: { section: FL 100x2.0, steel: S355 }${more}`);
  const whole = ', joined-to: 1.2 mm, weld-pattern: plugs of 8 mm at 40 mm, ends: tapered';
  it('has no ratio of stiffness or strength', async () => {
    const { all, one } = await examineNote(K, plate(whole));
    expect(
      [...all('body.equivalence-stiffness'), ...all('body.equivalence-strength')].filter((f) => f.subject !== ''),
    ).toEqual([]);
    expect(one('body.thickness-ratio', 'rail').result).toBe('met');
  });

  it('states thickness, weld pattern and ends, beside what other texts say', async () => {
    expect(await (await examineNote(K, plate(whole))).one('body.fish-plate')).toMatchObject({
      outcome: 'answered',
      answer: 'rail FL 100x2.0 on 1.2 mm, plugs of 8 mm at 40 mm, ends tapered',
    });
    for (const lacking of ['weld-pattern: plugs of 8 mm at 40 mm', 'ends: tapered', 'joined-to: 1.2 mm'])
      expect((await examineNote(K, plate(whole.replace(`, ${lacking}`, '')))).one('body.fish-plate')).toMatchObject({
        outcome: 'unanswered',
        todo: `fill in pieces.rail.${lacking.split(':')[0]}`,
      });
  });

  it('is not asked about where no plate was laid on', async () => {
    const note = replaced('section: FL 100x2.0, steel: S355', 'section: FL 100x2.0, steel: S355');
    expect((await examineNote(K, note)).all('body.fish-plate')).toEqual([]);
    expect(
      (await examineNote(K, `${note}\nanswers: { body.fish-plate: 3 mm on 1.2 mm }`)).one('body.fish-plate').result,
    ).toBe('met');
  });
});

describe('a pressing along a floor is a box with it', () => {
  const tube = 'section: RHS 60x40x2 (EN 10219), steel: S355';
  const torsion = async (was: string, now = tube, more = '', around?: Around) =>
    (await examineNote(K, replaced(`section: ${hat}x1.0, steel: DC01${was}`, now, more), around)).one(
      'body.equivalence-stiffness',
      'rail-torsion',
    );
  const floor = ', floor: 0.9 mm';

  it('asks whether it is closed, and how thick the floor is', async () => {
    expect(await torsion('')).toMatchObject({
      outcome: 'not-measured',
      todo: expect.stringContaining('rail.was.closed-by') as string,
    });
    expect(await torsion(', closed-by: floor')).toMatchObject({
      outcome: 'not-measured',
      todo: expect.stringContaining('rail.floor') as string,
    });
  });

  // RHS 60×40×2 (EN 10219): J 20.70 cm⁴; hat and floor by Bredt: 4 (59 · 39.95)² / (138.9/1 + 59/0.9) = 10.87 cm⁴, sharp corners.
  it('counts the original closed, whose torsion was thousands of times that of the open one', async () => {
    expect((await torsion(`, ${open}`)).measured!.si).toBeGreaterThan(1000);
    for (const by of ['floor', 'not-known']) {
      const found = await torsion(`, closed-by: ${by}`, tube, floor);
      expect(Math.abs(found.measured!.si / (20.7 / 10.87) - 1)).toBeLessThan(0.01);
      expect(found.marks.join()).toMatch(/original open.*original closed by the floor.*less favourable decides/);
    }
  });

  it('counts a new pressing open until its joint is shown', async () => {
    const now = `section: ${hat}x1.2, steel: S355, closed-by: floor`;
    const shown = ', joint-shown: photo spots';
    const photos = `\nphotos: [{ id: spots, file: spots.jpg, shows: spots along the floor }]`;
    const at = async (more: string, tail: string) =>
      (
        await examineNote(K, replaced(`section: ${hat}x1.0, steel: DC01, closed-by: floor`, now, floor + more) + tail, {
          files: ['photos/spots.jpg'],
        })
      ).one('body.equivalence-stiffness', 'rail-torsion').result;
    expect(await at('', '')).toBe('against');
    expect(await at(shown, '')).toBe('against');
    expect(await at(', joint-shown: looks sound', photos)).toBe('against');
    expect(await at(', joint-shown: ","', photos)).toBe('against');
    expect(await at(shown, photos)).toBe('met');
  });
});

describe('`welded: no`', () => {
  const weldItems = [
    'body.weld-standard',
    'body.weld-procedure',
    'body.weld-test',
    'body.welds-shown',
    'body.tacked',
    'body.joint-form',
  ];
  it('asks for no evidence, hold point or answer about welds', async () => {
    const { all, findings } = await examineNote(K, 'welded: no');
    for (const item of weldItems) expect(all(item), item).toEqual([]);
    expect(pointsOf(findings)).toEqual(['member-as-received', 'cut-edge']);
    expect(all('hold-point-release')).toEqual([]);
  });

  it('counts for nothing where welds are listed, or nothing was said', async () => {
    for (const note of ['', 'welded: yes', 'welded: no\npieces: [{ id: a, welds: [{ id: b, type: fillet }] }]']) {
      const { all, findings } = await examineNote(K, note);
      for (const item of weldItems) expect(all(item), item).toHaveLength(1);
      expect(pointsOf(findings)).toHaveLength(4);
    }
  });

  it('drops nothing that was answered', async () => {
    expect(
      (await examineNote(K, 'welded: no\nanswers: { body.weld-standard: AS 1554.1 }')).result('body.weld-standard'),
    ).toBe('met');
  });

  it.each([
    [
      'mounts',
      ['mounts-as-received', 'mounts-fitted'],
      ['body.weld-standard', 'body.weld-procedure', 'body.welds-shown'],
    ],
    ['rear-axle', ['axle-as-received', 'axle-identity'], ['axle.housing-welds', 'axle.brackets-shown']],
  ])('in a note of kind %s', async (kind, points, items) => {
    const { all, findings } = await examineNote(kind, 'welded: no');
    expect(pointsOf(findings)).toEqual(points);
    for (const item of items) {
      expect(all(item), item).toEqual([]);
      expect((await examineNote(kind, 'welded: yes')).all(item).length, item).toBeGreaterThan(0);
    }
  });
});
