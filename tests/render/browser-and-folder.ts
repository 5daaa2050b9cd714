import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import type { Subject } from '../../src/render/subject.js';
import { loaded, subjectOf } from './document.js';

interface At {
  browser: RunningBrowser;
  subject: Subject;
  folder: string;
}

/** A browser, the fixture's document and a folder, there from the first test of a file to its last. */
export function browserAndFolder(): At {
  const at = {} as At;
  beforeAll(async () => {
    at.browser = await launchBrowser();
    at.subject = await subjectOf(await loaded());
    at.folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  });
  afterAll(async () => {
    await at.browser.close();
    rmSync(at.folder, { recursive: true, force: true });
  });
  return at;
}
