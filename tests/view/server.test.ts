import { mkdirSync, writeFileSync } from 'node:fs';
import { createConnection } from 'node:net';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { gusset } from '../commands/run.js';
import { running } from '../commands/running.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

async function preview() {
  const photo = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#a40' } })
    .jpeg()
    .withExif({ IFD0: { Make: 'Phone' } })
    .toBuffer();
  const note = workshop['notes/025-gearbox.md']!.replace(
    'type: manual',
    'type: manual\nphotos: [{ file: box.jpg, shows: the gearbox }]',
  );
  const build = folderWith({
    ...workshop,
    'notes/025-gearbox.md': note,
    'photos/box.jpg': photo,
    'photos/unnamed.jpg': photo,
    'papers/secret.txt': 'not for others',
  });
  const command = running('view', build);
  const [, port] = await command.said(/127\.0\.0\.1:(\d+)/);
  return { build, command, port: Number(port), ask: (lines: string) => raw(Number(port), lines) };
}

/** One request as it goes over the wire, so that no library tidies it up. */
function raw(port: number, lines: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let answer = '';
    const socket = createConnection(port, '127.0.0.1', () =>
      socket.write(`${lines.replaceAll('PORT', String(port)).split('\n').join('\r\n')}\r\nConnection: close\r\n\r\n`),
    );
    socket.on('data', (chunk) => {
      answer += String(chunk);
      if (/event: shown\ndata: .*\n\n/.test(answer)) socket.destroy();
    });
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });
}

const statusOf = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]);

it('answers only to its own name and to its own pages', async () => {
  const { ask } = await preview();
  const status = async (lines: string) => statusOf(await ask(lines));
  expect(await status('GET / HTTP/1.1\nHost: 127.0.0.1:PORT')).toBe(200);
  expect(
    await status('GET / HTTP/1.1\nHost: localhost:PORT\nOrigin: http://localhost:PORT\nSec-Fetch-Site: same-origin'),
  ).toBe(200);
  for (const refused of [
    'GET / HTTP/1.1\nHost: workshop.example:PORT',
    'GET / HTTP/1.1\nHost: 127.0.0.1',
    'GET / HTTP/1.1\nHost: 127.0.0.1:80',
    'GET /events HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: http://workshop.example',
    'GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: null',
    'GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: http://localhost:PORT',
    'GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nSec-Fetch-Site: cross-site',
    'GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nSec-Fetch-Site: same-site',
    'GET http://workshop.example/ HTTP/1.1\nHost: workshop.example',
  ]) {
    const answer = await ask(refused);
    expect(statusOf(answer), refused).toBe(403);
    expect(answer).not.toContain('Crossmember');
  }
  expect(await status('POST / HTTP/1.1\nHost: 127.0.0.1:PORT\nContent-Length: 0')).toBe(405);
});

it('serves nothing but the document, its photos and fonts', async () => {
  const { ask, build } = await preview();
  const get = (path: string) => ask(`GET ${path} HTTP/1.1\nHost: 127.0.0.1:PORT`);
  const page = await get('/');
  const [, photo] = /src="(\/photos\/[^"]+)"/.exec(page)!;
  const served = await get(photo!);
  expect(statusOf(served)).toBe(200);
  expect(served).not.toContain('Phone');
  expect(statusOf(await get('/fonts/NotoSans-Regular.woff2'))).toBe(200);
  for (const path of [
    '/../../../../etc/passwd',
    '/..%2f..%2fetc%2fpasswd',
    '/photos/../../../etc/passwd',
    '/photos/..%2funnamed.jpg',
    '/photos/unnamed.jpg',
    '/photos/box.jpg',
    '/photos/__proto__',
    '/photos/',
    '/papers/secret.txt',
    '/notes/010-engine.md',
    '/build.md',
    `/${build}/build.md`,
    '/fonts/../../package.json',
    '/fonts/OFL.txt',
    '/fonts/fonts.css',
    '/../view.js',
    '/view.js/',
    '/package.json',
    '/%00',
    '//etc/passwd',
    '*',
  ]) {
    const answer = await get(path);
    expect(statusOf(answer), path).toBe(404);
    expect(answer, path).not.toMatch(/root:|not for others/);
  }
});

