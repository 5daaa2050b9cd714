import { choice } from '../build/fields.js';
import type { Work } from './work.js';

/** Fields whose answer stops a note whatever else it says, and no other note's answer hides it. */

export const workedField = choice({ none: 'not heated, welded or plated', welded: 'cut or welded', heated: 'heated', rechromed: 'plated anew' }, 'what was done to a forged or load-bearing part');

export const stabilityField = choice({ yes: 'fitted, and works as the maker meant it to', no: 'fitted, but does not work', none: 'the car was built without it' }, 'electronic stability control');

interface Stopping {
  worked?: 'none' | 'welded' | 'heated' | 'rechromed' | undefined;
  'stability-control'?: 'yes' | 'no' | 'none' | undefined;
}

/** The answers that follow where nothing stops. */
export function quietAnswers(data: Stopping) {
  const control = data['stability-control'];
  return {
    'links.forged-worked': data.worked === 'none' ? { answer: 'no' } : undefined,
    'brakes.stability-control': control === 'yes' ? { answer: 'yes' } : control === 'none' ? { answer: 'not applicable', because: 'the car was built without it' } : undefined,
  };
}

/** Words for the applicability of items. */
export function stopStates(data: Stopping) {
  const control = data['stability-control'];
  return { worked: data.worked, 'stability-control': control === 'none' ? 'no' : control && 'yes' };
}

export function examineStops(data: Stopping, work: Work): void {
  const stop = (item: string, field: string, says: string, answer: string) =>
    work.state(item, '', 'nonconforming', `${says}: this stops the note until the certifier has decided`, { stop: true, answer, todo: 'stop work on it and put it to the certifier', path: [field] });
  const { worked, 'stability-control': control } = data;
  if (worked !== undefined && worked !== 'none') stop('links.forged-worked', 'worked', `a forged or load-bearing part was ${{ welded: 'cut or welded', heated: 'heated', rechromed: 'plated anew' }[worked]}`, 'yes');
  if (control === 'no') stop('brakes.stability-control', 'stability-control', 'stability control is fitted and does not work', 'no');
}
