import { homedir } from 'node:os';
import { join } from 'node:path';

/** What is costly to make is kept here between runs, by the content that it was made from. */
export function cacheDirectory(): string {
  // An empty variable is one that is not set.
  return process.env['GUSSET_CACHE'] || join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'gusset');
}
