import { describe, expect, it } from 'vitest';
import { checkFindings } from '../../../src/app/verify/findings.js';

const wall = { id: '020/wall', outcome: 'conforms', says: 'measured 3 mm' };
const weld = { id: '020/weld', outcome: 'not-shown', says: 'no photo' };
const text = (...findings: object[]) => JSON.stringify({ findings });
const list = (carried: string, again: string) => checkFindings(carried, again).list;

describe('findings of a document against those of examining again', () => {
  it('match where they are the same text, whatever it is', () => {
    expect(checkFindings(text(wall), text(wall)).state).toBe('matches');
    expect(checkFindings('', '').state).toBe('matches');
  });

  it('differ by an outcome, with both told', () => {
    const found = checkFindings(
      text(wall, weld),
      text({ ...wall, outcome: 'inconclusive', says: 'measured 2.9 mm' }, weld),
    );
    expect(found.state).toBe('differs');
    expect(found.list).toEqual([
      '020/wall is conforms in the document; examined again it is inconclusive (measured 2.9 mm)',
    ]);
  });

  it('differ by any word of a finding', () => {
    expect(list(text(wall), text({ ...wall, says: 'measured 3.1 mm' }))).toEqual([
      '020/wall reads “measured 3 mm” in the document; examined again “measured 3.1 mm”',
    ]);
    expect(list(text(wall), text({ ...wall, marks: ['confirm'] }))).toHaveLength(1);
    expect(list(text({ id: 'a', outcome: 'seen' }), text({ id: 'a', outcome: 'seen', more: 1 }))).toEqual([
      'a reads “” in the document; examined again “”',
    ]);
    expect(list(text({ id: 'a', outcome: 'seen' }), text({ id: 'a', outcome: 'not-shown' }))).toEqual([
      'a is seen in the document; examined again it is not-shown ()',
    ]);
  });

  it('differ by one that was taken out and by one that was put in', () => {
    expect(list(text(wall), text(wall, weld))).toEqual([
      '020/weld is not in the document; examined again it is not-shown',
    ]);
    expect(list(text(wall, weld), text(weld))).toEqual([
      '020/wall is in the document, and not found when examined again',
    ]);
  });

  it('differ by their order alone', () => {
    const found = checkFindings(text(wall, weld), text(weld, wall));
    expect(found.state).toBe('differs');
    expect(found.list).toEqual(['their summary or order was altered']);
  });

  it.each(['not JSON', 'null', '7', '{}', '{"findings": 3}', '{"findings": {"id": "a"}}'])(
    'are not vouched for where one side reads %s',
    (broken) => {
      for (const found of [checkFindings(broken, text(wall)), checkFindings(text(wall), broken)]) {
        expect(found.state).toBe('differs');
        expect(found.says).toBe('the attached findings cannot be read');
      }
    },
  );
});
