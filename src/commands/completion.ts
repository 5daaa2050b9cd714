import { didYouMean } from '../platform/near.js';
import { UsageError } from '../platform/usage.js';
import type { Commands } from './terminal/command.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';

export const form = formOf({
  command: 'completion',
  names: [{ name: 'shell', is: 'shell' }],
  about:
    'Prints a script that lets a shell (bash, zsh or fish) complete commands, options, their words, kinds of note and calculation sheets. Make it anew after an update.',
  options: {},
  examples: [
    'gusset completion bash > ~/.gusset-completion.bash',
    'gusset completion zsh > ~/.zfunc/_gusset',
    'gusset completion fish > ~/.config/fish/completions/gusset.fish',
  ],
});

export async function run(args: readonly string[], io: Io, commands: Commands): Promise<Exit> {
  const { names } = parse(form, args);
  const [shell] = names as [string];
  const [{ completionTable, shells }, { bashScript }, { zshScript }, { fishScript }] = await Promise.all([
    import('./completion/table.js'),
    import('./completion/bash.js'),
    import('./completion/zsh.js'),
    import('./completion/fish.js'),
  ]);
  const scripts = { bash: bashScript, zsh: zshScript, fish: fishScript };
  const known = shells.find((s) => s === shell);
  if (!known)
    throw new UsageError(`found the shell \`${shell}\`, expected ${shells.join(', ')}; ${didYouMean(shell, shells)}`);
  io.stdout(scripts[known](await completionTable(commands)));
  return exits.clean;
}
