import { homedir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { cacheDirectory } from '../../src/platform/cache.js';

afterEach(() => vi.unstubAllEnvs());

// That an empty XDG_CACHE_HOME is one that is not set: XDG Base Directory Specification 0.8.
it.each([
  ['/a', '/b', '/a'],
  ['', '/b', join('/b', 'gusset')],
  ['', '', join(homedir(), '.cache', 'gusset')],
])('lies where %j and %j say, and never in the working folder', (own, xdg, at) => {
  vi.stubEnv('GUSSET_CACHE', own);
  vi.stubEnv('XDG_CACHE_HOME', xdg);
  expect(cacheDirectory()).toBe(at);
});
