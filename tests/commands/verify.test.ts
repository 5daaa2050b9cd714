import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { sha256Of } from '../../src/app/verify/document.js';
import { type Manifest, manifestText } from '../../src/history/manifest.js';
import { type Forgery, forge } from '../app/verify/forge.js';
import { buildFile, floorNote } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { configure, has, jo, temporary } from '../history/throwaway.js';
import { gusset } from './run.js';

const note = 'builds/t/notes/010-böden.md';
const step = (day: string, files: NonNullable<Step['files']>): Step => ({
  by: { ...jo, name: '田中 Jo' },
  on: `${day}T18:00:00+10:00`,
  says: `Day ${day}`,
  files,
});
const git = (directory: string, ...args: string[]) =>
  execFileSync('git', args, { cwd: directory, stdio: 'pipe' }).toString().trim();
const signs = has('ssh-keygen', '-?');

const keys = temporary();
const directory = temporary();
const out = join(temporary(), 't');
let bytes: Buffer;
const settings = () => (signs ? `signingkey = ${keys}/jo.pub\n[gpg]\nformat = ssh\n` : '');
/** The list of signers of whoever verifies, which is none of the repository's settings. */
function trust(list: string): void {
  writeFileSync(join(keys, 'own settings'), `[gpg "ssh"]\nallowedSignersFile = ${keys}/${list}\n`);
  process.env['GIT_CONFIG_GLOBAL'] = join(keys, 'own settings');
}

beforeAll(async () => {
  if (signs) {
    for (const name of ['jo', 'mika'])
      execFileSync('ssh-keygen', ['-q', '-t', 'ed25519', '-N', '', '-C', name, '-f', join(keys, name)]);
    const publicKey = (name: string) =>
      readFileSync(join(keys, `${name}.pub`), 'utf8')
        .split(' ')
        .slice(0, 2)
        .join(' ');
    writeFileSync(join(keys, 'allowed'), `${jo.email} ${publicKey('jo')}\n`);
    writeFileSync(join(keys, 'others'), `mika@workshop.example ${publicKey('mika')}\n`);
  }
  const photo = await sharp({ create: { width: 300, height: 200, channels: 3, background: '#777' } })
    .jpeg()
    .toBuffer();
  makeHistory(directory, [
    step('2026-03-11', {
      'builds/t/build.md': buildFile,
      [note]: floorNote({ more: 'photos:\n  - { file: edge.jpg, shows: The cut edge, stage: cut }\n' }),
      'builds/t/photos/edge.jpg': photo,
    }),
    step('2026-03-12', {
      [note]: floorNote({
        wall: '2.50 mm',
        more: 'photos:\n  - { file: edge.jpg, shows: The cut edge, stage: cut }\n',
      }),
    }),
  ]);
  configure(directory, settings());
  trust('allowed');
  expect(
    await gusset(
      'issue',
      `${directory}/builds/t`,
      '--with-open',
      '--out',
      out,
      ...(signs ? ['--require-signature'] : []),
    ),
  ).toMatchObject({ code: 0, err: '' });
  bytes = readFileSync(join(out, 'submission.pdf'));
});

interface Told {
  code: number;
  checks: Record<string, { state: string; says: string; list: string[] }>;
}
async function verify(path: string, ...more: string[]): Promise<Told> {
  const { code, out: json } = await gusset(
    'verify',
    path,
    '--format',
    'json',
    ...(more.length > 0 ? more : ['--repository', directory]),
  );
  const data = JSON.parse(json) as { checks: { name: string; state: string; says: string; list: string[] }[] };
  return { code, checks: Object.fromEntries(data.checks.map((c) => [c.name, c])) };
}
const states = ({ checks }: Told) => Object.fromEntries(Object.entries(checks).map(([name, c]) => [name, c.state]));
function saved(content: Uint8Array): string {
  const file = join(temporary(), 'by mail.pdf');
  writeFileSync(file, content);
  return file;
}
const forged = async (how: Forgery) => saved(await forge(bytes, how));

