import {
  PDFBool,
  type PDFContext,
  PDFDict,
  type PDFHexString,
  PDFName,
  PDFNull,
  PDFNumber,
  type PDFObject,
  PDFObjectParser,
  PDFRef,
  PDFStream,
} from '@cantoo/pdf-lib';

/** The whole number that an object holds, where it is known before all objects are read. */
export type NumberAt = (ref: PDFRef) => number | undefined;

/** Deeper than any page needs, and far from what a reader of it could bear. */
const mostLevels = 100;

/**
 * One object as all viewers read it (ISO 32000-1:2008, 7.3), which is followed by the word `then`, or by nothing, where it is empty,
 * until the end of `bytes`.
 *
 * @throws Error where viewers may read it differently: a key that stands twice in a dictionary, a name that holds a zero
 * byte, a hexadecimal text of other than digits, a reference to no whole number, too many levels, a word that is none
 */
export function strictObject(
  bytes: Uint8Array,
  from: number,
  then: string,
  context: PDFContext,
  numberAt: NumberAt = () => undefined,
): PDFObject {
  const parser = new StrictParser(bytes.subarray(from), context, numberAt);
  const object = parser.parseObject();
  // An object of an object is no reference: some viewers follow it, others do not.
  if (object instanceof PDFRef) throw new Error('a reference in the place of an object');
  parser.endWith(then);
  return object;
}

class StrictParser extends PDFObjectParser {
  private level = 0;
  private readonly numberAt: NumberAt;

  constructor(bytes: Uint8Array, context: PDFContext, numberAt: NumberAt) {
    // The library keeps the class of its streams of bytes to itself.
    super(PDFObjectParser.forBytes(bytes, context)['bytes'], context);
    this.numberAt = numberAt;
  }

  endWith(word: string): void {
    this.skipWhitespaceAndComments();
    this.expect(word);
    const next = this.bytes.peek() as number | undefined;
    if (!white.includes(letter(next)) && next !== percent) throw new Error(`no ${word}`);
    if (word === '' && next !== undefined) throw new Error('more than an object');
  }

  override parseObject(): PDFObject {
    if (++this.level > mostLevels) throw new Error('too many levels');
    const object = super.parseObject();
    this.level--;
    if (object instanceof PDFStream && this.level > 0) throw new Error('a stream within an object');
    this.keepApart(object);
    return object;
  }

  /** Of words and numbers without a space between them some viewers make one word, others two. */
  private keepApart(object: PDFObject): void {
    const isWord = [PDFNumber, PDFRef, PDFBool].some((kind) => object instanceof kind) || object === PDFNull;
    const at = this.bytes.offset();
    const [last, next] = [this.bytes.peekAt(at - 1), this.bytes.peekAt(at)] as (number | undefined)[];
    if (isWord && !separates(last) && !separates(next)) throw new Error('words without a space');
  }

  protected override parseName(): PDFName {
    const name = super.parseName();
    if (name.decodeText().includes('\0')) throw new Error('a name with a zero byte');
    return name;
  }

  protected override parseHexString(): PDFHexString {
    const text = super.parseHexString();
    if (/[^\dA-Fa-f\0\t\n\f\r ]/.test(text.asString())) throw new Error('a hexadecimal text of other than digits');
    return text;
  }

  protected override parseNumberOrRef(): PDFNumber | PDFRef {
    const from = this.bytes.offset();
    const found = super.parseNumberOrRef();
    if (!(found instanceof PDFRef)) return found;
    const text = Buffer.from(this.bytes.slice(from, this.bytes.offset())).toString('latin1');
    if (!/^\d+[^\d.]+\d+\D+$/.test(text)) throw new Error('a reference to no whole number');
    return found;
  }

  protected override parseDict(): PDFDict {
    const dict = new Map<PDFName, PDFObject>();
    this.expect('<<');
    this.skipWhitespaceAndComments();
    while (this.bytes.peek() !== '>'.charCodeAt(0)) {
      const key = this.parseName();
      if (dict.has(key)) throw new Error(`${key} twice`);
      dict.set(key, this.parseObject());
      this.skipWhitespaceAndComments();
    }
    this.expect('>>');
    const length = dict.get(PDFName.Length);
    const known = length instanceof PDFRef && this.level === 1 ? this.numberAt(length) : undefined;
    if (known !== undefined) dict.set(PDFName.Length, PDFNumber.of(known));
    return PDFDict.fromMapWithContext(dict, this.context);
  }

  /** The contents of a stream begin behind a whole end of line (7.3.8.1): without it viewers differ over where. */
  protected override matchKeyword(keyword: number[]): boolean {
    const begins = streamWord.every((byte, i) => keyword[i] === byte);
    return (!begins || keyword.at(-1) === newline) && super.matchKeyword(keyword);
  }

  private expect(text: string): void {
    for (const byte of Buffer.from(text)) this.bytes.assertNext(byte);
  }
}

const letter = (byte: number | undefined): string => (byte === undefined ? '' : String.fromCharCode(byte));
const white = ' \0\t\n\f\r';
const streamWord = [...Buffer.from('stream')];
const newline = '\n'.charCodeAt(0);
const percent = '%'.charCodeAt(0);

/** White space, the beginning of another object, or the end of all. */
const separates = (byte: number | undefined): boolean => `${white}%()<>[]{}/`.includes(letter(byte));
