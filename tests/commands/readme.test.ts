import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { commands } from '../../src/commands/main.js';
import { parse } from '../../src/commands/terminal/form.js';
import { gusset } from './run.js';

/** Lines and words of the documentation that call the program, without what a shell makes of them. */
function calls(file: string): string[] {
  const text = readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
  const found = [...text.matchAll(/(?:^|[`\s])(?:npx )?gusset ([a-z]+(?: [^`\n]*)?)/gm)].map((m) => m[1]!);
  return found.filter((call) => !/[<[…]/.test(call)).map((call) => call.replace(/\s#.*$|\s>.*$/, '').trim());
}

const words = (call: string): string[] =>
  [...call.replaceAll('${{ matrix.part }}', '1').matchAll(/"([^"]*)"|(\S+)/g)].map((m) => m[1] ?? m[2]!);

describe.each(['README.md', 'templates/reference/editors.md'])('%s', (file) => {
  const all = calls(file);
  it('calls the program', () => expect(all.length).toBeGreaterThan(0));
  it.each(all)('names a command with what it takes: gusset %s', async (call) => {
    const [name, ...args] = words(call);
    const command = await commands[name!]?.load();
    expect(command, name).toBeDefined();
    expect(() => parse(command!.form, args)).not.toThrow();
  });
});

describe.each(Object.keys(commands))('the examples of %s', (name) => {
  it('can be given as they stand', async () => {
    const { form } = await commands[name]!.load();
    expect(form.examples?.length).toBeGreaterThan(0);
    for (const example of form.examples!)
      expect(() => parse(form, words(example.replace(/\s>.*$/, '')).slice(2)), example).not.toThrow();
  });
});

it('the README tells of every command', () => {
  const text = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(Object.keys(commands).filter((name) => !text.includes(`| \`gusset ${name}`))).toEqual([]);
});

it('the README shows of a check what a check of the demo says', async () => {
  const text = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const [, shown = ''] = /begins with, shortened:\n\n([^]*?)\n\n\*\*/.exec(text) ?? [];
  const { out } = await gusset('check', 'builds/sedge');
  const said = new Set(out.split('\n').map((line) => line.trimEnd()));
  const lines = shown.split('\n').map((line) => line.replace(/^ {4}/, '').trimEnd());
  expect(lines.length).toBeGreaterThan(10);
  expect(lines.filter((line) => !said.has(line))).toEqual([]);
});