describe('a document that was issued', { timeout: 300_000 }, () => {
  it('matches in everything, wherever it lies', async () => {
    const told = await verify(out);
    expect(states(told)).toEqual({
      file: 'matches',
      attachments: 'matches',
      pages: 'matches',
      folder: 'matches',
      inputs: 'matches',
      tag: 'matches',
      signature: signs ? 'matches' : 'none',
      findings: 'matches',
      print: 'matches',
    });
    expect(told.checks['print']!.says).toContain('the same to the last byte');
    expect(told.code).toBe(0);
  });

  it('says without a repository what it could not check, and matches by itself if that is asked', async () => {
    const file = saved(bytes);
    expect(states(await verify(file, '--repository', temporary()))).toEqual({
      file: 'matches',
      attachments: 'matches',
      pages: 'matches',
      repository: 'unchecked',
    });
    const { code, out: text } = await gusset('verify', file, '--repository', temporary());
    expect(code).toBe(1);
    expect(text).toMatch(
      /\? repository: unchecked \(inputs, findings, print, tag and signature could not be compared[^]*matches in all that was checked; unchecked:\s+repository/,
    );
    expect((await gusset('verify', file, '--alone')).code).toBe(0);
    const other = temporary();
    makeHistory(other, [step('2026-03-11', { a: 'b' })]);
    expect((await verify(file, '--repository', other)).checks['repository']!.says).toContain(
      'does not hold the commit',
    );
  });
});

describe('an altered document', { timeout: 300_000 }, () => {
  it.each([0.1, 0.5, 0.9, 0.999])('is found by one flipped byte, at %d of the file', async (at) => {
    const flipped = Buffer.from(bytes);
    flipped[Math.floor(bytes.length * at)]! ^= 4;
    const { code, checks } = await verify(saved(flipped), '--alone');
    expect(code).toBe(1);
    expect(checks['file']!.state).toBe('differs');
  });

  it('names the page and the attachment where its own digests were left', async () => {
    const told = await verify(
      await forged({ careless: true, page: swapDigit, attached: { 'findings.json': '{}' } }),
      '--alone',
    );
    expect(told.checks['pages']!.list).toEqual([
      expect.stringMatching(/^page \d+ shows something else than was printed$/),
    ]);
    expect(told.checks['attachments']!.list).toEqual(['findings.json is not the file that was attached']);
  });

  it('is found by printing again where all its digests were put right', async () => {
    const file = await forged({ page: swapDigit });
    expect(states(await verify(file, '--alone'))).toEqual({
      file: 'matches',
      attachments: 'matches',
      pages: 'matches',
      repository: 'none',
    });
    const told = await verify(file);
    expect(told.code).toBe(1);
    expect(states(told)).toMatchObject({ inputs: 'matches', findings: 'matches', print: 'differs', tag: 'differs' });
    expect(told.checks['print']!.list[0]).toMatch(/^page \d+ says “.*”, printed again it says “.*”$/);
    expect(told.checks['tag']!.list).toEqual([expect.stringContaining('not the file that was issued')]);
  });

  it('is found by the commit where a note inside it was altered, and by examining again where a finding was', async () => {
    const findings = readFileSync(join(out, 'findings.json'), 'utf8').replace(
      '"outcome": "not-measured"',
      '"outcome": "conforms"',
    );
    const told = await verify(
      await forged({ attached: { 'findings.json': findings, [attachedNote()]: floorNote({ wall: '2.90 mm' }) } }),
    );
    expect(told.checks['attachments']!.state).toBe('matches');
    expect(told.checks['inputs']!.list).toEqual(['notes/010-böden.md has other contents in the commit']);
    expect(told.checks['findings']!.list).toEqual([
      expect.stringMatching(/^\S+ is conforms in the document; examined again it is not-measured/),
    ]);
  });

  it('cannot take the letter or the commit of another', async () => {
    const told = await verify(await forged({ manifest: (m) => ({ ...m, issue: 'B' }) }));
    expect(told.checks['tag']!.list).toContain('it is not the tag of issue B of t');
    const older = git(directory, 'rev-parse', 'HEAD~1');
    const moved = await verify(await forged({ manifest: (m) => ({ ...m, commit: older }) }));
    expect(moved.checks['tag']!.list).toContainEqual(
      expect.stringMatching(/^it stands on [0-9a-f]{12}, the document names/),
    );
    expect(moved.checks['inputs']!.list).toEqual(['notes/010-böden.md has other contents in the commit']);
  });

  it('leads nowhere outside the folder that it is examined in', async () => {
    for (const build of ['../../x', '..', 'a/b', '']) {
      const { checks } = await verify(await forged({ manifest: (m) => ({ ...m, build }) }));
      expect(checks['file']!.says).toContain('the attached manifest.json cannot be read (build: ');
    }
  });
});

describe('files beside the document', { timeout: 60_000 }, () => {
  const beside = (change: (folder: string) => void): Promise<Told> => {
    const folder = join(temporary(), 't');
    cpSync(out, folder, { recursive: true });
    change(folder);
    return verify(folder, '--alone');
  };
  const edit = (folder: string, name: string, from: string | RegExp, to: string) =>
    writeFileSync(join(folder, name), readFileSync(join(folder, name), 'utf8').replace(from, to));

  it('are told when the manifest was edited by hand or an output replaced', async () => {
    expect(
      (await beside((f) => edit(f, 'manifest.json', '"issue": "A"', '"issue": "B"'))).checks['folder']!.list,
    ).toEqual(['manifest.json says otherwise than the one inside the PDF: issue (“B” and “A”)']);
    expect(
      (
        await beside((f) =>
          edit(
            f,
            'manifest.json',
            /"path": "notes\/010-böden.md",\s*"bytes": \d+/,
            '"path": "notes/010-böden.md", "bytes": 1',
          ),
        )
      ).checks['folder']!.list,
    ).toEqual(['manifest.json says otherwise than the one inside the PDF: inputs (notes/010-böden.md)']);
    expect((await beside((f) => edit(f, 'submission.html', '2.50 mm', '2.40 mm'))).checks['folder']!.list).toEqual([
      'submission.html is not the file that was written',
    ]);
    expect((await beside((f) => writeFileSync(join(f, 'manifest.json'), '{'))).checks['folder']!.list).toEqual([
      'manifest.json cannot be read (it is not JSON)',
    ]);
    expect((await beside(() => undefined)).checks['folder']!.state).toBe('matches');
  });

  it('are told by the tag when page and manifest were altered alike, and left open without it', async () => {
    const folder = join(temporary(), 't');
    cpSync(out, folder, { recursive: true });
    edit(folder, 'submission.html', '2.50 mm', '2.40 mm');
    const page = readFileSync(join(folder, 'submission.html'));
    const listed = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as Manifest;
    const outputs = listed.outputs!.map((o) => (o.path === 'submission.html' ? { ...o, sha256: sha256Of(page) } : o));
    writeFileSync(join(folder, 'manifest.json'), manifestText({ ...listed, outputs }));
    const alone = await verify(folder, '--alone');
    expect([alone.code, states(alone)]).toEqual([
      1,
      {
        file: 'matches',
        attachments: 'matches',
        pages: 'matches',
        folder: 'matches',
        html: 'unchecked',
        repository: 'none',
      },
    ]);
    const told = await verify(folder);
    expect(told.checks['folder']!.list).toEqual(['manifest.json is not the one that the tag names']);
    expect(told.checks['html']).toMatchObject({ state: 'differs', says: expect.stringContaining('printing it again') });
    // The document by itself is what it was.
    expect((await verify(join(folder, 'submission.pdf'), '--alone')).code).toBe(0);
  });

  it('are compared with a new print where they are of a draft', async () => {
    const draft = join(temporary(), 'draft');
    git(directory, 'commit', '--quiet', '--allow-empty', '--message', 'Another day');
    try {
      expect((await gusset('print', `${directory}/builds/t`, '--out', draft)).code).toBe(0);
      const whole = await verify(draft);
      expect(states(whole)).toMatchObject({ folder: 'matches', tag: 'none', print: 'matches', html: 'matches' });
      rmSync(join(draft, 'manifest.json'));
      edit(draft, 'submission.html', '2.50 mm', '2.40 mm');
      const told = await verify(draft);
      expect(states(told)).toMatchObject({ folder: 'matches', print: 'matches', html: 'differs' });
      expect(told.code).toBe(1);
    } finally {
      git(directory, 'reset', '--quiet', '--hard', 'HEAD~1');
    }
  });

  it('that are no plain files are not read', async () => {
    const folder = join(temporary(), 't');
    cpSync(out, folder, { recursive: true });
    rmSync(join(folder, 'submission.html'));
    symlinkSync(join(out, 'submission.html'), join(folder, 'submission.html'));
    rmSync(join(folder, 'findings.json'));
    execFileSync('mkfifo', [join(folder, 'findings.json')]);
    expect((await verify(folder, '--alone')).checks['folder']!.list).toEqual([
      'findings.json is not there',
      'submission.html is not there',
    ]);
  });
});

describe('what cannot be verified', { timeout: 60_000 }, () => {
  it('is said in words', async () => {
    expect((await verify(saved(Buffer.from('no PDF')), '--alone')).checks['file']!.says).toContain(
      'it cannot be read as a PDF',
    );
    const { PDFDocument } = await import('@cantoo/pdf-lib');
    const other = await PDFDocument.create();
    other.addPage();
    expect((await verify(saved(await other.save()), '--alone')).checks['file']!.says).toContain(
      'was not printed by Gusset',
    );
    expect(await gusset('verify', `${out}/nothing.pdf`)).toMatchObject({
      code: 2,
      err: expect.stringContaining('found nothing at'),
    });
    mkdirSync(join(keys, 'empty'));
    expect(await gusset('verify', join(keys, 'empty'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('found 0 PDF files'),
    });
    // What is no plain file is not read: it may have no end, or wait for somebody to write.
    const pipe = join(keys, 'empty', 'a.pdf');
    execFileSync('mkfifo', [pipe]);
    mkdirSync(join(keys, 'empty', 'b.pdf'));
    symlinkSync('/dev/zero', join(keys, 'empty', 'c.pdf'));
    for (const [path, says] of [
      [join(keys, 'empty'), 'found 0 PDF files'],
      [pipe, 'no plain file'],
      [join(keys, 'empty', 'c.pdf'), 'no plain file'],
    ] as const)
      expect(await gusset('verify', path, '--alone')).toMatchObject({ code: 2, err: expect.stringContaining(says) });
  });
});

describe('the tag', { timeout: 300_000 }, () => {
  const clone = (): string => {
    const copy = temporary();
    execFileSync('git', ['clone', '--quiet', '--mirror', directory, `${copy}/.git`], { stdio: 'pipe' });
    configure(copy, settings());
    git(copy, 'reset', '--quiet', '--hard');
    return copy;
  };
  const tagged = async (change: (copy: string) => void) => {
    const copy = clone();
    change(copy);
    const { checks } = await verify(saved(bytes), '--repository', copy);
    return [checks['tag']!, checks['signature'], checks['print']!] as const;
  };

  it('that was moved to an amended commit does not vouch', async () => {
    const [tag] = await tagged((copy) => {
      git(copy, 'commit', '--quiet', '--amend', '--message', 'Another history');
      git(copy, 'tag', '--annotate', '--no-sign', '--force', '--message', 'x', 't/issue-A');
    });
    expect(tag.list).toEqual([expect.stringMatching(/^it stands on /)]);
  });

  it('that was not fetched, or is a bare name, is said', async () => {
    expect((await tagged((copy) => git(copy, 'tag', '--delete', 't/issue-A')))[0]).toMatchObject({
      state: 'unchecked',
      says: expect.stringContaining('fetch the tags'),
    });
    expect((await tagged((copy) => git(copy, 'tag', '--no-sign', '--force', 't/issue-A', 'HEAD')))[0].list).toEqual([
      expect.stringContaining('bare name'),
    ]);
  });

  it.skipIf(!signs)('is not believed by a key that is not allowed, nor without the signature it had', async () => {
    trust('others');
    const [tag, signature, print] = await tagged(() => {}).finally(() => trust('allowed'));
    expect([tag.state, signature!.state, print.state]).toEqual(['matches', 'differs', 'matches']);
    expect(signature!.says).toContain('not on the list of allowed signers');
    const [, none, printed] = await tagged((copy) => {
      const message = git(
        copy,
        'for-each-ref',
        '--format=%(contents:subject)%0a%0a%(contents:body)',
        'refs/tags/t/issue-A',
      ).replace(/-----BEGIN[^]*/, '');
      git(copy, 'tag', '--annotate', '--no-sign', '--force', '--message', message, 't/issue-A', 'HEAD');
    });
    expect(none).toMatchObject({
      state: 'differs',
      says: expect.stringContaining('the document says that its tag is signed'),
    });
    expect(printed.state).toBe('differs');
  });
});

/** Swaps two digits of one run of glyphs on a page that shows the wall, as the simplest forgery of a figure. */
function swapDigit(content: string): string | undefined {
  const found = /<(\w{4})> Tj\n(\d+(?:\.\d+)? 0 Td )<(\w{4})> Tj/g;
  for (const match of content.matchAll(found)) {
    const [whole, one, move, other] = match;
    if (one !== other) return content.replace(whole, `<${other}> Tj\n${move}<${one}> Tj`);
  }
  return undefined;
}

function attachedNote(): string {
  const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8')) as {
    attachments: { path: string; of?: string }[];
  };
  return manifest.attachments.find((a) => a.of === 'notes/010-böden.md')!.path;
}
