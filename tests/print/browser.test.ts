import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { MachineFailure } from '../../src/platform/failure.js';
import { findBrowser } from '../../src/print/browser.js';
import { bundledPackage, unpackBundled } from '../../src/print/bundled.js';
import { launchBrowser, refuseOld } from '../../src/print/launch.js';
import type { Machine } from '../../src/print/places.js';
import { runInChild, scratch, until } from './fixtures.js';

afterEach(() => vi.unstubAllEnvs());

const machine = (there: string[], more: Partial<Machine> = {}): Machine => ({
  platform: 'linux',
  arch: 'x64',
  env: { PATH: '/usr/local/bin:/usr/bin:relative' },
  home: '/home/invented',
  exists: (path) => there.includes(path),
  ...more,
});
const noPackage = () => undefined;

describe('finding a browser', () => {
  test('PUPPETEER_EXECUTABLE_PATH comes before everything, and must exist', async () => {
    const env = { PUPPETEER_EXECUTABLE_PATH: '/opt/mine' };
    expect(await findBrowser(machine(['/opt/mine', '/usr/bin/chromium'], { env }), noPackage)).toMatchObject({
      executable: '/opt/mine',
      from: 'environment',
    });
    await expect(findBrowser(machine(['/usr/bin/chromium'], { env }), noPackage)).rejects.toThrow(
      /names \/opt\/mine, and there is no such file/,
    );
  });

  test.each([
    [machine(['/usr/bin/chromium', '/usr/bin/chromium-headless-shell']), '/usr/bin/chromium-headless-shell'],
    [machine(['/snap/bin/chromium', '/usr/bin/chromium']), '/usr/bin/chromium'],
    [machine(['/snap/bin/chromium'], { env: { PATH: '/snap/bin' } }), '/snap/bin/chromium'],
    [machine(['/opt/microsoft/msedge/msedge']), '/opt/microsoft/msedge/msedge'],
    [
      machine(['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'], { platform: 'darwin', arch: 'arm64' }),
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    ],
    [
      machine(['/home/invented/Applications/Chromium.app/Contents/MacOS/Chromium'], { platform: 'darwin' }),
      '/home/invented/Applications/Chromium.app/Contents/MacOS/Chromium',
    ],
    [
      machine(['C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe'], {
        platform: 'win32',
        env: { ProgramFiles: 'C:\\Program Files', 'ProgramFiles(x86)': 'C:\\Program Files (x86)' },
      }),
      'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    ],
  ])('an installed one is found at its usual place (%#)', async (where, executable) => {
    expect(await findBrowser(where, noPackage)).toEqual({ executable, from: 'installed', env: {} });
  });

  test('without any, the error says what was looked for and what to do', async () => {
    const failure = (await findBrowser(machine([]), noPackage).catch((error: unknown) => error)) as MachineFailure;
    expect(failure).toBeInstanceOf(MachineFailure);
    expect(failure).toMatchObject({ exitCode: 3, found: 'no browser to print with' });
    expect(failure.expected).toMatch(/Chrome, Chromium or Edge at one of \d+ usual places/);
    expect(failure.todo).toContain('npx puppeteer browsers install chrome-headless-shell');
  });

  test('the packaged one is for Linux on x64 only', async () => {
    const never = () => {
      throw new Error('looked for the package');
    };
    await expect(findBrowser(machine([], { arch: 'arm64' }), never)).rejects.toThrow('no browser to print with');
    await expect(findBrowser(machine([], { platform: 'darwin' }), never)).rejects.toThrow('no browser to print with');
  });
});

describe.skipIf(process.platform !== 'linux')('unpacking the packaged browser', () => {
  /** Stands for the package: like it, it reuses whatever it finds in the temporary folder. */
  const packageSaying = (folder: string, text: string) => {
    const entry = join(folder, `${text}.mjs`);
    writeFileSync(
      entry,
      `
      import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
      import { tmpdir } from 'node:os';
      if (!process.env.AWS_EXECUTION_ENV) throw new Error('its libraries would not be unpacked');
      export default { executablePath: async () => {
        const path = tmpdir() + '/chromium';
        if (!existsSync(path)) writeFileSync(path, ${JSON.stringify(text)});
        mkdirSync(tmpdir() + '/fonts');
        return path;
      } };`,
    );
    return entry;
  };

  test('a new version is never served by what an older one, or a stranger, left', async () => {
    const folder = scratch();
    const cache = join(folder, 'cache');
    mkdirSync(cache);
    vi.stubEnv('TMPDIR', folder);
    writeFileSync(join(folder, 'chromium'), 'a stranger');
    const [first, again, second] = [
      await unpackBundled({ entry: packageSaying(folder, 'one'), version: '1.0.0' }, cache),
      await unpackBundled({ entry: '/not/needed/again', version: '1.0.0' }, cache),
      await unpackBundled({ entry: packageSaying(folder, 'two'), version: '2.0.0' }, cache),
    ];
    expect([first, again, second].map(({ executable }) => readFileSync(executable, 'utf8'))).toEqual([
      'one',
      'one',
      'two',
    ]);
    expect(process.env['AWS_EXECUTION_ENV']).toBeUndefined();
    expect(first.env).toEqual({ LD_LIBRARY_PATH: `${cache}/chromium-1.0.0/al2023/lib` });
    expect(readdirSync(cache)).toEqual(['chromium-1.0.0', 'chromium-2.0.0']);
  });

  test('one that fails leaves nothing half unpacked', async () => {
    const folder = scratch();
    const entry = join(folder, 'broken.mjs');
    writeFileSync(
      entry,
      `import { writeFileSync } from 'node:fs'; writeFileSync(process.env.TMPDIR + '/chromium', 'half'); throw new Error('no space');`,
    );
    await expect(unpackBundled({ entry, version: '1.0.0' }, folder)).rejects.toThrow(
      /could not be unpacked[\s\S]*no space/,
    );
    expect(readdirSync(folder)).toEqual(['broken.mjs']);
  });
});

describe('a running browser', () => {
  test('tells its version, has a profile of its own, and leaves nothing when closed', async () => {
    const folder = scratch();
    vi.stubEnv('TMPDIR', folder);
    const running = await launchBrowser();
    expect(running.version).toMatch(/^(Headless)?(Chrome|Edg)\/\d+\./);
    expect(readdirSync(folder).some((name) => name.startsWith('gusset-browser-'))).toBe(true);
    const sandboxed = !running.browser.process()!.spawnargs.includes('--no-sandbox');
    expect(sandboxed).toBe(process.getuid?.() !== 0);
    await running.close();
    await running.close();
    expect(readdirSync(folder)).toEqual([]);
  });

  test.skipIf(process.platform !== 'linux')(
    'lays aside in its profile what it needs for a moment, where the path is not too long for a socket',
    async () => {
      const asideOf = async (folder: string) => {
        mkdirSync(folder, { recursive: true });
        vi.stubEnv('TMPDIR', folder);
        const { browser, close } = await launchBrowser();
        const [, aside] =
          /(?:^|\0)TMPDIR=([^\0]*)/.exec(readFileSync(`/proc/${browser.process()!.pid}/environ`, 'utf8')) ?? [];
        await close();
        return aside;
      };
      const folder = scratch();
      expect(await asideOf(folder)).toMatch(new RegExp(`^${folder}/gusset-browser-\\w+$`));
      const long = join(folder, 'a-folder-with-a-long-name');
      expect(await asideOf(long)).toBe(long);
    },
  );

  test.skipIf(process.platform === 'win32')('that does not start says so, and leaves nothing', async () => {
    const folder = scratch();
    vi.stubEnv('TMPDIR', folder);
    const fake = join(folder, 'fake');
    writeFileSync(fake, '#!/bin/sh\necho "No usable sandbox! Update your kernel" >&2\nexit 1\n');
    chmodSync(fake, 0o755);
    const failure = (await launchBrowser({ executable: fake, from: 'environment', env: {} }).catch(
      (error: unknown) => error,
    )) as MachineFailure;
    expect(failure).toBeInstanceOf(MachineFailure);
    expect(failure.found).toBe(`the browser ${fake} did not start: No usable sandbox! Update your kernel`);
    expect(failure.todo).toContain('GUSSET_BROWSER_SANDBOX=off');
    expect(readdirSync(folder)).toEqual(['fake']);
  });

  test('must be recent enough for page numbers in the margin', () => {
    expect(() => refuseOld('HeadlessChrome/130.0.6723.91', 'x')).toThrow(/Chromium 131 or later/);
    expect(() => refuseOld('something', 'x')).toThrow(MachineFailure);
    expect(() => refuseOld('HeadlessChrome/131.0.6778.69', 'x')).not.toThrow();
  });

  test.skipIf(process.platform !== 'linux').each(['SIGINT', 'SIGTERM'] as const)(
    'is gone with its profile after %s',
    async (signal) => {
      const folder = scratch();
      const child = runInChild(
        'print/launch.js',
        `
      process.env.TMPDIR = ${JSON.stringify(folder)};
      const { browser } = await launchBrowser();
      console.log(browser.process().pid);
      await new Promise((resolve) => setTimeout(resolve, 30_000));`,
        'launchBrowser',
      );
      const browser = await new Promise<number>((resolve) =>
        child.stdout!.once('data', (data) => resolve(Number(data))),
      );
      expect(existsSync(`/proc/${browser}`)).toBe(true);
      const ended = new Promise((resolve) => child.on('exit', (_code, by) => resolve(by)));
      child.kill(signal);
      expect(await ended).toBe(signal);
      await until(() => processesWith(folder).length === 0);
      expect(readdirSync(folder)).toEqual([]);
    },
  );
});

/** Processes whose command line names the folder. */
function processesWith(folder: string): string[] {
  return readdirSync('/proc').filter((name) => {
    try {
      return /^\d+$/.test(name) && readFileSync(`/proc/${name}/cmdline`, 'utf8').includes(`${folder}/gusset-browser`);
    } catch {
      return false;
    }
  });
}

test.skipIf(process.platform !== 'linux' || process.arch !== 'x64')('the optional package is there to be found', () => {
  expect(bundledPackage()?.version).toMatch(/^\d+\.\d+\.\d+$/);
});
