import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
  writeFileSync(
    html,
    `<!doctype html><html lang="en-AU"><head><meta charset="utf-8"><title>Fixture</title><style>${style}</style></head><body>${body}</body></html>`,
  );
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

/** Runs `script` in a Node process of its own, with `names` imported from a module of the program as it was built. */
export function runInChild(module: string, script: string, names: string): ChildProcess {
  const main = join(scratch(), 'main.mjs');
  writeFileSync(
    main,
    `import { ${names} } from ${JSON.stringify(new URL(`../../dist/${module}`, import.meta.url).href)};\n${script}\n`,
  );
  return spawn(process.execPath, [main], { stdio: ['ignore', 'pipe', 'inherit'] });
}

/** Waits until it holds; fails after half a minute. */
export async function until(holds: () => boolean): Promise<void> {
  for (let waited = 0; !holds(); waited += 20) {
    if (waited > 30_000) throw new Error('waited half a minute in vain');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
