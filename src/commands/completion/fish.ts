import type { CommandRow, Takes } from './table.js';

/** Completion for fish. */
export function fishScript(commands: readonly CommandRow[]): string {
  const names = commands.map((c) => c.name).join(' ');
  return `# Completion of gusset for fish: save it as ~/.config/fish/completions/gusset.fish.
complete -c gusset -f -n 'not __fish_seen_subcommand_from ${names}' -l version -d 'name and version'
complete -c gusset -f -n 'not __fish_seen_subcommand_from ${names}' -l help -d 'all commands'
${commands.flatMap((c) => [`complete -c gusset -f -n 'not __fish_seen_subcommand_from ${names}' -a ${c.name} -d ${quoted(c.says)}`, ...linesOf(c)]).join('\n')}
`;
}

function linesOf({ name, options, names }: CommandRow): string[] {
  const within = `complete -c gusset -n '__fish_seen_subcommand_from ${name}'`;
  const words = names.flatMap((takes) => (typeof takes === 'object' ? takes.words : []));
  return [
    ...options.map((o) => `${within} -l ${o.name} -d ${quoted(o.says)}${o.takes ? value(o.takes) : ''}`),
    ...(words.length > 0 ? [`${within} -a '${words.join(' ')}'`] : []),
  ];
}

function value(takes: Takes): string {
  if (typeof takes === 'object') return ` -x -a '${takes.words.join(' ')}'`;
  return takes === 'files' ? ' -r -F' : ' -x';
}

const quoted = (text: string): string => `'${text.replace(/[\\']/g, '\\$&')}'`;
