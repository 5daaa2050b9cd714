import { describe, expect, it } from 'vitest';
import { commands } from '../../src/commands/main.js';
import { type Form, formOf, parse } from '../../src/commands/terminal/form.js';
import { helpText } from '../../src/commands/terminal/help.js';
import { UsageError } from '../../src/platform/usage.js';
import { gusset } from './run.js';

const form = formOf({
  command: 'weigh',
  names: [
    { name: 'build', is: 'folder' },
    { name: 'note', count: 'optional' },
  ],
  about: 'Weighs.',
  options: {
    as: { oneOf: ['text', 'json'], usual: 'text', says: 'how' },
    out: { takes: 'folder', otherwise: 'here', says: 'where to' },
    loud: { flag: true, says: 'say more' },
  },
  examples: ['gusset weigh builds/x'],
});
const refusal = (...args: string[]) => {
  try {
    parse(form, args);
  } catch (error) {
    expect(error).toBeInstanceOf(UsageError);
    return (error as Error).message;
  }
  throw new Error('was taken');
};

describe('arguments', () => {
  it('are read in any order, with what holds where they are left out', () => {
    expect(parse(form, ['a', 'b', '--as', 'json', '--loud'])).toEqual({
      names: ['a', 'b'],
      values: { as: 'json', out: undefined, loud: true },
    });
    expect(parse(form, ['--out=x y', 'a'])).toEqual({ names: ['a'], values: { as: 'text', out: 'x y', loud: false } });
    expect(parse(form, ['--', '--loud'])).toEqual({
      names: ['--loud'],
      values: { as: 'text', out: undefined, loud: false },
    });
  });

  it.each([
    [['a', '--lod'], 'found the option `--lod`, which `gusset weigh` does not have; did you mean `--loud`?'],
    [['a', '--zzz'], 'known: `--as`, `--out`, `--loud`'],
    [['a', '-l'], 'found the option `-l`'],
    [['a', '--constructor'], 'found the option `--constructor`'],
    [['a', '--as'], 'found --as without a value, expected --as text or json'],
    [['a', '--out', '--loud'], 'found --out without a value, expected --out <folder>'],
    [['a', '--as', 'jsn'], 'found --as jsn, expected text or json; did you mean `json`?'],
    [['a', '--loud=yes'], 'found --loud=yes, expected --loud alone'],
    [[], 'found no name, expected gusset weigh <build> [<note>]'],
    [['a', 'b', 'c'], 'found `a` `b` `c`, expected gusset weigh <build> [<note>]'],
  ])('that do not fit are told with what was expected: %j', (args, says) => {
    expect(refusal(...args)).toContain(says);
  });
});

describe('help', () => {
  const all = Object.entries(commands);

  it.each(all)('of %s fits the terminal, and its examples are commands that are taken', async (name) => {
    const command = (await commands[name]!.load()) as { form: Form };
    expect(command.form.command).toBe(name);
    for (const columns of [60, 80, 200]) {
      const [first, ...lines] = helpText(command.form, columns).split('\n');
      expect(first).toContain(`gusset ${name}`);
      const examples = lines.indexOf('Examples');
      expect(lines.slice(0, examples).filter((line) => line.length > Math.min(columns, 100))).toEqual([]);
    }
    expect(command.form.examples.length).toBeGreaterThan(0);
    for (const example of command.form.examples) {
      const words = [...example.split(/ [|>] /)[0]!.matchAll(/'([^']*)'|"([^"]*)"|\S+/g)].map(
        ([word, single, double]) => single ?? double ?? word,
      );
      expect(words.slice(0, 2)).toEqual(['gusset', name]);
      expect(() => parse(command.form, words.slice(2)), example).not.toThrow();
    }
  });

  it('puts labels above their texts where there is no room beside them', () => {
    expect(helpText(form, 40)).toContain('  --as text|json\n      how (text)');
    expect(helpText(form, 80)).toContain('  --as text|json  how (text)');
  });

  it('of the whole names every command', async () => {
    const { out, code } = await gusset('--help');
    expect(code).toBe(0);
    for (const [name, { says }] of all) expect(out).toMatch(new RegExp(`^  ${name} +${says.split(' ')[0]}`, 'm'));
    expect((await gusset()).code).toBe(2);
  });

  it('is there for every command although the arguments are wrong', async () => {
    expect((await gusset('print', '--nonsense', '--help')).out).toContain('gusset print <build>');
  });
});
