import type { Run } from '../../../calc/run.js';
import { type Axis, drivelineDrawing } from '../driveline.js';
import { type Drawers, maybe, partsOf, si, size, sizes } from './values.js';

const axis = (run: Run, says: string, slope: string, plan: string, length?: string): Axis => ({
  says,
  slope: size(run, slope),
  plan: maybe(run, plan),
  length: length === undefined ? undefined : si(run, length),
});
const gearbox = (run: Run) => axis(run, 'gearbox output', 'gearboxSlope', 'gearboxPlan');
const pinion = (run: Run) => axis(run, 'pinion', 'pinionSlope', 'pinionPlan');
const at = (run: Run) => (partsOf(run).subject ? ` (${partsOf(run).subject.replaceAll('-', ' ')})` : '');

export const drivelineDrawers: Drawers = {
  'driveline-single-joint': (run) => ({
    caption: `Joint between gearbox and pinion from the side and from above${at(run)}.`,
    draw: (name, title) =>
      drivelineDrawing({ name, title, axes: [gearbox(run), pinion(run)], joints: sizes(run, 'angle'), phasing: [] }),
  }),
  'driveline-two-joints': (run) => ({
    caption: `One-piece shaft with its joint angles from the side and from above, and its yokes${at(run)}.`,
    draw: (name, title) =>
      drivelineDrawing({
        name,
        title,
        axes: [gearbox(run), axis(run, 'shaft', 'shaftSlope', 'shaftPlan', 'shaftLength'), pinion(run)],
        joints: sizes(run, 'joint1', 'joint2'),
        phasing: [{ says: 'shaft', twist: size(run, 'shaftTwist') }],
        equivalent: size(run, 'equivalent'),
      }),
  }),
  'driveline-three-joints': (run) => ({
    caption: `Two-piece shaft with its joint angles from the side and from above, and its yokes${at(run)}.`,
    draw: (name, title) =>
      drivelineDrawing({
        name,
        title,
        axes: [
          gearbox(run),
          axis(run, 'front shaft', 'frontSlope', 'frontPlan', 'frontLength'),
          axis(run, 'rear shaft', 'rearSlope', 'rearPlan', 'rearLength'),
          pinion(run),
        ],
        joints: sizes(run, 'joint1', 'joint2', 'joint3'),
        phasing: [
          { says: 'front shaft', twist: size(run, 'frontTwist') },
          { says: 'rear shaft', twist: size(run, 'rearTwist') },
        ],
        equivalent: size(run, 'equivalent'),
      }),
  }),
};
