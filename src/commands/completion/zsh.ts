import type { CommandRow, Takes } from './table.js';

/** Completion for zsh, as a function of the search path or sourced. */
export function zshScript(commands: readonly CommandRow[]): string {
  return `#compdef gusset
# Completion of gusset for zsh: as _gusset in a folder of $fpath, or sourced after compinit.
_gusset() {
  local -a names
  names=(
${commands.map((c) => `    ${quoted(`${c.name}:${c.says}`)}`).join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe -t commands command names
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT -= 1 ))
  case $command in
${commands.map((c) => `    ${c.name}) _arguments -S ${argumentsOf(c).map(quoted).join(' ')} ;;`).join('\n')}
  esac
}
if [[ $funcstack[1] == _gusset ]]; then
  _gusset "$@"
else
  compdef _gusset gusset
fi
`;
}

function argumentsOf({ options, names, many }: CommandRow): string[] {
  const spec = options.map(
    (o) => `--${o.name}${o.takes ? '=' : ''}[${plain(o.says)}]${o.takes ? `:${o.name}:${action(o.takes)}` : ''}`,
  );
  const places = names.map(
    (takes, i) => `${many && i === names.length - 1 ? '*' : i + 1}:${i === 0 ? 'first' : 'next'} name:${action(takes)}`,
  );
  return [...spec, ...places];
}

function action(takes: Takes): string {
  if (typeof takes === 'object') return `(${takes.words.join(' ')})`;
  return takes === 'files' ? '_files' : '';
}

/** Colons and brackets end parts of an argument. */
const plain = (text: string): string => text.replace(/[[\]:\\]/g, '\\$&');
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
