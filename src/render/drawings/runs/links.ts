import { adjustableLink } from '../link.js';
import { type Drawers, partsOf, si, size } from './values.js';

export const linkDrawers: Drawers = {
  'adjuster-range': (run) => ({
    caption: `Adjustable link${partsOf(run).subject ? ` ${partsOf(run).subject}` : ''} at its shortest, present and longest setting.`,
    draw: (name, title) =>
      adjustableLink({
        name,
        title,
        settings: [
          {
            says: 'Shortest setting',
            length: size(run, 'shortest'),
            a: size(run, 'shortestA'),
            b: size(run, 'shortestB'),
          },
          { says: 'Present setting', length: size(run, 'length'), a: size(run, 'engagedA'), b: size(run, 'engagedB') },
          { says: 'Longest setting', length: size(run, 'longest'), a: size(run, 'longestA'), b: size(run, 'longestB') },
        ],
        home: { a: si(run, 'homeA'), b: si(run, 'homeB') },
        least: { a: size(run, 'leastA'), b: size(run, 'leastB') },
      }),
  }),
};
