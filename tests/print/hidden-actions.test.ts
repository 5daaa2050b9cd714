import { describe, expect, it, vi } from 'vitest';
import { knownContent } from '../../src/app/publish/known-papers.js';
import { activeContent } from '../../src/print/active-pdf.js';
import { launchBrowser } from '../../src/print/launch.js';
import { folderWith } from '../project/scratch.js';
import { good, stream, updated, written, writtenInStreams } from './written-pdf.js';

/** PDF papers that hide what they do. Clauses are those of ISO 32000-1:2008. */
const page = (entries: string): string =>
  `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 99 99] /Contents 4 0 R ${entries} >>`;
const linked = (action: string): string =>
  page(`/Annots [<< /Type /Annot /Subtype /Link /Rect [0 0 9 9] /A ${action} >>]`);
const drawing = (entries: string): Record<number, string> => ({
  3: page('/Resources << /XObject << /X 6 0 R >> >>'),
  6: stream(`/Type /XObject ${entries}`, 'q Q'),
});

describe('a PDF paper does more than show', () => {
  it.each([
    ['a page', '/Pg 3 0 R'],
    ['the name of an element', '/Type /StructElem'],
    ['both, and a parent', '/Type /StructElem /Pg 3 0 R /P 3 0 R /K 0'],
  ])('also where its action has %s, as elements of a structure have', async (_, more) => {
    const says = (action: string) => activeContent(written({ ...good, 3: linked(`<< ${action} ${more} >>`) }));
    expect(await says('/S /Launch /F (calc.exe)')).toBe('starts a program');
    for (const kind of ['Sound', 'Thread', 'ResetForm', 'Whatever', 'GoToR'])
      expect(await says(`/S /${kind}`), kind).toBeDefined();
    expect(await says('/S /URI /URI (file:///etc/hosts)')).toBe(
      'offers a link to something else than a page or mail address',
    );
  });

  // Words of a link: 12.6.4.7 (ASCII); how they may be written: 7.3.4.
  it.each([
    ['octal digits', '(\\152avascript:alert\\(1\\))'],
    ['hexadecimal digits', '<6a 61 76 61 73 63 72 69 70 74 3a 61>'],
    ['lines that go on', '(java\\\nscript:a)'],
    ['needless escapes', '(\\file:///etc/hosts)'],
    ['two bytes a letter', '<feff006a006100760061007300630072006900700074003a0061>'],
    ['two bytes a letter, although harmless', '<feff00680074007400700073003a002f002f0061002e0062>'],
    ['a mark of its encoding', '(\\357\\273\\277https://a.example/)'],
    ['a zero byte', '(https://a.example/\\000.pdf)'],
    ['a byte that is left out', '(\\001https://a.example/)'],
    ['a new line', '(https://a.example/\\nfile:///x)'],
    ['an object of its own', '6 0 R'],
    ['a name', '/https:#2f#2fa.example'],
    ['a file to be sent along', '(mailto:jo@a.example?attach=/etc/hosts)'],
    ['a file to be sent along, spelled otherwise', '(mailto:jo@a.example?subject=x&%61ttachment=/etc/hosts)'],
  ])('where the address of a link is written with %s', async (_, address) => {
    const paper = written({ ...good, 3: linked(`<< /S /URI /URI ${address} >>`), 6: '(javascript:alert)' });
    expect(await activeContent(paper)).toMatch(/^offers a link (to something else|that cannot be read)/);
  });
  it.each([
    '(https://a.example/a b?c=%20)',
    '(https://a.example/\\(1\\))',
    '<68747470733a2f2f612e62>',
    '(mailto:jo@a.example?subject=x)',
  ])('and does not with a link to %s', async (address) => {
    expect(await activeContent(written({ ...good, 3: linked(`<< /S /URI /URI ${address} >>`) }))).toBeUndefined();
  });

  it.each<[string, Record<number, string>, string]>([
    ['draws by a program', drawing('/Subtype /PS'), 'runs a program on the printer'],
    ['names what it draws by elsewhere', { ...drawing('/Subtype 7 0 R'), 7: '/PS' }, 'runs a program on the printer'],
    ['draws a form by a program', drawing('/Subtype /Form /Subtype2 /PS'), 'runs a program on the printer'],
    [
      'draws a page of another file',
      drawing('/Subtype /Form /Ref << /F (a.pdf) /Page 0 >>'),
      'takes contents from another file',
    ],
    [
      'draws a picture of another file',
      drawing('/Subtype /Image /F (\\\\host\\x)'),
      'takes contents from another file',
    ],
    [
      'draws in the place of a picture of another file',
      drawing('/Subtype /Image /OPI << /2.0 << /F (x.tif) >> >>'),
      'takes contents from another file',
    ],
    [
      'does something on the next step',
      { 3: page('/PresSteps << /Type /NavNode /NA << /S /Trans >> >>') },
      'does more than show its pages',
    ],
    [
      'is shown as slides',
      { 1: '<< /Type /Catalog /Pages 2 0 R /Names << /AlternatePresentations << /Names [] >> >> >>' },
      'carries what a player would run',
    ],
    [
      'has a player without a place',
      { 3: page('/Annots [<< /Subtype /RichMedia >>]') },
      'carries what a player would run',
    ],
    [
      'has a script on a page',
      { 3: page('/AA << /O 6 0 R >>'), 6: 'null' },
      'does something when it is opened, closed or printed',
    ],
    [
      'has a script under an object of another',
      { 3: linked('<< /S 6 0 R /JS (x) >>'), 6: '/JavaScript' },
      'runs a script',
    ],
    [
      'has an action behind an action behind an action',
      {
        3: linked('<< /S /GoTo /D [3 0 R /Fit] /Next 6 0 R >>'),
        6: '[<< /S /GoTo /D [3 0 R /Fit] /Next [7 0 R] >>]',
        7: '<< /S /Thread /F (x.pdf) >>',
      },
      'does more than show its pages',
    ],
  ])('that %s', async (_, objects, says) => {
    expect(await activeContent(written({ ...good, ...objects }))).toBe(says);
  });

  it.each(['constructor', 'toString', '__proto__', 'hasOwnProperty'])(
    'and is told so in words when its action is called %s',
    async (kind) => {
      const cache = folderWith({});
      const paper = written({ ...good, 3: linked(`<< /S /${kind} >>`), 6: '<< /S /JavaScript /JS (x) >>' });
      vi.stubEnv('GUSSET_CACHE', cache);
      // The second time from the cache.
      for (const _ of [1, 2]) expect(await knownContent(paper)).toBe('does more than show its pages');
    },
  );
  it('in an earlier version, or in an object that its table does not lead to', async () => {
    const first = written({ ...good, 3: linked('<< /S /Launch /F (calc.exe) >>') });
    expect(await activeContent(updated(first, { 3: good[3]! }))).toBe('starts a program');
    const packed = writtenInStreams({ ...good, 3: linked('<< /S /Launch /F (calc.exe) >>') });
    expect(await activeContent(packed)).toBe('starts a program');
  });
});

