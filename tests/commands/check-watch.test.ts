import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';
import { running } from './running.js';
import { workshop } from './workshop.js';

async function watched() {
  const build = folderWith(workshop);
  const command = running('check', build, '--watch');
  await command.said(/Ctrl-C ends it/);
  let from = command.all().length;
  const next = async (pattern: RegExp) => {
    await command.said(pattern, from);
    const said = command.all().slice(from);
    from += said.length;
    return said;
  };
  const edit = (path: string, before: string, after: string) => {
    const text = readFileSync(join(build, path), 'utf8');
    expect(text).toContain(before);
    writeFileSync(join(build, path), text.replace(before, after));
  };
  return { build, command, edit, next };
}

it('says everything once, and after a save only what differs', { timeout: 120_000 }, async () => {
  const { command, edit, next } = await watched();
  expect(command.out()).toContain('A car made up for tests');
  expect(command.out()).toContain('Gusset certifies nothing');

  edit('notes/020-crossmember.md', 'wall: { value: 2.48 mm', 'wall: { value: 3.48 mm');
  const said = await next(/findings differ/);
  expect(said).toContain('notes/020-crossmember.md');
  expect(said).toMatch(
    /✗ outside usual practice \(justify\) {2}[^\n]*\(crossmember\)[^]*before: ● within usual practice/,
  );
  expect(said).not.toContain('025-gearbox');
  expect(said).not.toContain('Gusset certifies nothing');

  edit('notes/020-crossmember.md', 'The pressed one', 'The old one');
  expect(await next(/Nothing that was found differs/)).not.toMatch(/conform|practice/);
});

it('tells a typing error once, and its mend', { timeout: 120_000 }, async () => {
  const { command, edit, next, build } = await watched();
  edit('notes/025-gearbox.md', 'type: manual', 'tipe: manual');
  expect(await next(/1 problem\(s\) keep/)).toMatch(
    /025-gearbox\.md:4:1: found the key `tipe`[^]*hint: did you mean `type`/,
  );
  edit('notes/010-engine.md', 'mass: 214 kg', 'mass: 214');
  const two = await next(/2 problem\(s\) keep/);
  expect(two).toContain('1 problem(s) as before.');
  expect(two).not.toContain('tipe');
  edit('notes/010-engine.md', 'mass: 214', 'mass: 214 kg');
  await next(/1 problem\(s\) keep/);
  edit('notes/025-gearbox.md', 'tipe: manual', 'type: manual');
  expect(await next(/Nothing that was found differs/)).toContain('The notes can be read again.');
  rmSync(join(build, 'notes/025-gearbox.md'));
  expect(await next(/findings differ/)).toMatch(/gone: /);
  expect(await command.finish()).toBe(0);
});

it('tells a value to look at again once, and when it is in doubt no more', { timeout: 120_000 }, async () => {
  const { command, edit, next } = await watched();
  expect(command.out()).not.toContain('look at again');

  edit('notes/020-crossmember.md', 'wall: { value: 2.48 mm', 'wall: { value: 24.8 mm');
  expect(await next(/findings differ/)).toMatch(
    /Values to look at again; no finding says so, they are taken as written\n    pieces\.crossmember\.now\.wall: found 24\.8 mm, expected [^]*020-crossmember\.md:9:\d+\n    new\n/,
  );

  edit('notes/020-crossmember.md', 'The pressed one', 'The old one');
  expect(await next(/Nothing that was found differs/)).not.toContain('24.8 mm');

  edit('notes/020-crossmember.md', '24.8 mm', '25.2 mm');
  const another = await next(/findings differ/);
  expect(another).toMatch(/found 25\.2 mm[^]*\n    new\n/);
  expect(another).not.toContain('gone: the doubt');

  edit('notes/020-crossmember.md', '25.2 mm', '2.48 mm');
  const mended = await next(/findings differ/);
  expect(mended).toMatch(
    /gone: the doubt about pieces\.crossmember\.now\.wall, 25\.2 mm \(\S*020-crossmember\.md:9:\d+\)\n/,
  );
  expect(mended).not.toContain('look at again');
});

it('tells a doubt that no finding goes with', { timeout: 120_000 }, async () => {
  const { edit, next } = await watched();
  edit('notes/010-engine.md', 'mass: 214 kg', 'mass: 2140 kg');
  expect(await next(/No finding differs\./)).toMatch(
    /\n    mass: found 2140 kg, expected [^]*010-engine\.md:10:7\n    new\n/,
  );
  edit('notes/010-engine.md', '2140 kg', '214 kg');
  expect(await next(/No finding differs\./)).toContain('gone: the doubt about mass, 2140 kg (');
});

it('does not go with data for programs', async () => {
  expect(await gusset('check', folderWith(workshop), '--watch', '--format', 'json')).toMatchObject({
    code: 2,
    err: expect.stringContaining('--watch with --format json'),
  });
});