it('keeps nothing in caches, and lets the page run its own script alone', async () => {
  const { ask } = await preview();
  for (const path of ['/', '/view.js', '/view.css', '/events', '/nothing']) {
    const answer = await ask(`GET ${path} HTTP/1.1\nHost: 127.0.0.1:PORT`);
    expect(answer, path).toMatch(/^Cache-Control: no-store\r$/m);
    expect(answer, path).toMatch(/^Content-Security-Policy: default-src 'none'; script-src 'self'; /m);
    expect(answer, path).toMatch(/^Cross-Origin-Resource-Policy: same-origin\r$/m);
    expect(answer, path).toMatch(/^X-Content-Type-Options: nosniff\r$/m);
  }
  const page = await ask('GET / HTTP/1.1\nHost: 127.0.0.1:PORT');
  expect(page.match(/<script\b[^>]*>/g)).toEqual(['<script type="module" src="/view.js">']);
  expect(page).not.toMatch(/<style|\son[a-z]+=/);
});

it('tells a page that comes late or again all that it has missed, and one that is up to date nothing', async () => {
  const { ask, build, command } = await preview();
  const told = async (query: string, more = '') =>
    JSON.parse(/data: (.*)/.exec(await ask(`GET /events${query} HTTP/1.1\nHost: 127.0.0.1:PORT${more}`))![1]!) as {
      version: string;
      order: string[];
      parts: Record<string, string>;
    };
  const all = await told('');
  expect(Object.keys(all.parts)).toEqual(all.order);
  expect(Object.keys((await told(`?version=${all.version}`)).parts)).toEqual([]);
  writeFileSync(
    join(build, 'notes/025-gearbox.md'),
    workshop['notes/025-gearbox.md']!.replace('From the same car', 'Out of the same car'),
  );
  await command.said(/025-gearbox\.md: \d+ part/);
  expect(Object.keys((await told(`?version=${all.version}`)).parts)).toEqual(all.order);
  const now = await told('');
  expect(now.parts['note-025-gearbox']).toContain('Out of the same car');
  expect(Object.keys((await told('?version=other', `\nLast-Event-ID: ${now.version}`)).parts)).toEqual([]);
});

it('says what is wrong with its arguments, its port and its folder', async () => {
  const { port, build } = await preview();
  expect(await gusset('view', build, '--port', String(port))).toMatchObject({
    code: 3,
    err: expect.stringContaining('another program already answers on port'),
  });
  expect(await gusset('view', build, '--port', '70000')).toMatchObject({
    code: 2,
    err: expect.stringContaining('expected a number up to 65535'),
  });
  expect(await gusset('view', join(build, 'none'))).toMatchObject({
    code: 2,
    err: expect.stringContaining('no such folder'),
  });
  expect((await gusset('view')).code).toBe(2);
});

it('follows a new note, a photo that is replaced, and a folder that comes later', async () => {
  const { build, command } = await preview();
  const from = command.all().length;
  writeFileSync(join(build, 'notes/040-more.md'), '---\nkind: mass\ntitle: Weighing\n---\n');
  await command.said(/notes\/040-more\.md: \d+ part/, from);
  writeFileSync(
    join(build, 'photos/box.jpg'),
    await sharp({ create: { width: 90, height: 40, channels: 3, background: '#0a4' } })
      .jpeg()
      .toBuffer(),
  );
  await command.said(/photos\/box\.jpg: \d+ part/, from);
  mkdirSync(join(build, 'queries'));
  writeFileSync(
    join(build, 'queries/01-a.md'),
    '---\nfrom: R. Ansell\ndate: 2026-03-01\nabout: 025\nquestion: Which gearbox?\nstate: open\n---\n',
  );
  // The new folder may be told first, and then brings the file along.
  await command.said(/queries\/01-a\.md.*: (\d+ part|nothing)/, from);
  for (const passing of ['notes/.040-more.md.swp', 'notes/040-more.md~', 'notes/4913'])
    writeFileSync(join(build, passing), 'x');
  const said = command.all();
  writeFileSync(join(build, 'notes/040-more.md'), '---\nkind: mass\ntitle: Weighing again\n---\n');
  await command.said(/notes\/040-more\.md: \d+ part/, said.length);
  expect(command.out()).not.toMatch(/swp|~|4913/);
});
