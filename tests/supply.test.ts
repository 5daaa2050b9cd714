import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** What the program is built from, read from the lock and from the packages as installed: no network is asked. */

interface Locked {
  version: string;
  integrity?: string;
  dev?: boolean;
  optional?: boolean;
  hasInstallScript?: boolean;
}
interface Installed {
  version: string;
  license?: string | { type: string };
  scripts?: Record<string, string>;
}
const json = <T>(path: string) => JSON.parse(readFileSync(path, 'utf8')) as T;
const root =
  json<Record<'dependencies' | 'devDependencies' | 'optionalDependencies', Record<string, string>>>('package.json');
const locked = Object.entries(json<{ packages: Record<string, Locked> }>('package-lock.json').packages).filter(
  ([path]) => path !== '',
);
const inUse = locked.filter(([, is]) => !is.dev);
const installed = (path: string) => json<Installed>(`${path}/package.json`);

/** Licences by their SPDX names, all approved by the Open Source Initiative (its list of licences, opensource.org). */
const approved = new Set([
  'MIT',
  'ISC',
  '0BSD',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'MPL-2.0',
  'LGPL-3.0-or-later',
  'Python-2.0',
]);

/** Install scripts that are there, and why none of them has to run. */
const scripts: Readonly<Record<string, string>> = {
  'node_modules/exifreader': 'makes a smaller copy of itself for who has asked for one in package.json; nobody has',
  'node_modules/puppeteer':
    'fetches a browser; `skipDownload` in package.json keeps it from that, and one that is installed is used',
};

describe('packages that the program needs in use', () => {
  it('have licences that are approved, each told by the package itself', () => {
    const there = inUse.filter(([path]) => existsSync(`${path}/package.json`));
    expect(there.length).toBeGreaterThan(150);
    const others = there
      .map(([path]) => [path, installed(path).license] as const)
      .map(([path, of]) => `${path}: ${typeof of === 'object' ? of.type : of}`)
      .filter((line) => !approved.has(line.split(': ')[1]!));
    expect(others).toEqual([]);
  });

  it('are all there, but for those of other systems', () => {
    expect(
      inUse.filter(([path, is]) => !is.optional && !existsSync(`${path}/package.json`)).map(([path]) => path),
    ).toEqual([]);
  });

  it('have no install scripts but the known ones, which need not run', () => {
    const withScripts = inUse
      .filter(
        ([path, is]) =>
          is.hasInstallScript ||
          (existsSync(`${path}/package.json`) &&
            ['preinstall', 'install', 'postinstall'].some((name) => installed(path).scripts?.[name])),
      )
      .map(([path]) => path);
    expect(withScripts.sort()).toEqual(Object.keys(scripts).sort());
    expect(json<{ puppeteer: { skipDownload: boolean } }>('package.json').puppeteer.skipDownload).toBe(true);
    expect(root).not.toHaveProperty('exifreader');
  });
});

describe('the lock', () => {
  it('holds every package by its exact version and by the digest of its contents', () => {
    expect(locked.filter(([, is]) => !/^sha512-/.test(is.integrity ?? '')).map(([path]) => path)).toEqual([]);
    const wanted = Object.entries({ ...root.dependencies, ...root.devDependencies, ...root.optionalDependencies });
    expect(
      wanted.filter(
        ([name, version]) => locked.find(([path]) => path === `node_modules/${name}`)?.[1].version !== version,
      ),
    ).toEqual([]);
  });

  it('is what is installed', () => {
    const other = locked
      .filter(([path]) => existsSync(`${path}/package.json`))
      .filter(([path, is]) => installed(path).version !== is.version);
    expect(other.map(([path]) => path)).toEqual([]);
  });
});
