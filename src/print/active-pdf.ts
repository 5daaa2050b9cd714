import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFInvalidObject,
  PDFName,
  type PDFObject,
  PDFRawStream,
  PDFStream,
} from '@cantoo/pdf-lib';

/** Actions of PDF 32000-1, 12.6.4, that do more than show a place of the document or offer a link to follow. */
const actions: Readonly<Record<string, string>> = {
  JavaScript: 'runs a script',
  Launch: 'starts a program',
  ImportData: 'reads another file in',
  SubmitForm: 'sends what is filled in to somewhere',
  GoToE: 'opens a file that it carries',
  Rendition: 'plays what it carries or fetches',
  RichMediaExecute: 'runs what it carries',
};

/** Keys that hold what is run, carried or filled in. */
const keys: Readonly<Record<string, string>> = {
  JS: 'runs a script',
  JavaScript: 'runs a script',
  EF: 'carries another file',
  EmbeddedFiles: 'carries another file',
  XFA: 'carries a form that may run scripts',
  AA: 'does something when it is opened, closed or printed',
  RichMediaContent: 'carries what a player would run',
};

/**
 * What a PDF would do beyond showing its pages and offering links, in words; undefined for one that only shows.
 * What cannot be read as PDF, or has a password, cannot be looked into, and is told as such.
 */
export async function activeContent(bytes: Uint8Array): Promise<string | undefined> {
  // Many reports have a password for changes only: the empty one opens them.
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false, password: '', parseSpeed: Infinity }).catch(
    (cause: unknown) => cause as Error,
  );
  if (pdf instanceof Error)
    return /password/i.test(pdf.message) ? 'has a password, so that nobody can look into it' : 'is no whole PDF';
  if (!(pdf.context.lookup(pdf.context.trailerInfo.Root) instanceof PDFDict)) return 'is no whole PDF';
  const opening = pdf.catalog.lookup(PDFName.of('OpenAction'));
  if (opening instanceof PDFDict && !['GoTo', 'Named'].includes(nameAt(opening, 'S') ?? ''))
    return actions[nameAt(opening, 'S') ?? ''] ?? 'does something when it is opened';
  for (const [, object] of pdf.context.enumerateIndirectObjects()) {
    const found = within(object);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Indirect objects are looked at each by itself, so references need not be followed. */
function within(object: PDFObject): string | undefined {
  if (object instanceof PDFInvalidObject) return 'is no whole PDF';
  if (object instanceof PDFArray) return first(object.asArray());
  if (object instanceof PDFStream || object instanceof PDFRawStream)
    return nameAt(object.dict, 'Type') === 'EmbeddedFile' ? keys['EF'] : within(object.dict);
  if (!(object instanceof PDFDict)) return undefined;
  const action = nameAt(object, 'S');
  if (action !== undefined && Object.hasOwn(actions, action)) return actions[action];
  const key = object
    .keys()
    .map((k) => k.decodeText())
    .find((k) => Object.hasOwn(keys, k));
  return key === undefined ? first(object.values()) : keys[key];
}

function first(objects: readonly PDFObject[]): string | undefined {
  for (const object of objects) {
    const found = within(object);
    if (found !== undefined) return found;
  }
  return undefined;
}

const nameAt = (dict: PDFDict, key: string): string | undefined => {
  const value = dict.lookup(PDFName.of(key));
  return value instanceof PDFName ? value.decodeText() : undefined;
};