describe('layers of a PDF paper', () => {
  const layered = (config: string, group = ''): Buffer =>
    written({
      ...good,
      1: `<< /Type /Catalog /Pages 2 0 R /OCProperties << /OCGs [6 0 R] /D << ${config} >> >> >>`,
      6: `<< /Type /OCG /Name (drawing) ${group} >>`,
    });
  // Optional content: 8.11.
  it.each([
    ['switched off', layered('/OFF [6 0 R]')],
    ['off from the start', layered('/BaseState /OFF /ON []')],
    ['on paper only', layered('', '/Usage << /View << /ViewState /OFF >> /Print << /PrintState /ON >> >>')],
    ['on a screen only', layered('', '/Usage << /Print << /PrintState /OFF >> >>')],
    ['seen when it is large', layered('', '/Usage << /Zoom << /min 4 >> >>')],
    ['seen in one language', layered('', '/Usage << /Language << /Lang (de) >> >>')],
    ['seen where another is not', written({ ...good, 6: '<< /Type /OCMD /OCGs [] /P /AllOff >>' })],
    ['seen by a condition', written({ ...good, 6: '<< /Type /OCMD /VE [/Not 5 0 R] >>' })],
  ])('are refused when %s', async (_, paper) =>
    expect(await activeContent(paper)).toBe('has layers that not every viewer shows'),
  );
  it('are taken when all are shown', async () => {
    const usage = '/Usage << /View << /ViewState /ON >> /Print << /PrintState /ON >> >>';
    expect(await activeContent(layered('/ON [6 0 R] /OFF [] /Order [6 0 R] /BaseState /ON', usage))).toBeUndefined();
  });
});

