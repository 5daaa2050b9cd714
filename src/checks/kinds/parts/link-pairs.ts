import { lengthDifference } from '../../../calc/uncertainty/difference.js';
import { spread } from '../../../calc/value.js';
import { showQuantity } from '../../../units/show.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';

interface Named {
  id: string;
  place?: string | undefined;
}

const sides = { left: ['left', 'lh', 'l'], right: ['right', 'rh', 'r'] } as const;

/** Links of both sides that are named alike but for the side, in their ids or else in their places. */
export function pairsOf<L extends Named>(links: readonly L[] = []): [left: L, right: L][] {
  const rights = links.map((link) => ({ link, name: nameWithout('right', link) }));
  return links.flatMap((left) => {
    const name = nameWithout('left', left);
    const right = name === undefined ? undefined : rights.find((r) => r.name === name)?.link;
    return right ? [[left, right] as [L, L]] : [];
  });
}

function nameWithout(side: keyof typeof sides, { id, place }: Named): string | undefined {
  const known: readonly string[] = sides[side];
  const rests = [id, place ?? ''].map((text, i) => {
    const words = text.toLowerCase().split(/[^a-z0-9]+/u);
    const rest = words.filter((word) => !known.includes(word));
    return rest.length < words.length ? `${i}: ${rest.join(' ')}` : undefined;
  });
  return rests.find((rest) => rest !== undefined);
}

/**
 * Holds a length of one side against that of the other: what is further apart is to be justified.
 *
 * @param of which length it is, as part of the subject
 */
export function comparePair(
  [left, right]: readonly [Named, Named],
  of: string,
  values: [Maybe, Maybe],
  work: Work,
): void {
  const subject = `${left.id}-${right.id}-${of}`;
  const change = work.sheet(lengthDifference, subject, { before: values[0], after: values[1] }).get('change');
  if (isMissing(change)) return work.compare('links.pair', subject, change);
  const shown = values.map((v) => (isMissing(v) ? '' : showQuantity(v.si, 'mm', spread(v))));
  work.compare('links.pair', subject, change, { marks: [`${left.id} ${shown[0]}, ${right.id} ${shown[1]}`] });
}
