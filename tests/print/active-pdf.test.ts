import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AFRelationship, type PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { activePapers } from '../../src/app/publish/document-papers.js';
import { activeContent } from '../../src/print/active-pdf.js';
import { emptyPdf } from '../history/invented.js';
import { buildFile, folderWith } from '../project/scratch.js';

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
      annotation({ S: 'URI', URI: PDFString.of('x') }, { RichMediaContent: {} }),
      'carries what a player would run',
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
  ])('%s is taken', async (_, change) => expect(await activeContent(await pdf(change))).toBeUndefined());

  it('that cannot be looked into is told as such', async () => {
    expect(await activeContent(Buffer.from('%PDF-1.4 invented'))).toBe('is no whole PDF');
    expect(await activeContent(Buffer.from('not a paper at all'))).toBe('is no whole PDF');
    expect(await activeContent((await pdf()).subarray(0, 60))).toBe('is no whole PDF');
    const locked = (user: string, change?: Change) => pdf(change, false, { userPassword: user, ownerPassword: 'b' });
    expect(await activeContent(await locked('a'))).toBe('has a password, so that nobody can look into it');
    expect(await activeContent(await locked(''))).toBeUndefined();
    expect(await activeContent(await locked('', put('OpenAction', script)))).toBe('runs a script');
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
