import { describe, expect, it } from 'vitest';
import { concede } from '../../../src/checks/engine/concessions.js';
import { type Finding, isOpen, type Outcome } from '../../../src/checks/engine/finding.js';
import type { Build, Note } from '../../../src/project/model.js';

type Entry = NonNullable<Note['data']['concessions']>[number];

const accepted: Entry = {
  item: 'body.thickness-ratio',
  subject: 'floor',
  because: 'the floor is doubled there on purpose',
  word: 'accepted',
  by: 'R. Ansell',
  on: '2026-03-14',
};
const finding = (over: Partial<Finding> = {}): Finding => ({
  id: '010-floor/floor/body.thickness-ratio',
  note: '010-floor',
  subject: 'floor',
  item: 'body.thickness-ratio',
  title: 'Thickness ratio',
  of: 'requirement',
  outcome: 'does-not-conform',
  form: 'limit',
  basis: 'published',
  says: 'measured 3',
  todo: 'change the part',
  marks: [],
  place: { file: '010-floor.md', line: 1, column: 1, path: '' },
  ...over,
});
const build = (concessions: readonly Entry[], data: Partial<Build['data']> = {}, note: object = {}): Build =>
  ({
    data: {
      certifier: { name: 'R. Ansell (invented)' },
      people: [{ id: 'JO', name: 'J. Okoro', role: 'builder' }],
      ...data,
    },
    notes: [
      { name: '010-floor', data: { stages: { 'as-received': '2026-01-10', cut: '2026-03-10' }, concessions, ...note } },
    ],
  }) as unknown as Build;
const conceded = (entries: readonly Entry[], data?: Partial<Build['data']>, note?: object, today = '2026-04-01') =>
  concede(finding(), build(entries, data, note), today);

describe('a concession', () => {
  it('that the certifier accepted closes the finding and changes no outcome', () => {
    const now = conceded([accepted]);
    expect(now).toMatchObject({ outcome: 'does-not-conform', concession: { word: 'accepted' }, todo: undefined });
    expect(isOpen(now)).toBe(false);
  });

  it.each(['refused', 'asked', 'on-condition'] as const)(
    'that is %s leaves the finding open, with what to do',
    (word) => {
      const now = conceded([{ ...accepted, word }]);
      expect(isOpen(now)).toBe(true);
      expect(now).toMatchObject({ concession: { word }, todo: 'change the part' });
    },
  );

  it.each([
    ['without a name', { by: undefined }, 'on which day'],
    ['without a day', { on: undefined }, 'on which day'],
    ['by the builder himself', { by: 'J. Okoro' }, 'nobody else can accept it'],
    ['by the builder, by initials', { by: 'JO' }, 'nobody else can accept it'],
    ['the day before the work began', { on: '2026-03-09' }, 'before the work began on 2026-03-10'],
    ['of tomorrow', { on: '2026-04-02' }, 'still to come'],
  ])('%s only asks', (_, over, todo) => {
    const now = conceded([{ ...accepted, ...(over as Partial<Entry>) }]);
    expect(isOpen(now)).toBe(true);
    expect(now.concession!.word).toBe('asked');
    expect(now.todo).toContain(todo);
  });

  it.each([
    ['on the day the work began', '2026-03-10'],
    ['today', '2026-04-01'],
  ])('counts %s', (_, on) => expect(isOpen(conceded([{ ...accepted, on }]))).toBe(false));

  it('counts without a date of the work, and where nobody says what day it is', () => {
    expect(isOpen(conceded([{ ...accepted, on: '2020-01-01' }], {}, { stages: undefined }))).toBe(false);
    expect(isOpen(concede(finding(), build([{ ...accepted, on: '2099-01-01' }])))).toBe(false);
  });

  it('begins with the day on which the note says that the work began', () => {
    expect(isOpen(conceded([{ ...accepted, on: '2026-03-10' }], {}, { started: '2026-03-11' }))).toBe(false);
    expect(isOpen(conceded([{ ...accepted, on: '2026-03-08' }], {}, { started: '2026-03-09' }))).toBe(true);
  });

  it('needs a certifier in build.md, or a person with that role', () => {
    const nobody = conceded([accepted], { certifier: undefined } as never);
    expect(isOpen(nobody)).toBe(true);
    expect(nobody.todo).toContain('name the certifying engineer in build.md');
    const person = { certifier: undefined, people: [{ id: 'RA', name: 'R. Ansell', role: 'certifying engineer' }] };
    expect(isOpen(conceded([accepted], person as never))).toBe(false);
    expect(isOpen(conceded([{ ...accepted, by: 'RA' }], person as never))).toBe(false);
  });

  it('is the latest word, wherever it stands', () => {
    const refused: Entry = { ...accepted, word: 'refused', on: '2026-03-20' };
    expect(conceded([accepted, refused]).concession!.word).toBe('refused');
    expect(conceded([refused, accepted]).concession!.word).toBe('refused');
    expect(conceded([{ ...refused, on: '2026-03-12' }, accepted]).concession!.word).toBe('accepted');
    expect(conceded([accepted, { ...refused, on: '2026-03-14' }]).concession!.word).toBe('refused');
    expect(conceded([accepted, { ...accepted, word: 'asked', by: undefined, on: undefined }]).concession!.word).toBe(
      'accepted',
    );
  });

  it('is for its own subject, for all subjects where it names none, and for its own item and note only', () => {
    const open = (entry: Entry, over: Partial<Finding> = {}) =>
      isOpen(concede(finding(over), build([entry]), '2026-04-01'));
    expect(open({ ...accepted, subject: 'sill' })).toBe(true);
    expect(open({ ...accepted, subject: undefined })).toBe(false);
    expect(open({ ...accepted, item: 'body.load' })).toBe(true);
    expect(open(accepted, { note: '020-other' })).toBe(true);
  });

  it('that is asked needs no name and no day', () => {
    const asked: Entry = { ...accepted, word: 'asked', by: undefined, on: undefined };
    expect(conceded([asked])).toMatchObject({ concession: { word: 'asked' }, todo: 'change the part' });
  });

  it('may name a hold point as one, and then is for hold points only', () => {
    const open = (item: string, over: Partial<Finding>) =>
      isOpen(
        concede(
          finding({ of: 'proof', outcome: 'not-shown', subject: 'floor', ...over }),
          build([{ ...accepted, item }]),
        ),
      );
    expect(open('hold-point', { item: 'body.welds-shown', point: 'tacked' })).toBe(false);
    expect(open('hold-point', { item: 'body.welds-shown' })).toBe(true);
    expect(open('hold-point', { item: 'hold-point' })).toBe(false);
    expect(open('body.load', { item: 'body.welds-shown', point: 'tacked' })).toBe(true);
  });

  it.each([
    'conforms',
    'within-usual-practice',
    'answered',
    'seen',
    'in-order',
    'within',
    'not-applicable',
  ] as Outcome[])('is not put beside what is %s', (outcome) =>
    expect(concede(finding({ outcome }), build([accepted])).concession).toBeUndefined(),
  );

  it.each([
    ['proof', 'not-shown'],
    ['answer', 'unanswered'],
    ['requirement', 'inconclusive'],
    ['element', 'beyond'],
  ] as const)('can be asked for a finding of class %s that is %s', (of, outcome) =>
    expect(concede(finding({ of, outcome }), build([accepted])).concession).toBeDefined(),
  );
});
