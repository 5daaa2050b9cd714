import { choice, yesNo } from '../../../project/fields.js';
import type { Derived } from '../../engine/told.js';
import type { Work } from '../../engine/work.js';

/** Fields with an answer that stops a note whatever else it says; no answer, of this or another note, hides it. */
export const workedField = choice(
  { none: 'not heated, welded or plated', welded: 'cut or welded', heated: 'heated', rechromed: 'plated anew' },
  'what was done to a forged or load-bearing part',
);
export const stabilityField = choice(
  {
    yes: 'fitted, and works as the maker meant it to',
    no: 'fitted, but does not work',
    none: 'the car was built without it',
  },
  'electronic stability control',
);
export const singleShearField = yesNo('is any rod end bolted from one side only');
export const airbagField = choice(
  {
    kept: 'kept as the maker fitted it',
    removed: 'taken out, moved or disabled',
    none: 'the car was built without one',
  },
  'airbag in the steering wheel',
);

interface Stopping {
  worked?: 'none' | 'welded' | 'heated' | 'rechromed' | undefined;
  'stability-control'?: 'yes' | 'no' | 'none' | undefined;
  'single-shear'?: 'yes' | 'no' | undefined;
  airbag?: 'kept' | 'removed' | 'none' | undefined;
}

/** The answers that follow where nothing stops. */
export function quietAnswers(data: Stopping): Readonly<Record<string, Derived | undefined>> {
  return {
    'links.forged-worked': data.worked === 'none' ? { answer: 'no', from: ['worked'] } : undefined,
    'links.rod-end-shear': data['single-shear'] === 'no' ? { answer: 'yes', from: ['single-shear'] } : undefined,
    'brakes.stability-control': {
      yes: { answer: 'yes', from: ['stability-control'] },
      no: undefined,
      none: { answer: 'not applicable', because: 'the car was built without it', from: ['stability-control'] },
    }[data['stability-control'] ?? 'no'],
  };
}

/** Words for the applicability of items. */
export function stopStates(data: Stopping) {
  const control = data['stability-control'];
  return { worked: data.worked, 'stability-control': control === 'none' ? 'no' : control && 'yes' };
}

export function examineStops(data: Stopping, work: Work): void {
  const stop = (item: string, field: keyof Stopping, answer: string, says: string) =>
    work.state(item, '', 'against', `${says}: this stops the note until the certifier has decided`, {
      stop: true,
      answer,
      todo: 'stop work on it and put it to the certifier',
      path: [field],
    });
  const { worked } = data;
  if (worked !== undefined && worked !== 'none')
    stop(
      'links.forged-worked',
      'worked',
      'yes',
      `a forged or load-bearing part was ${{ welded: 'cut or welded', heated: 'heated', rechromed: 'plated anew' }[worked]}`,
    );
  if (data['stability-control'] === 'no')
    stop('brakes.stability-control', 'stability-control', 'no', 'stability control is fitted and does not work');
  if (data['single-shear'] === 'yes')
    stop('links.rod-end-shear', 'single-shear', 'no', 'a rod end is bolted from one side only');
  if (data.airbag === 'removed')
    stop('seating.airbags-kept', 'airbag', 'no', 'the airbag of the steering wheel was taken out, moved or disabled');
}
