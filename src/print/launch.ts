import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import puppeteer, { type Browser } from 'puppeteer';
import { MachineFailure, wordsOf } from '../platform/failure.js';
import { fontsDirectory } from '../platform/fonts.js';
import { onInterrupt } from '../platform/interrupt.js';
import { remove } from '../platform/remove.js';
import { type FoundBrowser, findBrowser } from './browser.js';

/** A running browser. `version` is what the browser says of itself, such as `HeadlessChrome/147.0.7727.0`. */
export interface RunningBrowser {
  browser: Browser;
  version: string;
  /** Ends the browser and removes its folder; calling it twice does no harm. */
  close: () => Promise<void>;
}

/** Page margin boxes (running heads, page n of N) came with this version. */
const oldestMajor = 131;

/**
 * Starts the browser without a window, with a new empty profile and no network of its own (at most this machine's own
 * address, for trying the preview). Interrupting this process, or its
 * end, ends the browser and removes the profile. Throws MachineFailure if it does not start or is too old.
 */
export async function launchBrowser(
  found?: FoundBrowser,
  reach: 'nothing' | 'loopback' = 'nothing',
): Promise<RunningBrowser> {
  const program = found ?? (await findBrowser());
  const profile = mkdtempSync(join(tmpdir(), 'gusset-browser-'));
  const kill = new AbortController();
  const removeProfile = () => remove(profile);
  const forget = onInterrupt(() => {
    kill.abort('interrupted');
    removeProfile();
  });
  const clear = () => {
    forget();
    removeProfile();
  };
  let browser: Browser | undefined;
  try {
    writeFileSync(join(profile, 'fonts.conf'), fontConfig(profile));
    browser = await puppeteer.launch({
      executablePath: program.executable,
      headless: /headless[-_]shell/.test(basename(program.executable)) || program.from === 'package' ? 'shell' : true,
      userDataDir: profile,
      pipe: true,
      signal: kill.signal,
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
      env: environmentOf(program, profile),
      args: browserArguments(reach),
    });
    const version = await browser.version();
    refuseOld(version, program.executable);
    return { browser, version, close: () => closeBrowser(browser as Browser).finally(clear) };
  } catch (cause) {
    if (browser) await closeBrowser(browser);
    const failure = cause instanceof MachineFailure ? cause : didNotStart(program, profile, cause);
    clear();
    throw failure;
  }
}

/** On Linux the fonts that happen to be installed are kept from it, and what it lays aside for a moment goes with its profile. */
const environmentOf = ({ env }: FoundBrowser, profile: string): NodeJS.ProcessEnv => ({
  ...process.env,
  ...env,
  FONTCONFIG_FILE: join(profile, 'fonts.conf'),
  // Its sockets lie there too, and the system takes no longer paths for one than 104 characters.
  ...(profile.length < 60 ? { TMPDIR: profile } : {}),
});

/** A browser that finds no font at all does not load web fonts either: `fallback.ttf` is there to be found, and not for use. */
const fontConfig = (profile: string): string => {
  const folders = [
    ['dir', fontsDirectory],
    ['cachedir', profile],
  ].map(([tag, path = '']) => `<${tag}>${path.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</${tag}>`);
  return `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig>${folders.join('')}</fontconfig>\n`;
};

function browserArguments(reach: 'nothing' | 'loopback' = 'nothing'): string[] {
  const resolver = `MAP * ~NOTFOUND${reach === 'loopback' ? ', EXCLUDE 127.0.0.1' : ''}`;
  const quiet = [
    '--no-pings',
    '--disable-component-update',
    '--disable-domain-reliability',
    '--disable-gpu',
    `--host-resolver-rules=${resolver}`,
  ];
  // As root the browser refuses to start in its sandbox; everybody else keeps it, unless told not to.
  const unsandboxed = process.getuid?.() === 0 || process.env['GUSSET_BROWSER_SANDBOX'] === 'off';
  return unsandboxed ? [...quiet, '--no-sandbox'] : quiet;
}

async function closeBrowser(browser: Browser): Promise<void> {
  try {
    await browser.close();
  } catch {
    browser.process()?.kill('SIGKILL');
  }
}

/** Throws MachineFailure for a browser too old to print what the documents need. */
export function refuseOld(version: string, executable: string): void {
  const major = Number(/\/(\d+)\./.exec(version)?.[1]);
  if (major >= oldestMajor) return;
  throw new MachineFailure({
    found: `${executable} is ${version}`,
    expected: `a browser built on Chromium ${oldestMajor} or later, which can print page numbers in the margin`,
    todo: 'update it, or set PUPPETEER_EXECUTABLE_PATH to a newer one',
  });
}

function didNotStart(program: FoundBrowser, profile: string, cause: unknown): MachineFailure {
  const complaint = complaintOf(program, profile) ?? wordsOf(cause);
  const sandbox = /sandbox/i.test(complaint);
  return new MachineFailure({
    found: `the browser ${program.executable} did not start: ${complaint}`,
    expected: sandbox ? 'a system that lets the browser build its sandbox' : 'a working Chrome, Chromium or Edge',
    todo: sandbox
      ? 'allow unprivileged user namespaces, or, in a container that you trust, set GUSSET_BROWSER_SANDBOX=off'
      : 'put right what it complains of, or set PUPPETEER_EXECUTABLE_PATH to another browser',
    cause,
  });
}

/** What the browser says when it is started once more with its words in view: over the pipe they are lost. */
function complaintOf(program: FoundBrowser, profile: string): string | undefined {
  const args = [...browserArguments(), '--headless', `--user-data-dir=${profile}`, '--dump-dom', 'about:blank'];
  const { stderr, error } = spawnSync(program.executable, args, {
    env: environmentOf(program, profile),
    encoding: 'utf8',
    timeout: 10_000,
    killSignal: 'SIGKILL',
  });
  const lines = (error?.message ?? stderr).split('\n').filter((line) => line.trim() !== '');
  return lines.length === 0 ? undefined : lines.slice(0, 3).join(' ');
}
