import {
  PDFArray,
  PDFBool,
  PDFDict,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRef,
  PDFStream,
  PDFString,
} from '@cantoo/pdf-lib';
import { pagesOnly } from './pages-only.js';
import { nameAt, type Scan, scanPdf } from './scan-pdf.js';
import { notWhole, Unfit } from './unfit.js';

/** Actions of ISO 32000-1:2008, 12.6.4, in words; those that are not listed do something else than show, too. */
const actions: Readonly<Record<string, string>> = {
  JavaScript: 'runs a script',
  Launch: 'starts a program',
  ImportData: 'reads another file in',
  SubmitForm: 'sends what is filled in to somewhere',
  GoToR: 'opens another file',
  GoToE: 'opens a file that it carries',
  Rendition: 'plays what it carries or fetches',
  Movie: 'plays what it carries or fetches',
  Sound: 'plays what it carries or fetches',
  RichMediaExecute: 'runs what it carries',
  GoTo3DView: 'shows a model that a player would run',
};
/** Words that say in a dictionary of their own that it is such an action, wherever it stands. */
const unmistakable: ReadonlySet<string> = new Set(
  Object.keys(actions).filter((name) => !['Movie', 'Sound'].includes(name)),
);
const pageMoves: ReadonlySet<string> = new Set(['NextPage', 'PrevPage', 'FirstPage', 'LastPage']);
/** Keys under which an action stands. */
const actionKeys = ['A', 'PA', 'NA', 'Next'];

/** Keys that hold what is run, carried or filled in. */
const keys: Readonly<Record<string, string>> = {
  JS: 'runs a script',
  JavaScript: 'runs a script',
  EF: 'carries another file',
  EmbeddedFiles: 'carries another file',
  XFA: 'carries a form that may run scripts',
  AA: 'does something when it is opened, closed or printed',
  RichMediaContent: 'carries what a player would run',
  Collection: 'carries other files',
  Renditions: 'plays what it carries or fetches',
  AlternatePresentations: 'carries what a player would run',
  OPI: 'takes contents from another file',
};

/** Annotations (12.5.6) that carry or play something. */
const annotations: Readonly<Record<string, string>> = {
  FileAttachment: 'carries another file',
  Sound: 'plays what it carries or fetches',
  Movie: 'plays what it carries or fetches',
  Screen: 'plays what it carries or fetches',
  '3D': 'carries what a player would run',
  RichMedia: 'carries what a player would run',
  Projection: 'carries what a player would run',
};

/** Annotations and fields that a viewer draws by itself where they bring no picture of themselves (12.5.5, 12.7.3.3). */
const drawnAnew: ReadonlySet<string> = new Set([
  ...['FreeText', 'Line', 'Square', 'Circle', 'Polygon', 'PolyLine', 'Highlight', 'Underline', 'Squiggly', 'StrikeOut'],
  ...['Stamp', 'Caret', 'Ink', 'Redact', 'Watermark', 'Widget'],
]);

/** Words by which a layer is not shown, or what lies on it only without it. */
const unlike: Readonly<Record<string, readonly string[]>> = {
  BaseState: ['OFF', 'Unchanged'],
  ViewState: ['OFF'],
  PrintState: ['OFF'],
  ExportState: ['OFF'],
  P: ['AllOff', 'AnyOff'],
};

/**
 * What a PDF would do beyond showing its pages and offering links, in words; undefined for one that only shows. Every object
 * that is written in it is looked at, whether its table leads there or not. What cannot be looked into is told as such.
 */
export async function activeContent(bytes: Uint8Array): Promise<string | undefined> {
  try {
    const scan = scanPdf(bytes);
    const look = looker(scan);
    for (const object of [...scan.trailers, ...[...scan.definitions.values()].flat()]) {
      const found = look(object);
      if (found !== undefined) return found;
    }
    return (await canBeCopied(bytes)) ? undefined : 'is laid out so that its pages cannot be copied';
  } catch (cause) {
    if (cause instanceof Unfit) return cause.message;
    throw cause;
  }
}

/** What no copy can be made of would stop the document from being made. */
const canBeCopied = (bytes: Uint8Array): Promise<boolean> =>
  pagesOnly(bytes).then(
    () => true,
    () => false,
  );

