import { describe, expect, it } from 'vitest';
import { exactly } from '../../../src/calc/value.js';
import type { FactClaim } from '../../../src/checks/engine/agreement.js';
import { type Supposed, withEach } from '../../../src/checks/engine/alternatives.js';
import type { Finding, Outcome } from '../../../src/checks/engine/finding.js';
import type { FactName } from '../../../src/project/facts.js';
import { findingOf } from './made.js';

/** What rests on two statements that do not agree. Figures are made up. */

const claim = (name: FactName, si: number, over: Partial<FactClaim> = {}): FactClaim => ({
  name,
  value: exactly(si, '1'),
  place: { file: 'build.md', line: 1, column: 1, path: '' },
  ...over,
});
const finding = (item: string, outcome: Outcome, over: Partial<Finding> = {}) =>
  findingOf({ item, id: item, title: item, outcome, of: 'requirement', ...over });
const names = ['wheelbase', 'gvm', 'seats', 'top_speed', 'first_gear'] as const;
/** So many facts, each stated with the values 0, 1, 2 … */
const disputed = (facts: number, values: number) =>
  new Map(names.slice(0, facts).map((name) => [name, Array.from({ length: values }, (_, i) => claim(name, i))]));
const si = (supposed: Supposed, name: FactName) => supposed.get(name)!.si;

describe('how many combinations are tried', () => {
  it.each([
    [0, 0, 0],
    [1, 2, 2],
    [1, 4, 4],
    [1, 5, 2],
    [2, 2, 4],
    [2, 3, 4],
    [3, 2, 2],
    [5, 9, 2],
    [5, 2, 2],
  ])('%d facts of %d values: %d', (facts, values, expected) => {
    const seen: Supposed[] = [];
    withEach(disputed(facts, values), [], (supposed) => {
      seen.push(supposed);
      return [];
    });
    expect(seen).toHaveLength(expected);
    if (expected > 0) {
      const tried = seen.map((s) => s.get('wheelbase')!.si);
      expect([Math.min(...tried), Math.max(...tried)]).toEqual([0, values - 1]);
    }
  });
  it('a finding is listed under the fact that it depends on, and under no other', () => {
    const { findings, affected } = withEach(
      disputed(2, 2),
      [finding('a', 'conforms'), finding('b', 'conforms')],
      (s) => [finding('a', s.get('wheelbase')!.si > 0 ? 'conforms' : 'does-not-conform'), finding('b', 'conforms')],
    );
    expect(affected('wheelbase')).toEqual(['a']);
    expect(affected('gvm')).toEqual([]);
    expect(findings.map((f) => f.outcome)).toEqual(['inconclusive', 'conforms']);
  });
  it('what one value does not raise at all differs from what it says with the other', () => {
    const { findings } = withEach(disputed(1, 2), [finding('a', 'conforms')], (s) =>
      s.get('wheelbase')!.si > 0 ? [finding('a', 'conforms')] : [],
    );
    expect(findings.map((f) => f.outcome)).toEqual(['inconclusive']);
  });
  it('a class that knows no inconclusive takes the less favourable', () => {
    const answer = (outcome: Outcome): Finding => ({ ...finding('a', outcome), of: 'answer' });
    const { findings } = withEach(disputed(1, 2), [answer('answered')], (s) => [
      answer(s.get('wheelbase')!.si > 0 ? 'answered' : 'requirement-not-met'),
    ]);
    expect(findings.map((f) => f.outcome)).toEqual(['requirement-not-met']);
  });
});

