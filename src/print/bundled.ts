import { execFile } from 'node:child_process';
import { existsSync, lstatSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { homedir, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { MachineFailure, wordsOf } from '../platform/failure.js';
import { onInterrupt } from '../platform/interrupt.js';

/** A browser that came with the packages, with the environment it needs to find its own libraries. */
export interface Bundled {
  executable: string;
  env: Record<string, string>;
}

const packageName = '@sparticuz/chromium';
const unpackScript = `console.log(await (await import(process.argv[1])).default.executablePath())`;

/** Entry file and version of the optional package, or undefined where it is not installed. */
export function bundledPackage(): { entry: string; version: string } | undefined {
  try {
    const main = createRequire(import.meta.url).resolve(packageName);
    const root = main.slice(0, main.lastIndexOf(join(packageName, 'build')) + packageName.length);
    const { version, module } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      version: string;
      module: string;
    };
    return { entry: join(root, module), version };
  } catch {
    return undefined;
  }
}

/**
 * Unpacks the browser of the optional package once a version, into a folder of our own, and returns it.
 * The package would take any /tmp/chromium that lies there, whole or not, of whatever version and owner; therefore it runs
 * in a child process with a temporary folder of its own, which is moved to its final name only when it is complete.
 * Throws MachineFailure if no folder can be written or the unpacking fails.
 */
export async function unpackBundled(bundled: { entry: string; version: string }, cache = ownCache()): Promise<Bundled> {
  const folder = join(cache, `chromium-${bundled.version}`);
  if (!existsSync(folder)) await unpackInto(folder, bundled.entry);
  return { executable: join(folder, 'chromium'), env: { LD_LIBRARY_PATH: join(folder, 'al2023', 'lib') } };
}

async function unpackInto(folder: string, entry: string): Promise<void> {
  const partial = mkdtempSync(`${folder}.partial-`);
  const remove = () => rmSync(partial, { recursive: true, force: true, maxRetries: 3 });
  const forget = onInterrupt(remove);
  try {
    const env = { ...process.env, TMPDIR: partial, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' };
    await promisify(execFile)(
      process.execPath,
      ['--input-type=module', '-e', unpackScript, pathToFileURL(entry).href],
      { env },
    );
    renameSync(partial, folder);
  } catch (cause) {
    remove();
    // Another process may have finished the same work first.
    if (!existsSync(folder)) {
      throw new MachineFailure({
        found: `the browser of the package ${packageName} could not be unpacked: ${wordsOf(cause)}`,
        expected: `about 210 MB of space, and that ${dirname(folder)} can be written`,
        todo: 'make space, or install Chrome, Chromium or Edge, or set PUPPETEER_EXECUTABLE_PATH to one',
        cause,
      });
    }
  } finally {
    forget();
  }
}

/** The first folder that is ours alone: nobody else may put a program there that we would run. */
function ownCache(): string {
  const candidates = [
    join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'gusset'),
    join(tmpdir(), `gusset-${process.getuid?.() ?? 0}`),
  ];
  for (const folder of candidates) {
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const state = lstatSync(folder);
      if (state.isDirectory() && state.uid === process.getuid?.() && (state.mode & 0o022) === 0) return folder;
    } catch {
      // Not writable: the next one.
    }
  }
  throw new MachineFailure({
    found: `no folder of our own could be made to unpack the browser into (tried ${candidates.join(' and ')})`,
    expected: 'one that belongs to this user and that nobody else may write',
    todo: 'set XDG_CACHE_HOME to such a folder, or PUPPETEER_EXECUTABLE_PATH to an installed browser',
  });
}
