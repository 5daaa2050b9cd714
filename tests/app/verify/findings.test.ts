import { describe, expect, it } from 'vitest';
import { checkFindings } from '../../../src/app/verify/findings.js';

const finding = (id: string, outcome = 'conforms', says = '2.48 mm') => ({ id, outcome, says });
const text = (...findings: object[]) => JSON.stringify({ counts: {}, findings });
const list = (carried: string, again: string) => checkFindings(carried, again).list;

describe('the findings of a document against those of its commit', () => {
  it('match to the byte', () => {
    expect(checkFindings(text(finding('a')), text(finding('a')))).toMatchObject({
      name: 'findings',
      state: 'matches',
      list: [],
    });
  });
  it.each<[string, string, string, string[]]>([
    [
      'came out otherwise',
      text(finding('a'), finding('b')),
      text(finding('a'), finding('b', 'inconclusive', '2.1 mm')),
      ['b is conforms in the document; examined again it is inconclusive (2.1 mm)'],
    ],
    [
      'is left out',
      text(finding('a')),
      text(finding('a'), finding('b')),
      ['b is not in the document; examined again it is conforms'],
    ],
    [
      'is put in',
      text(finding('a'), finding('b')),
      text(finding('a')),
      ['b is in the document, and not found when examined again'],
    ],
    [
      'reads otherwise',
      text(finding('a', 'conforms', '2.9 mm')),
      text(finding('a')),
      ['a reads “2.9 mm” in the document; examined again “2.48 mm”'],
    ],
    [
      'differs in what it does not say',
      text({ ...finding('a'), margin: 1 }),
      text({ ...finding('a'), margin: 2 }),
      ['a reads “2.48 mm” in the document; examined again “2.48 mm”'],
    ],
    [
      'says nothing',
      text({ id: 'a', outcome: 'x' }),
      text({ id: 'a', outcome: 'y' }),
      ['a is x in the document; examined again it is y ()'],
    ],
  ])('differ where one %s', (_, carried, again, says) => {
    expect(checkFindings(carried, again).state).toBe('differs');
    expect(list(carried, again)).toEqual(says);
  });
  it('differ in their order or counts alone', () => {
    const one = text(finding('a'), finding('b'));
    expect(list(one, text(finding('b'), finding('a')))).toEqual(['their summary or order was altered']);
    expect(list(one, one.replace('"counts":{}', '"counts":{"a":1}'))).toEqual(['their summary or order was altered']);
  });
  it('differ where they cannot be read', () => {
    for (const broken of ['', '{}', '[]', '{"findings":{}}', 'null'])
      expect(checkFindings(broken, text(finding('a')))).toMatchObject({
        state: 'differs',
        says: 'the attached findings cannot be read',
      });
  });
});
