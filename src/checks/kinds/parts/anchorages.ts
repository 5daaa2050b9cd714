import { lengthDifference } from '../../../calc/uncertainty/difference.js';
import { expanded } from '../../../calc/value.js';
import type { Answer } from '../../../project/common.js';
import { choice, list, type Measured, quantity, text } from '../../../project/fields.js';
import { showQuantity } from '../../../units/show.js';
import { alike } from '../../engine/alike.js';
import { isMissing, type Work } from '../../engine/work.js';

/** Belt anchorages stay where the maker put them: one that moved stops a note, by word or by measurement. */

const how = 'tape from the middle of the anchorage bolt to the same fixed point, the same person, three times';
const says = {
  kept: 'where the maker put it, nothing cut, heated or welded around it',
  moved: 'moved',
  altered: 'where it was, but the metal around it was cut, heated or welded',
  added: 'added where the maker put none',
} as const;

export const anchorageList = list(
  {
    place: text('which anchorage', 'front left, upper').meta({
      recordedFor: 'whoever looks for the anchorage on the car',
    }),
    state: choice(says, 'what became of it'),
    point: text('fixed point that it is measured from', 'striker of the left front door'),
    was: quantity('mm', 'distance to that point before anything was taken apart', {
      how,
      typical: '412 mm',
      usual: [42, 4000],
    }),
    now: quantity('mm', 'distance to the same point now', { how, typical: '412 mm', usual: [42, 4000] }),
  },
  'belt anchorages, each an item of its own',
);

interface Anchorage {
  id: string;
  place?: string | undefined;
  state?: keyof typeof says | undefined;
  point?: string | undefined;
  was?: Measured | undefined;
  now?: Measured | undefined;
}

const item = 'seating.anchorages-kept';
/** Common practice, no source: twice what a tape is uncertain by. */
const tolerance = 0.004;

/** The answer that follows where every anchorage is said to be kept. */
export function anchoragesAnswer(anchorages: readonly Anchorage[] | undefined): Answer | undefined {
  return anchorages?.length && anchorages.every((a) => a.state === 'kept')
    ? { answer: 'yes', because: anchorages.map(nameOf).join(', ') }
    : undefined;
}

export function examineAnchorages(anchorages: readonly Anchorage[] | undefined, work: Work): void {
  for (const anchorage of anchorages ?? []) {
    const change = changeOf(anchorage, work);
    const kept = change === undefined ? 'met' : alike(change, tolerance);
    const apart = change && showQuantity(Math.abs(change.si), 'mm', expanded(change));
    const measured = kept === 'against' ? `it lies ${apart} from where it was` : undefined;
    const word =
      anchorage.state === undefined || anchorage.state === 'kept' ? undefined : `it is ${says[anchorage.state]}`;
    const why = [word, measured].filter(Boolean).join('; ');
    const doubt =
      kept === 'unclear'
        ? {
            says: `measured ${apart} from where it was, which does not show that it lies within ${showQuantity(tolerance, 'mm')} of it`,
            todo: 'measure it again from the same point with a smaller uncertainty, or put it to the certifier',
          }
        : {
            says: `measured ${apart} from where it was, but not from which fixed point`,
            todo: 'state `point:`, the fixed point that both distances were measured from',
          };
    if (why === '' && change && (kept === 'unclear' || !anchorage.point))
      work.state(item, anchorage.id, 'unclear', `belt anchorage ${nameOf(anchorage)}: ${doubt.says}`, {
        measured: change,
        todo: doubt.todo,
        path: ['anchorages', anchorage.id, kept === 'unclear' ? 'now' : 'point'],
      });
    if (why === '') continue;
    work.state(
      item,
      anchorage.id,
      'against',
      `belt anchorage ${nameOf(anchorage)}: ${why}; this stops the note until the certifier has decided`,
      {
        stop: true,
        answer: 'no',
        measured: change,
        todo: 'stop work on it and put it to the certifier: another place is designed, reinforced and certified before it is used',
        path: ['anchorages', anchorage.id, anchorage.state === 'kept' ? 'now' : 'state'],
      },
    );
  }
}

function changeOf(anchorage: Anchorage, work: Work) {
  if (!anchorage.was || !anchorage.now) return undefined;
  const at = (when: 'was' | 'now') => work.take(anchorage[when], 'anchorages', anchorage.id, when);
  const change = work
    .sheet(lengthDifference, `anchorage-${anchorage.id}`, { before: at('was'), after: at('now') })
    .get('change');
  return isMissing(change) ? undefined : change;
}

const nameOf = (a: Anchorage) => a.place ?? a.id;
