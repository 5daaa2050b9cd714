import { sheet } from '../sheet.js';
import { elasticity, elasticitySource } from '../steel.js';

/** A link whose body runs beside the line between its end joints. */
export const crankedLink = sheet({
  id: 'cranked-link',
  subject: 'links',
  title: 'Bending of a cranked link',
  purpose:
    'Stress in a link whose body stands off the line between its end joints, so that a pull or a push also bends it.',
  inputs: {
    load: { symbol: 'F', unit: 'kN', says: 'force along the line between the end joints' },
    direction: {
      symbol: '\\text{direction}',
      says: 'which way the force acts',
      choices: { compression: 'the link is pushed', tension: 'the link is pulled' },
    },
    offset: {
      symbol: 'e',
      unit: 'mm',
      says: 'greatest distance of the body’s centre line from the line between the end joints',
    },
    length: { symbol: 'l', unit: 'mm', says: 'length between the centres of the end joints' },
    area: { symbol: 'A', unit: 'mm2', says: 'area of the body' },
    inertia: { symbol: 'I', unit: 'mm4', says: 'second moment of area of the body, in the plane of the offset' },
    fibre: { symbol: 'c', unit: 'mm', says: 'centre line to the outermost fibre, in the plane of the offset' },
    modulus: { symbol: 'E', says: 'modulus of elasticity', ...elasticity },
    yieldStrength: {
      symbol: 'S_y',
      unit: 'MPa',
      says: 'yield strength of the body, beside a weld that of the heated zone',
    },
  },
  results: {
    euler: {
      symbol: 'P_E',
      unit: 'kN',
      says: 'Euler load of the straight body',
      tex: '\\frac{\\pi^2 \\cdot @modulus \\cdot @inertia}{@length^2}',
      step: true,
    },
    growth: {
      symbol: 'm',
      unit: '1',
      says: 'growth of the bending moment as the link bows',
      tex: '\\begin{cases} \\sec\\left(\\frac{\\pi}{2} \\sqrt{\\frac{@load}{@euler}}\\right) & \\text{compression} \\\\ 1 & \\text{tension} \\end{cases}',
      step: true,
    },
    moment: { symbol: 'M', unit: 'N·m', says: 'bending moment', tex: '@load \\cdot @offset \\cdot @growth' },
    direct: { symbol: '\\sigma_a', unit: 'MPa', says: 'stress of the force alone', tex: '\\frac{@load}{@area}' },
    bending: {
      symbol: '\\sigma_b',
      unit: 'MPa',
      says: 'stress of the bending',
      tex: '\\frac{@moment \\cdot @fibre}{@inertia}',
    },
    stress: { symbol: '\\sigma', unit: 'MPa', says: 'greatest stress', tex: '@direct + @bending' },
    used: { symbol: 'u', unit: '%', says: 'share of the yield strength', tex: '\\frac{@stress}{@yieldStrength}' },
  },
  method:
    'Pushed, the link bows further and the secant formula gives the growth of the moment; pulled, no growth is counted.',
  assumptions: [
    'The whole body stands off by the greatest offset, which is exact for a body parallel to the line of the joints and on the safe side for a bow.',
    'The joints swing freely in the plane of the offset. In a pull the bow straightens, which is left out.',
    'The raised stress at the inside of a tight bend is not contained.',
  ],
  sources: [
    {
      document: 'Shigley, Mechanical Engineering Design',
      clause: 'chapter 4, columns with eccentric loading (secant formula)',
      basis: 'memory',
    },
    elasticitySource,
  ],
  validity: [
    {
      says: 'force, length, area, second moment, fibre distance, modulus and yield strength must be greater than zero',
      holds: (x) => Math.min(x.load, x.length, x.area, x.inertia, x.fibre, x.modulus, x.yieldStrength) > 0,
    },
    { says: 'the offset must not be negative', holds: (x) => x.offset >= 0 },
    {
      says: 'the force must stay below the Euler load of the body, or the link buckles',
      holds: (x) => x.direction === 'tension' || x.load < (Math.PI ** 2 * x.modulus * x.inertia) / x.length ** 2,
    },
  ],
  calculate: (x) => {
    const euler = (Math.PI ** 2 * x.modulus * x.inertia) / x.length ** 2;
    const growth = x.direction === 'tension' ? 1 : 1 / Math.cos((Math.PI / 2) * Math.sqrt(x.load / euler));
    const moment = x.load * x.offset * growth;
    const [direct, bending] = [x.load / x.area, (moment * x.fibre) / x.inertia];
    return {
      euler,
      growth,
      moment,
      direct,
      bending,
      stress: direct + bending,
      used: (direct + bending) / x.yieldStrength,
    };
  },
  remark:
    'A crank of a few millimetres soon counts for more than the force itself; a straight link round the obstacle is the better answer where there is room.',
  examples: [
    {
      given: {
        load: '15 kN',
        direction: 'compression',
        offset: '20 mm',
        length: '600 mm',
        area: '351.86 mm2',
        inertia: '35186 mm4',
        fibre: '16 mm',
        modulus: '207 GPa',
        yieldStrength: '350 MPa',
      },
      gives: { euler: '199.7 kN', growth: '1.100', moment: '330 N·m', stress: '193 MPa' },
      source: { document: 'Secant formula worked by hand, regression only', basis: 'derived' },
    },
  ],
});
