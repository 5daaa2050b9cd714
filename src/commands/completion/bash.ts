import type { CommandRow, Takes } from './table.js';

/**
 * Completion for bash, also the old one of macOS. Where a file or anything may stand nothing is offered, and bash itself
 * completes files.
 */
export function bashScript(commands: readonly CommandRow[]): string {
  return `# Completion of gusset for bash: source it in ~/.bashrc.
_gusset() {
  local current=\${COMP_WORDS[COMP_CWORD]} previous=\${COMP_WORDS[COMP_CWORD-1]} words='' place=0 i
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W '${commands.map((c) => c.name).join(' ')} --help --version' -- "$current"))
    return
  fi
  for ((i = 2; i < COMP_CWORD; i++)); do
    case "\${COMP_WORDS[1]} \${COMP_WORDS[i]}" in
${commands.flatMap((c) => c.options.filter((o) => o.takes).map((o) => `      '${c.name} --${o.name}') i=$((i + 1)) ;;`)).join('\n')}
      *' --'*) ;;
      *) place=$((place + 1)) ;;
    esac
  done
  case "\${COMP_WORDS[1]} $previous" in
${commands.flatMap((c) => c.options.flatMap((o) => (o.takes ? [`    '${c.name} --${o.name}') ${offer(o.takes)} return ;;`] : []))).join('\n')}
  esac
  case "$current" in
    -*)
      case "\${COMP_WORDS[1]}" in
${commands.map((c) => `        ${c.name}) words='${c.options.map((o) => `--${o.name}`).join(' ')}' ;;`).join('\n')}
      esac ;;
    *)
      case "\${COMP_WORDS[1]} $place" in
${commands.flatMap((c) => c.names.flatMap((takes, i) => (typeof takes === 'object' ? [`        '${c.name} ${i}') words='${takes.words.join(' ')}' ;;`] : []))).join('\n')}
      esac ;;
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current"))
}
complete -o bashdefault -o default -F _gusset gusset
`;
}

const offer = (takes: Takes): string =>
  typeof takes === 'object' ? `COMPREPLY=($(compgen -W '${takes.words.join(' ')}' -- "$current"));` : '';
