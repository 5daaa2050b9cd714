/**
 * Fields and words that an earlier format had, with what stands for them now. Builds that use them are still read, `check`
 * names each, and `gusset note --update` rewrites them.
 *
 * A name that was given up never comes back with another meaning: what changes its meaning gets a new name.
 */
export interface Obsolete {
  /** The format from which on it is obsolete. */
  since: number;
  /** Where: a kind of note, or `note` for every kind, `build`, `query` or `limits`. */
  of: string;
  /**
   * Keys from the top as the format before had them: `[]` stands for each item of a list, `*` for any key, as in
   * `['pieces', '[]', 'now', 'wall']`.
   */
  path: readonly string[];
  now: Replacement;
}

/**
 * `key`: the same value under another key of the same block. `words`: other words for values, by the old one. `gone`: no
 * longer read, and why; what was typed stays as a comment. `ask`: why only a person can tell what to write instead.
 */
type Replacement = { key: string } | { words: Readonly<Record<string, string>> } | { gone: string } | { ask: string };

/** Items of the codes that are asked no longer, each with the one that asks for the same. */
const mergedItems: readonly (readonly [item: string, now: string])[] = [
  ['engine.fasteners', 'fasteners.appendix'],
  ['gearbox.fasteners', 'fasteners.appendix'],
  ['fasteners.grade', 'fasteners.torque-record'],
  ['fasteners.threads-showing', 'fasteners.torque-record'],
  ['fuel.pressure-test', 'fuel.tight'],
  ['cooling.pressure-test', 'cooling.tight'],
  ['steering.parts-assessed', 'steering.assessment'],
  ['suspension.ground-clearance', 'ground.clearance-axle'],
  ['clearance.sweep-record', 'clearance.members'],
  ['alignment.bump-steer-record', 'alignment.bump-steer'],
  ['driveline.retainer', 'driveline.retainer-drawing'],
  ['gearbox.ratios', 'gearbox.identity'],
  ['seating.belt-thread', 'seating.belt-geometry'],
];

const ownId = 'the `id` of the item names the place';
const inWords = 'nothing was decided by it; what is worth telling stands in the words of the note';
const reckonedAtBench = 'nothing was decided by it; `gusset calc link-length-change` reckons it at the bench';
const ruleInTest = 'the note of the speedometer test states it';

/** Fields of a kind on which no outcome rested, each with what to do instead. */
const fieldsGone: readonly (readonly [kind: string, path: readonly string[], instead: string])[] = [
  ...['was', 'planned', 'now'].map((state) => ['alignment', ['wheels', '[]', state, 'inclination'], inWords] as const),
  ['alignment', ['maker', 'rear', 'caster'], inWords],
  ['clearance', ['ground', '[]', 'was'], 'the note on the suspension holds what the car had'],
  ['electrical', ['battery', 'was'], inWords],
  ['electrical', ['battery', 'mass'], 'nothing was decided by it; the note on mass weighs the car'],
  ['electrical', ['battery', 'capacity'], inWords],
  ['engine', ['original-mass'], 'nothing was decided by it; the note on mass weighs the axles'],
  ['rear-axle', ['per-turn'], reckonedAtBench],
  ['rear-axle', ['lower-change'], reckonedAtBench],
  ['rear-axle', ['upper-change'], reckonedAtBench],
  ['rear-axle', ['welds', '[]', 'place'], ownId],
  ['rear-axle', ['speedometer-rule'], ruleInTest],
  ['seating', ['seats', '[]', 'place'], ownId],
  ['seating', ['seats', '[]', 'mass'], inWords],
  ['seating', ['seats', '[]', 'plate', 'corner'], inWords],
  ['seating', ['seats', '[]', 'head-room-was'], inWords],
  ['seating', ['seats', '[]', 'head-room-now'], inWords],
  ['seating', ['belts', '[]', 'place'], ownId],
  ['seating', ['belts', '[]', 'thread'], inWords],
  ['seating', ['child-points', '[]', 'place'], ownId],
  ['seating', ['child-points', '[]', 'thread'], inWords],
  ['steering', ['joints', '[]', 'place'], ownId],
  ['steering', ['ends', '[]', 'place'], ownId],
  ['steering', ['original-turns'], inWords],
  ['steering', ['turns'], inWords],
  ['steering', ['turns-left'], inWords],
  ['steering', ['turns-right'], inWords],
  ['steering', ['original-wheel-diameter'], inWords],
  ['steering', ['original-rim-play'], inWords],
  ...['was', 'planned', 'now'].flatMap((state) =>
    ['front', 'rear'].map((axle) => ['wheels-tyres', [axle, state, 'pressure'], inWords] as const),
  ),
  ['wheels-tyres', ['driven'], inWords],
  ['test', ['noise', 'outlets', '[]', 'place'], ownId],
  ['test', ['noise', 'outlets', '[]', 'readings-was'], inWords],
  ['test', ['lane-change', 'car-width'], inWords],
  ['test', ['emissions', 'idle-speed'], inWords],
  ['test', ['road', 'distance'], inWords],
  ['test', ['road', 'coolant-temperature'], 'the note on cooling takes the temperature'],
  ['wheels-tyres', ['stud-thread'], inWords],
  ['wheels-tyres', ['speedometer-rule'], ruleInTest],
];

/** Items that compare a number: an answer in words to them was never read. */
const neverRead = ['axle.backlash', 'axle.preload', 'vehicle.gvm'] as const;

export const obsolete: readonly Obsolete[] = [
  ...neverRead.map(
    (item): Obsolete => ({
      since: 2,
      of: 'note',
      path: ['answers', item],
      now: { gone: 'the item compares a number, and an answer in words was never read' },
    }),
  ),
  ...mergedItems.map(
    ([item, now]): Obsolete => ({
      since: 2,
      of: 'note',
      path: ['answers', item],
      now: { gone: `asked together with \`${now}\`` },
    }),
  ),
  ...fieldsGone.map(([of, path, instead]): Obsolete => ({ since: 2, of, path, now: { gone: instead } })),
  ...(['photos', 'papers'] as const).map(
    (list): Obsolete => ({ since: 2, of: 'note', path: [list, '[]', 'serves'], now: { key: 'proves' } }),
  ),
];
