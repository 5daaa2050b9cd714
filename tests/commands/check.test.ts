import { expect, it } from 'vitest';
import { buildFile, folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

const body = (was: string, now: string) => `---
kind: body-structure
title: Floor let in
structure-cut: no
pieces:
  - id: floor
    role: bracket
    joined-to: ${was}
    now: { section: FL 100x3, steel: S355, wall: ${now} }
---

Let in and welded.
`;
const build = (note: string) => folderWith({ 'build.md': buildFile, 'notes/010-floor.md': note });
const ratio = async (was: string, now: string) => {
  const { out } = await gusset('check', build(body(was, now)), '--format', 'json');
  return JSON.parse(out).findings.find((f: { item: string }) => f.item === 'body.thickness-ratio');
};

it('exits with 1 and says what to do next, most serious first', async () => {
  const { code, out } = await gusset('check', build(body('1.20 ± 0.01 mm', '6.00 ± 0.01 mm')));
  expect(code).toBe(1);
  const first = out.split('\n').find((line) => /^[✗≈○?]/.test(line));
  expect(first).toContain('outside usual practice (justify)');
  expect(out).toContain('notes/010-floor.md:');
  expect(out).toContain('Gusset certifies nothing');
});

// 2.5 times the original thickness: common practice, no source.
it.each([
  ['1.20 ± 0.00001 mm', '2.95 ± 0.00001 mm', 'within-usual-practice'],
  ['1.20 ± 0.01 mm', '3.00 ± 0.01 mm', 'inconclusive'],
  ['1.20 ± 0.001 mm', '3.02 ± 0.001 mm', 'outside-usual-practice'],
  // A 6 mm plate in place of body sheet of 1.2 to 2 mm is rejected although it is stronger (common practice, no source).
  ['2.0 ± 0.05 mm', '6.0 ± 0.05 mm', 'outside-usual-practice'],
  // A support bar of 3 mm wall where the crossmember was about 3 mm is like for like (common practice, no source).
  ['3.0 mm', '3.0 mm', 'within-usual-practice'],
])('thickness of %s joined to %s: %s', async (was, now, outcome) => {
  const finding = await ratio(was, now);
  expect(finding.outcome).toBe(outcome);
  expect(finding.basis).toBe('practice');
  expect(finding.marks).toContain('common practice');
});

it('gives a value without a stated uncertainty half the last digit, and says so', async () => {
  const finding = await ratio('1.2 mm', '2.9 mm');
  expect(finding.outcome).toBe('inconclusive');
  expect(finding.measured.uncertaintyAssumed).toBe(true);
});

it('names the field and how to measure it when it is missing', async () => {
  const { out } = await gusset(
    'check',
    build(body('1.2 mm', '3.0 mm').replace(/ {4}joined-to.*\n/, '')),
    '--format',
    'json',
  );
  const finding = JSON.parse(out).findings.find((f: { item: string }) => f.item === 'body.thickness-ratio');
  expect(finding).toMatchObject({ outcome: 'not-measured' });
  expect(finding.todo).toContain('pieces.floor.was.section');
});

it('exits with 2 on a wrong unit, with the line and a caret under it, and prints nothing else', async () => {
  const { code, out, err } = await gusset('check', build(body('1.2 kg', '3.0 mm')));
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(/notes\/010-floor\.md:8:20: found .*kg/);
  expect(err).toContain('^^');
  expect(err).toContain('hint:');
});

it('lets outcomes pass that are named', async () => {
  const folder = build(body('1.20 ± 0.01 mm', '2.90 ± 0.01 mm'));
  expect((await gusset('check', folder)).code).toBe(1);
  expect((await gusset('check', folder, '--allow', 'all')).code).toBe(0);
  const wrong = await gusset('check', folder, '--allow', 'mising');
  expect(wrong.code).toBe(2);
  expect(wrong.err).toContain('expected any of conforms');
});

it('spells commands out and helps with mistyped ones', async () => {
  expect((await gusset('chek')).err).toContain('did you mean `check`?');
  expect((await gusset('check', '--formt', 'json')).code).toBe(2);
  expect((await gusset('check', '--help')).out).toContain('Examples');
  expect((await gusset('__proto__')).code).toBe(2);
});
