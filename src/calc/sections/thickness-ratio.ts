import { Decimal } from 'decimal.js';
import { sheet } from '../sheet.js';

/** New thickness over old where metal is let in or laid on. */
export const thicknessRatio = sheet({
  id: 'thickness-ratio',
  subject: 'sections',
  title: 'Thickness of new metal against the original',
  purpose: 'Ratio of the thickness of a let-in piece, doubler or tube wall to the metal it is welded to.',
  inputs: {
    original: {
      symbol: 't_1',
      unit: 'mm',
      says: 'thickness of the original metal beside the weld, cleaned to bright metal',
    },
    replacement: { symbol: 't_2', unit: 'mm', says: 'thickness of the new metal' },
  },
  results: {
    ratio: { symbol: 'r_t', unit: '1', says: 'thickness, new over original', tex: '\\frac{@replacement}{@original}' },
    bending: {
      symbol: 'r_D',
      unit: '1',
      says: 'bending stiffness of the bare sheet, new over original',
      tex: '@ratio^3',
    },
  },
  assumptions: ['Both are steel of the same modulus of elasticity.'],
  sources: [
    {
      document: 'Ratio of two measured sizes; bending stiffness of a sheet goes with the cube of its thickness',
      basis: 'derived',
    },
  ],
  validity: [{ says: 'both thicknesses must be greater than zero', holds: (x) => x.original > 0 && x.replacement > 0 }],
  calculate: ({ original, replacement }) => {
    // In decimal arithmetic, so that 3.0 mm over 1.2 mm is 2.5 and nothing else.
    const ratio = new Decimal(replacement).div(original);
    return { ratio: ratio.toNumber(), bending: ratio.pow(3).toNumber() };
  },
  remark:
    'Thicker is not better without end. Where thin and thick metal meet, the thick piece does not give and the bending gathers in the thin one at the weld toe, where cracks begin; the thin side also burns through before the thick side fuses. Bring the ratio down, or spread the step with a tapered or shaped edge.',
  examples: [
    {
      given: { original: '1.2 mm', replacement: '3.0 mm' },
      gives: { ratio: '2.5000', bending: '15.625' },
      source: { document: 'Worked by hand; regression only', basis: 'derived' },
    },
  ],
});
