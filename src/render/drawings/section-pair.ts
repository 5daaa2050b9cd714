import type { Element } from 'hast';
import type { SectionShape } from '../../calc/sections/section-of.js';
import { showQuantity } from '../../units/show.js';
import { across, leader, upright } from './dimension.js';
import { drawing, widths } from './frame.js';
import { type Hatching, hatchDefs, hatched } from './hatch.js';
import { ink, line, type Point, path } from './pen.js';
import { apart } from './place.js';
import { type Extent, extentOf, type Loop, outlinePath, sectionOutline } from './section-outline.js';
import { type Measure, sectionSizes } from './section-sizes.js';
import { em, lineHeight, sized, widthOf, word } from './words.js';

export interface SectionPair {
  name: string;
  title: string;
  original: { shape: SectionShape; says: string };
  replacement: { shape: SectionShape; says: string };
}

interface Panel {
  says: string;
  hatching: Hatching;
  loops: Loop[];
  extent: Extent;
  sizes: Measure[];
  /** Room beside the section, for what stands left and right of it. */
  before: number;
  after: number;
}

const [tallest, largest] = [56, 2.5];
const captionRoom = 5;
const below = 8;

/** Both sections to one scale, side by side, with their main dimensions. */
export function sectionPair({ name, title, original, replacement }: SectionPair): Element {
  const half = widths.full / 2;
  const panels = [panelOf(original, 'rising'), panelOf(replacement, 'falling')] as const;
  const scale = Math.min(
    ...panels.flatMap((p) => [(half - 2 - p.before - p.after) / across_(p.extent), tallest / up(p.extent)]),
    largest * 1000,
  );
  const above = panels.some((p) => p.sizes.some((m) => m.side === 'above')) ? 7 : 2;
  const floor = captionRoom + above + Math.max(...panels.map((p) => Math.max(up(p.extent) * scale, notesHeight(p))));
  const bar = barLength(scale);
  const height = floor + below + 7;
  const y = height - 2.5;
  const middle = widths.full / 2;
  return drawing(
    {
      name,
      title,
      says: `${panels.map((p) => `${p.says}: ${p.sizes.map((m) => sized(m.size)).join(', ')}`).join('. ')}. Both are drawn to one scale.`,
      width: widths.full,
      height,
    },
    hatchDefs(name, 'rising', 'falling'),
    panels.flatMap((p, i) => drawPanel(name, p, i * half, scale, floor)),
    scaleBar([middle - bar * scale, y], bar, scale),
  );
}

const across_ = (e: Extent) => e.right - e.left;
const up = (e: Extent) => e.top - e.bottom;
const beside = (p: Panel) => p.sizes.filter((m) => m.side === 'note' || m.side === 'right');
const notesHeight = (p: Panel) => beside(p).length * lineHeight;

function panelOf({ shape, says }: SectionPair['original'], hatching: Hatching): Panel {
  const loops = sectionOutline(shape);
  const sizes = sectionSizes(shape);
  const room = (of: readonly Measure[]) => Math.max(0, ...of.map((m) => widthOf(sized(m.size))));
  const left = sizes.filter((m) => m.side === 'left');
  const right = sizes.filter((m) => m.side === 'note' || m.side === 'right');
  return { says, hatching, loops, extent: extentOf(loops), sizes, before: room(left) + 8, after: room(right) + 9 };
}

function drawPanel(name: string, p: Panel, from: number, scale: number, floor: number): Element[] {
  const { extent } = p;
  const spare = widths.full / 2 - 2 - p.before - p.after - across_(extent) * scale;
  const left = from + 1 + p.before + spare / 2;
  const place = ([x, y]: Point): Point => [left + (x - extent.left) * scale, floor - (y - extent.bottom) * scale];
  const thin = thinnest(p) * scale < 1.1;
  const right = left + across_(extent) * scale;
  return [
    word(from + 2, 3.2, p.says, 'start', true),
    path(outlinePath(p.loops, place, scale), { weight: 'line', fill: thin ? ink : hatched(name, p.hatching) }),
    ...p.sizes.flatMap((m) => {
      const [a, b, text] = [place(m.from), place(m.to), sized(m.size)];
      if (m.side === 'left') return upright(a, b, left - 4, text, -1);
      if (m.side === 'below') return across(a, b, floor + 5.4, text);
      if (m.side === 'above') return across(a, b, floor - up(extent) * scale - 3, text);
      return [];
    }),
    ...notes(p, place, right, [captionRoom, floor + 1]),
  ];
}

/** Texts in a column to the right of the section, each beside what it names. */
function notes(p: Panel, place: (p: Point) => Point, right: number, within: readonly [number, number]): Element[] {
  const of = beside(p);
  const wanted = of.map((m) => ({ at: (place(m.from)[1] + place(m.to)[1]) / 2 + (m.drop ?? 0), size: lineHeight }));
  const places = apart(wanted, 0, within);
  return of.flatMap((m, i) => {
    const [y, text] = [places[i]!, sized(m.size)];
    if (m.side === 'right')
      return [...upright(place(m.from), place(m.to), right + 3, '', 1), word(right + 7, y + 0.35 * em, text)];
    return [...leader([right + 6, y], place(m.from)), word(right + 7, y + 0.35 * em, text)];
  });
}

/** Smallest wall, m; thin metal is filled, as hatching would not show. */
function thinnest({ sizes, extent }: Panel): number {
  const lost = sizes.find((m) => m.size.symbol.startsWith('Δ'))?.size.si ?? 0;
  const walls = sizes.filter((m) => /^[tT]/.test(m.size.symbol)).map((m) => m.size.si - lost);
  return Math.min(across_(extent), ...walls);
}

function scaleBar([x, y]: Point, length: number, scale: number): Element[] {
  const end = x + length * scale;
  const mark = (at: number) => line([at, y - 1], [at, y + 1], { weight: 'thin' });
  return [
    line([x, y], [end, y], { weight: 'outline' }),
    mark(x),
    mark(end),
    word(end + 2, y + 0.35 * em, `${showQuantity(length, 'mm')}, both to one scale`),
  ];
}

/** A round length of about 20 mm on the page, in m. */
function barLength(scale: number): number {
  const rough = 20 / scale;
  const ten = 10 ** Math.floor(Math.log10(rough));
  return [5, 2, 1].map((k) => k * ten).find((l) => l <= rough) ?? ten;
}
