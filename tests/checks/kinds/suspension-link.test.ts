import { describe, expect, it } from 'vitest';
import { examineNote } from './bench.js';

describe('what stops a note on links', () => {
  it('a part that was worked on, whatever an answer of the same note says', async () => {
    const { one } = await examineNote('suspension-link', 'worked: rechromed\nanswers: { links.forged-worked: no }');
    expect(one('links.forged-worked')).toMatchObject({ result: 'against', stop: true, place: { line: 4 } });
    expect(one('links.weld-report-flaws').result).toBe('missing');
  });

  it('a rod end bolted from one side, and nothing where both are in order', async () => {
    expect((await examineNote('suspension-link', 'single-shear: yes')).one('links.rod-end-shear')).toMatchObject({
      result: 'against',
      stop: true,
    });
    const { result: outcome } = await examineNote('suspension-link', 'worked: none\nsingle-shear: no');
    expect([outcome('links.forged-worked'), outcome('links.rod-end-shear')]).toEqual(['met', 'met']);
  });

  it('leads exchanged suspension to the brakes, and only that', async () => {
    expect(
      (await examineNote('suspension-link', 'suspension-exchanged: yes')).result('brakes.suspension-exchanged'),
    ).toBe('missing');
    expect(
      (await examineNote('suspension-link', 'suspension-exchanged: no')).result('brakes.suspension-exchanged'),
    ).toBe('out');
    expect((await examineNote('suspension-link', '')).one('brakes.suspension-exchanged')).toMatchObject({
      result: 'missing',
      todo: 'state suspension-exchanged',
    });
  });
});
