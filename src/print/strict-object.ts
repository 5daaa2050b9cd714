import {
  type PDFContext,
  PDFDict,
  type PDFHexString,
  PDFName,
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
 * One object as all viewers read it (ISO 32000-1:2008, 7.3), and where it ends in `bytes`.
 *
 * @throws Error where viewers may read it differently: a key that stands twice in a dictionary, a name that holds a zero
 * byte, a hexadecimal text of other than digits, a reference to no whole number, too many levels, a word that is none
 */
export function strictObject(
  bytes: Uint8Array,
  from: number,
  context: PDFContext,
  numberAt: NumberAt = () => undefined,
): { object: PDFObject; end: number } {
  const parser = new StrictParser(bytes.subarray(from), context, numberAt);
  const object = parser.parseObject();
  // An object of an object is no reference: some viewers follow it, others do not.
  if (object instanceof PDFRef) throw new Error('a reference in the place of an object');
  return { object, end: from + parser.end };
}

class StrictParser extends PDFObjectParser {
  private level = 0;
  private readonly numberAt: NumberAt;

  constructor(bytes: Uint8Array, context: PDFContext, numberAt: NumberAt) {
    // The library keeps the class of its streams of bytes to itself.
    super(PDFObjectParser.forBytes(bytes, context)['bytes'], context);
    this.numberAt = numberAt;
  }

  get end(): number {
    return this.bytes.offset();
  }

  override parseObject(): PDFObject {
    if (++this.level > mostLevels) throw new Error('too many levels');
    const object = super.parseObject();
    this.level--;
    if (object instanceof PDFStream && this.level > 0) throw new Error('a stream within an object');
    return object;
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

  private expect(text: string): void {
    for (const byte of Buffer.from(text)) this.bytes.assertNext(byte);
  }
}
