import { describe, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { readFrontmatter } from '../../src/project/frontmatter.js';
import { readBuild } from '../../src/project/read.js';
import { gusset } from '../commands/run.js';
import { buildFile, folderWith } from '../project/scratch.js';

const shapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));
const read = (yaml: string) => readFrontmatter(`---\n${yaml}\n---\n\nWords.\n`, 'notes/x.md');
const codes = (yaml: string) => read(yaml).problems.map((p) => p.code);
const many = (n: number, line: (i: number) => string) => Array.from({ length: n }, (_, i) => line(i)).join('\n');

describe('frontmatter that means harm', () => {
  it.each([
    [
      'an alias bomb',
      `a: &a [${'x,'.repeat(9)}x]\n${'bcdefghi'
        .split('')
        .map((k, i) => `${k}: &${k} [${`*${'abcdefgh'[i]},`.repeat(9)}*a]`)
        .join('\n')}`,
      'yaml-alias',
    ],
    ['a function as a tag', 'a: !!js/function "function(){ process.exit() }"', 'yaml'],
    ['brackets nested 100,000 deep', `a: ${'['.repeat(100_000)}`, 'yaml-depth'],
    ['blocks nested deep', many(40, (i) => `${' '.repeat(i)}a:`), 'yaml-depth'],
    ['100,000 keys', many(100_000, (i) => `k${i}: 1`), 'file-too-large'],
    ['20,000 keys within the size', many(20_000, (i) => `k${i}:`), 'file-too-large'],
    ['10 MB', `a: ${'x'.repeat(10_000_000)}`, 'file-too-large'],
    ['a second document', 'a: 1\n---b: 2', 'frontmatter-missing'],
  ])('%s is refused in well under three seconds', (_, yaml, code) => {
    const from = performance.now();
    expect(codes(yaml)).toContain(code);
    expect(performance.now() - from).toBeLessThan(3000);
  });

  it('what is wrong lies inside its line, after a bracket that closes nothing as well', () => {
    const { problems } = read('open:\n  - id: example\n  ]s: repeat the twist test\n    until: before paint');
    for (const p of problems) expect(p.column).toBeLessThanOrEqual((p.source ?? '').length + 1);
    expect(problems.length).toBeGreaterThan(0);
  });

  it.each(['js', 'javascript', 'coffee', 'json', 'toml', 'constructor', '__proto__'])(
    '`---%s` runs nothing',
    (language) => {
      const { problems } = readFrontmatter(`---${language}\nglobalThis.harmed = true\n---\n`, 'x.md');
      expect(problems[0]?.code).toBe('frontmatter-language');
      expect((globalThis as { harmed?: boolean }).harmed).toBeUndefined();
    },
  );

  it('keys of prototypes are keys that nobody knows, and change no object', () => {
    const folder = folderWith({
      'build.md': buildFile,
      'notes/010-a.md': '---\nkind: engine\ntitle: Engine\n__proto__: { polluted: yes }\nconstructor: x\n---\n',
    });
    const { problems } = readBuild(folder, shapes, folder);
    expect(problems.map((p) => p.code)).toEqual(['key-unknown', 'key-unknown']);
    expect(({} as { polluted?: string }).polluted).toBeUndefined();
  });

  it('an answer to an item that is not there is pointed out, with the nearest id', async () => {
    const folder = folderWith({
      'build.md': buildFile,
      'notes/010-a.md': '---\nkind: engine\ntitle: Engine\nanswers: { engin.code: LA1, __proto__: yes }\n---\n',
    });
    const { code, err } = await gusset('check', folder);
    expect(code).toBe(2);
    expect(err).toContain('notes/010-a.md:4:12');
    expect(err).toContain('did you mean `engine.code`?');
  });

  it('mixed line ends and a byte order mark keep lines and columns', () => {
    const { value } = readFrontmatter(
      '\uFEFF---\r\nkind: engine\rtitle: Engine\nbore: 1 mm\r\n---\r\nWords.\r\n',
      'x.md',
    );
    expect(value?.locate(['bore'])).toMatchObject({ line: 4, column: 7 });
    expect(value?.bodyLine).toBe(6);
  });
});

describe('control and bidirectional characters', () => {
  it('are shown in the terminal, not obeyed', async () => {
    const title = 'Engine \u202Egnissap\u202C \u0007\u001b[31m';
    const folder = folderWith({
      'build.md': buildFile,
      'notes/010-a.md': `---\nkind: engine\ntitle: '${title.replace('\u0007\u001b[31m', '')}'\nbor: 1\n---\n`,
    });
    const { err } = await gusset('check', folder);
    expect(err).not.toMatch(/[\u202E\u0007\u001b]/);
  });
});
