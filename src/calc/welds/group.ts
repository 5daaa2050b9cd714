import { OutOfRange, sheet } from '../sheet.js';
import { as4100 } from './as4100.js';
import { lineGroup, momentsAbout, slopes } from './line-group.js';

const force = (symbol: string, says: string) => ({ symbol, unit: 'kN', says, usual: '0 kN' }) as const;
const place = (symbol: string, says: string) => ({ symbol, unit: 'mm', says }) as const;

/** The highest loaded point of several welds that carry one force together. */
export const weldGroup = sheet({
  id: 'weld-group',
  subject: 'welds',
  title: 'Weld group under a force in any direction',
  purpose:
    'Greatest force for each length of weld in a group of straight welds in one plane, under a force that also twists the group and bends it out of its plane.',
  inputs: {
    segments: {
      symbol: 'i',
      says: 'the welds, each from end to end',
      columns: {
        x1: place('x_{1,i}', 'start, across'),
        y1: place('y_{1,i}', 'start, up'),
        x2: place('x_{2,i}', 'end, across'),
        y2: place('y_{2,i}', 'end, up'),
      },
    },
    forceX: force('F_x', 'force across, in the plane of the welds'),
    forceY: force('F_y', 'force up, in the plane of the welds'),
    forceZ: force('F_z', 'force out of the plane'),
    atX: place('x_F', 'where the force acts, across'),
    atY: place('y_F', 'where the force acts, up'),
    atZ: { ...place('z_F', 'how far out of the plane of the welds it acts'), usual: '0 mm' },
  },
  results: {
    length: { symbol: 'l_w', unit: 'mm', says: 'length of all welds', tex: '\\sum l_i', step: true },
    centreX: {
      symbol: '\\bar{x}',
      unit: 'mm',
      says: 'centroid of the welds, across',
      tex: '\\frac{\\sum l_i x_i}{\\sum l_i}',
      step: true,
    },
    centreY: {
      symbol: '\\bar{y}',
      unit: 'mm',
      says: 'centroid of the welds, up',
      tex: '\\frac{\\sum l_i y_i}{\\sum l_i}',
      step: true,
    },
    Ix: {
      symbol: 'I_{wx}',
      unit: 'mm³',
      says: 'second moment of the weld lines about the x axis, with y of both ends from the centroid',
      tex: '\\sum \\frac{l_i}{3} (y_{1,i}^2 + y_{1,i} \\cdot y_{2,i} + y_{2,i}^2)',
      step: true,
    },
    Iy: {
      symbol: 'I_{wy}',
      unit: 'mm³',
      says: 'second moment of the weld lines about the y axis, with x of both ends from the centroid',
      tex: '\\sum \\frac{l_i}{3} (x_{1,i}^2 + x_{1,i} \\cdot x_{2,i} + x_{2,i}^2)',
      step: true,
    },
    Ixy: {
      symbol: 'I_{wxy}',
      unit: 'mm³',
      says: 'product of inertia of the weld lines, from the centroid',
      tex: '\\sum \\frac{l_i}{6} (2 \\cdot x_{1,i} \\cdot y_{1,i} + 2 \\cdot x_{2,i} \\cdot y_{2,i} + x_{1,i} \\cdot y_{2,i} + x_{2,i} \\cdot y_{1,i})',
      step: true,
    },
    polar: {
      symbol: 'I_{wp}',
      unit: 'mm³',
      says: 'polar second moment of the weld lines',
      tex: '@Ix + @Iy',
      step: true,
    },
    momentX: {
      symbol: 'M_x',
      unit: 'N·m',
      says: 'bending out of the plane about the x axis',
      tex: '(@atY - @centreY) \\cdot @forceZ - @atZ \\cdot @forceY',
      step: true,
    },
    momentY: {
      symbol: 'M_y',
      unit: 'N·m',
      says: 'bending out of the plane about the y axis',
      tex: '@atZ \\cdot @forceX - (@atX - @centreX) \\cdot @forceZ',
      step: true,
    },
    momentZ: {
      symbol: 'M_z',
      unit: 'N·m',
      says: 'twist in the plane',
      tex: '(@atX - @centreX) \\cdot @forceY - (@atY - @centreY) \\cdot @forceX',
      step: true,
    },
    slopeX: { symbol: 'k_x', unit: 'N/mm²', says: 'growth of the force out of the plane, across', step: true },
    slopeY: { symbol: 'k_y', unit: 'N/mm²', says: 'growth of the force out of the plane, up', step: true },
    pointX: { symbol: 'x^*', unit: 'mm', says: 'where the weld is loaded most, across', step: true },
    pointY: { symbol: 'y^*', unit: 'mm', says: 'where the weld is loaded most, up', step: true },
    vx: {
      symbol: 'v_x',
      unit: 'kN/mm',
      says: 'force for each length there, across',
      tex: '\\frac{@forceX}{@length} - \\frac{@momentZ \\cdot (@pointY - @centreY)}{@polar}',
      step: true,
    },
    vy: {
      symbol: 'v_y',
      unit: 'kN/mm',
      says: 'force for each length there, up',
      tex: '\\frac{@forceY}{@length} + \\frac{@momentZ \\cdot (@pointX - @centreX)}{@polar}',
      step: true,
    },
    vz: {
      symbol: 'v_z',
      unit: 'kN/mm',
      says: 'force for each length there, out of the plane',
      tex: '\\frac{@forceZ}{@length} + @slopeX \\cdot (@pointX - @centreX) + @slopeY \\cdot (@pointY - @centreY)',
      step: true,
    },
    greatest: {
      symbol: 'v^*',
      unit: 'kN/mm',
      says: 'greatest force for each length of weld',
      tex: '\\sqrt{@vx^2 + @vy^2 + @vz^2}',
    },
  },
  method:
    'The welds count as lines, the joined parts as rigid. The growth of the force out of the plane solves M_x = k_y I_wx + k_x I_wxy and −M_y = k_y I_wxy + k_x I_wy. The force is greatest at an end of a weld; all ends are worked and the worst is shown.',
  assumptions: [
    'All welds have the same size; their own width is left out of the group’s properties.',
    'The parts do not bear on each other: in bending the welds alone carry compression too.',
    'The parts joined are stiff beside the welds.',
    'Welds within 1 % of one line count as one line; up to 2 % of the bending may then act across it without being counted.',
  ],
  sources: [
    {
      document:
        'Elastic analysis of a weld group as lines: equilibrium with forces that grow with the distance from the centroid',
      basis: 'derived',
    },
    as4100('9.7 (9.8 in the 1998 edition): analysis of a weld group'),
  ],
  validity: [
    {
      says: 'name at least one weld, and give every weld a length',
      holds: (x) => x.segments.length > 0 && x.segments.every((s) => s.x1 !== s.x2 || s.y1 !== s.y2),
    },
    { says: 'state at least one force', holds: (x) => x.forceX !== 0 || x.forceY !== 0 || x.forceZ !== 0 },
  ],
  calculate: (x) => {
    const group = lineGroup(x.segments);
    const load = { Fx: x.forceX, Fy: x.forceY, Fz: x.forceZ, x: x.atX, y: x.atY, z: x.atZ };
    const { Mx, My, Mz } = momentsAbout(group, load);
    const growth = slopes(group, Mx, My);
    if (!growth) throw new OutOfRange('welds that all lie on one line cannot hold bending across that line');
    const { length, cx, cy, Ix, Iy, Ixy } = group;
    const polar = Ix + Iy;
    const worst = x.segments
      .flatMap(
        (s) =>
          [
            [s.x1, s.y1],
            [s.x2, s.y2],
          ] as const,
      )
      .map(([px, py]) => {
        const vx = load.Fx / length - (Mz * (py - cy)) / polar;
        const vy = load.Fy / length + (Mz * (px - cx)) / polar;
        const vz = load.Fz / length + growth.kx * (px - cx) + growth.ky * (py - cy);
        return { pointX: px, pointY: py, vx, vy, vz, greatest: Math.hypot(vx, vy, vz) };
      })
      .reduce((a, b) => (b.greatest > a.greatest * (1 + 1e-12) ? b : a));
    return {
      length,
      centreX: cx,
      centreY: cy,
      Ix,
      Iy,
      Ixy,
      polar,
      momentX: Mx,
      momentY: My,
      momentZ: Mz,
      slopeX: growth.kx,
      slopeY: growth.ky,
      ...worst,
    };
  },
  remark:
    'Compare the greatest force with the design capacity for each length of the same weld. One weld group is only as good as the metal beside it: check that too.',
  examples: [
    {
      given: {
        segments: [
          { x1: '0 mm', y1: '0 mm', x2: '0 mm', y2: '100 mm' },
          { x1: '60 mm', y1: '0 mm', x2: '60 mm', y2: '100 mm' },
        ],
        forceY: '-10 kN',
        atX: '150 mm',
        atY: '50 mm',
      },
      gives: {
        length: '200 mm',
        centreX: '30.0 mm',
        polar: '346.67e3 mm³',
        momentZ: '-1200 N·m',
        vx: '-0.17308 kN/mm',
        vy: '-0.15385 kN/mm',
        greatest: '0.23157 kN/mm',
      },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});
