import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { withLock } from '../../src/platform/lock.js';
import { findBrowser } from '../../src/print/browser.js';
import { until } from '../print/fixtures.js';
import { before, lying, nothingLost, oneMessage, place, print, run } from './process.js';

const linux = process.platform === 'linux';

describe.skipIf(!linux)('an output folder that cannot be', () => {
  it('because a file is in its way', async () => {
    const at = await place();
    const ended = await run(at, ['print', at.build, '--out', join(at.out, 'submission.pdf/inner')]).ended;
    expect(ended.code).toBe(2);
    expect(ended.err).toMatch(/found a file at .*submission\.pdf, expected .*; name another one/);
    await nothingLost(at);
  });

  it('because nobody may write there (all may, as root: the system is made to say it)', async () => {
    const at = await place();
    const denied =
      "throw Object.assign(new Error('EACCES: permission denied, open'), { code: 'EACCES', errno: -13, syscall: 'open' });";
    oneMessage(await run(at, print(at), before('fs.writeFileSync', /out\.lock/, denied)).ended);
    await nothingLost(at);
  });
});

describe.skipIf(!linux)('a browser', () => {
  const program = (at: { folder: string }, text: string) => {
    const file = join(at.folder, 'builds', 'browser');
    writeFileSync(file, `#!/bin/bash\n${text}\n`);
    chmodSync(file, 0o755);
    return file;
  };

  it('that is missing', async () => {
    const at = await place();
    const ended = await run(at, print(at), '', { PUPPETEER_EXECUTABLE_PATH: '/nowhere/chromium' }).ended;
    oneMessage(ended);
    expect(ended.err).toContain('there is no such file');
    await nothingLost(at);
  });

  it('that ends as soon as it begins', async () => {
    const at = await place();
    const ended = await run(at, print(at), '', {
      PUPPETEER_EXECUTABLE_PATH: program(at, 'echo "no such library" >&2; exit 127'),
    }).ended;
    oneMessage(ended);
    expect(ended.err).toContain('did not start: no such library');
    await nothingLost(at);
  });

  it('that has too little memory (a limit of the shell on its address space)', async () => {
    const at = await place();
    const { executable, env } = await findBrowser();
    const ended = await run(at, print(at), '', {
      PUPPETEER_EXECUTABLE_PATH: program(at, `ulimit -v 300000; exec '${executable}' "$@"`),
      ...env,
    }).ended;
    oneMessage(ended);
    expect(ended.err).toContain('the browser');
    await nothingLost(at);
  });
});

describe.skipIf(!linux)('two prints of one build at once', () => {
  it('the second is told of the first, and the first goes on to its end', async () => {
    const at = await place();
    const go = join(at.folder, 'cache', 'go');
    const waits = `{ const was = fsp.writeFile; fsp.writeFile = async (...a) => { while (/findings\\.json/.test(a[0]) && !fs.existsSync('${go}')) await new Promise((r) => setTimeout(r, 20)); return was(...a); }; }`;
    const first = run(at, print(at), waits);
    await until(() => existsSync(`${at.out}.lock`));
    const second = await run(at, print(at)).ended;
    oneMessage(second);
    expect(second.err).toContain(`another print of this build is running (process ${first.child.pid}`);
    expect(readFileSync(join(at.out, 'submission.pdf'), 'utf8')).toBe('the last good one');
    mkdirSync(join(at.folder, 'cache'), { recursive: true });
    writeFileSync(go, '');
    expect((await first.ended).code).toBe(0);
    expect(readFileSync(join(at.out, 'submission.pdf'), 'latin1')).toMatch(/^%PDF/);
  });
});

describe('a clock that jumps back', () => {
  it.skipIf(!linux)('by a day at every look disturbs no print, and is not what the document is dated by', async () => {
    const at = await place();
    const day = new Date('2026-03-20T12:00:00Z');
    for (const file of ['build.md', 'notes/010-floor.md', 'photos/weld.jpg', 'papers/certificate.pdf'])
      utimesSync(join(at.build, file), day, day);
    const back = `{ const Real = Date; let days = 0; const now = () => Real.now() - 86_400_000 * days++;
      globalThis.Date = class extends Real { constructor(...a) { if (a.length === 0) super(now()); else super(...a); } static now() { return now(); } }; }`;
    expect(await run(at, print(at), back).ended).toMatchObject({ code: 0, err: '' });
    expect(JSON.parse(readFileSync(join(at.out, 'manifest.json'), 'utf8')).date).toBe('2026-03-20');
    expect(lying(at)).toEqual([
      'out',
      'out/findings.json',
      'out/manifest.json',
      'out/submission.html',
      'out/submission.pdf',
      'temporary',
    ]);
  });

  it('does not make a lock of the future, which nobody can read, last for ever', async () => {
    const at = await place();
    const file = `${at.out}.lock`;
    writeFileSync(file, '');
    const tomorrow = new Date(Date.now() + 86_400_000);
    utimesSync(file, tomorrow, tomorrow);
    expect(await withLock(file, async () => 'taken over')).toBe('taken over');
  });
});

describe.skipIf(!linux)('a file that is saved while the document is made', () => {
  it.each([
    ['a note', 'notes/010-floor.md', 'fs.writeFileSync', /out\.lock/],
    ['a photo', 'photos/weld.jpg', 'fsp.readFile', /weld\.jpg/],
    ['a paper', 'papers/certificate.pdf', 'fsp.writeFile', /findings\.json/],
  ])('%s: nothing is printed of two states', async (_, path, name, matching) => {
    const at = await place();
    const file = join(at.build, path);
    const ended = await run(at, print(at), before(name, matching, `fs.appendFileSync('${file}', 'more');`)).ended;
    oneMessage(ended);
    expect(ended.err).toContain(`${path} was saved while the document was being made`);
    await nothingLost(at);
  });
});

describe.skipIf(!linux)('a command', () => {
  const shell = (at: Awaited<ReturnType<typeof place>>, script: string) =>
    spawnSync('bash', ['-c', script], {
      cwd: at.folder,
      encoding: 'utf8',
      env: { ...process.env, ...at.env, GUSSET: `${process.execPath} ${join(process.cwd(), 'dist/bundle/cli.js')}` },
    });
  it('is not waited for where git hangs', async () => {
    const at = await place();
    const { status, stderr } = shell(
      at,
      'mkdir bin; printf "#!/bin/sh\nexec sleep 60\n" > bin/git; chmod +x bin/git; PATH=$PWD/bin:$PATH GUSSET_GIT_SECONDS=0.5 $GUSSET history builds/t',
    );
    expect([status, stderr]).toEqual([3, expect.stringMatching(/`git \S+` did not end within 0.5 s[^]*to do: /)]);
  });
});
