import { sheet } from '../sheet.js';
import { elasticity, elasticitySource } from '../steel.js';

/** A preloaded bolt that also carries an external pull. */
export const boltedJoint = sheet({
  id: 'bolted-joint',
  subject: 'fasteners',
  title: 'Preloaded bolt under an external pull',
  purpose:
    'How much of an external pull the bolt feels, the load it ends up with, and the reserve against its proof load and against the joint opening.',
  inputs: {
    area: { symbol: 'A_t', unit: 'mm²', says: 'stress area of the bolt' },
    proofStress: { symbol: 'S_p', unit: 'MPa', says: 'proof strength of the bolt' },
    preload: { symbol: 'F_i', unit: 'kN', says: 'preload' },
    pull: { symbol: 'P', unit: 'kN', says: 'external pull on this bolt' },
    boltStiffness: { symbol: 'k_b', unit: 'N/mm', says: 'stiffness of the bolt' },
    memberStiffness: { symbol: 'k_m', unit: 'N/mm', says: 'stiffness of the parts clamped' },
  },
  results: {
    constant: {
      symbol: 'C',
      unit: '1',
      says: 'share of the pull that the bolt feels',
      tex: '\\frac{@boltStiffness}{@boltStiffness + @memberStiffness}',
    },
    boltLoad: { symbol: 'F_b', unit: 'kN', says: 'load on the bolt', tex: '@constant \\cdot @pull + @preload' },
    clamp: {
      symbol: 'F_m',
      unit: 'kN',
      says: 'clamping force that is left',
      tex: '@preload - (1 - @constant) \\cdot @pull',
    },
    preloadStress: {
      symbol: '\\sigma_i',
      unit: 'MPa',
      says: 'stress in the bolt from preload',
      tex: '\\frac{@preload}{@area}',
    },
    stress: {
      symbol: '\\sigma_b',
      unit: 'MPa',
      says: 'stress in the bolt in service',
      tex: '\\frac{@boltLoad}{@area}',
    },
    proofReserve: {
      symbol: 'n_p',
      unit: '1',
      says: 'proof load over the load on the bolt',
      tex: '\\frac{@proofStress \\cdot @area}{@boltLoad}',
    },
    loadReserve: {
      symbol: 'n_L',
      unit: '1',
      says: 'how many times the pull may grow before the bolt reaches its proof load',
      tex: '\\frac{@proofStress \\cdot @area - @preload}{@constant \\cdot @pull}',
    },
    openingReserve: {
      symbol: 'n_0',
      unit: '1',
      says: 'how many times the pull may grow before the joint opens',
      tex: '\\frac{@preload}{@pull \\cdot (1 - @constant)}',
    },
  },
  assumptions: [
    'The pull acts along the bolt; no prying. Static load: a load that comes and goes needs a fatigue check.',
  ],
  sources: [
    {
      document: 'Shigley’s Mechanical Engineering Design',
      clause: 'ch. 8: tension joints, static loading',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'area, strength, preload, pull and both stiffnesses must be greater than zero',
      holds: (x) => Object.values(x).every((n) => n > 0),
    },
    {
      says: 'the pull opens the joint: the bolt then carries all of it and the formulas no longer hold',
      holds: (x) => x.preload > (1 - x.boltStiffness / (x.boltStiffness + x.memberStiffness)) * x.pull,
    },
  ],
  calculate: (x) => {
    const constant = x.boltStiffness / (x.boltStiffness + x.memberStiffness);
    const boltLoad = constant * x.pull + x.preload;
    const proof = x.proofStress * x.area;
    return {
      constant,
      boltLoad,
      clamp: x.preload - (1 - constant) * x.pull,
      preloadStress: x.preload / x.area,
      stress: boltLoad / x.area,
      proofReserve: proof / boltLoad,
      loadReserve: (proof - x.preload) / (constant * x.pull),
      openingReserve: x.preload / (x.pull * (1 - constant)),
    };
  },
  examples: [
    {
      given: {
        area: '0.373 in²',
        proofStress: '85 ksi',
        preload: '25 kip',
        pull: '6 kip',
        boltStiffness: '6.50e6 lbf/in',
        memberStiffness: '13.8e6 lbf/in',
      },
      gives: { constant: '0.320', preloadStress: '67.02 ksi', stress: '72.17 ksi' },
      source: {
        document: 'Shigley’s Mechanical Engineering Design, ch. 8, bolted joint of 3/4-16 UNF, grade 5',
        basis: 'memory',
      },
    },
  ],
});

