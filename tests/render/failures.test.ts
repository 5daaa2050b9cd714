import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import type { Finding } from '../../src/checks/engine/finding.js';
import { textOf } from '../../src/render/markdown.js';
import { failureRegister } from '../../src/render/sections/failures.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';
import { all, subjectOf } from './document.js';

/** The row of the register that begins so, when these findings of the item are all that there is. */
async function row(begins: string, item: string, ...findings: Partial<Finding>[]): Promise<string> {
  const folder = folderWith(workshop);
  const subject = await subjectOf((await load(folder, folder)) as never);
  const base = subject.evaluation.findings.find((f) => f.item === item)!;
  const evaluation = { ...subject.evaluation, findings: findings.map((f): Finding => ({ ...base, ...f })) };
  const rows = all(failureRegister({ ...subject, evaluation }), (e) => e.tagName === 'tr').map((e) => textOf(e));
  return rows.find((text) => text.startsWith(begins))!;
}

const retainer = 'The front end of the shaft drops';

it('shows the most serious finding of an item that guards against a failure', async () => {
  const conforming = { outcome: 'conforms', form: 'limit' } as const;
  expect(
    await row('The joints work at unequal', 'driveline.angle-equal', conforming, {
      ...conforming,
      outcome: 'does-not-conform',
    }),
  ).toMatch(/Difference of the two joint angles ✗ does not conform$/);
  expect(await row('The joints work at unequal', 'driveline.angle-equal', conforming)).toMatch(/✓ conforms$/);
});

it('tells what was answered, since a yes is not always welcome', async () => {
  expect(
    await row(retainer, 'driveline.retainer-drawing', {
      outcome: 'answered',
      form: 'answer',
      says: 'answered `yes`; a hoop',
    }),
  ).toMatch(/Retainer of the shaft ● answered: yes$/);
});

it('leaves out what does not apply, and says so where nothing is left', async () => {
  expect(await row(retainer, 'driveline.retainer-drawing', { outcome: 'not-applicable' })).toMatch(
    /no item that applies to this build$/,
  );
});
