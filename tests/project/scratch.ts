import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder with these files, removed when the test is over. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

/** What a JPEG begins and ends with: enough to be taken for a picture where none is shown. */
export const pictureHead: Uint8Array = new Uint8Array([0xff, 0xd8, 0xff, 0xd9]);

export const buildFile = `---
title: A car made up for tests
vehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }
original: { mass: 1100 kg, mass-source: made up, induction: na }
instruments: [{ id: caliper-1, what: caliper, uncertainty: 0.03 mm }]
---
`;
