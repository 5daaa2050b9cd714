import { PDFDocument, rgb, StandardFonts } from '@cantoo/pdf-lib';

/**
 * A paper on one or more A4 pages: letterhead, title, facts, paragraphs, tables, signature. Every page says that it is
 * invented. The same paper gives the same bytes.
 *
 * @param paper `from` (lines of the letterhead), `title`, `number`, `date` (ISO day), `ink` of the letterhead, and `body`:
 * blocks `{ facts: [[name, value]] }`, `{ text }`, `{ table: { head, rows, widths } }`, `{ head }`, `{ sketch }`, `{ signed: [name, role] }`
 */
export async function typeset({ from, title, number, date, ink = [0.15, 0.2, 0.3], body }) {
  const pdf = await PDFDocument.create();
  const day = new Date(`${date}T00:00:00Z`);
  pdf.setTitle(title);
  pdf.setSubject('Invented for an example');
  pdf.setCreationDate(day);
  pdf.setModificationDate(day);
  pdf.setProducer('builds/make/papers.mjs');
  pdf.setCreator('builds/make/papers.mjs');
  const [plain, bold, mono] = await Promise.all([StandardFonts.Helvetica, StandardFonts.HelveticaBold, StandardFonts.Courier].map((font) => pdf.embedFont(font)));
  const [left, right, top, bottom] = [56, 539, 786, 74];
  const colour = rgb(...ink);
  const black = rgb(0.1, 0.1, 0.1);
  let page;
  let y = 0;

  const write = (text, x, size, { font = plain, color = black, end } = {}) => {
    page.drawText(text, { x: end === undefined ? x : end - font.widthOfTextAtSize(text, size), y, size, font, color });
  };
  const rule = (thickness = 0.5, color = rgb(0.6, 0.6, 0.6)) => page.drawLine({ start: { x: left, y }, end: { x: right, y }, thickness, color });
  const room = (needed) => {
    if (y - needed < bottom) turn();
  };

  function turn() {
    page = pdf.addPage([595.28, 841.89]);
    page.drawText('INVENTED FOR AN EXAMPLE: no such firm, person, vehicle or measurement exists', { x: left, y: 40, size: 8, font: bold, color: rgb(0.65, 0.1, 0.1) });
    page.drawText(`${title}, ${number}`, { x: left, y: 52, size: 8, font: plain, color: rgb(0.4, 0.4, 0.4) });
    y = top;
  }

  turn();
  from.forEach((line, i) => {
    write(line, left, i === 0 ? 16 : 9, { font: i === 0 ? bold : plain, color: i === 0 ? colour : rgb(0.35, 0.35, 0.35) });
    y -= i === 0 ? 16 : 12;
  });
  y -= 2;
  rule(1.5, colour);
  y -= 26;
  write(title, left, 14, { font: bold });
  write(number, 0, 10, { font: mono, end: right });
  y -= 14;
  write(date, 0, 9, { end: right });
  y -= 14;

  for (const block of body) {
    if (block.head) {
      room(40);
      y -= 6;
      write(block.head, left, 11, { font: bold, color: colour });
      y -= 16;
    }
    for (const [name, value] of block.facts ?? []) {
      const lines = folded(value, plain, 9.5, right - left - 170);
      room(lines.length * 13);
      write(name, left, 9.5, { color: rgb(0.35, 0.35, 0.35) });
      for (const line of lines) {
        write(line, left + 170, 9.5);
        y -= 13;
      }
    }
    if (block.facts) y -= 8;
    if (block.text) {
      for (const line of folded(block.text, plain, 10, right - left)) {
        room(14);
        write(line, left, 10);
        y -= 14;
      }
      y -= 6;
    }
    if (block.table) table(block.table);
    if (block.sketch) sketch(block.sketch);
    if (block.signed) {
      room(60);
      y -= 26;
      page.drawLine({ start: { x: left, y: y + 10 }, end: { x: left + 200, y: y + 10 }, thickness: 0.5, color: black });
      page.drawSvgPath(flourish(block.signed[0]), { x: left + 14, y: y + 22, borderColor: rgb(0.1, 0.15, 0.45), borderWidth: 1.1 });
      write(block.signed.join(', '), left, 9);
      y -= 14;
    }
  }

  function table({ head, rows, widths }) {
    const total = widths.reduce((sum, w) => sum + w, 0);
    const xs = widths.map((_, i) => left + ((right - left) * widths.slice(0, i).reduce((sum, w) => sum + w, 0)) / total);
    const line = (cells, font) => {
      const folds = cells.map((cell, i) => folded(String(cell), font, 9, ((right - left) * widths[i]) / total - 8));
      const height = Math.max(...folds.map((f) => f.length)) * 11.5;
      room(height + 6);
      const start = y;
      folds.forEach((lines, i) => lines.forEach((text, k) => {
        y = start - k * 11.5;
        write(text, xs[i], 9, { font });
      }));
      y = start - height - 1;
      page.drawLine({ start: { x: left, y: y + 7 }, end: { x: right, y: y + 7 }, thickness: font === bold ? 0.9 : 0.3, color: rgb(0.6, 0.6, 0.6) });
      y -= 5;
    };
    room(40);
    line(head, bold);
    for (const row of rows) line(row, plain);
    y -= 8;
  }

  /** Lines, circles and words in points, from the lower left corner of the sketch. */
  function sketch({ height, lines = [], circles = [], words = [] }) {
    room(height + 10);
    y -= height;
    for (const [x1, y1, x2, y2, thin] of lines) page.drawLine({ start: { x: left + x1, y: y + y1 }, end: { x: left + x2, y: y + y2 }, thickness: thin ? 0.4 : 1, color: thin ? rgb(0.4, 0.4, 0.4) : black });
    for (const [x, cy, r, thin] of circles) page.drawEllipse({ x: left + x, y: y + cy, xScale: r, yScale: r, borderWidth: thin ? 0.4 : 1, borderColor: thin ? rgb(0.4, 0.4, 0.4) : black });
    for (const [x, ty, text] of words) page.drawText(text, { x: left + x, y: y + ty, size: 8.5, font: plain, color: black });
    y -= 14;
  }

  return pdf.save({ useObjectStreams: false });
}

/** Words in lines that are no wider than `width`. */
function folded(text, font, size, width) {
  return text.split(/\s+/).reduce((lines, word) => {
    const longer = `${lines.at(-1) ?? ''} ${word}`.trim();
    if (lines.length > 0 && font.widthOfTextAtSize(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
    return lines;
  }, []);
}

/** A signature that nobody writes: loops from the letters of the name. */
function flourish(name) {
  const letters = [...name.replace(/[^A-Za-z]/g, '').toLowerCase()].slice(0, 9);
  return letters.reduce((path, letter, i) => {
    const code = letter.charCodeAt(0) - 97;
    const [x, lift] = [i * 9, 4 + (code % 7) * 2];
    return `${path} C ${x + 2} ${-lift}, ${x + 8} ${-lift - 3}, ${x + 6} ${2 + (code % 3)} S ${x + 9} ${3 - (code % 5)}, ${x + 10} 0`;
  }, 'M 0 0');
}
