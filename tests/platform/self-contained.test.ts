import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { writeSelfContained } from '../../src/platform/self-contained.js';
import { folderWith } from '../project/scratch.js';

it('holds every file that the page links to inside, as it is, and changes nothing else', async () => {
  const folder = folderWith({});
  const bytes = [Buffer.from([0, 255, 1, 254, 60, 62]), Buffer.from('second')];
  bytes.forEach((b, i) => writeFileSync(join(folder, `${i}.jpg`), b));
  const url = (i: number) => `file:///work/${i}.jpg`;
  const page = `<p>before</p><img src="${url(0)}"><style>url('${url(1)}')</style><img src="${url(0)}"><a>file:///elsewhere/2.jpg</a>after`;
  const target = join(folder, 'alone.html');
  await writeSelfContained(
    target,
    page,
    new Map([0, 1].map((i) => [url(i), { path: join(folder, `${i}.jpg`), mime: 'image/jpeg' }])),
  );
  const alone = readFileSync(target, 'utf8');
  const data = bytes.map((b) => `data:image/jpeg;base64,${b.toString('base64')}`);
  expect(alone).toBe(page.replaceAll(url(0), data[0]!).replaceAll(url(1), data[1]!));
  expect(data.map((d) => Buffer.from(d.split(',')[1]!, 'base64'))).toEqual(bytes);
});

it('fails where a file is not there, and says which', async () => {
  const folder = folderWith({});
  await expect(
    writeSelfContained(
      join(folder, 'a.html'),
      '<img src="file:///x.jpg">',
      new Map([['file:///x.jpg', { path: join(folder, 'none.jpg'), mime: 'image/jpeg' }]]),
    ),
  ).rejects.toThrow(/none\.jpg/);
});
