import type { Run } from '../../../calc/run.js';
import { isSeries } from '../../../calc/run.js';
import type { SectionShape } from '../../../calc/sections/section-of.js';
import { sectionPair } from '../section-pair.js';
import { type Drawers, partsOf } from './values.js';

const kinds = [
  'flat',
  'round-bar',
  'rhs',
  'chs',
  'angle',
  'channel',
  'top-hat',
  'u',
  'lipped-u',
  'box',
] as const satisfies readonly SectionShape['kind'][];

/** The section that a sheet of section properties was worked for. */
function shapeOf(run: Run): SectionShape | undefined {
  const kind = kinds.find((k) => run.sheet.id === `section-${k}`);
  if (!kind) return undefined;
  const sizes = Object.entries(run.inputs).flatMap(([name, value]) =>
    value === undefined || name === 'density' || isSeries(value)
      ? []
      : [[name, typeof value === 'string' ? value : value.si]],
  );
  return { kind, ...Object.fromEntries(sizes) } as SectionShape;
}

/** Section sheets of a piece stand beside its comparison: `…/crossmember/was/section-rhs`. */
function sectionAt(run: Run, state: string, runs: readonly Run[]): Run | undefined {
  const { note, subject } = partsOf(run);
  const before = [note, subject, state].filter(Boolean).join('/');
  return runs.find((r) => r.id.startsWith(`${before}/section-`) && shapeOf(r) !== undefined && r.results !== undefined);
}

const name = (run: Run) => run.sheet.title.replace(/^Section properties of an? /, '');

export const sectionDrawers: Drawers = {
  'equivalent-stiffness': (run, runs) => {
    const [was, now, planned] = [
      sectionAt(run, 'was', runs),
      sectionAt(run, 'now', runs),
      sectionAt(run, 'planned', runs),
    ];
    const replacement = now ?? planned;
    const [original, other] = [was && shapeOf(was), replacement && shapeOf(replacement)];
    if (!was || !replacement || !original || !other) return undefined;
    const { subject } = partsOf(run);
    return {
      caption: `Sections of ${subject || 'the member'} as received and ${now ? 'as built' : 'as planned'}.`,
      draw: (id, title) =>
        sectionPair({
          name: id,
          title,
          original: { shape: original, says: `As received: ${name(was)}` },
          replacement: { shape: other, says: `${now ? 'As built' : 'As planned'}: ${name(replacement)}` },
        }),
    };
  },
};
