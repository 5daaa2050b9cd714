import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Run } from '../../calc/run.js';
import { anchor, capitalised, label } from '../anchors.js';
import { axleDrawers } from './runs/axle.js';
import { brakeDrawers } from './runs/brakes.js';
import { drivelineDrawers } from './runs/driveline.js';
import { linkDrawers } from './runs/links.js';
import { massDrawers } from './runs/mass.js';
import { sectionDrawers } from './runs/sections.js';
import { testDrawers } from './runs/tests.js';
import type { Drawers, Drawn } from './runs/values.js';
import { weldDrawers } from './runs/welds.js';

const drawers: Drawers = {
  ...axleDrawers,
  ...brakeDrawers,
  ...drivelineDrawers,
  ...linkDrawers,
  ...massDrawers,
  ...sectionDrawers,
  ...testDrawers,
  ...weldDrawers,
};

/** Ids of the sheets that have a drawing. */
export const drawnSheets: readonly string[] = Object.keys(drawers);

/**
 * The drawings of one run of a sheet; none where its sheet has none, or where the inputs gave no number.
 *
 * @param runs all runs of the document: some drawings show two of them together, beside the first
 */
export function drawingsForRun(run: Run, runs: readonly Run[] = [run]): Element[] {
  if (!run.results) return [];
  const drawn = drawers[run.sheet.id]?.(run, runs);
  return drawn ? [figure(run.id, drawn)] : [];
}

/** A drawing with its caption; named after what it shows, so that its name stays when others are added. */
export function figure(name: string, { caption, draw }: Drawn): Element {
  const id = anchor.figure(name);
  return h('figure.drawing', { id }, [
    draw(id, caption),
    h('figcaption', [h('b', `${capitalised(label.figure(name))}: `), caption]),
  ]);
}
