import { describe, expect, it } from 'vitest';
import { readRim } from '../../../src/project/designations/rim.js';
import { laws, problem, value } from './laws.js';

describe('rims', () => {
  it.each([
    ['6Jx15 ET25', '6Jx15 ET25', 0.1524, 15, 0.025],
    ['15x6J ET25', '6Jx15 ET25', 0.1524, 15, 0.025],
    ['6 J × 15 H2 ET 25', '6Jx15 ET25', 0.1524, 15, 0.025],
    ['7.5Jx16', '7.5Jx16', 0.1905, 16, undefined],
    ['15x6', '6x15', 0.1524, 15, undefined],
    ['5-1/2Jx14', '5.5Jx14', 0.1397, 14, undefined],
    ['5½Jx14 ET-12', '5.5Jx14 ET-12', 0.1397, 14, -0.012],
    ['7x16 +25', '7x16 ET25', 0.1778, 16, 0.025],
    ['7JJx16 ET0', '7JJx16 ET0', 0.1778, 16, 0],
    ['7x16 ET 25 mm', '7x16 ET25', 0.1778, 16, 0.025],
    ['10Jx10', '10Jx10', 0.254, 10, undefined],
  ])('%s is %s', (written, text, width, diameterCode, offset) => {
    const rim = value(readRim(written));
    expect(rim).toMatchObject({ text, width, diameterCode });
    expect(rim.offset).toBe(offset);
    expect(rim.diameter).toBeCloseTo(diameterCode * 0.0254, 12);
  });

  it.each([
    ['5x114.3', 'stud pattern'],
    ['13x13', 'beside the width'],
    ['6Jx15J', 'stands once'],
    ['6Jx15 steel', 'only the offset'],
    ['J6x15', 'write width'],
    ['15Jx6', 'beside the width'],
    ['2Jx15', 'from 3 to 14'],
    ['6Jx15.5', 'whole numbers'],
    ['6Jx15 ET500', 'within ±150'],
    ['6.5', 'write width'],
  ])('%s is refused', (text, hint) => {
    expect(problem(readRim(text)).hint).toContain(hint);
  });

  it('obeys the laws of readers', () => {
    expect(problem(readRim('6,5Jx15'))).toMatchObject({ code: 'decimal-comma', hint: 'write 6.5Jx15', at: [0, 3] });
    laws(readRim, ['6', '7.5', '5-1/2', 'J', 'JJ', 'x', '15', '16', ' ', 'ET', '25', '-12', '+', 'H2', 'mm']);
  });
});
