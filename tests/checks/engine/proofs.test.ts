import { describe, expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { partsOf, servedBy } from '../../../src/checks/engine/proofs.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { buildFile, folderWith, pictureHead } from '../../project/scratch.js';
import { type Around, examineNote } from '../kinds/bench.js';

/** A photo or document proves what it names; what has several views is complete when each is named. */

const stages =
  'stages: { as-received: 2026-03-01, cut: 2026-03-10, tacked: 2026-03-12, welded: 2026-03-14, painted: 2026-03-20 }';
const member = `${stages}
pieces:
  - { id: cross, role: replacement, now: { section: RHS 50x30x2.5 (EN 10219), steel: S355 }, welds: [{ id: left, type: fillet }, { id: right, type: fillet }] }
  - { id: plate, role: doubler, was: { section: FL 60x1 }, now: { section: FL 60x2, steel: S355 } }`;
const brakes = 'stages: { dismantled: 2026-03-02, assembled: 2026-03-10, tested: 2026-03-20 }';

/** Photos as `name: keys`; each lies in the folder. */
function photos(list: Readonly<Record<string, string>>): { text: string; files: string[] } {
  const lines = Object.entries(list).map(([name, keys]) => `  - { file: ${name}.jpg, shows: what is seen, ${keys} }`);
  return { text: `photos:\n${lines.join('\n')}`, files: Object.keys(list).map((name) => `photos/${name}.jpg`) };
}
function papers(list: Readonly<Record<string, string>>): { text: string; files: string[] } {
  const lines = Object.entries(list).map(([name, keys]) => `  - { file: ${name}.pdf, shows: a document, ${keys} }`);
  return { text: `papers:\n${lines.join('\n')}`, files: Object.keys(list).map((name) => `papers/${name}.pdf`) };
}
const tried = (kind: string, front: string, of: { text: string; files: string[] }, around: Around = {}) =>
  examineNote(kind, `${front}\n${of.text}`, { ...around, files: of.files });
const held = (bench: Awaited<ReturnType<typeof tried>>, point: string) => {
  const found = bench.findings.filter((f) => f.point === point && f.item !== 'hold-point-release');
  expect(found, point).toHaveLength(1);
  return found[0]!;
};

describe('a photo of a stage', () => {
  it('passes no hold point that it does not name, and is offered as what could show it', async () => {
    const bench = await tried('brakes', brakes, photos({ disc: 'stage: assembled, taken-on: 2026-03-10' }));
    for (const point of ['lines-open', 'hoses-at-ends', 'leak-test'])
      expect(held(bench, point), point).toMatchObject({
        of: 'proof',
        outcome: 'not-shown',
        todo: expect.stringContaining(
          `photo \`disc.jpg\` of stage \`assembled\`: if it shows this, add \`proves: [${point}`,
        ),
      });
  });

  it('passes the one that it names and no other', async () => {
    const bench = await tried(
      'brakes',
      brakes,
      photos({ disc: 'stage: assembled, taken-on: 2026-03-10, proves: [leak-test]' }),
    );
    expect(held(bench, 'leak-test').outcome).toBe('seen');
    expect(held(bench, 'lines-open').outcome).toBe('not-shown');
    expect(held(bench, 'hoses-at-ends').outcome).toBe('not-shown');
  });
});

describe('hoses at full droop, full bump and both locks', () => {
  const on = 'stage: assembled, taken-on: 2026-03-10';
  it.each([
    ['a picture of a disc that names nothing', { disc: on }, 'not-shown'],
    ['the whole named, but no view', { a: `${on}, proves: [hoses-at-ends]` }, 'not-shown'],
    [
      'one view missing',
      { a: `${on}, proves: [hoses-at-ends droop bump]`, b: `${on}, proves: [hoses-at-ends left-lock]` },
      'part-missing',
    ],
    [
      'each view in a picture',
      {
        a: `${on}, proves: [hoses-at-ends droop]`,
        b: `${on}, proves: [hoses-at-ends bump]`,
        c: `${on}, proves: [hoses-at-ends left-lock right-lock]`,
      },
      'seen',
    ],
    ['one picture said to show all', { a: `${on}, proves: [hoses-at-ends all]` }, 'seen'],
  ])('%s: %s', async (_, of, outcome) => {
    const bench = await tried('brakes', brakes, photos(of as Record<string, string>));
    expect(held(bench, 'hoses-at-ends').outcome).toBe(outcome);
  });

  it('says which views are missing, and which photo shows which', async () => {
    const bench = await tried('brakes', brakes, photos({ a: `${on}, proves: [hoses-at-ends droop bump left-lock]` }));
    const finding = held(bench, 'hoses-at-ends');
    expect(finding.says).toContain('not shown: right-lock');
    expect(finding.proof!.map(({ part, by }) => [part, by.map((b) => b.file)])).toEqual([
      ['droop', ['photos/a.jpg']],
      ['bump', ['photos/a.jpg']],
      ['left-lock', ['photos/a.jpg']],
      ['right-lock', []],
    ]);
  });
});

describe('a photo is taken', () => {
  const tackedOn = (keys: string) => photos({ one: `proves: [welds-bare all], ${keys}` });
  it.each([
    ['on the day it was covered', 'stage: welded, taken-on: 2026-03-20', 'seen'],
    ['the day after', 'stage: welded, taken-on: 2026-03-21', 'out-of-order'],
    ['on no day that it says', 'stage: welded', 'part-missing'],
    ['in another stage', 'stage: painted, taken-on: 2026-03-14', 'not-shown'],
    ['in a stage before the welding', 'stage: tacked, taken-on: 2026-03-14', 'not-shown'],
    ['in no stage that it says', 'taken-on: 2026-03-14', 'seen'],
  ])('%s: %s is %s', async (_, keys, outcome) => {
    const bench = await tried('body-structure', member, tackedOn(keys));
    expect(held(bench, 'welds-bare').outcome).toBe(outcome);
  });

  it('late of one part, in time of the other: the late one is told', async () => {
    const bench = await tried(
      'body-structure',
      member,
      photos({
        a: 'stage: welded, taken-on: 2026-03-14, proves: [welds-bare left plate]',
        b: 'stage: welded, taken-on: 2026-03-22, proves: [welds-bare right]',
      }),
    );
    expect(held(bench, 'welds-bare')).toMatchObject({
      of: 'date',
      outcome: 'out-of-order',
      says: expect.stringContaining('2026-03-22'),
    });
  });

  it('late, where another in time shows the same: seen', async () => {
    const bench = await tried(
      'body-structure',
      member,
      photos({
        a: 'stage: welded, taken-on: 2026-03-14, proves: [welds-bare all]',
        b: 'stage: welded, taken-on: 2026-03-22, proves: [welds-bare left]',
      }),
    );
    expect(held(bench, 'welds-bare').outcome).toBe('seen');
  });
});

describe('what is asked in the same words is asked once', () => {
  it('one photo with one name closes hold point and item', async () => {
    const on = 'stage: tacked, taken-on: 2026-03-12';
    for (const name of ['tacked cross plate', 'body.tacked cross plate']) {
      const bench = await tried('body-structure', member, photos({ a: `${on}, proves: [${name}]` }));
      expect(
        bench.all('body.tacked').map((f) => [f.point, f.outcome]),
        name,
      ).toEqual([['tacked', 'seen']]);
      expect(bench.all('hold-point', 'tacked'), name).toEqual([]);
    }
  });

  it('the older spelling `serves` says the same', async () => {
    const bench = await tried(
      'body-structure',
      member,
      photos({ a: 'stage: tacked, taken-on: 2026-03-12, serves: [body.tacked all]' }),
    );
    expect(bench.one('body.tacked').outcome).toBe('seen');
  });

  it('a reason why it does not apply closes it too', async () => {
    const bench = await examineNote(
      'body-structure',
      `${member}\nanswers:\n  body.tacked: { answer: not applicable, because: bonded and riveted }`,
    );
    expect(bench.one('body.tacked')).toMatchObject({ outcome: 'not-applicable', says: 'bonded and riveted' });
  });

  it('what a hold point leaves of an item is asked beside it', async () => {
    const number = photos({ a: 'stage: as-received, taken-on: 2026-03-01, proves: [engine-number]' });
    const bench = await tried('engine', 'stages: { as-received: 2026-03-01, assembled: 2026-03-10 }', number);
    expect(bench.all('engine.identity').map((f) => [f.point, f.outcome])).toEqual([
      [undefined, 'not-shown'],
      ['engine-number', 'seen'],
    ]);
  });

  it.each([...kinds.values()])(
    '$id: what its hold points serve is evidence, with parts that are there',
    async (kind) => {
      const { items } = await loadCodes('AU');
      for (const point of kind.holdPoints) {
        const served = servedBy(point);
        if (!served) continue;
        const item = items.get(served.proof);
        if (item?.kind !== 'evidence') throw new Error(`${kind.id} ${point.id} serves ${served.proof}`);
        expect(item['raised-by']).toContain(kind.id);
        for (const part of served.parts) expect(item.parts).toContain(part);
      }
    },
  );
});

describe('parts', () => {
  it('are made from the note: a weld, or the piece that lists none; two of one name are told apart', () => {
    const point = kinds.get('body-structure')!.holdPoints.find((p) => p.id === 'welds-bare')!;
    const of = (pieces: object[]) => partsOf(point, { kind: 'body-structure', title: 'tried', pieces } as never);
    expect(of([])).toEqual([]);
    expect(of([{ id: 'a', welds: [{ id: 'end' }] }, { id: 'b' }])).toEqual(['end', 'b']);
    expect(
      of([
        { id: 'a', welds: [{ id: 'end' }] },
        { id: 'b', welds: [{ id: 'end' }] },
      ]),
    ).toEqual(['a/end', 'b/end']);
  });

  it('of an item: one photo is no second view of the final drive', async () => {
    const opened = 'final-drive-opened: yes\nstages: { dismantled: 2026-03-01, assembled: 2026-03-10 }';
    const one = await tried('rear-axle', opened, photos({ a: 'proves: [axle.pattern-shown drive]' }));
    expect(one.one('axle.pattern-shown')).toMatchObject({
      outcome: 'part-missing',
      says: expect.stringContaining('not shown: coast'),
    });
    const both = await tried('rear-axle', opened, photos({ a: 'proves: [axle.pattern-shown drive coast]' }));
    expect(both.one('axle.pattern-shown').outcome).toBe('seen');
    const unsaid = await tried('rear-axle', opened, photos({ a: 'proves: [axle.pattern-shown]' }));
    expect(unsaid.one('axle.pattern-shown')).toMatchObject({
      outcome: 'part-missing',
      todo: expect.stringContaining('axle.pattern-shown drive coast'),
    });
  });
});

describe('names', () => {
  const problems = async (name: string) => {
    const folder = folderWith({
      'build.md': buildFile,
      'notes/020-crossmember.md': `---\nkind: body-structure\ntitle: Crossmember\n${member}\nphotos:\n  - file: a.jpg\n    shows: what is seen\n    proves: ["${name}"]\n---\n\nWords.\n`,
      'photos/a.jpg': pictureHead,
    });
    return (await load(folder, folder)).problems.map(({ found, expected, hint, line, column }) => ({
      found,
      expected,
      hint,
      line,
      column,
    }));
  };
  it('that are known are taken', async () => {
    expect(await problems('tacked cross')).toEqual([]);
    expect(await problems('body.weld-test')).toEqual([]);
  });
  it.each([
    ['taked cross', 'no hold point of this note and no item `taked`', 'did you mean `tacked`?', 14],
    ['body.weld-tset', 'no hold point of this note and no item `body.weld-tset`', 'did you mean `body.weld-test`?', 14],
    ['tacked crss', 'no part `crss` of `tacked`', 'did you mean `cross`?', 21],
    ['welds-bare left rigth', 'no part `rigth` of `welds-bare`', 'did you mean `right`?', 30],
    ['cut-edge cross', 'no part `cross` of `cut-edge`', undefined, 23],
  ])('%s is an error at its place', async (name, found, hint, column) => {
    expect(await problems(name)).toMatchObject([{ found, hint, line: 11, column: column + 1 }]);
  });
  it('of a hold point of another kind are unknown', async () => {
    expect(await problems('leak-test')).toHaveLength(1);
  });
});

describe('a document', () => {
  const shaft = `stages: { as-received: 2026-03-01, dismantled: 2026-03-05, assembled: 2026-04-10 }
tube-diameter: 63.0 mm
tube-wall: 2.0 mm`;
  const balance = async (keys: string, front = shaft) =>
    (await tried('driveline', front, papers({ sheet: `proves: [driveline.balance-paper]${keys}` }))).one(
      'driveline.balance-paper',
    );

  it.each([
    ['of the day on which the work began', ', of: CHS 63x2, dated: 2026-03-05', 'seen'],
    ['of the day before', ', of: CHS 63x2, dated: 2026-03-04', 'not-shown'],
    ['without a date', ', of: CHS 63x2', 'not-shown'],
    ['without what it is of', ', dated: 2026-03-05', 'not-shown'],
    ['of the tube that is fitted, in other words', ', of: 63.00 x 2.0, dated: 2026-03-05', 'seen'],
    ['of the old tube', ', of: CHS 60x2, dated: 2026-03-05', 'not-shown'],
  ])('%s: %s is %s', async (_, keys, outcome) => {
    expect((await balance(keys)).outcome).toBe(outcome);
  });

  it('says why', async () => {
    expect((await balance(', of: CHS 63x2, dated: 2024-06-01')).says).toBe(
      'document `sheet.pdf` is of 2024-06-01, before the work of 2026-03-05',
    );
    expect((await balance(', of: CHS 63x2')).says).toContain('does not say of which day it is');
    expect((await balance(', dated: 2026-03-05')).says).toContain('does not say of what it is');
    const shown = `${shaft}\nanswers: { driveline.balance-paper: { answer: yes, shown: paper sheet } }`;
    expect((await balance(', of: CHS 60x2, dated: 2026-03-05', shown)).outcome).toBe('not-shown');
    expect((await balance(', of: CHS 63x2, dated: 2026-03-05', shown)).outcome).toBe('seen');
  });
  it('that only an answer names is held to the same', async () => {
    const named = async (keys: string) => {
      const answer = '\nanswers: { driveline.balance-paper: { answer: yes, shown: paper sheet } }';
      const list = papers({ sheet: keys });
      return (await tried('driveline', shaft + answer, list)).one('driveline.balance-paper').outcome;
    };
    expect(await named('of: CHS 63x2, dated: 2026-03-05')).toBe('seen');
    expect(await named('of: CHS 60x2, dated: 2026-03-05')).toBe('not-shown');
    expect(await named('dated: 2026-03-05')).toBe('not-shown');
    expect(await named('of: CHS 63x2')).toBe('not-shown');
    expect((await balance(', of: CHS 60x2')).says).toContain('names CHS 60x2; the note does not');
  });

  const certificate = async (name: string, of: string) =>
    (await tried('body-structure', member, papers({ mill: `proves: [body.material-paper ${name}], of: [${of}]` }))).one(
      'body.material-paper',
    );
  it('covers the pieces that it lists and no other', async () => {
    expect((await certificate('cross plate', 'RHS 50x30x2.5, FL 60x2')).outcome).toBe('seen');
    expect(await certificate('cross plate', 'RHS 50x30x2.5, S355')).toMatchObject({
      outcome: 'part-missing',
      says: expect.stringContaining('names RHS 50x30x2.5; `plate` has FL 60x2'),
    });
    expect((await certificate('cross', 'RHS 50x30x2.5')).outcome).toBe('part-missing');
  });
  it('of the size that was there before, of one digit more, or of another steel is of something else', async () => {
    expect((await certificate('cross plate', 'RHS 50x30x2.5, FL 60x1')).outcome).toBe('part-missing');
    expect((await certificate('cross plate', 'RHS 50x30x2, FL 60x2')).outcome).toBe('part-missing');
    expect((await certificate('all', 'S235')).says).toContain('names S235; `cross` has S355');
    expect((await certificate('all', 'S355')).outcome).toBe('seen');
  });
  it('may be older than the work where it is no proof of work done', async () => {
    const bench = await tried(
      'body-structure',
      member,
      papers({ mill: 'proves: [body.material-paper all], of: S355, dated: 2024-01-22' }),
    );
    expect(bench.one('body.material-paper').outcome).toBe('seen');
  });

  const ticket = async (keys: string) =>
    held(
      await tried(
        'mass',
        'stages: { as-received: 2026-03-01, dismantled: 2026-03-05, tested: 2026-05-01, finished: 2026-05-10 }',
        papers({ ticket: `proves: [weighed-as-built all]${keys}` }),
      ),
      'weighed-as-built',
    ).outcome;
  it.each([
    ['', 'part-missing'],
    [', dated: 2026-04-30', 'not-shown'],
    [', dated: 2026-05-01', 'seen'],
    [', dated: 2026-05-10', 'seen'],
    [', dated: 2026-05-11', 'out-of-order'],
  ])('for a hold point is made in its stage: %s is %s', async (keys, outcome) => {
    expect(await ticket(keys)).toBe(outcome);
  });
  it('is no photo where only a photo shows it', async () => {
    const bench = await tried('brakes', brakes, papers({ a: 'proves: [leak-test], dated: 2026-03-11' }));
    expect(held(bench, 'leak-test')).toMatchObject({ outcome: 'not-shown', says: 'document `a.pdf` is no photo' });
  });
});
