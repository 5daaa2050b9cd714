import { describe, expect, it } from 'vitest';
import {
  countsByClass,
  findingClasses,
  isOpen,
  type Outcome,
  outcomeOf,
  outcomes,
  outcomesByClass,
  resultOf,
} from '../../../src/checks/engine/finding.js';
import { findingOf } from './made.js';

/** The words of the design, section 7: all but the first of each row and not applicable are open. */
const words = {
  requirement: 'conforms does-not-conform inconclusive limit-not-confirmed not-measured not-applicable',
  practice: 'within-usual-practice outside-usual-practice inconclusive not-measured not-applicable',
  answer: 'answered requirement-not-met contradicted unanswered not-applicable',
  proof: 'seen part-missing not-shown not-applicable',
  date: 'in-order out-of-order',
  element: 'within beyond inconclusive not-checked not-applicable',
} as const;

describe.each(Object.entries(words))('a finding of class %s', (of, list) => {
  const [first, ...others] = list.split(' ') as [Outcome, ...Outcome[]];
  it('has its own words', () => {
    expect(Object.values(outcomesByClass[of as keyof typeof words]).toSorted()).toEqual([first, ...others].toSorted());
    for (const [result, word] of Object.entries(outcomesByClass[of as keyof typeof words])) {
      expect(outcomeOf(of as never, result as never)).toBe(word);
      expect(resultOf(word)).toBe(result);
    }
  });
  it('is open but for the first of them', () => {
    expect(isOpen({ outcome: first })).toBe(false);
    for (const outcome of others) expect(isOpen({ outcome }), outcome).toBe(outcome !== 'not-applicable');
  });
  it('that is met waits while it waits', () =>
    expect(isOpen({ outcome: first, waits: 'for the certifier' })).toBe(true));
});

describe('an open finding', () => {
  it.each([
    ['accepted', false],
    ['refused', true],
    ['on-condition', true],
    ['asked', true],
  ] as const)('that the certifier %s: open %s', (word, open) => {
    const concession = { word, because: 'it is so' };
    expect(isOpen({ outcome: 'does-not-conform', concession })).toBe(open);
    expect(isOpen({ outcome: 'answered', waits: 'something', concession })).toBe(open);
  });
});

describe('the words', () => {
  it('of all classes are listed once', () => {
    expect(outcomes.toSorted()).toEqual([...new Set(Object.values(words).join(' ').split(' '))].toSorted());
    expect(findingClasses).toEqual(Object.keys(words));
  });
  it('that a class does not have are a mistake', () => {
    expect(() => outcomeOf('date', 'unclear')).toThrow('a finding of class date cannot be unclear');
    expect(() => outcomeOf('practice', 'unconfirmed')).toThrow();
  });
  it('are counted by class, and none across classes', () => {
    const found = [
      findingOf({ outcome: 'conforms' }),
      findingOf({ outcome: 'conforms' }),
      findingOf({ outcome: 'inconclusive' }),
      findingOf({ outcome: 'inconclusive', of: 'element' }),
    ];
    const counts = countsByClass(found);
    expect(counts.map(({ of }) => of)).toEqual(['requirement', 'element']);
    expect(counts[0]!.counts.filter(({ count }) => count > 0)).toEqual([
      { outcome: 'conforms', count: 2 },
      { outcome: 'inconclusive', count: 1 },
    ]);
    expect(counts[1]!.counts).toEqual([
      { outcome: 'within', count: 0 },
      { outcome: 'beyond', count: 0 },
      { outcome: 'inconclusive', count: 1 },
      { outcome: 'not-checked', count: 0 },
      { outcome: 'not-applicable', count: 0 },
    ]);
    expect(countsByClass([])).toEqual([]);
  });
});
