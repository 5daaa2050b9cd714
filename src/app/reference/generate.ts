import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { allSheets } from '../../calc/catalogue.js';
import { loadCodes } from '../../checks/codes/codes.js';
import { kinds } from '../../checks/kinds/index.js';
import { packageFile } from '../../platform/package-file.js';
import { editorsPage } from './editors-page.js';
import { formatsPage } from './formats-page.js';
import { itemsPage } from './items-page.js';
import { kindsPage } from './kinds-page.js';
import { anyNoteSchema, buildFileSchema, limitsFileSchema, noteSchema, queryFileSchema } from './note-schema.js';
import { sheetsPage } from './sheets-page.js';

/** Pages and schemas that are made from the code and committed, by their path in the repository. */
export async function generated(): Promise<Map<string, string>> {
  const codes = await loadCodes();
  const json = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;
  const text = (page: string) => `${page.trimEnd()}\n`;
  return new Map([
    ['templates/reference/sheets.md', text(sheetsPage(await allSheets()))],
    ['templates/reference/kinds.md', text(kindsPage(kinds.values(), codes))],
    ['templates/reference/items.md', text(itemsPage(codes))],
    ['templates/reference/editors.md', text(editorsPage(kinds.values()))],
    ['templates/reference/formats.md', text(formatsPage())],
    ['templates/schemas/build.json', json(buildFileSchema())],
    ['templates/schemas/limits.json', json(limitsFileSchema())],
    ['templates/schemas/query.json', json(queryFileSchema())],
    ['templates/schemas/note.json', json(anyNoteSchema(kinds.values()))],
    ...[...kinds.values()].map(
      (kind) => [`templates/schemas/${kind.id}.json`, json(noteSchema(kind))] as [string, string],
    ),
  ]);
}

export const root = fileURLToPath(packageFile(''));

/** Writes what differs; files of kinds that are gone are removed. */
export async function writeGenerated(): Promise<string[]> {
  const files = await generated();
  const changed: string[] = [];
  for (const folder of ['templates/reference', 'templates/schemas']) {
    mkdirSync(root + folder, { recursive: true });
    for (const name of readdirSync(root + folder))
      if (!files.has(`${folder}/${name}`)) rmSync(`${root}${folder}/${name}`);
  }
  for (const [path, content] of files) {
    if (read(path) === content) continue;
    writeFileSync(root + path, content);
    changed.push(path);
  }
  return changed;
}

function read(path: string): string | undefined {
  try {
    return readFileSync(root + path, 'utf8').replaceAll('\r\n', '\n');
  } catch {
    return undefined;
  }
}
