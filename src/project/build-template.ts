import { fieldTree } from './field-tree.js';
import { format } from './format.js';
import { fieldLines, prose, scalar } from './template-lines.js';
import { buildSchema } from './vehicle.js';

/**
 * The text of a new `build.md`: every key with what it is, empty, and lists with an example that is commented out; and the
 * name under which its issues will be found.
 */
export function buildTemplate(title: string, id?: string): string {
  const lines = [
    '---',
    ...prose(
      'Make, model and month of build are needed before anything can be checked. Keys that stay empty are not known yet. Lines that begin with # and no single space are examples: take the # away to use them.',
    ),
    `title: ${scalar(title)}`,
    '',
    ...prose('The format that the notes of this build are written in. It is not to be changed by hand.'),
    `format: ${format}`,
    '',
    ...(id === undefined
      ? []
      : [
          ...prose(
            'Under this name the issues of this build are found, whatever its folder is called. It is not to be changed.',
          ),
          `id: ${scalar(id)}`,
          '',
        ]),
    ...fieldTree(buildSchema.shape)
      .filter((field) => !['title', 'format', 'id', 'judgements'].includes(field.key))
      .flatMap((field) => [...fieldLines(field, [], new Map()), ...(field.is === 'value' ? [] : [''])]),
    '---',
    '',
    '<!-- What is the car, how did it come, and what is to be done to it? Two or three sentences; the notes tell the rest. -->',
  ];
  return `${lines.join('\n').replace(/\n{3,}/g, '\n\n')}\n`;
}
