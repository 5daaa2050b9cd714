import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { vouchedBy } from '../../../src/history/tag-message.js';
import { tool } from '../../../src/platform/tool.js';
import { gusset } from '../../commands/run.js';
import { replaceLoose, swapInIndex } from '../../history/forge-objects.js';
import { configure, temporary } from '../../history/throwaway.js';
import { type Forgery, forge } from './forge.js';

/*
 * Documents that version 0.1.0 issued, as it stood at commit 3f9d347, and the repository that they were issued from.
 *
 * `landed/tray.bundle` holds a made-up build of one note and one picture in two commits (2026-03-12 and 2026-03-19, 18:00
 * +10:00, by Jo Okoro, invented) and the tags `tray/issue-A` and `tray/issue-B`; between them the width of the bracket was
 * measured again. After each commit that version gave `gusset issue builds/tray --with-open --photos mail`, with
 * HeadlessChrome/147.0.7727.0; `landed/issue-A.pdf` and `landed/issue-B.pdf` are what it printed. They cannot be made anew by
 * another version, and are never replaced.
 */
const landed = fileURLToPath(new URL('landed/', import.meta.url));
const documents = { A: readFileSync(`${landed}issue-A.pdf`), B: readFileSync(`${landed}issue-B.pdf`) };
const letters = ['A', 'B'] as const;

let repository: string;
beforeAll(() => {
  repository = temporary();
  execFileSync('git', ['clone', '--quiet', '--mirror', `${landed}tray.bundle`, `${repository}/.git`], {
    stdio: 'pipe',
  });
  configure(repository, '');
  execFileSync('git', ['reset', '--quiet', '--hard', 'main'], { cwd: repository });
});

interface Told {
  code: number;
  checks: Record<string, { state: string; says: string; list: string[] }>;
}
async function verify(bytes: Uint8Array, ...more: string[]): Promise<Told> {
  const file = saved(bytes);
  const where = more.length > 0 ? more : ['--repository', repository];
  const { code, out } = await gusset('verify', file, '--format', 'json', ...where);
  const { checks } = JSON.parse(out) as { checks: { name: string; state: string; says: string; list: string[] }[] };
  return { code, checks: Object.fromEntries(checks.map((c) => [c.name, c])) };
}
function saved(bytes: Uint8Array): string {
  const file = join(temporary(), 'submission.pdf');
  writeFileSync(file, bytes);
  return file;
}
const states = ({ checks }: Told) => Object.fromEntries(Object.entries(checks).map(([name, c]) => [name, c.state]));

/** Everything of a document that was not touched. */
const untouched = {
  file: 'matches',
  attachments: 'matches',
  pages: 'matches',
  inputs: 'matches',
  tag: 'matches',
  signature: 'none',
  findings: 'unchecked',
  print: 'unchecked',
};

describe.each(letters)('issue %s of the landed version', (letter) => {
  const bytes = documents[letter];

  it('matches its tagged commit by all its digests; its print is unchecked', async () => {
    const told = await verify(bytes);
    expect(states(told)).toEqual(untouched);
    expect(told.checks['print']!.says).toMatch(/^printed by version 0\.1\.0; this is /);
    expect(told.checks['findings']!.says).toBe(told.checks['print']!.says);
    // What is unchecked is no pass (exit code 1), and nothing is said against the document.
    expect(told.code).toBe(1);
    const { out } = await gusset('verify', saved(bytes), '--repository', repository);
    expect(out.replace(/\s+/g, ' ')).toContain('? print: unchecked (printed by version 0.1.0; this is ');
    expect(out.replace(/\s+/g, ' ')).toContain('matches in all that was checked; unchecked: findings, print.');
    expect(out).not.toMatch(/altered|does NOT match|✗/);
  });

  it('matches alone, with exit code 0: then nothing else was asked for', async () => {
    const { code, checks } = await verify(bytes, '--alone');
    expect(code).toBe(0);
    expect(Object.values(checks).map((c) => c.state)).toEqual(['matches', 'matches', 'matches', 'none']);
  });

  it.each([0.02, 0.3, 0.6, 0.9, 0.999])('is told as altered by one flipped byte, at %d of the file', async (at) => {
    const flipped = Buffer.from(bytes);
    flipped[Math.floor(bytes.length * at)]! ^= 1;
    const { code, checks } = await verify(flipped);
    expect(code).toBe(1);
    expect(checks['file']!.state).toBe('differs');
    if ('tag' in checks) expect(checks['tag']!.state).toBe('differs');
  });
});

