import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonText } from '../../src/platform/json-text.js';

/** Control characters but the line end, C1 among them (ECMA-48: U+009B begins a sequence), and what is not seen (Unicode, Cf). */
const obeyed = /(?!\n)\p{Cc}|[\u200b\u202a-\u202e\u2066-\u2069\u{e0041}\u2028]/u;

describe('JSON for a terminal', () => {
  it('holds nothing that is obeyed or not seen, and reads back as it was', () => {
    const text = 'a\u009b31mb\u202egnp\u202c \u200b\u2066\u{e0041}\u2028\u007f\u001b\n"\\ ‰ é 山';
    expect(JSON.stringify(text)).toMatch(obeyed);
    const json = jsonText({ [text]: [text] });
    expect(json).not.toMatch(obeyed);
    expect(json).toContain('\\u009b31mb\\u202egnp');
    expect(json).toContain('\\udb40\\udc41');
    expect(JSON.parse(json)).toEqual({ [text]: [text] });
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (data) => {
        const written = jsonText(data);
        expect(written).not.toMatch(obeyed);
        expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify(data)));
      }),
    );
  });
});
