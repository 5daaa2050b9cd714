/** Writes the demo's papers, all invented: `node builds/make/papers.mjs [--to <folder>]`. Needs no network. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { papers } from './papers/index.mjs';
import { typeset } from './papers/typeset.mjs';

const { values } = parseArgs({ options: { to: { type: 'string' } } });
const folder = values.to ?? fileURLToPath(new URL('../sedge/papers', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const [name, paper] of Object.entries(papers)) {
  const bytes = await typeset(paper);
  writeFileSync(join(folder, `${name}.pdf`), bytes);
  console.log(`${name}.pdf ${Math.ceil(bytes.length / 1024)} kB`);
}