/** References are followed only to actions: every object is looked at by itself. */
function looker({ definitions, viewed }: Scan): (object: PDFObject) => string | undefined {
  const generations = new Map(
    viewed.enumerateIndirectObjects().map(([ref]) => [ref.objectNumber, ref.generationNumber]),
  );
  const meant = (object: PDFObject | undefined): readonly PDFObject[] =>
    object instanceof PDFRef ? (definitions.get(object.objectNumber) ?? []) : object ? [object] : [];

  const look = (object: PDFObject): string | undefined => {
    if (object instanceof PDFArray) return first(object.asArray(), look);
    if (object instanceof PDFStream) return ofStream(object.dict) ?? look(object.dict);
    if (object instanceof PDFRef) return ofReference(object);
    if (!(object instanceof PDFDict)) return undefined;
    return (
      ofKeys(object) ??
      first(meant(object.get(PDFName.of('OpenAction'))), ofOpening) ??
      ofAnnotation(object) ??
      ofLayer(object) ??
      first(
        actionKeys.flatMap((key) => meant(object.get(PDFName.of(key)))),
        ofAction,
      ) ??
      ofWord(object) ??
      first(object.values(), look)
    );
  };

  const ofStream = (dict: PDFDict): string | undefined => {
    if (nameAt(dict, 'Type') === 'EmbeddedFile') return keys['EF'];
    if (['F', 'Ref'].some((key) => dict.has(PDFName.of(key)))) return 'takes contents from another file';
    const kinds = ['Subtype', 'Subtype2'].flatMap((key) => meant(dict.get(PDFName.of(key))));
    return kinds.includes(PDFName.of('PS')) ? 'runs a program on the printer' : undefined;
  };
  /** Some viewers follow a reference to an object of its number and another generation, others do not. */
  const ofReference = (ref: PDFRef): undefined => {
    const generation = generations.get(ref.objectNumber);
    if (generation !== undefined && generation !== ref.generationNumber)
      throw notWhole('a reference leads to an object of another version');
  };

  /** What an action does more than show; places of the document may stand in its stead. */
  const ofAction = (object: PDFObject): string | undefined => {
    // A row of actions; a place of the document, too, is an array, of which only the page is a dictionary.
    if (object instanceof PDFArray)
      return first(
        object
          .asArray()
          .flatMap(meant)
          .filter((one) => one instanceof PDFDict),
        ofAction,
      );
    if (!(object instanceof PDFDict)) return undefined;
    const kinds = meant(object.get(PDFName.of('S')));
    const kind = kinds.length === 1 && kinds[0] instanceof PDFName ? kinds[0].decodeText() : undefined;
    // `A` and `Next` are keys of other dictionaries too, whose values have no such word.
    if (kind === undefined) return kinds.length > 1 ? 'does more than show its pages' : undefined;
    if (kind === 'GoTo') return undefined;
    if (kind === 'Named') return pageMoves.has(nameAt(object, 'N') ?? '') ? undefined : 'does more than show its pages';
    if (kind === 'URI') return first(meant(object.get(PDFName.of('URI'))), ofAddress);
    return Object.hasOwn(actions, kind) ? actions[kind] : 'does more than show its pages';
  };

  /** Nothing is followed that nobody clicked on. */
  const ofOpening = (object: PDFObject): string | undefined =>
    ofAction(object) ??
    (object instanceof PDFDict && !['GoTo', 'Named'].includes(nameAt(object, 'S') ?? '')
      ? 'does something when it is opened'
      : undefined);
  const ofKeys = (dict: PDFDict): string | undefined => {
    const key = dict
      .keys()
      .map((k) => k.decodeText())
      .find((k) => Object.hasOwn(keys, k));
    if (key !== undefined) return keys[key];
    const base = dict.get(PDFName.of('Base'));
    return base instanceof PDFString || base instanceof PDFHexString ? ofAddress(base) : undefined;
  };
  const ofAnnotation = (dict: PDFDict): string | undefined => {
    const kinds = meant(dict.get(PDFName.of('Subtype'))).map((kind) =>
      kind instanceof PDFName ? kind.decodeText() : '',
    );
    const kind = kinds.find((name) => Object.hasOwn(annotations, name));
    if (kind !== undefined) return annotations[kind];
    const isDrawnAnew =
      dict.has(PDFName.of('Rect')) && !dict.has(PDFName.of('AP')) && kinds.some((k) => drawnAnew.has(k));
    return (isDrawnAnew && (!kinds.includes('Widget') || isFilledIn(dict))) ||
      meant(dict.get(PDFName.of('NeedAppearances'))).includes(PDFBool.True)
      ? 'has notes or fields that each viewer draws in its own way'
      : undefined;
  };
  const isFilledIn = (field: PDFDict): boolean =>
    [field, ...meant(field.get(PDFName.of('Parent')))].some(
      (owner) => owner instanceof PDFDict && owner.has(PDFName.of('V')),
    );
  /** Layers (8.11) that are seen on a screen only, on paper only, or by who asks for them. */
  const ofLayer = (dict: PDFDict): string | undefined => {
    const off = meant(dict.get(PDFName.of('OFF'))).some((list) => list instanceof PDFArray && list.size() > 0);
    const differs = Object.entries(unlike).some(([key, words]) =>
      meant(dict.get(PDFName.of(key))).some((word) => word instanceof PDFName && words.includes(word.decodeText())),
    );
    const usage = meant(dict.get(PDFName.of('Usage'))).some(
      (use) => use instanceof PDFDict && ['Zoom', 'Language', 'User'].some((key) => use.has(PDFName.of(key))),
    );
    return off || differs || usage || dict.has(PDFName.of('VE')) ? 'has layers that not every viewer shows' : undefined;
  };
  const ofWord = (dict: PDFDict): string | undefined =>
    first(meant(dict.get(PDFName.of('S'))), (name) => {
      const word = name instanceof PDFName ? name.decodeText() : '';
      if (word === 'URI') return ofAction(dict);
      return unmistakable.has(word) ? actions[word] : undefined;
    });
  return look;
}

/** An address is ASCII (12.6.4.7); beyond it viewers differ over what they see and what they leave out. */
function ofAddress(object: PDFObject): string | undefined {
  if (!(object instanceof PDFString || object instanceof PDFHexString)) return 'offers a link that cannot be read';
  const address = Buffer.from(object.asBytes()).toString('latin1');
  return /^(?:https?:\/\/[\x20-\x7e]+|mailto:[\x21-\x7e]+)$/i.test(address) &&
    !/^mailto:.*[?&]attach/i.test(plain(address))
    ? undefined
    : 'offers a link to something else than a page or mail address';
}

/** As a mail program reads it. */
const plain = (address: string): string =>
  address.replace(/%([\dA-F]{2})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

function first(objects: readonly PDFObject[], look: (object: PDFObject) => string | undefined): string | undefined {
  for (const object of objects) {
    const found = look(object);
    if (found !== undefined) return found;
  }
  return undefined;
}
