import { copyFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Element } from 'hast';
import sharp from 'sharp';
import { visit } from 'unist-util-visit';
import { type Loaded, load } from '../../src/app/load.js';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import type { PaperPage, Picture, Subject } from '../../src/render/subject.js';

const fixture = fileURLToPath(new URL('fixture', import.meta.url));

/** A build as the commands load it; what is wrong with it is thrown. */
export async function loaded(folder = fixture): Promise<Loaded> {
  const result = await load(folder);
  if (!('build' in result)) throw new Error(result.problems.map((p) => `${p.file}:${p.line} ${p.found}`).join('\n'));
  return result;
}

/** What the document is made from, with the pictures as they lie in the build's folder. */
export async function subjectOf(
  { build, rules, evaluation, takenAt }: Loaded,
  as: Subject['as'] = 'submission',
): Promise<Subject> {
  const photos = [...build.files.values()].filter((f) => /\.jpe?g$/.test(f.path));
  const pictures = new Map<string, Picture>();
  for (const file of photos) {
    const { width, height } = await sharp(file.absolute).metadata();
    pictures.set(file.path, {
      url: pathToFileURL(file.absolute).href,
      width,
      height,
      sha256: 'a1'.repeat(32),
      takenAt: takenAt.get(file.path),
    });
  }
  const paperPages = new Map<string, PaperPage>([
    [
      'papers/receipt.pdf',
      { url: 'data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=', width: 528, height: 748, pages: 3 },
    ],
    ['papers/tube certificate.pdf', { reason: 'the file is no whole PDF' }],
  ]);
  return {
    build,
    rules,
    evaluation,
    as,
    pictures,
    paperPages,
    identity: {
      tool: 'gusset test',
      commit: 'c0ffee'.repeat(6),
      date: '2026-03-25',
      dirty: [],
      inputs: 'b2'.repeat(32),
      letter: 'A',
      tag: 'fixture-A',
    },
  };
}

export const treeOf = (subject: Subject): Element =>
  compose(subject, new Map([...subject.build.files.keys()].map((path) => [path, 'd4'.repeat(32)])));

/** The HTML for printing; its pictures are copied into the folder, the only one that the browser may read. */
export function htmlIn(folder: string, subject: Subject, change: (tree: Element) => void = () => {}): string {
  const pictures = new Map(
    [...subject.pictures].map(([path, picture]) => {
      const at = join(folder, basename(path));
      copyFileSync(fileURLToPath(picture.url), at);
      return [path, { ...picture, url: pathToFileURL(at).href }];
    }),
  );
  const linked = { ...subject, pictures };
  const tree = treeOf(linked);
  change(tree);
  return htmlPage(tree, linked, fontFaces(pathToFileURL(fontsDirectory).href));
}

/** Every element of a tree that fits, in order. */
export function all(tree: Element, fits: (element: Element) => boolean): Element[] {
  const found: Element[] = [];
  visit(tree, 'element', (element) => void (fits(element) && found.push(element)));
  return found;
}
