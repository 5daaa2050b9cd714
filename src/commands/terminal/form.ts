import { parseArgs } from 'node:util';
import { didYouMean, near } from '../../platform/near.js';
import { UsageError } from '../../platform/usage.js';

/** What a command takes, declared once: parsing, help, help with spelling, and completion come from it. */
export interface Form<O extends OptionForms = OptionForms> {
  command: string;
  names: readonly NameForm[];
  /** Where the names alone do not tell how it is used. */
  usage?: string;
  /** What the command does; an empty line begins a paragraph. */
  about: string;
  options: O;
  /** What else there is to know, below the options. */
  more?: string;
  /** Command lines as they would be typed. */
  examples: readonly string[];
}

/** A thing that is named without an option. */
export interface NameForm {
  name: string;
  count?: 'optional' | 'any';
  /** What a shell can complete it from. */
  is?: 'folder' | 'kind' | 'sheet' | 'shell';
}

export type OptionForms = Readonly<Record<string, OptionForm>>;
export type OptionForm = { says: string } & (
  | { oneOf: readonly string[]; usual?: string }
  /** `takes` names the value in the help; `otherwise` says what holds where it is left out. */
  | { takes: string; usual?: string; otherwise?: string; is?: 'folder' }
  | { flag: true }
);

type Given<F> = F extends { usual: string } ? never : undefined;
type ValueOf<F> = F extends { oneOf: readonly (infer C)[] }
  ? C | Given<F>
  : F extends { takes: string }
    ? string | Given<F>
    : boolean;
export type Values<O extends OptionForms> = { readonly [K in keyof O]: ValueOf<O[K]> };

/** Declares a form with the types of its values. */
export const formOf = <const O extends OptionForms>(declared: Form<O>): Form<O> => declared;

/** `gusset check [<build>…]`. */
export function usageLine({ command, names, usage }: Form): string {
  if (usage !== undefined) return usage;
  const shown = names.map(({ name, count }) =>
    count === 'any' ? `[<${name}>…]` : count === 'optional' ? `[<${name}>]` : `<${name}>`,
  );
  return ['gusset', command, ...shown].join(' ');
}

/** Reads the arguments of a command. Throws UsageError that says what was found, expected, and perhaps meant. */
export function parse<O extends OptionForms>(
  of: Form<O>,
  args: readonly string[],
): { values: Values<O>; names: string[] } {
  const options = Object.fromEntries(
    Object.entries(of.options).map(([name, o]) => [
      name,
      { type: 'flag' in o ? ('boolean' as const) : ('string' as const) },
    ]),
  );
  const { tokens, positionals } = parseArgs({
    args: [...args],
    options,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const values: Record<string, string | boolean | undefined> = Object.fromEntries(
    Object.entries(of.options).map(([name, o]) => [name, 'flag' in o ? false : o.usual]),
  );
  for (const token of tokens) if (token.kind === 'option') values[token.name] = valueOf(of, token);
  const needed = of.names.filter((n) => n.count === undefined).length;
  const most = of.names.some((n) => n.count === 'any') ? Infinity : of.names.length;
  if (positionals.length < needed || positionals.length > most)
    throw new UsageError(
      `found ${positionals.length === 0 ? 'no name' : positionals.map((p) => `\`${p}\``).join(' ')}, expected ${usageLine(of)}`,
    );
  return { values: values as Values<O>, names: positionals };
}

type Token = { name: string; rawName: string; value: string | undefined; inlineValue: boolean | undefined };

function valueOf(of: Form, { name, rawName, value, inlineValue }: Token): string | boolean {
  const option = rawName.startsWith('--') && Object.hasOwn(of.options, name) ? of.options[name] : undefined;
  const known = Object.keys(of.options).map((o) => `--${o}`);
  if (!option)
    throw new UsageError(
      `found the option \`${rawName}\`, which \`gusset ${of.command}\` does not have; ${known.length === 0 ? 'it has none' : didYouMean(rawName, known)}`,
    );
  if ('flag' in option) {
    if (value !== undefined) throw new UsageError(`found ${rawName}=${value}, expected ${rawName} alone`);
    return true;
  }
  const wanted = 'oneOf' in option ? option.oneOf.join(', ').replace(/, ([^,]*)$/, ' or $1') : `<${option.takes}>`;
  if (value === undefined || value === '' || (!inlineValue && /^-./.test(value)))
    throw new UsageError(`found ${rawName} without a value, expected ${rawName} ${wanted}`);
  if ('oneOf' in option && !option.oneOf.includes(value)) {
    const [best] = near(value, option.oneOf);
    throw new UsageError(`found ${rawName} ${value}, expected ${wanted}${best ? `; did you mean \`${best}\`?` : ''}`);
  }
  return value;
}
