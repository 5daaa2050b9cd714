import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { MachineFailure } from '../../src/platform/failure.js';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { launchBrowser } from '../../src/print/launch.js';
import { printDocument } from '../../src/print/pdf.js';
import { details, runInChild, scratch, until, writePage } from './fixtures.js';
import { readPdf, textOfPages } from './read-pdf.js';

afterEach(() => vi.unstubAllEnvs());

const look = `${fontFaces(pathToFileURL(fontsDirectory).href)} body { font-family: var(--font-text) }`;
/** Long enough that it is still being printed when the browser is killed. */
const long = '<table>' + '<tr><td>One row of very many</td><td>2.48 mm</td></tr>'.repeat(20_000) + '</table>';

const commandOf = (pid: string): string => {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    return '';
  }
};
const processesWith = (words: string): number[] =>
  readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name) && commandOf(name).includes(words))
    .map(Number);
const leftBehind = (folder: string) => readdirSync(folder).filter((name) => name !== 'page.html' && name !== 'out.pdf');

describe.skipIf(process.platform !== 'linux')('a print that is cut off', () => {
  test.each(['the whole browser', "the page's process"])(
    'by the death of %s is a failure of the machine that leaves the last good file',
    async (what) => {
      const folder = scratch();
      vi.stubEnv('TMPDIR', folder);
      const html = writePage(folder, long, look);
      writeFileSync(join(folder, 'out.pdf'), 'the last good one');
      const running = await launchBrowser();
      const printing = printDocument({
        ...details,
        html,
        directory: folder,
        out: join(folder, 'out.pdf'),
        browser: running,
      }).catch((error: unknown) => error);
      while (!(await running.browser.pages()).some((page) => page.url().endsWith('page.html')))
        await new Promise((resolve) => setTimeout(resolve, 20));
      await new Promise((resolve) => setTimeout(resolve, 200));
      if (what === 'the whole browser') process.kill(-(running.browser.process()!.pid as number), 'SIGKILL');
      else
        for (const pid of processesWith('--type=renderer').filter((each) =>
          isBelow(each, running.browser.process()!.pid as number),
        ))
          process.kill(pid, 'SIGKILL');
      const failure = await printing;
      expect(failure).toBeInstanceOf(MachineFailure);
      expect((failure as MachineFailure).found).toMatch(/^the browser \(.*\) failed while printing/);
      await running.close();
      expect(readFileSync(join(folder, 'out.pdf'), 'utf8')).toBe('the last good one');
      expect(leftBehind(folder)).toEqual([]);
    },
  );

  test('by Ctrl-C leaves the last good file, no browser and no temporary file', async () => {
    const folder = scratch();
    const html = writePage(folder, long, look);
    writeFileSync(join(folder, 'out.pdf'), 'the last good one');
    const options = { ...details, date: undefined, html, directory: folder, out: join(folder, 'out.pdf') };
    const child = runInChild(
      'print/pdf.js',
      `process.env.TMPDIR = ${JSON.stringify(folder)};
      await printDocument({ ...${JSON.stringify(options)}, date: new Date(0) });`,
      'printDocument',
    );
    await until(() => processesWith(`${folder}/gusset-browser`).length > 0);
    await new Promise((resolve) => setTimeout(resolve, 300));
    const ended = new Promise((resolve) => child.on('exit', (_code, by) => resolve(by)));
    child.kill('SIGINT');
    expect(await ended).toBe('SIGINT');
    await until(() => processesWith(`${folder}/gusset-browser`).length === 0);
    expect(readFileSync(join(folder, 'out.pdf'), 'utf8')).toBe('the last good one');
    expect(leftBehind(folder)).toEqual([]);
  });
});

/** Whether a process descends from another. */
function isBelow(pid: number, ancestor: number): boolean {
  for (let at = pid; at > 1; ) {
    if (at === ancestor) return true;
    const parent = /\) \S (\d+)/.exec(readFileSync(`/proc/${at}/stat`, 'utf8'))?.[1];
    at = Number(parent ?? 0);
  }
  return false;
}

test.skipIf(process.platform !== 'linux')('a system without any font prints every word all the same', async () => {
  const folder = scratch();
  writeFileSync(
    join(folder, 'none.conf'),
    '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig></fontconfig>',
  );
  vi.stubEnv('FONTCONFIG_FILE', join(folder, 'none.conf'));
  const html = writePage(folder, '<p>Every word of it</p>', look);
  await printDocument({ ...details, html, directory: folder, out: join(folder, 'out.pdf') });
  expect((await textOfPages(await readPdf(join(folder, 'out.pdf'))))[0]).toContain('Every word of it');
});
