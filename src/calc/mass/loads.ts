import { sheet } from '../sheet.js';

/** Axle and tyre loads against their ratings. */
export const axleLoads = sheet({
  id: 'axle-loads',
  subject: 'mass',
  title: 'Axle and tyre loads against ratings',
  purpose: 'How far one laden axle and its more heavily loaded tyre use up their ratings.',
  inputs: {
    left: { symbol: 'm_l', unit: 'kg', says: 'mass under the left wheel, laden' },
    right: { symbol: 'm_r', unit: 'kg', says: 'mass under the right wheel, laden' },
    axleRating: { symbol: 'm_A', unit: 'kg', says: 'rating of the axle' },
    tyreRating: { symbol: 'm_T', unit: 'kg', says: 'load capacity of one tyre at the pressure used' },
  },
  results: {
    axle: { symbol: 'm', unit: 'kg', says: 'mass on the axle', tex: '@left + @right' },
    tyre: { symbol: 'm_t', unit: 'kg', says: 'mass on the more heavily loaded tyre', tex: '\\max(@left, @right)' },
    axleUse: {
      symbol: 'k_A',
      unit: '%',
      says: 'share of the axle rating that is used',
      tex: '\\frac{@axle}{@axleRating}',
    },
    tyreUse: {
      symbol: 'k_T',
      unit: '%',
      says: 'share of the tyre rating that is used',
      tex: '\\frac{@tyre}{@tyreRating}',
    },
  },
  assumptions: ['Single tyres.'],
  sources: [{ document: 'Sum and ratio of masses', basis: 'derived' }],
  validity: [
    { says: 'masses must not be negative', holds: (x) => x.left >= 0 && x.right >= 0 },
    { says: 'ratings must be greater than zero', holds: (x) => x.axleRating > 0 && x.tyreRating > 0 },
  ],
  calculate: ({ left, right, axleRating, tyreRating }) => {
    const [axle, tyre] = [left + right, Math.max(left, right)];
    return { axle, tyre, axleUse: axle / axleRating, tyreUse: tyre / tyreRating };
  },
  examples: [
    {
      given: { left: '430 kg', right: '420 kg', axleRating: '950 kg', tyreRating: '560 kg' },
      gives: { axle: '850 kg', tyre: '430 kg', axleUse: '89.5 %', tyreUse: '76.8 %' },
      source: { document: 'Worked by hand', basis: 'derived' },
    },
  ],
});

/** Axle loads after parts are added or taken out at their places. */
export const massAdded = sheet({
  id: 'mass-added',
  subject: 'mass',
  title: 'Axle loads with parts added and taken out',
  purpose:
    'Axle loads and centre of mass after parts are added, or taken out, each at its place along the vehicle: before the work or instead of a second weighing.',
  inputs: {
    front: { symbol: 'm_f', unit: 'kg', says: 'mass on the front axle before' },
    rear: { symbol: 'm_r', unit: 'kg', says: 'mass on the rear axle before' },
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
    parts: {
      symbol: 'parts',
      says: 'one row a part',
      columns: {
        mass: { symbol: 'm_i', unit: 'kg', says: 'mass of the part; negative where it is taken out' },
        place: {
          symbol: 'x_i',
          unit: 'mm',
          says: 'distance of its centre of mass behind the front axle; negative ahead of it',
        },
      },
    },
  },
  results: {
    added: { symbol: '\\Delta m', unit: 'kg', says: 'mass added in all', tex: '\\sum m_i' },
    toRear: {
      symbol: '\\Delta m_r',
      unit: 'kg',
      says: 'mass added to the rear axle',
      tex: '\\frac{\\sum m_i x_i}{@wheelbase}',
    },
    toFront: { symbol: '\\Delta m_f', unit: 'kg', says: 'mass added to the front axle', tex: '@added - @toRear' },
    frontAfter: { symbol: "m_f'", unit: 'kg', says: 'front axle after', tex: '@front + @toFront' },
    rearAfter: { symbol: "m_r'", unit: 'kg', says: 'rear axle after', tex: '@rear + @toRear' },
    behindFront: {
      symbol: "a'",
      unit: 'mm',
      says: 'centre of mass behind the front axle after',
      tex: '\\frac{@wheelbase \\cdot @rearAfter}{@frontAfter + @rearAfter}',
    },
  },
  method:
    'Each part loads the rear axle by its mass times its place over the wheelbase, and the front axle by the rest.',
  sources: [{ document: 'Equilibrium of moments about the front axle', basis: 'derived' }],
  validity: [
    {
      says: 'masses on the axles and wheelbase must be greater than zero',
      holds: (x) => x.front > 0 && x.rear > 0 && x.wheelbase > 0,
    },
    { says: 'at least one part must be named', holds: (x) => x.parts.length > 0 },
    {
      says: 'both axles must keep load',
      holds: (x) =>
        x.front + sums(x.parts).mass - sums(x.parts).moment / x.wheelbase > 0 &&
        x.rear + sums(x.parts).moment / x.wheelbase > 0,
    },
  ],
  calculate: ({ front, rear, wheelbase, parts }) => {
    const { mass: added, moment } = sums(parts);
    const toRear = moment / wheelbase;
    const toFront = added - toRear;
    const [frontAfter, rearAfter] = [front + toFront, rear + toRear];
    return {
      added,
      toRear,
      toFront,
      frontAfter,
      rearAfter,
      behindFront: (wheelbase * rearAfter) / (frontAfter + rearAfter),
    };
  },
  examples: [
    {
      given: { front: '4000 lb', rear: '3000 lb', wheelbase: '150 in', parts: [{ mass: '10000 lb', place: '120 in' }] },
      gives: { toRear: '8000 lb', toFront: '2000 lb', frontAfter: '6000 lb', rearAfter: '11000 lb' },
      source: {
        document: 'Page on axle weight distribution of trucks',
        clause: 'practical example',
        basis: 'published',
      },
    },
  ],
});

