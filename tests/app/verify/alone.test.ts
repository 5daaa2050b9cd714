import { describe, expect, it } from 'vitest';
import { checkAlone } from '../../../src/app/verify/alone.js';
import type { Checked } from '../../../src/app/verify/checked.js';
import type { VerifiedDocument } from '../../../src/app/verify/document.js';
import { madeUp } from './made-up.js';

const of = (checks: readonly Checked[], name: string) => checks.find((c) => c.name === name)!;
type Made = Awaited<ReturnType<typeof madeUp>>;
const having = async (change: (document: Made) => Partial<VerifiedDocument> | undefined, name: string) => {
  const document = await madeUp();
  return of(checkAlone({ ...document, ...change(document) }), name);
};

describe('a document by itself', () => {
  it('matches in its attachments and pages as it was printed', async () => {
    const checks = checkAlone(await madeUp());
    expect(checks.map((c) => c.name)).toEqual(['file', 'attachments', 'pages']);
    expect(of(checks, 'attachments')).toMatchObject({ state: 'matches', list: [] });
    expect(of(checks, 'pages')).toMatchObject({ state: 'matches', list: [] });
  });
  it('differs as a file whose bytes have another digest', async () => {
    expect(await having(() => undefined, 'file')).toMatchObject({
      state: 'differs',
      list: ['print or fetch it again'],
    });
  });

  it.each<[string, (d: Made) => void, string[]]>([
    ['one is gone', (d) => d.attached.delete('findings.json'), ['findings.json is not attached any more']],
    [
      'one has other contents',
      (d) => d.attached.set('findings.json', Buffer.from('{}')),
      ['findings.json is not the file that was attached'],
    ],
    ['one came later', (d) => d.attached.set('more.txt', Buffer.from('x')), ['more.txt was attached later']],
    [
      'one is listed as an input that has another digest',
      (d) => {
        d.manifest.inputs[0]!.sha256 = '0'.repeat(64);
      },
      ['notes-010-a.md is listed as notes/010-a.md, which is listed with another digest'],
    ],
    [
      'one is listed as an input that is not there',
      (d) => {
        d.manifest.attachments[1]!.of = 'notes/020-b.md';
      },
      ['notes-010-a.md is listed as notes/020-b.md, which is listed with another digest'],
    ],
    [
      'a note is listed as written anew',
      (d) => {
        d.manifest.inputs[0]!.sha256 = '0'.repeat(64);
        d.manifest.attachments[1]!.rewritten = true;
      },
      ['notes-010-a.md is listed as notes/010-a.md, which is listed with another digest'],
    ],
    [
      'pages are listed of a paper that is not',
      (d) => {
        Object.assign(d.manifest.attachments[1]!, { of: 'papers/a.pdf', rewritten: true });
      },
      ['notes-010-a.md is listed as pages of papers/a.pdf, which is not listed'],
    ],
  ])('differs in its attachments where %s', async (_, change, list) => {
    const found = await having((d) => {
      change(d);
      return undefined;
    }, 'attachments');
    expect(found).toMatchObject({ state: 'differs', list });
  });
  it('matches with the pages of a paper, which have another digest than the paper', async () => {
    const found = await having((d) => {
      d.manifest.inputs.push({ path: 'papers/a.pdf', bytes: 1, sha256: '0'.repeat(64) });
      Object.assign(d.manifest.attachments[1]!, { of: 'papers/a.pdf', rewritten: true });
      return undefined;
    }, 'attachments');
    expect(found.state).toBe('matches');
  });
  it('differs in its attachments where two have one name', async () => {
    expect(await having(() => ({ twice: ['findings.json'] }), 'attachments')).toMatchObject({
      state: 'differs',
      list: ['findings.json is attached more than once'],
    });
  });

  it('differs on the page that was altered, and where one was added or taken out', async () => {
    const altered = await having((d) => {
      d.pdf.getPage(1).setSize(300, 201);
      return undefined;
    }, 'pages');
    expect(altered).toMatchObject({ state: 'differs', list: ['page 2 shows something else than was printed'] });
    const added = await having((d) => {
      d.pdf.addPage();
      return undefined;
    }, 'pages');
    expect(added).toMatchObject({ state: 'differs', list: ['it has 3 pages, 2 were printed'] });
    const gone = await having((d) => {
      d.pdf.removePage(1);
      return undefined;
    }, 'pages');
    expect(gone).toMatchObject({ state: 'differs', list: ['it has 1 pages, 2 were printed'] });
  });
  it('differs where the list of pages in the manifest does not fit its own digest', async () => {
    const found = await having((d) => {
      d.manifest.content = '0'.repeat(64);
      return undefined;
    }, 'pages');
    expect(found).toMatchObject({ state: 'differs', list: ['the list of pages in the manifest was altered'] });
  });
  it('differs where a part of the file cannot be read any more', async () => {
    const found = await having(() => ({ pdf: undefined as never }), 'pages');
    expect(found).toMatchObject({ name: 'pages', state: 'differs' });
    expect(found.says).toContain('altered after it was printed, or is damaged');
    expect(found.list).toHaveLength(1);
  });
});
