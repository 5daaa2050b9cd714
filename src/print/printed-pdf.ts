import { type PDFDict, PDFDocument, PDFObjectParser, PDFRawStream, PDFRef } from '@cantoo/pdf-lib';
import { type ObjectStream, packObjects } from './object-streams.js';

/** A PDF as the browser printed it. */
export interface PrintedPdf {
  pdf: PDFDocument;
  /** The elements of its structure tree, nine objects in ten: nothing here changes them, so they are packed as they are, while the rest is worked on. */
  structure: Promise<readonly ObjectStream[]>;
}

/** Reads a PDF from a browser. One that is not laid out as expected is read whole, which takes longer and gives the same. */
export async function readPrinted(bytes: Uint8Array): Promise<PrintedPdf> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const table = crossReferences(file);
  if (!table) return { pdf: await load(file), structure: Promise.resolve([]) };
  const { offsets, begins } = table;
  const inFile = Uint32Array.from(offsets.keys())
    .filter((number) => offsets[number]! > 0)
    .sort((a, b) => offsets[a]! - offsets[b]!);
  const objectAt = (index: number): Buffer => {
    const number = inFile[index]!;
    return file.subarray(
      offsets[number]! + `${number} 0 obj\n`.length,
      (offsets[inFile[index + 1] ?? -1] ?? begins) - objectEnds.length,
    );
  };
  const elements: number[] = [];
  const streams: { number: number; dict: Buffer; contents: Buffer }[] = [];
  const rest: Uint8Array[] = [file.subarray(0, offsets[inFile[0] ?? -1] ?? begins)];
  inFile.forEach((number, index) => {
    const object = objectAt(index);
    const end = offsets[inFile[index + 1] ?? -1] ?? begins;
    const isWhole = file.toString('latin1', end - objectEnds.length, end) === objectEnds;
    if (isWhole && startsWith(object, '<</Type /StructElem')) elements.push(index);
    else if (isWhole && endsWith(object, streamEnds)) streams.push({ number, ...partsOf(object) });
    else rest.push(file.subarray(offsets[number], end));
  });
  const structure = packObjects(
    (function* () {
      for (const index of elements) yield { number: inFile[index]!, bytes: objectAt(index) };
    })(),
  );
  const pdf = await load(Buffer.concat([...rest, file.subarray(file.indexOf('trailer', begins))]));
  for (const { number, dict, contents } of streams)
    pdf.context.assign(
      PDFRef.of(number),
      PDFRawStream.of(PDFObjectParser.forBytes(dict, pdf.context).parseObject() as PDFDict, contents),
    );
  pdf.context.largestObjectNumber = Math.max(offsets.length - 1, pdf.context.largestObjectNumber);
  return { pdf, structure };
}

const objectEnds = '\nendobj\n';
const [streamBegins, streamEnds] = ['>> stream\n', '\nendstream'];

const startsWith = (bytes: Buffer, text: string): boolean => bytes.toString('latin1', 0, text.length) === text;
const endsWith = (bytes: Buffer, text: string): boolean =>
  bytes.toString('latin1', bytes.length - text.length) === text;

/** The dictionary of a stream and its contents, which stay where they are. */
function partsOf(object: Buffer): { dict: Buffer; contents: Buffer } {
  const dictEnds = object.indexOf(streamBegins);
  return {
    dict: object.subarray(0, dictEnds + 2),
    contents: object.subarray(dictEnds + streamBegins.length, object.length - streamEnds.length),
  };
}

const load = (bytes: Uint8Array): Promise<PDFDocument> =>
  PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity });

/** Where each object begins, zero for those that are none, by the one cross-reference table at the end (ISO 32000-1:2008, 7.5.4); nothing for a file of another form. */
function crossReferences(file: Buffer): { offsets: Float64Array; begins: number } | undefined {
  const begins = Number(
    /startxref\s+(\d+)\s+%%EOF\s*$/.exec(file.toString('latin1', Math.max(0, file.length - 64)))?.[1],
  );
  const head = Number.isInteger(begins) ? /^xref\n0 (\d+)\n/.exec(file.toString('latin1', begins, begins + 32)) : null;
  if (!head) return undefined;
  const entries = begins + head[0].length;
  const offsets = new Float64Array(Number(head[1]));
  for (let number = 0; number < offsets.length; number += 1) {
    const [, offset] =
      /^(\d{10}) 00000 n[ \r\n]{2}$/.exec(
        file.toString('latin1', entries + 20 * number, entries + 20 * (number + 1)),
      ) ?? [];
    offsets[number] = Number(offset ?? 0);
  }
  return { offsets, begins };
}
