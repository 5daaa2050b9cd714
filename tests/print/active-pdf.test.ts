import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { AFRelationship, type PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { activePapers } from '../../src/app/publish/document-papers.js';
import { activeContent } from '../../src/print/active-pdf.js';
import { emptyPdf } from '../history/invented.js';
import { buildFile, folderWith } from '../project/scratch.js';
import { good, written } from './written-pdf.js';

/** A page with what `change` does to it. Names of keys and actions: ISO 32000-1:2008, 12.6 and 7.7. */
type Change = (pdf: PDFDocument, catalog: PDFDict) => unknown;
async function pdf(
  change: Change = () => {},
  compressed = true,
  passwords?: { userPassword: string; ownerPassword: string },
): Promise<Uint8Array> {
  const made = await PDFDocument.create();
  made.addPage([200, 100]).drawText('Mill certificate, invented', { size: 10 });
  await change(made, made.catalog);
  if (passwords) made.encrypt(passwords);
  return made.save({ useObjectStreams: compressed });
}
const put =
  (key: string, value: object): Change =>
  (made, catalog) =>
    catalog.set(PDFName.of(key), made.context.register(made.context.obj(value as never)));
const script = { S: 'JavaScript', JS: PDFString.of('app.alert(1)') };
const annotation =
  (action: object, more: object = {}): Change =>
  (made) => {
    const { context } = made;
    made
      .getPage(0)
      .node.set(
        PDFName.of('Annots'),
        context.obj([
          context.register(
            context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 90, 90], A: action, ...more } as never),
          ),
        ]),
      );
  };

