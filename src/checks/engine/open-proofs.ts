import type { Stage } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import type { Item } from '../codes/item.js';
import type { Finding } from './finding.js';
import { resultOf } from './finding.js';
import { isInStage } from './hold-points.js';
import type { HoldPoint, Kind } from './kind.js';
import { missingOf } from './proofs.js';

/** What a photo of a note could still prove: hold points of its stage first, then items; one entry a part. */
export function openProofs(
  note: Note,
  stage: Stage | undefined,
  kind: Kind,
  items: ReadonlyMap<string, Item>,
  findings: readonly Finding[],
): { name: string; shows: string }[] {
  const own = findings.filter((f) => f.note === note.name && f.of === 'proof' && isWaiting(f));
  const named = (f: Finding, id: string) =>
    missingOf(f.proof ?? [{ part: '', by: [] }]).map((part) => ({
      name: part === '' ? id : `${id} ${part}`,
      shows: f.title,
    }));
  const ofStage = (point: Pick<HoldPoint, 'during'>) => (point.during === stage ? 0 : 1);
  const points = [...kind.holdPoints]
    .sort((a, b) => ofStage(a) - ofStage(b))
    .flatMap((point) =>
      stage !== undefined && isInStage(point, stage)
        ? own.filter((f) => f.point === point.id).flatMap((f) => named(f, point.id))
        : [],
    );
  const others = own.flatMap((f) => {
    const item = items.get(f.item);
    return f.point === undefined && item?.kind === 'evidence' && item.evidence.includes('photo')
      ? named(f, f.item)
      : [];
  });
  return [...points, ...others];
}

const isWaiting = ({ outcome }: Finding): boolean => resultOf(outcome) === 'missing' || resultOf(outcome) === 'partly';
