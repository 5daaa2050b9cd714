import { sheet } from '../sheet.js';

const circuit = (i: 1 | 2) =>
  ({
    bore: { symbol: `D_${i}`, unit: 'mm', says: `bore of the master cylinder for circuit ${i}` },
    area: {
      symbol: `A_${i}`,
      unit: 'mm2',
      says: `area of all pistons that circuit ${i} moves, at both wheels and on both sides of a fixed caliper`,
    },
    move: {
      symbol: `\\delta_${i}`,
      unit: 'mm',
      says: `movement of those pistons: running clearance and spring of pads and caliper`,
    },
    swell: { symbol: `V_{e${i}}`, unit: 'cm3', says: `swell of hoses and fluid in circuit ${i} at working pressure` },
  }) as const;
const [one, two] = [circuit(1), circuit(2)];
const volume = (i: 1 | 2) =>
  ({
    symbol: `V_${i}`,
    unit: 'cm3',
    says: `fluid that circuit ${i} takes`,
    tex: `@area${i} \\cdot @move${i} + @swell${i}`,
  }) as const;
const stroke = (i: 1 | 2) =>
  ({
    symbol: `s_${i}`,
    unit: 'mm',
    says: `stroke of the piston of circuit ${i}`,
    tex: `\\frac{4 \\cdot @volume${i}}{\\pi \\cdot @bore${i}^2}`,
  }) as const;

/** Fluid that both circuits take, and the stroke and pedal travel this needs. */
export const brakeDisplacement = sheet({
  id: 'brake-displacement',
  subject: 'brakes',
  title: 'Fluid displacement and master-cylinder stroke',
  purpose: 'Whether the master cylinder has stroke enough for the calipers fitted, and how far the pedal goes down.',
  inputs: {
    bore1: one.bore,
    area1: one.area,
    move1: one.move,
    swell1: one.swell,
    bore2: two.bore,
    area2: two.area,
    move2: two.move,
    swell2: two.swell,
    arrangement: {
      symbol: '\\text{arrangement}',
      says: 'how the two pistons stand',
      choices: {
        tandem: 'one behind the other: their strokes add',
        parallel: 'side by side on a balance bar: the mean of both moves the pedal',
      },
    },
    available: { symbol: 's_a', unit: 'mm', says: 'stroke available at the pushrod' },
    pedalRatio: { symbol: 'i_p', unit: '1', says: 'pedal ratio' },
  },
  results: {
    volume1: volume(1),
    volume2: volume(2),
    stroke1: stroke(1),
    stroke2: stroke(2),
    weight: {
      symbol: 'w',
      unit: '1',
      says: 'how the strokes reach the pushrod: 1 in tandem, 1/2 on a balance bar in the middle',
      step: true,
    },
    stroke: {
      symbol: 's',
      unit: 'mm',
      says: 'stroke at the pushrod',
      tex: '@weight \\cdot \\left(@stroke1 + @stroke2\\right)',
    },
    used: { symbol: 'u', unit: '%', says: 'share of the available stroke', tex: '\\frac{@stroke}{@available}' },
    travel: {
      symbol: 's_p',
      unit: 'mm',
      says: 'travel of the pedal, without free play',
      tex: '@stroke \\cdot @pedalRatio',
    },
  },
  assumptions: [
    'Both circuits work and hold pressure. If one fails, its piston runs to its end before the other builds pressure: see that the rest of the stroke suffices.',
    'A balance bar is taken in its middle.',
  ],
  sources: [
    { document: 'Conservation of fluid volume', basis: 'derived' },
    {
      document: 'Limpert, Brake Design and Safety',
      edition: '3rd ed., 2011',
      clause: 'chapter 5, brake fluid volume analysis',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'bores, piston areas, available stroke and pedal ratio must be greater than zero',
      holds: (x) => Math.min(x.bore1, x.bore2, x.area1, x.area2, x.available, x.pedalRatio) > 0,
    },
    {
      says: 'piston movement and swell must not be negative',
      holds: (x) => Math.min(x.move1, x.move2, x.swell1, x.swell2) >= 0,
    },
  ],
  calculate: (x) => {
    const [volume1, volume2] = [x.area1 * x.move1 + x.swell1, x.area2 * x.move2 + x.swell2];
    const [stroke1, stroke2] = [(4 * volume1) / (Math.PI * x.bore1 ** 2), (4 * volume2) / (Math.PI * x.bore2 ** 2)];
    const weight = x.arrangement === 'tandem' ? 1 : 0.5;
    const stroke = weight * (stroke1 + stroke2);
    return {
      volume1,
      volume2,
      stroke1,
      stroke2,
      weight,
      stroke,
      used: stroke / x.available,
      travel: stroke * x.pedalRatio,
    };
  },
  examples: [
    {
      given: {
        bore1: '22.2 mm',
        area1: '4580 mm2',
        move1: '0.6 mm',
        swell1: '0.5 cm3',
        bore2: '22.2 mm',
        area2: '1816 mm2',
        move2: '0.6 mm',
        swell2: '0.4 cm3',
        arrangement: 'tandem',
        available: '32 mm',
        pedalRatio: '4.0',
      },
      gives: {
        volume1: '3.248 cm3',
        volume2: '1.490 cm3',
        stroke1: '8.39 mm',
        stroke2: '3.85 mm',
        stroke: '12.24 mm',
        used: '38.2 %',
        travel: '49.0 mm',
      },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