function sums(parts: readonly { readonly mass: number; readonly place: number }[]): { mass: number; moment: number } {
  return parts.reduce((sum, p) => ({ mass: sum.mass + p.mass, moment: sum.moment + p.mass * p.place }), {
    mass: 0,
    moment: 0,
  });
}

/** How two weighings differ. */
export const axleLoadChange = sheet({
  id: 'axle-load-change',
  subject: 'mass',
  title: 'Axle loads before and after',
  purpose:
    'Change of the axle loads and of the place of the centre of mass between the weighing as received and the weighing as built.',
  inputs: {
    frontBefore: { symbol: 'm_{f,o}', unit: 'kg', says: 'mass on the front axle as received' },
    rearBefore: { symbol: 'm_{r,o}', unit: 'kg', says: 'mass on the rear axle as received' },
    frontAfter: { symbol: 'm_{f,n}', unit: 'kg', says: 'mass on the front axle as built, in the same state of load' },
    rearAfter: { symbol: 'm_{r,n}', unit: 'kg', says: 'mass on the rear axle as built, in the same state of load' },
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
  },
  results: {
    front: { symbol: '\\Delta m_f', unit: 'kg', says: 'change on the front axle', tex: '@frontAfter - @frontBefore' },
    rear: { symbol: '\\Delta m_r', unit: 'kg', says: 'change on the rear axle', tex: '@rearAfter - @rearBefore' },
    total: { symbol: '\\Delta m', unit: 'kg', says: 'change of the mass', tex: '@front + @rear' },
    relative: {
      symbol: '\\Delta m/m',
      unit: '%',
      says: 'change of the mass against the mass as received',
      tex: '\\frac{@total}{@frontBefore + @rearBefore}',
    },
    shift: {
      symbol: '\\Delta a',
      unit: 'mm',
      says: 'shift of the centre of mass: positive to the rear, negative to the front',
      tex: '@wheelbase \\cdot (\\frac{@rearAfter}{@frontAfter + @rearAfter} - \\frac{@rearBefore}{@frontBefore + @rearBefore})',
    },
  },
  sources: [{ document: 'Equilibrium of moments about the front axle', basis: 'derived' }],
  validity: [
    {
      says: 'every mass and the wheelbase must be greater than zero',
      holds: (x) => Object.values(x).every((n) => n > 0),
    },
  ],
  calculate: ({ frontBefore, rearBefore, frontAfter, rearAfter, wheelbase }) => {
    const [front, rear] = [frontAfter - frontBefore, rearAfter - rearBefore];
    const total = front + rear;
    const shift = wheelbase * (rearAfter / (frontAfter + rearAfter) - rearBefore / (frontBefore + rearBefore));
    return { front, rear, total, relative: total / (frontBefore + rearBefore), shift };
  },
  examples: [
    {
      given: {
        frontBefore: '780 kg',
        rearBefore: '620 kg',
        frontAfter: '810 kg',
        rearAfter: '640 kg',
        wheelbase: '2600 mm',
      },
      gives: { front: '30 kg', rear: '20 kg', total: '50 kg', relative: '3.57 %', shift: '-3.8 mm' },
      source: { document: 'Equilibrium of moments, worked by hand', basis: 'derived' },
    },
  ],
});
