import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { htmlOf } from '../../src/render/page.js';

/** Characters that turn the direction of writing or cannot be seen (UAX #9, 2.1 to 2.4) are shown wherever they stand. */
const hidden = ['\u202E', '\u202A', '\u2066', '\u2069', '\u200E', '\u061C', '\u200B', '\u0007', '\u2028'];

describe('a character that cannot be seen', () => {
  it.each(hidden.map((c) => [c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0'), c]))(
    'U+%s is shown',
    (code, c) => {
      const says = `‹U+${code}›`;
      expect(htmlOf([h('p', `2.48${c} mm`)])).toBe(`<p>2.48${says} mm</p>`);
      for (const attribute of ['alt', 'title', 'href', 'id', 'ariaLabel', 'dataNote', 'content']) {
        const html = htmlOf([h('div', [h('span', { [attribute]: `2.48${c}` }, 'x')])]);
        expect(html, attribute).toContain(`2.48${says}"`);
        expect(html, attribute).not.toContain(c);
      }
    },
  );

  it('but a line may break and be set in', () => {
    expect(htmlOf([h('pre', { title: 'a\nb' }, 'a\n\tb')])).toBe('<pre title="a\nb">a\n\tb</pre>');
    expect(htmlOf([h('p', { title: 'a\tb' })])).toContain('‹U+0009›');
  });
});
