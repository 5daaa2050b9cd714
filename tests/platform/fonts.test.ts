import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { fontFaces, fontFiles, fontsDirectory, shippedFonts, unprintable } from '../../src/platform/fonts.js';

/** The tables of a WOFF2 file that are stored as they are (W3C WOFF File Format 2.0, sections 4 and 5). */
function tablesOf(file: Buffer): Map<string, Buffer> {
  const known = [
    'cmap',
    'head',
    'hhea',
    'hmtx',
    'maxp',
    'name',
    'OS/2',
    'post',
    'cvt ',
    'fpgm',
    'glyf',
    'loca',
    'prep',
    'CFF ',
    'VORG',
    'EBDT',
    'EBLC',
    'gasp',
    'hdmx',
    'kern',
    'LTSH',
    'PCLT',
    'VDMX',
    'vhea',
    'vmtx',
    'BASE',
    'GDEF',
    'GPOS',
    'GSUB',
    'EBSC',
    'JSTF',
    'MATH',
    'CBDT',
    'CBLC',
    'COLR',
    'CPAL',
    'SVG ',
    'sbix',
    'acnt',
    'avar',
    'bdat',
    'bloc',
    'bsln',
    'cvar',
    'fdsc',
    'feat',
    'fmtx',
    'fvar',
    'gvar',
    'hsty',
    'just',
    'lcar',
    'mort',
    'morx',
    'opbd',
    'prop',
    'trak',
    'Zapf',
    'Silf',
    'Glat',
    'Gloc',
    'Feat',
    'Sill',
  ];
  let at = 48;
  const base128 = () => {
    let value = 0;
    for (;;) {
      const byte = file[at++] as number;
      value = value * 128 + (byte & 127);
      if (byte < 128) return value;
    }
  };
  const directory = Array.from({ length: file.readUInt16BE(12) }, () => {
    const flags = file[at++] as number;
    const tag = known[flags & 63] ?? file.toString('latin1', at, (at += 4));
    const original = base128();
    const transformed = tag === 'glyf' || tag === 'loca' ? flags >> 6 !== 3 : flags >> 6 !== 0;
    return { tag, length: transformed ? base128() : original };
  });
  const data = brotliDecompressSync(file.subarray(at, at + file.readUInt32BE(20)));
  let offset = 0;
  return new Map(directory.map(({ tag, length }) => [tag, data.subarray(offset, (offset += length))]));
}

/** The characters of a cmap of format 4 or 12 (OpenType 1.9, cmap). */
function charactersOf(cmap: Buffer): Set<number> {
  const characters = new Set<number>();
  for (let table = 0; table < cmap.readUInt16BE(2); table += 1) {
    const sub = cmap.subarray(cmap.readUInt32BE(8 + table * 8));
    const format = sub.readUInt16BE(0);
    if (format === 12) {
      for (let group = 0; group < sub.readUInt32BE(12); group += 1) {
        const [first, last] = [sub.readUInt32BE(16 + group * 12), sub.readUInt32BE(20 + group * 12)];
        for (let code = first; code <= last; code += 1) characters.add(code);
      }
    } else if (format === 4) {
      const double = sub.readUInt16BE(6);
      for (let segment = 0; segment < double; segment += 2) {
        const [last, first] = [sub.readUInt16BE(14 + segment), sub.readUInt16BE(16 + double + segment)];
        for (let code = first; code <= last && code < 0xffff; code += 1) characters.add(code);
      }
    } else throw new Error(`cmap of format ${format}`);
  }
  return characters;
}

const nameOf = (name: Buffer, id: number): string => {
  const strings = name.readUInt16BE(4);
  for (let record = 6; record < strings; record += 12) {
    if (name.readUInt16BE(record) === 3 && name.readUInt16BE(record + 6) === id) {
      const start = strings + name.readUInt16BE(record + 10);
      return Buffer.from(name.subarray(start, start + name.readUInt16BE(record + 8)))
        .swap16()
        .toString('utf16le');
    }
  }
  return '';
};

const files = readdirSync(fontsDirectory).filter((file) => file.endsWith('.woff2'));

describe('the shipped fonts', () => {
  test.each(files)('%s holds exactly the characters that the style sheet declares for it', (file) => {
    const declared = new RegExp(`url\\('${file}'\\)[^}]*unicode-range: ([^;]+);`).exec(fontFaces(''))?.[1] ?? '';
    const expected = new Set(
      declared.split(',').flatMap((range) => {
        const [, first = '', last = first] = /U\+([0-9A-F]+)(?:-([0-9A-F]+))?/.exec(range) ?? [];
        return Array.from(
          { length: parseInt(last, 16) - parseInt(first, 16) + 1 },
          (_, index) => parseInt(first, 16) + index,
        );
      }),
    );
    expect([...charactersOf(tablesOf(readFileSync(join(fontsDirectory, file))).get('cmap') as Buffer)].sort()).toEqual(
      [...expected].sort(),
    );
  });

  test('go by the names that are allowed in a PDF', () => {
    const names = files.map((file) =>
      nameOf(tablesOf(readFileSync(join(fontsDirectory, file))).get('name') as Buffer, 6),
    );
    expect(names.sort()).toEqual([...shippedFonts].sort());
  });

  test('can set mathematics, and are together smaller than half a megabyte', () => {
    expect(tablesOf(readFileSync(join(fontsDirectory, 'NotoSansMath-Regular.woff2'))).has('MATH')).toBe(true);
    expect(files.reduce((sum, file) => sum + readFileSync(join(fontsDirectory, file)).length, 0)).toBeLessThan(500_000);
  });

  test('come with their licence', () => {
    expect(readFileSync(join(fontsDirectory, 'OFL.txt'), 'utf8')).toContain('SIL OPEN FONT LICENSE Version 1.1');
  });
});

describe('the style sheet of the fonts', () => {
  test('names files under a URL, which are there', () => {
    expect(fontFaces('fonts/')).toContain(`url('fonts/NotoSans-Regular.woff2')`);
    for (const [url, { path }] of fontFiles('fonts/')) {
      expect(fontFaces('fonts/')).toContain(`url('${url}')`);
      expect(existsSync(path)).toBe(true);
    }
  });
});

describe('unprintable characters', () => {
  test('are those that no font holds', () => {
    expect(
      unprintable(
        '± − × ÷ ≤ ≥ ≈ ≠ ° µ μ ² ³ ⁴ √ ∑ ∫ α…ω Α…Ω → ← ↑ ↓ ✓ ✗ ☐ ☑ ⚠ ⌀ ½ ₁ ⁻ “” ‘’ – — € Łódź Nguyễn Жук\n\t\u00a0\u200b✔\ufe0f',
      ),
    ).toEqual([]);
    expect(unprintable('a 車 b 🚗 車')).toEqual(['車', '🚗']);
    expect(unprintable('')).toEqual([]);
  });
});
