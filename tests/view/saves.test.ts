import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { amidSaves } from '../../src/app/amid-saves.js';
import { viewState } from '../../src/app/view-state.js';
import { memory } from '../../src/project/memory.js';
import { running, until } from '../commands/running.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const pageOf = (url: string): Promise<string> =>
  new Promise((resolve, reject) => {
    get(url, (response) => {
      let text = '';
      response.on('data', (chunk) => (text += String(chunk))).on('end', () => resolve(text));
    }).on('error', reject);
  });

it('the preview goes on through any way of saving, at any moment, and shows the last one', async () => {
  const picture = await sharp({ create: { width: 900, height: 700, channels: 3, background: '#a40' } })
    .jpeg()
    .toBuffer();
  const note = workshop['notes/025-gearbox.md']!.replace(
    'type: manual',
    'type: manual\nphotos: [{ file: box.jpg, shows: the gearbox }]\npapers: [{ file: data.txt, shows: its data }]',
  );
  const contents: Record<string, string | Uint8Array> = {
    ...workshop,
    'notes/025-gearbox.md': note,
    'photos/box.jpg': picture,
    'papers/data.txt': 'data',
  };
  const build = folderWith(contents);
  const command = running('view', build);
  const [url] = await command.said(/http:\/\/127\.0\.0\.1:\d+\//);
  const names = Object.keys(contents);
  const ways: ((path: string, whole: string | Uint8Array, ms: number) => Promise<void>)[] = [
    async (path, whole, ms) => {
      writeFileSync(path, whole.slice(0, Math.floor(whole.length / 2)));
      await pause(ms);
      writeFileSync(path, whole);
    },
    async (path, whole, ms) => {
      rmSync(path);
      await pause(ms);
      writeFileSync(path, whole);
    },
    async (path, _, ms) => {
      renameSync(path, `${path}~`);
      await pause(ms);
      renameSync(`${path}~`, path);
    },
    async (path, whole, ms) => {
      writeFileSync(path, '');
      writeFileSync(`${path}.tmp`, whole);
      await pause(ms);
      renameSync(`${path}.tmp`, path);
    },
    async (path, whole, ms) => {
      rmSync(path);
      mkdirSync(path);
      await pause(ms);
      rmSync(path, { recursive: true });
      writeFileSync(path, whole);
    },
  ];
  for (let n = 0; n < 60; n++) {
    // Every second time what is beside the notes, which is read last.
    const name = n % 2 === 0 ? names[(n * 7) % names.length]! : ['photos/box.jpg', 'papers/data.txt'][(n >> 1) % 2]!;
    await ways[n % ways.length]!(join(build, name), contents[name]!, (n * 37) % 110);
    await pause(n % 20 === 0 ? 1010 : (n * 53) % 90);
  }
  for (const folder of ['notes', 'photos']) {
    renameSync(join(build, folder), join(build, `${folder}-away`));
    await pause(150);
    renameSync(join(build, `${folder}-away`), join(build, folder));
    await pause(150);
  }
  writeFileSync(join(build, 'notes/025-gearbox.md'), note.replace(/^title: .*$/m, 'title: Saved at the very last'));
  await until(
    async () => (await pageOf(url)).includes('Saved at the very last'),
    () => `the last save in:\n${command.all()}`,
  );
  expect(await command.finish()).toBe(0);
  expect(command.err()).toBe('');
});

it('a note that goes and comes back while the document is made of it', async () => {
  const picture = (background: string) =>
    sharp({ create: { width: 50, height: 40, channels: 3, background } })
      .jpeg()
      .toBuffer();
  const build = folderWith({
    ...workshop,
    'notes/025-gearbox.md': workshop['notes/025-gearbox.md']!.replace(
      'type: manual',
      'type: manual\nphotos: [{ file: box.jpg, shows: the gearbox }]',
    ),
    'photos/box.jpg': await picture('#123'),
  });
  const note = join(build, 'notes/025-gearbox.md');
  let moved = false;
  const state = viewState(build, 'submission', () => {
    if (moved) return;
    moved = true;
    renameSync(note, `${note}~`);
    setTimeout(() => renameSync(`${note}~`, note), 120);
  });
  await state.look(['notes/025-gearbox.md']);
  expect(moved).toBe(true);
  expect(state.shown().problems).toEqual([]);
  expect(state.shown().document).toBeDefined();
});

const gone = (path: string) =>
  Object.assign(new Error(`ENOENT: no such file, stat '${path}'`), { code: 'ENOENT', syscall: 'stat', path });

it('a file that goes while it is read is looked at again; one that stays away is a problem in its own name', async () => {
  let looks = 0;
  expect(await amidSaves(async () => (++looks < 3 ? Promise.reject(gone('x')) : 'read'))).toBe('read');
  expect(await amidSaves(() => Promise.reject(gone(join(process.cwd(), 'photos/box.jpg'))))).toMatchObject({
    problems: [{ code: 'file-unreadable', file: 'photos/box.jpg', line: 0 }],
  });
  await expect(amidSaves(() => Promise.reject(new TypeError('a fault of the program')))).rejects.toThrow(TypeError);
});

it('what failed is not remembered', async () => {
  const recall = memory();
  const read = (make: () => Promise<string>) => recall('a', 'as it was', make);
  await expect(read(() => Promise.reject(gone('a')))).rejects.toThrow();
  expect(await read(async () => 'read')).toBe('read');
  expect(await read(async () => 'read again')).toBe('read');
});
