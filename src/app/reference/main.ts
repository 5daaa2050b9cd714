import { writeGenerated } from './generate.js';

const changed = await writeGenerated();
process.stdout.write(
  changed.length === 0
    ? 'Reference pages and schemas are current.\n'
    : `${changed.map((p) => `wrote ${p}`).join('\n')}\n`,
);
