import { describe, expect, it } from 'vitest';
import type { Finding, Outcome } from '../../../src/checks/engine/finding.js';
import { followTrails } from '../../../src/checks/engine/trails.js';

const finding = (item: string, outcome: Outcome, over: Partial<Finding> = {}): Finding =>
  ({
    id: item,
    note: 'n',
    subject: '',
    item,
    title: item,
    outcome,
    form: 'answer',
    basis: 'practice',
    says: item,
    marks: [],
    place: { file: 'n.md', line: 1, column: 1, path: [] },
    ...over,
  }) as unknown as Finding;

const trails: Record<string, string[]> = { engine: ['body'], body: ['twist'], ring: ['other'], other: ['ring'] };
const codes = {
  leadsTo: (item: string) => (trails[item] ?? []).map((id) => ({ item: { id } })),
} as unknown as Parameters<typeof followTrails>[1];
const outcomes = (...findings: Finding[]): Record<string, string> =>
  Object.fromEntries(followTrails(findings, codes).map((f) => [f.item, f.outcome]));

describe('an answer that leads to other items', () => {
  it('closes along the whole trail when its end is settled, whatever the order of the notes', () => {
    const settled = { engine: 'conforming', body: 'conforming', twist: 'conforming' };
    expect(
      outcomes(finding('engine', 'undecided'), finding('body', 'undecided'), finding('twist', 'conforming')),
    ).toEqual(settled);
    expect(
      outcomes(finding('twist', 'conforming'), finding('body', 'undecided'), finding('engine', 'undecided')),
    ).toEqual(settled);
  });
  it('stays open along the whole trail while its end is open or nobody wrote of it, and names the next item', () => {
    const open = followTrails(
      [finding('engine', 'undecided'), finding('body', 'undecided'), finding('twist', 'missing')],
      codes,
    );
    expect(open.map((f) => [f.outcome, f.todo])).toEqual([
      ['undecided', 'settle body'],
      ['undecided', 'settle twist'],
      ['missing', undefined],
    ]);
    expect(outcomes(finding('engine', 'undecided'))).toEqual({ engine: 'undecided' });
  });
  it('stays open where it stops the note, and where two lead to each other', () => {
    expect(outcomes(finding('body', 'undecided', { stop: true }), finding('twist', 'conforming'))).toMatchObject({
      body: 'undecided',
    });
    expect(outcomes(finding('ring', 'undecided'), finding('other', 'undecided'))).toEqual({
      ring: 'undecided',
      other: 'undecided',
    });
  });
});
