import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { expect, it } from 'vitest';
import { buildFile, folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

// The schema that OASIS published with SARIF 2.1.0, as a package of the registry ships it; of draft 4 it uses only what later drafts keep.
const {
  $schema: _,
  id: __,
  ...schema
} = JSON.parse(
  readFileSync(
    createRequire(import.meta.url).resolve('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json'),
    'utf8',
  ),
);
const validate = new Ajv({ strict: false, validateFormats: false, allErrors: true, unicodeRegExp: false }).compile(
  schema,
);

const note = `---
kind: body-structure
title: Floor
pieces:
  - { id: floor, role: bracket, joined-to: 1.20 ± 0.01 mm, now: { section: FL 100x3, steel: S355, wall: 6.00 ± 0.01 mm } }
---

Words.
`;

it('is valid against the OASIS schema, records passes, and lets only failures be errors', async () => {
  const folder = folderWith({
    'build.md': buildFile,
    'notes/010-floor.md': note,
    'notes/020-b.md': note.replace('6.00', '2.00'),
    // The figure is common practice; confirmed from an own copy, it is a requirement that a value conforms to.
    'limits.yaml':
      'figures:\n  - { item: body.thickness-ratio, max: "2.5", edition: made up, clause: "1", read-by: JO, on: 2026-01-05 }\n',
  });
  const { out } = await gusset('check', folder, '--format', 'sarif');
  const log = JSON.parse(out);
  validate(log);
  expect(validate.errors ?? []).toEqual([]);
  const results = log.runs[0].results as { kind: string; level: string; ruleId: string; ruleIndex: number }[];
  expect(new Set(results.map((r) => r.kind))).toContain('pass');
  expect(results.filter((r) => r.kind !== 'fail').every((r) => r.level === 'none')).toBe(true);
  expect(results.filter((r) => r.kind === 'fail').map((r) => r.ruleId)).toContain('body.thickness-ratio');
  for (const r of results) expect(log.runs[0].tool.driver.rules[r.ruleIndex].id).toBe(r.ruleId);
});

it('tells notes that cannot be read as notifications', async () => {
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-floor.md': note.replace('1.20', '1,20') });
  const { out, code } = await gusset('check', folder, '--format', 'sarif');
  expect(code).toBe(2);
  const log = JSON.parse(out);
  validate(log);
  expect(validate.errors ?? []).toEqual([]);
  expect(log.runs[0].invocations[0].toolExecutionNotifications[0].descriptor.id).toMatch(/quantity|key-unknown/);
});

it('tells each value in doubt at its place, with what was found and what is usual', async () => {
  const notes = note.replace('1.20 ± 0.01 mm', '12.0 mm').replace('6.00 ± 0.01 mm', '60 mm');
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-floor.md': notes });
  const log = JSON.parse((await gusset('check', folder, '--format', 'sarif')).out);
  validate(log);
  expect(validate.errors ?? []).toEqual([]);
  const line = notes.split('\n').findIndex((text) => text.includes('id: floor')) + 1;
  const column = (value: string) => notes.split('\n')[line - 1]!.indexOf(value) + 1;
  const told = log.runs[0].invocations[0].toolExecutionNotifications;
  expect(told).toMatchObject(
    [
      ['60 mm', 'something from 0.4 mm to 20 mm'],
      ['12.0 mm', 'something from 0.4 mm to 11 mm'],
    ].map(([found, expected]) => ({
      level: 'note',
      descriptor: { id: 'improbable-value' },
      message: { text: expect.stringContaining(`found ${found}, expected ${expected}; `) },
      locations: [{ physicalLocation: { region: { startLine: line, startColumn: column(found!) } } }],
    })),
  );
  for (const { locations } of told)
    expect(locations[0].physicalLocation.artifactLocation.uri).toMatch(/notes\/010-floor\.md$/);
  const { out } = await gusset('check', folder);
  expect(out.replaceAll(/\s+/g, ' ')).toMatch(/\d+ findings, \d+ open; 2 values to look at again\. /);
});

it('splits many builds over machines, each build once', async () => {
  const folders = [1, 2, 3].map(() => folderWith({ 'build.md': buildFile, 'notes/010-floor.md': note }));
  const names = async (...more: string[]) => {
    const parsed = JSON.parse((await gusset('check', ...folders, '--format', 'json', ...more)).out) as {
      build: string;
    }[];
    return parsed.map((f) => f.build);
  };
  expect([...(await names('--shard', '1/2')), ...(await names('--shard', '2/2'))].sort()).toEqual(
    (await names()).sort(),
  );
  expect((await gusset('check', ...folders, '--shard', '3/2')).code).toBe(2);
});
