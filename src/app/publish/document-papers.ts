import { readFile, stat } from 'node:fs/promises';
import { afresh, type Recall } from '../../project/memory.js';
import type { Build } from '../../project/model.js';
import { inReadingOrder, type Problem } from '../../project/problem.js';
import { type Loaded, load } from '../load.js';
import { knownContent } from './known-papers.js';

/** As `load`, and photos that hold no picture and papers that would do more than show count among the problems: for the files as they lie there now. */
export async function loadWithPapers(folder: string, recall = afresh): Promise<Loaded | { problems: Problem[] }> {
  const loaded = await load(folder, process.cwd(), recall);
  if (!('build' in loaded)) return loaded;
  const problems = inReadingOrder([...loaded.noPictures, ...(await activePapers(loaded.build, recall))]);
  return problems.length > 0 ? { problems } : loaded;
}

/** Papers that would do more than show when somebody opens them out of the document, where they are named. With a memory, files as they were are not read again. */
export async function activePapers(build: Build, recall = afresh): Promise<Problem[]> {
  const named = build.notes.flatMap((note) =>
    (note.data.papers ?? []).map(({ file }, i) => ({ note, file, range: note.front.locate(['papers', i, 'file']) })),
  );
  const wrong = new Map<string, Wrong | undefined>();
  // One after the other: together they may be larger than memory.
  for (const file of new Set(named.map((n) => n.file)))
    if (/\.pdf$/i.test(file)) wrong.set(file, await wrongWith(build.files.get(file)!.absolute, recall));
  return inReadingOrder(
    named.flatMap(({ note, file, range }): Problem[] => {
      const found = wrong.get(file);
      return found === undefined
        ? []
        : [
            {
              file: note.file,
              ...range,
              source: note.front.sourceLine(range.line),
              ...found,
              found: `\`${file}\`, which ${found.found}`,
            },
          ];
    }),
  );
}

type Wrong = Pick<Problem, 'code' | 'found' | 'expected' | 'hint'>;

async function wrongWith(path: string, recall: Recall): Promise<Wrong | undefined> {
  try {
    const { mtimeMs, ctimeMs, size } = await stat(path);
    const does = await recall(`paper ${path}`, `${mtimeMs} ${ctimeMs} ${size}`, async () =>
      knownContent(await readFile(path)),
    );
    return does === undefined
      ? undefined
      : {
          code: 'paper-refused',
          found: does,
          expected: 'a PDF that only shows its pages',
          hint: 'print it to a new PDF, or scan it, and name that',
        };
  } catch (cause) {
    const { code, message } = cause as NodeJS.ErrnoException;
    if (code === undefined) throw cause;
    return {
      code: 'file-unreadable',
      found: `cannot be read (${code === 'EACCES' ? 'no permission' : message})`,
      expected: 'a file that can be read',
      hint: 'check its permissions, or copy it again from where it came',
    };
  }
}
