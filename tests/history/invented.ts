/** A made-up build that is small and whole, for tests that need a real one. */

export const buildFile = `---
title: A car made up for tests
document: TT-01
workshop: Bench Two Garage (invented)
vehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }
original: { mass: 1100 kg, mass-source: made up, induction: na }
certifier: { name: R. Ansell (invented), number: EX-114 }
instruments:
  - { id: caliper-1, what: digital caliper, uncertainty: 0.03 mm, checked: 2026-01-08 }
---
`;

/** A whole PDF without pages. */
export const emptyPdf = [
  '%PDF-1.4',
  '1 0 obj',
  '<</Type/Catalog/Pages 2 0 R        >>',
  'endobj',
  '2 0 obj',
  '<</Type/Pages/Kids[3 0 R]/Count 1>>',
  'endobj',
  '3 0 obj',
  '<</Type/Page/Parent 2 0 R/MediaBox[0 0 9 9]>>',
  'endobj',
  'xref',
  '0 4',
  '0000000000 65535 f ',
  '0000000009 00000 n ',
  '0000000062 00000 n ',
  '0000000113 00000 n ',
  'trailer',
  '<</Size 4/Root 1 0 R>>',
  'startxref',
  '174',
  '%%EOF',
  '',
].join('\n');

/** The same without a page. */
export const pagelessPdf = [
  '%PDF-1.4',
  '1 0 obj',
  '<</Type/Catalog/Pages 2 0 R>>',
  'endobj',
  '2 0 obj',
  '<</Type/Pages/Kids[]/Count 0>>',
  'endobj',
  'xref',
  '0 3',
  '0000000000 65535 f ',
  '0000000009 00000 n ',
  '0000000054 00000 n ',
  'trailer',
  '<</Size 3/Root 1 0 R>>',
  'startxref',
  '100',
  '%%EOF',
  '',
].join('\n');

export interface FloorOptions {
  wall?: string;
  joined?: string;
  title?: string;
  stages?: string;
  more?: string;
  words?: string;
}

/** A note of a bracket on the floor, whose thickness ratio is checked. */
export function floorNote({
  wall = '2.48 mm',
  joined = '1.20 mm',
  title = 'Bracket on the floor',
  stages = 'tacked: 2026-03-12, welded: 2026-03-14, painted: 2026-03-20',
  more = '',
  words = 'Let in and welded.',
}: FloorOptions = {}): string {
  return `---
kind: body-structure
title: ${title}
by: JO
stages: { as-received: 2026-02-02, cut: 2026-03-10, ${stages} }
structure-cut: no
pieces:
  - id: floor
    role: bracket
    joined-to: { value: ${joined}, with: caliper-1 }
    now: { section: FL 100x3, steel: S355, wall: { value: ${wall}, with: caliper-1 } }
${more}---

${words}
`;
}
