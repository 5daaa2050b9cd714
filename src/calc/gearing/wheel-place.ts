import { sheet } from '../sheet.js';

/** Change of track by wheel offset, spacers and another axle. */
export const trackChange = sheet({
  id: 'track-change',
  subject: 'gearing',
  title: 'Change of track',
  purpose: 'Track after wheels of another offset, spacers or an axle of another width between the mounting faces.',
  inputs: {
    track: { symbol: 's_o', unit: 'mm', says: 'track before, tread centre to tread centre' },
    oldOffset: {
      symbol: 'ET_o',
      unit: 'mm',
      says: 'wheel offset before; positive where the mounting face stands outboard of the rim’s centre',
    },
    newOffset: { symbol: 'ET_n', unit: 'mm', says: 'wheel offset now' },
    spacer: { symbol: 't', unit: 'mm', says: 'spacer at each wheel', usual: '0 mm' },
    faces: {
      symbol: '\\Delta b',
      unit: 'mm',
      says: 'change of the axle’s width between the mounting faces, positive wider',
      usual: '0 mm',
    },
  },
  results: {
    perSide: {
      symbol: '\\Delta y',
      unit: 'mm',
      says: 'outward move of each wheel’s centre by offset and spacer',
      tex: '@oldOffset - @newOffset + @spacer',
    },
    change: { symbol: '\\Delta s', unit: 'mm', says: 'change of track, positive wider', tex: '2 @perSide + @faces' },
    now: { symbol: 's', unit: 'mm', says: 'track now', tex: '@track + @change' },
  },
  sources: [
    {
      document: 'Geometry; a lower offset widens the track (track list of the South Australian registration authority)',
      basis: 'quoted',
    },
  ],
  validity: [
    { says: 'the track must be greater than zero', holds: (x) => x.track > 0 },
    { says: 'the spacer must not be negative', holds: (x) => x.spacer >= 0 },
  ],
  calculate: ({ track, oldOffset, newOffset, spacer, faces }) => {
    const perSide = oldOffset - newOffset + spacer;
    const change = 2 * perSide + faces;
    return { perSide, change, now: track + change };
  },
  remark: 'Spacers are not accepted everywhere; the sheet says what they do, not that they may be used.',
  examples: [
    {
      given: { track: '1450 mm', oldOffset: '40 mm', newOffset: '28 mm', spacer: '0 mm', faces: '0 mm' },
      gives: { perSide: '12 mm', change: '24 mm', now: '1474 mm' },
      source: { document: 'Geometry, worked by hand', basis: 'derived' },
    },
  ],
});

/** Where the inner and outer edges of a wider or offset rim go. */
export const rimEdges = sheet({
  id: 'rim-edges',
  subject: 'gearing',
  title: 'Inner and outer edge of another rim',
  purpose:
    'How far the outer edge of the rim moves towards the guard and the inner edge towards spring, link and brake hose.',
  inputs: {
    oldWidth: { symbol: 'b_o', unit: 'in', says: 'rim width before, between the flanges' },
    newWidth: { symbol: 'b_n', unit: 'in', says: 'rim width now' },
    oldOffset: { symbol: 'ET_o', unit: 'mm', says: 'wheel offset before' },
    newOffset: { symbol: 'ET_n', unit: 'mm', says: 'wheel offset now' },
  },
  results: {
    outward: {
      symbol: '\\Delta y_o',
      unit: 'mm',
      says: 'outward move of the outer edge',
      tex: '\\frac{@newWidth - @oldWidth}{2} + @oldOffset - @newOffset',
    },
    inward: {
      symbol: '\\Delta y_i',
      unit: 'mm',
      says: 'inward move of the inner edge',
      tex: '\\frac{@newWidth - @oldWidth}{2} - @oldOffset + @newOffset',
    },
  },
  assumptions: ['Both rims have flanges of the same thickness; the tyre’s own width is looked at apart from this.'],
  sources: [{ document: 'Geometry', basis: 'derived' }],
  validity: [{ says: 'rim widths must be greater than zero', holds: (x) => x.oldWidth > 0 && x.newWidth > 0 }],
  calculate: ({ oldWidth, newWidth, oldOffset, newOffset }) => {
    const half = (newWidth - oldWidth) / 2;
    const out = oldOffset - newOffset;
    return { outward: half + out, inward: half - out };
  },
  examples: [
    {
      given: { oldWidth: '6 in', newWidth: '7 in', oldOffset: '35 mm', newOffset: '25 mm' },
      gives: { outward: '22.7 mm', inward: '2.7 mm' },
      source: { document: 'Geometry, worked by hand', basis: 'derived' },
    },
  ],
});
