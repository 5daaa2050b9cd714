import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ModuleKind, ScriptTarget, transpileModule } from 'typescript';
import { onTestFinished } from 'vitest';

/** A folder that goes when the test ends. */
export function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 3 }));
  return folder;
}

/** Writes a page into the folder and returns its path. */
export function writePage(folder: string, body: string, style = ''): string {
  const html = join(folder, 'page.html');
  writeFileSync(html, `<!doctype html><html lang="en-AU"><head><meta charset="utf-8"><title>Fixture</title><style>${style}</style></head><body>${body}</body></html>`);
  return html;
}

export const details = {
  title: 'Invented car, invented change',
  author: 'J. O. (invented)',
  subject: 'Fixture',
  keywords: ['fixture', 'invented'],
  language: 'en-AU',
  documentId: 'FIX-001-A',
  date: new Date('2026-03-20T10:00:00Z'),
};

const project = fileURLToPath(new URL('../../', import.meta.url));

/** Runs `script` in a Node process of its own, with `names` imported from a module of src/print. */
export function runInChild(module: string, script: string, names: string): ChildProcess {
  // Beside src, so that packages and templates are found as from there.
  mkdirSync(join(project, '.cache'), { recursive: true });
  const folder = mkdtempSync(join(project, '.cache', 'print-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const file of readdirSync(join(project, 'src/print'))) {
    const source = readFileSync(join(project, 'src/print', file), 'utf8');
    const { outputText } = transpileModule(source, { compilerOptions: { module: ModuleKind.ESNext, target: ScriptTarget.ES2023, verbatimModuleSyntax: true } });
    writeFileSync(join(folder, file.replace(/\.ts$/, '.js')), outputText);
  }
  const main = join(folder, 'main.mjs');
  writeFileSync(main, `import { ${names} } from './${module.replace(/\.ts$/, '.js')}';\n${script}\n`);
  return spawn(process.execPath, [main], { stdio: ['ignore', 'pipe', 'inherit'] });
}

/** Waits until it holds; fails after half a minute. */
export async function until(holds: () => boolean): Promise<void> {
  for (let waited = 0; !holds(); waited += 20) {
    if (waited > 30_000) throw new Error('waited half a minute in vain');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