describe('what rests on a fact that is disputed', () => {
  it('is left as it is where nothing is disputed', () => {
    const found = [finding('a', 'conforms')];
    const each = withEach(new Map(), found, () => {
      throw new Error('evaluated');
    });
    expect(each.findings).toEqual(found);
    expect(each.affected('wheelbase')).toEqual([]);
  });

  it('tries every combination of two values of two facts', () => {
    const seen: string[] = [];
    withEach(disputed(2, 2), [], (s) => {
      seen.push(`${si(s, 'wheelbase')} ${si(s, 'gvm')}`);
      return [];
    });
    expect(seen.toSorted()).toEqual(['0 0', '0 1', '1 0', '1 1']);
  });

  it('tries the least of all and the greatest of all where combinations are too many', () => {
    const seen: number[][] = [];
    withEach(disputed(3, 3), [], (s) => {
      seen.push(names.slice(0, 3).map((name) => si(s, name)));
      return [];
    });
    expect(seen).toEqual([
      [0, 0, 0],
      [2, 2, 2],
    ]);
  });

  it('tries each value once, in whatever order they are stated', () => {
    const seen: number[] = [];
    withEach(new Map([['wheelbase', [3, 1, 3, 2, 1].map((x) => claim('wheelbase', x))]]), [], (s) => {
      seen.push(si(s, 'wheelbase'));
      return [];
    });
    expect(seen).toEqual([1, 2, 3]);
  });

  it('says with which value it comes out how, and asks for what is right', () => {
    const metre = (x: number) => ({ value: { ...exactly(x, 'm'), parts: new Map([['x', 0.01]]) } });
    const claims = [claim('wheelbase', 2.5, metre(2.5)), claim('wheelbase', 2.6, { ...metre(2.6), note: '020-b' })];
    const limit = { unit: 'mm', document: 'a text', basis: 'published' as const };
    const { findings } = withEach(new Map([['wheelbase', claims]]), [finding('a', 'conforms')], (s) => [
      finding('a', si(s, 'wheelbase') > 2.55 ? 'conforms' : 'does-not-conform', {
        limit,
        margin: 3,
        says: 'alone',
        todo: 'mend',
      }),
    ]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      id: 'a',
      outcome: 'inconclusive',
      says: 'with wheelbase 2500 ± 10 mm (build.md): does not conform; with wheelbase 2600 ± 10 mm (020-b): conforms',
      todo: 'find out which is right; it is told apart under what does not agree',
    });
    expect(findings[0]).not.toHaveProperty('limit');
    expect(findings[0]).not.toHaveProperty('margin');
  });

  it('is told without an uncertainty that nobody stated', () => {
    const assumed = { ...exactly(2.5, 'm'), parts: new Map([['x', 0.01]]), assumed: new Set(['x']) };
    const claims = [claim('wheelbase', 2.5, { value: assumed }), claim('wheelbase', 2.6)];
    const { findings } = withEach(new Map([['wheelbase', claims]]), [], (s) =>
      si(s, 'wheelbase') > 2.55 ? [finding('a', 'conforms')] : [],
    );
    expect(findings[0]!.says).toBe(
      'with wheelbase 2500 mm (build.md): not applicable; with wheelbase 2600 mm (build.md): conforms',
    );
  });

  it('keeps what stands with each, as it was found, and adds what only a value raises', () => {
    const { findings } = withEach(disputed(1, 2), [finding('b', 'conforms', { says: 'as found' })], (s) => [
      finding('b', 'conforms', { says: `with ${si(s, 'wheelbase')}` }),
      finding('c', 'not-measured', { says: `with ${si(s, 'wheelbase')}` }),
    ]);
    expect(findings.map((f) => [f.id, f.outcome, f.says])).toEqual([
      ['b', 'conforms', 'as found'],
      ['c', 'not-measured', 'with 0'],
    ]);
  });

  it('differs by what it still waits for', () => {
    const { findings } = withEach(disputed(1, 2), [], (s) => [
      finding('a', 'answered', { of: 'answer', ...(si(s, 'wheelbase') > 0 && { waits: 'for the certifier' }) }),
    ]);
    expect(findings[0]!.says).toContain('answered, for the certifier');
  });

  it.each<[Finding['of'], Outcome, Outcome, Outcome]>([
    ['answer', 'answered', 'requirement-not-met', 'requirement-not-met'],
    ['answer', 'contradicted', 'answered', 'contradicted'],
    ['answer', 'unanswered', 'requirement-not-met', 'requirement-not-met'],
    ['answer', 'not-applicable', 'answered', 'answered'],
    ['proof', 'seen', 'part-missing', 'part-missing'],
    ['proof', 'not-shown', 'part-missing', 'not-shown'],
    ['date', 'in-order', 'out-of-order', 'out-of-order'],
    ['requirement', 'conforms', 'does-not-conform', 'inconclusive'],
    ['practice', 'within-usual-practice', 'outside-usual-practice', 'inconclusive'],
    ['element', 'within', 'beyond', 'inconclusive'],
  ])('of class %s, %s and %s: %s', (of, one, other, outcome) => {
    for (const [low, high] of [
      [one, other],
      [other, one],
    ] as const) {
      const { findings } = withEach(disputed(1, 2), [finding('a', one, { of })], (s) => [
        finding('a', si(s, 'wheelbase') > 0 ? high : low, { of, says: si(s, 'wheelbase') > 0 ? 'high' : 'low' }),
      ]);
      expect(findings[0]!.outcome).toBe(outcome);
    }
  });

  it('that one value does not raise comes out as with the other where its class knows no inconclusive', () => {
    const { findings } = withEach(disputed(1, 2), [], (s) =>
      si(s, 'wheelbase') > 0
        ? [
            finding('a', 'out-of-order', {
              of: 'date',
              todo: 'mend',
              place: { file: 'x', line: 3, column: 1, path: 'p' },
            }),
          ]
        : [],
    );
    expect(findings[0]).toMatchObject({ outcome: 'out-of-order', place: { file: 'x' } });
  });

  it('that no value raises any more stays as it was found', () => {
    const found = [finding('a', 'does-not-conform')];
    expect(withEach(disputed(1, 2), found, () => []).findings).toEqual(found);
  });
});

describe('what depends on a fact', () => {
  const affected = (facts: number, outcome: (s: Supposed) => Outcome) => {
    const each = withEach(disputed(facts, 2), [], (s) => [finding('a', outcome(s)), finding('b', 'conforms')]);
    return names.slice(0, facts).map((name) => each.affected(name));
  };
  it('is what differs where that fact alone differs', () => {
    expect(affected(2, (s) => (si(s, 'gvm') > 0 ? 'conforms' : 'inconclusive'))).toEqual([[], ['a']]);
    expect(affected(2, (s) => (si(s, 'gvm') + si(s, 'wheelbase') > 1 ? 'conforms' : 'inconclusive'))).toEqual([
      ['a'],
      ['a'],
    ]);
  });
  it('is all that differs where facts were tried together', () => {
    expect(affected(3, (s) => (si(s, 'gvm') > 0 ? 'conforms' : 'inconclusive'))).toEqual([['a'], ['a'], ['a']]);
  });
  it('is told once for one title', () => {
    const each = withEach(disputed(1, 2), [], (s) =>
      ['left', 'right'].map((subject) =>
        finding(subject, si(s, 'wheelbase') > 0 ? 'conforms' : 'inconclusive', { title: 'Wall' }),
      ),
    );
    expect(each.affected('wheelbase')).toEqual(['Wall']);
    expect(each.affected('gvm')).toEqual([]);
  });
});
