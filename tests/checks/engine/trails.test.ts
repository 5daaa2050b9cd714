import { describe, expect, it } from 'vitest';
import { type Finding, isOpen, type Outcome } from '../../../src/checks/engine/finding.js';
import { followed, followTrails } from '../../../src/checks/engine/trails.js';

const finding = (item: string, outcome: Outcome, over: Partial<Finding> = {}): Finding =>
  ({
    id: item,
    note: 'n',
    subject: '',
    item,
    title: item,
    outcome,
    ...(outcome === 'answered' && { waits: followed }),
    of: 'answer',
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
const open = (...findings: Finding[]): string[] =>
  followTrails(findings, codes)
    .filter(isOpen)
    .map((f) => f.item);
const end = (outcome: Outcome): Finding => finding('twist', outcome, { of: 'requirement', form: 'test' });

describe('an answer that leads to other items', () => {
  it('closes along the whole trail when its end is settled, whatever the order of the notes', () => {
    expect(open(finding('engine', 'answered'), finding('body', 'answered'), end('conforms'))).toEqual([]);
    expect(open(end('conforms'), finding('body', 'answered'), finding('engine', 'answered'))).toEqual([]);
  });
  it('stays open along the whole trail while its end is open or nobody wrote of it, and names the next item', () => {
    const found = followTrails(
      [finding('engine', 'answered'), finding('body', 'answered'), end('not-measured')],
      codes,
    );
    expect(found.map((f) => [f.outcome, f.waits, f.todo])).toEqual([
      ['answered', followed, 'settle body'],
      ['answered', followed, 'settle twist'],
      ['not-measured', undefined, undefined],
    ]);
    expect(open(finding('engine', 'answered'))).toEqual(['engine']);
  });
  it('stays open while one of several findings of the next item is open', () => {
    const two = [
      finding('body', 'answered'),
      { ...end('conforms'), subject: 'left' },
      { ...end('not-measured'), subject: 'right' },
    ];
    expect(open(...two)).toEqual(['body', 'twist']);
    expect(open(...two.toReversed())).toEqual(['twist', 'body']);
  });
  it('stays open where it waits for something else, or leads nowhere', () => {
    expect(open(finding('body', 'answered', { waits: 'for the certifier' }), end('conforms'))).toEqual(['body']);
    expect(open(finding('nowhere', 'answered'), end('conforms'))).toEqual(['nowhere']);
  });
  it('stays open where it stops the note, and where two lead to each other', () => {
    expect(open(finding('body', 'answered', { stop: true }), end('conforms'))).toEqual(['body']);
    expect(open(finding('ring', 'answered'), finding('other', 'answered'))).toEqual(['ring', 'other']);
  });
});
