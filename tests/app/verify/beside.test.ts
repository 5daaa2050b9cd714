import { describe, expect, it } from 'vitest';
import { checkBeside } from '../../../src/app/verify/beside.js';
import { sha256Of } from '../../../src/app/verify/document.js';
import { type Manifest, manifestText } from '../../../src/history/manifest.js';
import { manifest } from './made.js';

const bytes = (text: string) => Buffer.from(text);
const output = (path: string, text: string) => ({ path, bytes: text.length, sha256: sha256Of(bytes(text)) });
const inside = manifest({ inputs: [output('build.md', 'a'), output('notes/010.md', 'b')] });
const outputs = [output('report.pdf', 'report'), output('data.json', 'data')];

interface Case {
  beside?: Partial<Manifest>;
  files?: Readonly<Record<string, string>>;
}
function checked({ beside = {}, files = { 'report.pdf': 'report', 'data.json': 'data' } }: Case = {}) {
  const asked: string[] = [];
  const found = checkBeside(manifestText({ ...inside, outputs, ...beside }), inside, async (name) => {
    asked.push(name);
    return files[name] === undefined ? undefined : bytes(files[name]);
  });
  return found.then((f) => ({ ...f, asked }));
}

describe('what lies beside a document', () => {
  it('matches where manifest and files are those that were written', async () => {
    expect(await checked()).toMatchObject({ state: 'matches', list: [], asked: ['report.pdf', 'data.json'] });
    expect(await checked({ beside: { outputs: undefined } })).toMatchObject({ state: 'matches', asked: [] });
  });

  it.each<[string, Case, string]>([
    [
      'a file of other content',
      { files: { 'report.pdf': 'Report', 'data.json': 'data' } },
      'report.pdf is not the file that was written',
    ],
    ['a file that is gone', { files: { 'report.pdf': 'report' } }, 'data.json is not there'],
    [
      'a field more',
      { beside: { issue: 'B' } },
      'manifest.json says otherwise than the one inside the PDF: issue (“B” and “undefined”)',
    ],
    [
      'a field less',
      { beside: { commit: undefined } },
      `manifest.json says otherwise than the one inside the PDF: commit (“undefined” and “${'c'.repeat(40)}”)`,
    ],
    [
      'one altered input',
      { beside: { inputs: [output('build.md', 'a'), output('notes/010.md', 'B')] } },
      'manifest.json says otherwise than the one inside the PDF: inputs (notes/010.md)',
    ],
    [
      'one input less',
      { beside: { inputs: [output('build.md', 'a')] } },
      'manifest.json says otherwise than the one inside the PDF: inputs (notes/010.md)',
    ],
    [
      'one altered page',
      { beside: { pages: ['1'.repeat(64), '3'.repeat(64)] } },
      'manifest.json says otherwise than the one inside the PDF: pages (entry 2)',
    ],
    [
      'one page less',
      { beside: { pages: ['1'.repeat(64)] } },
      'manifest.json says otherwise than the one inside the PDF: pages (entry 0)',
    ],
  ])('is told for %s', async (_, of, says) => {
    const found = await checked(of);
    expect(found.state).toBe('differs');
    expect(found.list).toEqual([says]);
  });

  it('tells both values of a field that differs', async () => {
    expect((await checked({ beside: { date: '2026-01-02' } })).list).toEqual([
      'manifest.json says otherwise than the one inside the PDF: date (“2026-01-02” and “2026-01-01”)',
    ]);
  });

  it.each(['../secret', 'a/b.pdf', '..\\secret', '/etc/passwd'])(
    'reads no file %s outside the folder',
    async (path) => {
      const found = await checked({ beside: { outputs: [output(path, 'x')] }, files: { [path]: 'x' } });
      expect(found).toMatchObject({ state: 'differs', list: [`${path} is not there`], asked: [] });
    },
  );

  it('is told where the manifest cannot be read', async () => {
    const found = await checkBeside('{', inside, () => Promise.resolve(undefined));
    expect(found).toMatchObject({ state: 'differs', list: ['manifest.json cannot be read (it is not JSON)'] });
  });
});