/** Stiffness of a bolt and of the parts it clamps. */
export const jointStiffness = sheet({
  id: 'joint-stiffness',
  subject: 'fasteners',
  title: 'Stiffness of a bolt and of the parts clamped',
  purpose:
    'Stiffness of a bolt with a plain and a threaded length within the grip, and of clamped parts of one material by the frustum model.',
  inputs: {
    diameter: { symbol: 'd', unit: 'mm', says: 'nominal diameter' },
    area: { symbol: 'A_t', unit: 'mm²', says: 'stress area of the thread' },
    plain: { symbol: 'l_d', unit: 'mm', says: 'plain length of the bolt within the grip' },
    threaded: { symbol: 'l_t', unit: 'mm', says: 'threaded length within the grip' },
    boltModulus: { symbol: 'E_b', says: 'modulus of elasticity of the bolt', ...elasticity },
    memberModulus: { symbol: 'E_m', says: 'modulus of elasticity of the parts', ...elasticity },
  },
  results: {
    shank: {
      symbol: 'A_d',
      unit: 'mm²',
      says: 'area of the plain shank',
      tex: '\\frac{\\pi \\cdot @diameter^2}{4}',
      step: true,
    },
    grip: { symbol: 'l', unit: 'mm', says: 'grip', tex: '@plain + @threaded', step: true },
    bolt: {
      symbol: 'k_b',
      unit: 'N/mm',
      says: 'stiffness of the bolt',
      tex: '\\frac{@shank \\cdot @area \\cdot @boltModulus}{@shank \\cdot @threaded + @area \\cdot @plain}',
    },
    members: {
      symbol: 'k_m',
      unit: 'N/mm',
      says: 'stiffness of the parts',
      tex: '\\frac{0.5774 \\cdot \\pi \\cdot @memberModulus \\cdot @diameter}{2 \\cdot \\ln(5 \\cdot \\frac{0.5774 \\cdot @grip + 0.5 \\cdot @diameter}{0.5774 \\cdot @grip + 2.5 \\cdot @diameter})}',
    },
  },
  assumptions: [
    'Cones of 30° under a bearing face of 1.5 d at both ends; the parts reach beyond the cones. Rubber or sheet between them makes the joint far softer.',
  ],
  sources: [
    {
      document: 'Shigley’s Mechanical Engineering Design',
      clause: 'ch. 8: fastener stiffness and member stiffness',
      basis: 'memory',
    },
    elasticitySource,
  ],
  validity: [
    {
      says: 'diameter, stress area and moduli must be greater than zero',
      holds: (x) => Math.min(x.diameter, x.area, x.boltModulus, x.memberModulus) > 0,
    },
    {
      says: 'the lengths must be zero or more and make a grip',
      holds: (x) => Math.min(x.plain, x.threaded) >= 0 && x.plain + x.threaded > 0,
    },
  ],
  calculate: ({ diameter: d, area, plain, threaded, boltModulus, memberModulus }) => {
    const shank = (Math.PI * d ** 2) / 4;
    const grip = plain + threaded;
    return {
      shank,
      grip,
      bolt: (shank * area * boltModulus) / (shank * threaded + area * plain),
      members:
        (0.5774 * Math.PI * memberModulus * d) /
        (2 * Math.log((5 * (0.5774 * grip + 0.5 * d)) / (0.5774 * grip + 2.5 * d))),
    };
  },
  examples: [
    {
      given: {
        diameter: '12 mm',
        area: '84.3 mm²',
        plain: '10 mm',
        threaded: '20 mm',
        boltModulus: '207 GPa',
        memberModulus: '207 GPa',
      },
      gives: { bolt: '635.6e3 N/mm', members: '2.498e6 N/mm' },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
  ],
});
