import { describe, expect, it } from 'vitest';
import { padTo, widestOf, wrap } from '../../src/commands/terminal/wrap.js';

/** Widths by Unicode Standard Annex #11 (East Asian Width): wide characters take two columns, marks over letters none. */
describe('text on a terminal', () => {
  it('lines of wide characters are no longer than the room', () => {
    expect(wrap('後輪 制動 試験 結果 良好', 20, '')).toEqual(['後輪 制動 試験 結果', '良好']);
    expect(wrap('a b', 2, '  ')).toEqual(['  a b']);
  });

  it('columns line up beside wide characters and marks', () => {
    expect(widestOf(['abc', '後輪', 'e\u0301'])).toBe(4);
    expect(widestOf([])).toBe(0);
    expect(padTo('後輪', 6)).toBe('後輪  ');
    expect(padTo('e\u0301', 3)).toBe('e\u0301  ');
    expect(padTo('longer', 3)).toBe('longer');
  });
});
