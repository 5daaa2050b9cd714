import { describe, expect, it } from 'vitest';
import type { CodeItem } from '../../../src/checks/codes/codes.js';
import type { Finding } from '../../../src/checks/engine/finding.js';
import { heldAgainst } from '../../../src/checks/engine/held-against.js';
import { buildOf, findingOf, noteOf } from './made.js';

/** What a kind settled from facts stands; what the builder answered to the same is held against it. */

const item = (wants: 'yes' | 'no' | 'stated' = 'yes') =>
  ({ id: 'some.item', kind: 'answer', wants }) as CodeItem & { kind: 'answer' };
const fact = (over: Partial<Finding> = {}) => findingOf({ outcome: 'answered', form: 'answer', ...over });
const against = (over: Partial<Finding> = {}) => fact({ outcome: 'requirement-not-met', todo: 'mend it', ...over });
const held = (answer: string, findings: Finding[], wants?: 'yes' | 'no' | 'stated') =>
  heldAgainst(item(wants), findings, buildOf([noteOf('010-a', `answers: { some.item: ${answer} }`)]));

describe('an answer to what facts settle', () => {
  it('that goes against them is contradicted, with both places', () => {
    const [found] = held('no', [fact()]);
    expect(found).toMatchObject({
      outcome: 'contradicted',
      answer: 'no',
      says: "answered `no`, but the note's own facts say `yes`: says of some.item",
      todo: 'correct the answer, or the fact if that is wrong',
      place: { path: 'answers.some.item' },
      related: { place: { path: '' }, says: 'says of some.item' },
    });
  });

  it('that passes what the facts do not is contradicted, and keeps what is to be done', () => {
    expect(held('yes', [against()])[0]).toMatchObject({ outcome: 'contradicted', todo: 'mend it' });
    expect(held('yes', [against()], 'no')[0]!.outcome).toBe('requirement-not-met');
    expect(held('no', [against()], 'no')[0]).toMatchObject({ outcome: 'contradicted' });
    expect(held('no', [fact()], 'no')[0]!.outcome).toBe('answered');
  });

  it('that agrees changes nothing; its reason is shown beside', () => {
    expect(held('yes', [fact()])).toEqual([fact()]);
    expect(held('{ answer: yes, because: new hoses }', [fact()])[0]).toEqual(
      fact({ says: 'says of some.item; explained by the builder: new hoses' }),
    );
    expect(held('{ answer: no, because: it was cut }', [against()])[0]).toMatchObject({
      outcome: 'requirement-not-met',
      says: 'says of some.item; explained by the builder: it was cut',
    });
  });

  it('not given leaves the finding', () => {
    expect(heldAgainst(item(), [against()], buildOf([noteOf('010-a')]))).toEqual([against()]);
  });

  it('to another item leaves the finding', () => {
    expect(held('no', [fact({ item: 'other.item' })])[0]!.outcome).toBe('answered');
  });
  it('of a note without facts of its own stands against those of another where it says what is not wanted', () => {
    const theirs = [fact({ note: '020-b' })];
    expect(held('no', theirs)[0]!.outcome).toBe('contradicted');
    expect(held("'no, the left one is missing'", theirs)[0]!.outcome).toBe('contradicted');
    for (const answer of ['yes', 'not applicable', 'seen by both'])
      expect(held(answer, theirs)[0]!.outcome).toBe('answered');
  });

  it('is only recorded where any answer will do', () => {
    expect(held('no', [fact()], 'stated')).toEqual([fact()]);
    expect(held('{ answer: no, because: why }', [fact()], 'stated')).toEqual([fact()]);
  });

  it('not applicable goes against a fact, and a fact that it does not apply against `yes` and `no`', () => {
    expect(held('not applicable', [fact()])[0]!.outcome).toBe('contradicted');
    const out = fact({ outcome: 'not-applicable' });
    for (const answer of ['yes', 'no']) expect(held(answer, [out])[0]).toMatchObject({ outcome: 'contradicted' });
    expect(held('n/a', [out])[0]!.outcome).toBe('not-applicable');
  });

  it('is put beside the least favourable of several', () => {
    const [one, two] = [fact({ subject: 'left' }), against({ subject: 'right' })];
    expect(held('yes', [one, two]).map((f) => f.outcome)).toEqual(['answered', 'contradicted']);
    expect(held('no', [one, two]).map((f) => f.outcome)).toEqual(['answered', 'requirement-not-met']);
    const out = fact({ subject: 'right', outcome: 'not-applicable' });
    expect(held('no', [out, against({ subject: 'left' })]).map((f) => f.outcome)).toEqual([
      'not-applicable',
      'requirement-not-met',
    ]);
  });

  it('is put beside the first where all say the same, and beside none where they do not decide', () => {
    const [one, two] = [fact({ subject: 'left' }), fact({ subject: 'right' })];
    expect(held('no', [one, two]).map((f) => f.outcome)).toEqual(['contradicted', 'answered']);
    const open = fact({ subject: 'right', outcome: 'unanswered' });
    expect(held('no', [one, open])).toEqual([one, open]);
    expect(held('no', [open, one])).toEqual([open, one]);
    const out = fact({ subject: 'right', outcome: 'not-applicable' });
    expect(held('no', [one, out])).toEqual([one, out]);
    expect(held('no', [])).toEqual([]);
    for (const answer of ['yes', 'no', '{ answer: yes, because: why }']) expect(held(answer, [open])).toEqual([open]);
    expect(held('yes', [open, against()]).map((f) => f.outcome)).toEqual(['unanswered', 'contradicted']);
  });

  it('is held against the answer that the finding itself carries', () => {
    const carried = fact({ outcome: 'requirement-not-met', answer: 'yes' });
    expect(held('no', [carried], 'yes')[0]!.outcome).toBe('contradicted');
    expect(held('yes', [carried], 'yes')[0]!.outcome).toBe('requirement-not-met');
    const no = fact({ answer: 'no' });
    expect(held('yes', [no])[0]!.outcome).toBe('contradicted');
    expect(held('yes', [fact({ answer: 'some words' })])[0]!.outcome).toBe('answered');
  });

  it('decides nothing against what waits for the certifier', () => {
    const waits = fact({ waits: 'for the certifier', answer: 'yes' });
    expect(held('no', [waits])).toEqual([waits]);
  });

  it('closes nothing: what waited is contradicted and waits for nothing else', () => {
    const [found] = held('no', [fact()]);
    expect(found!.waits).toBeUndefined();
  });
});
