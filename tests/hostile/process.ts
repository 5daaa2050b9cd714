import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PDFDocument } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { expect, onTestFinished } from 'vitest';
import { manifestOf } from '../platform/written.js';
import { until } from '../print/fixtures.js';
import { buildFile, folderWith } from '../project/scratch.js';

const cli = fileURLToPath(new URL('../../dist/bundle/cli.js', import.meta.url));

export interface Place {
  folder: string;
  build: string;
  out: string;
  /** Holds all that the process keeps for a while. */
  temporary: string;
  env: NodeJS.ProcessEnv;
}

const note = `---
kind: body-structure
title: Floor let in
structure-cut: no
pieces:
  - { id: floor, role: bracket, joined-to: 1.20 mm, now: { section: FL 100x3, steel: S355, wall: 3.0 mm } }
photos:
  - { file: weld.jpg, shows: The weld bare }
papers:
  - { file: certificate.pdf, shows: certificate of the sheet }
---

Let in.
`;

const lastGood = 'the last good one';

async function paper(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage([100, 100]).drawText('Invented', { size: 8 });
  return pdf.save();
}

/** A small build with a photo and a paper, and a last good output that nothing may harm. */
export async function place(): Promise<Place> {
  const photo = await sharp({ create: { width: 320, height: 240, channels: 3, background: '#803020' } })
    .jpeg()
    .toBuffer();
  const folder = folderWith({
    'builds/t/build.md': buildFile,
    'builds/t/notes/010-floor.md': note,
    'builds/t/photos/weld.jpg': photo,
    'builds/t/papers/certificate.pdf': await paper(),
    'out/submission.pdf': lastGood,
    'out/manifest.json': manifestOf({ 'submission.pdf': lastGood }),
  });
  const temporary = join(folder, 'temporary');
  mkdirSync(temporary);
  return {
    folder,
    build: join(folder, 'builds/t'),
    out: join(folder, 'out'),
    temporary,
    env: { TMPDIR: temporary, GUSSET_CACHE: join(folder, 'cache') },
  };
}

export interface Ended {
  code: number | null;
  signal: NodeJS.Signals | null;
  out: string;
  err: string;
}

/**
 * Runs the program as a user does. `hook` is code that runs in the process before it, with `fs`, `fsp` (whose functions it
 * may exchange) and `env` at hand: with it a test stops the program, or lets the disk fail, at the very step it means.
 */
export function run(at: Place, args: readonly string[], hook = '', env: NodeJS.ProcessEnv = {}) {
  const code = `import fs from 'node:fs'; import fsp from 'node:fs/promises'; import { syncBuiltinESMExports } from 'node:module'; const env = process.env;\n${hook}\nsyncBuiltinESMExports();`;
  const child = spawn(
    process.execPath,
    [...(hook === '' ? [] : ['--import', `data:text/javascript,${encodeURIComponent(code)}`]), cli, ...args],
    {
      cwd: at.folder,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...at.env, ...env },
    },
  );
  onTestFinished(() => void child.kill('SIGKILL'));
  let [out, err] = ['', ''];
  child.stdout.on('data', (data) => (out += data));
  child.stderr.on('data', (data) => (err += data));
  const ended = new Promise<Ended>((resolve) =>
    child.on('close', (code, signal) => resolve({ code, signal, out, err })),
  );
  return { child, ended };
}

/** Before the nth call of a function of the file system whose arguments match, something is done instead or first. */
export const before = (name: string, matching: RegExp, what: string): string => {
  const [module, key] = name.split('.');
  return `{ const was = ${module}.${key}; ${module}.${key} = (...a) => { if (a.slice(0, 2).some((x) => typeof x === 'string' && ${matching}.test(x))) { ${what} } return was(...a); }; }`;
};

/** What the disk says when it is full. */
export const full =
  "throw Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC', errno: -28, syscall: 'write' });";

/** Processes that were started, by whatever way, with the place's folder for temporary files. */
export const strays = (at: Place): string[] =>
  readdirSync('/proc').filter((pid) => {
    try {
      return (
        /^\d+$/.test(pid) &&
        readFileSync(`/proc/${pid}/environ`, 'utf8').includes(`TMPDIR=${at.temporary}`) &&
        !/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'))
      );
    } catch {
      return false;
    }
  });

/** All that lies in the place but the build and what is kept between prints. */
export const lying = (at: Place): string[] =>
  (readdirSync(at.folder, { recursive: true }) as string[]).filter((name) => !/^(?:builds|cache)\b/.test(name)).sort();

export const print = (at: Place, ...more: string[]): string[] => ['print', at.build, '--out', at.out, ...more];

/** The last good output is there as it was, with nothing beside it and no process left. */
export async function nothingLost(at: Place): Promise<void> {
  await until(() => strays(at).length === 0);
  expect(readFileSync(join(at.out, 'submission.pdf'), 'utf8')).toBe(lastGood);
  expect(lying(at)).toEqual(['out', 'out/manifest.json', 'out/submission.pdf', 'temporary']);
}

/** A failure of the machine in one message: what was found, what was expected, what to do; no trace. */
export function oneMessage({ code, out, err }: Ended): void {
  expect(err).not.toMatch(/^\s+at .+:\d+:\d+/m);
  expect(err.match(/expected/g), err).toHaveLength(1);
  expect(err).toContain('to do: ');
  expect(out).toBe('');
  expect(code).toBe(3);
}
