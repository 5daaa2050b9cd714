import type { Segment } from '../../../calc/welds/line-group.js';
import { weldGroupDrawing } from '../weld-group.js';
import type { Size } from '../words.js';
import { type Drawers, rows, si, size } from './values.js';

export const weldDrawers: Drawers = {
  'weld-group': (run) => ({
    caption: 'The welds as lines, the force on them and the point that is loaded most.',
    draw: (name, title) => {
      const pull = Math.hypot(si(run, 'forceX'), si(run, 'forceY'));
      const lever: Size | undefined =
        pull === 0 ? undefined : { symbol: '|M_{z}|/F', si: Math.abs(si(run, 'momentZ')) / pull, unit: 'mm' };
      return weldGroupDrawing({
        name,
        title,
        welds: rows(run, 'segments') as unknown as Segment[],
        centroid: { x: size(run, 'centreX'), y: size(run, 'centreY') },
        at: { x: size(run, 'atX'), y: size(run, 'atY') },
        force: { x: size(run, 'forceX'), y: size(run, 'forceY'), z: size(run, 'forceZ') },
        lever,
        worst: { x: si(run, 'pointX'), y: si(run, 'pointY'), load: size(run, 'greatest') },
      });
    },
  }),
};
