import { sheet } from '../sheet.js';
import { elasticitySource, shearModulus } from '../steel.js';

export const shaftTorque = sheet({
  id: 'shaft-torque',
  subject: 'driveline',
  title: 'Greatest torque in the shaft',
  purpose:
    'Torque that the engine can put into the shaft in its lowest gear, torque at which the tyres slip, and the smaller of the two.',
  inputs: {
    engineTorque: { symbol: 'T_e', unit: 'N·m', says: 'highest engine torque' },
    gearRatio: { symbol: 'i_1', unit: '1', says: 'ratio of the lowest gear, transfer case included' },
    converterRatio: {
      symbol: 'i_c',
      unit: '1',
      says: 'torque multiplication of a torque converter at stall',
      usual: '1',
    },
    axleMass: {
      symbol: 'm_d',
      unit: 'kg',
      says: 'mass on the driven axle, with load transfer at full power if that is to count',
    },
    grip: { symbol: '\\mu', unit: '1', says: 'grip of the tyres, with its source' },
    rollingRadius: { symbol: 'R', unit: 'mm', says: 'rolling radius of the driven tyres' },
    finalDrive: { symbol: 'i_f', unit: '1', says: 'final drive ratio' },
  },
  results: {
    weight: {
      symbol: 'W_d',
      unit: 'N',
      says: 'weight on the driven axle, mass times 9.80665 m/s²',
      tex: '@axleMass \\cdot 9.80665',
      step: true,
    },
    engine: {
      symbol: 'T_1',
      unit: 'N·m',
      says: 'shaft torque from the engine',
      tex: '@engineTorque \\cdot @converterRatio \\cdot @gearRatio',
    },
    tyres: {
      symbol: 'T_2',
      unit: 'N·m',
      says: 'shaft torque at which the tyres slip',
      tex: '\\frac{@grip \\cdot @weight \\cdot @rollingRadius}{@finalDrive}',
    },
    torque: {
      symbol: 'T',
      unit: 'N·m',
      says: 'greatest steady torque in the shaft',
      tex: '\\min\\left(@engine,\\ @tyres\\right)',
    },
  },
  assumptions: [
    'Steady torque: a clutch let in sharply puts more into the shaft for a moment. All of the drive goes through this shaft.',
  ],
  sources: [{ document: 'Ratios of a gear train; friction of the tyres', basis: 'derived' }],
  validity: [
    {
      says: 'torque, ratios, mass, grip and radius must be greater than zero',
      holds: (x) => Math.min(x.engineTorque, x.gearRatio, x.axleMass, x.grip, x.rollingRadius, x.finalDrive) > 0,
    },
    { says: 'torque multiplication of a converter is at least 1', holds: (x) => x.converterRatio >= 1 },
  ],
  calculate: (x) => {
    const engine = x.engineTorque * x.converterRatio * x.gearRatio;
    const weight = x.axleMass * 9.80665;
    const tyres = (x.grip * weight * x.rollingRadius) / x.finalDrive;
    return { weight, engine, tyres, torque: Math.min(engine, tyres) };
  },
  examples: [
    {
      given: {
        engineTorque: '300 N·m',
        gearRatio: '3.25',
        axleMass: '800 kg',
        grip: '1.0',
        rollingRadius: '310 mm',
        finalDrive: '3.9',
      },
      gives: { engine: '975 N·m', tyres: '623.6 N·m', torque: '623.6 N·m' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

export const tubeTorsion = sheet({
  id: 'tube-torsion',
  subject: 'driveline',
  title: 'Torsion of the shaft tube',
  purpose: 'Shear stress and twist of the tube under a torque, and the torque at which it yields.',
  inputs: {
    torque: { symbol: 'T', unit: 'N·m', says: 'torque in the shaft' },
    diameter: { symbol: 'D', unit: 'mm', says: 'outside diameter of the tube' },
    wall: { symbol: 't', unit: 'mm', says: 'wall of the tube' },
    length: { symbol: 'L', unit: 'mm', says: 'length of the tube' },
    shearModulus: { symbol: 'G', says: 'shear modulus', ...shearModulus },
    yieldStrength: { symbol: 'S_y', unit: 'MPa', says: 'yield strength of the tube, from its certificate' },
  },
  results: {
    bore: { symbol: 'd', unit: 'mm', says: 'inside diameter', tex: '@diameter - 2 \\cdot @wall', step: true },
    polar: {
      symbol: 'J',
      unit: 'mm4',
      says: 'polar second moment of area',
      tex: '\\frac{\\pi}{32} \\left(@diameter^4 - @bore^4\\right)',
      step: true,
    },
    stress: {
      symbol: '\\tau',
      unit: 'MPa',
      says: 'greatest shear stress',
      tex: '\\frac{@torque \\cdot @diameter}{2 \\cdot @polar}',
    },
    shearYield: {
      symbol: '\\tau_y',
      unit: 'MPa',
      says: 'shear stress at yield, by von Mises',
      tex: '\\frac{@yieldStrength}{\\sqrt{3}}',
      step: true,
    },
    capacity: {
      symbol: 'T_y',
      unit: 'N·m',
      says: 'torque at which the tube yields',
      tex: '\\frac{2 \\cdot @shearYield \\cdot @polar}{@diameter}',
    },
    used: { symbol: 'u', unit: '%', says: 'share of that torque', tex: '\\frac{@torque}{@capacity}' },
    twist: {
      symbol: '\\phi',
      unit: 'deg',
      says: 'twist of the tube over its length',
      tex: '\\frac{@torque \\cdot @length}{@shearModulus \\cdot @polar}',
    },
  },
  assumptions: [
    'The tube alone: yokes, welds, joints and splines have ratings of their own from their maker, which often govern.',
    'No factor of safety is contained; the load case states it.',
  ],
  sources: [{ document: 'Torsion of a round tube; yield by von Mises', basis: 'derived' }, elasticitySource],
  validity: [
    {
      says: 'torque, length, shear modulus and yield strength must be greater than zero',
      holds: (x) => Math.min(x.torque, x.length, x.shearModulus, x.yieldStrength) > 0,
    },
    {
      says: 'the wall must be greater than zero and at most half the diameter',
      holds: (x) => x.wall > 0 && 2 * x.wall <= x.diameter,
    },
    {
      says: 'a wall thinner than 1/50 of the diameter can buckle under torsion before it yields',
      holds: (x) => x.wall >= x.diameter / 50,
    },
  ],
  calculate: (x) => {
    const bore = x.diameter - 2 * x.wall;
    const polar = (Math.PI / 32) * (x.diameter ** 4 - bore ** 4);
    const shearYield = x.yieldStrength / Math.sqrt(3);
    const capacity = (2 * shearYield * polar) / x.diameter;
    return {
      bore,
      polar,
      stress: (x.torque * x.diameter) / (2 * polar),
      shearYield,
      capacity,
      used: x.torque / capacity,
      twist: (x.torque * x.length) / (x.shearModulus * polar),
    };
  },
  examples: [
    {
      given: { torque: '975 N·m', diameter: '48.3 mm', wall: '3.2 mm', length: '1000 mm', yieldStrength: '235 MPa' },
      gives: { polar: '23.2 cm4', stress: '102 MPa', capacity: '1302 N·m', used: '75 %' },
      source: {
        document: 'EN 10219-2, torsion constant of tube 48.3×3.2 (23.2 cm⁴); the rest by hand',
        basis: 'memory',
      },
    },
  ],
});
