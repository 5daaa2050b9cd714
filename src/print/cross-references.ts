import { pack } from './object-streams.js';

/** Where the objects of a PDF lie, in the form of a cross-reference stream (ISO 32000-1:2008, 7.5.8). */
export class CrossReferences {
  static readonly widths = [1, 4, 2];
  static readonly columns = 7;
  /** One more than the largest object number. */
  readonly size: number;
  readonly #rows: Buffer;

  constructor(size: number) {
    this.size = size;
    this.#rows = Buffer.alloc(size * CrossReferences.columns);
    for (let number = 0; number < size; number += 1) this.#set(number, 0, 0, 65535);
  }

  /** The object begins at this byte of the file. */
  alone(number: number, byte: number): void {
    this.#set(number, 1, byte, 0);
  }

  /** The object is in an object stream, at this place. */
  within(number: number, stream: number, place: number): void {
    this.#set(number, 2, stream, place);
  }

  #set(number: number, type: 0 | 1 | 2, where: number, place: number): void {
    const at = number * CrossReferences.columns;
    this.#rows.writeUInt8(type, at);
    this.#rows.writeUInt32BE(where, at + 1);
    this.#rows.writeUInt16BE(place, at + 5);
  }

  /** Each row as its difference from the one above (PNG filter 2): neighbours differ by little. */
  packed(): Promise<Uint8Array> {
    const { columns } = CrossReferences;
    const filtered = Buffer.alloc(this.size * (columns + 1));
    for (let row = 0; row < this.size; row += 1) {
      filtered[row * (columns + 1)] = 2;
      for (let column = 0; column < columns; column += 1) {
        const at = row * columns + column;
        filtered[at + row + 1] = (this.#rows[at]! - (row === 0 ? 0 : this.#rows[at - columns]!)) & 0xff;
      }
    }
    return pack(filtered);
  }
}
