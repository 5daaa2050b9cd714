/** A rectangle between two corners; `sign` is −1 where it is cut out. */
export interface Rectangle {
  kind: 'rectangle';
  x: readonly [number, number];
  y: readonly [number, number];
  sign: 1 | -1;
}

/** A spandrel at the point (x, y) that reaches towards the signs of `towards`: +1 for a root fillet, −1 for a rounded edge. */
export interface Corner {
  kind: 'corner';
  at: readonly [number, number];
  towards: readonly [1 | -1, 1 | -1];
  r: number;
  sign: 1 | -1;
}

export type Part = Rectangle | Corner;
