import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** What one process took. */
export interface Ran {
  seconds: number;
  processor: number;
  megabytes: number;
}

const cli = fileURLToPath(new URL('../../dist/bundle/cli.js', import.meta.url));

/** Makes a process tell what it used when it ends; a browser that it starts is not counted. */
const meter = `data:text/javascript,${encodeURIComponent("import { writeSync } from 'node:fs'; process.on('exit', () => writeSync(3, JSON.stringify(process.resourceUsage())));")}`;

/** Runs the command in a folder, each time in a process of its own, and gives its time and peak memory. */
export const commandIn =
  (cwd: string, cache: string) =>
  (...args: string[]): Ran => {
    const before = process.hrtime.bigint();
    const ran = spawnSync(process.execPath, ['--import', meter, cli, ...args], {
      stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
      encoding: 'utf8',
      cwd,
      env: { ...process.env, GUSSET_CACHE: cache },
    });
    const seconds = Number(process.hrtime.bigint() - before) / 1e9;
    if (ran.status === null || ran.status > 1)
      throw new Error(`gusset ${args.join(' ')} ended with ${ran.status}: ${ran.stderr.slice(-500)}`);
    const used = JSON.parse(ran.output[3] ?? '{}') as { userCPUTime: number; systemCPUTime: number; maxRSS: number };
    return { seconds, processor: (used.userCPUTime + used.systemCPUTime) / 1e6, megabytes: used.maxRSS / 1024 };
  };

export const best = (runs: readonly Ran[]): Ran => runs.reduce((a, b) => (b.seconds < a.seconds ? b : a));

export const shown = (r: Ran) =>
  `${r.seconds.toFixed(2)} s (${Number.isFinite(r.processor) ? `${r.processor.toFixed(2)} s of processor, peak ${r.megabytes.toFixed(0)} MB` : 'processor time not measured'})`;
