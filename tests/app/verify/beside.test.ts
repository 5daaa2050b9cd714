import { describe, expect, it } from 'vitest';
import { checkBeside } from '../../../src/app/verify/beside.js';
import { sha256Of } from '../../../src/app/verify/document.js';
import type { Manifest } from '../../../src/history/manifest.js';
import { madeUp } from './made-up.js';

const files: Record<string, Buffer> = { 'submission.pdf': Buffer.from('pages'), 'findings.json': Buffer.from('{}') };
const outputs = Object.entries(files).map(([path, bytes]) => ({ path, bytes: bytes.length, sha256: sha256Of(bytes) }));

async function beside(change: (m: Manifest) => object = (m) => m, there: Record<string, Buffer> = files) {
  const { manifest } = await madeUp();
  const asked: string[] = [];
  const found = await checkBeside(
    JSON.stringify(change({ ...structuredClone(manifest), outputs })),
    manifest,
    async (name) => {
      asked.push(name);
      return there[name];
    },
  );
  return { ...found, asked };
}

describe('what lies beside a document', () => {
  it('matches as it was written', async () => {
    expect(await beside()).toMatchObject({ name: 'folder', state: 'matches', list: [], asked: Object.keys(files) });
  });
  it('differs where a file is another one, or is not there', async () => {
    expect(await beside((m) => m, { ...files, 'findings.json': Buffer.from('{ }') })).toMatchObject({
      state: 'differs',
      list: ['findings.json is not the file that was written'],
    });
    expect(await beside((m) => m, { 'findings.json': files['findings.json']! })).toMatchObject({
      state: 'differs',
      list: ['submission.pdf is not there'],
    });
  });
  it('looks for nothing outside the folder', async () => {
    for (const path of ['../submission.pdf', '..\\submission.pdf', '/etc/hosts']) {
      const found = await beside((m) => ({ ...m, outputs: [{ path, bytes: 1, sha256: '0'.repeat(64) }] }));
      expect(found).toMatchObject({ state: 'differs', list: [`${path} is not there`], asked: [] });
    }
  });
  it.each<[string, (m: Manifest) => object, string]>([
    ['a value', (m) => ({ ...m, issue: 'B' }), 'issue (“B” and “undefined”)'],
    [
      'a value that is left out',
      ({ date: _, ...m }) => ({ ...m, date: '2026-03-15' }),
      'date (“2026-03-15” and “2026-03-14”)',
    ],
    [
      'an input',
      (m) => ({ ...m, inputs: [{ ...m.inputs[0]!, sha256: '1'.repeat(64) }, m.inputs[1]!] }),
      'inputs (notes/010-a.md)',
    ],
    ['an input more', (m) => ({ ...m, inputs: [...m.inputs, { ...m.inputs[0]!, path: 'x' }] }), 'inputs (x)'],
    ['an input less', (m) => ({ ...m, inputs: m.inputs.slice(0, 1) }), 'inputs (photos/a.jpg)'],
    ['a page', (m) => ({ ...m, pages: [m.pages[0]!, '2'.repeat(64)] }), 'pages (entry 2)'],
  ])('differs where the manifest beside it says otherwise in %s', async (_, change, says) => {
    expect(await beside(change)).toMatchObject({
      state: 'differs',
      list: [`manifest.json says otherwise than the one inside the PDF: ${says}`],
    });
  });
  it('differs where the manifest beside it cannot be read, and matches one that lists no outputs', async () => {
    const { manifest } = await madeUp();
    expect(await checkBeside('{', manifest, async () => undefined)).toMatchObject({
      state: 'differs',
      list: ['manifest.json cannot be read (it is not JSON)'],
    });
    expect((await checkBeside(JSON.stringify(manifest), manifest, async () => undefined)).state).toBe('matches');
  });
});
