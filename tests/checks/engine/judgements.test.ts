import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import { buildFile, folderWith, pictureHead } from '../../project/scratch.js';

/** A judgement is a record of its own: it stands beside the outcome, changes none, and lapses when what was judged changes. */

const build = buildFile.replace(
  /---\n$/,
  'people:\n  - { id: JO, name: J. Okoro, role: builder }\ncertifier: { name: R. Ansell }\n---\n',
);

function folder(wall: string, judgement: string): string {
  return folderWith({
    'build.md': build,
    'photos/weld.jpg': pictureHead,
    'papers/visit-letter.pdf': 'content',
    'notes/020-crossmember.md': `---
kind: body-structure
title: Crossmember
stages: { welded: 2026-03-14, painted: 2026-03-20 }
pieces:
  - id: cross
    role: replacement
    now: { section: RHS 50x30x2.5 (EN 10219), steel: S355, wall: ${wall} }
    joined-to: 1.5 mm
photos:
  - { file: weld.jpg, shows: left weld bare, stage: welded, taken-on: 2026-03-14, proves: [welds-bare] }
papers:
  - { file: visit-letter.pdf, shows: letter of the visit }
answers:
  body.joint-form: fillets all round
judgements:
  - { id: one, words: it will do here, basis: seen, on: 2026-03-15, ${judgement} }
---

Words.
`,
  });
}
const ratio = 'about: body.thickness-ratio cross';
async function examined(wall: string, judgement: string) {
  const at = folder(wall, judgement);
  const loaded = await load(at, at);
  if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
  return loaded.evaluation.findings;
}
async function refused(judgement: string) {
  const at = folder('3.0 mm', judgement);
  return (await load(at, at)).problems;
}
const find = (findings: Awaited<ReturnType<typeof examined>>, item: string) => findings.find((f) => f.item === item)!;

describe('a judgement', () => {
  it.each(['3.0 mm', '6.0 mm', '1.0 mm'])('on a wall of %s changes no outcome', async (wall) => {
    const outcomes = (findings: Awaited<ReturnType<typeof examined>>) =>
      findings.map(({ id, outcome, says, waits, concession }) => ({ id, outcome, says, waits, concession }));
    const onRatio = await examined(wall, `${ratio}, of: '2.0', by: R. Ansell`);
    const onAnswer = await examined(wall, 'about: body.joint-form, of: butt welds, by: JO');
    expect(find(onRatio, 'body.thickness-ratio').judgements).toHaveLength(1);
    expect(outcomes(onRatio)).toEqual(outcomes(onAnswer));
  });

  it.each([
    ['3.0 mm', '2.0', undefined],
    ['3.0 mm', '2', undefined],
    ['3.07 mm', '2.0', undefined],
    ['3.08 mm', '2.0', 'was given of 2.0, now 2.053'],
    ['6.0 mm', '2.0', 'was given of 2.0, now 4'],
  ])('with a wall of %s, given of a ratio of %s: %s', async (wall, of, lapsed) => {
    const finding = find(await examined(wall, `${ratio}, of: '${of}', by: R. Ansell`), 'body.thickness-ratio');
    expect(finding.judgements![0]).toMatchObject({
      by: 'R. Ansell',
      role: 'certifying engineer',
      basis: 'seen',
      lapsed,
    });
    expect(finding.marks.some((m) => m.startsWith('judgement lapsed'))).toBe(lapsed !== undefined);
  });

  it('on an answer lapses when the answer changes', async () => {
    const same = find(
      await examined('3 mm', 'about: body.joint-form, of: Fillets all  round, by: JO'),
      'body.joint-form',
    );
    expect(same.judgements![0]).toMatchObject({ by: 'J. Okoro', role: 'builder', lapsed: undefined });
    const other = find(await examined('3 mm', 'about: body.joint-form, of: butt welds, by: JO'), 'body.joint-form');
    expect(other.marks).toContain('judgement lapsed: was given of butt welds, now fillets all round');
  });

  const digest = createHash('sha256').update(pictureHead).digest('hex');
  it('on a photo stands beside what the photo shows', async () => {
    const findings = await examined(
      '3 mm',
      `about: photo weld, of: left weld bare, sha256: ${digest.slice(0, 12)}, by: R. Ansell, letter: visit-letter`,
    );
    expect(find(findings, 'body.welds-shown').judgements).toMatchObject([
      { words: 'it will do here', letter: 'visit-letter', lapsed: undefined },
    ]);
  });

  it.each([
    [`, sha256: ${digest}`, undefined],
    [`, sha256: [${'0'.repeat(12)}, ${digest.slice(0, 20)}]`, undefined],
    [`, sha256: ${'0'.repeat(12)}`, 'weld.jpg is another file than the one that was judged'],
    ['', `it does not say which file was judged: state \`sha256: ${digest.slice(0, 12)}\` of weld.jpg`],
  ])('on a photo lapses with the file: %s', async (sha256, lapsed) => {
    for (const about of ['photo weld, of: left weld bare', 'body.welds-shown welds-bare, of: weld.jpg']) {
      const findings = await examined('3 mm', `about: ${about}${sha256}, by: R. Ansell`);
      expect(find(findings, 'body.welds-shown').judgements![0]!.lapsed).toBe(lapsed);
    }
  });

  it('may stand in build.md', async () => {
    const at = folder('3.0 mm', `${ratio}, of: '2.0', by: JO`);
    const whole = (by: string) =>
      build.replace(
        /---\n$/,
        `judgements:\n  - { id: all, about: 020-crossmember/body.joint-form, of: fillets all round, words: they will do, basis: seen, by: ${by}, on: 2026-03-15 }\n---\n`,
      );
    writeFileSync(join(at, 'build.md'), whole('R. Ansell'));
    const loaded = await load(at, at);
    if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
    expect(find(loaded.evaluation.findings, 'body.joint-form').judgements).toMatchObject([
      { id: 'build/all', words: 'they will do', lapsed: undefined, place: { file: 'build.md' } },
    ]);
    writeFileSync(join(at, 'build.md'), whole('R. Ansel'));
    expect((await load(at, at)).problems).toMatchObject([{ code: 'reference-missing', file: 'build.md' }]);
  });

  it('may name the finding by its id', async () => {
    const findings = await examined('3 mm', `about: 020-crossmember/body.joint-form, of: fillets all round, by: JO`);
    expect(find(findings, 'body.joint-form').judgements).toHaveLength(1);
  });

  it.each([
    [`about: body.thickness-ratio cros, of: '2', by: JO`, 'did you mean `body.thickness-ratio cross`?'],
    ['about: photo weldd, of: x, by: JO', undefined],
    [`${ratio}, of: '2', by: R. Ansel`, 'did you mean `R. Ansell`?'],
    [`${ratio}, of: '2', by: JO, letter: visit-leter.pdf`, 'did you mean `visit-letter.pdf`?'],
  ])('%s is an error', async (judgement, hint) => {
    const problems = await refused(judgement);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'reference-missing', line: 17 });
    if (hint) expect(problems[0]!.hint).toBe(hint);
  });

  it('without what was judged is an error', async () => {
    expect(await refused(`${ratio}, by: JO`)).toMatchObject([{ found: 'no `of`' }]);
  });
});