describe('a PDF paper', () => {
  it.each<[string, Change, string]>([
    ['that runs a script when it is opened', put('OpenAction', script), 'runs a script'],
    [
      'with a script under a name',
      put('Names', { JavaScript: { Names: [PDFString.of('x'), script] } }),
      'runs a script',
    ],
    ['with a script for its closing', put('AA', { WC: script }), 'does something when it is opened, closed or printed'],
    [
      'that starts a program when it is opened',
      put('OpenAction', { S: 'Launch', F: PDFString.of('calc.exe') }),
      'starts a program',
    ],
    [
      'that fetches an address when it is opened',
      put('OpenAction', { S: 'URI', URI: PDFString.of('https://example.org/') }),
      'does something when it is opened',
    ],
    ['with a link that starts a program', annotation({ S: 'Launch', F: PDFString.of('calc.exe') }), 'starts a program'],
    [
      'with a link, and a script behind it',
      annotation({ S: 'URI', URI: PDFString.of('https://example.org/'), Next: [script] }),
      'runs a script',
    ],
    [
      'with a form that is sent away',
      annotation({ S: 'SubmitForm', F: PDFString.of('https://example.org/') }),
      'sends what is filled in to somewhere',
    ],
    [
      'with a form of scripts',
      put('AcroForm', { Fields: [], XFA: PDFString.of('<xdp/>') }),
      'carries a form that may run scripts',
    ],
    [
      'that carries another file',
      async (made) =>
        made.attach(Buffer.from('MZ'), 'tool.exe', {
          mimeType: 'application/octet-stream',
          afRelationship: AFRelationship.Data,
        }),
      'carries another file',
    ],
    [
      'with a player',
      annotation({ S: 'URI', URI: PDFString.of('https://example.org/') }, { RichMediaContent: {} }),
      'carries what a player would run',
    ],
    [
      'with a link into another file',
      annotation({ S: 'GoToR', F: PDFString.of('a.pdf'), D: [0] }),
      'opens another file',
    ],
    ['with a link into a file that it carries', annotation({ S: 'GoToE', T: {} }), 'opens a file that it carries'],
    ['with a film', annotation({ S: 'Movie' }), 'plays what it carries or fetches'],
    ['with a sound', annotation({ S: 'Sound' }), 'plays what it carries or fetches'],
    ['with a rendition', annotation({ S: 'Rendition', OP: 0 }), 'plays what it carries or fetches'],
    ['with a view of a model', annotation({ S: 'GoTo3DView' }), 'shows a model that a player would run'],
    ['that hides something', annotation({ S: 'Hide', T: PDFString.of('x') }), 'does more than show its pages'],
    ['that switches layers', annotation({ S: 'SetOCGState', State: [] }), 'does more than show its pages'],
    ['with an action nobody knows', annotation({ S: 'Whatever' }), 'does more than show its pages'],
    [
      'with a named action that is no page move',
      annotation({ S: 'Named', N: 'Print' }),
      'does more than show its pages',
    ],
    ...[
      'javascript:alert(1)',
      ' java\tscript:alert(1)',
      'file:///etc/hosts',
      'data:text/html,x',
      'smb://host/x',
      '\\\\host\\x',
      'x',
    ].map((address): [string, Change, string] => [
      `with a link to ${JSON.stringify(address)}`,
      annotation({ S: 'URI', URI: PDFString.of(address) }),
      'offers a link to something else than a page or mail address',
    ]),
    ...['FileAttachment', 'Sound', 'Movie', 'Screen', '3D', 'RichMedia'].map((Subtype): [string, Change, string] => [
      `with an annotation ${Subtype}`,
      (made) =>
        made
          .getPage(0)
          .node.set(
            PDFName.of('Annots'),
            made.context.obj([made.context.register(made.context.obj({ Type: 'Annot', Subtype, Rect: [0, 0, 9, 9] }))]),
          ),
      {
        FileAttachment: 'carries another file',
        '3D': 'carries what a player would run',
        RichMedia: 'carries what a player would run',
      }[Subtype] ?? 'plays what it carries or fetches',
    ]),
    ['that is a collection of files', put('Collection', { View: 'D' }), 'carries other files'],
    [
      'with a base for its links',
      put('URI', { Base: PDFString.of('javascript:') }),
      'offers a link to something else than a page or mail address',
    ],
    [
      'with a field that does something',
      put('AcroForm', { Fields: [{ FT: 'Tx', T: PDFString.of('a'), AA: { K: script } }] }),
      'does something when it is opened, closed or printed',
    ],
  ])('%s is told so, whether its objects are compressed or not', async (_, change, says) => {
    expect(await activeContent(await pdf(change))).toBe(says);
    expect(await activeContent(await pdf(change, false))).toBe(says);
  });

  it('whose key is spelled with escapes is told so all the same', async () => {
    const plain = Buffer.from(await pdf(put('OpenAction', script), false)).toString('latin1');
    expect(plain).toContain('/JavaScript');
    expect(await activeContent(Buffer.from(plain.replaceAll('/JavaScript', '/J#61vaScript'), 'latin1'))).toBe(
      'runs a script',
    );
  });

  it.each<[string, Change]>([
    ['that only shows', () => {}],
    ['with a link to follow by hand', annotation({ S: 'URI', URI: PDFString.of('https://example.org/') })],
    [
      'that opens at its first page',
      (made, catalog) => catalog.set(PDFName.of('OpenAction'), made.context.obj([made.getPage(0).ref, 'Fit'])),
    ],
    ['with a link to write a mail', annotation({ S: 'URI', URI: PDFString.of('mailto:jo@workshop.example') })],
    ['with a link to a place in it', annotation({ S: 'GoTo', D: [0, 'Fit'] })],
    ['with a link to its next page', annotation({ S: 'Named', N: 'NextPage' })],
    [
      'with fields to fill in',
      put('AcroForm', {
        Fields: [
          { FT: 'Tx', T: PDFString.of('a') },
          { FT: 'Ch', T: PDFString.of('b') },
          { FT: 'Btn', T: PDFString.of('c') },
        ],
      }),
    ],
  ])('%s is taken', async (_, change) => expect(await activeContent(await pdf(change))).toBeUndefined());

  it('that cannot be looked into is told as such', async () => {
    expect(await activeContent(Buffer.from('%PDF-1.4 invented'))).toBe('is no whole PDF');
    expect(await activeContent(Buffer.from('not a paper at all'))).toBe('is no whole PDF');
    expect(await activeContent((await pdf()).subarray(0, 60))).toBe('is no whole PDF');
    const locked = (user: string, change?: Change) => pdf(change, false, { userPassword: user, ownerPassword: 'b' });
    expect(await activeContent(await locked('a'))).toBe('has a password, so that nobody can look into it');
    // Words that a password keeps from being read could be the address of a link.
    expect(await activeContent(await locked(''))).toBe('has a password, so that nobody can look into it');
  });
});

