import { z } from 'zod';
import type { Answer } from '../../../project/common.js';
import { onDay, quantity, text, yesNo } from '../../../project/fields.js';

/** A system that was put under pressure and watched. */
export const pressureTestField = (system: string, how: string, typical: string, usual: readonly [number, number]) =>
  z
    .strictObject({
      pressure: quantity('kPa', `pressure at which the ${system} was tested`, { how, typical, usual }),
      held: quantity('min', 'time for which it was held and watched', {
        how: 'watch',
        typical: '10 min',
        usual: [1.1, 95],
      }),
      after: quantity('kPa', 'pressure at the end of that time', {
        how: 'the same gauge, pump shut off',
        typical,
        usual,
      }),
      dry: yesNo('was every joint dry, felt and looked at with a lamp'),
      with: text('gauge', 'test gauge 0 to 600 kPa'),
      on: onDay('day of the test'),
    })
    .optional()
    .meta({ form: 'block', says: `pressure test of the ${system}` });
type PressureTest = z.output<ReturnType<typeof pressureTestField>>;

/** Whether the system was tight, at which pressure and for how long; without these a dry joint says nothing. */
export function pressureTestAnswers(test: PressureTest, item: string): Readonly<Record<string, Answer | undefined>> {
  const { pressure, held, after, dry } = test ?? {};
  const words = [
    pressure && held && `${pressure.quantity.text} for ${held.quantity.text}`,
    after && `${after.quantity.text} at the end`,
  ]
    .filter(Boolean)
    .join(', ');
  return {
    [item]: dry === 'no' || (dry && pressure && held) ? { answer: dry, because: words || undefined } : undefined,
  };
}
