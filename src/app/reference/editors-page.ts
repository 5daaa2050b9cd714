import type { Kind } from '../../checks/engine/kind.js';

/** Where the schemas lie for whoever has Gusset as a package of the workshop's repository. */
const installed = 'node_modules/gusset/templates/schemas';

/** The page on switching on completion in an editor. */
export function editorsPage(kinds: Iterable<Kind>): string {
  const files = [...kinds].map((kind) => kind.id);
  const mapping = {
    [`./${installed}/limits.json`]: ['**/limits.yaml'],
    [`./${installed}/build.json`]: ['builds/*/build.md'],
    [`./${installed}/query.json`]: ['builds/*/queries/*.md'],
    [`./${installed}/note.json`]: ['builds/*/notes/*.md'],
  };
  return [
    '# Completion in the editor',
    '',
    'Made from the schemas by `npm run generate`. Editors that speak to a YAML language server complete keys, offer the words that a',
    'key takes, show unit and way of measuring, and underline a mistyped key, once they know which schema holds for which file.',
    '',
    'Whatever the editor, `gusset check builds/<name> --watch` in a terminal beside it says after every save what is wrong, with',
    'line, column and what to do. It knows more than a schema can: units, designations, photos that are not there.',
    '',
    '## Schemas',
    '',
    `JSON Schema, draft 7, in \`templates/schemas/\` of the package (\`${installed}/\` where Gusset is installed in the workshop’s repository):`,
    '',
    '| file | schema |',
    '| --- | --- |',
    '| `build.md` | [build.json](../schemas/build.json) |',
    '| `limits.yaml` | [limits.json](../schemas/limits.json) |',
    '| `queries/*.md` | [query.json](../schemas/query.json) |',
    '| `notes/*.md`, any kind | [note.json](../schemas/note.json) |',
    ...files.map((id) => `| \`notes/*.md\` with \`kind: ${id}\` | [${id}.json](../schemas/${id}.json) |`),
    '',
    '## One mapping for the workshop',
    '',
    'Most YAML language servers take a map from schemas to patterns of file names, under `yaml.schemas` or a like name in the',
    'settings of the editor. From the root of the repository:',
    '',
    '```json',
    JSON.stringify({ 'yaml.schemas': mapping }, null, 2),
    '```',
    '',
    '## One line in a note',
    '',
    'The schema of the very kind completes better than the one for any note. Many servers take it from a comment at the head of',
    'the frontmatter, with the path from the note; Gusset reads over comments:',
    '',
    '```yaml',
    '---',
    `# yaml-language-server: $schema=../../../${installed}/engine.json`,
    'kind: engine',
    '```',
    '',
    '## Frontmatter is YAML inside Markdown',
    '',
    'A YAML language server looks at YAML files. `limits.yaml` is one. For notes, `build.md` and queries one of these is needed:',
    '',
    '- an editor, or its support for Markdown, that hands the frontmatter to the YAML server; the mapping above then does the rest;',
    '- or the language of the file set to YAML while the measurements are filled in, and back to Markdown for the words. As YAML, what',
    '  stands below the second `---` is taken for another document and underlined; that means nothing.',
    '',
    'Where neither is to be had, the comments in a note from `gusset note` say beside each key what it takes.',
  ].join('\n');
}
