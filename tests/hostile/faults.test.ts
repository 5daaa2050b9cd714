import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { written } from '../platform/written.js';
import { until } from '../print/fixtures.js';
import { before, full, lying, nothingLost, oneMessage, place, print, run, strays } from './process.js';

/** What goes wrong around the program: each gives one message and the right exit code, and loses and leaves nothing. */

describe.skipIf(process.platform !== 'linux')('Ctrl-C', () => {
  const now = "process.kill(process.pid, 'SIGINT');";
  it.each([
    ['while notes are read', before('fs.readFileSync', /notes.010-floor/, now)],
    ['while photos are prepared', before('fsp.open', /cache.photos.*partial/, now)],
    ['while the browser starts', before('fs.writeFileSync', /fonts\.conf/, `setTimeout(() => { ${now} }, 50);`)],
    ['while the page is printed', before('fsp.writeFile', /print\.html/, `setTimeout(() => { ${now} }, 100);`)],
    ['while the PDF is written', before('fsp.open', /submission\.pdf/, now)],
  ])(
    '%s ends it by that signal; the last good output stays, with no stray process and no temporary file',
    async (_, hook) => {
      const at = await place();
      const { signal, out } = await run(at, print(at), hook).ended;
      expect(signal).toBe('SIGINT');
      expect(out).toBe('');
      await nothingLost(at);
    },
  );

  it('while the new output takes the place of the old leaves the new one whole', async () => {
    const at = await place();
    await run(at, print(at), before('fs.renameSync', new RegExp(`${at.out}$`), now)).ended;
    await until(() => strays(at).length === 0);
    expect(lying(at)).toEqual([
      'out',
      'out/findings.json',
      'out/manifest.json',
      'out/submission.html',
      'out/submission.pdf',
      'temporary',
    ]);
    expect(readFileSync(join(at.out, 'submission.pdf'), 'latin1')).toMatch(/^%PDF-[^]*%%EOF\s*$/);
  });
});

describe.skipIf(process.platform !== 'linux')('a full disk', () => {
  it.each([
    ['the lock', before('fs.writeFileSync', /out\.lock/, full)],
    ['a prepared photo', before('fsp.open', /cache.photos.*partial/, full)],
    ["the browser's profile", before('fs.mkdtempSync', /gusset-browser/, full)],
    ['the PDF', before('fsp.open', /submission\.pdf/, full)],
  ])('at %s', async (_, hook) => {
    const at = await place();
    oneMessage(await run(at, print(at), hook).ended);
    await nothingLost(at);
  });

  const canMount = process.getuid?.() === 0 && mayMount();
  it.skipIf(!canMount)('that is really full (a file system of 300 kB, which only root can mount)', async () => {
    const at = await place();
    await mounted(at.out, async () => {
      written(at.out, { 'submission.pdf': 'the last good one' });
      const ended = await run(at, ['print', at.build, '--out', join(at.out, 'inner')]).ended;
      oneMessage(ended);
      expect(ended.err).toMatch(/no space left/i);
      await nothingLost(at);
    });
  });
});

/** Works with a small file system mounted on the folder; false where it cannot be. */
function mounted<T>(folder: string, work: () => T): T | false {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=300k', 'tmpfs', folder], { stdio: 'pipe' });
  } catch {
    return false;
  }
  const unmount = () => void execFileSync('umount', ['-l', folder], { stdio: 'pipe' });
  const result = work();
  if (result instanceof Promise) return result.finally(unmount) as T;
  unmount();
  return result;
}

function mayMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  const may = mounted(folder, () => true);
  rmdirSync(folder);
  return may;
}
