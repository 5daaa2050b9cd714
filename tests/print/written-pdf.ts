/** PDF files written by hand, so that they may say what no library writes (ISO 32000-1:2008, 7.5). */

/** A page of 99 by 99 points with a line of words. */
export const good: Readonly<Record<number, string>> = {
  1: '<< /Type /Catalog /Pages 2 0 R >>',
  2: '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
  3: '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 99 99] /Contents 4 0 R /Resources << /Font << /F 5 0 R >> >> >>',
  4: stream('', words('355 MPa')),
  5: '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
};

export function words(text: string): string {
  return `BT /F 9 Tf 9 50 Td (${text}) Tj ET`;
}

export function stream(entries: string, content: string | Buffer): string {
  const text = typeof content === 'string' ? content : content.toString('latin1');
  return `<< ${entries} /Length ${text.length} >>\nstream\n${text}\nendstream`;
}

export interface Layout {
  /** Where the table leads instead; `free` for an object that it does not lead to. */
  at?: Record<number, number | 'free'>;
  /** Ahead of the first object. */
  before?: string;
  /** Behind the last object. */
  after?: string;
  /** More of the trailer. */
  trailer?: string;
  /** Instead of the end of the file, from where its table begins. */
  end?: (table: number) => string;
  /** Instead of `n 0 obj`. */
  begins?: Record<number, string>;
}

/** A file of these objects, with a table that leads to where `at` says, otherwise to where they are. */
export function written(
  objects: Readonly<Record<number, string>>,
  { at = {}, before = '', after = '', trailer = '', end = ending, begins = {} }: Layout = {},
): Buffer {
  let text = `%PDF-1.5\n${before}`;
  const places = new Map<number, number>();
  for (const [number, body] of Object.entries(objects)) {
    places.set(Number(number), text.length);
    text += `${begins[Number(number)] ?? `${number} 0 obj`}\n${body}\nendobj\n`;
  }
  text += after;
  const table = text.length;
  const size = Math.max(...places.keys()) + 1;
  text += `xref\n0 ${size}\n0000000000 65535 f \n`;
  for (let n = 1; n < size; n++) text += row(at[n] ?? places.get(n) ?? 'free');
  return Buffer.from(`${text}trailer\n<< /Size ${size} /Root 1 0 R ${trailer} >>\n${end(table)}`, 'latin1');
}

const row = (place: number | 'free'): string =>
  place === 'free' ? '0000000000 65535 f \n' : `${String(place).padStart(10, '0')} 00000 n \n`;

export function ending(table: number): string {
  return `startxref\n${table}\n%%EOF\n`;
}

/** A later version of a file: these objects, and a table of them alone. */
export function updated(
  file: Buffer,
  objects: Readonly<Record<number, string>>,
  { trailer = '', root = 1 }: { trailer?: string; root?: number } = {},
): Buffer {
  let text = file.toString('latin1');
  const previous = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)![1];
  let rows = '';
  for (const [number, body] of Object.entries(objects)) {
    rows += `${number} 1\n${row(text.length)}`;
    text += `${number} 0 obj\n${body}\nendobj\n`;
  }
  const table = text.length;
  return Buffer.from(
    `${text}xref\n${rows}trailer\n<< /Size 99 /Root ${root} 0 R /Prev ${previous} ${trailer} >>\n${ending(table)}`,
    'latin1',
  );
}

/** A file whose objects and table are in streams (7.5.7, 7.5.8), the rows of the table as `pack` makes them. */
export function writtenInStreams(
  objects: Readonly<Record<number, string>>,
  {
    entries = '',
    pack = (rows) => rows,
    index,
  }: { entries?: string; pack?: (rows: Buffer) => Buffer; index?: (bodies: string) => string } = {},
): Buffer {
  const plain = Object.entries(objects).filter(([, body]) => !body.includes('stream'));
  let [places, bodies] = ['', ''];
  for (const [number, body] of plain) {
    places += `${number} ${bodies.length} `;
    bodies += `${body}\n`;
  }
  if (index) places = index(bodies);
  const size = Math.max(...Object.keys(objects).map(Number)) + 3;
  const [container, table] = [size - 2, size - 1];
  let text = '%PDF-1.5\n';
  const rows = Array.from({ length: size }, () => Buffer.alloc(4));
  const put = (number: number, body: string): void => {
    rows[number] = Buffer.from([1, text.length >> 8, text.length & 255, 0]);
    text += `${number} 0 obj\n${body}\nendobj\n`;
  };
  for (const [number, body] of Object.entries(objects)) if (body.includes('stream')) put(Number(number), body);
  plain.forEach(([number], nth) => {
    rows[Number(number)] = Buffer.from([2, container >> 8, container & 255, nth]);
  });
  put(container, stream(`/Type /ObjStm /N ${plain.length} /First ${places.length}`, places + bodies));
  const start = text.length;
  rows[table] = Buffer.from([1, start >> 8, start & 255, 0]);
  const dict = `/Type /XRef /W [1 2 1] /Size ${size} /Root 1 0 R ${entries}`;
  text += `${table} 0 obj\n${stream(dict, pack(Buffer.concat(rows)))}\nendobj\n`;
  return Buffer.from(text + ending(start), 'latin1');
}
