/** Fills a template of a note in as its comments say, by script: every example line is used, every key gets a value. */
export function fillTypical(template: string): { text: string; files: string[] } {
  const [, front = '', words = ''] = /^---\n([^]*?)\n---\n([^]*)$/.exec(template) ?? [];
  const used = front.split('\n').map(enabled);
  const files: string[] = [];
  let comment: string[] = [];
  let section = '';
  const lines = used.map((line, i) => {
    const prose = /^\s*# (.*)$/.exec(line)?.[1];
    if (prose !== undefined) {
      comment.push(prose);
      return line;
    }
    const said = comment.join(' ');
    comment = [];
    if (/^\S/.test(line)) section = line.split(':')[0]!;
    const file = /^\s*- file: (.*)$/.exec(line)?.[1];
    if (file !== undefined) files.push(`${section}/${file}`);
    const key = /^(\s*(?:- )?[a-z][a-z0-9.-]*:)\s*(?:#.*)?$/.exec(line)?.[1];
    if (key === undefined || holdsMore(used, i)) return line.replace('[id of an item of the codes]', '[]');
    const value = valueOf(said, section);
    return value === undefined ? line : `${key} ${/^['"]/.test(value) ? value : `'${value.replaceAll("'", "''")}'`}`;
  });
  return { text: `---\n${lines.join('\n')}\n---\n${words}`, files };
}

/** The line without the # that turns it into an example. */
function enabled(line: string): string {
  return /^\s*#(?! \S)/.test(line) ? enabled(line.replace('#', '')) : line;
}

/** Whether a key has a block or a list below it. */
function holdsMore(lines: readonly string[], at: number): boolean {
  const indent = (line: string) => /^ */.exec(line)![0].length;
  const next = lines.slice(at + 1).find((line) => line !== '' && !/^\s*#/.test(line));
  return (
    next !== undefined &&
    (indent(next) > indent(lines[at]!.replace('- ', '  ')) ||
      (/^\s*- /.test(next) && indent(next) >= indent(lines[at]!)))
  );
}

function valueOf(said: string, section: string): string | undefined {
  if (section === 'stages') return '2026-03-14';
  if (section === 'measured')
    return `10 ${/, in (.*?)\. /.exec(said)?.[1]?.replace('a plain number', '') ?? ''}`.trim();
  if (section === 'answers') return /Wanted: (yes|no)\./.exec(said)?.[1] ?? 'as described';
  const example = /For example: (.*?)(?: Serves: .*)?$/.exec(said)?.[1];
  const choice = /One of: ([^ ;]+|[^(;]+)(?: \(|;)/.exec(said)?.[1];
  if (choice !== undefined) return choice.trim();
  if (example !== undefined) return example;
  return /^name of the item/.test(said) || said === '' ? undefined : 'as described';
}
