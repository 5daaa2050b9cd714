import { sheetIds } from '../../calc/catalogue.js';
import { kinds } from '../../checks/kinds/index.js';
import type { Commands } from '../terminal/command.js';
import type { NameForm, OptionForm } from '../terminal/form.js';

/** What can stand somewhere: words that are known, a file or folder, or anything. */
export type Takes = { words: readonly string[] } | 'files' | 'anything';

export interface CommandRow {
  name: string;
  says: string;
  options: readonly { name: string; says: string; takes?: Takes }[];
  /** What each name in turn may be; the last holds for all that follow where `many`. */
  names: readonly Takes[];
  many: boolean;
}

/** Every command with all that can be completed in it, from the forms that the commands are read by. */
export async function completionTable(commands: Commands): Promise<CommandRow[]> {
  return Promise.all(
    Object.entries(commands).map(async ([name, { says, load }]): Promise<CommandRow> => {
      const { form } = await load();
      const options = Object.entries(form.options).map(([option, o]) => ({
        name: option,
        says: o.says,
        ...(taken(o) === undefined ? {} : { takes: taken(o)! }),
      }));
      return {
        name,
        says,
        options: [...options, { name: 'help', says: 'what it takes, with examples' }],
        names: form.names.map(named),
        many: form.names.some((n) => n.count === 'any'),
      };
    }),
  );
}

function taken(option: OptionForm): Takes | undefined {
  if ('flag' in option) return undefined;
  if ('oneOf' in option) return { words: option.oneOf };
  return option.is === 'folder' ? 'files' : 'anything';
}

function named({ is }: NameForm): Takes {
  if (is === 'folder') return 'files';
  if (is === 'kind') return { words: [...kinds.keys()] };
  if (is === 'sheet') return { words: Object.values(sheetIds).flat() };
  return is === 'shell' ? { words: shells } : 'anything';
}

export const shells = ['bash', 'zsh', 'fish'] as const;
