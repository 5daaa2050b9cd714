import { expect, it } from 'vitest';
import { amount } from '../../../src/render/drawings/words.js';

it('amounts stand without their uncertainty, and to as many places as it leaves', () => {
  expect(amount({ si: 0.665123, unit: '%', expanded: 0.027 })).toBe('66.5 %');
  expect(amount({ si: 2.330123, unit: 'mm', expanded: 0.012 })).toBe('2330 mm');
  expect(amount({ si: 0.0436332, unit: 'deg', expanded: 0.0017 })).toBe('2.500°');
  expect(amount({ si: 0.0025, unit: 'mm' })).toBe('2.5 mm');
});
