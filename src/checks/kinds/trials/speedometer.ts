import type { z } from 'zod';
import { speedometerError } from '../../../calc/gearing/speedometer.js';
import { isMissing, type Work } from '../../engine/work.js';
import type { shape } from '../test-fields.js';

/** Dates at which ADR 18/03 began to hold: for new models, and for all. */
const newModels = '2006-07';
const all = '2007-07';

/** Which rule holds by the date of build; between the two dates by the rule of the model. */
function ruleOf(built: string, stated: string | undefined): 'from-2006' | 'before-2006' | undefined {
  const month = built.slice(0, 7);
  if (month >= all) return 'from-2006';
  if (month < newModels) return 'before-2006';
  return stated === undefined ? undefined : stated === 'ADR 18/03' ? 'from-2006' : 'before-2006';
}

/** What the speedometer shows against the true speed, at each speed as built; those as received are shown. */
export function examineSpeedometer(
  speeds: z.output<typeof shape.speeds>,
  stated: string | undefined,
  work: Work,
): void {
  const rule = ruleOf(work.build.data.vehicle.built, stated);
  const now = (speeds ?? []).filter((s) => s.state !== 'was');
  if (now.length === 0) work.compare('speedometer.accuracy', '', work.lacks('speeds'));
  for (const one of speeds ?? []) {
    const indicated = work.take(one.indicated, 'speeds', one.id, 'indicated');
    const trueSpeed = work.take(one['true-speed'], 'speeds', one.id, 'true-speed');
    if (rule) work.sheet(speedometerError, one.id, { indicated, trueSpeed, rule });
    if (one.state === 'was') continue;
    work.publish('true_speed', trueSpeed);
    work.compare('speedometer.accuracy', one.id, isMissing(trueSpeed) ? trueSpeed : indicated);
    if (work.cameOut('speedometer.accuracy', one.id) === 'against')
      work.derive('speedometer.kept', {
        answer: 'no',
        because: `the speedometer test at ${one.id} lies beyond its tolerance`,
        from: ['speeds', one.id, 'indicated'],
      });
  }
}
