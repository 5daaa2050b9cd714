import { existsSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { expect, it } from 'vitest';
import { generated, root } from '../../../src/app/reference/generate.js';

it('has current reference pages and schemas (npm run generate)', async () => {
  const stale = [...(await generated())]
    .filter(
      ([path, content]) =>
        !existsSync(root + path) || readFileSync(root + path, 'utf8').replaceAll('\r\n', '\n') !== content,
    )
    .map(([path]) => path);
  expect(stale).toEqual([]);
});

it('makes schemas that are schemas, and that refuse a mistyped key', async () => {
  const files = await generated();
  const schema = JSON.parse(files.get('templates/schemas/engine.json')!);
  const validate = new Ajv({ strict: false, validateFormats: false }).compile(schema);
  expect(
    validate({ kind: 'engine', title: 'Engine', bore: '86.0 mm', stroke: { value: '86 mm', with: 'caliper-1' } }),
  ).toBe(true);
  expect(validate({ kind: 'engine', title: 'Engine', bor: '86.0 mm' })).toBe(false);
  expect(schema.properties.bore.description).toContain('bore as measured');
});

it('tells editors of schemas that are there, for each kind, and of settings that can be pasted', async () => {
  const files = await generated();
  const page = files.get('templates/reference/editors.md')!;
  const named = [...page.matchAll(/schemas\/([\w-]+\.json)/g)].map(([, name]) => name!);
  expect(new Set(named)).toEqual(
    new Set(
      [...files.keys()].flatMap((path) =>
        path.startsWith('templates/schemas/') ? [path.slice('templates/schemas/'.length)] : [],
      ),
    ),
  );
  for (const name of named) expect(existsSync(`${root}templates/schemas/${name}`), name).toBe(true);
  const settings = JSON.parse(/```json\n([^]*?)```/.exec(page)![1]!) as { 'yaml.schemas': Record<string, string[]> };
  expect(Object.keys(settings['yaml.schemas']).map((path) => path.split('/').at(-1))).toEqual([
    'limits.json',
    'build.json',
    'query.json',
    'note.json',
  ]);
  expect(JSON.parse(readFileSync(`${root}package.json`, 'utf8'))).toMatchObject({
    name: 'gusset',
    files: expect.arrayContaining(['templates']),
  });
});
