import type { z } from 'zod';
import { beamingTest } from '../../../calc/beams/beaming-test.js';
import { twistTest } from '../../../calc/beams/twist-test.js';
import { spread, type Value } from '../../../calc/value.js';
import { showNumber, showQuantity } from '../../../units/show.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { shape } from '../test-fields.js';

type Twist = NonNullable<z.output<typeof shape.twist>>;
type Bending = NonNullable<z.output<typeof shape.bending>>;
type State = 'was' | 'now';

/** Stiffness before and after, measured in the same way: recorded and compared with each other, held against no figure. */
export function examineStiffness(twist: Twist | undefined, bending: Bending | undefined, work: Work): void {
  const twisted = both((state) => inTwist(twist, state, work));
  const bent = bending && both((state) => inBending(bending, state, work));
  const alike = twist?.body ? [] : [work.lacks('twist', 'body')];
  const lacking = [twisted.was, twisted.now, ...(bent ? [bent.was, bent.now] : []), ...alike].filter(isMissing);
  if (lacking.length > 0) {
    const todo = [...new Set(lacking.flatMap((m) => m.missing.map((x) => x.where)))];
    const why = lacking.find((m) => m.reason)?.reason;
    return work.state(
      'tests.twist',
      '',
      'missing',
      why ? `no number: ${why}` : 'not measured both before and after, in one stated state of the body',
      {
        todo: todo.length > 0 ? `fill in ${todo.join('; ')}` : 'measure again',
        path: ['twist'],
      },
    );
  }
  const says = [
    `in twist ${change(twisted as Both, 'N*m/deg')}`,
    ...(bent ? [`in bending ${change(bent as Both, 'N/mm')}`] : []),
  ].join('; ');
  work.state('tests.twist', '', 'met', `${says}; recorded and compared with the unmodified car, not judged`, {
    measured: (twisted as Both).now,
    run: runOf((twisted as Both).now),
    answer: says,
    path: ['twist'],
  });
}

type Both = Record<State, Value>;
const both = (of: (state: State) => Maybe): Record<State, Maybe> => ({ was: of('was'), now: of('now') });
const runOf = (value: Value) => (value.origin.kind === 'sheet' ? value.origin.run : undefined);

function change({ was, now }: Both, unit: string): string {
  const percent = showNumber((now.si / was.si - 1) * 100, { digits: 2 });
  return `${showQuantity(was.si, unit, spread(was))} before, ${showQuantity(now.si, unit, spread(now))} after (${percent.startsWith('−') ? '' : '+'}${percent} %)`;
}

function inTwist(test: Twist | undefined, state: State, work: Work): Maybe {
  const loads = test?.[state] ?? [];
  if (loads.length === 0) return work.lacks('twist', state);
  return work
    .sheet(twistTest, state, {
      arm: work.take(test?.arm, 'twist', 'arm'),
      frontWidth: work.take(test?.['front-width'], 'twist', 'front-width'),
      rearWidth: work.take(test?.['rear-width'], 'twist', 'rear-width'),
      loads: loads.map((l) => {
        const at = (name: 'force' | 'front-left' | 'front-right' | 'rear-left' | 'rear-right') =>
          work.take(l[name], 'twist', state, l.id, name);
        return {
          force: at('force'),
          frontLeft: at('front-left'),
          frontRight: at('front-right'),
          rearLeft: at('rear-left'),
          rearRight: at('rear-right'),
        };
      }),
    })
    .get('stiffness');
}

function inBending(test: Bending, state: State, work: Work): Maybe {
  const loads = test[state] ?? [];
  if (loads.length === 0) return work.lacks('bending', state);
  return work
    .sheet(beamingTest, `bending-${state}`, {
      loads: loads.map((l) => {
        const at = (name: 'force' | 'middle' | 'front' | 'rear') => work.take(l[name], 'bending', state, l.id, name);
        return { force: at('force'), middle: at('middle'), front: at('front'), rear: at('rear') };
      }),
    })
    .get('stiffness');
}