describe('a document of another version that was altered with care', () => {
  const altered = async (how: Forgery) => verify(await forge(documents.B, how));
  const digit = (content: string): string | undefined => {
    const [whole, one, move, other] =
      [...content.matchAll(/<(\w{4})> Tj\n(\d+(?:\.\d+)? 0 Td )<(\w{4})> Tj/g)].find((m) => m[1] !== m[3]) ?? [];
    return whole && content.replace(whole, `<${other}> Tj\n${move}<${one}> Tj`);
  };

  it('is found by the digests of its pages, and where these were put right by the tag', async () => {
    const careless = await altered({ page: digit, careless: true });
    expect(careless.checks['pages']!.list).toEqual([expect.stringMatching(/^page \d+ shows something else/)]);
    const careful = await altered({ page: digit });
    expect(states(careful)).toEqual({ ...untouched, tag: 'differs' });
    expect(careful.checks['tag']!.list).toEqual([expect.stringContaining('another digest')]);
  });

  it('is found by the commit where a note inside it was altered', async () => {
    const manifest = JSON.parse(Buffer.from(await attachment(documents.B, 'manifest.json')).toString('utf8')) as {
      attachments: { path: string; of?: string }[];
    };
    const note = manifest.attachments.find((a) => a.of === 'notes/010-bracket.md')!.path;
    const told = await altered({ attached: { [note]: '---\nkind: general\n---\n' } });
    expect(told.checks['inputs']!.list).toEqual(['notes/010-bracket.md has other contents in the commit']);
    expect(states(told)).toMatchObject({ tag: 'differs', findings: 'unchecked', print: 'unchecked' });
  });

  it.each([
    ['a later version', (m: object) => ({ ...m, tool: 'gusset 99.0.0' }), 'printed by version 99.0.0; this is '],
    ['this version in another format', (m: object) => ({ ...m, tool }), 'printed by version '],
    ['another program', (m: object) => ({ ...m, tool: 'x' }), 'printed by version x; '],
  ])('is not printed again where it says to be of %s', async (_, change, says) => {
    const told = await altered({ manifest: change as Forgery['manifest'] & object });
    expect(states(told)).toMatchObject({
      inputs: 'matches',
      tag: 'differs',
      findings: 'unchecked',
      print: 'unchecked',
    });
    expect(told.checks['print']!.says).toContain(says);
  });

  it('is unchecked, and not altered, where a later format cannot be read; another form is no manifest', async () => {
    const form = (name: string) => (m: object) => ({ ...m, form: name, pages: 'in another way' }) as never;
    const later = await altered({ manifest: form('gusset-manifest/99') });
    expect(later.checks['file']).toMatchObject({ state: 'unchecked', says: expect.stringContaining('of format 99') });
    for (const name of ['gusset-manifest/1', 'gusset-manifest/2', 'gusset-manifest/0', 'other/99'])
      expect((await altered({ manifest: form(name) })).checks['file']!.state, name).toBe('differs');
  });
});

describe('the folder of a document whose tag names no manifest', () => {
  const folder = async (html: string, whole = true): Promise<Told> => {
    const place = temporary();
    const inside = JSON.parse(Buffer.from(await attachment(documents.B, 'manifest.json')).toString('utf8')) as object;
    const files = {
      'findings.json': Buffer.from(await attachment(documents.B, 'findings.json')),
      'submission.html': Buffer.from(html),
      'submission.pdf': documents.B,
    };
    const outputs = Object.entries(files).map(([path, bytes]) => ({
      path,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    }));
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(place, name), bytes);
    writeFileSync(join(place, 'manifest.json'), JSON.stringify({ ...inside, outputs }));
    const path = whole ? place : join(place, 'submission.pdf');
    const { code, out } = await gusset('verify', path, '--format', 'json', '--repository', repository);
    const { checks } = JSON.parse(out) as { checks: { name: string; state: string; says: string; list: string[] }[] };
    return { code, checks: Object.fromEntries(checks.map((c) => [c.name, c])) };
  };

  it.each([true, false])('leaves the page for screens unchecked, and says why (folder named: %s)', async (whole) => {
    const told = await folder('<p>Anything at all</p>', whole);
    expect(states(told)).toEqual({ ...untouched, folder: 'matches', html: 'unchecked' });
    expect(told.checks['html']!.says).toBe(
      'nothing but the manifest beside it vouches for submission.html: tray/issue-B, made by gusset 0.1.0, names the PDF and not the manifest',
    );
    expect(told.checks['folder']!.says).not.toContain('files are those');
    expect(told.code).toBe(1);
  });
});

