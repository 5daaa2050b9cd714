import {
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRef,
  PDFStream,
  PDFString,
} from '@cantoo/pdf-lib';
import { nameAt, type Scan, scanPdf, Unfit } from './scan-pdf.js';

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
const actionKeys = ['A', 'PA', 'Next'];

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
};

/** Annotations (12.5.6) that carry or play something. */
const annotations: Readonly<Record<string, string>> = {
  FileAttachment: 'carries another file',
  Sound: 'plays what it carries or fetches',
  Movie: 'plays what it carries or fetches',
  Screen: 'plays what it carries or fetches',
  '3D': 'carries what a player would run',
  RichMedia: 'carries what a player would run',
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
    return undefined;
  } catch (cause) {
    if (cause instanceof Unfit) return cause.message;
    throw cause;
  }
}

/** References are followed only to actions: every object is looked at by itself. */
function looker({ definitions }: Scan): (object: PDFObject) => string | undefined {
  const meant = (object: PDFObject | undefined): readonly PDFObject[] =>
    object instanceof PDFRef ? (definitions.get(object.objectNumber) ?? []) : object ? [object] : [];

  const look = (object: PDFObject): string | undefined => {
    if (object instanceof PDFArray) return first(object.asArray(), look);
    if (object instanceof PDFStream)
      return nameAt(object.dict, 'Type') === 'EmbeddedFile'
        ? keys['EF']
        : object.dict.has(PDFName.of('F')) && object.dict.has(PDFName.of('Length'))
          ? 'takes contents from another file'
          : look(object.dict);
    if (!(object instanceof PDFDict)) return undefined;
    return (
      ofKeys(object) ??
      first(meant(object.get(PDFName.of('OpenAction'))), ofOpening) ??
      ofAnnotation(object) ??
      first(
        actionKeys.flatMap((key) => meant(object.get(PDFName.of(key)))),
        ofAction,
      ) ??
      ofWord(object) ??
      first(object.values(), look)
    );
  };

  /** What an action does more than show; places of the document may stand in its stead. */
  const ofAction = (object: PDFObject): string | undefined => {
    if (object instanceof PDFArray) return first(object.asArray().flatMap(meant), ofAction);
    if (!(object instanceof PDFDict)) return undefined;
    const kinds = meant(object.get(PDFName.of('S')));
    const kind = kinds.length === 1 && kinds[0] instanceof PDFName ? kinds[0].decodeText() : undefined;
    // `A` and `Next` are keys of other dictionaries too, whose values have no such word.
    if (kind === undefined) return kinds.length > 1 ? 'does more than show its pages' : undefined;
    if (kind === 'GoTo' || isStructure(object)) return undefined;
    if (kind === 'Named') return pageMoves.has(nameAt(object, 'N') ?? '') ? undefined : 'does more than show its pages';
    if (kind === 'URI') return first(meant(object.get(PDFName.of('URI'))), ofAddress);
    return actions[kind] ?? 'does more than show its pages';
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
    const kind = dict.has(PDFName.of('Rect')) ? meant(dict.get(PDFName.of('Subtype'))) : [];
    return first(kind, (name) => (name instanceof PDFName ? annotations[name.decodeText()] : undefined));
  };
  const ofWord = (dict: PDFDict): string | undefined =>
    first(meant(dict.get(PDFName.of('S'))), (name) => {
      const word = name instanceof PDFName ? name.decodeText() : '';
      if (word === 'URI') return ofAction(dict);
      return unmistakable.has(word) ? actions[word] : undefined;
    });
  return look;
}

/** Elements of the structure tree have a word `S` of their own, and a parent. */
const isStructure = (dict: PDFDict): boolean => nameAt(dict, 'Type') === 'StructElem' || dict.has(PDFName.of('Pg'));

function ofAddress(object: PDFObject): string | undefined {
  if (!(object instanceof PDFString || object instanceof PDFHexString)) return 'offers a link that cannot be read';
  // A viewer leaves out what cannot be seen before it takes the address.
  const address = object.decodeText().replace(/[\u0000-\u0020\u007f-\u00a0\u200b-\u200f\u2028-\u202e\ufeff]/g, '');
  return /^(?:https?:\/\/|mailto:)/i.test(address)
    ? undefined
    : 'offers a link to something else than a page or mail address';
}

function first(objects: readonly PDFObject[], look: (object: PDFObject) => string | undefined): string | undefined {
  for (const object of objects) {
    const found = look(object);
    if (found !== undefined) return found;
  }
  return undefined;
}
