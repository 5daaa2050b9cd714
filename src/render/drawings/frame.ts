import type { Element } from 'hast';
import { s } from 'hastscript';
import { ink, mm } from './pen.js';
import { em, spoken } from './words.js';

/** Widths to which drawings are made, in mm: a table cell, half and whole column. */
export const widths = { cell: 46, half: 85, full: 170 } as const;

export interface Frame {
  /** Unique in the document; every id inside the drawing begins with it. */
  name: string;
  /** What the drawing is of, for readers who cannot see it. */
  title: string;
  /** What can be read off it, in sentences. */
  says: string;
  width: number;
  height: number;
}

/** The drawing at its printed size; it shrinks with its column. */
export function drawing(
  { name, title, says, width, height }: Frame,
  ...content: readonly (Element | readonly Element[])[]
): Element {
  const [w, h] = [mm(width), mm(height)];
  return s(
    'svg',
    {
      viewBox: `0 0 ${w} ${h}`,
      width: `${w}mm`,
      height: `${h}mm`,
      role: 'img',
      ariaLabelledBy: [`${name}-title`, `${name}-desc`],
      style: 'max-width: 100%; height: auto; font-family: var(--font-text, sans-serif)',
      fontSize: em,
    },
    [
      s('title', { id: `${name}-title` }, spoken(title)),
      s('desc', { id: `${name}-desc` }, spoken(says)),
      s('g', { fill: 'none', stroke: ink, strokeLineCap: 'round', strokeLineJoin: 'round' }, content.flat()),
    ],
  );
}