describe('a repository that holds other contents than its ids stand for', () => {
  const copy = (): string => {
    const place = temporary();
    cpSync(repository, place, { recursive: true });
    const pack = join(place, '.git/objects/pack');
    for (const name of readdirSync(pack).filter((n) => n.endsWith('.pack'))) {
      const bytes = readFileSync(join(pack, name));
      rmSync(pack, { recursive: true });
      execFileSync('git', ['unpack-objects', '-q'], { cwd: place, input: bytes });
    }
    return place;
  };
  const git = (place: string, ...args: string[]) => execFileSync('git', args, { cwd: place }).toString().trim();
  const note = 'builds/tray/notes/010-bracket.md';

  it('is told, and nothing is compared with it', async () => {
    for (const [of, type] of [
      [`main:${note}`, 'blob'],
      ['main:builds/tray', 'tree'],
      ['main', 'commit'],
      // Of the history, which the document tells of too.
      ['main~1', 'commit'],
      ['main~1:builds', 'tree'],
      ['tray/issue-B', 'tag'],
    ] as const) {
      const place = copy();
      const content = execFileSync('git', ['cat-file', type, of], { cwd: place });
      expect((await verify(documents.B, '--repository', place)).checks['tag']!.state).toBe('matches');
      const altered = Buffer.concat([content, Buffer.from(type === 'tree' ? `100644 z\0${'z'.repeat(20)}` : ' ')]);
      replaceLoose(place, git(place, 'rev-parse', of), type, altered);
      const told = await verify(documents.B, '--repository', place);
      expect(states(told), of).toEqual({
        file: 'matches',
        attachments: 'matches',
        pages: 'matches',
        repository: 'differs',
      });
      expect(told.checks['repository']!.says).toContain('other contents than the id stands for');
      expect(told.code).toBe(1);
    }
  });

  it('is told where an index of a pack leads from one file to another', async () => {
    const place = copy();
    git(place, 'repack', '-a', '-d', '-q');
    git(place, 'prune-packed', '-q');
    swapInIndex(place, git(place, 'rev-parse', `main:${note}`), git(place, 'rev-parse', 'main:builds/tray/build.md'));
    expect((await verify(documents.B, '--repository', place)).checks['repository']!.state).toBe('differs');
  });
});

describe('the build of the landed version', () => {
  it('can be read, checked and compared by this version', async () => {
    const build = join(repository, 'builds/tray');
    expect(await gusset('check', build, '--allow', 'all')).toMatchObject({ code: 0, err: '' });
    const { out } = await gusset('history', build, '--from', 'A', '--to', 'B');
    expect(out).toContain('[20.05, 20.10, 20.05] mm');
    expect(out).toContain('[20.00, 20.05, 20.00] mm');
    expect(out).not.toContain('cannot be read');
  });

  it('is small, and says which version issued it', () => {
    const files = ['issue-A.pdf', 'issue-B.pdf', 'tray.bundle'].map((name) => landed + name);
    expect(files.every(existsSync)).toBe(true);
    expect(files.reduce((sum, file) => sum + statSync(file).size, 0)).toBeLessThan(400_000);
    for (const letter of letters) {
      const message = execFileSync('git', ['tag', '--list', '--format=%(contents)', `tray/issue-${letter}`], {
        cwd: repository,
        encoding: 'utf8',
      });
      expect(vouchedBy(message)).toMatchObject({ tool: 'gusset 0.1.0', browser: 'HeadlessChrome/147.0.7727.0' });
    }
    expect(tool).not.toBe('gusset 0.1.0');
  });
});

async function attachment(bytes: Uint8Array, name: string): Promise<Uint8Array> {
  const { PDFDocument } = await import('@cantoo/pdf-lib');
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  return pdf.getAttachments().find((file) => file.name === name)!.data;
}