describe('a PDF paper that one viewer reads otherwise than another', () => {
  const evil = '<< /Type /Catalog /Pages 2 0 R /OpenAction << /S /JavaScript /JS (app.alert\\(1\\)) >> >>';

  it('is taken where both read the same', async () => {
    expect(await activeContent(written(good))).toBeUndefined();
  });
  it('is told by what is written in a stream of a page, where its table leads into it', async () => {
    const before = `9 0 obj\n<< /Length 200 >>\nstream\n1 0 obj\n${evil}\nendobj\n`.padEnd(240, ' ');
    const text = `${before}\nendstream\nendobj\n`;
    const inside = '%PDF-1.4\n'.length + text.indexOf('1 0 obj');
    expect(await activeContent(written(good, { before: text, at: { 1: inside } }))).toBe('runs a script');
  });
  it('is told by an earlier version that its table still leads to', async () => {
    const before = `1 0 obj\n${evil}\nendobj\n`;
    expect(await activeContent(written(good, { before, at: { 1: 9 } }))).toBe('runs a script');
    expect(await activeContent(written(good, { before }))).toBe('runs a script');
  });
  it.each([
    ['beside an object', { 1: 12 }],
    ['to another object', { 2: 9 }],
    ['beyond its end', { 3: 99999 }],
  ])('is refused where its table leads %s', async (_, at) => {
    expect(await activeContent(written(good, { at }))).toBe(
      'is no whole PDF: its table of objects leads to something else than an object',
    );
  });
  it('is refused where words between a number and its object hide it from one of them', async () => {
    const hidden = written({ ...good, 4: 'null' })
      .toString('latin1')
      .replace('1 0 obj', '1%\n0 obj');
    expect(await activeContent(Buffer.from(hidden, 'latin1'))).toMatch(/no whole PDF/);
  });
  it.each<[string, (filter: string, content: Buffer) => string]>([
    [
      'a page',
      (filter, content) =>
        `<< /Filter ${filter} /Length ${content.length} >>\nstream\n${content.toString('latin1')}\nendstream`,
    ],
    [
      'objects',
      (filter, content) =>
        `<< /Type /ObjStm /N 1 /First 4 /Filter ${filter} /Length ${content.length} >>\nstream\n${content.toString('latin1')}\nendstream`,
    ],
  ])('is refused where %s unpacks to more than a paper can be, within bounded time', async (_, packed) => {
    const bomb = deflateSync(Buffer.alloc(200 * 2 ** 20), { level: 9 });
    expect(bomb.length).toBeLessThan(2 ** 20);
    const began = performance.now();
    expect(await activeContent(written({ ...good, 4: packed('/FlateDecode', bomb) }))).toBe(
      'unpacks to more than a paper can be',
    );
    expect(
      await activeContent(written({ ...good, 4: packed('[/FlateDecode /FlateDecode]', deflateSync(bomb)) })),
    ).toMatch(/is packed twice over/);
    expect(performance.now() - began).toBeLessThan(10_000);
  });
});

it('the demo has none that does more than show', async () => {
  const folder = 'builds/sedge/papers';
  for (const name of readdirSync(folder).filter((n) => n.endsWith('.pdf')))
    expect(await activeContent(readFileSync(join(folder, name))), name).toBeUndefined();
});

it('is refused where a note names it', async () => {
  const note =
    '---\nkind: general\ntitle: Roof\npapers:\n  - { file: a.pdf, shows: the receipt }\n  - { file: b.pdf, shows: the certificate }\n---\n';
  const loaded = await load(
    folderWith({
      'build.md': buildFile,
      'notes/010-roof.md': note,
      'papers/a.pdf': emptyPdf,
      'papers/b.pdf': await pdf(put('OpenAction', script)),
    }),
  );
  if (!('build' in loaded)) throw new Error('not read');
  expect(await activePapers(loaded.build)).toMatchObject([
    {
      code: 'paper-refused',
      line: 6,
      found: '`papers/b.pdf`, which runs a script',
      expected: 'a PDF that only shows its pages',
    },
  ]);
});
