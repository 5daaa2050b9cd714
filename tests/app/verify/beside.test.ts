import { describe, expect, it } from 'vitest';
import { checkBeside } from '../../../src/app/verify/beside.js';
import { sha256Of, type VerifiedDocument } from '../../../src/app/verify/document.js';
import { type Manifest, manifestText } from '../../../src/history/manifest.js';
import { manifest } from './made.js';

const bytes = (text: string) => Buffer.from(text);
const output = (path: string, text: string) => ({ path, bytes: text.length, sha256: sha256Of(bytes(text)) });
const inside = manifest({ inputs: [output('build.md', 'a'), output('notes/010.md', 'b')] });
const outputs = [
  output('submission.pdf', 'report'),
  output('findings.json', 'data'),
  output('submission.html', 'page'),
];
const written = { 'findings.json': 'data', 'submission.html': 'page' };
const document = {
  manifest: inside,
  sha256: sha256Of(bytes('report')),
  attached: new Map<string, Uint8Array>([['findings.json', bytes('data')]]),
} as unknown as VerifiedDocument;

interface Case {
  beside?: Partial<Manifest>;
  files?: Readonly<Record<string, string>>;
  /** What the tag names: that manifest, another, or none. */
  tag?: 'this' | 'other';
  whole?: boolean;
  /** In the place of the manifest. */
  text?: string | false;
}
async function checked({ beside = {}, files = written, tag, whole = false, text }: Case = {}) {
  const asked: string[] = [];
  const manifest = text ?? manifestText({ ...inside, outputs, ...beside });
  const all: Record<string, string> = { ...files, ...(manifest === false ? {} : { 'manifest.json': manifest }) };
  const found = await checkBeside(
    {
      names: Object.keys(all),
      read: (name) => {
        asked.push(name);
        return Promise.resolve(all[name] === undefined ? undefined : bytes(all[name]));
      },
      whole,
    },
    document,
    tag === undefined ? undefined : tag === 'this' ? sha256Of(bytes(manifest || '')) : sha256Of(bytes('another')),
  );
  const of = (name: string) => found.checks.find((c) => c.name === name);
  return { ...of('folder'), others: of('others'), page: found.page, asked };
}

describe('what lies beside a document', () => {
  it('matches where the tag names the manifest, and that the files', async () => {
    const found = await checked({ tag: 'this', whole: true });
    expect(found).toMatchObject({ state: 'matches', list: [] });
    expect(found.says).toContain('the one that the tag names');
    expect([found.page, found.others]).toEqual([undefined, undefined]);
  });

  it('matches by itself in what the document carries, and leaves the page for screens open', async () => {
    const found = await checked({ whole: true });
    expect(found).toMatchObject({
      state: 'matches',
      says: 'manifest.json and findings.json beside it say the same as inside',
    });
    expect(found.page).toEqual({ name: 'submission.html', bytes: bytes('page') });
    expect(found.others).toBeUndefined();
  });

  it('leaves the page open, too, where page and manifest were altered alike', async () => {
    const forged = {
      beside: { outputs: [...outputs.slice(0, 2), output('submission.html', 'Page')] },
      files: { ...written, 'submission.html': 'Page' },
    };
    expect(await checked(forged)).toMatchObject({ state: 'matches', page: { name: 'submission.html' } });
    expect(await checked({ ...forged, tag: 'other' })).toMatchObject({
      state: 'differs',
      list: ['manifest.json is not the one that the tag names'],
      page: { name: 'submission.html' },
    });
  });

  it('differs where findings and manifest were altered alike', async () => {
    const forged = {
      beside: { outputs: [outputs[0]!, output('findings.json', 'Data')] },
      files: { 'findings.json': 'Data' },
    };
    for (const text of [undefined, false] as const)
      expect(await checked({ ...forged, ...(text === false ? { text, whole: true } : {}) })).toMatchObject({
        state: 'differs',
        list: ['findings.json is not the one that the document carries'],
      });
  });

  it('leaves open what else lies in the folder, where that was named', async () => {
    const files = { ...written, 'reply.md': 'x', 'submission.htm': 'y' };
    for (const tag of ['this', undefined] as const)
      expect((await checked({ files, whole: true, ...(tag ? { tag } : {}) })).others).toMatchObject({
        state: 'unchecked',
        says: expect.stringMatching(/: reply\.md, submission\.htm$/),
      });
    expect((await checked({ files })).others).toBeUndefined();
    // Listing it in a manifest that nobody vouches for makes it no part of the document.
    const listed = { outputs: [...outputs, output('reply.md', 'x')] };
    expect(
      (await checked({ files: { ...written, 'reply.md': 'x' }, beside: listed, whole: true })).others,
    ).toBeDefined();
    expect(
      (await checked({ files: { ...written, 'reply.md': 'x' }, beside: listed, whole: true, tag: 'this' })).others,
    ).toBeUndefined();
  });

  it('leaves the page open where the manifest is gone and the folder was named', async () => {
    expect((await checked({ text: false, whole: true })).page).toEqual({
      name: 'submission.html',
      bytes: bytes('page'),
    });
    expect((await checked({ text: false })).page).toBeUndefined();
    expect(await checked({ text: false, whole: true, files: {} })).toMatchObject({
      page: undefined,
      others: undefined,
    });
  });

  it.each<[string, Case, string]>([
    [
      'a file of other content',
      { files: { ...written, 'submission.html': 'Page' } },
      'submission.html is not the file that was written',
    ],
    ['a file that is gone', { files: { 'findings.json': 'data' } }, 'submission.html is not there'],
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
      expect(found).toMatchObject({ state: 'differs', list: [`${path} is not there`] });
      expect(found.asked).not.toContain(path);
    },
  );

  it('is told where the manifest cannot be read', async () => {
    expect(await checked({ text: '{' })).toMatchObject({
      state: 'differs',
      list: ['manifest.json cannot be read (it is not JSON)'],
    });
  });
});
