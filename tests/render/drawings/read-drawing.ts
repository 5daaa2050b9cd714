import type { Element, ElementContent } from 'hast';
import { expect } from 'vitest';
import { unprintable } from '../../../src/platform/fonts.js';
import { textOf } from '../../../src/render/markdown.js';

/** Reads a drawing back without knowing how it was made: its texts and strokes, each with the room it takes. */

interface Room {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

interface Text extends Room {
  text: string;
}

export function elementsOf(drawing: Element, tag?: string): Element[] {
  const within = (e: Element): Element[] => [e, ...e.children.flatMap((c) => (c.type === 'element' ? within(c) : []))];
  return within(drawing).filter((e) => tag === undefined || e.tagName === tag);
}

export const textsOf = (drawing: Element): string[] => elementsOf(drawing, 'text').map((t) => textOf(t));

export const numberOf = (e: Element, name: string): number => Number(e.properties[name]);

export const dashOf = (e: Element): string => String(e.properties['strokeDashArray']).replaceAll(',', ' ');

/** Room of every text, with letters of 0.55 em. */
function textRooms(drawing: Element): Text[] {
  return elementsOf(drawing, 'text').map((t) => {
    const [x, y, fontSize] = [numberOf(t, 'x'), numberOf(t, 'y'), numberOf(t, 'fontSize')];
    const { textAnchor } = t.properties;
    const width = t.children.reduce((sum, c) => sum + letters(c) * 0.55 * sizeOf(c, fontSize), 0);
    const left = textAnchor === 'middle' ? x - width / 2 : textAnchor === 'end' ? x - width : x;
    return { text: textOf(t), left, right: left + width, top: y - 0.72 * fontSize, bottom: y + 0.22 * fontSize };
  });
}

/** A combining mark takes no width of its own. */
const letters = (c: ElementContent) => [...textOf(c as never).replaceAll(/\p{M}/gu, '')].length;
const sizeOf = (c: ElementContent, own: number) =>
  c.type === 'element' ? Number(c.properties['fontSize'] ?? own) : own;

/** Room of every stroke; arcs count with all that they sweep. */
function strokeRooms(drawing: Element): Room[] {
  const drawn = elementsOf(drawing).filter((e) => !inPattern(drawing, e));
  return drawn.flatMap((e): Room[] => {
    const n = (name: string) => numberOf(e, name);
    if (e.tagName === 'circle')
      return [{ left: n('cx') - n('r'), right: n('cx') + n('r'), top: n('cy') - n('r'), bottom: n('cy') + n('r') }];
    if (e.tagName === 'rect')
      return [{ left: n('x'), right: n('x') + n('width'), top: n('y'), bottom: n('y') + n('height') }];
    return e.tagName === 'path' ? [around(pathPoints(String(e.properties['d'])))] : [];
  });
}

const inPattern = (drawing: Element, e: Element) => elementsOf(drawing, 'defs').some((d) => elementsOf(d).includes(e));

function around(points: readonly (readonly [number, number])[]): Room {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Points along a path of M, L, A and Z; arcs are sampled. Curves by their control points, which hold them. */
export function pathPoints(d: string): [number, number][] {
  return pathLoops(d).flat();
}

export function pathLoops(d: string): [number, number][][] {
  const loops: [number, number][][] = [];
  for (const [, command, rest] of d.matchAll(/([MLACZ])([^MLACZ]*)/g)) {
    const n = rest!.split(/[ ,]+/).filter(Boolean).map(Number);
    if (command === 'M') loops.push([]);
    const loop = loops.at(-1)!;
    if (command === 'M' || command === 'L') for (let i = 0; i + 1 < n.length; i += 2) loop.push([n[i]!, n[i + 1]!]);
    if (command === 'C') for (let i = 0; i + 1 < n.length; i += 2) loop.push([n[i]!, n[i + 1]!]);
    if (command === 'A') loop.push(...arcPoints(loop.at(-1)!, n));
  }
  return loops;
}

/** Points of a circular arc (SVG 1.1, F.6.5, for equal radii). */
function arcPoints([x0, y0]: [number, number], [r, , , large, sweep, x1, y1]: number[]): [number, number][] {
  const [dx, dy] = [x1! - x0, y1! - y0];
  const half = Math.hypot(dx, dy) / 2;
  if (half === 0) return [];
  const radius = Math.max(r!, half);
  const off = Math.sqrt(Math.max(0, radius ** 2 - half ** 2)) * (large === sweep ? -1 : 1);
  const [cx, cy] = [(x0 + x1!) / 2 - (dy / (2 * half)) * off, (y0 + y1!) / 2 + (dx / (2 * half)) * off];
  const from = Math.atan2(y0 - cy, x0 - cx);
  let turn = Math.atan2(y1! - cy, x1! - cx) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: 64 }, (_, i) => {
    const a = from + (turn * (i + 1)) / 64;
    return [cx + radius * Math.cos(a), cy + radius * Math.sin(a)];
  });
}

/** What holds for every drawing: it can be heard, is legible, keeps within its frame, and no text covers another. */
export function expectSound(drawing: Element): void {
  const { viewBox, width, height, role, ariaLabelledBy } = drawing.properties;
  const [left, top, w, h] = String(viewBox).split(' ').map(Number) as [number, number, number, number];
  expect([width, height]).toEqual([`${w}mm`, `${h}mm`]);
  expect(role).toBe('img');
  const ids = elementsOf(drawing).flatMap((e) =>
    e.properties['id'] === undefined ? [] : [String(e.properties['id'])],
  );
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ariaLabelledBy as string[]) expect(ids).toContain(id);
  for (const tag of ['title', 'desc']) expect(textOf(elementsOf(drawing, tag)[0]!)).toMatch(/\w+ \w+/);
  const written = JSON.stringify(drawing);
  expect(written).not.toMatch(/NaN|Infinity|undefined|null/);
  const geometry = elementsOf(drawing).flatMap((e) =>
    Object.entries(e.properties)
      .filter(([name]) => name !== 'id')
      .map(([, value]) => String(value)),
  );
  for (const value of geometry) expect(value).not.toMatch(/\d\.\d{4}|\de/);
  for (const [, id] of written.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);

  const texts = textRooms(drawing);
  for (const t of elementsOf(drawing, 'text'))
    expect(Number(t.properties['fontSize'])).toBeGreaterThanOrEqual((7 * 25.4) / 72);
  expect(unprintable(texts.map((t) => t.text).join(''))).toEqual([]);
  for (const r of [...texts, ...strokeRooms(drawing)]) {
    const what = `${JSON.stringify(r)} in ${w} × ${h}`;
    expect(r.left, what).toBeGreaterThanOrEqual(left - 0.01);
    expect(r.top, what).toBeGreaterThanOrEqual(top - 0.01);
    expect(r.right, what).toBeLessThanOrEqual(w + 0.01);
    expect(r.bottom, what).toBeLessThanOrEqual(h + 0.01);
  }
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) {
      const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
      expect(apart, `“${a.text}” covers “${b.text}”`).toBe(true);
    }
  });
}
