import { sheet } from '../sheet.js';

/** Geometric compression ratio from measured volumes. */
export const compressionRatio = sheet({
  id: 'compression-ratio',
  subject: 'engine',
  title: 'Compression ratio',
  purpose: 'Geometric compression ratio of one cylinder from bore, stroke and the measured volumes above the piston.',
  inputs: {
    bore: { symbol: 'B', unit: 'mm', says: 'bore' },
    stroke: { symbol: 'S', unit: 'mm', says: 'stroke' },
    chamber: {
      symbol: 'V_h',
      unit: 'cm3',
      says: 'combustion chamber in the head, measured with a burette, valves and plug fitted',
    },
    gasketBore: { symbol: 'd_g', unit: 'mm', says: 'bore of the head gasket' },
    gasketThickness: { symbol: 't_g', unit: 'mm', says: 'thickness of the head gasket when clamped' },
    deck: {
      symbol: 'h_d',
      unit: 'mm',
      says: 'piston below the deck at top dead centre; negative where it stands above',
    },
    crown: {
      symbol: 'V_p',
      unit: 'cm3',
      says: 'volume of the piston crown: positive for a dish and valve reliefs, negative for a dome',
      usual: '0 cm3',
    },
  },
  results: {
    swept: {
      symbol: 'V_s',
      unit: 'cm3',
      says: 'swept volume',
      tex: '\\frac{\\pi}{4} \\cdot @bore^2 \\cdot @stroke',
      step: true,
    },
    gasket: {
      symbol: 'V_g',
      unit: 'cm3',
      says: 'volume inside the gasket',
      tex: '\\frac{\\pi}{4} \\cdot @gasketBore^2 \\cdot @gasketThickness',
      step: true,
    },
    deckVolume: {
      symbol: 'V_d',
      unit: 'cm3',
      says: 'volume between piston edge and deck',
      tex: '\\frac{\\pi}{4} \\cdot @bore^2 \\cdot @deck',
      step: true,
    },
    clearance: {
      symbol: 'V_c',
      unit: 'cm3',
      says: 'volume left at top dead centre',
      tex: '@chamber + @gasket + @deckVolume + @crown',
    },
    ratio: {
      symbol: '\\varepsilon',
      unit: '1',
      says: 'compression ratio',
      tex: '\\frac{@swept + @clearance}{@clearance}',
    },
  },
  assumptions: ['The gap between piston and bore above the top ring is left out; it lowers the ratio a little.'],
  sources: [{ document: 'Geometry of the cylinder', basis: 'derived' }],
  validity: [
    {
      says: 'bore, stroke, chamber and gasket bore must be greater than zero',
      holds: (x) => x.bore > 0 && x.stroke > 0 && x.chamber > 0 && x.gasketBore > 0,
    },
    { says: 'the gasket must not be negative', holds: (x) => x.gasketThickness >= 0 },
    { says: 'a volume must be left at top dead centre', holds: (x) => volumes(x).clearance > 0 },
  ],
  calculate: (x) => {
    const { swept, gasket, deckVolume, clearance } = volumes(x);
    return { swept, gasket, deckVolume, clearance, ratio: (swept + clearance) / clearance };
  },
  examples: [
    {
      given: {
        bore: '4.03 in',
        stroke: '3.48 in',
        chamber: '76 cm3',
        gasketBore: '4.166 in',
        gasketThickness: '0.035 in',
        deck: '0.005 in',
        crown: '7 cm3',
      },
      gives: { ratio: '8.92', swept: '44.39 in3' },
      source: {
        document: 'Determining compression ratio, racing engine builder’s page beckracing.com',
        clause: 'worked example',
        basis: 'published',
      },
    },
  ],
});

interface Volumes {
  readonly bore: number;
  readonly stroke: number;
  readonly chamber: number;
  readonly gasketBore: number;
  readonly gasketThickness: number;
  readonly deck: number;
  readonly crown: number;
}

function volumes(x: Volumes) {
  const disc = (d: number, h: number) => (Math.PI / 4) * d ** 2 * h;
  const swept = disc(x.bore, x.stroke);
  const gasket = disc(x.gasketBore, x.gasketThickness);
  const deckVolume = disc(x.bore, x.deck);
  return { swept, gasket, deckVolume, clearance: x.chamber + gasket + deckVolume + x.crown };
}
