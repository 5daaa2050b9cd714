import { readFile } from 'node:fs/promises';
import type { Build } from '../build/model.js';
import type { Problem } from '../build/problem.js';
import { activeContent } from '../print/active-pdf.js';

/** Papers that would do more than show when somebody opens them out of the document, where they are named. */
export async function activePapers(build: Build): Promise<Problem[]> {
  const paths = [...new Set(build.notes.flatMap((note) => (note.data.papers ?? []).map((p) => p.file)))].filter((path) => /\.pdf$/i.test(path));
  const found = new Map(await Promise.all(paths.map(async (path) => [path, await activeContent(await readFile(build.files.get(path)!.absolute))] as const)));
  return build.notes.flatMap((note) =>
    (note.data.papers ?? []).flatMap((paper, i): Problem[] => {
      const does = found.get(paper.file);
      if (does === undefined) return [];
      const range = note.front.locate(['papers', i, 'file']);
      return [{ code: 'paper-refused', file: note.file, ...range, source: note.front.sourceLine(range.line), found: `\`${paper.file}\`, which ${does}`, expected: 'a PDF that only shows its pages', hint: 'print it to a new PDF, or scan it, and name that' }];
    }),
  );
}