describe('notes and fields of a PDF paper', () => {
  // What a viewer draws where no picture of it is there: 12.5.5, 12.7.3.3.
  const noted = (annotation: string, form = ''): Buffer =>
    written({
      ...good,
      1: `<< /Type /Catalog /Pages 2 0 R /AcroForm << /Fields [] ${form} >> >>`,
      3: good[3]!.replace('/Contents', `/Annots [<< /Type /Annot /Rect [0 0 50 20] ${annotation} >>] /Contents`),
      6: stream('/Type /XObject /Subtype /Form /BBox [0 0 50 20]', 'q Q'),
      7: '<< /FT /Tx /T (grade) /V (S355) >>',
    });
  it.each([
    ['words without a picture of them', noted('/Subtype /FreeText /Contents (S355) /DA (/F 9 Tf)')],
    ['a line without a picture of it', noted('/Subtype /Line /L [0 0 50 20]')],
    ['a field that is filled in, without a picture of it', noted('/Subtype /Widget /FT /Tx /T (grade) /V (S355)')],
    ['a field that is filled in elsewhere', noted('/Subtype /Widget /Parent 7 0 R')],
    [
      'fields to be drawn anew',
      noted('/Subtype /Widget /AP << /N 6 0 R >> /FT /Tx /V (S355)', '/NeedAppearances true'),
    ],
  ])('are refused: %s', async (_, paper) =>
    expect(await activeContent(paper)).toBe('has notes or fields that each viewer draws in its own way'),
  );
  it.each([
    ['words with their picture', noted('/Subtype /FreeText /Contents (S355) /AP << /N 6 0 R >>')],
    [
      'a field with its picture',
      noted('/Subtype /Widget /FT /Tx /V (S355) /AP << /N 6 0 R >>', '/NeedAppearances false'),
    ],
    ['a field that is empty', noted('/Subtype /Widget /FT /Tx /T (grade)')],
    ['a note behind a sign', noted('/Subtype /Text /Contents (Look here)')],
  ])('are taken: %s', async (_, paper) => expect(await activeContent(paper)).toBeUndefined());
});

describe('the structure of a PDF paper', () => {
  // 14.7: elements with roles, attributes, classes and pages, as browsers and word processors write them.
  const structure = {
    1: '<< /Type /Catalog /Pages 2 0 R /MarkInfo << /Marked true >> /StructTreeRoot 6 0 R >>',
    3: page(
      '/StructParents 0 /Annots [<< /Type /Annot /Subtype /Link /Rect [0 0 9 9] /StructParent 1 /A << /S /URI /URI (https://a.example/) >> >>]',
    ),
    6: '<< /Type /StructTreeRoot /K 7 0 R /RoleMap << /Sound /Span /Launchpad /P /Movie /Figure >> /ClassMap << /C1 << /O /Layout /TextAlign /Start >> >> /ParentTree << /Nums [0 [7 0 R]] >> >>',
    7: '<< /Type /StructElem /S /Document /P 6 0 R /K [8 0 R 9 0 R 10 0 R 11 0 R] /Pg 3 0 R >>',
    8: '<< /Type /StructElem /S /Sound /P 7 0 R /Pg 3 0 R /K [0] /A [<< /O /Layout /Placement /Block >> 0] /C /C1 >>',
    9: '<< /S /Link /P 7 0 R /K [<< /Type /OBJR /Obj 12 0 R /Pg 3 0 R >> 1] /A 12 0 R >>',
    10: '<< /Type /StructElem /S /Movie /P 7 0 R /Pg 3 0 R /A << /O /Table /Scope /Column /ColSpan 2 >> /K 2 >>',
    11: '<< /Type /StructElem /S /Launchpad /P 7 0 R /A [<< /O /UserProperties /P [<< /N (x) /V 1 >>] >>] /K 3 >>',
    12: '<< /O /List /ListNumbering /Decimal >>',
  };
  it('is taken, whatever its elements are called', async () => {
    expect(await activeContent(written({ ...good, ...structure }))).toBeUndefined();
  });
  it('is looked at like the rest', async () => {
    const hidden = { ...structure, 8: structure[8].replace('/C /C1', '/C /C1 /A2 << /S /Launch /F (calc.exe) >>') };
    expect(await activeContent(written({ ...good, ...hidden }))).toBe('starts a program');
  });
  it('is taken as a browser prints it', async () => {
    const running = await launchBrowser();
    try {
      const sheet = await running.browser.newPage();
      await sheet.setContent(
        '<html lang=en><title>x</title><h1>Certificate</h1><p>See <a href="https://a.example/">there</a>, <a href="#q">below</a></p><ul><li>a<li>b</ul><table><tr><th colspan=2>A<tr><td>1<td>2</table><h2 id=q>q</h2><input value=x>',
      );
      const printed = await sheet.pdf({ tagged: true, outline: true });
      expect(Buffer.from(printed).includes('/StructElem')).toBe(true);
      expect(await activeContent(printed)).toBeUndefined();
    } finally {
      await running.close();
    }
  });
});

it('a PDF paper of which no copy can be made is refused before the document is', async () => {
  const chain = Object.fromEntries(Array.from({ length: 20_000 }, (_, i) => [i + 6, `<< /X ${i + 7} 0 R >>`]));
  const long = { ...good, 3: page('/Resources << /ExtGState << /G 6 0 R >> >>'), ...chain };
  expect(await activeContent(written(long))).toBe('is laid out so that its pages cannot be copied');
});
