import type { z } from 'zod';
import { topDeadCentre } from '../../../calc/engine/timing.js';
import { expanded } from '../../../calc/value.js';
import { choice, list, onDay, quantity } from '../../../project/fields.js';
import { showQuantity } from '../../../units/show.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { makerFigures, makerLimit } from '../parts/maker-window.js';
import { magnitude } from '../parts/maybe.js';

const stop =
  'positive stop in the plug hole of cylinder 1, engine turned by hand against it; scale read at the pointer, written without a sign';

export const timing = {
  'timing-checks': list(
    {
      on: onDay('day of the check'),
      before: quantity('deg', 'reading before the zero of the scale (BTDC) at which the piston touched the stop', {
        how: `${stop}; turned one way`,
        typical: '26.0 deg',
        usual: [3, 90],
      }),
      after: quantity(
        'deg',
        'reading after the zero of the scale (ATDC) at which it touched the stop from the other side',
        { how: `${stop}; turned the other way`, typical: '25.5 deg', usual: [3, 90] },
      ),
    },
    'checks of the timing mark against the positive stop, each one that was made',
  ),
  'timing-moved': list(
    {
      what: choice(
        {
          pointer: 'the pointer',
          cover: 'the cover or bracket that carries the pointer',
          damper: 'the damper or pulley with its scale',
          crankshaft: 'crankshaft, or the key of the damper',
        },
        'what was moved or exchanged',
      ),
      on: onDay('day on which it was moved for the last time'),
    },
    'the pointer, and what it or the scale sits on, where it was moved or exchanged',
  ),
  'timing-maker': makerFigures('deg', 'departure of the mark from true top dead centre', [0, 15], 'signed'),
};
type Timing = z.output<z.ZodObject<typeof timing>>;

/** The latest check counts, and it must be younger than the last move of anything that the mark hangs on. */
export function examineTiming(data: Timing, work: Work): void {
  const checks = data['timing-checks'] ?? [];
  const place = checks.map(({ id, before, after }) =>
    work
      .sheet(topDeadCentre, id, {
        before: work.take(before, 'timing-checks', id, 'before'),
        after: work.take(after, 'timing-checks', id, 'after'),
      })
      .get('offset'),
  );
  const at = checks.findIndex((c) => checks.every((other) => (other.on ?? '') <= (c.on ?? '')));
  const last = checks[at];
  const offset = place[at] ?? work.lacks('timing-checks');
  work.compare('assembly.timing-zero', last?.id ?? '', magnitude(offset), {
    limit: makerLimit(data['timing-maker'], 'deg'),
  });
  if (!last || isMissing(offset)) return;

  const moves = (data['timing-moved'] ?? []).toSorted((a, b) => (a.on ?? '').localeCompare(b.on ?? ''));
  const move = moves.find((m) => m.on === undefined) ?? moves.at(-1);
  const path = ['timing-checks', last.id, 'on'];
  const state = (result: 'met' | 'against' | 'unclear', says: string, todo?: string) =>
    work.state('assembly.timing-mark', last.id, result, `${says}; ${inWords(offset)}`, {
      path,
      todo,
      ...(result === 'met' ? { answer: 'yes' } : {}),
    });
  const again = 'check it again with the positive stop and add the readings';
  if (!move)
    return state(
      'met',
      `checked${last.on ? ` on ${last.on}` : ''}, and nothing that the mark hangs on is said to have moved`,
    );
  const moved = `${move.what ?? move.id} moved${move.on ? ` on ${move.on}` : ''}`;
  if (last.on === undefined || move.on === undefined)
    return state(
      'unclear',
      `${moved}, checked${last.on ? ` on ${last.on}` : ''}: which came last is not stated`,
      'state the day of both',
    );
  if (last.on < move.on) return state('against', `last checked on ${last.on}, and ${moved} since`, again);
  if (last.on > move.on) return state('met', `${moved}, checked again on ${last.on}`);
  if (work.isAnswered('assembly.timing-mark')) return;
  state(
    'unclear',
    `${moved} and checked on the same day: which came last is not stated`,
    `${again}, or say under \`answers:\` at assembly.timing-mark which of the two came last`,
  );
}

/** Which side true top dead centre lies on, in words, because nobody agrees which sign is which. */
function inWords(offset: Exclude<Maybe, { missing: unknown }>): string {
  const shown = showQuantity(Math.abs(offset.si), 'deg', expanded(offset));
  if (offset.si === 0) return `true top dead centre reads ${shown}, at the zero of the scale`;
  return offset.si > 0
    ? `true top dead centre reads ${shown} before the zero of the scale (BTDC side)`
    : `true top dead centre reads ${shown} after the zero of the scale (ATDC side)`;
}
