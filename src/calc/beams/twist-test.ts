import { sheet } from '../sheet.js';
import { straightLine } from './least-squares.js';

const reading = (symbol: string, says: string) => ({ symbol, unit: 'mm', says });

/** Torsional stiffness of a body between two stations from a twist test with several loads. */
export const twistTest = sheet({
  id: 'twist-test',
  subject: 'beams',
  title: 'Torsional stiffness from a twist test',
  purpose:
    'Stiffness of a body in twist between a front and a rear station, from several loads up and down again, with its scatter and what twist remains.',
  inputs: {
    arm: { symbol: 'b', unit: 'mm', says: 'distance between the two forces of the couple' },
    frontWidth: {
      symbol: 'w_f',
      unit: 'mm',
      says: 'distance between the left and the right gauge at the front station',
    },
    rearWidth: { symbol: 'w_r', unit: 'mm', says: 'distance between the left and the right gauge at the rear station' },
    loads: {
      symbol: 'j',
      says: 'the loads in the order in which they were put on, unloading included, with the gauge readings',
      columns: {
        force: { symbol: 'F_j', unit: 'N', says: 'force of the couple on one side' },
        frontLeft: reading('\\delta_{fl,j}', 'front left gauge, up positive'),
        frontRight: reading('\\delta_{fr,j}', 'front right gauge, up positive'),
        rearLeft: reading('\\delta_{rl,j}', 'rear left gauge, up positive'),
        rearRight: reading('\\delta_{rr,j}', 'rear right gauge, up positive'),
      },
    },
  },
  results: {
    torque: {
      symbol: 'T_{max}',
      unit: 'N·m',
      says: 'greatest torque of the test',
      tex: '\\max_j F_j \\cdot @arm',
      step: true,
    },
    twist: {
      symbol: '\\theta_{max}',
      unit: 'deg',
      says: 'greatest twist between the stations',
      tex: '\\max_j \\left|\\arctan\\frac{\\delta_{fl,j} - \\delta_{fr,j}}{w_f} - \\arctan\\frac{\\delta_{rl,j} - \\delta_{rr,j}}{w_r}\\right|',
      step: true,
    },
    stiffness: {
      symbol: 'K',
      unit: 'N·m/deg',
      says: 'torsional stiffness between the stations',
      tex: '\\frac{\\sum (T_j - \\bar{T})^2}{\\left|\\sum (T_j - \\bar{T})(\\theta_j - \\bar{\\theta})\\right|}',
    },
    uncertainty: {
      symbol: 'U_K',
      unit: 'N·m/deg',
      says: 'expanded uncertainty of the stiffness from the scatter of the readings alone (k = 2)',
    },
    scatter: { symbol: 's_\\theta', unit: 'deg', says: 'standard deviation of the twist about the straight line' },
    greatest: { symbol: 'e_\\theta', unit: 'deg', says: 'greatest distance of a reading from the line' },
    set: {
      symbol: '\\theta_0',
      unit: 'deg',
      says: 'twist that remains: last reading less first, at the torque of the first',
    },
  },
  method:
    'The twist at each load is the angle of the front station less that of the rear. A straight line of twist against torque is laid through all readings by least squares (JCGM 100:2008, H.3); the stiffness is the reciprocal of its slope, so that a preload or a zero error of the gauges drops out.',
  assumptions: [
    'The body is held at the rear station and turned at the front by two equal and opposite forces; suspension and fixtures do not lie between the gauges.',
    'Doors, glass, engine and struts are in the state that the note states: it changes the result more than most measuring errors.',
  ],
  sources: [
    {
      document:
        'Thompson, Lampert and Law, SAE 983054, Design of a Twist Fixture to Measure the Torsional Stiffness of a Chassis',
      edition: '1998',
      clause: 'method',
      basis: 'memory',
    },
    { document: 'JCGM 100:2008', clause: 'H.3: straight line by least squares', basis: 'memory' },
  ],
  validity: [
    {
      says: 'arm and gauge widths must be greater than zero',
      holds: (x) => Math.min(x.arm, x.frontWidth, x.rearWidth) > 0,
    },
    {
      says: 'at least three loads are needed, two of them different',
      holds: (x) => x.loads.length >= 3 && new Set(x.loads.map((l) => l.force)).size > 1,
    },
  ],
  calculate: ({ arm, frontWidth, rearWidth, loads }) => {
    const points = loads.map((l) => {
      const front = Math.atan((l.frontLeft - l.frontRight) / frontWidth);
      const rear = Math.atan((l.rearLeft - l.rearRight) / rearWidth);
      return [l.force * arm, front - rear] as const;
    });
    const line = straightLine(points);
    const stiffness = 1 / Math.abs(line.slope);
    const [first, last] = [points[0]!, points.at(-1)!];
    return {
      torque: Math.max(...points.map(([t]) => t)),
      twist: Math.max(...points.map(([, angle]) => Math.abs(angle))),
      stiffness,
      uncertainty: 2 * line.slopeError * stiffness ** 2,
      scatter: line.scatter,
      greatest: line.greatest,
      set: Math.abs(last[1] - first[1] - line.slope * (last[0] - first[0])),
    };
  },
  remark:
    'A twist that remains after unloading says that something slipped or yielded: find it before the figure is used.',
  examples: [
    {
      given: {
        arm: '1.4 m',
        frontWidth: '1.2 m',
        rearWidth: '1.2 m',
        loads: [
          { force: '0 N', frontLeft: '0 mm', frontRight: '0 mm', rearLeft: '0 mm', rearRight: '0 mm' },
          { force: '500 N', frontLeft: '1.8 mm', frontRight: '-1.8 mm', rearLeft: '0 mm', rearRight: '0 mm' },
          { force: '0 N', frontLeft: '0 mm', frontRight: '0 mm', rearLeft: '0 mm', rearRight: '0 mm' },
        ],
      },
      gives: { torque: '700 N·m', twist: '0.171887 deg', stiffness: '4072.4 N·m/deg' },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
  ],
});
